/** The bench: the form that a person fills in. It is built from the draft and writes into it. @module */
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import type { Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { convert } from "./convert.ts";
import { currentGlaze, type Draft, type Kind, letterOf } from "./draft.ts";
import { choiceField, fieldset, numberField, segments, textField } from "./fields.ts";
import { analysisRows, recipeRows } from "./rows.ts";

/** What the bench tells the page. */
export interface BenchTold {
  /** A field was typed in: the draft has changed already. */
  typed(): void;
  /** Something was added, taken away or chosen: remember the draft before `change`, then build anew. */
  changed(change: () => void, focus?: string): void;
  paste(): void;
  bodies: readonly { id: string; name: string }[];
}

const { check } = words;

/** Builds the whole form. */
export function bench(draft: Draft, told: BenchTold): HTMLElement {
  return h(
    "div",
    { class: "benchgrid" },
    h("div", {}, glazeSet(draft, told)),
    h("div", {}, claySet(draft, told), firingSet(draft, told), wareSet(draft, told), unitSet(draft, told)),
  );
}

function glazeSet(draft: Draft, told: BenchTold): HTMLElement {
  const glaze = currentGlaze(draft);
  const kinds = (Object.keys(check.kinds) as Kind[]).map((kind) => [kind, check.kinds[kind]] as const);
  const put = (field: "name" | "expansion" | "plusMinus" | "from" | "to") => (value: string) => {
    glaze[field] = value;
    told.typed();
  };
  const chosen = (kind: string) => told.changed(() => (glaze.kind = kind as Kind), `kind-${kind}`);
  const degrees = `°${draft.units.temperature}`;
  const parts = {
    recipe: () => recipeRows(glaze, told),
    analysis: () => analysisRows(glaze, told),
    expansion: () => [
      h(
        "div",
        { class: "two last-wide" },
        numberField("expansion", check.expansion, glaze.expansion, check.perK, put("expansion"), true),
        numberField("plusMinus", check.giveOrTake, glaze.plusMinus, "±", put("plusMinus")),
      ),
      h(
        "div",
        { class: "two gap" },
        numberField("from", check.from, glaze.from, degrees, put("from")),
        numberField("to", check.to, glaze.to, degrees, put("to")),
      ),
    ],
  };
  const legend = draft.trials.length > 1 ? `${check.glaze} ${letterOf(draft.current)}` : check.glaze;
  const tabs =
    draft.trials.length > 1
      ? segments(
          "trial",
          words.trials.title,
          String(draft.current),
          draft.trials.map((_, i) => [String(i), letterOf(i)] as const),
          (place) => told.changed(() => (draft.current = Number(place)), `trial-${place}`),
        )
      : null;
  return fieldset(
    legend,
    tabs,
    textField("name", check.name, glaze.name, put("name")),
    h("div", { class: "gap" }),
    segments("kind", check.know, glaze.kind, kinds, chosen),
    parts[glaze.kind](),
  );
}

function claySet(draft: Draft, told: BenchTold): HTMLElement {
  const { body } = draft;
  const degrees = `°${draft.units.temperature}`;
  const put = (field: "expansion" | "plusMinus" | "from" | "to") => (value: string) => {
    body[field] = value;
    told.typed();
  };
  const given = body.given ? [["given", check.ownCurve] as const] : [];
  const known = told.bodies.map(({ id, name }) => [id, name.charAt(0).toUpperCase() + name.slice(1)] as const);
  // Before the list has come, or where it never does, what was chosen still shows.
  const kept = body.class && !known.some(([id]) => id === body.class) ? [[body.class, body.class] as const] : [];
  const choose = (value: string) =>
    told.changed(() => {
      if (value !== "given") draft.body = { ...body, given: undefined, class: value };
    }, "body-class");
  const value = body.given ? "given" : body.class;
  const choice = choiceField(
    "body-class",
    check.body,
    value,
    [...given, ["", check.anyBody], ...kept, ...known],
    choose,
  );
  if (body.given) return fieldset(check.clay, choice);
  return fieldset(
    check.clay,
    choice,
    h(
      "div",
      { class: "two last-wide gap" },
      numberField("body-expansion", check.expansion, body.expansion, check.perK, put("expansion"), true),
      numberField("body-plusMinus", check.giveOrTake, body.plusMinus, "±", put("plusMinus")),
    ),
    h(
      "div",
      { class: "two gap" },
      numberField("body-from", check.from, body.from, degrees, put("from")),
      numberField("body-to", check.to, body.to, degrees, put("to")),
    ),
  );
}

function firingSet(draft: Draft, told: BenchTold): HTMLElement {
  const unit = draft.units.temperature;
  const put = (field: "peak" | "cooling") => (value: string) => {
    draft.firing[field] = value;
    told.typed();
  };
  return fieldset(
    check.firing,
    h(
      "div",
      { class: "two" },
      numberField("peak", check.top, draft.firing.peak, `°${unit}`, put("peak")),
      numberField("cooling", check.cooling, draft.firing.cooling, fill(check.perHour, { unit }), put("cooling")),
    ),
  );
}

function wareSet(draft: Draft, told: BenchTold): HTMLElement {
  const glaze = currentGlaze(draft);
  const { ware, units } = draft;
  const faces = Object.entries(check.faces);
  const put = (field: "wall" | "years") => (value: string) => {
    ware[field] = value;
    told.typed();
  };
  const thickness = (value: string) => {
    glaze.thickness = value;
    told.typed();
  };
  return fieldset(
    check.ware,
    h(
      "div",
      { class: "two" },
      numberField("thickness", check.thickness, glaze.thickness, units.length, thickness),
      numberField("wall", check.wall, ware.wall, units.length, put("wall")),
    ),
    h(
      "div",
      { class: "two last-wide gap" },
      choiceField("glazed", check.glazed, ware.glazed, faces, (value) => {
        told.changed(() => (ware.glazed = value as typeof ware.glazed), "glazed");
      }),
      numberField("years", check.years, ware.years, check.yearsUnit, put("years")),
    ),
  );
}

function unitSet(draft: Draft, told: BenchTold): HTMLElement {
  const { units } = draft;
  const change = (next: Units, focus: string) => told.changed(() => convert(draft, next), focus);
  return fieldset(
    check.units,
    h(
      "div",
      { class: "two" },
      segments(
        "temperature",
        check.temperatureUnit,
        units.temperature,
        [
          ["C", "°C"],
          ["F", "°F"],
        ],
        (value) => {
          change({ ...units, temperature: value as Units["temperature"] }, `temperature-${value}`);
        },
      ),
      segments(
        "length",
        check.lengthUnit,
        units.length,
        [
          ["mm", "mm"],
          ["in", check.inches],
        ],
        (value) => {
          change({ ...units, length: value as Units["length"] }, `length-${value}`);
        },
      ),
    ),
  );
}
