/** Why gas may leave holes in a glaze. @module */
import { most, PRACTICE, type Situation, word } from "./checklist.ts";
import type { Fault } from "./types.ts";
import { coatMm } from "./words.ts";

/** Lines on pinholes and blisters. */
export function pinholingLines(s: Situation): Fault[] {
  const lines: Fault[] = [];
  const loss = most(s.signs, ({ lossPercent }) => lossPercent);
  const carbonate = most(s.signs, ({ carbonatePercent }) => carbonatePercent) ?? 0;
  if (loss !== null) {
    lines.push({
      fault: "pinholing",
      id: "gas-from-the-glaze",
      likelihood: word(loss, 8, 15),
      cause: `The dry batch loses ${loss.toFixed(1)} % of its weight as gas${carbonate >= 1 ? `, ${carbonate.toFixed(1)} % from carbonates and the like` : ""}; what leaves after the glaze has sealed makes bubbles.`,
      check:
        "Break a fired tile and look at the edge through a lens: bubbles through the whole coat come from the glaze.",
      remedy: "Bring lime and magnesia in as wollastonite, talc or frit, or fire slowly from 700 to 950 °C.",
      source: PRACTICE,
    });
  }
  lines.push({
    fault: "pinholing",
    id: "gas-from-the-clay",
    likelihood: s.bisque ? "possible" : "likely",
    cause: s.bisque
      ? "Clay goes on giving gas where its bisque was short: carbon, sulphates, late water."
      : "The clay is fired together with the glaze: all its water and carbon has to leave through the coat.",
    check: "Break a tile: bubbles that sit on the clay, or a grey core in it, come from the clay.",
    remedy: "Fire the bisque hotter or slower with air, 700 to 950 °C above all.",
    source: PRACTICE,
  });
  lines.push({
    fault: "pinholing",
    id: "thick-for-bubbles",
    likelihood: word(s.thicknessMm, 0.6, 1),
    cause: `Through ${coatMm(s.thicknessMm)} of melt a bubble has far to rise.`,
    check: "Compare the thin rim with the thick foot of one pot: holes at the foot alone mean thickness.",
    remedy: "Put on less, above all inside bowls where it gathers.",
    source: PRACTICE,
  });
  lines.push({
    fault: "pinholing",
    id: "stiff-melt-keeps-holes",
    likelihood: word(s.logViscosity, 3.8, 4.5),
    cause: `At the peak it has 10^${s.logViscosity.toFixed(1)} Pa·s; burst bubbles in a stiff melt heal slowly.`,
    check: "Fire one tile with 20 minutes more at the peak: holes that heal were a matter of time.",
    remedy: "Soak, or drop some 60 °C after the peak and soak there, where gas has stopped and the melt still flows.",
    source: PRACTICE,
  });
  lines.push({
    fault: "pinholing",
    id: "short-melt",
    likelihood: word(-s.meltMinutes, -45, -15),
    cause: `It is runnier than 10^4 Pa·s for ${Math.round(s.meltMinutes)} minutes${s.soakMinutes > 0 ? `, ${Math.round(s.soakMinutes)} of soak among them` : ", with no soak"}.`,
    check: "Count the holes of two tiles, one with a soak of 20 minutes and one without.",
    remedy: "Soak 10 to 20 minutes; mind the run, which grows with it.",
    source: PRACTICE,
  });
  if (s.overFired) {
    lines.push({
      fault: "pinholing",
      id: "gas-at-refiring",
      likelihood: "possible",
      cause:
        "At a refiring the old glaze melts again under the new coat: bubbles that were shut in rise, and moisture in the clay boils out.",
      check: "Dry the piece hot, and look whether new holes come where the old glaze was thickest.",
      remedy: "Dry it at 100 to 150 °C first and heat slowly to 600 °C.",
      source: PRACTICE,
    });
  }
  return lines;
}
