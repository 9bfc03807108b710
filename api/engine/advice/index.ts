/** What would make it fit. @module */

// The question.
export { findRemedies } from "./find-remedies.ts";
// Its parts, for tests.
export { layOut } from "./bench.ts";
export { hoursThrough, inWindow, rateAt } from "./schedule.ts";
export {
  effortOf,
  FOR_THE_SCALES,
  LEAST_CHANGE,
  MOST_MOVED,
  materialsMovedOf,
  movedOf,
  PER_MATERIAL,
  type Weighing,
} from "./effort.ts";
export { fewMoves, MOST_MOVES } from "./few-moves.ts";
export { KINDS, USUAL } from "./kinds.ts";
export { leastChange } from "./least-change.ts";
export { type LinearProgram, type LinearSolver, solveLinear } from "./solver.ts";
// Shapes.
export type * from "./types.ts";
