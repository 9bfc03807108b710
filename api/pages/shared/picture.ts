/** A picture that redraws itself for its room, its theme and for paper. @module */
import type { PictureWidth } from "../../engine/pictures/index.ts";
import { drawing, h } from "./dom.ts";
import { onTheme, theme } from "./theme.ts";

export interface PictureChoice {
  theme: ReturnType<typeof theme>;
  width: PictureWidth;
}

/** Narrowest room for each drawn width [px]: below it the next smaller drawing is more easily read. */
const ROOM: readonly [PictureWidth, number][] = [
  [980, 800],
  [720, 560],
];

/**
 * Holds one picture and keeps it drawn for where it stands.
 * @param widest - the widest drawing that makes sense here
 * @param onPaper - the drawing for A4, where nothing can be measured beforehand
 * @returns the element, and `show` which takes a function from choice to SVG text, or null for nothing
 */
export function picture(widest: PictureWidth = 980, onPaper: PictureWidth = 720) {
  const holder = h("div", { class: "fig" });
  let draw: ((choice: PictureChoice) => string) | null = null;
  let drawn = "";
  const redraw = () => {
    const paper = theme() === "print";
    const room = holder.clientWidth || 980;
    const fitting = ROOM.find(([, least]) => room >= least)?.[0] ?? 350;
    const onScreen = (fitting > widest ? widest : fitting) as PictureWidth;
    const width = paper ? onPaper : onScreen;
    const text = draw ? draw({ theme: theme(), width }) : "";
    if (text === drawn) return;
    drawn = text;
    holder.replaceChildren(...(text ? [drawing(text)] : []));
  };
  new ResizeObserver(redraw).observe(holder);
  onTheme(redraw);
  return {
    element: holder,
    show(next: ((choice: PictureChoice) => string) | null) {
      draw = next;
      redraw();
    },
  };
}
