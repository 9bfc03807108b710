/**
 * A table of recipes, each judged on one clay.
 *
 *     npm run example examples/02-stream-a-csv.ts
 *
 * Reads larch-lane.csv: first column the glaze, second its thickness as fired [mm], every other column the parts by
 * weight of the material in its heading. Rows are read as answers are taken, so a file of any length will do.
 *
 * prints
 *
 *     glaze         verdict     stress, + pulls (9 in 10 lie)  of 20 likely cases: crack as they cool / crack in time / hold / shiver
 *     Thaw          crazes      36.8 MPa (-24.7 to 101.7)      12 / 6 / 2 / 0
 *     Drizzle       crazes      67.6 MPa (1.2 to 140.3)        17 / 2 / 1 / 0
 *     Hoarfrost     may-craze   -36.1 MPa (-99.6 to 32.5)      1 / 5 / 13 / 1
 *     Sea Fret      may-craze   -30.2 MPa (-95.2 to 34.1)      1 / 5 / 14 / 0
 *     Hail          crazes      94.8 MPa (32.6 to 166.7)       19 / 1 / 0 / 0
 *     Rime          may-shiver  -81.6 MPa (-140.8 to -23.5)    0 / 1 / 15 / 4
 */
import { open } from "node:fs/promises";
import type { FitLine, RecipeLine } from "@ringtrue/sdk";
import { connect } from "./connect.ts";

/** Cells of a plain CSV: no quotes, no commas inside cells. A spreadsheet's export may need a CSV library. */
async function* rows(path: URL): AsyncGenerator<string[], void, undefined> {
  const file = await open(path);
  try {
    for await (const line of file.readLines()) if (line.trim() !== "") yield line.split(",").map((cell) => cell.trim());
  } finally {
    await file.close();
  }
}

/** One question for each row. The line's id comes back with its answer. */
async function* questions(path: URL): AsyncGenerator<FitLine, void, undefined> {
  let materials: string[] | undefined;
  for await (const [id, thickness, ...cells] of rows(path)) {
    if (!materials) {
      materials = cells;
      continue;
    }
    const recipe: RecipeLine[] = materials
      .map((material, column) => ({ material, parts: Number(cells[column]) }))
      .filter(({ parts }) => parts > 0);
    yield {
      id,
      glaze: { recipe, thicknessMm: Number(thickness) },
      body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
    };
  }
}

const client = await connect();
const print = (...cells: string[]) =>
  console.log(
    cells
      .map((cell, column) => cell.padEnd([14, 12, 31, 0][column] ?? 0))
      .join("")
      .trimEnd(),
  );
const outcomes = ["crazesOnCooling", "crazesLater", "sound", "shivers"] as const;

print(
  "glaze",
  "verdict",
  "stress, + pulls (9 in 10 lie)",
  "of 20 likely cases: crack as they cool / crack in time / hold / shiver",
);
for await (const { id = "", result, error } of client.fit.stream(
  questions(new URL("larch-lane.csv", import.meta.url)),
)) {
  if (error) {
    print(id, "no answer", error.detail);
    continue;
  }
  const { verdict, stress } = result;
  const chances = outcomes.map((outcome) => stress.cases.filter((likely) => likely.outcome === outcome).length);
  print(id, verdict, `${stress.value} ${stress.unit} (${stress.low} to ${stress.high})`, chances.join(" / "));
}
