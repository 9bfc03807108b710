/** Scores the other ways of fitting on a second core while the models are fitted on the first. @module */
import { scoreAttempts } from "./attempts.ts";
import { rowsFor, tableOf } from "./fit-property.ts";
import { readGlasses } from "./read-glasses.ts";
import { SPECS } from "./specs.ts";

const expansion = SPECS.find((spec) => spec.id === "expansion")!;
process.send?.(scoreAttempts(expansion, tableOf(expansion, rowsFor(expansion, readGlasses()))));
