/** The questions in a table like larch-lane.csv: glaze, thickness as fired [mm], parts by weight of each material. @module */
import { readFile } from "node:fs/promises";
import type { Body } from "@ringtrue/sdk";
import { parseCsv } from "./csv.ts";

/** The red stoneware of the invented studio Larch Lane. */
export const redStoneware: Body = {
  class: "red-stoneware",
  expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 },
};

/** One question for each row, tagged with the glaze's name. Names must differ: they tell the answers apart. */
export async function questionsIn(path: string | URL) {
  const [header = [], ...rows] = parseCsv(await readFile(path, "utf8"));
  const names = new Set<string>();
  return rows.map(([id = "", thickness = "", ...parts]) => {
    if (names.has(id)) throw new Error(`Two rows are called ${id}: give each glaze a name of its own.`);
    names.add(id);
    const recipe = parts
      .map((cell, column) => ({ material: header[column + 2] ?? "", parts: Number(cell) }))
      // What cannot be read as a number goes along: the answer then says what is wrong with that row.
      .filter((line) => line.parts !== 0);
    return { id, glaze: { recipe, thicknessMm: Number(thickness) }, body: redStoneware };
  });
}
