/** Making elements: all the framework that these pages need. @module */

export type Child = Node | string | number | null | undefined | false | Child[];

type Props = Readonly<Record<string, unknown>>;

/**
 * Makes an element. Props starting with `on` are listeners; `class` and attributes are set as they are; true stands for
 * an empty attribute, and false, null or undefined leaves it out. Words are set as text, never as markup.
 * @example h("button", { type: "button", onclick: undo }, "Undo")
 */
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value as EventListener);
    else if (name === "value") (element as HTMLInputElement).value = String(value);
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  add(element, children);
  return element;
}

/** Adds children; gaps are skipped. */
export function add(parent: Node, children: Child): void {
  if (children === null || children === undefined || children === false) return;
  if (Array.isArray(children)) for (const child of children) add(parent, child);
  else parent.appendChild(children instanceof Node ? children : document.createTextNode(String(children)));
}

/** An element of the page that is known to be there. */
export function byId<T extends HTMLElement = HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no #${id}.`);
  return found as T;
}

/**
 * A drawing of our own as an element. Its `<style>` is left out, since the page's policy forbids it and its own style
 * says the same.
 * @param text - SVG text from the picture functions, whose words are escaped there
 */
export function drawing(text: string): SVGElement {
  const holder = document.createElement("template");
  holder.innerHTML = text.replace(/<style>.*?<\/style>/gs, "");
  return holder.content.firstElementChild as SVGElement;
}

/** Words in which `<sub>` and `<sup>` are wanted: `SiO2` becomes SiO with a low 2. */
export function formula(name: string): Child[] {
  return name.split(/(\d+)/).map((part) => (/^\d+$/.test(part) ? h("sub", {}, part) : part));
}

/** A sentence in which oxides have their digits low: `K2O pulls`, but `from 20 to 300 °C` and `a P3 mask` as they are. */
export function withFormulas(text: string): Child[] {
  return text.split(/\b([A-Z][a-z]?\d?O\d?)\b/).map((part, i) => (i % 2 ? formula(part) : part));
}

/** Words in which one part is underlined, marked by asterisks: `it will *most likely craze*`. */
export function stressed(text: string): Child[] {
  return text.split("*").map((part, i) => (i % 2 ? h("em", {}, part) : part));
}
