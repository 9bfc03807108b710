/** Something to look at while an answer takes longer than a blink. @module */
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import words from "../../words.json" with { type: "json" };

/** Shown from so long on, and counted in such steps [ms]. */
const SECOND = 1000;

/** A bar with the seconds so far, hidden until the first has gone by; the status line beside it says what is waited for. */
export function waiting(): { element: HTMLElement; begin(): void; end(): void } {
  const count = h("span", { class: "mut", "aria-hidden": "true" });
  const bar = h("progress", { "aria-label": words.panel.working });
  const element = h("p", { class: "waiting", hidden: true }, bar, count);
  let ticking: ReturnType<typeof setInterval> | undefined;
  const end = () => {
    clearInterval(ticking);
    element.hidden = true;
  };
  return {
    element,
    end,
    begin() {
      end();
      let seconds = 0;
      ticking = setInterval(() => {
        seconds += 1;
        count.textContent = fill(words.panel.waited, { seconds });
        element.hidden = false;
      }, SECOND);
    },
  };
}
