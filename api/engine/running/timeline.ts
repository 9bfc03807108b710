/** A firing as a line of temperature against time. @module */
import type { Notice } from "../errors.ts";
import { Faults } from "../lengths/index.ts";
import { coneEnd } from "./cones.ts";
import { COOLING, HEATING, PEAK_PLUS_MINUS } from "./practice.ts";
import type { RunningFiring } from "./types.ts";

/** A straight piece of the firing; equal temperatures are a soak. */
export interface Leg {
  fromC: number;
  toC: number;
  seconds: number;
}

/** A firing, read. */
export interface Timeline {
  legs: Leg[];
  peakC: number;
  /** Half-width of a 90 % interval of every temperature [K]. */
  plusMinusK: number;
  /** Where the peak comes from, in words. */
  from: string;
  warnings: Notice[];
}

const ROOM = 20;
/** A firing that ends hotter than this is let cool [°C]. */
const COLD_ENOUGH = 600;
const MOST_SEGMENTS = 40;

/**
 * Reads a firing: segments from room temperature, or a peak in °C or as a cone, with the heating before it, the soak and
 * the cooling after it.
 * @param firing - as asked; temperatures [°C], rates [K/h], soaks [min]
 * @returns legs from 20 °C on, peak [°C] and its doubt [K]
 * @throws ImpossibleValueError with every issue, pointers into `firing`
 * @example readTimeline({ peakC: 1240 }).legs.length // 2
 */
export function readTimeline(firing: RunningFiring): Timeline {
  const faults = new Faults();
  const { segments, peakC, cone } = firing;
  const given = [segments, peakC, cone].filter((each) => each !== undefined).length;
  if (given !== 1) {
    const message =
      given === 0
        ? "Say how hot: a peak in °C, a cone, or the firing as segments."
        : "Give one of peakC, cone and segments, not several: they could contradict each other.";
    faults.add("", message, { allowed: ["peakC", "cone", "segments"] });
    faults.throwIfAny();
  }
  const read = segments === undefined ? fromPeak(firing, faults) : fromSegments(firing, faults);
  faults.throwIfAny();
  return read;
}

function fromPeak(firing: RunningFiring, faults: Faults): Timeline {
  const { heatingCPerHour, holdMinutes = 0, coolingCPerHour } = firing;
  const warnings: Notice[] = [];
  const heating = heatingCPerHour ?? HEATING;
  const cooling = coolingCPerHour ?? COOLING;
  faults.number(heating, "/heatingCPerHour", "Heating", { from: 1, to: 20000, unit: "°C an hour" });
  faults.number(cooling, "/coolingCPerHour", "Cooling", { from: 1, to: 20000, unit: "°C an hour" });
  soak(holdMinutes, "/holdMinutes", faults);
  let peakC = firing.peakC ?? 0;
  let plusMinusK = PEAK_PLUS_MINUS;
  let from = "as stated";
  if (firing.cone !== undefined) {
    const end = faults.gather("", () => coneEnd(firing.cone!, heating));
    if (end) {
      peakC = end.peakC;
      plusMinusK = end.plusMinus;
      from = `cone ${firing.cone} heated at ${end.cPerHour} °C an hour at the end, ± ${Math.round(plusMinusK)} °C: the printed tables differ, and a cone answers to time as well`;
      const clamped = end.cPerHour !== heating;
      const message = `I took cone ${firing.cone} as a peak of ${Math.round(peakC)} °C, give or take ${Math.round(plusMinusK)}: the middle of three printed tables for ${end.cPerHour} °C an hour over the last 100 °C${clamped ? `, as far as they reach towards ${heating}` : ""}. ${holdMinutes > 0 ? "The soak comes after the cone has bent. " : ""}A cone is heat-work, not a temperature: witness cones of your own tell better.`;
      warnings.push({ code: "cone-as-peak", message, pointer: "/cone" });
    }
  } else faults.number(peakC, "/peakC", "The peak", { from: 400, to: 1700, unit: "°C" });
  if (heatingCPerHour === undefined) assumed(warnings, "/heatingCPerHour", "heated", HEATING);
  if (coolingCPerHour === undefined) assumed(warnings, "/coolingCPerHour", "cooled", COOLING);
  const legs = [ramp(ROOM, peakC, heating)];
  if (holdMinutes > 0) legs.push({ fromC: peakC, toC: peakC, seconds: holdMinutes * 60 });
  legs.push(ramp(peakC, ROOM, cooling));
  return { legs, peakC, plusMinusK, from, warnings };
}

function fromSegments({ segments = [], ...others }: RunningFiring, faults: Faults): Timeline {
  const warnings: Notice[] = [];
  for (const key of ["heatingCPerHour", "holdMinutes", "coolingCPerHour"] as const) {
    if (others[key] !== undefined) {
      faults.add(`/${key}`, "Segments say this already: write it into them, or leave the segments out.");
    }
  }
  if (segments.length === 0 || segments.length > MOST_SEGMENTS) {
    const message = `A firing has 1 to ${MOST_SEGMENTS} segments; I read ${segments.length}.`;
    faults.add("/segments", message, { allowed: [1, MOST_SEGMENTS] });
  }
  const legs: Leg[] = [];
  let at = ROOM;
  segments.slice(0, MOST_SEGMENTS).forEach(({ toC, cPerHour, holdMinutes = 0 }, i) => {
    const pointer = `/segments/${i}`;
    const fine = [
      faults.number(toC, `${pointer}/toC`, "A segment's end", { from: -50, to: 1700, unit: "°C" }),
      faults.number(cPerHour, `${pointer}/cPerHour`, "A segment's rate", { from: 1, to: 20000, unit: "°C an hour" }),
      soak(holdMinutes, `${pointer}/holdMinutes`, faults),
    ].every(Boolean);
    if (!fine) return;
    if (toC === at && holdMinutes === 0) {
      faults.add(
        `${pointer}/toC`,
        `This segment goes nowhere: it is at ${at} °C already. Give it a soak, or leave it out.`,
      );
    }
    if (toC !== at) legs.push(ramp(at, toC, cPerHour));
    if (holdMinutes > 0) legs.push({ fromC: toC, toC, seconds: holdMinutes * 60 });
    at = toC;
  });
  const peakC = Math.max(ROOM, ...legs.map(({ toC }) => toC));
  if (faults.issues.length === 0 && peakC < 400) {
    faults.add("/segments", `The hottest segment ends at ${peakC} °C. No glaze melts below 400 °C: are these in °C?`);
  }
  if (at > COLD_ENOUGH) {
    const message = `The segments end at ${at} °C. I let it cool from there at ${COOLING} °C an hour.`;
    warnings.push({ code: "cooling-assumed", message, pointer: "/segments" });
    legs.push(ramp(at, ROOM, COOLING));
  }
  return { legs, peakC, plusMinusK: PEAK_PLUS_MINUS, from: "the hottest of the segments", warnings };
}

function ramp(fromC: number, toC: number, cPerHour: number): Leg {
  return { fromC, toC, seconds: (Math.abs(toC - fromC) / cPerHour) * 3600 };
}

function soak(minutes: number, pointer: string, faults: Faults): boolean {
  return faults.number(minutes, pointer, "A soak", { from: 0, to: 10080, unit: "minutes" });
}

function assumed(warnings: Notice[], pointer: string, what: "heated" | "cooled", cPerHour: number): void {
  const when = what === "heated" ? "before the peak" : "after the peak";
  const message = `You did not say how fast it is ${what} ${when}. I have taken ${cPerHour} °C an hour.`;
  warnings.push({ code: `${what === "heated" ? "heating" : "cooling"}-assumed`, message, pointer });
}
