/** The panel “What would make it fit”: three wishes, one button, the ways. @module */
import type { RemediesReport } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import type { Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import { currentGlaze } from "../draft.ts";
import { showFaults } from "../faults.ts";
import { choiceField, textField } from "../fields.ts";
import type { Panel, PanelTold } from "../panels.ts";
import type { FieldFault } from "../request.ts";
import { askRemedies, remediesRequest, type Wishes } from "./ask-remedies.ts";
import { sayRemedies, tellRemedies } from "./tell-remedies.ts";
import { fits, useRemedy } from "./use-remedy.ts";
import { waiting } from "./waiting.ts";

const { remedies: say, panel, check } = words;

export function remediesPanel(told: PanelTold): Panel {
  const wishes: Wishes = { target: 17, melt: "little", without: "" };
  let report: RemediesReport | null = null;
  let asked = "";
  let drawnFor = "";
  let running: AbortController | null = null;

  const status = h("p", { class: "because", role: "status", id: "remedies-status" });
  const wait = waiting();
  const list = h("div", { id: "remedies-list" });
  const ask = h("button", { class: "btn main", type: "button", id: "remedies-ask", onclick: () => find() }, say.ask);
  const options = (names: Readonly<Record<string, string>>) => Object.entries(names);
  const form = h(
    "form",
    { class: "asks" },
    choiceField("remedies-target", say.target, "17", targets(), (value) => {
      wishes.target = Number(value);
    }),
    choiceField("remedies-melt", say.melt, wishes.melt, options(say.melts), (value) => {
      wishes.melt = value as Wishes["melt"];
    }),
    textField("remedies-without", say.without, "", (value) => {
      wishes.without = value;
    }),
    h("p", { class: "acts2" }, ask),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    find();
  });

  async function find(): Promise<void> {
    const fit = told.fit();
    if (!fit) {
      status.textContent = panel.notYet;
      return;
    }
    running?.abort();
    running = new AbortController();
    asked = JSON.stringify(fit);
    status.textContent = panel.working;
    list.replaceChildren();
    report = null;
    wait.begin();
    const outcome = await askRemedies(remediesRequest(fit, wishes), running.signal);
    if ("overtaken" in outcome) return;
    wait.end();
    const faults = "faults" in outcome ? outcome.faults : [];
    show(faults.map((fault) => ({ ...fault, field: fault.pointer.startsWith("/forbid") ? "remedies-without" : "" })));
    if ("trouble" in outcome) status.textContent = outcome.trouble;
    if ("report" in outcome) {
      report = outcome.report;
      status.textContent = sayRemedies(
        report,
        currentGlaze(told.draft()).name.trim() || check.unnamed,
        told.draft().units,
      );
      draw(told.draft().units);
    }
  }

  function show(faults: readonly FieldFault[]): void {
    const first = faults[0];
    showFaults(form, faults, [], (_, fix) => {
      const names = wishes.without.split(/([,;])/);
      const at = faults.findIndex((fault) => fault.fix === fix);
      const place = Number(/(\d+)$/.exec((faults[at] as { pointer?: string })?.pointer ?? "")?.[1] ?? 0) * 2;
      names[place] = place > 0 ? ` ${fix}` : fix;
      wishes.without = names.join("");
      form.querySelector<HTMLInputElement>("#remedies-without")!.value = wishes.without;
      find();
    });
    if (first) status.textContent = first.field ? panel.atField : first.message;
  }

  function draw(units: Units): void {
    drawnFor = JSON.stringify(units);
    list.replaceChildren();
    for (const child of tellRemedies(report!, units, use)) if (child instanceof Node) list.append(child);
  }

  function use(remedy: Parameters<typeof useRemedy>[1]): void {
    if (!fits(told.draft(), remedy)) {
      status.textContent = panel.noRoom;
      return;
    }
    let done = "";
    told.change(() => {
      done = useRemedy(told.draft(), remedy);
    });
    status.textContent = done;
  }

  return {
    element: h(
      "section",
      { class: "noprint panel", "aria-labelledby": "remedies-title" },
      h("h2", { id: "remedies-title" }, say.title),
      h("p", { class: "lede" }, say.lede),
      form,
      status,
      wait.element,
      list,
    ),
    follow() {
      if (!report) return;
      const { units } = told.draft();
      if (JSON.stringify(units) !== drawnFor) draw(units);
      const fit = told.fit();
      if (fit && JSON.stringify(fit) !== asked && !list.querySelector(".stale")) {
        list.prepend(h("p", { class: "stale mut" }, panel.stale));
      }
      if (fit && JSON.stringify(fit) === asked) list.querySelector(".stale")?.remove();
    },
  };
}

/** Chances worth asking for, in twenty. */
const targets = () => ["12", "15", "17", "19"].map((n) => [n, fill(words.verdict.inTwenty, { count: n })] as const);
