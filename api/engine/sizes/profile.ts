/** A pot's outline as given, read into stretches. @module */
import { type Faults, type LengthReader, readVolume } from "../lengths/index.ts";
import { crossing } from "./crossing.ts";
import { linesThrough, moved, type Stretch, scaled, sphereThrough, topOf, volumeBetween } from "./outline.ts";
import type { Profile } from "./types.ts";

/** Most points of an outline [-]. */
export const MAX_POINTS = 200;

/** A pot worked out in the round; mm and mm3, at the stage it was given for (fired). */
export interface Solid {
  /** The parts of the outline that have a name, with their fired size [mm]. */
  parts: { name: string; mm: number }[];
  /** To the line [mm3]. */
  capacity: number;
  /** Of the fired clay [mm3]. */
  clay: number;
}

/**
 * Reads a profile and works out what it holds and how much clay it is.
 * @param profile - outline, wall, floor and line, fired sizes
 * @returns the solid, or undefined with faults kept
 */
export function solidOf(profile: Profile, at: string, read: LengthReader, faults: Faults): Solid | undefined {
  const before = faults.issues.length;
  const parts: Solid["parts"] = [];
  const stretches = readForm(profile, at, read, faults, parts);
  const wall = read(profile.wall, `${at}/wall`, "The wall");
  const floor = profile.floor === undefined ? wall : read(profile.floor, `${at}/floor`, "The floor");
  const line =
    profile.belowRim === undefined ? 0 : read(profile.belowRim, `${at}/belowRim`, "The line", { zero: true });
  const holds = profile.holds === undefined ? null : readVolume(profile.holds, `${at}/holds`, "The capacity", faults);
  if (faults.issues.length > before || !stretches) return undefined;
  const inside = profile.dimensions === "inside";
  const work = (k: number) => measure(scaled(stretches, k), wall, floor, line, inside);
  const scale = holds === null ? 1 : scaleTo(holds * 1000, (k) => work(k).capacity);
  const { capacity, clay } = work(scale);
  if (!(capacity > 0)) {
    const message = "Nothing is left inside: wall, floor and line fill the pot. Check that all are in one unit.";
    faults.add(at, message);
    return undefined;
  }
  if (holds !== null && Math.abs(capacity / (holds * 1000) - 1) > 1e-6) {
    faults.add(`${at}/holds`, "No size of this shape holds that much. Check the volume's unit.");
    return undefined;
  }
  return { parts: parts.map(({ name, mm }) => ({ name, mm: mm * scale })), capacity, clay };
}

function measure(stretches: Stretch[], wall: number, floor: number, line: number, inside: boolean) {
  const top = topOf(stretches);
  if (!inside) {
    const hollow = volumeBetween(moved(stretches, -wall), floor, top);
    const capacity = volumeBetween(moved(stretches, -wall), floor, top - line);
    return { capacity, clay: volumeBetween(stretches, 0, top) - hollow };
  }
  const outer = moved(stretches, wall);
  // An outline may begin at the axis and run level to the foot.
  const first = outer.find(({ from, to }) => to > from)!;
  // Below a round bottom the sphere goes on; below a flat one lies a disc.
  const under =
    first.kind === "sphere" ? volumeBetween([{ ...first, from: -floor }], -floor, 0) : Math.PI * first.r0 ** 2 * floor;
  const clay = volumeBetween(outer, 0, top) + under - volumeBetween(stretches, 0, top);
  return { capacity: volumeBetween(stretches, 0, top - line), clay };
}

/** Scale at which a pot holds `wanted` [mm3]; capacity rises with scale, so halving finds it. */
function scaleTo(wanted: number, capacity: (k: number) => number): number {
  let [low, high] = [1e-3, 1e3];
  for (let i = 0; i < 100; i++) {
    const middle = Math.sqrt(low * high);
    if (capacity(middle) < wanted) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

function readForm(
  profile: Profile,
  at: string,
  read: LengthReader,
  faults: Faults,
  parts: Solid["parts"],
): Stretch[] | undefined {
  if (profile.form === "points") return readPoints(profile.points, `${at}/points`, read, faults, parts);
  const before = faults.issues.length;
  const part = (name: "diameter" | "foot" | "rim" | "height", zero = false): number => {
    const given = (profile as Partial<Record<typeof name, number>>)[name];
    const mm = read(given, `${at}/${name}`, `The ${name}`, { zero });
    if (mm > 0) parts.push({ name, mm });
    return mm;
  };
  if (profile.form === "straight") {
    const [r, height] = [part("diameter") / 2, part("height")];
    return sound() ? [{ kind: "line", from: 0, to: height, r0: r, r1: r }] : undefined;
  }
  const rim = part("rim") / 2;
  const foot = profile.form === "rounded" && profile.foot === undefined ? 0 : part("foot", true) / 2;
  const height = part("height");
  if (!sound()) return undefined;
  return profile.form === "tapered"
    ? [{ kind: "line", from: 0, to: height, r0: foot, r1: rim }]
    : [sphereThrough(foot, rim, height)];

  function sound(): boolean {
    return faults.issues.length === before;
  }
}

function readPoints(
  given: readonly {
    across: string | number | { value: number; unit: "mm" | "cm" | "in" };
    up: (typeof given)[number]["across"];
  }[],
  at: string,
  read: LengthReader,
  faults: Faults,
  parts: Solid["parts"],
): Stretch[] | undefined {
  const before = faults.issues.length;
  if (given.length < 2 || given.length > MAX_POINTS) {
    faults.add(at, `An outline needs 2 to ${MAX_POINTS} points, from the foot up; this has ${given.length}.`);
    return undefined;
  }
  const points = given.map(({ across, up }, i) => ({
    r: read(across, `${at}/${i}/across`, "The width", { zero: true }) / 2,
    y: read(up, `${at}/${i}/up`, "The height", { zero: true }),
  }));
  if (faults.issues.length > before) return undefined;
  const crossed = crossing(points.map(({ r, y }) => ({ x: r, y })));
  const falls = points.findIndex((point, i) => i > 0 && point.y < points[i - 1]!.y);
  if (crossed) {
    const [i, j] = crossed;
    const message = `The outline crosses itself: the stretch after point ${i + 1} meets the one after point ${j + 1}. Give the points in order, from the foot up.`;
    faults.add(`${at}/${j}`, message);
  } else if (falls > 0) {
    faults.add(`${at}/${falls}/up`, `Point ${falls + 1} lies below point ${falls}. Give the points from the foot up.`);
  } else if (points.at(-1)!.y === points[0]!.y) {
    faults.add(at, "All points lie at one height, so there is no pot. Give heights above the foot.");
  }
  if (faults.issues.length > before) return undefined;
  const floorY = points[0]!.y;
  const risen = points.map(({ r, y }) => ({ r, y: y - floorY }));
  const foot = Math.max(...risen.filter(({ y }) => y === 0).map(({ r }) => r));
  const rim = risen.at(-1)!.r;
  parts.push({ name: "foot", mm: 2 * foot }, { name: "rim", mm: 2 * rim });
  const belly = Math.max(...risen.map(({ r }) => r));
  if (belly > foot && belly > rim) parts.push({ name: "belly", mm: 2 * belly });
  parts.push({ name: "height", mm: risen.at(-1)!.y });
  for (let i = parts.length - 1; i >= 0; i--) if (!(parts[i]!.mm > 0)) parts.splice(i, 1);
  return linesThrough(risen);
}
