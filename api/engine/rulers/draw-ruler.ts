/** The front door: from a shrinkage to sheets that can be printed and thrown by. @module */
import { ImpossibleValueError } from "../errors.ts";
import { Faults, lengthReader } from "../lengths/index.ts";
import { quantity } from "../quantity.ts";
import { type KnownShrinkage, knownShrinkage, type Share } from "../shrinkage/index.ts";
import { layOut, roomOn } from "./paper.ts";
import type { RulerReport, RulerRequest } from "./types.ts";
import { gauges, ruler, template } from "./what-is-drawn.ts";

/** Most sheets [-]. */
const MAX_SHEETS = 40;
/** Of one sheet of A4 [mm2]. */
const A4_AREA = 297 * 210;

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
  const sized: KnownShrinkage = known ?? NONE;
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
