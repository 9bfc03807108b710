/** Least changes of a recipe, of every kind that helps. @module */
import type { FitReport } from "../fit/types.ts";
import { effortOf, FOR_THE_SCALES, movedOf } from "./effort.ts";
import { KINDS, type Kind, without } from "./kinds.ts";
import { leastChange } from "./least-change.ts";
import type { Asked } from "./question.ts";
import { recipeRemedy } from "./recipe-remedy.ts";
import type { Found } from "./settle.ts";
import type { LinearSolver } from "./solver.ts";
import type { Remedy } from "./types.ts";

/** Two answers are one where the same materials move the same way, or their parts differ by less in sum [parts in 100]. */
const ALIKE = 1.5;
/** A recipe that does not reach is told where it keeps this many more sound [-]. */
const WORTH_TELLING = 0.02;
/** So many distinct recipes are looked for that reach. */
const WANTED = 3;
/** Times that the least change is looked for again without what it brought in. */
const AGAIN = 3;

/**
 * Searches every kind; where fewer than three distinct recipes reach, looks again for the least change without the
 * materials that the best one brings in, for whoever does not have them or does not want them.
 */
export function recipeRemedies({ bench, terms }: Asked, before: FitReport, solve: LinearSolver): Remedy[] {
  const found: { kind: Kind; found: Found }[] = [];
  const now = bench.lines.map((line) => line.now);
  const effort = ({ x }: Found) => effortOf(now, x, FOR_THE_SCALES);
  const moves = ({ x }: Found) => x.map((parts, j) => Math.sign(Math.round((parts - now[j]!) * 100))).join();
  /** What any material may do can do no worse than what some of them did: if it did, it begins again from there. */
  const farther = (one: Found | null, kind: Kind): Found | null => {
    if (kind !== KINDS.at(-1) || one?.reaches) return one;
    const [best] = found.map((other) => other.found).sort((a, b) => b.state.sound - a.state.sound);
    if (!best || (one && one.state.sound >= best.state.sound)) return one;
    return leastChange(bench, kind, terms, solve, FOR_THE_SCALES, best) ?? one;
  };
  const add = (kind: Kind, mayFallShort: boolean): Found | null => {
    const one = farther(leastChange(bench, kind, terms, solve), kind);
    if (!one?.reaches && !mayFallShort) return null;
    if (!one || (!one.reaches && one.state.sound < terms.start.sound + WORTH_TELLING)) return null;
    const same = found.findIndex(
      ({ found: other }) =>
        other.reaches === one.reaches && (movedOf(other.x, one.x) < ALIKE || moves(other) === moves(one)),
    );
    if (same < 0) found.push({ kind, found: one });
    else if (one.reaches && effort(one) < effort(found[same]!.found) - ALIKE) found[same] = { kind, found: one };
    return one;
  };
  let last: Found | null = null;
  for (const kind of KINDS) last = add(kind, true);
  const left: string[] = [];
  for (let again = 0; again < AGAIN && last?.reaches; again++) {
    if (found.filter((one) => one.found.reaches).length >= WANTED) break;
    const brought = bench.lines.flatMap(({ id, now }, j) => (id && now === 0 && last!.x[j]! > 0 ? [id] : []));
    if (brought.length === 0) break;
    left.push(...brought);
    last = add(without(left), false);
  }
  return found.map(({ kind, found: one }) => recipeRemedy({ bench, kind, terms, found: one }, before));
}
