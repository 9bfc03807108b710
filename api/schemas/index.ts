/**
 * Every named shape of the contract, as the description lists them.
 *
 * @module
 */

export * from "./body.ts";
// What can be looked up.
export { BodyClass } from "./body-class.ts";
// What comes out.
export { Chemistry, ChemistryRequest } from "./chemistry.ts";
export { ExpansionLine, ExpansionReport, ExpansionRequest, ModelEstimate } from "./expansion.ts";
export { ExpansionModel } from "./expansion-model.ts";
export * from "./firing.ts";
export { FitLine, FitReport, FitRequest, Verdict } from "./fit-report.ts";
// What goes in.
export * from "./glaze.ts";
export { Health } from "./health.ts";
export { Material } from "./material.ts";
export { FieldIssue, Problem } from "./problem.ts";
export { EngineStamp, Notice, Quantity } from "./quantity.ts";
export { Source } from "./source.ts";
export { ExpansionLineAnswer, FitLineAnswer, LineProblem } from "./stream.ts";
