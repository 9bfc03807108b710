/** The panel “Mix glazes in steps”: corners and steps, one button, every tile judged as it comes. @module */

import { headline } from "../../../engine/blends/headline.ts";
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import { localise } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import { currentGlaze, MOST_TRIALS } from "../draft.ts";
import { showPanelFaults } from "../faults.ts";
import type { Panel, PanelTold } from "../panels.ts";
import { buildQuestion, type FieldFault, fieldAt } from "../request.ts";
import { askBlend, askNotices, type Tile } from "./ask-blend.ts";
import { cornersFor, keepBlend, keptBlend } from "./blend-draft.ts";
import { blendForm } from "./blend-form.ts";
import { type BlendQuestion, blendQuestion } from "./blend-question.ts";
import { cornerGlazes } from "./corners.ts";
import { printBlend } from "./on-paper.ts";
import { progressBar } from "./progress-bar.ts";
import { saveTable } from "./save-table.ts";
import { blendAnswer } from "./tell-blend.ts";
import { useTile } from "./tile-told.ts";

const { blends: say, panel } = words;

export function blendsPanel(told: PanelTold): Panel {
  const draft = keptBlend();
  let asked: BlendQuestion | null = null;
  let tiles: Tile[] = [];
  let notices: string[] = [];
  let running: AbortController | null = null;
  let builtFor = "";
  let drawnFor = "";

  const status = h("p", { class: "because", role: "status", id: "blend-status" });
  const makes = h("p", { class: "mut", id: "blend-makes" });
  const fields = h("div", {});
  const ask = h("button", { class: "btn main", type: "submit", id: "blend-ask" }, say.ask);
  const bar = progressBar();
  const form = h("form", {}, fields, makes, h("p", { class: "acts2" }, ask), bar.element);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (running) running.abort();
    else find();
  });
  const stale = h("p", { class: "stale mut", hidden: true }, panel.stale);
  const answer = blendAnswer({
    use(tile) {
      if (told.draft().trials.length >= MOST_TRIALS) {
        status.textContent = panel.noRoom;
        return;
      }
      told.change(() => {
        status.textContent = useTile(told.draft(), tile, namesOf(), asked!.request.thicknessMm);
      });
    },
    save: () => saveTable(namesOf(), tiles),
    print: () => printBlend(answer.drawn()!),
  });
  const holder = h("div", { id: "blend-answer", hidden: true }, stale, answer.element);

  const namesOf = () => asked!.request.corners.map(({ name }) => name ?? "");
  const question = () => {
    const bench = told.draft();
    return blendQuestion(draft, cornerGlazes(bench), buildQuestion(bench, currentGlaze(bench)).parts);
  };
  const same = (one: BlendQuestion | null, other: BlendQuestion) =>
    JSON.stringify(one?.request) === JSON.stringify(other.request);
  const whole = () => tiles.length > 0 && tiles.length === tiles[0]!.of;

  function build(focus?: string): void {
    const glazes = cornerGlazes(told.draft());
    const wanted = focus ?? document.activeElement?.id;
    const ids = glazes.map(({ id }) => id);
    draft.corners = cornersFor(draft.kind, draft.corners, ids);
    builtFor = JSON.stringify(glazes.map(({ label }) => label));
    fields.replaceChildren(...blendForm(draft, glazes, { typed, changed }));
    if (wanted) form.querySelector<HTMLElement>(`#${CSS.escape(wanted)}`)?.focus();
    follow();
  }

  function typed(): void {
    keepBlend(draft);
    follow();
  }

  function changed(focus: string): void {
    build(focus);
    typed();
  }

  /** How many tiles it makes, what the button does, whether the answer is to what stands there now. */
  function follow(): void {
    const now = question();
    makes.textContent =
      now.tiles === null ? "" : fill(now.tiles === 1 ? say.makesOne : say.makes, { count: now.tiles });
    const broken = tiles.length > 0 && !whole() && same(asked, now);
    const next = broken ? fill(say.goOn, { count: tiles.length + 1, all: tiles[0]!.of }) : say.ask;
    ask.textContent = running ? say.stop : next;
    stale.hidden = !asked || same(asked, now);
    // Another weight for a tile is no other question.
    if (asked && !holder.hidden && stale.hidden && now.faults.length === 0 && now.grams !== asked.grams) {
      asked = now;
      answer.weigh(now);
    }
  }

  async function find(): Promise<void> {
    const now = question();
    show(now.faults);
    if (now.faults.length > 0) return;
    if (!now.clay) {
      status.textContent = say.noClay;
      return;
    }
    if (!same(asked, now) || whole()) tiles = [];
    asked = now;
    holder.hidden = true;
    running = new AbortController();
    status.textContent = panel.working;
    look();
    follow();
    const first = await askNotices(now.request, running.signal);
    if ("report" in first) notices = first.report;
    const outcome = "report" in first ? await askBlend(now.request, tiles, running.signal, look) : first;
    running = null;
    bar.element.hidden = true;
    const gaps = { done: tiles.length, all: tiles[0]?.of ?? now.tiles ?? 0 };
    if ("faults" in outcome) show(outcome.faults.map((one) => ({ ...one, field: fieldAt(now.places, one.pointer) })));
    if ("overtaken" in outcome) status.textContent = fill(say.stopped, gaps);
    if ("trouble" in outcome) {
      status.textContent = tiles.length > 0 ? `${outcome.trouble} ${fill(say.came, gaps)}` : outcome.trouble;
    }
    if ("report" in outcome) draw();
    follow();
  }

  const look = () => bar.show(tiles.length, tiles[0]?.of ?? asked?.tiles ?? 1);

  const show = (faults: readonly FieldFault[]) => showPanelFaults(form, faults, status);

  function draw(): void {
    const { units } = told.draft();
    drawnFor = JSON.stringify(units);
    const corners = namesOf();
    const blend = { headline: headline(corners, tiles), corners, points: tiles };
    status.textContent = blend.headline;
    holder.hidden = false;
    const said = notices.map((notice) => localise(notice, units));
    answer.show({ blend, shape: asked!.request.shape ?? "simplex", asked: asked!, notices: said, units });
  }

  return {
    element: h(
      "section",
      { class: "noprint panel", "aria-labelledby": "blend-title" },
      h("h2", { id: "blend-title" }, say.title),
      h("p", { class: "lede" }, say.lede),
      form,
      status,
      holder,
    ),
    follow() {
      const labels = JSON.stringify(cornerGlazes(told.draft()).map(({ label }) => label));
      if (labels !== builtFor) build();
      else follow();
      if (!holder.hidden && JSON.stringify(told.draft().units) !== drawnFor) draw();
    },
  };
}
