/** What stands on the bench: every field as typed, so that half a number is kept too. @module */
import type { Body, RecipeLine } from "@ringtrue/sdk";
import { METRIC, type Units } from "../shared/units.ts";

/** What may be known of a glaze. */
export type Kind = "recipe" | "analysis" | "expansion";

/** One line of a recipe. */
export interface Row {
  material: string;
  parts: string;
  /** Over the batch, such as a colourant. */
  addition?: boolean;
  /** A line with its own analysis or formula, as it came in a file; its material is then only shown. */
  given?: RecipeLine;
}

export interface OxideRow {
  oxide: string;
  amount: string;
}

/** One glaze, one trial. */
export interface GlazeDraft {
  name: string;
  kind: Kind;
  rows: Row[];
  oxides: OxideRow[];
  /** What the amounts are; a file may bring others than weight per cent. */
  basis: "weightPercent" | "molePercent" | "moles";
  expansion: string;
  plusMinus: string;
  from: string;
  to: string;
  thickness: string;
}

/** Everything on the bench. */
export interface Draft {
  units: Units;
  trials: GlazeDraft[];
  /** Place of the trial being worked on. */
  current: number;
  body: { class: string; expansion: string; plusMinus: string; from: string; to: string; given?: Body };
  firing: { peak: string; cooling: string };
  ware: { wall: string; glazed: "both-faces" | "one-face" | "one-face-free"; years: string };
}

/** Most trials side by side. */
export const MOST_TRIALS = 4;

/** @example letterOf(0) // "A" */
export const letterOf = (place: number): string => "ABCD"[place] ?? "?";

export function emptyGlaze(): GlazeDraft {
  return {
    name: "",
    kind: "recipe",
    rows: [{ material: "", parts: "" }],
    oxides: ["SiO2", "Al2O3", "B2O3", "CaO", "MgO", "K2O", "Na2O"].map((oxide) => ({ oxide, amount: "" })),
    basis: "weightPercent",
    expansion: "",
    plusMinus: "",
    from: "",
    to: "",
    thickness: "",
  };
}

export function emptyDraft(units: Units = METRIC): Draft {
  return {
    units: { ...units },
    trials: [emptyGlaze()],
    current: 0,
    body: { class: "", expansion: "", plusMinus: "", from: "", to: "" },
    firing: { peak: "", cooling: "" },
    ware: { wall: "", glazed: "both-faces", years: "" },
  };
}

export const currentGlaze = (draft: Draft): GlazeDraft => draft.trials[draft.current] ?? draft.trials[0]!;
