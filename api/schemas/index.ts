/**
 * Every named shape of the contract, as the description lists them.
 *
 * @module
 */

// What goes in.
export { BatchReport, BatchRequest } from "./batches.ts";
export * from "./body.ts";
export { BlendGap, BlendLine, BlendPoint, BlendReport, BlendRequest } from "./blends.ts";
export { ChemistryRequest } from "./chemistry.ts";
export { EvidenceReport, EvidenceRequest } from "./evidence.ts";
export { ExpansionLine, ExpansionRequest } from "./expansion.ts";
export * from "./firing.ts";
export { RemediesReport, RemediesRequest } from "./remedies.ts";
export { FitLine, FitRequest } from "./fit-request.ts";
export * from "./glaze.ts";
// What comes out.
export { Chemistry } from "./chemistry.ts";
export { ExpansionReport, ModelEstimate } from "./expansion.ts";
export { FitReport, Verdict } from "./fit-report.ts";
export { FieldIssue, Problem } from "./problem.ts";
export { EngineStamp, Notice, Quantity } from "./quantity.ts";
export { ExpansionLineAnswer, FitLineAnswer, LineProblem } from "./stream.ts";
// What can be looked up.
export { BodyClass } from "./body-class.ts";
export { ExpansionModel } from "./expansion-model.ts";
export { Health } from "./health.ts";
export * from "./lengths.ts";
export { Material } from "./material.ts";
export { RulerReport, RulerRequest } from "./rulers.ts";
export { Bar, Shrinkage, ShrinkageRequest } from "./shrinkage.ts";
export { ShrinkageReport } from "./shrinkage-report.ts";
export { RunningReport } from "./running.ts";
export {
  Coat,
  FiringSegment,
  LaterHeat,
  RunningFiring,
  RunningRequest,
  RunningWall,
} from "./running-request.ts";
export { SizesReport, SizesRequest } from "./sizes.ts";
export { Source } from "./source.ts";
