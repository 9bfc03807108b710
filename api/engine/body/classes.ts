/** Supplier-neutral classes of fired clay bodies. @module */
import classData from "../../../data/bodies/classes.json" with { type: "json" };
import { closest, UnknownNameError } from "../errors.ts";

/** A range of ordinary ware, [low, high]: read as nine bodies of the class in ten. */
export type Span = readonly [number, number];

/** A class of bodies. Null: no figure was found. */
export interface BodyClass {
  id: string;
  name: string;
  firingC: Span;
  /** Mean linear expansion [1e-6/K] over `rangeC` [°C]. */
  expansion: { low: number; high: number; rangeC: Span };
  /** The same, as printed over other ranges. */
  alsoPrinted: readonly { low: number; high: number; rangeC: Span }[];
  /** Effective volume fraction of quartz in the fired body [-]. */
  quartzFraction: Span;
  /** Share of its strain that this quartz adds [-]: 0.68 in vitrified bodies, 1 in porous ones. */
  quartzFactor: number;
  cristobaliteFraction: Span;
  absorptionPercent: Span | null;
  moistureExpansionPercent: Span | null;
  youngsGPa: Span;
  ruptureMPa: Span;
  totalShrinkagePercent: Span | null;
  poisson: Span;
  confidence: string;
  note?: string;
  sources: readonly string[];
}

const CLASSES: readonly BodyClass[] = Object.freeze(
  (classData.classes as unknown as BodyClass[]).map(Object.freeze),
) as readonly BodyClass[];
const BY_ID = new Map(CLASSES.map((row) => [row.id, row]));

/** Every class, in the order of the data file: earthenwares, stonewares, porcelains, special bodies. */
export function listBodies(): readonly BodyClass[] {
  return CLASSES;
}

/**
 * One class by its id.
 * @param id - e.g. `red-stoneware`
 * @param pointer - JSON Pointer of the id in the input, for the error
 * @throws UnknownNameError naming the nearest class
 * @example findBody("red-stoneware").expansion.rangeC // [20, 500]
 */
export function findBody(id: string, pointer = "/class"): BodyClass {
  const found = BY_ID.get(id);
  if (found) return found;
  const suggestion = closest(id, BY_ID.keys());
  throw new UnknownNameError([
    {
      pointer,
      message: `I don't know this class of body.${suggestion ? ` Did you mean ${suggestion}?` : ""}`,
      allowed: [...BY_ID.keys()],
      ...(suggestion ? { suggestion } : {}),
    },
  ]);
}

/** Stands in when a body's class is not told: any fired clay. Broad on purpose. */
export const ANY_BODY: BodyClass = Object.freeze({
  id: "any",
  name: "a body of unknown class",
  firingC: [950, 1400],
  expansion: { low: 3.5, high: 8.5, rangeC: [20, 500] },
  alsoPrinted: [],
  quartzFraction: [0, 0.25],
  quartzFactor: 0.8,
  cristobaliteFraction: [0, 0.02],
  absorptionPercent: null,
  moistureExpansionPercent: [0, 0.06],
  youngsGPa: [30, 75],
  ruptureMPa: [20, 80],
  totalShrinkagePercent: null,
  poisson: [0.15, 0.25],
  confidence: "the envelope of the other classes",
  sources: [],
} satisfies BodyClass);
