/** Over the network when `RINGTRUE_URL` says where, in this process otherwise. @module */
import { Ringtrue } from "@ringtrue/sdk";

/** A client for the examples. */
export async function connect(): Promise<Ringtrue> {
  const baseUrl = process.env.RINGTRUE_URL;
  if (baseUrl) return new Ringtrue({ baseUrl });
  // The service is a plain function from request to answer: an app can carry it along.
  const { app } = await import("../api/app.ts");
  return new Ringtrue({
    fetch: (url, init) => {
      init.signal?.throwIfAborted();
      return app.request(url, init);
    },
  });
}
