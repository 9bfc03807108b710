/** What would make it fit. @module */

// The question.
export { findRemedies } from "./find-remedies.ts";
// Its parts, for tests.
export { layOut } from "./bench.ts";
export { KINDS, USUAL } from "./kinds.ts";
export { leastChange, movedOf } from "./least-change.ts";
// The solver that runtimes with packages have at hand.
export { asSolver, type LinearProgram, type LinearSolver, loadHighs } from "./solver.ts";
// Shapes.
export type * from "./types.ts";
