/** Where nothing reaches: which limit stands in the way, found by lifting each and searching again. @module */
import { drawsFor } from "../fit/draws.ts";
import { prepare } from "../fit/situation.ts";
import type { FitReport } from "../fit/types.ts";
import { expansion } from "../fit/words.ts";
import { round } from "../quantity.ts";
import { shifted } from "./bench.ts";
import { KINDS } from "./kinds.ts";
import { liftsOf } from "./lifts.ts";
import { type Asked, askedOf, fitOf } from "./question.ts";
import { judged, searchOf, settle } from "./settle.ts";
import { roomOf } from "./slopes.ts";
import type { LinearSolver } from "./solver.ts";
import type { Block, RemediesRequest, Remedy } from "./types.ts";
import { chanceWords, soundWords } from "./words.ts";

/** Lifting a limit has to keep this many more sound, for it to stand in the way [-]. */
const MATTERS = 0.02;
/** Farthest that an expansion is shifted to see what any recipe could do, and by which steps [1e-6/K]. */
const FARTHEST = 5;
const STEP = 0.1;
/** Stiffness and set point differ between recipes, so what a shift gets to is known to this [-]. */
const ABOUT = 0.02;

/** What was asked, and how it stands. */
export interface Stuck {
  request: RemediesRequest;
  /** Null where there is no recipe. */
  asked: Asked | null;
  before: FitReport;
  target: number;
  seed: number;
  solve: LinearSolver;
}

/**
 * What stands in the way of the recipe, and of any recipe at all.
 * @param stuck - the question
 * @param remedies - what was found, none of which reaches
 * @returns limits that matter, the one that holds back most first; then the doubt, where no recipe could reach
 */
export function whatBlocks(stuck: Stuck, remedies: readonly Remedy[]): Block[] {
  const { request, asked, before, target, seed, solve } = stuck;
  const again = (one: RemediesRequest) => {
    const other = askedOf(one, before, target, seed);
    return other ? farthest(other, solve) : 0;
  };
  const found = remedies.filter(({ recipe }) => recipe).map(({ after }) => after.probabilities.sound);
  const blocks = asked ? limitsThatHold(request, asked, Math.max(farthest(asked, solve), ...found), again) : [];
  const any = anyExpansion(request, target, seed);
  const most = Math.max(any.sound, ...found, ...blocks.map(({ soundWithout = 0 }) => soundWithout));
  if (most < target - ABOUT) blocks.push(doubt(before, most, target));
  if (!asked && any.sound >= target) blocks.push(unknownRecipe(any.by, target));
  return blocks;
}

/** Limits without which the recipe gets farther, one by one; if none does alone, all together. */
function limitsThatHold(
  request: RemediesRequest,
  asked: Asked,
  here: number,
  again: (request: RemediesRequest) => number,
): Block[] {
  const { target } = asked.terms;
  const gets = (sound: number) => (sound >= target ? "gets there" : `gets to ${soundWords(sound, target)}`);
  const lifts = liftsOf(request, asked);
  const holding = lifts
    .map((lift) => ({ ...lift, sound: again(lift.off(request)) }))
    .filter(({ sound }) => sound >= here + MATTERS)
    .sort((a, b) => b.sound - a.sound);
  if (holding.length > 0) {
    return holding.map(({ limit, pointer, said, sound }) => ({
      limit,
      ...(pointer ? { pointer } : {}),
      soundWithout: round(sound, 3),
      text: `${said} Without that, a change of recipe ${gets(sound)}.`,
    }));
  }
  const sound = lifts.length > 1 ? again(lifts.reduce((from, { off }) => off(from), request)) : 0;
  if (sound < here + MATTERS) return [];
  const said = lifts.map((lift) => lift.said).join(" ");
  return [
    {
      limit: "together",
      soundWithout: round(sound, 3),
      text: `${said} None of these holds it back alone; without all of them a change of recipe ${gets(sound)}.`,
    },
  ];
}

/** Most that stay sound within the limits, whatever may move; 0 where no recipe is within them. */
function farthest({ bench, terms }: Asked, solve: LinearSolver): number {
  const any = KINDS.at(-1)!;
  const start = { x: bench.lines.map((line) => line.now), state: terms.start };
  const search = searchOf(bench, any, terms, solve);
  const asItStands = judged(search, start.x, start.state).missed > 0 ? 0 : terms.start.sound;
  const found = settle(search, roomOf(bench.lines, any, terms), start);
  return Math.max(found?.state.sound ?? 0, asItStands);
}

/** The nearest shift of the glaze's expansion that reaches, all else as it is; else the one at which most stay sound. */
function anyExpansion(request: RemediesRequest, target: number, seed: number): { sound: number; by: number } {
  const { situation } = prepare(fitOf(request));
  const draws = drawsFor(seed);
  let best = { sound: 0, by: 0 };
  for (let by = STEP; by <= FARTHEST && best.sound < target; by += STEP) {
    for (const way of [-by, by]) {
      const { sound } = shifted(situation, way, draws);
      if (sound > best.sound) best = { sound, by: way };
    }
  }
  return best;
}

function doubt({ drivers }: FitReport, most: number, target: number): Block {
  const [first] = [...drivers].sort((a, b) => b.verdictShare - a.verdictShare);
  return {
    limit: "doubt",
    text: `No recipe can promise ${chanceWords(target)} here: whatever the glaze expanded by, no more than ${chanceWords(most)} would stay sound, because the room between crazing and shivering is narrower than what is unknown. Least is known of ${first!.label}; measuring that would help more than any recipe.`,
  };
}

function unknownRecipe(by: number, target: number): Block {
  return {
    limit: "recipe",
    pointer: "/glaze",
    text: `Without a recipe I cannot change the glaze. One that expands about ${expansion(Math.abs(by))} ${by < 0 ? "less" : "more"} (20 to 300\u00a0°C) would stay sound ${chanceWords(target)}.`,
  };
}
