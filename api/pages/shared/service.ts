/** The service, through its own client. @module */
import { Ringtrue } from "@ringtrue/sdk";

/** One try a question: a person is waiting, and the page itself asks again when the service is back. */
export const service = new Ringtrue({ baseUrl: location.origin, maxRetries: 0, timeoutMs: 15_000 });

/** Keeps the static parts for when there is no connection. */
export function startWorker(): void {
  navigator.serviceWorker?.register("/worker.js").catch(() => {});
}
