/** The body's front page: any description in, one {@link BodyModel} out. @module */

export {
  at,
  type BodyModel,
  contractionAt,
  fromSpan,
  LONG_TERM_YEARS,
  moistureAge,
  type Spread,
  Z90,
} from "./body-model.ts";
export { ANY_BODY, type BodyClass, findBody, listBodies, type Span } from "./classes.ts";
export { describeBody } from "./describe-body.ts";
export { DEBONDED_QUARTZ, mixture, mixtureStrain, PHASES, toVolume } from "./phases.ts";
export type { Body, BodyFacts, CurvePoint, StatedBodyExpansion } from "./types.ts";
