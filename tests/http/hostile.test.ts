/** Words made to break out of where they are shown, keys that reach for objects' insides, and odd surroundings. */
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { app, problemOf, THAW_TEXT } from "./support.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Names as someone who means harm would write them. */
const NAMES = [
  "<script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "'-alert(1)-'",
  "]]><svg onload=alert(1)>",
  "</title><script>alert(1)</script>",
  "&lt;b&gt;",
  "{{7*7}}#{7*7}`id`",
  "\u202egnp.exe",
  "a\u0000b\u0001\u001b[2J",
  "\ud800",
];

const question = (name: string) => ({
  glaze: {
    recipe: [
      { name, parts: 40, analysis: { weightPercent: { SiO2: 70, Al2O3: 18, K2O: 12 } } },
      { material: "silica", parts: 30 },
      { material: "whiting", parts: 20 },
    ],
    thicknessMm: 0.3,
  },
  body: { class: "red-stoneware" },
});

/** Elements of a well-formed document, or an error where it is not well formed. A small reader of tags and text. */
function elementsOf(xml: string): Set<string> {
  const names = new Set<string>();
  const open: string[] = [];
  const rest = xml.replace(/<\?xml[^>]*\?>|<!--[\s\S]*?-->/g, "");
  for (const [, close, name, attributes, empty, text] of rest.matchAll(
    /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>([^<]*)/g,
  )) {
    names.add(name!.toLowerCase());
    if (close) expect(open.pop()).toBe(name);
    else if (!empty) open.push(name!);
    expect(`${attributes}${text}`.replace(/&(#\d+|#x[0-9a-f]+|amp|lt|gt|quot|apos);/gi, "")).not.toContain("&");
  }
  expect(open).toEqual([]);
  return names;
}

describe("hostile names", () => {
  it.each(NAMES)("%j stays a name in a picture", async (name) => {
    for (const picture of ["verdict", "expansion", "stress", "contributions"]) {
      const response = await app.request(`/v1/fit?picture=${picture}`, {
        method: "POST",
        body: JSON.stringify(question(name)),
        headers: { "content-type": "application/json", accept: "image/svg+xml" },
      });
      expect(response.status).toBe(200);
      expect(response.headers.get("content-type")).toMatch(/^image\/svg\+xml/);
      expect(response.headers.get("x-content-type-options")).toBe("nosniff");
      const svg = await response.text();
      const elements = elementsOf(svg);
      for (const bad of ["script", "img", "foreignobject", "iframe", "a"]) expect(elements).not.toContain(bad);
      // A name may stand as words between tags; inside a tag nothing of it may.
      const tags = svg.replace(/>[^<]*</g, "><");
      expect(tags).not.toMatch(/\son\w+\s*=|javascript:/i);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 cannot hold them, even escaped.
      expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]|&#0;|[\ud800-\udfff]/);
    }
  });

  it.each(NAMES)("%j in a material's place comes back only inside JSON, never as a page", async (name) => {
    const recipe = [{ material: name, parts: 1 }];
    const response = await app.request("/v1/fit", {
      method: "POST",
      body: JSON.stringify({ glaze: { recipe }, body: { class: name }, [name.slice(0, 20)]: 1 }),
      headers: { "content-type": "application/json", accept: "text/html, application/json;q=0.1" },
    });
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
    expect((await problemOf(response)).status).toBe(422);
  });

  it("reach no page: pages are the same whatever the address and headers hold", async () => {
    const plain = await (await app.request("/")).text();
    for (const name of NAMES.slice(0, 5)) {
      const headers = { "x-request-id": "x", "user-agent": "Mozilla <script>alert(1)</script>" };
      const page = await app.request(`/?q=${encodeURIComponent(name)}`, { headers });
      expect(await page.text()).toBe(plain);
      expect(page.headers.get("content-security-policy")).toContain("default-src 'none'");
    }
  });
});

describe("keys that reach for objects' insides", () => {
  const before = Object.getOwnPropertyNames(Object.prototype).sort();
  const attacks = ["__proto__", "constructor", "prototype", "__defineGetter__", "valueOf"].flatMap((key) => [
    THAW_TEXT.replace("{", `{"${key}":{"polluted":1},`),
    THAW_TEXT.replace('"glaze":{', `"glaze":{"${key}":{"polluted":1},`),
    THAW_TEXT.replace('"parts":42', `"parts":42,"${key}":{"polluted":1}`),
    `{"glaze":{"oxides":{"basis":"moles","amounts":{"SiO2":3,"CaO":1,"${key}":1}}},"body":{"phases":{"quartz":20,"${key}":80}}}`,
    `{"constructor":{"prototype":{"polluted":1}}}`,
  ]);

  it.each(attacks)("%.90s… changes nothing", async (body) => {
    for (const path of ["/v1/fit", "/v1/expansion", "/v1/chemistry", "/v1/fit/stream"]) {
      const type = path.endsWith("stream") ? "application/x-ndjson" : "application/json";
      const response = await app.request(path, { method: "POST", body, headers: { "content-type": type } });
      expect(response.status).toBeLessThan(500);
      expect(await response.text()).not.toContain('"result"');
    }
    expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(before);
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });

  it("changes nothing by query either", async () => {
    for (const query of ["__proto__=1", "__proto__[polluted]=1", "constructor.prototype.polluted=1"]) {
      expect((await app.request(`/v1/materials?${query}`)).status).toBe(422);
    }
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });
});

describe("odd surroundings", () => {
  const script = `
    import { app } from "./api/app.ts";
    const init = { method: "POST", body: process.env.QUESTION, headers: { "content-type": "application/json" } };
    const texts = [];
    for (const path of ["/v1/fit", "/v1/fit?picture=verdict"]) texts.push(await (await app.request(path, init)).text());
    texts.push(await (await app.request("/v1/materials?limit=200")).text(), await (await app.request("/")).text());
    console.log(JSON.stringify(texts));`;
  const answersIn = (env: Record<string, string>): string =>
    execFileSync(process.execPath, ["--import", "tsx", "--input-type=module", "-e", script], {
      cwd: root,
      encoding: "utf8",
      env: { ...process.env, QUESTION: THAW_TEXT, ...env },
    });

  it("give the same answers, byte for byte: other languages, other decimal marks, other places on earth", () => {
    const plain = answersIn({ LANG: "C", LC_ALL: "C", TZ: "UTC" });
    expect(JSON.parse(plain)[0]).toContain('"verdict"');
    for (const [locale, zone] of [
      ["tr_TR.UTF-8", "Asia/Istanbul"],
      ["ar_EG.UTF-8", "Pacific/Kiritimati"],
      ["de_DE.UTF-8", "Pacific/Niue"],
    ]) {
      expect(answersIn({ LANG: locale!, LC_ALL: locale!, TZ: zone! })).toBe(plain);
    }
  });

  it("give the same answers at any time of day, and read no clock to do so", () => {
    const plain = answersIn({});
    const trap = '\nDate.now = () => { throw new Error("read the clock"); };';
    const stopped = script.replace('"./api/app.ts";', (found) => found + trap);
    expect(stopped).toContain("read the clock");
    const output = execFileSync(process.execPath, ["--import", "tsx", "--input-type=module", "-e", stopped], {
      cwd: root,
      encoding: "utf8",
      env: { ...process.env, QUESTION: THAW_TEXT },
    });
    expect(output).toBe(plain);
  });
});
