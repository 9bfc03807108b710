/** What the soak asks, with the right answer to each, worked out beforehand in this process. @module */
import { createApp } from "../../api/app.ts";
import { drawPng } from "../../api/node/draw-png.ts";
import description from "../../api/openapi.json" with { type: "json" };
import { question } from "../bench/questions.ts";

/** One request and what must come back. Its id is its own, so that even a refusal is the same to the last byte. */
export interface Question {
  what: string;
  method: string;
  path: string;
  headers: Record<string, string>;
  body: string;
  /** How often it is asked, against the others [-]. */
  weight: number;
  right: { status: number; type: string | null; body: Buffer };
}
type Asked = Omit<Question, "right">;

const JSON_TYPE = "application/json";
const NDJSON = "application/x-ndjson";
/** Calls that take tens of milliseconds and more: asked seldom, or they would be all that is measured. */
const LONG = ["/v1/remedies", "/v1/evidence", "/v1/blends", "/v1/running"];

const post = (what: string, path: string, body: string, weight: number, headers = {}): Asked => ({
  ...{ what, method: "POST", path, body, weight },
  headers: { "content-type": JSON_TYPE, ...headers },
});
const get = (path: string, weight: number): Asked => ({
  ...{ what: "lookup", method: "GET", path, body: "", weight },
  headers: {},
});

function* everyQuestion(): Generator<Asked> {
  for (let n = 0; n < 100; n++) yield post("fit", "/v1/fit", JSON.stringify(question(n)), 0.7);
  for (let n = 0; n < 5; n++) yield post("stream", "/v1/fit/stream", lines(20, n * 20), 1, { "content-type": NDJSON });
  yield post("drawing", "/v1/fit", JSON.stringify(question()), 0.5, { accept: "image/svg+xml" });
  yield post("drawing", "/v1/fit", JSON.stringify(question()), 0.1, { accept: "image/png" });
  for (const [path, { post: described }] of Object.entries(description.paths as unknown as Paths)) {
    const content = described?.requestBody?.content ?? {};
    if (content[JSON_TYPE]) {
      const weight = LONG.includes(path) ? 0.1 : 1;
      yield post(path.slice(4), path, JSON.stringify(content[JSON_TYPE].example), weight);
    }
  }
  for (const path of ["materials", "materials/whiting", "bodies", "bodies/red-stoneware", "sources"]) {
    yield get(`/v1/${path}`, 1);
  }
  const thaw = JSON.stringify(question());
  yield post("refused", "/v1/fit", thaw.slice(0, -3), 1);
  yield post("refused", "/v1/fit", thaw.replace('"parts":24', '"parts":-24'), 1);
  yield post("refused", "/v1/fit", thaw, 0.5, { "content-type": "text/plain" });
  yield post("refused", "/v1/fitt", thaw, 0.5);
  yield post("refused", "/v1/fit", `{"x":"${"x".repeat(300_000)}"}`, 0.1);
  yield post("refused", "/v1/fit/stream", `${lines(2)}{"x":"${"x".repeat(70_000)}"}\n{\n${lines(1)}`, 0.3, {
    "content-type": NDJSON,
  });
}

type Paths = Record<string, { post?: { requestBody?: { content: Record<string, { example?: unknown }> } } }>;

/** Questions, one a line. */
export function lines(count: number, from = 0): string {
  return Array.from({ length: count }, (_, n) => `${JSON.stringify({ id: `${n}`, ...question(from + n) })}\n`).join("");
}

const app = createApp({ drawPng });

async function withAnswer(one: Asked, id: string): Promise<Question> {
  const headers = { ...one.headers, "x-request-id": id };
  const init = { method: one.method, headers, ...(one.body ? { body: one.body } : {}) };
  const response = await app.request(one.path, init);
  if (response.status >= 500) throw new Error(`${one.path} answers ${response.status} even here.`);
  const body = Buffer.from(await response.arrayBuffer());
  return { ...one, headers, right: { status: response.status, type: response.headers.get("content-type"), body } };
}

/** Every question of the mix, with its right answer. */
export async function answeredQuestions(): Promise<Question[]> {
  const questions: Question[] = [];
  for (const one of everyQuestion()) questions.push(await withAnswer(one, `soak-${questions.length}`));
  return questions;
}

/** A stream whose answer is some megabytes, for slow readers. */
export const longStream = (): Promise<Question> =>
  withAnswer(post("slow reader", "/v1/fit/stream", lines(1000), 0, { "content-type": NDJSON }), "soak-long");

/** Draws questions by their weight, in an order that is the same every time. */
export function drawer(questions: readonly Question[], seed = 1): () => Question {
  const total = questions.reduce((sum, { weight }) => sum + weight, 0);
  const random = randomFrom(seed);
  return () => {
    let left = random() * total;
    for (const one of questions) {
      left -= one.weight;
      if (left < 0) return one;
    }
    return questions[0]!;
  };
}

/** Numbers in [0, 1), the same for the same seed (mulberry32, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
