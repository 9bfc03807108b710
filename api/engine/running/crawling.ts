/** Why a glaze may draw back from the clay, or gather in beads. @module */
import { most, PRACTICE, type Situation, word } from "./checklist.ts";
import type { Fault } from "./types.ts";
import { coatMm } from "./words.ts";

/** Lines on crawling and beading. */
export function crawlingLines(s: Situation): Fault[] {
  const lines: Fault[] = [];
  const clay = most(s.signs, ({ clayPercent }) => clayPercent);
  if (clay !== null) {
    lines.push({
      fault: "crawling",
      id: "clay-shrinks",
      likelihood: word(clay, 20, 30),
      cause: `${Math.round(clay)} % of the batch is clay, which shrinks as the coat dries and cracks it loose.`,
      check:
        "Look at the dry coat under a strong light before firing: a net of fine cracks is where it will draw back.",
      remedy: "Calcine a part of the clay, counting its loss on ignition, or put on less at once.",
      source: PRACTICE,
    });
  }
  const fluffy = most(s.signs, ({ fluffyPercent }) => fluffyPercent);
  if (fluffy !== null && fluffy >= 1) {
    lines.push({
      fault: "crawling",
      id: "fluffy-powders",
      likelihood: word(fluffy, 3, 8),
      cause: `${Math.round(fluffy)} % of the batch is light magnesium carbonate or raw zinc oxide, which shrink far before they melt.`,
      check: "See whether the coat cracks on drying or lifts as it heats: open a test at 800 °C.",
      remedy: "Use calcined zinc oxide, or talc in place of the light carbonate.",
      source: PRACTICE,
    });
  }
  lines.push({
    fault: "crawling",
    id: "thick-coat",
    likelihood: word(s.thicknessMm, 0.6, 1),
    cause: `The coat is ${coatMm(s.thicknessMm)} fired${s.coats > 1 ? `, in ${s.coats} coats` : ""}; a thick raw coat is heavy, dries last where it meets the clay and lets go there.`,
    check: "Scratch the raw coat to the clay: more than about twice the fired thickness is what you have on.",
    remedy: "Thin the slop, dip for less long, and let each coat dry through before the next.",
    source: PRACTICE,
  });
  lines.push({
    fault: "crawling",
    id: "dust-and-grease",
    likelihood: "possible",
    cause: "Dust, finger grease or wet bisque keep glaze from wetting the clay; no sum sees them.",
    check: "Breathe on the bisque: a patch that stays dark unevenly is greasy. Wipe a rim and look at the sponge.",
    remedy: "Wipe the ware with a barely damp sponge and glaze it the same day.",
    source: PRACTICE,
  });
  if (s.overFired) {
    lines.push({
      fault: "crawling",
      id: "over-fired-glaze",
      likelihood: "likely",
      cause: "A fired glaze drinks no water: the new coat dries slowly, slides, and has nothing to key into.",
      check: "Touch the coat after an hour: if it moves or flakes on a fingernail it will crawl.",
      remedy: "Warm the piece to about 80 °C, add a little gum, spray or brush thin coats and dry each through.",
      source: PRACTICE,
    });
  }
  const tension = `${Math.round(s.tension)} mN/m`;
  lines.push({
    fault: "beading",
    id: "surface-tension",
    likelihood: word(s.tension, 350, 390),
    cause: s.tensionKnown
      ? `Its surface tension is about ${tension} (glazes run from 250 to 400): the higher, the more it gathers instead of spreading.`
      : `Its surface tension could not be summed; ${tension} is the middle of glazes.`,
    check: "Melt a pellet on bisque: a rim that turns under itself does not wet, one that feathers out does.",
    remedy: "Let a little boron or potash stand for some lime, magnesia or alumina.",
    source: s.tensionSource,
  });
  lines.push({
    fault: "beading",
    id: "stiff-at-peak",
    likelihood: word(s.logViscosity, 4.2, 5),
    cause: `At the peak it has 10^${s.logViscosity.toFixed(1)} Pa·s; a melt stiffer than about 10^4 does not close again over a bare spot.`,
    check: "Look at the foot of a tall tile: an edge that is still sharp has not flowed.",
    remedy: "Fire hotter or longer, or add flux; mind the fit, which moves with it.",
    source: PRACTICE,
  });
  return lines;
}
