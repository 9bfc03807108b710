/** What a newcomer reads in the terminal before the service starts. @module */
import type { FitReport } from "../engine/fit/types.ts";
import { sampleRecipe, sampleWare, sayCases, tellingReasons } from "./sample.ts";
import { sayStress } from "./say.ts";

/** Widest line [characters]. */
const WIDTH = 84;

/**
 * A real fit in plain words.
 * @param report - the sample's answer
 * @param address - where the service will listen, e.g. `http://localhost:4600`
 */
export function greeting(report: FitReport, address: string): string {
  const { headline, stress, next, warnings, cautions } = report;
  const blocks = [
    wrap(`Thaw, a glaze of the invented studio Larch Lane: ${sampleRecipe} (parts by weight).`),
    wrap(`On ${sampleWare}.`),
    wrap(headline),
    wrap(`${sayCases(report)} Stress in the glaze: ${sayStress(stress)}; tension is +.`),
    list("Why", tellingReasons(report)),
    list(
      "What next",
      next.map((step) => step.text),
    ),
    list(
      "Mind",
      [...warnings, ...cautions].map((notice) => notice.message),
    ),
    list("Look", [`${address}/ (the front page)`, `${address}/reference (every call, to try)`]),
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function list(title: string, items: string[]): string {
  return items.length ? [title, ...items.map((item) => wrap(`- ${item}`, "  "))].join("\n") : "";
}

/** A blank between a number and its unit, where no line may break. */
const BEFORE_UNIT = /(?<=\d) (?=°C|MPa|GPa|mm|%|K\b)/g;

/** Breaks a text into lines at blanks; the lines after the first are indented. */
function wrap(text: string, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.replace(BEFORE_UNIT, "\u00a0").split(" ")) {
    if (line.length + word.length > WIDTH && line.trim() !== "") {
      lines.push(line.trimEnd());
      line = indent;
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()].join("\n").replaceAll("\u00a0", " ");
}
