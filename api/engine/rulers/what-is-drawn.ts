/** What lies on the sheets: a ruler's strips, a template's card, two gauges. @module */
import { type Faults, type LengthReader, type LengthUnit, lengthQuantity, MM, sayLength } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import type { KnownShrinkage, Share } from "../shrinkage/index.ts";
import { before, crossing } from "../sizes/index.ts";
import type { Piece } from "./drawing.ts";
import { galleryGauge, lidGauge } from "./gauges.ts";
import { rulerStrips } from "./ruler.ts";
import { templateCard } from "./template.ts";
import type { DrawnLength, GaugeDraw, RulerDraw, TemplateDraw } from "./types.ts";

/** Most points of a template [-]. */
const MAX_POINTS = 500;

/** Pieces with their title, notes and the lengths to check them by. */
export interface Drawn {
  title: string;
  notes: string;
  pieces: Piece[];
  lengths: DrawnLength[];
}

const lengthOf = (name: string, firedMm: number, share: Share): DrawnLength => ({
  name,
  firedMm: round(firedMm, 3),
  drawn: lengthQuantity(before(firedMm, share), "mm"),
});

const say = (share: Share) =>
  `${round(100 * share.value, 1)} % shrinkage (${round(100 * share.low, 1)} to ${round(100 * share.high, 1)} %, nine times in ten)`;

/** Strips that reach a fired length. */
export function ruler(
  { ruler }: RulerDraw,
  known: KnownShrinkage,
  read: LengthReader,
  unit: LengthUnit,
  widthMm: number,
): Drawn | undefined {
  const length = read(ruler.length, "/draw/ruler/length", "The length");
  if (Number.isNaN(length)) return undefined;
  const share = ruler.reads === "up" ? known.up : known.across;
  const [firedMm, name] =
    unit === "in" ? [4 * MM.in, "4 in fired"] : unit === "cm" ? [100, "10 cm fired"] : [100, "100 mm fired"];
  const mark = lengthOf(name, firedMm, share);
  return {
    title: `Fired ruler for ${round(100 * share.value, 1)} %${ruler.reads === "up" ? ", heights" : ""}`,
    notes: `Throw to the mark you want to keep: the top edge reads fired ${unit}, the bottom edge true ${unit}. ${say(share)}: the mark of ${name} may be off by ${sayLength((mark.drawn.high - mark.drawn.low) / 2, unit)}.`,
    pieces: rulerStrips(length, share.value, unit, widthMm),
    lengths: [mark, lengthOf("the whole ruler", length, share)],
  };
}

/** A card with the outline as thrown. */
export function template(
  { template }: TemplateDraw,
  known: KnownShrinkage,
  read: LengthReader,
  faults: Faults,
): Drawn | undefined {
  const at = "/draw/template/points";
  const count = template.points.length;
  if (count < 2 || count > MAX_POINTS) {
    faults.add(at, `A template needs 2 to ${MAX_POINTS} points; this has ${count}.`, { allowed: [MAX_POINTS] });
    return undefined;
  }
  const before0 = faults.issues.length;
  const fired = template.points.map(({ across, up }, i) => ({
    r: read(across, `${at}/${i}/across`, "The width", { zero: true }) / 2,
    y: read(up, `${at}/${i}/up`, "The height", { zero: true }),
  }));
  if (faults.issues.length > before0) return undefined;
  const crossed = crossing(fired.map(({ r, y }) => ({ x: r, y })));
  if (crossed) {
    const [i, j] = crossed;
    const message = `The outline crosses itself: the stretch after point ${i + 1} meets the one after point ${j + 1}. Give the points in order along the outline.`;
    faults.add(`${at}/${j}`, message);
    return undefined;
  }
  const thrown = fired.map(({ r, y }) => ({ r: before(r, known.across).value, y: before(y, known.up).value }));
  const widest = Math.max(...fired.map(({ r }) => 2 * r));
  const heights = fired.map(({ y }) => y);
  const name = template.name?.trim() || "template";
  return {
    title: `Rib: ${name}, for ${round(100 * known.across.value, 1)} %`,
    notes: `The outline as thrown, to be cut from card; half of the pot, its axis to the left. ${say(known.across)}.`,
    pieces: [templateCard(thrown, template.side ?? "outside", name)],
    lengths: [
      lengthOf("widest diameter", widest, known.across),
      lengthOf("height", Math.max(...heights) - Math.min(...heights), known.up),
    ],
  };
}

/** A tongue for the gallery and a mouth for the lid. */
export function gauges(
  { gauges }: GaugeDraw,
  known: KnownShrinkage,
  read: LengthReader,
  unit: LengthUnit,
  faults: Faults,
): Drawn | undefined {
  const gallery = read(gauges.gallery, "/draw/gauges/gallery", "The gallery");
  const clearance = read(gauges.clearance, "/draw/gauges/clearance", "The play", { zero: true });
  const lid = gallery - 2 * clearance;
  if (lid <= 0) {
    const message = `Play of ${sayLength(clearance, unit)} all round leaves nothing of a lid for a gallery of ${sayLength(gallery, unit)}.`;
    faults.add("/draw/gauges/clearance", message);
  }
  if (!(lid > 0)) return undefined;
  const wide = (mm: number) => before(mm, known.across).value;
  return {
    title: `Gauges for a gallery of ${sayLength(gallery, unit)} fired`,
    notes: `For freshly thrown clay: cut from card or plastic. Play of ${sayLength(clearance, unit)} all round, fired. ${say(known.across)}; lid and pot of one clay, fired together, share it.`,
    pieces: [galleryGauge(wide(gallery)), lidGauge(wide(lid))],
    lengths: [lengthOf("gallery", gallery, known.across), lengthOf("lid", lid, known.across)],
  };
}
