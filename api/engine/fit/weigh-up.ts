/** From a question to its judgement: what every answer starts with. @module */
import { DEFAULT_SEED } from "../version.ts";
import { type Draws, drawsFor } from "./draws.ts";
import { type Figures, figuresOf } from "./figures.ts";
import { type Simulation, simulate } from "./simulate.ts";
import { type Prepared, prepare } from "./situation.ts";
import { type Summary, summarise } from "./summary.ts";
import type { FitRequest } from "./types.ts";
import { type Judgement, judge, twentyCases } from "./verdict.ts";

/** A question weighed up. The simulation's arrays are good until the next one. */
export interface Weighed {
  seed: number;
  prepared: Prepared;
  draws: Draws;
  simulation: Simulation;
  summary: Summary;
  judgement: Judgement;
  figures: Figures;
}

/**
 * Prepares, draws, sums up and judges.
 * @throws EngineError with every issue, pointers from the root of the request
 */
export function weighUp(request: FitRequest): Weighed {
  const seed = request.seed ?? DEFAULT_SEED;
  const prepared = prepare(request);
  const draws = drawsFor(seed);
  const simulation = simulate(prepared.situation, draws);
  const summary = summarise(prepared.situation, simulation);
  const cases = twentyCases(simulation, summary.order, summary.thresholds);
  const figures = figuresOf(prepared, summary, simulation, cases);
  return { seed, prepared, draws, simulation, summary, judgement: judge(cases), figures };
}
