/**
 * A label for every test tile, with what was expected of it, to print at true size on A4.
 *
 *     npm run example examples/14-label-the-tiles.ts tiles.svg
 *     npm run example examples/14-label-the-tiles.ts tiles.svg recipes.csv
 *
 * Reads larch-lane.csv where no other table is named. Without a file it only says what would be printed; what does not
 * fit on one sheet goes on tiles-2.svg and so on. Print at 100 % and measure the check bar.
 *
 * prints
 *
 *     Thaw: crazes; in 20: 18 craze, 2 hold, 0 shiver; +37 MPa (−25 to +102)
 *     Drizzle: crazes; in 20: 19 craze, 1 hold, 0 shiver; +68 MPa (+1 to +140)
 *     Hoarfrost: may craze; in 20: 6 craze, 13 hold, 1 shiver; −36 MPa (−100 to +33)
 *     Sea Fret: may craze; in 20: 6 craze, 14 hold, 0 shiver; −30 MPa (−95 to +34)
 *     Hail: crazes; in 20: 20 craze, 0 hold, 0 shiver; +95 MPa (+33 to +167)
 *     Rime: may shiver; in 20: 1 craze, 15 hold, 4 shiver; −82 MPa (−141 to −24)
 *     6 labels of 60 by 38 mm, 18 to a sheet of A4: 1 to print.
 */
import { writeFile } from "node:fs/promises";
import { connect } from "./connect.ts";
import { questionsIn } from "./larch-lane.ts";
import { type ShortForm, shortForm } from "./short-form.ts";

interface Label extends ShortForm {
  glaze: string;
  thicknessMm: number;
}

// All lengths are in mm on an A4 sheet, 210 by 297.
const [WIDTH, HEIGHT, ACROSS, DOWN, LEFT, TOP, PADDING] = [60, 38, 3, 6, 15, 14, 3];
const ON_A_SHEET = ACROSS * DOWN;

// Characters that XML cannot hold at all are left out.
const escaped = (text: string) =>
  text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, "")
    .replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** A line of text, set smaller where it would leave the label; a letter is taken as 0.56 of its height. */
function line(text: string, y: number, size: number, weight = 400): string {
  const fitting = Math.min(size, (WIDTH - 2 * PADDING) / (0.56 * [...text].length));
  return `<text x="${PADDING}" y="${y}" font-size="${fitting.toFixed(2)}" font-weight="${weight}">${escaped(text)}</text>`;
}

function drawLabel({ glaze, thicknessMm, verdict, chances, stress }: Label, place: number): string {
  const [x, y] = [LEFT + (place % ACROSS) * WIDTH, TOP + Math.floor(place / ACROSS) * HEIGHT];
  return [
    `<g transform="translate(${x} ${y})">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="none" stroke="#888" stroke-width="0.15"/>`,
    line(glaze, 7, 4.6, 700),
    line(`red stoneware, glaze ${thicknessMm} mm thick`, 11.5, 2.6),
    line(`Expected: ${verdict}`, 17, 3.4, 700),
    line(chances, 21, 2.6),
    line(`stress when cold ${stress}`, 25, 2.6),
    line("Fired ________ to _______ °C. Seen:", 30, 2.6),
    `<path d="M${PADDING} 35.5H${WIDTH - PADDING}" stroke="#888" stroke-width="0.15"/>`,
    "</g>",
  ].join("\n");
}

/** The sheets for any number of labels. */
function drawSheets(labels: Label[]): string[] {
  const sheets = Array.from({ length: Math.ceil(labels.length / ON_A_SHEET) }, (_, i) =>
    labels.slice(i * ON_A_SHEET, (i + 1) * ON_A_SHEET),
  );
  return sheets.map((shown, i) =>
    [
      `<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" viewBox="0 0 210 297" font-family="sans-serif" fill="#111" role="img">`,
      `<title>Labels for test tiles, sheet ${i + 1} of ${sheets.length}</title>`,
      ...shown.map(drawLabel),
      `<path d="M15 265v4m0 -2h100m0 -2v4" fill="none" stroke="#111" stroke-width="0.2"/>`,
      `<text x="118" y="268" font-size="2.8">Check bar: 100 mm. If it is not, print at 100 %.</text>`,
      `<text x="15" y="275" font-size="2.8">Worked out, not yet fired. Stress: + is pulled, − is squeezed; nine times in ten it lies within the bracket.</text>`,
      `<text x="15" y="280" font-size="2.8">A calculation never certifies that ware is safe for food.</text>`,
      "</svg>\n",
    ].join("\n"),
  );
}

const [file, table = new URL("larch-lane.csv", import.meta.url)] = process.argv.slice(2);
const questions = await questionsIn(table);
const client = await connect();
const labels: Label[] = [];
for await (const { line, id = "", result, error } of client.fit.stream(questions)) {
  if (error) {
    console.error(`${id}: no label. ${error.issues?.map(({ message }) => message).join(" ") || error.detail}`);
    continue;
  }
  const { thicknessMm = 0 } = questions[line - 1]!.glaze;
  labels.push({ glaze: id, thicknessMm, ...shortForm(result) });
}

for (const { glaze, verdict, chances, stress } of labels) console.log(`${glaze}: ${verdict}; ${chances}; ${stress}`);
const sheets = drawSheets(labels);
console.log(
  `${labels.length} labels of ${WIDTH} by ${HEIGHT} mm, ${ON_A_SHEET} to a sheet of A4: ${sheets.length} to print.`,
);
for (const [i, sheet] of file ? sheets.entries() : []) {
  await writeFile(i === 0 ? file! : file!.replace(/(\.svg)?$/, `-${i + 1}.svg`), sheet);
}
