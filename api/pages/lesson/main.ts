/** The Lesson at work: one question to the service, and a kiln that cools by hand. @module */
import { AbortedError } from "@ringtrue/sdk";
import type { FitReport } from "../../engine/fit/types.ts";
import { byId, h } from "../shared/dom.ts";
import { service, startWorker } from "../shared/service.ts";
import { startTheme } from "../shared/theme.ts";
import { keptUnits } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { GLAZES, questionOf, type Setting, START } from "./glazes.ts";
import { sliders } from "./sliders.ts";
import { Stage } from "./stage.ts";
import { tell } from "./tell.ts";

/** Rest after the last move of a slider [ms]. */
const REST_MS = 80;

const units = keptUnits();
let setting: Setting = { ...START };
let round = 0;
let rest: ReturnType<typeof setTimeout> | undefined;
let running: AbortController | null = null;
const stage = new Stage(units);

/** Asks at once; an answer that a later question has overtaken is dropped. */
async function ask(): Promise<void> {
  const mine = ++round;
  running?.abort();
  running = new AbortController();
  try {
    const report = (await service.fit.check(questionOf(setting), { signal: running.signal })) as FitReport;
    if (mine !== round) return;
    tell(report, setting, units);
    stage.show(report);
  } catch (error) {
    if (mine !== round || error instanceof AbortedError) return;
    byId("verdict").textContent = words.lesson.change.offline;
    setTimeout(() => mine === round && ask(), 3000);
  }
}

function change(next: Partial<Setting>): void {
  setting = { ...setting, ...next };
  panel.show(setting);
  clearTimeout(rest);
  rest = setTimeout(ask, REST_MS);
}

const panel = sliders(
  units,
  (name, value) => change({ [name]: value }),
  () => change({ ...START, glaze: setting.glaze }),
);

function start(): void {
  startTheme();
  startWorker();
  byId("sliders").append(...panel.elements);
  panel.show(setting);
  for (const name of Object.keys(GLAZES)) {
    const input = h("input", {
      type: "radio",
      name: "glaze",
      checked: name === setting.glaze,
      id: `glaze-${name.replace(" ", "-")}`,
    });
    input.addEventListener("change", () => change({ glaze: name, silica: null, soda: null, boron: null }));
    byId("pick").append(
      h("label", {}, input, h("span", {}, words.lesson.glazes[name as keyof typeof words.lesson.glazes])),
    );
  }
  byId("fill").addEventListener("click", () => {
    if (document.fullscreenElement) document.exitFullscreen();
    else document.documentElement.requestFullscreen?.().catch(() => {});
  });
  byId("handout").addEventListener("click", () => window.print());
  ask();
}

start();
