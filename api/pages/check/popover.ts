/** Numbers that open where they come from. @module */
import type { Quantity } from "../../engine/quantity.ts";
import { fill } from "../fill.ts";
import { type Child, h } from "../shared/dom.ts";
import { sayQuantity } from "../shared/say-quantity.ts";
import { service } from "../shared/service.ts";
import { sayTemperature, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };

const { source } = words;
let citations: Map<string, string> | null = null;

/** The bibliography, fetched when the first number is opened. */
async function citation(key: string): Promise<string> {
  if (!citations) {
    const all = new Map<string, string>();
    for await (const one of service.sources.list({ limit: 200 })) all.set(one.key, one.citation);
    citations = all;
  }
  return citations.get(key) ?? key;
}

/**
 * @param id - of the note that opens
 * @param shown - the number in the sentence
 * @param more - further rows, word and value
 */
export function sourced(
  id: string,
  shown: string,
  title: string,
  quantity: Quantity,
  units: Units,
  from: string,
  keys: readonly string[] = [],
): { button: HTMLElement; note: HTMLElement } {
  const said = sayQuantity(quantity, units);
  const button = h("button", { class: "n", type: "button", popovertarget: id }, shown);
  const row = (word: string, value: Child) => [h("dt", {}, word), h("dd", {}, value)];
  const { rangeC, coverage } = quantity;
  const over = rangeC && `${sayTemperature(rangeC[0], units)} to ${sayTemperature(rangeC[1], units)}`;
  const likely = fill(source.likelyText, { low: said.low, high: said.high, coverage: Math.round(coverage * 10) });
  const rests = h("dd", {}, keys.join(", "));
  const note = h(
    "div",
    { class: "src", id, popover: "auto", role: "note" },
    h("b", {}, title),
    h(
      "dl",
      { class: "kv" },
      row(source.value, said.value),
      row(source.likely, likely),
      over ? row(source.over, over) : null,
      row(source.from, from),
      keys.length > 0 ? [h("dt", {}, source.rests), rests] : null,
    ),
  );
  note.addEventListener("beforetoggle", async () => {
    if (keys.length === 0) return;
    const texts = await Promise.all(keys.map(citation)).catch(() => [...keys]);
    rests.textContent = texts.join("; ");
  });
  return { button, note };
}
