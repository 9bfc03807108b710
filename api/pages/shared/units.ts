/** °C or °F, millimetres or inches: what is typed and what is read. The service itself speaks °C and mm. @module */

import { fromCelsius, nearly, type Temperature } from "../../engine/degrees.ts";
import { MM } from "../../engine/lengths/index.ts";
import { inInches } from "../../engine/pictures/marks/inches.ts";

export { fromCelsius, type Temperature, toCelsius } from "../../engine/degrees.ts";
export type Length = "mm" | "in";
export interface Units {
  temperature: Temperature;
  length: Length;
}
export const METRIC: Units = { temperature: "C", length: "mm" };

const KEY = "ringtrue-units";

/** Differences and rates have no 32 in them. @example toKelvins(180, "F") // 100 */
export const toKelvins = (value: number, unit: Temperature) => (unit === "F" ? (value * 5) / 9 : value);
export const fromKelvins = (k: number, unit: Temperature) => (unit === "F" ? (k * 9) / 5 : k);
export const toMm = (value: number, unit: Length) => value * MM[unit];
export const fromMm = (mm: number, unit: Length) => mm / MM[unit];

/** A figure without needless digits. @example tidy(0.30000000004) // "0.3" */
export const tidy = (value: number, decimals = 4): string => String(Number(value.toFixed(decimals)));

/** A worked-out temperature with its unit, to 5 °C. @example sayTemperature(642, METRIC) // "640 °C" */
export function sayTemperature(c: number, { temperature }: Units): string {
  return `${nearly(c, temperature)}\u00a0°${temperature}`;
}

/** A length with its unit. @example sayLength(0.3, METRIC) // "0.30 mm" */
export function sayLength(mm: number, { length }: Units): string {
  return length === "in" ? `${fromMm(mm, length).toFixed(3)}\u00a0in` : `${mm.toFixed(2)}\u00a0mm`;
}

/**
 * Bounds of the service in the unit that stands in a field.
 * @param sign - as it stands there
 * @example fromService("5 or less", "in") // "0.197 in or less"
 */
export function fromService(bounds: string, sign: string): string {
  const turn = (value: number) => {
    if (sign === "in") return tidy(fromMm(value, "in"), 3);
    if (sign === "°F") return tidy(fromCelsius(value, "F"), 0);
    return sign.startsWith("°F") ? tidy(fromKelvins(value, "F"), 1) : String(value);
  };
  const unit = sign === "" || sign === "±" ? "" : `\u00a0${sign}`;
  return bounds.replace(/-?\d+(?:\.\d+)?/, (value) => `${turn(Number(value))}${unit}`);
}

const NUMBER = "(\\d+(?:\\.\\d+)?)";
const RATE = new RegExp(`${NUMBER}[ \u00a0](?:°C an hour|K/h|°C/h)`, "g");
const SPAN = new RegExp(`${NUMBER}( to |–| and )${NUMBER}([ \u00a0])°C`, "g");
const APART = new RegExp(`${NUMBER}([ \u00a0])°C (cooler|hotter|apart)`, "g");
const BETWEEN = new RegExp(`in °C, between ${NUMBER} and ${NUMBER}`, "g");
const ONE = new RegExp(`([−-]?)${NUMBER}([ \u00a0])°C`, "g");

/**
 * Turns the units in a sentence of the service into the reader's.
 * @example localise("sets near 640 °C, 0.30 mm thick", { temperature: "F", length: "in" })
 * // "sets near 1184 °F, 0.012 in thick"
 */
export function localise(text: string, units: Units): string {
  let out = text;
  if (units.temperature === "F") {
    const f = (c: string | number) => String(Math.round(fromCelsius(Number(c), "F")));
    out = out
      .replace(RATE, (_, rate: string) => `${Math.round(fromKelvins(Number(rate), "F"))}\u00a0°F an hour`)
      .replace(
        APART,
        (_, k: string, gap: string, word: string) => `${Math.round(fromKelvins(Number(k), "F"))}${gap}°F ${word}`,
      )
      .replace(BETWEEN, (_, a: string, b: string) => `in °F, between ${f(a)} and ${f(b)}`)
      .replace(SPAN, (_, a: string, mid: string, b: string, gap: string) => `${f(a)}${mid}${f(b)}${gap}°F`)
      .replace(
        ONE,
        (_, minus: string, c: string, gap: string) => `${f(minus ? -Number(c) : c).replace("-", "−")}${gap}°F`,
      );
  }
  return units.length === "in" ? inInches(out) : out;
}

export function keptUnits(): Units {
  const kept = localStorage.getItem(KEY) ?? "";
  return { temperature: kept.includes("F") ? "F" : "C", length: kept.includes("in") ? "in" : "mm" };
}
export function keepUnits({ temperature, length }: Units): void {
  localStorage.setItem(KEY, `${temperature} ${length}`);
}
