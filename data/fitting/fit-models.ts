/** Fits the property models to the measured glasses and writes data/models. Run: npm run fit-models. @module */
import { fork } from "node:child_process";
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { AttemptScore } from "./attempts.ts";
import { calibrateDensity } from "./calibrate-density.ts";
import { inDomain } from "./domains.ts";
import { fitProperty } from "./fit-property.ts";
import { samplesOf } from "./like-for-like.ts";
import { packedFile } from "./pack-rows.ts";
import { agreementPlot } from "./plot.ts";
import { readGlasses } from "./read-glasses.ts";
import { reportOf } from "./report.ts";
import { scoreSets } from "./score-sets.ts";
import { SPECS } from "./specs.ts";
import { SURFACE_FILE, surfaceAgreement } from "./surface-agreement.ts";
import { fitViscosity } from "./viscosity/fit-viscosity.ts";
import { viscosityPlots } from "./viscosity/report-viscosity.ts";

const started = performance.now();
const attempts = new Promise<AttemptScore[]>((resolve, reject) => {
  // Through the runner, as this file came: a bare process reads no TypeScript.
  const runner = new URL("../../.config/run.mjs", import.meta.url);
  const child = fork(runner, [fileURLToPath(new URL("./attempts-process.ts", import.meta.url))]);
  child.once("message", (scores) => resolve(scores as AttemptScore[])).once("error", reject);
  child.once("exit", (code) => reject(new Error(`attempts-process.ts ended with ${code}`)));
});
const glasses = readGlasses();
const fitted = SPECS.map((spec) => fitProperty(spec, glasses));
for (const { spec, model, rows, heldOut } of fitted) {
  write(`${spec.id}.json`, pretty(model));
  const glazes = rows.flatMap((row, i) => (inDomain("glaze", row.x) ? i : []));
  const measured = glazes.map((i) => rows[i]!.measured[spec.column]!);
  const predicted = glazes.map((i, k) => measured[k]! + heldOut.errors[i]!);
  write(`${spec.id}.svg`, agreementPlot(measured, predicted, { title: spec.title, unit: spec.unit, ...spec.axis }));
  console.log(`\n${spec.title} [${spec.unit}], on publications left out of the fit:`);
  console.table(model.heldOut);
  console.table(model.intervals.filter((row) => row.quarter === "all"));
}
const viscosity = fitViscosity(glasses);
write("viscosity.json", pretty(viscosity.model));
for (const [name, picture] of Object.entries(viscosityPlots(viscosity))) write(name, picture);
console.log("\nViscosity of glazes, on publications left out of the fit [K for temperatures, log10 for viscosities]:");
console.table(viscosity.model.heldOut);
writeFileSync(new URL("../glasses/rows.json", import.meta.url), `${JSON.stringify(packedFile(glasses), null, 2)}\n`);
const sets = scoreSets(glasses);
const samples = samplesOf(fitted.find(({ spec }) => spec.id === "expansion")!);
const licence = "Scored on glasses from SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.";
const title = "How the published expansion sets do on the measured glasses";
write("published-sets.json", pretty({ title, unit: "1e-6/K", licence, sets, samples }));
const surface = surfaceAgreement(glasses);
write("surface-tension.json", pretty({ ...SURFACE_FILE, sets: surface }));
const density = calibrateDensity();
write("REPORT.md", reportOf({ fitted, viscosity, sets, samples, density, surface, attempts: await attempts }));
console.log(`\nWrote data/models and its REPORT.md in ${((performance.now() - started) / 1000).toFixed(0)} s.`);

function write(name: string, text: string): void {
  writeFileSync(new URL(`../models/${name}`, import.meta.url), text);
}

/** JSON with lists of numbers on one line, so that a change shows as one changed line. */
function pretty(value: unknown): string {
  const text = JSON.stringify(value, null, 2);
  return `${text.replace(/\[\s+(-?[\d.e+-]+(?:,\s+-?[\d.e+-]+)*)\s+\]/g, (_, list: string) => `[${list.replace(/\s+/g, " ")}]`)}\n`;
}
