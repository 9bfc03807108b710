/** A line of mixtures: a tile a row, its stress on the fixed scale. @module */
import { casesHolding } from "../../blends/holding.ts";
import { chances, signed } from "../../fit/words.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { shorten, textWidth } from "../marks/text-width.ts";
import { HIGH_MPA, LOW_MPA, type StressScale, stressScale } from "../verdict/scale.ts";
import { drawAxis } from "../verdict/under.ts";
import { type BlendToDraw, isJudged, type Judged, thinned } from "./mixtures.ts";
import { drawNotes, leftOut } from "./notes.ts";
import type { Drawn } from "./places.ts";
import { drawRings, drawTally, type RingAt } from "./verdict-rings.ts";

/** Steps that find room, one tile a row. */
const MOST_STEPS = 20;
const PITCH = 27;
const RING = 19;

export function drawLine(sheet: Sheet, blend: BlendToDraw): Drawn {
  const { corners, points } = blend;
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const rows = thinned(points, "simplex", MOST_STEPS);
  const label = Math.max(...rows.map((row) => textWidth(row.label, size, true)), textWidth("tile", size));
  const share = margin + label + 12 + textWidth("99.5 %", size);
  const chance = textWidth(">19", size, true);
  const scale = stressScale(share + 16, width - margin - chance - 14);

  const second = corners[1] ?? "";
  const room = width - 2 * margin - leadWidth(sheet, second) - textWidth(CHANCES, size) - 12;
  sheet.text(margin, size + 2, shorten(`in the tile, the rest ${corners[0]}`, room, size), {
    size,
    tint: "ink2",
    lead: leadOf(sheet, second),
  });
  sheet.text(width - margin, size + 2, CHANCES, { size, tint: "ink2", anchor: "end" });
  const top = size + 18;
  const foot = top + rows.length * PITCH + 6;
  for (const mpa of [-100, 0]) sheet.path(`M${px(scale.x(mpa))} ${top}V${foot}`, { stroke: mpa ? "rule" : "edge" });
  sheet.path(`M${px(scale.left)} ${foot}H${px(scale.right)}`, { stroke: "ink", width: 1.5 });

  const rings: RingAt[] = [];
  for (const [i, row] of rows.entries()) {
    const y = top + (i + 0.5) * PITCH;
    const base = y + size * 0.36;
    sheet.text(margin, base, row.label, { size, bold: true });
    sheet.text(share, base, percent(row.shares[1] ?? 0), { size, tint: "ink2", anchor: "end" });
    if (isJudged(row)) {
      rings.push(drawStress(sheet, row, scale, y));
      sheet.text(width - margin, base, of20(row), { size, bold: row.verdict === "sound", anchor: "end" });
    } else sheet.text(scale.left, base, "not judged", { size, tint: "ink2" });
  }
  drawRings(sheet, rings, RING);
  const axis = drawAxis(sheet, scale, foot, foot + 6);
  const places = rows.map(({ label }, i) => ({
    label,
    left: 3,
    top: top + i * PITCH + 2,
    width: width - 6,
    height: 23,
  }));
  return { height: drawNotes(sheet, [leftOut(blend, rows)], drawTally(sheet, points, axis + 4)), places };
}

/** Heading of the last column, whose figures are chances of staying sound. */
const CHANCES = "of 20 hold";

function of20({ probabilities }: Judged): string {
  const count = casesHolding(probabilities);
  return count >= 20 ? ">19" : count <= 0 ? "<1" : String(count);
}

const percent = (share: number) => `${px(Math.round(share * 1000) / 10)} %`;
const leadOf = ({ width, size }: Sheet, name: string) => shorten(name, width * 0.4, size, true);
const leadWidth = (sheet: Sheet, name: string) => textWidth(leadOf(sheet, name), sheet.size, true) + 8;

/** The 9-in-10 interval, open where it leaves the scale. @returns the ring of its middle */
function drawStress(sheet: Sheet, { stress, verdict }: Judged, scale: StressScale, y: number): RingAt {
  const inside = (mpa: number) => Math.min(Math.max(scale.x(mpa), scale.left), scale.right);
  const [low, high] = [inside(stress.low), inside(stress.high)];
  sheet.path(`M${px(low)} ${y}H${px(high)}`, { stroke: "ink", width: 2 });
  const ends = [
    stress.low >= LOW_MPA ? `M${px(low)} ${y - 4}v8` : `M${px(low + 5)} ${y - 4}l-5 4l5 4`,
    stress.high <= HIGH_MPA ? `M${px(high)} ${y - 4}v8` : `M${px(high - 5)} ${y - 4}l5 4l-5 4`,
  ];
  sheet.path(ends.join(""), { stroke: "ink", width: 1.5 });
  const x = Math.min(Math.max(inside(stress.value), scale.left + RING / 2), scale.right - RING / 2);
  sheet.circle(x, y, RING / 2, { fill: "paper" });
  return { x, y, state: verdict };
}

/** Every tile with its figures, for the description. */
export function lineInWords({ corners, points }: BlendToDraw): string {
  const rows = thinned(points, "simplex", MOST_STEPS);
  const each = rows.map((row) => {
    const share = `${row.label}, ${percent(row.shares[1] ?? 0)}`;
    if (!isJudged(row)) return `${share}: not judged`;
    const { value, low, high } = row.stress;
    const stress = `${signed(value)} MPa, 9 in 10 between ${signed(low)} and ${signed(high)}`;
    return `${share}: ${stress}, stays sound ${chances(casesHolding(row.probabilities))}`;
  });
  const tiles = `Each tile with its share of ${corners[1]}: ${each.join("; ")}.`;
  return `Stress in each tile at 20 °C; squeezed on the left, pulled on the right. ${tiles}`;
}
