/** The colours. Each says again, never alone, what a shape has said. @module */
import type { ThemeName } from "../types.ts";

/** One theme: every colour that a picture may use. */
export interface Theme {
  paper: string;
  sheet: string;
  ink: string;
  /** Second words. */
  ink2: string;
  /** Whiskers and tick marks; 3:1 or more on paper. */
  edge: string;
  /** Gridlines. */
  rule: string;
  /** Crazing side. */
  pull: string;
  /** Shivering side. */
  push: string;
  /** Fits, and the aim. */
  hold: string;
  glaze: string;
  clay: string;
  speck: string;
}

/** Names of the colours, for a mark to ask by. */
export type Tint = keyof Theme;

export const THEMES: Readonly<Record<ThemeName, Theme>> = {
  light: {
    paper: "#F1F3EF",
    sheet: "#FBFCFA",
    ink: "#1A201E",
    ink2: "#46504B",
    edge: "#75807A",
    rule: "#CDD4CE",
    pull: "#9A3B14",
    push: "#27488A",
    hold: "#1C6652",
    glaze: "#BFD9CF",
    clay: "#D2C3B5",
    speck: "#7B6757",
  },
  dark: {
    paper: "#131715",
    sheet: "#1B211E",
    ink: "#EDF0EA",
    ink2: "#BCC5BE",
    edge: "#7B8780",
    rule: "#343D38",
    pull: "#F19A70",
    push: "#97B6F6",
    hold: "#7FCDB2",
    glaze: "#2F5E51",
    clay: "#54463D",
    speck: "#B39C89",
  },
  print: {
    paper: "#FFFFFF",
    sheet: "#FFFFFF",
    ink: "#000000",
    ink2: "#333333",
    edge: "#777777",
    rule: "#BBBBBB",
    pull: "#7D2C0C",
    push: "#1D3A75",
    hold: "#13513F",
    glaze: "#D5E7DF",
    clay: "#E3DAD0",
    speck: "#7B6757",
  },
};
