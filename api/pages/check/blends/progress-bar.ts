/** How far the tiles are. @module */
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import words from "../../words.json" with { type: "json" };

const { blends: say } = words;

/** A bar that stays hidden until it has something to show. */
export function progressBar() {
  const element = h("progress", { id: "blend-progress", "aria-label": say.working, hidden: true });
  return {
    element,
    show(done: number, all: number) {
      element.hidden = false;
      element.max = all;
      element.value = done;
      element.textContent = fill(say.progress, { done, all });
    },
  };
}
