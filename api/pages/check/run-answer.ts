/** Will it run: the sentence, the picture, what to do at the foot, what slows it. @module */
import { runningPicture } from "../../engine/pictures/running/running-picture.ts";
import type { RunningReport } from "../../engine/running/types.ts";
import { coatMm, inTwenty, mm, stated } from "../../engine/running/words.ts";
import { fill } from "../fill.ts";
import { plain } from "../say.ts";
import { type Child, h } from "../shared/dom.ts";
import { picture } from "../shared/picture.ts";
import { localise, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { sourced } from "./popover.ts";
import { fieldAt } from "./request.ts";
import { RUN_PLACES } from "./run-question.ts";

const { running } = words;
const wall = picture(980);
/** Works that the flow itself rests on; the answer names those of the glaze's chemistry besides. */
const FLOW = ["myega-2009", "huppert-1982", "thin-film-solved"];

/** What the answer does not say again of the question. */
export interface RunAsked {
  /** Whether the second firing is to be told. */
  again: boolean;
  /** At the peak [min]. */
  soak: number;
}

/** Everything under the fields. */
export function runAnswer(report: RunningReport, { again, soak }: RunAsked, units: Units): HTMLElement[] {
  wall.show((choice) => runningPicture(report, { ...choice, ...units, id: "run-picture" }));
  const said = (text: string) => localise(text, units);
  const list = (items: string[]) => h("ul", { class: "mind" }, ...items.map((item) => h("li", {}, said(item))));
  const part = (title: string, ...children: Child[]) => h("div", {}, h("h3", {}, title), children);
  const { slopeDeg, glazedMm, clearanceMm } = report.wall;
  const caption = fill(running.caption, {
    slope: plain(slopeDeg, 1),
    glazed: stated(glazedMm),
    clearance: stated(clearanceMm),
    peak: `${plain(report.firing.peak.value, 0)} °C`,
    soak: plain(soak, 1),
  });
  const { refiring } = report;
  return [
    h("p", { class: "say" }, said(report.headline)),
    edge(report, units),
    h("figure", {}, wall.element, h("figcaption", {}, said(caption))),
    h(
      "div",
      { class: "duo" },
      part(running.foot, list(atTheFoot(report))),
      part(
        running.slows,
        list(report.slows.length > 0 ? report.slows.map(({ text }) => text) : [running.nothingSlows]),
      ),
      again ? part(running.again, list([refiring.text, ...refiring.advice.map(({ text }) => text)])) : null,
      part(running.mind, list(toMind(report))),
    ),
  ];
}

/** How far the edge comes, as a figure that opens where it comes from. */
function edge(report: RunningReport, units: Units): HTMLElement {
  const { run, roll, thickness } = report;
  const said = (value: number, say = mm) => localise(say(value), units);
  const keys = report.sources.filter((key) => FLOW.includes(key));
  const number = sourced("s-run", said(run.value), running.run, run, units, running.worked, keys);
  const text = fill(running.edge, {
    low: said(run.low),
    high: said(run.high),
    roll: said(roll.value),
    coat: said(thickness.value, coatMm),
    coatLow: said(thickness.low, coatMm),
    coatHigh: said(thickness.high, coatMm),
  });
  const [before, after] = text.split("{run}");
  return h("div", {}, h("p", { class: "because" }, before, number.button, after), number.note);
}

function atTheFoot({ bareBandMm, catchPlate, reachesShelf, reachingThickness, wall }: RunningReport): string[] {
  const clearance = stated(wall.clearanceMm);
  const chance = fill(catchPlate ? running.plate : running.noPlate, { clearance, chance: inTwenty(reachesShelf) });
  if (!reachingThickness) return [fill(running.band, { band: stated(bareBandMm) }), chance];
  const { value, low, high } = reachingThickness;
  const coat = { coat: coatMm(value), low: coatMm(low), high: coatMm(high), clearance };
  return [fill(running.band, { band: stated(bareBandMm) }), chance, fill(running.reaching, coat)];
}

/** Warnings that have no field of the panel to stand at, and cautions. */
function toMind({ warnings, cautions }: RunningReport): string[] {
  const loose = warnings.filter(({ pointer }) => !pointer || fieldAt(RUN_PLACES, pointer) === "other");
  return [...loose, ...cautions].map(({ message }) => message);
}
