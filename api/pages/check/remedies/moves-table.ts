/** What a new recipe changes, line by line; the rest stays as it stands. @module */
import type { Remedy } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import words from "../../words.json" with { type: "json" };

const { remedies: say } = words;

/** Parts as weighed, with a true minus. @example signed(-10.5) // "−10.5" */
const signed = (parts: number) => (parts < 0 ? `−${Math.abs(parts)}` : `+${parts}`);

/**
 * @param recipe - with the lines that move and those that stay
 * @param title - of the remedy
 */
export function movesTable({ lines, additions }: NonNullable<Remedy["recipe"]>, title: string): HTMLElement {
  const moved = [...lines, ...additions].filter(({ change }) => change !== 0);
  const sum = Math.round(lines.reduce((total, { after }) => total + after, 0) * 10) / 10;
  const row = (name: string, now: number, then: number, change: number) =>
    h(
      "tr",
      {},
      h("th", { scope: "row" }, name),
      h("td", {}, now),
      h("td", {}, h("b", {}, then)),
      h("td", { class: "mut" }, signed(change)),
    );
  const head = [say.material, say.partsNow, say.partsThen, say.partsMore];
  return h(
    "table",
    { class: "moves", "aria-label": fill(say.changes, { title }) },
    h("thead", {}, h("tr", {}, ...head.map((text) => h("th", { scope: "col" }, text)))),
    h(
      "tbody",
      {},
      ...moved.map(({ name, before, after, change }) => row(name, before, after, change)),
      sum === 100 ? null : row(say.together, 100, sum, Math.round((sum - 100) * 10) / 10),
    ),
  );
}
