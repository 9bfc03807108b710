/** Step 4: the kiln cools by hand or by itself, and both materials shrink. @module */
import type { FitReport, Verdict } from "../../engine/fit/types.ts";
import { fill } from "../fill.ts";
import { signed } from "../say.ts";
import { byId, drawing } from "../shared/dom.ts";
import { sayTemperature, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { coolingOf, type Doing, doingOf, type Moment } from "./cooling.ts";
import { apart, meter, together } from "./drawings.ts";
import { degrees } from "./sliders.ts";

const { four, say } = words.lesson;
/** Where the slider begins, or higher where the glaze sets above it [°C]. */
const HOT = 700;
/** Steps of its beginning, and how far it stands above the set point at least [°C]. */
const STEP = 10;
const ABOVE_SET = 20;
const COLD = 20;
/** From hot to cold when it cools by itself [ms]. */
const COOLING_MS = 12_000;

const RING: Readonly<Partial<Record<Doing, Verdict>>> = {
  crazes: "crazes",
  mayCraze: "may-craze",
  lifts: "may-shiver",
  flakes: "shivers",
};

const megapascal = (stress: number) => `${signed(stress)}\u00a0MPa`;

export class Stage {
  readonly #units: Units;
  readonly #slider = byId<HTMLInputElement>("t");
  #report: FitReport | null = null;
  #at: ((c: number) => Moment) | null = null;
  #times = 100;
  #hot = HOT;
  #frame = 0;

  constructor(units: Units) {
    this.#units = units;
    byId("cold").textContent = fill(four.cold, { cold: degrees(COLD, units) });
    this.#slider.addEventListener("input", () => {
      this.#stop();
      this.#draw();
    });
    byId("go").addEventListener("click", () => this.#go());
  }

  show(report: FitReport): void {
    const first = this.#report === null;
    this.#report = report;
    this.#at = coolingOf(report);
    this.#hot = Math.max(HOT, Math.ceil((report.setPoint.value + ABOVE_SET) / STEP) * STEP);
    this.#slider.max = String(this.#hot);
    byId("hot").textContent = fill(four.runny, { hot: degrees(this.#hot, this.#units) });
    const cold = this.#at(COLD);
    // As large as fits: the one that shrinks more loses nearly half its length.
    this.#times = Math.max(10, Math.round(45 / Math.max(cold.glaze, cold.clay, 0.05) / 10) * 10);
    byId("times").textContent = fill(four.big, { times: this.#times });
    if (first) this.#slider.value = String(Math.ceil(report.setPoint.value / 5) * 5 + 5);
    this.#draw();
    this.#forPaper(report);
  }

  #draw(): void {
    if (!this.#report || !this.#at) return;
    const moment = this.#at(Number(this.#slider.value));
    const doing = doingOf(this.#report, moment);
    const stress = megapascal(moment.stress);
    byId("now").textContent = degrees(moment.c, this.#units);
    byId("say").textContent = say[doing];
    const state = Math.abs(moment.stress) < 1 ? four.level : moment.stress > 0 ? four.pulled : four.squeezed;
    byId("pull").textContent = moment.runny ? four.runnyNow : fill(state, { stress });
    byId("free").replaceChildren(drawing(this.#apart(moment)));
    byId("stuck").replaceChildren(drawing(together(moment, doing, four.stuckPicture)));
    byId("meter").replaceChildren(drawing(meter(this.#report, moment, RING[doing] ?? "sound")));
    const spoken = { temperature: degrees(moment.c, this.#units), sentence: say[doing], stress };
    this.#slider.setAttribute("aria-valuetext", fill(four.spoken, spoken));
  }

  #apart(moment: Moment): string {
    const gap = fill(four.gap, { gap: `${Math.abs(moment.glaze - moment.clay).toFixed(3)}\u00a0%` });
    return apart(moment, this.#times, { glaze: four.glazeWord, clay: four.clayWord, gap }, four.freePicture);
  }

  #go(): void {
    if (this.#frame) {
      this.#stop();
      return;
    }
    if (!this.#report) return;
    const slider = this.#slider;
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
      const stops = [this.#hot, Math.floor(this.#report.setPoint.value / 5) * 5, 545, 300, COLD];
      slider.value = String(stops.find((stop) => stop < Number(slider.value)) ?? this.#hot);
      this.#draw();
      return;
    }
    if (Number(slider.value) <= COLD + 5) slider.value = String(this.#hot);
    let c = Number(slider.value);
    let before = performance.now();
    byId("go").textContent = four.hold;
    const step = (now: number) => {
      c = Math.max(c - ((now - before) * (this.#hot - COLD)) / COOLING_MS, COLD);
      before = now;
      slider.value = String(c);
      this.#draw();
      if (c > COLD) this.#frame = requestAnimationFrame(step);
      else this.#stop();
    };
    this.#frame = requestAnimationFrame(step);
  }

  #stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    byId("go").textContent = four.cool;
  }

  /** Three moments for the handout. */
  #forPaper(report: FitReport): void {
    const moments = [Math.floor(report.setPoint.value), 545, COLD].map((c) => this.#at!(c));
    byId("handstates").replaceChildren(
      ...moments.map((moment) => {
        const figure = document.createElement("figure");
        const caption = document.createElement("figcaption");
        caption.textContent = `${sayTemperature(moment.c, this.#units)}: ${megapascal(moment.stress)}`;
        figure.append(drawing(this.#apart(moment)), caption);
        return figure;
      }),
    );
  }
}
