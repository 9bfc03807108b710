/** Writes the report on the fit; runs after fit-models.ts, so that it speaks of the models just written. @module */
import { writeFileSync } from "node:fs";
import { fitReport } from "./fit-report.ts";

const { markdown, svg } = fitReport();
writeFileSync(new URL("../models/FIT-REPORT.md", import.meta.url), markdown);
writeFileSync(new URL("../models/reliability.svg", import.meta.url), svg);
console.log("Wrote data/models/FIT-REPORT.md and its plot.");
