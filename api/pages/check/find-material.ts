/** Search over materials: by name, by the other names they go by, by formula. @module */
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import { service } from "../shared/service.ts";
import words from "../words.json" with { type: "json" };

export interface Found {
  id: string;
  name: string;
  aliases: string[];
  formula: string | null;
}

let materials: Found[] = [];

/** Fetches the list once. */
export async function loadMaterials(): Promise<void> {
  const all: Found[] = [];
  for await (const { id, name, aliases, formula } of service.materials.list({ limit: 200 })) {
    all.push({ id, name, aliases: [...aliases], formula: formula ?? null });
  }
  materials = all;
}

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();

/** The material that a name stands for, where the list knows it. */
export function knownMaterial(name: string): Found | undefined {
  const wanted = plain(name);
  return materials.find((m) => plain(m.id) === wanted || m.aliases.some((alias) => plain(alias) === wanted));
}

/** Ten best fits: names that start so before names that contain it. @example findMaterials("quartz")[0].id // "silica" */
export function findMaterials(text: string): { found: Found; by: string }[] {
  const wanted = plain(text);
  if (wanted === "") return [];
  const ranked = materials.flatMap((found) => {
    const names = [found.id, found.name, ...found.aliases, found.formula ?? ""];
    const ranks = names.map((name): number => {
      const at = plain(name);
      return at === wanted
        ? 0
        : at.startsWith(wanted)
          ? 1
          : ` ${at}`.includes(` ${wanted}`)
            ? 2
            : at.includes(wanted)
              ? 3
              : 9;
    });
    const rank = Math.min(...ranks);
    return rank < 9 ? [{ found, by: names[ranks.indexOf(rank)]!, rank }] : [];
  });
  return ranked.sort((a, b) => a.rank - b.rank || a.found.id.length - b.found.id.length).slice(0, 10);
}

/** An id in words: hyphens are for addresses. @example sayId("potash-feldspar") // "Potash feldspar" */
export const sayId = (id: string): string => id.charAt(0).toUpperCase() + id.slice(1).replaceAll("-", " ");

/**
 * A field with a list that opens as one types (the combobox pattern of the ARIA practices).
 * @param take - told of every change, with whether it was taken from the list
 */
export function materialField(
  id: string,
  label: string,
  value: string,
  take: (value: string, chosen: boolean) => void,
) {
  const list = h("ul", { id: `${id}-list`, role: "listbox", "aria-label": label, hidden: true });
  const status = h("span", { class: "sr", "aria-live": "polite" });
  const shown = knownMaterial(value) && value === knownMaterial(value)?.id ? sayId(value) : value;
  const input = h("input", {
    id,
    "aria-label": label,
    value: shown,
    title: shown,
    role: "combobox",
    autocomplete: "off",
    spellcheck: "false",
    "aria-expanded": "false",
    "aria-autocomplete": "list",
    "aria-controls": `${id}-list`,
    "data-field": id,
  });
  let options: Found[] = [];
  let at = -1;
  const close = () => {
    list.hidden = true;
    input.setAttribute("aria-expanded", "false");
    input.removeAttribute("aria-activedescendant");
    at = -1;
  };
  const choose = (place: number) => {
    const option = options[place];
    if (!option) return;
    input.value = sayId(option.id);
    close();
    take(option.id, true);
  };
  const mark = (next: number) => {
    at = (next + options.length) % options.length;
    for (const [i, item] of [...list.children].entries()) item.setAttribute("aria-selected", String(i === at));
    input.setAttribute("aria-activedescendant", `${id}-${at}`);
    list.children[at]?.scrollIntoView({ block: "nearest" });
  };
  const open = () => {
    const fits = findMaterials(input.value);
    options = fits.map((fit) => fit.found);
    list.replaceChildren(
      ...fits.map(({ found, by }, i) => {
        const also = by === found.id || plain(by) === plain(found.id) ? found.name : by;
        const item = h("li", { id: `${id}-${i}`, role: "option", "aria-selected": "false" }, sayId(found.id));
        if (plain(also) !== plain(found.id)) item.append(h("small", {}, also));
        item.addEventListener("pointerdown", (event) => {
          event.preventDefault();
          choose(i);
        });
        return item;
      }),
    );
    list.hidden = options.length === 0;
    input.setAttribute("aria-expanded", String(!list.hidden));
    status.textContent =
      input.value === ""
        ? ""
        : fill(options.length ? words.check.found : words.check.noneFound, { count: options.length });
    at = -1;
  };
  input.addEventListener("input", () => {
    take(knownMaterial(input.value)?.id ?? input.value, false);
    open();
  });
  input.addEventListener("blur", close);
  input.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !list.hidden) event.stopPropagation();
    if (event.key === "Escape") return close();
    if (event.key === "Enter") {
      event.preventDefault();
      return at >= 0 ? choose(at) : undefined;
    }
    if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
    event.preventDefault();
    if (list.hidden) open();
    if (options.length > 0) mark(at + (event.key === "ArrowDown" ? 1 : -1));
  });
  return h("div", { class: "find" }, input, list, status);
}
