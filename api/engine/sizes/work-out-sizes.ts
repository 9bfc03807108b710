/** The front door: from the pot that is wanted to the pot to throw. @module */
import { ImpossibleValueError, type Notice } from "../errors.ts";
import { Faults, lengthReader, readVolume } from "../lengths/index.ts";
import { quantity, round } from "../quantity.ts";
import { type KnownShrinkage, knownShrinkage, type Share, volumeShrinkage } from "../shrinkage/index.ts";
import { allowancesOf, clayFor } from "./clay.ts";
import { lidFor } from "./lid.ts";
import { convertNotes } from "./old-notes.ts";
import { readParts } from "./parts.ts";
import { solidOf } from "./profile.ts";
import { readSet, saySet, throwBetween } from "./set.ts";
import { cutSlabs } from "./slabs.ts";
import { sizeFor, wayOf } from "./stages.ts";
import { type SizesReport, type SizesRequest, UPRIGHT, type Volumes } from "./types.ts";

const QUESTIONS = ["fired", "lid", "profile", "slabs", "oldNotes"] as const;

/**
 * Thrown, leather-hard, bone-dry and fired sizes; sets, lids, capacity, clay, slabs and old notes.
 * @param request - fired sizes in any units, the shrinkage, and what else is asked
 * @returns every size with its interval, exact and as set on callipers
 * @throws ImpossibleValueError with every fault, pointers into `request`
 * Sources: astm-c326 for what shrinkage is a share of; volumes by integration of the outline; clay-practice for what a
 * request leaves out.
 * @example workOutSizes({ shrinkage: { percent: 12 }, fired: { rim: "90 mm" } }).sizes[0]?.throwTo.text // "102 mm"
 */
export function workOutSizes(request: SizesRequest): SizesReport {
  if (QUESTIONS.every((field) => request[field] === undefined)) {
    const message = "Ask for something: fired sizes, a lid, a profile, slabs, or old notes to convert.";
    throw new ImpossibleValueError([{ pointer: "", message, allowed: [...QUESTIONS] }]);
  }
  const faults = new Faults();
  const warnings: Notice[] = [];
  const unit = request.answerIn ?? request.unit ?? "mm";
  const read = lengthReader(request.unit, faults);
  const known = faults.gather("/shrinkage", () => knownShrinkage(request.shrinkage, request.unit));
  // A stand-in keeps the reading of the rest going, so that every fault is told at once.
  const shrinkage = known ?? STAND_IN;
  for (const notice of shrinkage.warnings) warnings.push({ ...notice, pointer: `/shrinkage${notice.pointer ?? ""}` });
  const set = readSet(request.set, read, faults);
  const allowances = allowancesOf(request.clay, faults);
  const parts = request.fired ? readParts(request.fired, read, unit, faults) : new Map<string, number>();
  const wanted = request.fired?.capacity;
  const millilitres = wanted === undefined ? null : readVolume(wanted, "/fired/capacity", "The capacity", faults);
  const solid = request.profile && solidOf(request.profile, "/profile", read, faults);
  if (solid !== undefined && millilitres !== null) {
    const message =
      "The profile already says what it holds. Give the capacity wanted as `holds` in the profile instead.";
    faults.add("/fired/capacity", message);
  }
  if (request.profile && set.scales.length > 1) {
    const message = "Capacity and clay are those of the full size; ask for each step by itself to have its own.";
    warnings.push({ code: "full-size-only", message, pointer: "/set/scales" });
  }
  const lid = request.lid && lidFor(request.lid, shrinkage, read, unit, faults, warnings);
  const slabs = request.slabs ? cutSlabs(request.slabs, shrinkage, allowances, read, unit, faults) : [];
  const old = request.oldNotes && convertNotes(request.oldNotes, shrinkage, read, unit, faults);
  faults.throwIfAny();
  for (const notice of old?.then?.warnings ?? []) {
    warnings.push({ ...notice, pointer: `/oldNotes/shrinkage${notice.pointer ?? ""}` });
  }
  for (const { name, mm } of solid?.parts ?? []) if (!parts.has(name)) parts.set(name, mm);
  const sizes = set.scales.flatMap((scale) =>
    [...parts].map(([name, mm]) => {
      const label = scale === 1 ? name : `${name} × ${round(scale, 3)}`;
      const size = sizeFor(label, mm * scale, wayOf(shrinkage, UPRIGHT.has(name)), unit);
      return throwBetween(size, set, shrinkage, unit, warnings);
    }),
  );
  const capacity = solid ? solid.capacity / 1000 : millilitres;
  const report = {
    shrinkage: {
      across: percentOf(shrinkage.across),
      up: percentOf(shrinkage.up),
      from: shrinkage.from,
    },
    sizes,
    set: request.set ? { pieces: set.pieces, message: saySet(set, unit) } : null,
    lid: lid ?? null,
    capacity: capacity === null ? null : volumesOf(capacity, shrinkage, solid !== undefined),
    clay: solid ? clayFor(solid.clay, shrinkage, allowances, unit, set.scales.length > 1 ? null : set.pieces) : null,
    slabs,
    oldNotes: old?.notes ?? [],
    warnings,
    cautions: [],
    sources: [...new Set([...shrinkage.sources, ...(old?.then?.sources ?? []), "clay-practice"])],
  };
  return { headline: headline(report), ...report };
}

const STAND_IN: KnownShrinkage = {
  across: { value: 0.1, low: 0.1, high: 0.1 },
  up: { value: 0.1, low: 0.1, high: 0.1 },
  drying: { value: 0.05, low: 0.05, high: 0.05 },
  pieceSd: 0,
  from: "",
  warnings: [],
  sources: [],
};

const percentOf = ({ value, low, high }: Share) => quantity(100 * value, 100 * low, 100 * high, "%");

/** Fired and thrown volume: V/((1 − S)²(1 − S_up)) [ml]. */
function volumesOf(ml: number, { across, up }: KnownShrinkage, toLine: boolean): Volumes {
  const wet = (end: keyof Share) => ml / (1 - volumeShrinkage(across[end], up[end]));
  const thrown = quantity(wet("value"), wet("low"), wet("high"), "ml", { decimals: 1 });
  return {
    fired: quantity(ml, ml, ml, "ml", { decimals: 1 }),
    thrown,
    message: `It holds ${Math.round(ml)} ml fired${toLine ? ", to the line" : ""}; freshly thrown it must hold ${Math.round(thrown.value)} ml (${Math.round(thrown.low)} to ${Math.round(thrown.high)}).`,
  };
}

function headline({ sizes, lid, capacity, slabs, oldNotes, shrinkage }: Omit<SizesReport, "headline">): string {
  const loses = `The clay loses ${round(shrinkage.across.value, 1)} % from wet to fired`;
  const first = sizes.slice(0, 3);
  if (first.length > 0) {
    const each = first.map(({ name, target, throwTo }) => `${name} ${throwTo.text} for ${target.text} fired`);
    return `${loses}: throw ${each.join(", ")}.`;
  }
  if (lid) return lid.message;
  if (capacity) return capacity.message;
  const [slab] = slabs;
  if (slab) {
    const cut = slab.sizes.slice(0, 2).map(({ throwTo }) => throwTo.text);
    return `${loses}: cut ${slab.name} ${cut.join(" by ")}.`;
  }
  const [note] = oldNotes;
  return `${loses}: ${note!.name}, thrown ${note!.thrownThen.text} then, wants ${note!.throwTo.text} now.`;
}
