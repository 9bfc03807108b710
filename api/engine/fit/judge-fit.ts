/** The main job in short, for long tables. @module */
import { DATA_VERSION, ENGINE_VERSION } from "../version.ts";
import { sourcesOf } from "./answer-sources.ts";
import { cautionsFor } from "./cautions.ts";
import { headline } from "./reasons.ts";
import { probabilitiesOf } from "./simulate.ts";
import type { FitRequest, FitVerdict } from "./types.ts";
import { weighUp } from "./weigh-up.ts";

/**
 * Judges one glaze on one body: the verdict and the figures that it rests on, from the same draws as the whole answer.
 * Left out are reasons, trials, what each oxide does and what to do next, which are a third of the work.
 * @param request - as for `checkFit`; `include` asks for nothing here
 * @returns verdict, chances [-], stress [MPa, tension positive] with its twenty cases, thresholds, expansions, warnings, cautions
 * @throws EngineError with every issue, pointers from the root of the request
 * @example judgeFit({ glaze: { expansion: { value: 8.1 } }, body: { expansion: { value: 5.4 } } }).verdict // "crazes"
 */
export function judgeFit(request: FitRequest): FitVerdict {
  const { seed, prepared, simulation, summary, judgement, figures } = weighUp(request);
  return {
    verdict: judgement.verdict,
    headline: headline(prepared, judgement),
    probabilities: probabilitiesOf(simulation),
    stress: figures.stress,
    thresholds: figures.thresholds,
    mismatch: figures.mismatch,
    setPoint: figures.setPoint,
    glaze: figures.glaze,
    body: figures.body,
    engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
    warnings: prepared.warnings,
    cautions: [...prepared.cautions, ...cautionsFor(prepared, summary, judgement)],
    sources: sourcesOf(prepared, [], []),
  };
}
