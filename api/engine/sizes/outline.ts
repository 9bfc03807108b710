/** Outlines of pots, turned about their axis. @module */

/**
 * A stretch of outline: a straight line from radius `r0` to `r1`, or an arc of a sphere centred on the axis.
 * Both have a squared radius that is quadratic in height, so volumes are exact. All in mm.
 */
export type Stretch =
  | { kind: "line"; from: number; to: number; r0: number; r1: number }
  | { kind: "sphere"; from: number; to: number; radius: number; centre: number };

/**
 * Arc of a sphere through a foot and a rim, its centre on the axis.
 * @param foot - radius at height 0 [mm], 0 for a round bottom
 * @param rim - radius at the top [mm]
 * @param height - [mm]
 * @example sphereThrough(0, 50, 50) // a half sphere: radius 50, centre at 50
 */
export function sphereThrough(foot: number, rim: number, height: number): Stretch {
  const centre = (rim * rim + height * height - foot * foot) / (2 * height);
  return { kind: "sphere", from: 0, to: height, radius: Math.hypot(foot, centre), centre };
}

/** Lines through points given as radius and height, in order from the foot [mm]. */
export function linesThrough(points: readonly { r: number; y: number }[]): Stretch[] {
  return points.slice(1).map((point, i) => {
    const below = points[i]!;
    return { kind: "line", from: below.y, to: point.y, r0: below.r, r1: point.r };
  });
}

/**
 * The other side of a wall: the outline moved square to itself.
 * Exact for cylinders, cones and spheres; where lines meet at a corner each is moved by itself, which leaves out a wedge
 * of the order of the wall squared.
 * @param wall - thickness [mm], negative inwards
 */
export function moved(stretches: readonly Stretch[], wall: number): Stretch[] {
  return stretches.map((stretch) => {
    if (stretch.kind === "sphere") return { ...stretch, radius: stretch.radius + wall };
    const rise = stretch.to - stretch.from;
    // A level stretch has no wall beside it, only above or below.
    const aside = rise > 0 ? wall * Math.hypot(1, (stretch.r1 - stretch.r0) / rise) : 0;
    return { ...stretch, r0: stretch.r0 + aside, r1: stretch.r1 + aside };
  });
}

/** Makes an outline larger or smaller, keeping its shape. */
export function scaled(stretches: readonly Stretch[], k: number): Stretch[] {
  return stretches.map((one) => {
    const span = { from: one.from * k, to: one.to * k };
    return one.kind === "sphere"
      ? { ...one, ...span, radius: one.radius * k, centre: one.centre * k }
      : { ...one, ...span, r0: one.r0 * k, r1: one.r1 * k };
  });
}

/**
 * Volume inside an outline between two heights [mm3]: ∫ π r² dy, exact for every stretch; where a wall leaves no room
 * the radius counts as nothing.
 * @example volumeBetween([sphereThrough(0, 50, 50)], 0, 50) // 2/3 π 50³
 */
export function volumeBetween(stretches: readonly Stretch[], from: number, to: number): number {
  return stretches.reduce((sum, stretch) => {
    const [low, high] = [Math.max(from, stretch.from), Math.min(to, stretch.to)];
    return low < high ? sum + stretchVolume(stretch, low, high) : sum;
  }, 0);
}

function stretchVolume(stretch: Stretch, low: number, high: number): number {
  if (stretch.kind === "sphere") {
    const { radius, centre } = stretch;
    const [a, b] = [Math.max(low - centre, -radius), Math.min(high - centre, radius)];
    return a < b ? Math.PI * (radius * radius * (b - a) - (b ** 3 - a ** 3) / 3) : 0;
  }
  const slope = (stretch.r1 - stretch.r0) / (stretch.to - stretch.from);
  let [a, b] = [low, high];
  const radius = (y: number) => stretch.r0 + slope * (y - stretch.from);
  if (radius(a) <= 0 && radius(b) <= 0) return 0;
  if (radius(a) < 0) a = stretch.from - stretch.r0 / slope;
  if (radius(b) < 0) b = stretch.from - stretch.r0 / slope;
  const [ra, rb] = [Math.max(0, radius(a)), Math.max(0, radius(b))];
  return (Math.PI * (b - a) * (ra * ra + ra * rb + rb * rb)) / 3;
}

/** Height of the top of an outline [mm]. */
export const topOf = (stretches: readonly Stretch[]): number => stretches.at(-1)!.to;
