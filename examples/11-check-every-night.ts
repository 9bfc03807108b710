/**
 * What changed overnight? A table of recipes judged, as a report in Markdown that names every change since the last.
 *
 *     npm run example examples/11-check-every-night.ts
 *     npm run example examples/11-check-every-night.ts recipes.csv report.md
 *
 * Without files it reads larch-lane.csv and prints. With a report's file it first reads what the last run left there,
 * then replaces it. Ends with exit code 1 when a row got no answer, so that a scheduler notices.
 *
 * prints
 *
 *     # Do the glazes fit the red stoneware?
 *
 *     The clay: red stoneware, 6.2 ± 0.3 ×10⁻⁶/K from 20 to 500 °C. The counts are of 20 equally likely cases. The stress is
 *     that in the cold glaze, nine times in ten within the bracket; above 0 it is pulled, below 0 squeezed.
 *
 *     | glaze | verdict | crack as they cool | crack in time | hold | shiver | stress | since last time |
 *     | --- | --- | --- | --- | --- | --- | --- | --- |
 *     | Thaw | crazes | 12 | 6 | 2 | 0 | +37 MPa (−25 to +102) | new |
 *     | Drizzle | crazes | 17 | 2 | 1 | 0 | +68 MPa (+1 to +140) | new |
 *     | Hoarfrost | may craze | 1 | 5 | 13 | 1 | −36 MPa (−100 to +33) | new |
 *     | Sea Fret | may craze | 1 | 5 | 14 | 0 | −30 MPa (−95 to +34) | new |
 *     | Hail | crazes | 19 | 1 | 0 | 0 | +95 MPa (+33 to +167) | new |
 *     | Rime | may shiver | 0 | 1 | 15 | 4 | −82 MPa (−141 to −24) | new |
 */
import { readFile, rename, writeFile } from "node:fs/promises";
import { connect } from "./connect.ts";
import { questionsIn } from "./larch-lane.ts";
import { shortForm } from "./short-form.ts";

const COLUMNS = [
  "glaze",
  "verdict",
  "crack as they cool",
  "crack in time",
  "hold",
  "shiver",
  "stress",
  "since last time",
];

const escaped = (text: string) => text.replace(/\s+/g, " ").replace(/[\\`*_{}[\]<>|~#&]/g, "\\$&");
const tableRow = (cells: string[]) => `| ${cells.map(escaped).join(" | ")} |`;

/** The rows of a report's table by the glaze's name, as an earlier run wrote them. */
function rowsOf(report: string): Map<string, string[]> {
  const cells = (line: string) =>
    [...line.slice(1).matchAll(/((?:\\.|[^|\\])*)\|/g)].map(([, cell = ""]) => cell.trim().replace(/\\(.)/g, "$1"));
  const rows = report.split("\n").filter((line) => line.startsWith("| "));
  // The first two are the heading and the rule below it.
  return new Map(rows.slice(2).map((line) => [cells(line)[0] ?? "", cells(line)]));
}

function change(before: string[] | undefined, now: string[]): string {
  if (!before) return "new";
  const [, verdict, cooling, later, hold, shiver, stress] = before;
  if (verdict !== now[1]) return `was: ${verdict}`;
  const counts = [cooling, later, hold, shiver];
  if (counts.some((count, i) => count !== now[i + 2])) return `was: ${counts.join(" / ")} of 20`;
  return stress === now[6] ? "same" : `was: ${stress}`;
}

const [table = new URL("larch-lane.csv", import.meta.url), file] = process.argv.slice(2);
const last = file
  ? await readFile(file, "utf8").catch((error) => (error.code === "ENOENT" ? "" : Promise.reject(error)))
  : "";
const before = rowsOf(last);
const client = await connect();

const rows: string[][] = [];
for await (const { id = "", result, error } of client.fit.stream(await questionsIn(table))) {
  let now = [id, "no answer", "–", "–", "–", "–", "–"];
  if (result) {
    const { verdict, inTwenty, stress } = shortForm(result);
    now = [id, verdict, ...Object.values(inTwenty).map(String), stress];
  } else process.exitCode = 1;
  const why = error ? `: ${error.issues?.map(({ message }) => message).join(" ") || error.detail}` : "";
  rows.push([...now, change(before.get(id), now) + why]);
}
const gone = [...before.keys()].filter((name) => !rows.some(([id]) => id === name));

const report = [
  "# Do the glazes fit the red stoneware?",
  "",
  "The clay: red stoneware, 6.2 ± 0.3 ×10⁻⁶/K from 20 to 500 °C. The counts are of 20 equally likely cases. The stress is",
  "that in the cold glaze, nine times in ten within the bracket; above 0 it is pulled, below 0 squeezed.",
  "",
  tableRow(COLUMNS),
  tableRow(COLUMNS.map(() => "---")),
  ...rows.map(tableRow),
  ...(gone.length > 0 ? ["", `No longer in the table: ${gone.map(escaped).join(", ")}.`] : []),
  "",
].join("\n");

if (file) {
  // Written beside and moved into place: a run cut short leaves the last report as it was.
  await writeFile(`${file}.new`, report);
  await rename(`${file}.new`, file);
} else console.log(report);
