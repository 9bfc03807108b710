/** What a simulation amounts to: centres and intervals, thresholds at this thickness. @module */
import { at, moistureAge, type Spread, Z90 } from "../body/index.ts";
import { ascending, middle90Of } from "../numeric/quantiles.ts";
import { type Quantity, quantileOf, quantity, UNITS } from "../quantity.ts";
import { INTERFACE, POISSON, TENSILE_SHARE, TOUGHNESS } from "./constants.ts";
import { channellingFactor, criticalStress, delayedShare, stiffnessContrast, YEAR_S } from "./cracking.ts";
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
}

/** Reads centres and intervals off a simulation. */
export function summarise(s: Situation, simulation: Simulation): Summary {
  const order = ascending(simulation.stress);
  return {
    order,
    stress: middle90Of(simulation.stress, order),
    mismatch: shown(simulation.mismatch),
    setPointC: shown(simulation.setPointC),
    glazeMean: shown(meansOf(simulation.glaze, simulation.setPointC), 1),
    bodyMean: shown(meansOf(simulation.clay, simulation.setPointC), 1),
    ...thresholdsAt(s),
  };
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
 */
function thresholdsAt(s: Situation): Pick<Summary, "thresholds" | "thresholdQuantities" | "moistureStress"> {
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
  const spread = (value: number, edge: number) => around(value, Math.hypot(edge - value, value * thicknessHalf));

  const cracksOnCooling = crack(0, s.toughness);
  const inTime = delayedShare(s.serviceYears * YEAR_S);
  const creep = (deviate: number) => Math.max(crack(deviate, TOUGHNESS.floor), inTime * crack(deviate, s.toughness));
  const floor = creep(0);
  const flakesComeOff = lift(0);
  const edgesMayLift = lift(ONE_IN_TEN);
  const floorHalf = Math.hypot(creep(Z90) - floor, floor * thicknessHalf, moistureHalf);
  return {
    moistureStress,
    thresholds: { cracksOnCooling, mayCrackInTime: floor - moistureStress, flakesComeOff, edgesMayLift },
    thresholdQuantities: {
      cracksOnCooling: spread(cracksOnCooling, crack(Z90, s.toughness)),
      mayCrackInTime: around(floor - moistureStress, floorHalf),
      edgesMayLift: around(edgesMayLift, Math.abs(edgesMayLift) * thicknessHalf),
      flakesComeOff: spread(flakesComeOff, lift(Z90)),
    },
  };
}

/** 10 % point of the normal distribution [-]. */
const ONE_IN_TEN = -1.2815515655446004;
