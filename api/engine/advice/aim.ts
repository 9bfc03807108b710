/** Which mean stress reaches a target. @module */
import type { Bench, State } from "./bench.ts";
import type { Terms } from "./limits.ts";

/** Steps and farthest of the walk that brackets the target, and halvings after it [1e-6/K]. */
const STEP = 0.25;
const FARTHEST = 5;
const HALVINGS = 7;
/** Aimed beyond the target, so that rounding does not miss it [-]. */
const ROOM = 0.002;

/** What to aim at. */
export interface Aim {
  /** Mean stress: the nearest at which the target is reached, else at which most stay sound [Pa]. */
  stress: number;
  /** Whether any stress reaches the target with the doubt there is; if none does, the doubt has to shrink too. */
  reachable: boolean;
}

/** Finds the aim by shifting the expansion of the glass at hand. */
export function aimFor(bench: Bench, state: State, { target, direction }: Terms): Aim {
  const goal = target + ROOM;
  let inside = 0;
  let outside = 0;
  let best = { sound: state.sound, stress: state.stress };
  if (state.sound >= goal) {
    // Already there: walk back towards the start as far as it holds.
    for (let by = STEP; by <= FARTHEST; by += STEP) {
      const there = bench.shifted(state, -direction * by);
      if (there.sound < goal) {
        outside = -direction * by;
        break;
      }
      inside = -direction * by;
    }
    if (outside === 0) return { stress: bench.shifted(state, inside).stress, reachable: true };
  } else {
    for (let by = STEP; by <= FARTHEST; by += STEP) {
      const there = bench.shifted(state, direction * by);
      if (there.sound > best.sound) best = there;
      if (there.sound >= goal) {
        inside = direction * by;
        break;
      }
      outside = direction * by;
    }
    if (inside === 0) return { stress: best.stress, reachable: false };
  }
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    if (bench.shifted(state, middle).sound >= goal) inside = middle;
    else outside = middle;
  }
  return { stress: bench.shifted(state, inside).stress, reachable: true };
}
