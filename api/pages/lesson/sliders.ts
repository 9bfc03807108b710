/** Sliders that change the question. @module */
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import { fromCelsius, fromKelvins, sayLength, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { oxidesOf, type Setting } from "./glazes.ts";

const { change } = words.lesson;
type Slid = "silica" | "soda" | "boron" | "body" | "thicknessMm" | "coolingCPerHour";

interface Range {
  name: Slid;
  label: string;
  min: number;
  max: number;
  step: number;
  say(value: number, units: Units): string;
}

const percent = (value: number) => fill(change.percent, { value: value.toFixed(1) });

const RANGES: readonly Range[] = [
  { name: "silica", label: change.silica, min: 50, max: 78, step: 0.5, say: percent },
  { name: "soda", label: change.soda, min: 0, max: 12, step: 0.5, say: percent },
  { name: "boron", label: change.boron, min: 0, max: 12, step: 0.5, say: percent },
  {
    name: "body",
    label: change.body,
    min: 4.5,
    max: 8,
    step: 0.1,
    say: (v) => fill(change.perK, { value: v.toFixed(1) }),
  },
  { name: "thicknessMm", label: change.thickness, min: 0.1, max: 1, step: 0.05, say: sayLength },
  {
    name: "coolingCPerHour",
    label: change.rate,
    min: 20,
    max: 500,
    step: 20,
    say: (v, { temperature }) =>
      fill(change.perHour, { value: `${Math.round(fromKelvins(v, temperature))}\u00a0°${temperature}` }),
  },
];

/** What a slider stands at: its own setting, or what the glaze has. */
function standsAt(setting: Setting, name: Slid): number {
  const oxide = { silica: "SiO2", soda: "Na2O", boron: "B2O3" }[name as "silica"];
  return setting[name] ?? oxidesOf(setting)[oxide ?? ""] ?? 0;
}

/**
 * Builds the sliders and keeps them true to the setting.
 * @param slide - told of each move
 */
export function sliders(units: Units, slide: (name: Slid, value: number) => void, back: () => void) {
  const made = RANGES.map(({ name, label, min, max, step, say }) => {
    const output = h("output", { for: `slide-${name}` });
    const input = h("input", { id: `slide-${name}`, type: "range", min, max, step });
    input.addEventListener("input", () => {
      tell(Number(input.value));
      slide(name, Number(input.value));
    });
    const tell = (value: number) => {
      output.textContent = say(value, units);
      input.setAttribute("aria-valuetext", say(value, units));
    };
    const element = h("div", { class: "one-slider" }, h("label", { for: `slide-${name}` }, label), output, input);
    return { element, name, input, tell };
  });
  const reset = h("button", { class: "btn", type: "button", id: "as-it-was", onclick: back }, change.back);
  return {
    elements: [...made.map(({ element }) => element), reset],
    show(setting: Setting) {
      for (const { name, input, tell } of made) {
        const value = standsAt(setting, name);
        if (document.activeElement !== input) input.value = String(value);
        tell(value);
      }
    },
  };
}

/** Degrees as the reader wants them, to one. */
export const degrees = (c: number, { temperature }: Units): string =>
  `${Math.round(fromCelsius(c, temperature))}\u00a0°${temperature}`;
