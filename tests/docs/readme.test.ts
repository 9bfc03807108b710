/**
 * What README says is printed is what is printed, and its accuracy table is what data/models holds.
 *
 *     UPDATE_EXAMPLES=1 npx vitest run --config .config/vitest.config.ts tests/docs
 *
 * writes both anew; read the difference before committing it.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Ringtrue } from "@ringtrue/sdk";
import { transform } from "esbuild";
import { describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { DRAWS, INPUTS } from "../../api/engine/fit/draws.ts";
import { PUBLISHED_SETS } from "../../api/engine/glass/expansion/index.ts";
import { glassDensity } from "../../api/engine/glass/index.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import tension from "../../data/models/surface-tension.json" with { type: "json" };
import { close } from "../support/close.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const file = `${root}README.md`;
const readme = () => readFileSync(file, "utf8");

async function printed(source: string): Promise<string> {
  const lines: string[] = [];
  const fakeConsole = { log: (...words: unknown[]) => void lines.push(words.map(String).join(" ")) };
  class InProcess extends Ringtrue {
    constructor() {
      super({ fetch: (url, init) => app.request(url, init) });
    }
  }
  const body = source.replace(/^import .*$/gm, "");
  const { code } = await transform(`async function example() {\n${body}\n}`, { loader: "ts", target: "es2022" });
  await new Function("Ringtrue", "console", `${code}; return example();`)(InProcess, fakeConsole);
  return lines.join("\n");
}

/** What the table shows: file, key of its held-out figures, words, unit. */
const SHOWN: readonly (readonly [string, string, string, string])[] = [
  ["expansion", "glaze", "expansion 20–300 °C, glazes", "1e-6/K"],
  ["expansion", "stoneware-like", "expansion 20–300 °C, stoneware-like glazes", "1e-6/K"],
  ["transition", "glaze", "glass transition, glazes", "°C"],
  ["youngs", "glaze", "Young's modulus, glazes", "GPa"],
  ["viscosity", "log_visc_1200", "viscosity at 1200 °C, glazes", "log10(Pa·s)"],
  ["viscosity", "t_log4", "temperature of 10⁴ Pa·s, glazes", "°C"],
];

function accuracyTable(): string {
  const rows = SHOWN.map(([id, key, what, unit]) => {
    const model = JSON.parse(readFileSync(`${root}data/models/${id}.json`, "utf8"));
    const { n, medianAbsoluteError, p90, rmse } = model.heldOut[key] as Record<string, number>;
    const figures = [medianAbsoluteError, p90, rmse].map((figure) => Number(figure!.toPrecision(3)));
    return `| ${[what, n, ...figures, unit].join(" | ")} |`;
  });
  const head = "| property | glasses | median error | 90th percentile | RMSE | unit |\n|---|---:|---:|---:|---:|---|";
  return [head, ...rows].join("\n");
}

describe("README", () => {
  it("prints what it says", async () => {
    const text = readme();
    const source = /```ts\n([\s\S]*?)```/.exec(text)![1]!;
    const output = await printed(source);
    if (process.env.UPDATE_EXAMPLES) {
      writeFileSync(
        file,
        text.replace(/```text\n[\s\S]*?```/, () => `\`\`\`text\n${output}\n\`\`\``),
      );
      return;
    }
    expect(/```text\n([\s\S]*?)\n```/.exec(text)?.[1]).toBe(output);
  });
  it("states the accuracy that data/models holds", () => {
    const text = readme();
    const block = /(<!-- accuracy:.*?-->\n)([\s\S]*?)(<!-- \/accuracy -->)/;
    const table = `${accuracyTable()}\n`;
    if (process.env.UPDATE_EXAMPLES) {
      writeFileSync(
        file,
        text.replace(block, (_, open: string, __, close: string) => `${open}${table}${close}`),
      );
      return;
    }
    expect(block.exec(text)?.[2]).toBe(table);
  });
  it("counts what there is", () => {
    const count = (words: RegExp) => words.exec(readme())?.[1];
    expect(Number(count(/(\d+) supplier-neutral materials/))).toBe(listMaterials().length);
    const [, draws, inputs] = /(\d+) seeded quasi-random draws of (\d+) uncertain inputs/.exec(readme())!.map(Number);
    expect([draws, inputs]).toEqual([DRAWS, INPUTS.length]);
    const inWords = ["four", "five", "six", "seven", "eight"];
    expect(count(/(\w+) published factor sets/)).toBe(inWords[PUBLISHED_SETS.length - 4]);
  });
  it("states the intervals of density and surface tension that are answered", () => {
    const [, density, least, most] = /density's ±([\d.]+) % .* surface tension's ±(\d+) to (\d+) %/
      .exec(readme())!
      .map(Number);
    const { density: answered } = glassDensity({ SiO2: 0.75, Na2O: 0.15, CaO: 0.1 });
    // Shown to 0.01 g/cm3, of some 2.5: half a unit is 0.2 %.
    close((answered!.high / answered!.value - 1) * 100, density!, { abs: 0.2, why: "the digits shown" });
    const shares = Object.values(tension.sets).map(({ halfWidthShare }) => Math.round(halfWidthShare * 100));
    expect([Math.min(...shares), Math.max(...shares)]).toEqual([least, most]);
  });
  it("opens with the job, and its example takes ten lines", () => {
    const [, , job] = readme().split("\n");
    expect(job).toMatch(/whether a glaze will fit a clay body/);
    const source = /```ts\n([\s\S]*?)```/.exec(readme())![1]!;
    expect(
      source
        .trim()
        .split("\n")
        .filter((line) => line.trim()).length,
    ).toBeLessThanOrEqual(10);
  });
});
