/** Running: how far a glaze flows down a wall, layers, refiring, and faults of the coat. @module */

// The front door
export { estimateRunning } from "./estimate-running.ts";
// The film
export {
  downhill,
  type Film,
  filmProfile,
  frontAdvance,
  GRAVITY,
  meanVelocity,
  passingThickness,
  surfaceVelocity,
} from "./film.ts";
export { edgeAdvance, rollHeight, rollLength } from "./roll.ts";
export { flowShares, mixedShare, mixingLength } from "./stack.ts";
// The firing
export { type ConeEnd, CONES, coneEnd } from "./cones.ts";
export { joinWork, type MeltWork, meltWork, workAt } from "./melt-work.ts";
export { type Leg, readTimeline, type Timeline } from "./timeline.ts";
export { minutesAbove } from "./path.ts";
// Figures taken where a request states none
export { type Application, stiffening } from "./practice.ts";
// Shapes
export type * from "./types.ts";
