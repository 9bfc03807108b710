/** Rings that take their colour from the page. A ring is always a verdict. @module */
import type { Outcome, Verdict } from "../../engine/fit/types.ts";
import { ringMark } from "../../engine/pictures/ring-mark.ts";
import { drawing, h } from "./dom.ts";

export type RingState = Verdict | "unknown";

export const SIDE: Readonly<Record<RingState, "pull" | "hold" | "push" | "unknown">> = {
  crazes: "pull",
  "may-craze": "pull",
  sound: "hold",
  "may-shiver": "push",
  shivers: "push",
  unknown: "unknown",
};
const OF_OUTCOME: Readonly<Record<Outcome, Verdict>> = {
  crazesOnCooling: "crazes",
  crazesLater: "may-craze",
  sound: "sound",
  shivers: "shivers",
};

/** The ring of a verdict; words beside it say the same, so readers of the screen pass it by. */
export function ring(state: RingState, size = 96): HTMLElement {
  return h("span", { class: `ring-mark ring ${SIDE[state]}` }, drawing(ringMark(state, { size, decorative: true })));
}

/** The ring of one of the four outcomes. */
export const outcomeRing = (outcome: Outcome): HTMLElement => ring(OF_OUTCOME[outcome], 22);

/** The rule under the header in the same state: whole, broken or lifting. */
export function glazeLine(state: RingState): string {
  if (state === "sound" || state === "unknown") return "M0 6H1200";
  if (state === "may-craze") return "M0 6H310M324 6H700M714 6H1200";
  if (state === "crazes")
    return "M0 6H96M104 6H180M188 6H330M338 6H385M393 6H640M648 6H760M768 6H830M838 6H1060M1068 6H1200";
  const waves = Array.from({ length: 12 }, (_, i) => `Q${i * 30 + 7} -2 ${i * 30 + 15} 6T${i * 30 + 30} 6`).join("");
  if (state === "may-shiver") return `M0 6${waves}H1200`;
  return "M0 2L90 7M104 1L190 8M206 2L300 7M316 6H880M896 7L985 2M1000 8L1090 2M1104 7L1200 1";
}
