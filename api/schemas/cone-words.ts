/** What is said where a cone stands in place of a temperature. @module */
import { CONES, coneEnd } from "../engine/running/cones.ts";

/** Heating that the words reckon with [K/h]: what a run takes where none is told. */
const USUAL_RATE = 100;

/** Numbers below this are no temperature of a kiln, but may be a cone [°C]. */
const CONES_END = 30;

/** A cone as potters write it: `cone 6`, `c04`, `^10`, `Δ5.5`, `6`. */
const WRITTEN = /^(?:cone|[c^Δ∆△])?\s*(\d{1,3}(?:\.5)?)$/i;

/**
 * The cones that may be meant: a number may have lost the nought of 06.
 * @example conesIn(6) // ["6", "06"]
 * @example conesIn("cone 04") // ["04"]
 */
function conesIn(value: unknown): string[] {
  const meant = typeof value === "number" ? [`${value}`, `0${value}`] : [WRITTEN.exec(String(value).trim())?.[1] ?? ""];
  return meant.filter((cone) => CONES.includes(cone));
}

/**
 * Where the cones that may be meant bend.
 * @returns undefined where the value is like no cone
 * @example conesBend(6) // "Cone 6 bends near 1220 °C, cone 06 near 1000 °C; cones differ by maker and heating rate."
 */
export function conesBend(value: unknown): string | undefined {
  const cones = conesIn(value);
  if (cones.length === 0) return undefined;
  const near = (cone: string) => `near ${Math.round(coneEnd(cone, USUAL_RATE).peakC / 10) * 10} °C`;
  const said = cones.map((cone, i) => (i === 0 ? `Cone ${cone} bends ${near(cone)}` : `cone ${cone} ${near(cone)}`));
  return `${said.join(", ")}; cones differ by maker and heating rate.`;
}

/**
 * Asks whether a cone was meant, with where it bends.
 * @param value - what stands for a temperature: a number, or a text
 * @returns undefined where it is like no cone
 */
export function askCone(value: unknown): string | undefined {
  const bends = conesBend(value);
  if (bends) return `Did you mean a cone? ${bends}`;
  return typeof value === "number" && value > 0 && value < CONES_END ? "Did you mean a cone?" : undefined;
}
