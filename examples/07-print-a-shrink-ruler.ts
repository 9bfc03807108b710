/**
 * A ruler whose printed centimetre is a fired centimetre, as a PDF to print at true size.
 *
 *     npm run example examples/07-print-a-shrink-ruler.ts ruler.pdf
 *
 * Without a file it only says what would be printed.
 *
 * prints
 *
 *     Fired ruler for 12 %, one sheet of A4: 100 mm fired is drawn 113.64 mm long. Measure the check bar before you trust the rest.
 *     100 mm fired: 113.64 mm on paper (112.99 to 114.29)
 *     the whole ruler: 454.55 mm on paper (451.98 to 457.14)
 *     sheet 1: 297 by 210 mm, check bar 100 mm
 */
import { writeFile } from "node:fs/promises";
import { connect } from "./connect.ts";

const client = await connect();
const question = {
  shrinkage: { percent: 12, plusMinus: 0.5 },
  draw: { ruler: { length: "40 cm" } },
  page: "A4" as const,
};

const { headline, lengths, sheets, checkBarMm } = await client.rulers.draw(question);
console.log(headline);
for (const { name, drawn } of lengths) {
  console.log(`${name}: ${drawn.value} ${drawn.unit} on paper (${drawn.low} to ${drawn.high})`);
}
for (const [i, { widthMm, heightMm }] of sheets.entries()) {
  console.log(`sheet ${i + 1}: ${widthMm} by ${heightMm} mm, check bar ${checkBarMm} mm`);
}
const file = process.argv[2];
if (file) await writeFile(file, await client.rulers.pdf(question));
