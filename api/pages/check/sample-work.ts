/** What stands on the bench at a first visit: Thaw of Larch Lane, and two changes to it. @module */
import { RED_STONEWARE, THAW, THAW_ON_RED_STONEWARE } from "../../schemas/larch-lane.ts";
import words from "../words.json" with { type: "json" };
import type { Work } from "./work.ts";

const { glaze, more, talc } = words.sample;

/** Thaw with the parts of some materials changed. */
function changed(parts: Readonly<Record<string, number>>) {
  const rest = THAW.recipe.map((line) => ({ ...line, parts: parts[line.material] ?? line.parts }));
  const added = Object.entries(parts).filter(([material]) => !THAW.recipe.some((line) => line.material === material));
  return { ...THAW, recipe: [...rest, ...added.map(([material, amount]) => ({ material, parts: amount }))] };
}

export const SAMPLE: Work = {
  format: "ringtrue-work",
  version: 1,
  current: "A",
  trials: [
    { letter: "A", name: glaze, glaze: THAW },
    { letter: "B", name: more, glaze: changed({ silica: 34 }) },
    { letter: "C", name: talc, glaze: changed({ silica: 34, whiting: 9, talc: 9 }) },
  ],
  body: RED_STONEWARE,
  firing: THAW_ON_RED_STONEWARE.firing,
  ware: THAW_ON_RED_STONEWARE.ware,
};
