/** The panel “I fired it”: what tiles did, one button, what the glaze must be. @module */
import type { EvidenceReport } from "@ringtrue/sdk";
import { h } from "../../shared/dom.ts";
import { service } from "../../shared/service.ts";
import { localise, type Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import { currentGlaze, MOST_TRIALS } from "../draft.ts";
import { showPanelFaults } from "../faults.ts";
import { type Panel, type PanelTold, settle } from "../panels.ts";
import { buildQuestion, type FieldFault, fieldAt } from "../request.ts";
import { tellTiles } from "./tell-tiles.ts";
import { tileForm } from "./tile-form.ts";
import { keepTiles, keptTiles, MOST_TILES, newTile, turnTiles } from "./tiles.ts";
import { tilesQuestion } from "./tiles-question.ts";
import { cameFromTiles, useTiles } from "./use-tiles.ts";

const { evidence: say, panel } = words;

export function evidencePanel(told: PanelTold): Panel {
  const tiles = keptTiles();
  let report: EvidenceReport | null = null;
  let asked = "";
  let drawnFor = "";
  let builtFor = "";
  let running: AbortController | null = null;

  const status = h("p", { class: "because", role: "status", id: "tiles-status" });
  const answer = h("div", { id: "tiles-answer" });
  const fields = h("div", {});
  const another = h("button", { class: "btn", type: "button", id: "tile-add", onclick: () => add() }, say.another);
  const ask = h("button", { class: "btn main", type: "submit", id: "tiles-ask" }, say.ask);
  const form = h("form", {}, fields, h("p", { class: "acts2" }, ask, another));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    find();
  });

  const coatNow = () => currentGlaze(told.draft()).thickness;
  const question = () => {
    const draft = told.draft();
    return tilesQuestion(tiles, buildQuestion(draft, currentGlaze(draft)).parts);
  };

  function build(focus?: string): void {
    const { units } = told.draft();
    const wanted = focus ?? document.activeElement?.id;
    if (JSON.stringify(units) !== JSON.stringify(tiles.units)) turnTiles(tiles, units);
    if (tiles.tiles.length === 0) tiles.tiles.push(newTile(coatNow(), units));
    builtFor = JSON.stringify([units, told.bodies().length]);
    fields.replaceChildren(...tileForm(tiles, told.bodies(), { typed, changed }));
    if (wanted) form.querySelector<HTMLElement>(`#${CSS.escape(wanted)}`)?.focus();
  }

  function typed(): void {
    keepTiles(tiles);
    markStale();
  }

  function changed(focus: string): void {
    build(focus);
    typed();
  }

  function add(): void {
    if (tiles.tiles.length >= MOST_TILES) {
      status.textContent = say.most;
      return;
    }
    tiles.tiles.push(newTile(coatNow(), told.draft().units));
    changed(`tile-${tiles.tiles.length - 1}-clay`);
  }

  async function find(): Promise<void> {
    running?.abort();
    report = null;
    answer.replaceChildren();
    if (tiles.known === "bench" && cameFromTiles(told.draft(), tiles.used)) {
      status.textContent = say.itself;
      return;
    }
    const { request, faults, places } = question();
    show(faults);
    if (faults.length > 0) return;
    running = new AbortController();
    asked = JSON.stringify(request);
    status.textContent = panel.working;
    const outcome = await settle(service.evidence.learn(request, { signal: running.signal }));
    if ("overtaken" in outcome) return;
    if ("faults" in outcome) show(outcome.faults.map((one) => ({ ...one, field: fieldAt(places, one.pointer) })));
    if ("trouble" in outcome) status.textContent = outcome.trouble;
    if ("report" in outcome) {
      report = outcome.report;
      draw(told.draft().units);
      markStale();
    }
  }

  const show = (faults: readonly FieldFault[]) => showPanelFaults(form, faults, status);

  function draw(units: Units): void {
    drawnFor = JSON.stringify(units);
    status.textContent = localise(report!.headline, units);
    answer.replaceChildren(...tellTiles(report!, units, use));
  }

  function use(): void {
    const draft = told.draft();
    let done: string = panel.noRoom;
    const found = report!;
    if (draft.trials.length < MOST_TRIALS) {
      told.change(() => {
        done = useTiles(told.draft(), found, tiles.used);
      });
    }
    keepTiles(tiles);
    status.textContent = done;
  }

  function markStale(): void {
    if (!report) return;
    const same = JSON.stringify(question().request) === asked;
    const mark = answer.querySelector(".stale");
    if (same) mark?.remove();
    else if (!mark) answer.prepend(h("p", { class: "stale mut" }, panel.stale));
  }

  return {
    element: h(
      "section",
      { class: "noprint panel", "aria-labelledby": "tiles-title" },
      h("h2", { id: "tiles-title" }, say.title),
      h("p", { class: "lede" }, say.lede),
      form,
      status,
      answer,
    ),
    follow() {
      const { units } = told.draft();
      if (JSON.stringify([units, told.bodies().length]) !== builtFor) build();
      if (report && JSON.stringify(units) !== drawnFor) draw(units);
      markStale();
    },
  };
}
