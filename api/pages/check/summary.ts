/** What is on the bench in a line: short for the folded bench, whole for paper. @module */
import words from "../words.json" with { type: "json" };
import { currentGlaze, type Draft } from "./draft.ts";
import { sayId } from "./find-material.ts";

type Bodies = readonly { id: string; name: string }[];
const { check } = words;

const bodyName = ({ body }: Draft, bodies: Bodies) =>
  body.given ? check.ownCurve : (bodies.find(({ id }) => id === body.class)?.name ?? body.class.replaceAll("-", " "));

const withUnit = (text: string, unit: string) => (text.trim() ? `${text.trim()}\u00a0${unit}` : "");
const join = (parts: string[]) => parts.filter((part) => part !== "").join(" · ");

/** @example summary(draft, bodies) // "Thaw · red stoneware · 1240 °C · 0.3 mm" */
export function summary(draft: Draft, bodies: Bodies): string {
  const glaze = currentGlaze(draft);
  const { temperature, length } = draft.units;
  return join([
    glaze.name || check.unnamed,
    bodyName(draft, bodies),
    withUnit(draft.firing.peak, `°${temperature}`),
    withUnit(glaze.thickness, length),
  ]);
}

/** Everything the answer on the sheet was asked with, so that the sheet can stand alone. */
export function everything(draft: Draft, bodies: Bodies): string {
  const glaze = currentGlaze(draft);
  const { temperature, length } = draft.units;
  const { body, firing, ware } = draft;
  const degrees = `°${temperature}`;
  const named = glaze.kind === "recipe" ? glaze.rows.map((row) => [sayId(row.material), row.parts]) : [];
  const oxides = glaze.kind === "analysis" ? glaze.oxides.map((row) => [row.oxide, row.amount]) : [];
  const made = [...named, ...oxides].filter(([, amount]) => amount !== "").map(([name, amount]) => `${name} ${amount}`);
  const plus = (half: string) => (half.trim() ? ` ±${half}` : "");
  const range = (from: string, to: string) => (to.trim() ? ` (${from || "20"}–${to} ${degrees})` : "");
  const stated = (given: { expansion: string; plusMinus: string; from: string; to: string }) =>
    given.expansion.trim()
      ? `${given.expansion}${plus(given.plusMinus)} ${check.perK}${range(given.from, given.to)}`
      : "";
  return join([
    made.join(", "),
    glaze.kind === "expansion" ? stated(glaze) : "",
    bodyName(draft, bodies),
    stated(body),
    withUnit(firing.peak, degrees),
    withUnit(firing.cooling, `${degrees}/h`),
    withUnit(glaze.thickness, length),
    `${check.wall} ${withUnit(ware.wall, length)}`,
    check.faces[ware.glazed],
  ]);
}
