/** The examples that join other tools: the nightly report, the webhook, the spreadsheet and the label sheet. */
import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { Ringtrue } from "@ringtrue/sdk";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { formatCsv, parseCsv } from "../../examples/csv.ts";
import { redStoneware } from "../../examples/larch-lane.ts";
import { shortForm } from "../../examples/short-form.ts";
import { answerWebhook, SECRET_HEADER } from "../../examples/webhook.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(`${tmpdir()}/larch-lane-`);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs an example; tells its exit code and what it said. */
async function run(example: string, ...args: string[]) {
  const command = ["--import", "tsx", `examples/${example}`, ...args];
  const { RINGTRUE_URL: _, ...env } = process.env;
  return promisify(execFile)(process.execPath, command, { cwd: root, env }).then(
    ({ stdout, stderr }) => ({ code: 0, stdout, stderr }),
    ({ code, stdout, stderr }) => ({ code, stdout, stderr }),
  );
}
const text = (name: string) => readFileSync(`${folder}/${name}`, "utf8");
const client = new Ringtrue({ fetch: (url, init) => app.request(url, init) });
const recipe = [
  { material: "potash-feldspar", parts: 42 },
  { material: "silica", parts: 24 },
  { material: "whiting", parts: 20 },
  { material: "kaolin", parts: 14 },
];

describe("the short form", () => {
  it("counts the twenty cases as the report does, and keeps interval and unit", async () => {
    const report = await client.fit.check({ glaze: { recipe, thicknessMm: 0.3 }, body: redStoneware });
    const { inTwenty, stress } = shortForm(report);
    expect(Object.values(inTwenty).reduce((sum, n) => sum + n, 0)).toBe(20);
    for (const [outcome, n] of Object.entries(inTwenty)) {
      const chance = report.probabilities[outcome as keyof typeof report.probabilities];
      // Why 1 in 20: whole cases, counted so that they add up to 20.
      expect(Math.abs(n / 20 - chance)).toBeLessThan(1 / 20);
    }
    expect(stress).toMatch(/^[+−]\d+ MPa \([+−]\d+ to [+−]\d+\)$/);
  });
});

describe("CSV", () => {
  it.each([
    // RFC 4180, section 2, rules 1 to 7.
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b \r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b \r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
    // common practice, no source: the mark of UTF-8, bare line feeds, empty last cells, empty rows.
    [
      "\uFEFFa,b\n1,\n\n,2",
      [
        ["a", "b"],
        ["1", ""],
        ["", "2"],
      ],
    ],
    ["1,", [["1", ""]]],
    ["", []],
  ])("reads %j", (csv, rows) => expect(parseCsv(csv)).toEqual(rows));

  it("tells where a quote is out of place", () => {
    expect(() => parseCsv('glaze\nThaw\nSea "Fret"')).toThrow("Line 3");
    expect(() => parseCsv('"Thaw')).toThrow("Line 1");
  });

  it("keeps a spreadsheet from running a text, and takes the guard off again", () => {
    expect(formatCsv([["=1+1", "-4", "@x", -4]])).toBe("'=1+1,-4,'@x,-4\r\n");
    const cell = fc.oneof(fc.string(), fc.stringMatching(/^['=+\-@",\r\n ]{0,4}$/));
    const table = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }).filter((row) => row.some((c) => c !== "")));
    fc.assert(fc.property(table, (rows) => void expect(parseCsv(formatCsv(rows))).toEqual(rows)));
  });
});

describe("11-check-every-night", () => {
  it("says what is new, the same, other and gone", async () => {
    const header = "glaze,thickness mm,potash-feldspar,silica,whiting,kaolin";
    writeFileSync(
      `${folder}/glazes.csv`,
      `${header}\n"Rain | Snow",0.3,42,24,20,14\nThaw,0.3,42,24,20,14\nMist,0.3,42,24,20,14\n`,
    );
    const files = [`${folder}/glazes.csv`, `${folder}/report.md`];
    expect(await run("11-check-every-night.ts", ...files)).toMatchObject({ code: 0, stdout: "" });
    expect(text("report.md").match(/\| new \|$/gm)).toHaveLength(3);

    writeFileSync(
      `${folder}/glazes.csv`,
      `${header}\n"Rain | Snow",0.3,42,24,20,14\nThaw,0.3,20,50,12,18\nGale,0.3,42,24,20,14\n`,
    );
    expect(await run("11-check-every-night.ts", ...files)).toMatchObject({ code: 0 });
    const report = text("report.md");
    expect(report).toMatch(/^\| Rain \\\| Snow \| crazes .* MPa .*\| same \|$/m);
    expect(report).toMatch(/^\| Thaw \| .* \| was: crazes \|$/m);
    expect(report).toMatch(/^\| Gale \| .* \| new \|$/m);
    expect(report).toContain("No longer in the table: Mist.");
  });

  it("reports a row without an answer, and ends so that a scheduler notices", async () => {
    writeFileSync(`${folder}/slip.csv`, "glaze,thickness mm,silica,whitting\nThaw,0.3,60,40\n");
    const { code, stdout } = await run("11-check-every-night.ts", `${folder}/slip.csv`);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^\| Thaw \| no answer \| .*Did you mean whiting/m);
  });
});

describe("12-answer-a-webhook", () => {
  const secret = "larch-lane-after-rain";
  const handle = answerWebhook(client, secret);
  const post = (body: BodyInit, headers: Record<string, string> = { [SECRET_HEADER]: secret }, method = "POST") =>
    handle(new Request("https://larch-lane.example/", { method, headers, ...(method === "POST" ? { body } : {}) }));
  const question = JSON.stringify({ glaze: { recipe, thicknessMm: 0.3 }, body: redStoneware });

  it("answers with the verdict in short, and with what to mind", async () => {
    const answer = await post(question);
    expect([answer.status, answer.headers.get("cache-control")]).toEqual([200, "no-store"]);
    const report = await client.fit.check(JSON.parse(question));
    const mind = [...report.warnings, ...report.cautions].map(({ message }) => message);
    expect(await answer.json()).toEqual({ ...shortForm(report), headline: report.headline, mind });
  });

  it.each([
    ["no secret", question, {}, "POST", 401],
    ["another secret", question, { [SECRET_HEADER]: `${secret}!` }, "POST", 401],
    ["the start of the secret", question, { [SECRET_HEADER]: secret.slice(0, -1) }, "POST", 401],
    ["another method", "", { [SECRET_HEADER]: secret }, "GET", 405],
    ["half a body", question.slice(0, 40), { [SECRET_HEADER]: secret }, "POST", 400],
    ["too large a body", " ".repeat(64 * 1024 + 1), { [SECRET_HEADER]: secret }, "POST", 413],
    ["no object", "null", { [SECRET_HEADER]: secret }, "POST", 422],
    ["a slip", question.replace("whiting", "whitting"), { [SECRET_HEADER]: secret }, "POST", 422],
  ])("refuses %s", async (_, body, headers, method, status) => {
    const answer = await post(body, headers as Record<string, string>, method);
    expect(answer.status).toBe(status);
    expect(answer.headers.get("content-type")).toBe("application/problem+json");
    expect(((await answer.json()) as { detail: string }).detail).not.toContain(secret);
  });

  it("keeps what goes wrong behind it to itself, and says when to come again", async () => {
    const fetch = async () => new Response("{}", { status: 503, headers: { "retry-after": "7" } });
    const answer = await answerWebhook(
      new Ringtrue({ fetch, maxRetries: 0 }),
      secret,
    )(
      new Request("https://larch-lane.example/", {
        method: "POST",
        headers: { [SECRET_HEADER]: secret },
        body: question,
      }),
    );
    expect([answer.status, answer.headers.get("retry-after")]).toEqual([503, "7"]);
  });

  it("will not start with a secret that can be guessed", () => {
    expect(() => answerWebhook(client, "")).toThrow("16 characters");
  });
});

describe("13-fill-a-spreadsheet", () => {
  it("gives the same file when its answer is filled again, and every row is as the schema says", async () => {
    const files = [`${root}examples/spreadsheet/glazes.csv`, `${folder}/once.csv`, `${folder}/twice.csv`];
    expect(await run("13-fill-a-spreadsheet.ts", files[0]!, files[1]!)).toMatchObject({ code: 0 });
    expect(await run("13-fill-a-spreadsheet.ts", files[1]!, files[2]!)).toMatchObject({ code: 0 });
    expect(text("twice.csv")).toBe(text("once.csv"));

    const schema = JSON.parse(readFileSync(`${root}examples/spreadsheet/row.schema.json`, "utf8"));
    const isValid = new Ajv2020({ strict: true, strictRequired: false }).compile(schema);
    const [header = [], ...rows] = parseCsv(text("once.csv"));
    const texts = ["glaze", "clay", "verdict", "remark"];
    const judged = rows.map((cells) => {
      const filled = header.map((column, i) => [column, cells[i]!] as const).filter(([, cell]) => cell !== "");
      return isValid(
        Object.fromEntries(filled.map(([column, cell]) => [column, texts.includes(column) ? cell : Number(cell)])),
      );
    });
    // The last row has a negative weight in it, to show a remark.
    expect(judged).toEqual([true, true, true, false]);
    expect(rows.at(-1)?.at(-1)).toBe("whiting [parts] is -4 and must be at least 0.");
    expect(rows[0]?.length).toBe(header.length);
  });

  it("documents every column that the schema has", () => {
    const schema = JSON.parse(readFileSync(`${root}examples/spreadsheet/row.schema.json`, "utf8"));
    const guide = readFileSync(`${root}examples/spreadsheet/README.md`, "utf8");
    for (const column of Object.keys(schema.properties)) expect(guide).toContain(`\`${column}\``);
  });

  it("keeps a column of one's own, and says what is wrong with each row", async () => {
    const header = "glaze,clay,thickness [mm],clay expansion [1e-6/K],mine,silica [parts],whiting [parts]";
    const rows = [
      'Thaw,red-stoneware,,,"=HYPERLINK(1)",60,40',
      "Hail,red-stoneware,0.3,6.2,,60,40",
      "Gale,porcelan,0.3,,,60,some",
    ];
    writeFileSync(`${folder}/own.csv`, [header, ...rows].join("\n"));
    expect(await run("13-fill-a-spreadsheet.ts", `${folder}/own.csv`, `${folder}/own-out.csv`)).toMatchObject({
      code: 0,
    });
    expect(text("own-out.csv")).toContain(",'=HYPERLINK(1),");
    expect(parseCsv(text("own-out.csv")).map((cells) => cells.at(-1))).toEqual([
      "remark",
      "thickness [mm] is empty.",
      "clay expansion from [°C] is empty. clay expansion to [°C] is empty.",
      "whiting [parts] should be a number, and is “some”.",
    ]);
  });
});

describe("14-label-the-tiles", () => {
  it("draws A4 in true mm, every label on the sheet, and goes on to a second", async () => {
    const names = Array.from({ length: 19 }, (_, i) =>
      i === 0 ? "Rain & <Snow> in the long valley before the thaw" : `Rain ${i}`,
    );
    const rows = names.map((name) => `${name},0.3,42,24,20,14`);
    writeFileSync(
      `${folder}/tiles.csv`,
      ["glaze,thickness mm,potash-feldspar,silica,whiting,kaolin", ...rows].join("\n"),
    );
    const { code, stdout } = await run("14-label-the-tiles.ts", `${folder}/tiles.svg`, `${folder}/tiles.csv`);
    expect([code, stdout]).toEqual([0, expect.stringContaining("19 labels")]);
    const sheets = [text("tiles.svg"), text("tiles-2.svg")];
    for (const svg of sheets) {
      expect(svg).toMatch(/^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/);
      // The check bar: 100 mm in a drawing whose unit is the mm.
      expect(svg).toContain("h100m");
    }
    const places = [...sheets[0]!.matchAll(/translate\((\S+) (\S+)\)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );
    expect(new Set(places.map(String)).size).toBe(18);
    for (const [x, y] of places) {
      // A label is 60 by 38 mm and must leave the 10 mm that printers cannot reach, and the foot of the sheet.
      expect(x >= 10 && x + 60 <= 200 && y >= 10 && y + 38 <= 263).toBe(true);
    }
    expect(sheets[1]!.match(/<g /g)).toHaveLength(1);
    expect(sheets[0]).toContain("Rain &#38; &#60;Snow&#62; in the long valley");
    expect(sheets[0]!.match(/Expected: crazes/g)).toHaveLength(18);
    expect(sheets[0]).toMatch(/stress when cold [+−]\d+ MPa \([+−]\d+ to [+−]\d+\)/);
  });
});
