/** How the tests talk to the service: in process, no sockets. @module */
import { createApp } from "../../api/app.ts";
import type { ProblemDocument } from "../../api/http/problem.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";

/** Faults of the service's own; a test that provokes none expects it empty. */
export const faults: unknown[] = [];
export const app = createApp({ report: (error) => faults.push(error) });

/** The sample question, as text. */
export const THAW_TEXT = JSON.stringify(THAW_ON_RED_STONEWARE);

export const get = (path: string, headers: Record<string, string> = {}) => app.request(path, { headers });

export const post = (path: string, body: unknown, headers: Record<string, string> = {}) =>
  app.request(path, {
    method: "POST",
    body: typeof body === "string" ? body : JSON.stringify(body),
    headers: { "content-type": "application/json", ...headers },
  });

/** Sends lines and reads the answers. */
export async function stream(path: string, lines: string[], headers: Record<string, string> = {}) {
  const response = await post(path, lines.join("\n"), { "content-type": "application/x-ndjson", ...headers });
  const text = await response.text();
  return {
    response,
    lines:
      text === ""
        ? []
        : text
            .trimEnd()
            .split("\n")
            .map((line) => JSON.parse(line)),
  };
}

/** Reads a problem and checks what every problem must have. */
export async function problemOf(response: Response): Promise<ProblemDocument> {
  if (response.headers.get("content-type") !== "application/problem+json") {
    throw new Error(`not a problem: ${response.status} ${await response.text()}`);
  }
  const problem = (await response.json()) as ProblemDocument;
  if (problem.status !== response.status) throw new Error("status in document and response differ");
  if (problem.requestId !== response.headers.get("x-request-id")) throw new Error("request id differs");
  return problem;
}
