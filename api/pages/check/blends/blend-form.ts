/** The fields of the panel about mixing. @module */
import { letters } from "../../../engine/blends/lattice.ts";
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import words from "../../words.json" with { type: "json" };
import { choiceField, numberField, segments } from "../fields.ts";
import { type BlendDraft, type Kind, LEAST_OF_MANY, turnKind } from "./blend-draft.ts";
import type { CornerGlaze } from "./corners.ts";

const { blends: say } = words;

export interface BlendFormTold {
  typed(): void;
  /** Other fields are wanted: build anew. */
  changed(focus: string): void;
}

export function blendForm(draft: BlendDraft, glazes: readonly CornerGlaze[], told: BlendFormTold): HTMLElement[] {
  const ids = glazes.map(({ id }) => id);
  const kinds = segments("blend-kind", say.kind, draft.kind, Object.entries(say.kinds), (kind) => {
    turnKind(draft, kind as Kind, ids);
    told.changed(`blend-kind-${kind}`);
  });
  const options = glazes.map(({ id, label }) => [id, label] as const);
  const many = draft.kind === "many";
  const corners = draft.corners.map((corner, c) => {
    const field = choiceField(`blend-corner-${c}`, cornerName(draft, c), corner, options, (id) => {
      draft.corners[c] = id;
      told.typed();
    });
    if (!many || draft.corners.length <= LEAST_OF_MANY) return field;
    const drop = () => {
      draft.corners.splice(c, 1);
      told.changed("blend-add");
    };
    const word = fill(say.drop, { corner: cornerName(draft, c) });
    field.append(h("button", { class: "btn bare", type: "button", onclick: drop, "aria-label": word }, say.dropShort));
    return field;
  });
  const number = (field: "steps" | "down" | "grams", label: string, unit: string) =>
    numberField(`blend-${field}`, label, draft[field], unit, (value) => {
      draft[field] = value;
      told.typed();
    });
  const free = ids.filter((id) => !draft.corners.includes(id));
  const add = () => {
    draft.corners.push(free[0]!);
    told.changed(`blend-corner-${draft.corners.length - 1}`);
  };
  return [
    h("p", { class: "lab gap", "aria-hidden": "true" }, say.kind),
    kinds,
    h("div", { class: "asks corners" }, ...corners),
    many && free.length > 0
      ? h(
          "p",
          { class: "acts2" },
          h("button", { class: "btn", type: "button", id: "blend-add", onclick: add }, say.add),
        )
      : "",
    h(
      "div",
      { class: "asks" },
      number("steps", draft.kind === "grid" ? say.across : say.steps, ""),
      draft.kind === "grid" ? number("down", say.down, "") : "",
      number("grams", say.grams, "g"),
    ),
  ].filter((part): part is HTMLElement => part instanceof HTMLElement);
}

/** Where a glaze stands: ends of a line, places in a square, letters with more. */
function cornerName({ kind }: BlendDraft, c: number): string {
  if (kind === "many") return fill(say.corner, { letter: letters(c) });
  return say.places[kind][c] ?? "";
}
