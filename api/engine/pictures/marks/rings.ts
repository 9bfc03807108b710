/** The ring: whole, broken or lifting. A ring is always a verdict. @module */
import type { Outcome, Verdict } from "../../fit/types.ts";
import { px } from "./sheet.ts";
import type { Tint } from "./theme.ts";

/** What a ring can say. */
export type RingState = Verdict | "unknown";

const CENTRE = 50;
const RADIUS = 37;
/** How far a lifted end stands clear. */
const LIFT = 17;

function polar(radius: number, degrees: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${px(CENTRE + radius * Math.sin(angle))} ${px(CENTRE - radius * Math.cos(angle))}`;
}

function arc(from: number, to: number): string {
  return `M${polar(RADIUS, from)}A${RADIUS} ${RADIUS} 0 ${to - from > 180 ? 1 : 0} 1 ${polar(RADIUS, to)}`;
}

/** An arc whose last part, from `free` on, curls away from the clay. */
function lifted(from: number, free: number, to: number): string {
  let d = arc(from, free);
  const steps = 6;
  for (let i = 1; i <= steps; i++) {
    const share = i / steps;
    d += `L${polar(RADIUS + LIFT * share * share, free + (to - free) * share)}`;
  }
  return d;
}

/** Outlines in a square of 100 by 100; stroke only. */
export const RINGS: Readonly<Record<RingState, string>> = {
  sound: `${arc(0, 179.9)}${arc(180, 359.9)}`,
  "may-craze": arc(48, 392),
  crazes: `${arc(52, 148)}${arc(172, 262)}${arc(286, 388)}`,
  "may-shiver": lifted(40, 322, 398),
  shivers: `${lifted(20, 64, 122)}${lifted(140, 184, 242)}${lifted(260, 304, 362)}`,
  unknown: `${arc(0, 179.9)}${arc(180, 359.9)}`,
};

/** Colour that repeats what the ring says. */
export const RING_TINT: Readonly<Record<RingState, Tint>> = {
  crazes: "pull",
  "may-craze": "pull",
  sound: "hold",
  "may-shiver": "push",
  shivers: "push",
  unknown: "ink2",
};

/** Ring of one of the twenty cases. */
export const OUTCOME_RING: Readonly<Record<Outcome, RingState>> = {
  crazesOnCooling: "crazes",
  crazesLater: "may-craze",
  sound: "sound",
  shivers: "shivers",
};
