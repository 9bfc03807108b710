/** The front door: from a shrinkage to sheets that can be printed and thrown by. @module */
import { ImpossibleValueError } from "../errors.ts";
import {
  Faults,
  type LengthReader,
  type LengthUnit,
  lengthQuantity,
  lengthReader,
  MM,
  sayLength,
} from "../lengths/index.ts";
import { quantity, round } from "../quantity.ts";
import { type KnownShrinkage, knownShrinkage, type Share } from "../shrinkage/index.ts";
import { before, crossing } from "../sizes/index.ts";
import type { Piece } from "./drawing.ts";
import { galleryGauge, lidGauge } from "./gauges.ts";
import { layOut, roomOn } from "./paper.ts";
import { rulerStrips } from "./ruler.ts";
import { templateCard } from "./template.ts";
import type { DrawnLength, GaugeDraw, RulerDraw, RulerReport, RulerRequest, TemplateDraw } from "./types.ts";

/** Most points of a template, and most sheets [-]. */
const MAX_POINTS = 500;
const MAX_SHEETS = 40;
/** Of one sheet of A4 [mm2]. */
const A4_AREA = 297 * 210;

interface Drawn {
  title: string;
  notes: string;
  pieces: Piece[];
  lengths: DrawnLength[];
}

/**
 * A shrink ruler, a template or gauges on sheets of paper, at true scale, each with a bar of 100 mm to check by.
 * @param request - shrinkage, and fired sizes of what is drawn
 * @returns sheets in millimetres, and every length that was drawn with what the shrinkage leaves open
 * @throws ImpossibleValueError with every fault, pointers into `request`
 * Sources: astm-c326; sheets by ISO 216 and 8.5 × 11 in.
 * @example drawRuler({ shrinkage: { percent: 12 }, draw: { ruler: { length: "100 mm" } } }).lengths[0]?.drawn.value // 113.64
 */
export function drawRuler(request: RulerRequest): RulerReport {
  const faults = new Faults();
  const unit = request.unit ?? "mm";
  const paper = request.page ?? "A4";
  const read = lengthReader(request.unit, faults);
  const known = faults.gather("/shrinkage", () => knownShrinkage(request.shrinkage, request.unit));
  const { draw } = request;
  const sized: KnownShrinkage = known ?? { ...NONE };
  const drawn =
    "ruler" in draw
      ? ruler(draw, sized, read, unit, roomOn(paper, true).width)
      : "template" in draw
        ? template(draw, sized, read, faults)
        : gauges(draw, sized, read, unit, faults);
  faults.throwIfAny();
  const { title, notes, pieces, lengths } = drawn!;
  const area = pieces.reduce((sum, { widthMm, heightMm }) => sum + widthMm * heightMm, 0);
  const sheets = area < MAX_SHEETS * A4_AREA ? layOut(pieces, paper, title, notes) : [];
  if (sheets.length === 0 || sheets.length > MAX_SHEETS) {
    const message = `This would take more than ${MAX_SHEETS} sheets of ${paper}. Make it smaller, or check its unit.`;
    throw new ImpossibleValueError([{ pointer: "/draw", message, allowed: [MAX_SHEETS] }]);
  }
  const [first] = lengths;
  const many = sheets.length === 1 ? "one sheet" : `${sheets.length} sheets`;
  return {
    headline: `${title}, ${many} of ${paper}: ${first!.name} is drawn ${first!.drawn.value} mm long. Measure the check bar before you trust the rest.`,
    shrinkage: { across: percentOf(sized.across), up: percentOf(sized.up), from: sized.from },
    paper,
    lengths,
    sheets,
    warnings: sized.warnings.map((notice) => ({ ...notice, pointer: `/shrinkage${notice.pointer ?? ""}` })),
    cautions: [],
    sources: sized.sources,
  };
}

const NOTHING = { value: 0, low: 0, high: 0 };
const NONE: KnownShrinkage = {
  across: NOTHING,
  up: NOTHING,
  drying: NOTHING,
  pieceSd: 0,
  from: "",
  warnings: [],
  sources: [],
};
const percentOf = ({ value, low, high }: Share) => quantity(100 * value, 100 * low, 100 * high, "%");

const lengthOf = (name: string, firedMm: number, share: Share): DrawnLength => ({
  name,
  firedMm: round(firedMm, 3),
  drawn: lengthQuantity(before(firedMm, share), "mm"),
});

const say = (share: Share) =>
  `${round(100 * share.value, 1)} % shrinkage (${round(100 * share.low, 1)} to ${round(100 * share.high, 1)} %, nine times in ten)`;

function ruler(
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

function template(
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

function gauges(
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
