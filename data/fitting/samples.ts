/** How much an error owes to which publications it was scored on. @module */
import { seededRandom } from "../../api/engine/numeric/lattice.ts";
import { quantile } from "./accuracy.ts";
import type { Domain } from "./domains.ts";

/** Share of the publications in a sample [-]. */
const SHARE = 0.2;
const DRAWS = 4000;
/** How near a sample's figure must be to the one looked for, in the property's unit. */
const WITHIN = 0.01;

/** Root mean square errors over random samples of publications: 5th, 50th and 95th percentile. */
export interface SampleFigures {
  /** Share of publications drawn [-]. */
  share: number;
  draws: number;
  /** Of the published set. */
  set: number[];
  /** Of the model, held out. */
  model: number[];
  /** Samples on which the set reads what the demand's own table has for it. */
  near: {
    read: number;
    within: number;
    draws: number;
    model: number[];
    /** Share of them on which the model meets the demand [-]. */
    met: number;
  };
}

/**
 * Draws samples of publications, each kept with a chance of a fifth, and scores a published set and the model on them.
 * Where the set reads what a table scored on unknown publications has for it, the model's figure is the one to hold
 * against that table.
 * @param rows - publication and errors of each row inside the domain [unit of the property]
 * @param read - what the set reads in the other table
 * @param atMost - the demand that comes with it
 * @param seed - of the draws
 */
export function sampleFigures(
  rows: readonly { publication: number; set: number; model: number }[],
  read: number,
  atMost: number,
  seed = 1,
): SampleFigures {
  const sums = new Map<number, { n: number; set: number; model: number }>();
  for (const { publication, set, model } of rows) {
    const sum = sums.get(publication) ?? { n: 0, set: 0, model: 0 };
    sum.n++;
    sum.set += set * set;
    sum.model += model * model;
    sums.set(publication, sum);
  }
  const random = seededRandom(seed);
  const publications = [...sums.values()];
  const samples = Array.from({ length: DRAWS }, () => {
    let n = 0;
    let set = 0;
    let model = 0;
    for (const sum of publications) {
      if (random() >= SHARE) continue;
      n += sum.n;
      set += sum.set;
      model += sum.model;
    }
    return { set: Math.sqrt(set / n), model: Math.sqrt(model / n) };
  });
  const spread = (values: readonly number[]) =>
    [0.05, 0.5, 0.95].map((p) => Math.round(1000 * quantile(values, p)) / 1000);
  const near = samples.filter(({ set }) => Math.abs(set - read) <= WITHIN).map(({ model }) => model);
  return {
    share: SHARE,
    draws: DRAWS,
    set: spread(samples.map(({ set }) => set)),
    model: spread(samples.map(({ model }) => model)),
    near: {
      read,
      within: WITHIN,
      draws: near.length,
      model: spread(near),
      met: Math.round((100 * near.filter((rmse) => rmse <= atMost).length) / near.length) / 100,
    },
  };
}

/** Domain → samples. */
export type Samples = Partial<Record<Domain, SampleFigures>>;
