/** Lids for pots that are thrown, dry or fired. @module */
import type { Notice } from "../errors.ts";
import { type Faults, type LengthReader, type LengthUnit, lengthQuantity, MM, sayLength } from "../lengths/index.ts";
import { type KnownShrinkage, knownShrinkage } from "../shrinkage/index.ts";
import { firedFrom, sizeFor, wayOf } from "./stages.ts";
import type { LidAnswer, LidRequest } from "./types.ts";

/** Normal quantile of a 90 % interval. */
const Z = 1.645;

/**
 * Size to throw for a lid, and the play it will have.
 *
 *     fired lid = fired seat ∓ 2 (play + glaze)
 *
 * Lid and pot of one clay, fired together, shrink together: the doubt of the shrinkage hardly touches the play, and what
 * is left is how much one piece differs from another. A lid for a pot that is already fired carries all of the doubt.
 * @param lid - the seat, at what stage it was measured, and the play wanted
 * @param known - shrinkage of the pot's clay
 */
export function lidFor(
  lid: LidRequest,
  known: KnownShrinkage,
  read: LengthReader,
  unit: LengthUnit,
  faults: Faults,
  warnings: Notice[],
): LidAnswer | undefined {
  const before = faults.issues.length;
  const measured = read(lid.seat, "/lid/seat", "The seat");
  const clearance = read(lid.clearance, "/lid/clearance", "The play", { zero: true });
  const glaze = lid.glaze === undefined ? 0 : read(lid.glaze, "/lid/glaze", "The glaze", { zero: true });
  const flange = lid.flange === undefined ? null : read(lid.flange, "/lid/flange", "The lid");
  const own = lid.shrinkage && faults.gather("/lid/shrinkage", () => knownShrinkage(lid.shrinkage!, unit));
  if (faults.issues.length > before) return undefined;
  if (own)
    for (const notice of own.warnings) warnings.push({ ...notice, pointer: `/lid/shrinkage${notice.pointer ?? ""}` });
  const inside = lid.sits !== "over";
  const way = wayOf(known, false);
  const seat = firedFrom(measured, lid.stage, way);
  const gap = clearance + glaze;
  const wanted = inside ? seat.value - 2 * gap : seat.value + 2 * gap;
  if (flange !== null && (inside ? flange >= seat.value : flange <= seat.value)) {
    const say = (mm: number) => sayLength(mm, unit);
    const [within, over] =
      flange === seat.value ? ["leaves no play in", "leaves no play on"] : ["is larger than", "is smaller than"];
    const message = inside
      ? `A lid of ${say(flange)} ${within} its pot: the seat is ${say(seat.value)} across, fired. Make it ${say(wanted)}.`
      : `A lid ${say(flange)} across inside ${over} the neck it goes over, ${say(seat.value)} fired. Make it ${say(wanted)}.`;
    faults.add("/lid/flange", message);
    return undefined;
  }
  if (!(wanted > 0)) {
    const message = `Play and glaze of ${sayLength(gap, unit)} all round leave nothing of a lid for a seat of ${sayLength(seat.value, unit)}. Check their units.`;
    faults.add("/lid/clearance", message);
    return undefined;
  }
  const clay = own ?? known;
  const lidWay = wayOf(clay, false);
  const size = sizeFor("lid", flange ?? wanted, lidWay, unit);
  const thrown = size.throwTo.value * MM[unit];
  const sign = inside ? 1 : -1;
  const play = (seatMm: number, share: number) => (sign * (seatMm - thrown * (1 - share))) / 2 - glaze;
  const value = play(seat.value, lidWay.total.value);
  const together = lid.stage !== "fired" && !own && lid.firedTogether !== false;
  const common = together
    ? 0
    : Math.hypot((thrown * (lidWay.total.high - lidWay.total.low)) / 4, (seat.high - seat.low) / 4);
  const pieces = lid.stage === "fired" ? 1 : Math.SQRT2;
  const half = Math.hypot(common, (Z * clay.pieceSd * thrown * pieces) / 2);
  if (value - half <= 0) {
    const why = together ? "pieces of one clay differ by that much" : "the shrinkage is not known well enough";
    const message = `The lid may stick: its play may come out at ${sayLength(Math.max(0, value - half), unit)}, because ${why}. Allow more play, or fire a test ring first.`;
    warnings.push({ code: "lid-may-stick", message, pointer: "/lid/clearance" });
  }
  return {
    seat: lengthQuantity(seat, unit),
    lid: size,
    play: lengthQuantity({ value, low: value - half, high: value + half }, unit),
    message:
      `For a seat of ${sayLength(seat.value, unit)} fired, throw the lid ${size.throwTo.text} ${inside ? "across its flange" : "across inside"}; ` +
      `it will have about ${sayLength(value, unit)} of play all round (${sayLength(value - half, unit)} to ${sayLength(value + half, unit)}).` +
      (together ? " Fire it on the pot." : ""),
  };
}
