/** Puts the service's figures into the lesson's words and drawings. @module */
import type { FitReport, Verdict } from "../../engine/fit/types.ts";
import { verdictPicture } from "../../engine/pictures/verdict/verdict-picture.ts";
import type { Quantity } from "../../engine/quantity.ts";
import { sayVerdict } from "../check/say-verdict.ts";
import { fill } from "../fill.ts";
import { signed } from "../say.ts";
import { byId, type Child, drawing, h } from "../shared/dom.ts";
import { picture } from "../shared/picture.ts";
import { glazeLine, ring } from "../shared/rings.ts";
import { sayQuantity } from "../shared/say-quantity.ts";
import { fromKelvins, sayLength, sayTemperature, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { coolingOf } from "./cooling.ts";
import { ending, pinned, runny, toScale } from "./drawings.ts";
import { PEAK_C, type Setting, WALL_MM } from "./glazes.ts";

const { lesson } = words;
const where = picture();

const GROUP: Readonly<Record<Verdict, "crazes" | "sound" | "shivers">> = {
  crazes: "crazes",
  "may-craze": "crazes",
  sound: "sound",
  "may-shiver": "shivers",
  shivers: "shivers",
};

const put = (id: string, text: string) => {
  byId(id).textContent = text;
};
const draw = (id: string, text: string) => byId(id).replaceChildren(drawing(text));
const note = (id: string, ...notes: [string, string][]) => {
  const lines: Child[] = notes.map(([strong, more]) => h("p", {}, h("b", {}, strong), more));
  byId(id).replaceChildren(...(lines as Node[]));
};

export function tell(report: FitReport, setting: Setting, units: Units): void {
  const { verdict, stress, thresholds, setPoint } = report;
  const glaze = setting.glaze.replace(" ", "\u00a0");
  const say = (quantity: Quantity) => sayQuantity(quantity, units);
  const [set, peak, cold] = [setPoint.value, PEAK_C, 20].map((c) => sayTemperature(c, units)) as [
    string,
    string,
    string,
  ];
  const thickness = sayLength(report.glaze.thickness.value, units);
  const wall = sayLength(WALL_MM, units).replace(".00", "");
  const gap = `${Math.abs(report.mismatch.value).toFixed(3)}\u00a0%`;
  const crack = say(thresholds.cracksOnCooling).value;
  const lift = say(thresholds.edgesMayLift).value;

  put("title", fill(lesson.why[GROUP[verdict]], { glaze }));
  put("because", fill(lesson.because[GROUP[verdict]], { gap }));
  byId("poster").replaceChildren(ring(verdict, 400));
  byId("glazeline").setAttribute("d", glazeLine(verdict));

  draw("draw1", toScale(report.glaze.thickness.value, WALL_MM, fill(lesson.one.picture, { thickness, wall })));
  note(
    "notes1",
    [fill(lesson.one.glaze, { thickness }), lesson.one.glazeNote],
    [fill(lesson.one.clay, { wall }), lesson.one.clayNote],
  );
  put("caption1", lesson.one.caption);

  draw("draw2", runny(lesson.two.picture));
  note("notes2", [lesson.two.note, lesson.two.noteMore]);
  put("caption2", fill(lesson.two.caption, { peak, set }));

  put("h3", fill(lesson.three.title, { set }));
  draw("draw3", pinned(lesson.three.picture));
  note("notes3", [lesson.three.note, lesson.three.noteMore]);
  const rate = `${Math.round(fromKelvins(setting.coolingCPerHour, units.temperature))}\u00a0°${units.temperature}`;
  put("caption3", fill(lesson.three.caption, { set, low: say(setPoint).low, high: say(setPoint).high, rate }));

  const { five } = lesson;
  put("h5", five.title[verdict]);
  draw("draw5", ending(verdict, fill(five.picture, { note: five.note[verdict] })));
  note("notes5", [five.note[verdict], five.noteMore[verdict]]);
  const said = say(stress);
  put(
    "caption5",
    fill(five.caption, { cold, stress: said.value, low: said.low, high: said.high, thickness, crack, lift }),
  );

  put("verdict", sayVerdict(report, glaze, "this clay").replaceAll("*", ""));
  if (!where.element.isConnected) byId("where").append(where.element);
  where.show((choice) => verdictPicture(report, { ...choice, temperature: units.temperature, id: "where-it-sits" }));
  answers(report, setting, units, { lift, crack, thickness, wall });
}

function answers(
  report: FitReport,
  { glaze }: Setting,
  units: Units,
  texts: Record<"lift" | "crack" | "thickness" | "wall", string>,
): void {
  const { questions, four, key } = lesson;
  const end = coolingOf(report)(20);
  const shorter = fill(end.glaze > end.clay ? four.glazeShorter : four.clayShorter, {
    glaze: `${end.glaze.toFixed(3)}\u00a0%`,
    clay: `${end.clay.toFixed(3)}\u00a0%`,
  });
  const perOf = (oxide: string) => report.pulls.find((pull) => pull.oxide === oxide)?.perWeightPercentMPa ?? 0;
  const perSoda = `${signed(perOf("SiO2") - perOf("Na2O"))}\u00a0MPa`;
  const said = {
    shorter,
    less: fill(questions.lessAnswer, { glaze, perSoda }),
    much: fill(questions.muchAnswer, texts),
    thin: fill(questions.thinAnswer, texts),
  };
  for (const [name, text] of Object.entries(said)) {
    put(`answer-${name}`, text);
    put(`key-${name}`, text);
  }
  const range = ({ rangeC }: Quantity) =>
    rangeC ? `${sayTemperature(rangeC[0], units)} to ${sayTemperature(rangeC[1], units)}` : "";
  const clay = sayQuantity(report.body.expansion, units);
  const skin = sayQuantity(report.glaze.expansion, units);
  put(
    "key-figures",
    fill(key.figures, {
      clay: clay.value,
      clayRange: range(report.body.expansion),
      clayLow: clay.low,
      clayHigh: clay.high,
      glaze,
      expansion: skin.value,
      range: range(report.glaze.expansion),
      low: skin.low,
      high: skin.high,
      ...texts,
    }),
  );
}
