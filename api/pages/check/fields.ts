/** Fields of the bench, built from what is typed in them. @module */
import { add, type Child, h } from "../shared/dom.ts";

/** How a field tells the page. */
export interface Bound {
  /** Called with what is typed. */
  oninput(value: string): void;
}

/** A field for a number, its unit inside it and read out with its label. */
export function numberField(
  id: string,
  label: string,
  value: string,
  unit: Child,
  oninput: (value: string) => void,
  wide = false,
): HTMLElement {
  const input = h("input", {
    id,
    value,
    inputmode: "decimal",
    autocomplete: "off",
    "data-field": id,
    "aria-describedby": unit ? `${id}-unit` : undefined,
    oninput: (event: Event) => oninput((event.target as HTMLInputElement).value),
  });
  const sign = unit ? h("i", { id: `${id}-unit` }, unit) : null;
  return h("div", { class: wide ? "unit w" : "unit" }, h("label", { for: id }, label), input, sign);
}

export function textField(id: string, label: string, value: string, oninput: (value: string) => void): HTMLElement {
  const input = h("input", {
    id,
    value,
    maxlength: 100,
    autocomplete: "off",
    "data-field": id,
    oninput: (event: Event) => oninput((event.target as HTMLInputElement).value),
  });
  return h("div", {}, h("label", { for: id }, label), input);
}

export function choiceField(
  id: string,
  label: string,
  value: string,
  options: readonly (readonly [string, string])[],
  onchange: (value: string) => void,
): HTMLElement {
  const select = h(
    "select",
    { id, "data-field": id, onchange: (event: Event) => onchange((event.target as HTMLSelectElement).value) },
    ...options.map(([name, words]) => h("option", { value: name, selected: name === value }, words)),
  );
  return h("div", {}, h("label", { for: id }, label), select);
}

/** A choice of a few, all of them seen. */
export function segments(
  name: string,
  label: string,
  value: string,
  options: readonly (readonly [string, Child])[],
  onchange: (value: string) => void,
): HTMLElement {
  const group = h("div", { class: "seg", role: "radiogroup", "aria-label": label });
  for (const [option, words] of options) {
    const input = h("input", { type: "radio", name, checked: option === value, id: `${name}-${option}` });
    input.addEventListener("change", () => onchange(option));
    group.append(h("label", {}, input, h("span", {}, words)));
  }
  return group;
}

export function fieldset(legend: string, ...children: Child[]): HTMLFieldSetElement {
  const set = h("fieldset", {}, h("legend", {}, legend));
  add(set, children);
  return set;
}
