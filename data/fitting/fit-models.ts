/** Fits the property models to the measured glasses and writes data/models. Run: npm run fit-models. @module */
import { writeFileSync } from "node:fs";
import { scoreAttempts } from "./attempts.ts";
import { fitProperty, tableOf } from "./fit-property.ts";
import { readGlasses } from "./read-glasses.ts";
import { reportOf } from "./report.ts";
import { scoreSets } from "./score-sets.ts";
import { SPECS } from "./specs.ts";

const started = performance.now();
const glasses = readGlasses();
const fitted = SPECS.map((spec) => fitProperty(spec, glasses));
for (const { spec, model } of fitted) {
  write(`${spec.id}.json`, pretty(model));
  console.log(`\n${spec.title} [${spec.unit}], on publications left out of the fit:`);
  console.table(model.heldOut);
  console.table(model.intervals.filter((row) => row.quarter === "all"));
}
const sets = scoreSets(glasses);
const licence = "Scored on glasses from SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.";
const title = "How the published expansion sets do on the measured glasses";
write("published-sets.json", pretty({ title, unit: "1e-6/K", licence, sets }));
const [expansion] = fitted;
const attempts = expansion ? scoreAttempts(expansion.spec, tableOf(expansion.spec, expansion.rows)) : [];
write("REPORT.md", reportOf(fitted, sets, attempts));
console.log(`\nWrote data/models and its REPORT.md in ${((performance.now() - started) / 1000).toFixed(0)} s.`);

function write(name: string, text: string): void {
  writeFileSync(new URL(`../models/${name}`, import.meta.url), text);
}

/** JSON with lists of numbers on one line, so that a change shows as one changed line. */
function pretty(value: unknown): string {
  const text = JSON.stringify(value, null, 2);
  return `${text.replace(/\[\s+(-?[\d.e+-]+(?:,\s+-?[\d.e+-]+)*)\s+\]/g, (_, list: string) => `[${list.replace(/\s+/g, " ")}]`)}\n`;
}
