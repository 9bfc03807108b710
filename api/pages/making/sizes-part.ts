/** Sizes: sentence, drawing, table, lid and clay. @module */

import type { WorkOutSizesResponse } from "@ringtrue/sdk";
import { fill } from "../fill.ts";
import { plain } from "../say.ts";
import { h, stressed } from "../shared/dom.ts";
import { picture } from "../shared/picture.ts";
import { readNumber } from "../shared/read-number.ts";
import words from "../words.json" with { type: "json" };
import type { MakingDraft } from "./draft.ts";
import { inCell } from "./in-cell.ts";
import { potDrawing } from "./pot-drawing.ts";

type Sizes = WorkOutSizesResponse;

const { making } = words;
const pot = picture(720);
const nameOf = (name: string) => making.names[name as keyof typeof making.names] ?? name;

/** A size of the table to what it is worth: a tenth of a millimetre, a hundredth of an inch. */
const sized = (value: number, unit: string) => plain(value, unit === "in" ? 2 : 1);

/** An end of where a size lands: in inches finer, or both ends of a wall would read alike. */
const end = (value: number, unit: string) => plain(value, unit === "in" ? 3 : 1);

/** Sentence, drawing, sizes, lid and clay. */
export function sizesPart(report: Sizes, draft: MakingDraft): HTMLElement[] {
  const height = report.sizes.find(({ name }) => name === "height");
  const rim = report.sizes.find(({ name }) => name === "rim");
  const { up, from } = report.shrinkage;
  const form = making.formWord[draft.form];
  const title =
    height && rim
      ? fill(making.headline, {
          height: height.target.text,
          form,
          throwHeight: height.throwTo.text,
          throwRim: rim.throwTo.text,
        })
      : report.headline;
  const unit = height?.target.unit ?? draft.unit;
  const because = height
    ? fill(making.because, {
        shrinkage: `${plain(up.value, 1)}\u00a0%`,
        low: plain(up.low, 1),
        high: plain(up.high, 1),
        landsLow: end(height.lands.low, unit),
        landsHigh: `${end(height.lands.high, unit)}\u00a0${unit}`,
      })
    : "";
  if (height) drawPot(draft, { up: up.value, throwTall: height.throwTo.text, firedTall: height.target.text, form });
  const notes = [
    report.set?.message,
    report.lid?.message,
    report.capacity?.message,
    clayWords(report),
    ...report.warnings.map((one) => one.message),
  ];
  return [
    h(
      "div",
      { class: "made" },
      h("h1", {}, stressed(title)),
      h("p", { class: "because" }, because, " ", h("span", { class: "mut" }, fill(making.from, { from }))),
    ),
    h("section", { class: "first" }, h("figure", {}, pot.element, h("figcaption", {}, making.toScale))),
    h(
      "section",
      { "aria-labelledby": "sizes-title" },
      h("h2", { id: "sizes-title" }, making.sizes),
      sizesTable(report, unit),
      ...notes.filter((note) => note).map((note) => h("p", { class: "lede" }, note as string)),
    ),
  ];
}

function drawPot(draft: MakingDraft, told: { up: number; throwTall: string; firedTall: string; form: string }): void {
  const value = (text: string) => readNumber(text).value ?? 0;
  const [height, rim, wall] = [value(draft.height), value(draft.rim), value(draft.wall)];
  const foot = value(draft.foot) || rim;
  const sizes = {
    form: draft.form,
    height,
    rim,
    wall,
    foot,
    belly: value(draft.belly) || rim,
    grown: 1 / (1 - told.up / 100),
  };
  const said = {
    title: fill(making.picture, { form: told.form, throwHeight: told.throwTall, height: told.firedTall }),
    throwTall: fill(making.throwTall, { size: told.throwTall }),
    firedTall: fill(making.firedTall, { size: told.firedTall }),
    dashed: making.dashed,
    solid: making.solid,
    cut: making.cut,
    outside: making.outside,
  };
  pot.show(height > 0 && rim > 0 && wall > 0 ? ({ width }) => potDrawing(sizes, said, width) : null);
}

/** A size without its unit, which stands above its column. */
const bare = (text: string) => text.replace(/ (mm|in)$/, "");

function sizesTable(report: Sizes, unit: string): HTMLElement {
  const rows = [...report.sizes, ...(report.lid ? [report.lid.lid] : [])];
  const seen = new Set<string>();
  const once = rows.filter((row) => !seen.has(nameOf(row.name)) && seen.add(nameOf(row.name)));
  const lands = ({ lands: { low, high } }: (typeof rows)[number]) =>
    fill(making.to, { low: end(low, unit), high: end(high, unit) });
  const head = [
    making.part,
    ...[making.throw, making.leather, making.boneDry, making.fired].map((word) => `${word}, ${unit}`),
    making.lands,
  ];
  return h(
    "table",
    { class: "nums sz" },
    h("thead", {}, h("tr", {}, ...head.map((word) => h("th", { scope: "col" }, word)))),
    h(
      "tbody",
      {},
      ...once.map((row) =>
        h(
          "tr",
          {},
          h("th", { scope: "row" }, nameOf(row.name)),
          h("td", { class: "q" }, ...inCell(making.throwTall, h("b", {}, bare(row.throwTo.text)), unit)),
          h("td", {}, sized(row.leatherHard.value, unit)),
          h("td", {}, sized(row.boneDry.value, unit)),
          h("td", {}, ...inCell(making.firedTall, bare(row.target.text), unit)),
          h("td", { class: "mut" }, ...inCell(making.landsShort, lands(row), unit)),
        ),
      ),
    ),
  );
}

function clayWords({ clay }: Sizes): string | null {
  if (!clay) return null;
  if (!clay.forAll) return fill(making.clayOne, { one: clay.wedge });
  return fill(making.clayWeight, { one: clay.wedge, pieces: clay.forAll.pieces, all: clay.forAll.text });
}
