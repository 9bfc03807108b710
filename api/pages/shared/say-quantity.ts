/** Figures of the service in words: rounded to what they are worth, with unit and interval, never bare. @module */

import { nearly } from "../../engine/degrees.ts";
import type { Quantity } from "../../engine/quantity.ts";
import { plain, signed } from "../say.ts";
import { fromMm, type Units } from "./units.ts";

/** Decimals that each unit is worth. */
const DECIMALS: Readonly<Record<string, number>> = { MPa: 0, "1e-6/K": 2, "%": 3, GPa: 0, mm: 2, "°C": 0, K: 0 };

/** A figure and its unit, as the reader wants them. */
export interface Said {
  /** With the unit. */
  value: string;
  low: string;
  high: string;
  unit: string;
}

/**
 * @example sayQuantity({ value: 25.1, low: -33, high: 87.8, coverage: 0.9, unit: "MPa" }, METRIC).value // "+25 MPa"
 */
export function sayQuantity(quantity: Quantity, units: Units): Said {
  const { unit } = quantity;
  if (unit === "°C") {
    const turn = (c: number) => String(nearly(c, units.temperature));
    return said(turn, quantity, `°${units.temperature}`);
  }
  if (unit === "mm" && units.length === "in") return said((mm) => fromMm(mm, "in").toFixed(3), quantity, "in");
  const most = DECIMALS[unit] ?? 2;
  // As many decimals as one of the three needs, the same for all.
  const figures = [quantity.value, quantity.low, quantity.high];
  const decimals = Math.max(...figures.map((one) => plain(one, most).split(".")[1]?.length ?? 0));
  const turn = (value: number) =>
    unit === "MPa"
      ? signed(value)
      : unit === "mm"
        ? value.toFixed(2)
        : (Number(value.toFixed(decimals)) + 0).toFixed(decimals).replace("-", "−");
  return said(turn, quantity, unit.replace("1e-6/K", "×10⁻⁶/K"));
}

function said(turn: (value: number) => string, { value, low, high }: Quantity, unit: string): Said {
  return { value: `${turn(value)}\u00a0${unit}`, low: turn(low), high: turn(high), unit };
}
