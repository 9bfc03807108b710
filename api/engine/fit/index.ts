/** The fit's front page. @module */
// The main job.
export { checkFit } from "./check-fit.ts";
// The same in short, for long tables.
export { judgeFit } from "./judge-fit.ts";
// Its parts, for tests, lessons and other steps.
export {
  channellingFactor,
  criticalStress,
  delayedShare,
  drivingStress,
  meanBorne,
  stiffnessContrast,
  YEAR_S,
} from "./cracking.ts";
export { edgeEnergy, liftingStress } from "./delamination.ts";
export {
  coolingOf,
  coolingSchedule,
  logSettingViscosity,
  setPointAlong,
  setPointOffset,
  settingRatio,
} from "./set-point.ts";
export { glazeDoubts, type NamedDoubt } from "./glaze-doubts.ts";
export { glassContraction } from "./draw-coat.ts";
export { DEFAULTS } from "./defaults.ts";
export { WIDEST } from "./read-glaze.ts";
export {
  type BilayerStress,
  bilayerStress,
  bodyStress,
  type Layers,
  type StackLayer,
  stackStress,
  straightWallStress,
  thinStress,
} from "./stress.ts";
// What a split ring and a thin strip show.
export {
  cantileverDeflection,
  ringClosing,
  ringClosingOf,
  ringStress,
  spanSag,
  stripCurvature,
  stripMismatch,
} from "./ring-and-strip.ts";
// Shapes.
export type * from "./types.ts";
