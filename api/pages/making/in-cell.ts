/** A figure in a cell of a table. @module */
import { type Child, h } from "../shared/dom.ts";

/**
 * The figure; on a phone, where no head of a column says so, with what it is and its unit.
 * @param sentence - what it is, with a gap for it
 * @param unit - where the sentence does not say it
 */
export function inCell(sentence: string, figure: Child, unit = ""): Child[] {
  const [before, after = ""] = sentence.split(/\{\w+\}/);
  const onPhone = (text: string | undefined) => (text ? h("span", { class: "onphone" }, text) : null);
  return [onPhone(before), figure, onPhone(unit ? `${after}\u00a0${unit}` : after)];
}
