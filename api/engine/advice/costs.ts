/** What a change of recipe may cost: gloss, colour, melting. Common practice, no source. @module */
import type { State } from "./bench.ts";

interface Rule {
  oxides: readonly string[];
  /** Change of the sum from which it is worth saying [wt % of the fired glaze]. */
  from: number;
  more?: string;
  less?: string;
}

const RULES: readonly Rule[] = [
  {
    oxides: ["B2O3"],
    from: 0.7,
    more: "More boron melts earlier and runs more; it can cloud, and it shifts iron and copper colours.",
    less: "Less boron melts later and stiffer; watch for pinholes and a dry look.",
  },
  {
    oxides: ["MgO"],
    from: 0.7,
    more: "More magnesia makes a stiffer, silkier surface and turns cobalt toward violet; too much goes matt.",
    less: "Less magnesia may lose a silky surface.",
  },
  {
    oxides: ["ZnO"],
    from: 0.7,
    more: "More zinc dulls chrome greens and browns iron; on slow cooling it may grow crystals, and reduction drives it off.",
    less: "Less zinc may lose gloss or crystals.",
  },
  {
    oxides: ["Na2O", "K2O", "Li2O"],
    from: 0.7,
    more: "More alkali brightens copper and manganese, and the surface scratches and leaches more easily.",
    less: "Less alkali tames copper turquoise and purple manganese and melts later.",
  },
  {
    oxides: ["Li2O"],
    from: 0.3,
    more: "Lithia is a strong flux: a little too much runs, and it counts among the oxides to leach-test for food.",
  },
  {
    oxides: ["SiO2"],
    from: 1.5,
    more: "More silica stiffens the melt: hold the peak longer if it looks undermelted or pinholed.",
    less: "Less silica runs more and wears less well.",
  },
  {
    oxides: ["Al2O3"],
    from: 0.8,
    more: "More alumina stiffens the melt and may take off the shine.",
    less: "Less alumina runs more and may grow crystals.",
  },
  {
    oxides: ["CaO", "SrO", "BaO"],
    from: 1,
    more: "More lime-like flux hardens the surface; beyond its fill it goes matt.",
    less: "Less lime softens the surface a little and changes iron greens.",
  },
];

/**
 * What the difference between two glazes may cost, in plain words; what cannot be told is said too.
 * @param before - as it stands
 * @param after - as changed
 */
export function costsOf(before: State, after: State): string[] {
  const sum = (state: State, oxides: readonly string[]) =>
    oxides.reduce((total, oxide) => total + (state.chemistry.fired.weightPercent[oxide] ?? 0), 0);
  const told = RULES.flatMap(({ oxides, from, more, less }) => {
    const change = sum(after, oxides) - sum(before, oxides);
    if (change >= from && more) return [more];
    if (change <= -from && less) return [less];
    return [];
  });
  return [...told, "Gloss, colour and texture are not calculated: fire a tile before you mix a bucket."];
}
