/** Whether a chance told is a chance kept: verdict probabilities against pots drawn at random. @module */
import { listBodies } from "../../api/engine/body/index.ts";
import { DRAWS, drawsOf, INPUTS } from "../../api/engine/fit/draws.ts";
import { checkFit, type FitRequest } from "../../api/engine/fit/index.ts";
import { simulate } from "../../api/engine/fit/simulate.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { seededRandom } from "../../api/engine/numeric/lattice.ts";

/** Chances told between two tenths, and how often the outcome came. */
export interface ReliabilityBin {
  from: number;
  to: number;
  /** Pots drawn. */
  n: number;
  /** Mean chance told [-]. */
  told: number;
  /** Share of pots with the outcome [-]. */
  came: number;
}

const BINS = 10;
const QUESTIONS = 240;

/**
 * Asks many questions; for each draws as many pots at random from the stated doubts, each judged by the physics alone,
 * and compares how often they craze with the chance that the fit told.
 * @param seed - of the questions and of the pots
 * @returns ten bins for crazing (at once or later) and ten for shivering
 * @remarks It checks the arithmetic of the probabilities, not whether the doubts themselves are right: that is what the
 * held-out coverage of the glass models and the recorded cases are for.
 */
export function reliability(seed = 7): { crazes: ReliabilityBin[]; shivers: ReliabilityBin[] } {
  const random = seededRandom(seed);
  const bodies = listBodies();
  const empty = () => Array.from({ length: BINS }, () => ({ n: 0, told: 0, came: 0 }));
  const sums = { crazes: empty(), shivers: empty() };
  for (let q = 0; q < QUESTIONS; q++) {
    const request: FitRequest = {
      glaze: {
        expansion: { value: 3 + 6.5 * random(), rangeC: [20, 300], plusMinus: 0.1 + 0.5 * random() },
        transitionC: 520 + 220 * random(),
        thicknessMm: 0.1 + 0.8 * random(),
      },
      body: { class: bodies[Math.floor(random() * bodies.length)]!.id },
    };
    const { probabilities: p } = checkFit(request);
    const points = INPUTS.map(() =>
      Float64Array.from({ length: DRAWS }, () => Math.min(Math.max(random(), 1e-9), 1 - 1e-9)),
    );
    const { counts } = simulate(prepare(request).situation, drawsOf(points));
    const tell = (bins: { n: number; told: number; came: number }[], told: number, came: number) => {
      const bin = bins[Math.min(Math.floor(told * BINS), BINS - 1)]!;
      bin.n += DRAWS;
      bin.told += told * DRAWS;
      bin.came += came;
    };
    tell(sums.crazes, p.crazesOnCooling + p.crazesLater, counts.crazesOnCooling + counts.crazesLater);
    tell(sums.shivers, p.shivers, counts.shivers);
  }
  const finish = (bins: { n: number; told: number; came: number }[]): ReliabilityBin[] =>
    bins.map(({ n, told, came }, i) => ({
      from: i / BINS,
      to: (i + 1) / BINS,
      n,
      told: n ? told / n : 0,
      came: n ? came / n : 0,
    }));
  return { crazes: finish(sums.crazes), shivers: finish(sums.shivers) };
}
