/** The lower edge of a coat, before and after: what of the wall is shown, and at which scale. @module */
import type { RunningReport } from "../../running/types.ts";

/** The part of the wall that is shown; lengths in mm, down from where the lower edge was put. */
export interface Edge {
  /** Shown above the edge, and below it [mm]. */
  upMm: number;
  downMm: number;
  /** Whether the window ends at the shelf. */
  shelf: boolean;
  /** Thickness of the coat, of the roll, and how far the edge has come [mm]. */
  coatMm: number;
  filmMm: number;
  rollMm: number;
  runMm: number;
  lowMm: number;
  highMm: number;
}

/** Least and most of the wall that is shown below the edge [mm]. */
const LEAST_MM = 3;
/** Shelves farther off than this many runs are left out [-]. */
const FAR = 4;

/** Chooses the window: the run with its interval, the shelf where it is near, and as much wall above. */
export function edgeOf({ run, roll, thickness, wall, profile }: RunningReport): Edge {
  const reach = Math.max(run.high * 1.25, LEAST_MM);
  const shelf = wall.clearanceMm <= Math.max(FAR * reach, 10);
  const downMm = shelf ? wall.clearanceMm : reach;
  const upMm = Math.min(Math.max(downMm, LEAST_MM), wall.glazedMm);
  return {
    upMm,
    downMm,
    shelf,
    coatMm: thickness.value,
    filmMm: Math.max(...profile.map(({ thicknessMm }) => thicknessMm)),
    rollMm: roll.value,
    runMm: run.value,
    lowMm: run.low,
    highMm: run.high,
  };
}

/** Thinnest and thickest that a coat is drawn [px]. */
const THIN_PX = 5;
const THICK_PX = 44;

/**
 * How many times too thick the coat is drawn: 1, to scale, wherever it can be seen so.
 * @param mmPx - scale along the wall [px/mm]
 */
export function thickening({ coatMm, rollMm }: Edge, mmPx: number): number {
  const seen = THIN_PX / (coatMm * mmPx);
  if (seen <= 1) return Math.min(1, THICK_PX / (rollMm * mmPx));
  const rounded = seen < 10 ? Math.ceil(seen) : Math.ceil(seen / 5) * 5;
  return rounded;
}
