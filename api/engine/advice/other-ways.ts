/** Ways that leave the recipe alone: a thinner coat, other cooling, another clay. @module */
import { listBodies } from "../body/index.ts";
import { EngineError } from "../errors.ts";
import { checkFit } from "../fit/index.ts";
import { DEFAULTS } from "../fit/situation.ts";
import type { FitReport, FitRequest } from "../fit/types.ts";
import { expansion, millimetres } from "../fit/words.ts";
import type { LayeredGlaze, SingleGlaze } from "../recipe/types.ts";
import type { RemediesRequest, Remedy } from "./types.ts";
import { chanceWords, standingOf } from "./words.ts";

/** Shares of the present thickness that are tried, and the thinnest coat that still covers [mm] (common practice, no source). */
const THINNER = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];
const THINNEST_MM = 0.1;
/** Cooling rates that a studio kiln can keep between 700 and 500 °C [K/h] (common practice, no source). */
const RATES = [400, 300, 200, 150, 100, 75, 50, 30, 20, 10];
/** A way that does not reach is told where it keeps this many more sound [-]. */
const WORTH_TELLING = 0.02;
/** Clays told at most. */
const MOST_CLAYS = 2;

type Way = Pick<Remedy, "kind" | "title" | "fit" | "costs" | "text"> & { report: FitReport };

/** Every way but the recipe; each verified by a fit of its own. */
export function otherWays(request: RemediesRequest, fit: FitRequest, before: FitReport, target: number): Remedy[] {
  return [...thinner(fit, target), ...otherCooling(fit, target), ...otherClay(request, fit, target)]
    .filter(({ report }) => report.probabilities.sound >= Math.min(target, before.probabilities.sound + WORTH_TELLING))
    .map(({ report, ...way }) => ({
      ...way,
      reaches: report.probabilities.sound >= target,
      partsMoved: 0,
      before: standingOf(before),
      after: standingOf(report),
      recipe: null,
      melt: null,
      blocks:
        report.probabilities.sound >= target
          ? []
          : [{ limit: way.kind, text: `${way.title} goes no further than that.` }],
    }));
}

function thinner(fit: FitRequest, target: number): Way[] {
  if ("layers" in fit.glaze) return [];
  const glaze = fit.glaze as Exclude<SingleGlaze, LayeredGlaze>;
  const now = glaze.thicknessMm ?? DEFAULTS.thicknessMm;
  const tried = THINNER.map((share) => Math.round(now * share * 100) / 100)
    .filter((mm) => mm >= THINNEST_MM && mm < now)
    .map((thicknessMm): [number, FitRequest] => [
      thicknessMm,
      { ...fit, glaze: { ...glaze, thicknessMm } as SingleGlaze },
    ]);
  return firstThatReaches(tried, target).map(({ value, request, report }) => ({
    kind: "thickness",
    title: "a thinner coat",
    fit: request,
    report,
    costs: [
      "A thinner coat shows the clay, and pours and rutile effects pale; food surfaces still have to be covered.",
    ],
    text: `Glaze it ${millimetres(value)} thick instead of ${millimetres(now)}: it then stays sound ${chanceWords(report.probabilities.sound)}.`,
  }));
}

function otherCooling(fit: FitRequest, target: number): Way[] {
  if (fit.firing?.cooling) return [];
  const now = fit.firing?.coolingCPerHour ?? DEFAULTS.coolingCPerHour;
  const at = (coolingCPerHour: number): [number, FitRequest] => [
    coolingCPerHour,
    { ...fit, firing: { ...fit.firing, coolingCPerHour } },
  ];
  const slower = RATES.filter((rate) => rate < now).map(at);
  const faster = RATES.filter((rate) => rate > now)
    .reverse()
    .map(at);
  const best = [...firstThatReaches(slower, target), ...firstThatReaches(faster, target)].sort(
    (a, b) => b.report.probabilities.sound - a.report.probabilities.sound,
  )[0];
  if (!best) return [];
  const { value, request, report } = best;
  const way = value < now ? "slower" : "faster";
  return [
    {
      kind: "cooling",
      title: `${way} cooling through the set point`,
      fit: request,
      report,
      costs: [
        value < now
          ? "Slow cooling lets crystals grow: a clear glaze may haze or go matt, and the firing takes longer."
          : "Fast cooling past 600 to 550 °C can dunt large or uneven pieces, since quartz turns at 573 °C.",
      ],
      text: `Cool at ${value}\u00a0°C an hour instead of ${now} between about 700 and 500\u00a0°C: it then stays sound ${chanceWords(report.probabilities.sound)}.`,
    },
  ];
}

function otherClay(request: RemediesRequest, fit: FitRequest, target: number): Way[] {
  const peak = fit.firing?.peakC;
  const mine = "class" in fit.body ? fit.body.class : undefined;
  const clays =
    request.bodies ??
    listBodies()
      .filter(
        ({ id, firingC: [low, high] }) =>
          id !== mine && (peak === undefined || (peak >= low - 20 && peak <= high + 20)),
      )
      .map(({ id, name }) => ({ name, body: { class: id } }));
  return clays
    .flatMap(({ name, body }, i) => {
      try {
        const asked = { ...fit, body };
        return [{ name: name ?? `clay ${i + 1}`, request: asked, report: checkFit(asked) }];
      } catch (error) {
        if (error instanceof EngineError) {
          if (!request.bodies) return [];
          throw new EngineError(
            error.issues.map((issue) => ({ ...issue, pointer: issue.pointer.replace(/^\/body/, `/bodies/${i}/body`) })),
          );
        }
        throw error;
      }
    })
    .sort((a, b) => b.report.probabilities.sound - a.report.probabilities.sound)
    .filter(({ report }, i) => i === 0 || report.probabilities.sound >= target)
    .slice(0, MOST_CLAYS)
    .map(({ name, request: asked, report }) => ({
      kind: "body",
      title: `another clay: ${name}`,
      fit: asked,
      report,
      costs: ["Another clay shrinks, colours and throws differently, and its own glaze tests begin anew."],
      text: `On ${name} (about ${expansion(report.body.expansion.value)}) it stays sound ${chanceWords(report.probabilities.sound)}.`,
    }));
}

/** The first that reaches the target, else the one that keeps most sound. */
function firstThatReaches(tried: readonly [number, FitRequest][], target: number) {
  let best: { value: number; request: FitRequest; report: FitReport } | undefined;
  for (const [value, request] of tried) {
    const report = checkFit(request);
    if (!best || report.probabilities.sound > best.report.probabilities.sound) best = { value, request, report };
    if (report.probabilities.sound >= target) return [{ value, request, report }];
  }
  return best ? [best] : [];
}
