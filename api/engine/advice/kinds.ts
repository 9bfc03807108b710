/** The kinds of change that a recipe can undergo, and which materials each may move. @module */
import type { BenchLine } from "./bench.ts";
import type { RemedyKind } from "./types.ts";

/** Materials that may come in where the request names none. */
export const USUAL: readonly string[] = [
  "silica",
  "kaolin",
  "talc",
  "wollastonite",
  "whiting",
  "dolomite",
  "zinc-oxide",
  "spodumene",
  "frit-calcium-borate",
  "colemanite",
  "soda-feldspar",
  "potash-feldspar",
  "nepheline-syenite",
];

/** Ratios that a kind holds, in the Seger formula. */
export type Held = "silica-to-alumina" | "silica-and-alumina";

/** A kind of change. */
export interface Kind {
  kind: RemedyKind;
  title: string;
  /** What may become more, and what less, when the glaze should expand less; the other way round when more. */
  up: (line: BenchLine) => boolean;
  down: (line: BenchLine) => boolean;
  /** Held within {@link HELD_WITHIN}. */
  holds?: Held;
  /** Each holds Σ weight × Δ ≤ 0 when the glaze should expand less; the other way round when more. */
  rules?: readonly ((line: BenchLine) => number)[];
}

/** How closely a held ratio is kept [-] (common practice, no source). */
export const HELD_WITHIN = 0.05;

/** Silica that may come in, and other flux that may go out, with each part of a boron material [parts] (common practice, no source). */
const SILICA_WITH_BORON = 1.5;
const FLUX_FOR_BORON = 2;

const percent = ({ moles }: BenchLine, oxides: readonly string[]) => {
  const all = Object.values(moles).reduce((sum, amount) => sum + amount, 0);
  return all > 0 ? oxides.reduce((sum, oxide) => sum + (moles[oxide] ?? 0), 0) / all : 0;
};
const isSilica = (line: BenchLine) => percent(line, ["SiO2"]) > 0.93;
const isClay = (line: BenchLine) =>
  percent(line, ["Al2O3"]) > 0.22 && percent(line, ["Na2O", "K2O", "Li2O", "CaO"]) < 0.08;
const isBoron = (line: BenchLine) => percent(line, ["B2O3"]) > 0.2;
const isFlux = (line: BenchLine) =>
  !isBoron(line) && percent(line, ["Li2O", "Na2O", "K2O", "MgO", "CaO", "SrO", "BaO", "ZnO"]) > 0.08;
const never = () => false;
const any = () => true;

/** Every kind, in the order in which like answers are told. */
export const KINDS: readonly Kind[] = [
  { kind: "silica", title: "silica alone", up: isSilica, down: never },
  {
    kind: "alumina-with-silica",
    title: "clay and silica together",
    up: (line) => isSilica(line) || isClay(line),
    down: never,
    holds: "silica-to-alumina",
  },
  {
    kind: "flux-swap",
    title: "other fluxes, silica and alumina kept",
    up: (line) => isFlux(line) || isSilica(line) || isClay(line),
    down: (line) => isFlux(line) || isSilica(line) || isClay(line),
    holds: "silica-and-alumina",
  },
  {
    kind: "boron",
    title: "boron for other fluxes, with some silica",
    up: (line) => isBoron(line) || isSilica(line),
    down: isFlux,
    // Boron leads: for each part of it, so much silica comes in at most, and so much other flux goes out.
    rules: [
      (line) => (isSilica(line) ? 1 : isBoron(line) ? -SILICA_WITH_BORON : 0),
      (line) => (isFlux(line) ? -1 : isBoron(line) ? -FLUX_FOR_BORON : 0),
    ],
  },
  { kind: "least-change", title: "the least change of all", up: any, down: any },
];

/** Materials left out of a change of any kind. @example without(["zinc-oxide"]).title // "the least change without zinc oxide" */
export function without(ids: readonly string[]): Kind {
  const may = ({ id }: BenchLine) => id === null || !ids.includes(id);
  const names = ids.map((id) => id.replaceAll("-", " "));
  return { kind: "least-change", title: `the least change without ${names.join(" and ")}`, up: may, down: any };
}
