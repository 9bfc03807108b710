/** Pictures of a fit, each a pure function from a report to SVG text. @module */
// Where the stress lies between lifting and cracking.
export { verdictPicture } from "./verdict/verdict-picture.ts";
// How both shrink as they cool.
export { expansionPicture } from "./expansion/expansion-picture.ts";
// What each oxide pulls.
export { contributionsPicture } from "./contributions/contributions-picture.ts";
// Stress through glaze and wall.
export { stressPicture } from "./stress/stress-picture.ts";
// How far it runs: the wall before and after, viscosity along the firing.
export { runningPicture } from "./running/running-picture.ts";
// Where in a blend it fits: soundness and verdicts along a line, over a triangle or a square, or of many corners.
export { type BlendPictureOptions, blendPicture, blendPlaces } from "./blends/blend-picture.ts";
export { type BlendShape, type BlendToDraw, canDrawBlend } from "./blends/mixtures.ts";
export type { TilePlace } from "./blends/places.ts";
// The mark of a verdict.
export { ringMark } from "./ring-mark.ts";
// Shapes.
export type * from "./types.ts";
