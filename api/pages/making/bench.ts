/** The Making bench. @module */

import { choiceField, fieldset, numberField, segments } from "../check/fields.ts";
import { h } from "../shared/dom.ts";
import words from "../words.json" with { type: "json" };
import { type Form, type MakingDraft, PARTS } from "./draft.ts";

const { making, check } = words;

export interface MakingTold {
  typed(): void;
  /** Something was chosen that changes the form itself. */
  changed(change: () => void, focus: string): void;
  /** Bars as typed. */
  bars(text: string): void;
}

export function makingBench(draft: MakingDraft, told: MakingTold): HTMLElement {
  const put = (field: keyof MakingDraft) => (value: string) => {
    (draft as unknown as Record<string, string>)[field] = value;
    told.typed();
  };
  const length = (field: "height" | "rim" | "belly" | "foot" | "wall" | "seat" | "play" | "glazeOnSeat") =>
    numberField(field, making[field], draft[field], draft.unit, put(field));
  const forms = Object.entries(making.forms);
  const area = h("textarea", { id: "bars", rows: 4, spellcheck: "false" });
  const measure = h("button", { class: "btn", type: "button", onclick: () => told.bars(area.value) }, making.barsUse);
  const piece = fieldset(
    making.piece,
    choiceField("form-of", making.form, draft.form, forms, (value) =>
      told.changed(() => (draft.form = value as Form), "form-of"),
    ),
    h(
      "div",
      { class: "two gap" },
      ...PARTS[draft.form].map(length),
      numberField("pieces", making.pieces, draft.pieces, making.piecesUnit, put("pieces"), true),
    ),
  );
  const clay = fieldset(
    making.clay,
    h(
      "div",
      { class: "two" },
      numberField("percent", making.wetToFired, draft.percent, "%", put("percent")),
      numberField("plusMinus", making.giveOrTake, draft.plusMinus, "%", put("plusMinus")),
      numberField("drying", making.drying, draft.drying, "%", put("drying")),
    ),
    h(
      "details",
      { class: "gap" },
      h("summary", {}, making.bars),
      h("label", { for: "bars" }, making.barsLabel),
      area,
      h("p", { class: "acts2" }, measure),
      h("p", { id: "bars-told", role: "status", class: "sm" }),
    ),
  );
  const lid =
    draft.form === "jar"
      ? fieldset(making.lid, h("div", { class: "two" }, length("seat"), length("play"), length("glazeOnSeat")))
      : null;
  const bucket = fieldset(
    making.glaze,
    h(
      "div",
      { class: "two" },
      numberField("dry", making.dry, draft.dry, "g", put("dry")),
      numberField("gravity", making.gravity, draft.gravity, making.gravityUnit, put("gravity")),
    ),
  );
  const units = fieldset(
    check.units,
    segments(
      "unit",
      check.lengthUnit,
      draft.unit,
      [
        ["mm", "mm"],
        ["in", check.inches],
      ],
      (value) => {
        told.changed(() => convert(draft, value as MakingDraft["unit"]), `unit-${value}`);
      },
    ),
  );
  return h("div", { class: "benchgrid" }, h("div", {}, piece, lid), h("div", {}, clay, bucket, units));
}

const LENGTHS = ["height", "rim", "belly", "foot", "wall", "seat", "play", "glazeOnSeat"] as const;

/** Writes plain numbers in the other unit; lengths with words of their own stay. */
function convert(draft: MakingDraft, unit: MakingDraft["unit"]): void {
  if (draft.unit === unit) return;
  for (const field of LENGTHS) {
    const value = Number(draft[field].replace(",", "."));
    if (draft[field].trim() === "" || !Number.isFinite(value)) continue;
    draft[field] = String(Number((unit === "in" ? value / 25.4 : value * 25.4).toFixed(unit === "in" ? 3 : 1)));
  }
  draft.unit = unit;
}
