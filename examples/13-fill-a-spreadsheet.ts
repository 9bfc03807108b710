/**
 * A spreadsheet of glazes goes in, the same with the answers beside each row comes out.
 *
 *     npm run example examples/13-fill-a-spreadsheet.ts
 *     npm run example examples/13-fill-a-spreadsheet.ts glazes.csv answered.csv
 *
 * Without files it reads spreadsheet/glazes.csv and prints. spreadsheet/README.md tells what each column holds, and
 * spreadsheet/row.schema.json tells a program. The answered file can be changed and filled again.
 *
 * prints
 *
 *     glaze,clay,clay expansion [1e-6/K],clay expansion ± [1e-6/K],clay expansion from [°C],clay expansion to [°C],thickness [mm],peak [°C],cooling [°C/h],wall [mm],whiting [parts],potash-feldspar [parts],silica [parts],kaolin [parts],talc [parts],verdict,stress [MPa],"stress, low [MPa]","stress, high [MPa]",crack as they cool [of 20],crack in time [of 20],hold [of 20],shiver [of 20],remark
 *     Thaw,red-stoneware,6.2,0.3,20,500,0.3,1240,100,6,20,45,22,13,,crazes,38.6,-31.4,114,12,6,2,0,This glaze will most likely craze on this red stoneware: about 18 in 20.
 *     Hoarfrost,red-stoneware,6.2,0.3,20,500,0.4,1240,100,6,14,20,34,22,10,may shiver,-67.3,-123.2,-9.3,0,1,16,3,This glaze may shiver on this red stoneware: about 3 in 20.
 *     "Sleet, second dip",studio-porcelain,,,,,0.5,1260,80,4,18,30,32,20,,may craze,18,-48.2,87.8,9,3,8,0,This glaze may craze on this studio porcelain: about 12 in 20.
 *     Squall,red-stoneware,6.2,0.3,20,500,0.3,1240,100,6,-4,50,30,24,,,,,,,,,,whiting [parts] is -4 and must be at least 0.
 */
import { readFile, writeFile } from "node:fs/promises";
import type { Body, FitLine } from "@ringtrue/sdk";
import { Ajv2020, type ErrorObject } from "ajv/dist/2020.js";
import { connect } from "./connect.ts";
import { formatCsv, parseCsv } from "./csv.ts";
import { shortForm } from "./short-form.ts";
import schema from "./spreadsheet/row.schema.json" with { type: "json" };

type Row = Record<string, string | number>;
const ANSWERS = [
  "verdict",
  "stress [MPa]",
  "stress, low [MPa]",
  "stress, high [MPa]",
  "crack as they cool [of 20]",
  "crack in time [of 20]",
  "hold [of 20]",
  "shiver [of 20]",
  "remark",
];
const isValid = new Ajv2020({ allErrors: true, verbose: true }).compile<Row>(schema);

/** A row as the schema has it: numbers where it asks for them, and no empty cells. */
function rowOf(header: string[], cells: string[]): Row {
  const isText = (column: string) => ["glaze", "clay"].includes(column) || !/\[.+\]$/.test(column);
  const filled = header.map((column, i) => [column, cells[i] ?? ""] as const).filter(([, cell]) => cell !== "");
  // What is no number stays a text, and the schema finds it.
  const valued = filled.map(([column, cell]) => [
    column,
    isText(column) || !Number.isFinite(Number(cell)) ? cell : Number(cell),
  ]);
  return Object.fromEntries(valued);
}

/** What the schema finds, in a potter's words. */
function slip({ instancePath, keyword, params, message, data }: ErrorObject): string {
  const column = instancePath.slice(1).replaceAll("~1", "/").replaceAll("~0", "~");
  if (params.missingProperty) return `${params.missingProperty} is empty.`;
  if (keyword === "type") return `${column} should be a number, and is “${data}”.`;
  return `${column} is ${data} and ${message?.replace(">=", "at least").replace(">", "more than")}.`;
}

function question(row: Row): FitLine {
  const number = (column: string) => row[column] as number | undefined;
  const value = number("clay expansion [1e-6/K]");
  const [from, to] = [number("clay expansion from [°C]"), number("clay expansion to [°C]")];
  const plusMinus = number("clay expansion ± [1e-6/K]");
  const named = { class: String(row.clay) };
  // The schema lets no figure through without its range.
  const body: Body = value === undefined ? named : { ...named, expansion: { value, rangeC: [from!, to!], plusMinus } };
  const recipe = Object.entries(row)
    .filter(([column, parts]) => column.endsWith(" [parts]") && parts !== 0)
    .map(([column, parts]) => ({ material: column.slice(0, -" [parts]".length), parts: Number(parts) }));
  return {
    glaze: { recipe, thicknessMm: number("thickness [mm]") },
    body,
    firing: { peakC: number("peak [°C]"), coolingCPerHour: number("cooling [°C/h]") },
    ware: { wallMm: number("wall [mm]") },
  };
}

const [table = new URL("spreadsheet/glazes.csv", import.meta.url), file] = process.argv.slice(2);
const [header = [], ...rows] = parseCsv(await readFile(table, "utf8"));
if (header.length === 1 && header[0]?.includes(";")) throw new Error("Save the table with commas between the cells.");
const twice = header.find((column, i) => column !== "" && header.indexOf(column) !== i);
if (twice) throw new Error(`Two columns are headed ${twice}: put them together.`);
// An answered table is a question too: its answers are worked out afresh.
const asked = header.filter((column) => !ANSWERS.includes(column));

const slips = new Map<number, string>();
function* questions(): Generator<FitLine> {
  for (const [i, cells] of rows.entries()) {
    const row = rowOf(header, cells);
    for (const answer of ANSWERS) delete row[answer];
    if (isValid(row)) yield { id: String(i), ...question(row) };
    else slips.set(i, isValid.errors!.map(slip).join(" "));
  }
}

const answers = new Map<number, (string | number)[]>();
const client = await connect();
for await (const { id, result, error } of client.fit.stream(questions())) {
  if (result) {
    const { verdict, inTwenty } = shortForm(result);
    const { value, low, high } = result.stress;
    answers.set(Number(id), [verdict, value, low, high, ...Object.values(inTwenty), result.headline]);
  } else slips.set(Number(id), error.issues?.map(({ message }) => message).join(" ") || error.detail);
}

const text = formatCsv([
  [...asked, ...ANSWERS],
  ...rows.map((cells, i) => [
    ...asked.map((column) => cells[header.indexOf(column)] ?? ""),
    ...(answers.get(i) ?? [...ANSWERS.slice(1).map(() => ""), slips.get(i) ?? ""]),
  ]),
]);
// The mark at the start tells spreadsheets that this is UTF-8.
if (file) await writeFile(file, `\uFEFF${text}`);
else console.log(text);
