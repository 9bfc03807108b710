/** What a quench, a steam test and everyday use would show. @module */

import trialData from "../../../data/fit/trials.json" with { type: "json" };
import { larger, smaller } from "../numeric/larger.ts";
import { ascending, middle90Of } from "../numeric/quantiles.ts";
import { quantity, round, UNITS } from "../quantity.ts";
import { POISSON, QUENCH_FACTOR, TOUGHNESS } from "./constants.ts";
import { delayedShare, meanBorne } from "./cracking.ts";
import { DRAWS, type Draws } from "./draws.ts";
import type { Simulation, Situation } from "./simulate.ts";
import type { Trials } from "./types.ts";

/** Every fourth draw is tried: a quarter of the lattice is a lattice too, and chances are told in twentieths. */
const STRIDE = 4;
const TRIED = DRAWS / STRIDE;
/** A quench strains the surface between about 20 and 150 °C; its middle [°C]. */
const QUENCH_MIDDLE_C = 85;
/** 1/(1 − ν): even strain to even stress. */
const BIAXIAL = 1 / (1 - POISSON);
/** A quench is over in seconds [s]. */
const QUENCH_S = 10;
/** Chance from which a step counts as expected to pass, or to fail: 15 of 20. */
const EXPECTED = 0.75;

const { value: FACTOR, sd: FACTOR_SD } = QUENCH_FACTOR;
/** Least share of the thermal stress that a surface feels [-]. */
const LEAST_FACTOR = 0.2;
/** A quench always pulls a little [Pa/K], so that nothing is divided by nought. */
const LEAST_PER_STEP = 1e3;
/** No ware stands a quench by more than this [K] (common practice, no source: clay bodies break well below). */
const CLAY_BREAKS_K = 400;

const quenchShare = delayedShare(QUENCH_S);
/** The trials as bare columns: they are read in the hot loop of every fit. */
const STEAM = {
  toughness: Float64Array.from(trialData.steam, ({ hours }) => delayedShare(hours * 3600)),
  growth: Float64Array.from(trialData.steam, ({ share }) => share),
};
const USE = {
  toughness: Float64Array.from(trialData.use, ({ seconds }) => delayedShare(seconds)),
  differenceK: Float64Array.from(trialData.use, ({ differenceK }) => differenceK),
  share: Float64Array.from(trialData.use, ({ share }) => share),
};
const differences = new Float64Array(TRIED);
const passes = new Int32Array(trialData.steam.length);
const cracks = new Int32Array(trialData.use.length);

/**
 * Tries every draw of a fit.
 *
 *     quench:  σ + f E α ΔT/(1 − ν) ≥ K/√(Zh)        steam:  σ + E ε_moisture/(1 − ν) ≥ K/√(Zh)
 *
 *     use:     σ + s f E α ΔT/(1 − ν) ≥ K/√(Zh),     s its share of the harshness of a quench
 *
 * K = max(K_Ic (L/(A t))^(1/n), K0): less the longer the stress lasts, never below the floor. α is that at 85 °C, the
 * middle of what a surface goes through; f, the share of the full stress that a surface feels, lies between 0.2 and 1.
 * In a piece that bends, what slopes through the coat lowers what it bears ({@link meanBorne}).
 * @param s - the situation
 * @param simulation - its draws, judged
 * @param draws - deviates
 * @returns chances between 0 and 1; quench difference at which cracks begin [K]
 */
export function tryOut(s: Situation, simulation: Simulation, draws: Draws): Trials {
  const { toughness, quench, moisture } = draws.normal;
  const { stress, root, glazePa, alpha, bent } = simulation;
  // The loop fetches nothing but its arrays: reaching out for every figure slowed it down.
  const { value: kIc, sd: kIcSd } = s.toughness;
  const { value: k0, sd: k0Sd } = TOUGHNESS.floor;
  const { value: swelling, sd: swellingSd } = s.body.moisturePercent;
  const cold = coldShare(s);
  const steamShares = STEAM.toughness;
  const steamGrowth = STEAM.growth;
  const useShares = USE.toughness;
  const useDifference = USE.differenceK;
  const useFelt = USE.share;
  passes.fill(0);
  cracks.fill(0);
  for (let j = 0; j < TRIED; j++) {
    const i = j * STRIDE;
    const now = stress[i]!;
    const perRoot = 1 / root[i]!;
    const tough = (kIc + kIcSd * toughness[i]!) * perRoot;
    const floor = (k0 + k0Sd * toughness[i]!) * perRoot;
    const stiff = glazePa[i]! * BIAXIAL;
    const perKelvin = stiff * alpha[i]! * 1e-6 * cold;
    const full = quenchFactor(quench[i]!);
    const grown = larger(swelling + swellingSd * moisture[i]!, 0) * 0.01 * stiff;
    const across = bent === null ? 0 : bent.across[i]!;
    differences[j] = differenceOf(now, tough, floor, perKelvin * full, across);
    if (across > floor) {
      tryBent(now, tough, floor, grown, perKelvin, full, across);
      continue;
    }
    for (let k = 0; k < steamShares.length; k++) {
      if (now + grown * steamGrowth[k]! < larger(steamShares[k]! * tough, floor)) passes[k]!++;
    }
    for (let k = 0; k < useShares.length; k++) {
      const pull = now + perKelvin * useDifference[k]! * smaller(useFelt[k]! * full, 1);
      if (pull >= larger(useShares[k]! * tough, floor)) cracks[k]!++;
    }
  }
  const order = ascending(differences);
  const from = middle90Of(differences, order);
  const { bathC, stepsC, standard } = trialData.quench;
  // The steps rise, so what failed a step has failed all before it: one walk along the draws, the weakest first.
  let failed = 0;
  const steps = stepsC.map((ovenC) => {
    while (failed < TRIED && differences[order[failed]!]! <= ovenC - bathC) failed++;
    return { ovenC, passes: round((TRIED - failed) / TRIED, 3) };
  });
  return {
    quench: {
      standard,
      cracksFrom: quantity(from.value, from.low, from.high, UNITS.difference, { decimals: 0 }),
      steps,
      text: quenchWords(steps),
    },
    steam: trialData.steam.map(({ id, name }, k) => ({ id, name, passes: round(passes[k]! / TRIED, 3) })),
    use: trialData.use.map(({ id, name }, k) => ({ id, name, cracks: round(cracks[k]! / TRIED, 3) })),
  };
}

/** Steam and use of a draw whose stress slopes so much through the coat that it may crack from a face. */
function tryBent(
  now: number,
  tough: number,
  floor: number,
  grown: number,
  perKelvin: number,
  full: number,
  across: number,
): void {
  const bears = (share: number) => meanBorne(larger(share * tough, floor), across);
  for (let k = 0; k < passes.length; k++) {
    if (now + grown * STEAM.growth[k]! < bears(STEAM.toughness[k]!)) passes[k]!++;
  }
  for (let k = 0; k < cracks.length; k++) {
    if (now + perKelvin * USE.differenceK[k]! * smaller(USE.share[k]! * full, 1) >= bears(USE.toughness[k]!))
      cracks[k]!++;
  }
}

/**
 * Quench difference at which each draw cracks.
 *
 *     ΔT = (K/√(Zh) − σ)(1 − ν)/(f E α)
 *
 * @param out - filled with every draw's difference [K], 0 for a glaze that is cracked before, at most 400: beyond it the
 * clay itself has long broken
 */
export function quenchDifferences(
  s: Situation,
  { stress, root, glazePa, alpha, bent }: Simulation,
  { normal: { toughness, quench } }: Draws,
  out: Float64Array,
): void {
  const { value: kIc, sd: kIcSd } = s.toughness;
  const { value: k0, sd: k0Sd } = TOUGHNESS.floor;
  const cold = coldShare(s);
  for (let i = 0; i < out.length; i++) {
    const perRoot = 1 / root[i]!;
    const tough = (kIc + kIcSd * toughness[i]!) * perRoot;
    const floor = (k0 + k0Sd * toughness[i]!) * perRoot;
    const perKelvin = glazePa[i]! * BIAXIAL * alpha[i]! * 1e-6 * cold;
    const across = bent === null ? 0 : bent.across[i]!;
    out[i] = differenceOf(stress[i]!, tough, floor, perKelvin * quenchFactor(quench[i]!), across);
  }
}

/** Expansion at the temperatures of a quench, over the mean 20–300 °C [-]. */
function coldShare({ rise }: Situation): number {
  return 1 + rise.perKelvin * (QUENCH_MIDDLE_C - rise.anchorC);
}

/**
 * @param tough - tension at which a crack runs at once [Pa]; `floor` the least at which it ever creeps [Pa]
 * @param perStep - tension that a kelvin of quench adds [Pa/K]
 * @param across - how far stress slopes through the coat [Pa]
 */
function differenceOf(stress: number, tough: number, floor: number, perStep: number, across: number): number {
  const even = larger(quenchShare * tough, floor);
  const bears = across > even ? meanBorne(even, across) : even;
  const difference = (bears - stress) / larger(perStep, LEAST_PER_STEP);
  return smaller(larger(difference, 0), CLAY_BREAKS_K);
}

function quenchFactor(deviate: number): number {
  return smaller(larger(FACTOR + FACTOR_SD * deviate, LEAST_FACTOR), 1);
}

function quenchWords(steps: Trials["quench"]["steps"]): string {
  const pass = steps.filter(({ passes }) => passes >= EXPECTED).at(-1);
  const fail = steps.find(({ passes }) => passes <= 1 - EXPECTED);
  const into = `into ${trialData.quench.bathC}\u00a0°C water`;
  if (!pass && !fail) return `No step of the quench ${into} can be called: the doubt is too wide.`;
  if (!pass)
    return `Expected to fail the quench from ${fail!.ovenC}\u00a0°C ${into}; whether it passes a milder one is open.`;
  if (!fail)
    return `Expected to pass the quench from ${pass.ovenC}\u00a0°C ${into}; no step up to ${steps.at(-1)!.ovenC}\u00a0°C is sure to crack it.`;
  return `Expected to pass the quench from ${pass.ovenC}\u00a0°C ${into}, and to fail from ${fail.ovenC}\u00a0°C.`;
}

/** Keys of the sources behind the trials. */
export const TRIAL_SOURCES: readonly string[] = [
  ...new Set([trialData.quench, ...trialData.steam, ...trialData.use].flatMap(({ sources }) => sources)),
];
