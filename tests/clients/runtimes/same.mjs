/**
 * Asks the same of several services and compares the answers, byte for byte: every example of the description, every
 * picture and sheet, and some that are refused.
 *
 *     node same.mjs NAME=ADDRESS NAME=ADDRESS …
 */
const services = process.argv.slice(2).map((one) => one.split("="));
const glaze = (kaolin) => ({
  recipe: [
    { material: "potash-feldspar", parts: 42 },
    { material: "silica", parts: 22 },
    { material: "whiting", parts: 18 },
    { material: "kaolin", parts: kaolin },
    { material: "frit-soda-borosilicate", parts: 6 },
  ],
  thicknessMm: 0.3,
});
const question = (kaolin) => ({ glaze: glaze(kaolin), body: { class: "red-stoneware" } });
const lines = Array.from({ length: 200 }, (_, i) => JSON.stringify({ id: `n${i}`, ...question(i / 10) }));
const post = (body, type = "application/json", more = {}) => ({
  method: "POST",
  body: typeof body === "string" ? body : JSON.stringify(body),
  headers: { "content-type": type, "x-request-id": "same", ...more },
});
const get = { headers: { "x-request-id": "same" } };
const questions = [
  ["/v1/fit", post(question(12))],
  ["/v1/fit", post({ ...question(12), include: ["curves"] })],
  ["/v1/fit?picture=verdict", post(question(12), "application/json", { accept: "image/svg+xml" })],
  ["/v1/fit/stream", post(lines.join("\n"), "application/x-ndjson")],
  ["/v1/expansion", post({ glaze: glaze(12) })],
  ["/v1/chemistry", post({ glaze: glaze(12) })],
  ["/v1/fit", post('{"glaze": {"recipe": [{"material": "whitting", "parts": 4,5}]}}')],
  ["/v1/fit", post({ glaze: { recipe: [{ material: "whitting", parts: -1 }] }, body: {} })],
  ["/v1/fits", get],
  ["/v1/materials?limit=200", get],
  ["/openapi.json", get],
  ["/health", get],
  ["/ready", get],
  ["/v1/fit?picture=expansion&theme=dark", post(question(12), "application/json", { accept: "image/svg+xml" })],
  ["/v1/fit?picture=stress&width=350", post(question(12), "application/json", { accept: "image/svg+xml" })],
  ["/v1/fit?picture=contributions", post(question(12), "application/json", { accept: "image/svg+xml" })],
];

/** The example of every call, in each form that it answers in. */
async function examplesOf(address) {
  const { paths } = await (await fetch(`${address}/openapi.json`)).json();
  return Object.entries(paths).flatMap(([path, { post: operation }]) => {
    if (!operation) return [];
    const [[type, { example }]] = Object.entries(operation.requestBody.content);
    const body = typeof example === "string" ? example : JSON.stringify(example);
    const forms = Object.keys(operation.responses[200].content);
    return forms.filter((form) => form !== "image/png").map((accept) => [path, post(body, type, { accept })]);
  });
}

async function reached(address) {
  for (let tries = 0; tries < 200; tries++) {
    try {
      return await (await fetch(`${address}/health`)).json();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  throw new Error(`${address} does not answer.`);
}

const texts = new Map();
await reached(services[0][1]);
questions.push(...(await examplesOf(services[0][1])));
for (const [name, address] of services) {
  await reached(address);
  const answers = [];
  for (const [path, init] of questions) {
    const response = await fetch(address + path, init);
    answers.push(`${response.status} ${Buffer.from(await response.arrayBuffer()).toString("latin1")}`);
  }
  const began = performance.now();
  for (let i = 0; i < 200; i++) await (await fetch(`${address}/v1/fit`, post(question(i / 10)))).text();
  console.log(`${name.padEnd(10)} ${((performance.now() - began) / 200).toFixed(1)} ms a fit, one after the other`);
  texts.set(name, answers);
}
const [first, ...others] = texts.keys();
let different = 0;
for (const other of others) {
  questions.forEach(([path], i) => {
    const [a, b] = [texts.get(first)[i], texts.get(other)[i]];
    if (a === b) return;
    different += 1;
    const at = [...a].findIndex((letter, k) => letter !== b[k]);
    console.log(
      `${other} differs from ${first} at ${path}, letter ${at}: ${a.slice(at - 20, at + 40)} | ${b.slice(at - 20, at + 40)}`,
    );
  });
}
console.log(
  different === 0
    ? `${texts.size} runtimes, ${questions.length} answers each: the same, byte for byte`
    : `${different} answers differ`,
);
process.exitCode = different === 0 ? 0 : 1;
