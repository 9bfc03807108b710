/** What a simulation amounts to: centres and intervals, thresholds at this thickness. @module */
import { at, moistureAge, type Spread, Z90 } from "../body/index.ts";
import { ascending, middle90Of } from "../numeric/quantiles.ts";
import { type Quantity, quantileOf, quantity, UNITS } from "../quantity.ts";
import { INTERFACE, POISSON, TENSILE_SHARE, TOUGHNESS } from "./constants.ts";
import { channellingFactor, criticalStress, delayedShare, meanBorne, stiffnessContrast, YEAR_S } from "./cracking.ts";
import { liftingStress } from "./delamination.ts";
import { DRAWS } from "./draws.ts";
import { type Simulation, type Situation, skinOf } from "./simulate.ts";
import type { CentralThresholds } from "./verdict.ts";

/** A centre and its 90 % interval, in the engine's units. */
export interface Middle {
  low: number;
  value: number;
  high: number;
}

/** Centres and intervals of everything drawn. */
export interface Summary {
  /** Draws from the most squeezed to the most stretched; good until the next fit. */
  order: Uint16Array;
  stress: Middle;
  mismatch: Middle;
  setPointC: Middle;
  glazeMean: Middle;
  bodyMean: Middle;
  thresholds: CentralThresholds & { edgesMayLift: number };
  thresholdQuantities: Record<"cracksOnCooling" | "mayCrackInTime" | "edgesMayLift" | "flakesComeOff", Quantity>;
  /** What moisture adds in the service time, at the centre [Pa]. */
  moistureStress: number;
  /** Of a piece that bends; null in a wall that stays straight. */
  bent: {
    /** Stress in the clay directly under the glaze [Pa]. */
    underGlaze: Middle;
    /** How far stress slopes through the glaze, at the centre [Pa]. */
    across: number;
    /** Whether that is so much that a crack may run from one face without reaching the other. */
    shallow: boolean;
  } | null;
}

/** Reads centres and intervals off a simulation. */
export function summarise(s: Situation, simulation: Simulation): Summary {
  const slopes = slopesOf(simulation);
  const order = ascending(simulation.stress);
  return {
    order,
    stress: middle90Of(simulation.stress, order),
    mismatch: shown(simulation.mismatch),
    setPointC: shown(simulation.setPointC),
    glazeMean: shown(meansOf(simulation.glaze, simulation.setPointC), 1),
    bodyMean: shown(meansOf(simulation.clay, simulation.setPointC), 1),
    ...thresholdsAt(s, slopes),
  };
}

type Slopes = Omit<NonNullable<Summary["bent"]>, "shallow">;

/** Before the stress is put in order: the places of as many values are kept once. */
function slopesOf({ bent }: Simulation): Slopes | null {
  return bent && { underGlaze: shown(bent.underGlaze, 1), across: shown(bent.across).value };
}

/** What is shown and not judged by is read off a quarter of the lattice, which is a lattice too, and close enough. */
const SHOWN_STRIDE = 4;
const means = new Float64Array(DRAWS / SHOWN_STRIDE);

function shown(values: Float64Array, stride = SHOWN_STRIDE): Middle {
  return middle90Of(values, ascending(values, stride));
}

/** Mean expansions from 20 °C to the set point of the draws that are shown [1e-6/K]. */
function meansOf(contraction: Float64Array, setPointC: Float64Array): Float64Array {
  for (let j = 0, i = 0; j < means.length; j++, i += SHOWN_STRIDE) {
    means[j] = contraction[i]! * (1e6 / (setPointC[i]! - 20));
  }
  return means;
}

/**
 * Where each outcome begins at this thickness, at the centre of the doubt and with its 90 % interval.
 * Edges may lift where one glaze in ten would lift; flakes come off where every second would.
 * @param slopes - of a piece that bends, whose glaze may crack from a face that is pulled harder than its mean
 */
function thresholdsAt(
  s: Situation,
  slopes: Slopes | null,
): Pick<Summary, "thresholds" | "thresholdQuantities" | "moistureStress" | "bent"> {
  const across = slopes?.across ?? 0;
  const skinM = skinOf(s);
  const youngs = quantileOf(s.youngsGPa, 0.5) * 1e9;
  const bodyYoungs = s.body.youngsGPa.value * 1e9;
  const z = channellingFactor(stiffnessContrast(youngs, POISSON, bodyYoungs, s.body.poisson));
  const growth = (moistureAge(s.serviceYears) / 100) * (youngs / (1 - POISSON));
  const moistureStress = at(s.body.moisturePercent, 0) * growth;
  const moistureHalf = s.body.moisturePercent.sd * Z90 * growth;
  const thicknessHalf = (s.thicknessSd * Z90) / 2;
  const crack = (deviate: number, toughness: Spread) => criticalStress(at(toughness, deviate) * 1e6, z, skinM);
  const flake = (deviate: number) =>
    liftingStress(INTERFACE.median * Math.exp(INTERFACE.logSd * deviate), skinM, youngs, POISSON);
  // At the sharpest edge the pull −σt/R peels where the clay bears less.
  const peel = (deviate: number) =>
    (-Math.max(s.body.ruptureMPa.value + s.body.ruptureMPa.sd * deviate, 1) * 1e6 * TENSILE_SHARE * s.edgeM) / skinM;
  const lift = (deviate: number) => Math.max(flake(deviate), peel(deviate));
  const around = (value: number, half: number) =>
    quantity(value / 1e6, (value - half) / 1e6, (value + half) / 1e6, UNITS.stress, { decimals: 1 });
  /** @param even - what grows or shrinks with the thickness [Pa] */
  const spread = (value: number, edge: number, even = value) =>
    around(value, Math.hypot(edge - value, even * thicknessHalf));

  const inTime = delayedShare(s.serviceYears * YEAR_S);
  const creep = (deviate: number) => Math.max(crack(deviate, TOUGHNESS.floor), inTime * crack(deviate, s.toughness));
  const borne = (even: number) => meanBorne(even, across);
  const atOnce = crack(0, s.toughness);
  const cracksOnCooling = borne(atOnce);
  const floor = borne(creep(0));
  const flakesComeOff = lift(0);
  const edgesMayLift = lift(ONE_IN_TEN);
  const floorHalf = Math.hypot(borne(creep(Z90)) - floor, creep(0) * thicknessHalf, moistureHalf);
  return {
    bent: slopes && { ...slopes, shallow: across > creep(0) },
    moistureStress,
    thresholds: { cracksOnCooling, mayCrackInTime: floor - moistureStress, flakesComeOff, edgesMayLift },
    thresholdQuantities: {
      cracksOnCooling: spread(cracksOnCooling, borne(crack(Z90, s.toughness)), atOnce),
      mayCrackInTime: around(floor - moistureStress, floorHalf),
      edgesMayLift: around(edgesMayLift, Math.abs(edgesMayLift) * thicknessHalf),
      flakesComeOff: spread(flakesComeOff, lift(Z90)),
    },
  };
}

/** 10 % point of the normal distribution [-]. */
const ONE_IN_TEN = -1.2815515655446004;
