/** The sheet a picture is drawn on: collects marks and writes them as one SVG text. @module */

import { exactly, nearly, type Temperature } from "../../degrees.ts";
import type { PictureOptions, PictureWidth } from "../types.ts";
import { inInches, type LengthUnit } from "./inches.ts";
import { wrap } from "./text-width.ts";
import { THEMES, type Theme, type Tint } from "./theme.ts";

/** Fonts: the pages' own, then what a reader's machine is likely to have. */
const FONTS = "'Atkinson Hyperlegible Next',Arial,'Helvetica Neue','Liberation Sans',system-ui,sans-serif";
const HEADING = { size: 18, leading: 23, narrowSize: 15, narrowLeading: 19 };

/** Stands for the start of every id until it is known; no text from outside can hold it. */
export const PREFIX = "\u0001";

/** How a line or an area is drawn. */
export interface Pen {
  stroke?: Tint;
  width?: number;
  /** A colour, or the name of a pattern made with {@link Sheet.define}. */
  fill?: Tint | { pattern: string };
  dash?: string;
  /** Of the stroke if there is one, else of the fill. */
  opacity?: number;
}

/** How a text is set. */
export interface Type {
  size: number;
  tint?: Tint;
  bold?: boolean;
  anchor?: "start" | "middle" | "end";
}

/** Two decimals and no more: a hundredth of a pixel is never seen. @example px(2.34567) // 2.35 */
export function px(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** A number with more decimals than are drawn. */
const LONG = /-?\d+\.\d{3,}(?:e-?\d+)?/g;
const rounded = (digits: string) => String(px(Number(digits)));

/** Makes any text safe inside SVG; characters that XML cannot hold are dropped. @example escapeText("<b>") // "&#60;b&#62;" */
export function escapeText(text: string): string {
  return text.replace(UNPRINTABLE, "").replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`);
}

const UNPRINTABLE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these, and halves of pairs, are what XML cannot hold.
  /[\u0000-\u001f\u007f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** A drawing under way. */
export class Sheet {
  readonly width: PictureWidth;
  readonly theme: Theme;
  /** The narrow layout: shorter words, smaller marks. */
  readonly narrow: boolean;
  /** Size of words [px]. */
  readonly size: number;
  /** Unit of temperatures. */
  readonly temperature: Temperature;
  /** Unit of lengths. */
  readonly length: LengthUnit;
  readonly #options: PictureOptions;
  readonly #marks: string[] = [];
  readonly #defs = new Map<string, string>();

  constructor(options: PictureOptions) {
    this.#options = options;
    this.width = options.width ?? 980;
    this.theme = THEMES[options.theme ?? "light"];
    this.narrow = this.width < 500;
    this.size = this.narrow ? 12.5 : 14;
    this.temperature = options.temperature ?? "C";
    this.length = options.length ?? "mm";
  }

  /** A known temperature with its unit, to one degree. @example sheet.exactly(573) // "573 °C" */
  exactly(c: number): string {
    return `${exactly(c, this.temperature)} °${this.temperature}`;
  }

  /** A worked-out temperature with its unit, to 5 °C. @example sheet.nearly(683) // "685 °C" */
  nearly(c: number): string {
    return `${nearly(c, this.temperature)}\u00a0°${this.temperature}`;
  }

  /** Words whose lengths are in mm, in the unit asked for. */
  lengths(words: string): string {
    return this.length === "in" ? inInches(words) : words;
  }

  /** Whether the finding stands above the picture. */
  get headed(): boolean {
    return this.#options.standalone === true;
  }

  /** Whether the print theme is on, where pattern does what colour does elsewhere. */
  get print(): boolean {
    return this.theme === THEMES.print;
  }

  /** Puts a pattern, clip or shape into the definitions once; `%ID%` in the markup stands for its id. */
  define(name: string, markup: () => string): string {
    if (!this.#defs.has(name)) this.#defs.set(name, markup().replaceAll("%ID%", `${PREFIX}-${name}`));
    return name;
  }

  /** Marks as they are; for what the methods below do not cover. */
  raw(markup: string): void {
    this.#marks.push(markup);
  }

  path(d: string, pen: Pen): void {
    if (d !== "") this.#marks.push(`<path d="${d.replace(LONG, rounded)}"${this.#pen(pen)}/>`);
  }

  rect(x: number, y: number, width: number, height: number, pen: Pen): void {
    const size = `width="${px(Math.max(width, 0))}" height="${px(Math.max(height, 0))}"`;
    this.#marks.push(`<rect x="${px(x)}" y="${px(y)}" ${size}${this.#pen(pen)}/>`);
  }

  circle(x: number, y: number, r: number, pen: Pen): void {
    this.#marks.push(`<circle cx="${px(x)}" cy="${px(y)}" r="${px(r)}"${this.#pen(pen)}/>`);
  }

  /** A line of words. `formula` sets its digits low, as in SiO2; `lead` stands before the words, bold; `halo` parts them from a line behind. */
  text(x: number, y: number, words: string, type: Type & { formula?: boolean; lead?: string; halo?: boolean }): void {
    const { size, tint = "ink", bold, anchor = "start", formula, lead } = type;
    const at = `x="${px(x)}" y="${px(y)}" font-size="${size}"`;
    const weight = bold ? ' font-weight="700"' : "";
    const end = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
    const colour = tint === "ink" ? "" : ` fill="${this.theme[tint]}"`;
    const inner = formula ? lowDigits(words, size) : escapeText(words);
    const first = lead
      ? `<tspan font-weight="700" fill="${this.theme.ink}">${escapeText(lead)}</tspan><tspan dx="7">`
      : "";
    const round = type.halo ? ` stroke="${this.theme.paper}" stroke-width="4" paint-order="stroke"` : "";
    this.#marks.push(`<text ${at}${weight}${end}${colour}${round}>${first}${inner}${lead ? "</tspan>" : ""}</text>`);
  }

  /** The finished picture. */
  finish(height: number, kind: string, told: { title: string; description: string }): string {
    const { width, theme } = this;
    const lead = this.#options.standalone ? this.#heading(told.title) : { markup: "", height: 0 };
    const body = `<defs>${[...this.#defs.values()].join("")}</defs><rect y="${-lead.height}" width="${width}" height="${px(height + lead.height)}" fill="${theme.paper}"/>${lead.markup}${this.#marks.join("")}`;
    const id = safeId(this.#options.id) ?? `${kind}-${hash(body + told.title).toString(36)}`;
    const attributes = `viewBox="0 ${-lead.height} ${width} ${px(height + lead.height)}" width="${width}" height="${px(height + lead.height)}" role="img" aria-labelledby="${id}-t ${id}-d" font-family="${FONTS}" fill="${theme.ink}"`;
    const style = this.headed ? `<style>#${id} text{font-variant-numeric:tabular-nums}</style>` : "";
    const words = `<title id="${id}-t">${escapeText(told.title)}</title><desc id="${id}-d">${escapeText(told.description)}</desc>`;
    return `<svg xmlns="http://www.w3.org/2000/svg" id="${id}" ${attributes}>${words}${style}${body.replaceAll(PREFIX, id)}</svg>`;
  }

  #heading(title: string): { markup: string; height: number } {
    const size = this.narrow ? HEADING.narrowSize : HEADING.size;
    const leading = this.narrow ? HEADING.narrowLeading : HEADING.leading;
    const lines = wrap(title, this.width - 12, size, true);
    const top = -(lines.length * leading + 8);
    const markup = lines.map(
      (line, i) =>
        `<text x="6" y="${px(top + (i + 0.8) * leading)}" font-size="${size}" font-weight="700">${escapeText(line)}</text>`,
    );
    return { markup: markup.join(""), height: -top };
  }

  #pen({ stroke, width = 1, fill, dash, opacity }: Pen): string {
    let out = "";
    if (fill === undefined) out += ' fill="none"';
    else out += ` fill="${typeof fill === "string" ? this.theme[fill] : `url(#${PREFIX}-${fill.pattern})`}"`;
    if (stroke) out += ` stroke="${this.theme[stroke]}" stroke-width="${width}"`;
    if (dash) out += ` stroke-dasharray="${dash}"`;
    // Of the stroke or the fill, never of the whole: that would cost a renderer a sheet of its own.
    if (opacity !== undefined) out += ` ${stroke ? "stroke" : "fill"}-opacity="${opacity}"`;
    return out;
  }
}

function lowDigits(words: string, size: number): string {
  const low = px(size * 0.22);
  return escapeText(words).replace(/(?<![#\d])(\d+)(?![\d;])/g, (digits) => {
    return `<tspan font-size="${px(size * 0.74)}" dy="${low}">${digits}</tspan><tspan dy="${-low}">\u200b</tspan>`;
  });
}

/** An id that is safe in markup, or undefined. */
function safeId(id: string | undefined): string | undefined {
  const safe = id?.replace(/[^A-Za-z0-9_-]/g, "");
  return safe && /^[A-Za-z]/.test(safe) ? safe : undefined;
}

/** Short fingerprint of a text (FNV-1a, 32 bits), so that two pictures on one page never share an id. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
}
