/** The panel's fields: wall, soak, a second firing. @module */
import { h } from "../shared/dom.ts";
import words from "../words.json" with { type: "json" };
import { numberField } from "./fields.ts";
import type { RunDraft } from "./run-draft.ts";

const { running } = words;

export interface RunFormTold {
  typed(): void;
  /** The second firing was chosen or not: other fields are wanted. */
  ticked(): void;
}

export function runForm(draft: RunDraft, told: RunFormTold): HTMLElement {
  const field = (name: "slope" | "glazed" | "clearance" | "soak" | "coat", unit: string) =>
    numberField(`run-${name}`, running[name], draft[name], unit, (value) => {
      draft[name] = value;
      told.typed();
    });
  const box = h("input", {
    type: "checkbox",
    id: "run-again",
    checked: draft.again,
    onchange: (event: Event) => {
      draft.again = (event.target as HTMLInputElement).checked;
      told.ticked();
      document.getElementById("run-again")?.focus();
    },
  });
  return h(
    "div",
    { class: "runs" },
    field("slope", "°"),
    field("glazed", draft.length),
    field("clearance", draft.length),
    field("soak", running.minutes),
    h("label", { class: "tick", for: "run-again" }, box, running.againTick),
    draft.again ? field("coat", draft.length) : null,
  );
}
