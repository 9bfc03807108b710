/** Another cooling where the glaze sets, as a schedule; the quartz step is never passed faster. @module */
import { describeBody } from "../body/index.ts";
import { DEFAULTS } from "../fit/defaults.ts";
import type { FitReport, FitRequest } from "../fit/types.ts";
import { round } from "../quantity.ts";
import { hoursThrough, inWindow, rateAt, type Segment, type Window } from "./schedule.ts";
import type { OtherCooling } from "./types.ts";
import { firstThatReaches, type Way } from "./ways.ts";
import { soundWords } from "./words.ts";

/** Cooling rates that a studio kiln can keep there [K/h] (common practice, no source). */
const RATES = [400, 300, 200, 150, 100, 75, 50, 30, 20, 10];
/** How far the set point moves over those rates at most, to either side [K]: ln(400/10) over the slope of log η. */
const LOWER = 30;
const HIGHER = 20;
/** Quartz turns at 573 °C; kilns and clay walls spread that over so much [°C] (common practice, no source). */
const QUARTZ: readonly [number, number] = [550, 600];
/** Volume of quartz from which its step is worth a word [-] (common practice, no source). */
const SOME_QUARTZ = 0.03;
/** One schedule that is tried. */
interface Trial {
  rate: number;
  window: Window;
  schedule: Segment[];
}

/** A window narrower than this cannot be kept [K] (common practice, no source). */
const NARROWEST = 20;

/**
 * Slower or faster cooling through the temperatures at which this glaze may set, all else as it is.
 *
 * What the model knows of cooling is where the glaze sets: slower, it sets colder, and clay and glaze then shrink together
 * over fewer degrees. So only the rate there is changed, and the words say what is not calculated: crystals, and dunting
 * as the quartz turns.
 * @param before - how it stands
 * @returns the better of slower and faster; nothing where neither changes anything
 */
export function otherCooling(fit: FitRequest, before: FitReport, target: number): Way[] {
  const { cooling, coolingCPerHour = DEFAULTS.coolingCPerHour, ...firing } = fit.firing ?? {};
  const present: readonly Segment[] = cooling ?? [{ toC: 20, cPerHour: coolingCPerHour }];
  const { low, high, value } = before.setPoint;
  const peak = firing.peakC ?? Number.POSITIVE_INFINITY;
  const now = rateAt(present, value);
  const slowly: Window = { fromC: Math.min(tens(high, 1), peak), toC: tens(low - LOWER, -1) };
  const fast: Window = { fromC: Math.min(tens(high + HIGHER, 1), peak), toC: Math.max(tens(low, -1), QUARTZ[1]) };
  const tries = (rates: readonly number[], window: Window) =>
    window.fromC - window.toC < NARROWEST
      ? []
      : rates.map((rate): [Trial, FitRequest] => {
          const schedule = inWindow(
            present,
            window,
            (was) => (rate < now ? Math.min(rate, was) : Math.max(rate, was)),
            firing.peakC,
          );
          return [
            { rate, window, schedule },
            { ...fit, firing: { ...firing, cooling: schedule } },
          ];
        });
  const slower = tries(
    RATES.filter((rate) => rate < now),
    slowly,
  );
  const faster = tries([...RATES.filter((rate) => rate > now)].reverse(), fast);
  const [best] = [...firstThatReaches(slower, target), ...firstThatReaches(faster, target)].sort(
    (a, b) => b.report.probabilities.sound - a.report.probabilities.sound,
  );
  if (!best) return [];
  const { rate, window, schedule } = best.value;
  const { fromC, toC } = window;
  const changed: OtherCooling = {
    fromC,
    toC,
    cPerHour: rate,
    insteadOfCPerHour: now,
    hours: round(hoursThrough(schedule, window) - hoursThrough(present, window), 1),
    setPoint: { before: before.setPoint, after: best.report.setPoint },
  };
  return [
    {
      kind: "cooling",
      title: `${rate < now ? "slower" : "faster"} cooling where the glaze sets`,
      fit: best.request,
      report: best.report,
      stops:
        RATES.at(rate < now ? -1 : 0) === rate
          ? `A studio kiln hardly keeps a ${rate < now ? "slower" : "faster"} rate there.`
          : `A ${rate < now ? "slower" : "faster"} rate does no better.`,
      cooling: changed,
      costs: [cost(changed), ...quartz(fit, changed)],
      text: `Cool at ${rate}\u00a0°C an hour instead of ${now}\u00a0°C an hour between ${fromC} and ${toC}\u00a0°C, where it sets, and elsewhere as you do: it sets at about ${changed.setPoint.after.value}\u00a0°C instead of ${value}\u00a0°C and stays sound ${soundWords(best.report.probabilities.sound, target)}.`,
    },
  ];
}

const cost = ({ hours, cPerHour, insteadOfCPerHour }: OtherCooling): string =>
  cPerHour < insteadOfCPerHour
    ? `The firing takes about ${Math.max(Math.ceil(hours), 1)} ${hours > 1 ? "hours" : "hour"} longer, and crystals may grow on the way: a clear glaze may haze or go matt.`
    : `Faster cooling strains thick and crowded ware. It is meant down to ${QUARTZ[1]}\u00a0°C at most, so that quartz turns no faster than now.`;

/** What of the quartz step is in the figures, and what is not. */
function quartz(fit: FitRequest, { setPoint: { before, after } }: OtherCooling): string[] {
  if (describeBody(fit.body, "/body").class.quartzFraction[1] < SOME_QUARTZ) return [];
  const [cold, hot] = QUARTZ;
  const dunting = "whether the clay dunts there is not calculated";
  if (Math.min(before.low, after.low) >= hot) {
    return [
      `Quartz in the clay turns at 573\u00a0°C, when this glaze has set: how fast you pass that changes nothing in these figures. Pass ${hot} to ${cold}\u00a0°C slowly all the same; ${dunting}.`,
    ];
  }
  if (Math.max(before.high, after.high) <= cold) {
    return [
      `Quartz in the clay turns at 573\u00a0°C, while this glaze is still soft: its step does not press on the glaze at any rate. Pass ${hot} to ${cold}\u00a0°C slowly all the same; ${dunting}.`,
    ];
  }
  return [
    `This glaze may set while quartz in the clay turns (573\u00a0°C). As much of that step as comes after it has set is in these figures; ${dunting}.`,
  ];
}

/** To a multiple of ten, up or down. @example tens(643, -1) // 640 */
function tens(c: number, way: 1 | -1): number {
  return way > 0 ? Math.ceil(c / 10) * 10 : Math.floor(c / 10) * 10;
}
