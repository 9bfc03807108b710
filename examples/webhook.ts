/** A handler for a webhook: a recipe is posted, the verdict's short form comes back. Nothing is stored. @module */
import { ApiError, type FitRequest, type Ringtrue, RingtrueError, UnprocessableError } from "@ringtrue/sdk";
import { shortForm } from "./short-form.ts";

/** Header that carries the secret both sides know. */
export const SECRET_HEADER = "x-studio-secret";
/** Largest body read [bytes]. */
const LIMIT = 64 * 1024;

/**
 * The handler, a web-standard function from request to answer: for Node behind a small adapter, and as it is for edge
 * workers, Deno and Bun.
 * @param client - who judges
 * @param secret - at least 16 characters; whoever posts sends it in {@link SECRET_HEADER}
 */
export function answerWebhook(client: Ringtrue, secret: string): (request: Request) => Promise<Response> {
  if (secret.length < 16) throw new Error("Take a secret of 16 characters or more; a short one can be guessed.");
  return async (request) => {
    // Asked first: who does not know the secret learns nothing else.
    if (!(await sameText(request.headers.get(SECRET_HEADER) ?? "", secret))) {
      return problem(401, `Send the shared secret in the header ${SECRET_HEADER}.`);
    }
    if (request.method !== "POST") return problem(405, "Post a recipe and a clay as JSON.", { allow: "POST" });
    const text = await readUpTo(LIMIT, request);
    if (text === undefined) return problem(413, "The body is too large: at most 64 kB are read.");
    let question: FitRequest;
    try {
      question = JSON.parse(text);
    } catch {
      return problem(400, "The body is not JSON: a comma or a bracket may be missing.");
    }
    try {
      const report = await client.fit.check(question, { signal: request.signal });
      const { headline, warnings, cautions } = report;
      const mind = [...warnings, ...cautions].map(({ message }) => message);
      return json(200, { ...shortForm(report), headline, mind });
    } catch (error) {
      if (!(error instanceof RingtrueError)) throw error;
      // What is wrong with the recipe is told to whoever sent it; anything else is not theirs to mend.
      if (error instanceof UnprocessableError) return problem(422, error.problem.detail, {}, { issues: error.issues });
      const wait = error instanceof ApiError ? error.retryAfterMs : null;
      const again = { "retry-after": String(Math.ceil((wait ?? 60_000) / 1000)) };
      return problem(503, "No verdict just now. Post it again in a while.", again);
    }
  };
}

/** Whether two texts are the same, in a time that does not tell how much of them is. */
async function sameText(a: string, b: string): Promise<boolean> {
  // Digests are of one length, whatever the texts are.
  const digest = async (text: string) =>
    new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  const [one, other] = await Promise.all([digest(a), digest(b)]);
  let difference = 0;
  for (const [i, byte] of one.entries()) difference |= byte ^ other[i]!;
  return difference === 0;
}

/** The body as text, or nothing once it is larger than the limit [bytes]. */
async function readUpTo(limit: number, request: Request): Promise<string | undefined> {
  const decoder = new TextDecoder();
  let text = "";
  let size = 0;
  const reader = request.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.byteLength;
    if (size > limit) {
      await reader.cancel();
      return undefined;
    }
    text += decoder.decode(value, { stream: true });
  }
  return text + decoder.decode();
}

const json = (status: number, answer: object, headers: Record<string, string> = {}) =>
  new Response(JSON.stringify(answer), {
    status,
    headers: { "content-type": "application/json", "cache-control": "no-store", ...headers },
  });
const problem = (status: number, detail: string, headers: Record<string, string> = {}, more: object = {}) =>
  json(
    status,
    { type: "about:blank", status, detail, ...more },
    { "content-type": "application/problem+json", ...headers },
  );
