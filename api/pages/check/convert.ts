/** The bench in other units. @module */
import { readNumber } from "../shared/read-number.ts";
import { fromCelsius, fromKelvins, fromMm, tidy, toCelsius, toKelvins, toMm, type Units } from "../shared/units.ts";
import type { Draft } from "./draft.ts";

/** Writes every typed figure in other units; what is no number stays as typed. */
export function convert(draft: Draft, next: Units): void {
  const { units: old } = draft;
  const turn = (text: string, to: (value: number) => number, decimals: number) => {
    const { value } = readNumber(text);
    return value === null ? text : tidy(to(value), decimals);
  };
  const degrees = (text: string) => turn(text, (v) => fromCelsius(toCelsius(v, old.temperature), next.temperature), 0);
  const rate = (text: string) => turn(text, (v) => fromKelvins(toKelvins(v, old.temperature), next.temperature), 0);
  const length = (text: string) =>
    turn(text, (v) => fromMm(toMm(v, old.length), next.length), next.length === "in" ? 4 : 2);
  for (const glaze of draft.trials) {
    glaze.from = degrees(glaze.from);
    glaze.to = degrees(glaze.to);
    glaze.thickness = length(glaze.thickness);
  }
  draft.body.from = degrees(draft.body.from);
  draft.body.to = degrees(draft.body.to);
  draft.firing = { peak: degrees(draft.firing.peak), cooling: rate(draft.firing.cooling) };
  draft.ware.wall = length(draft.ware.wall);
  draft.units = next;
}
