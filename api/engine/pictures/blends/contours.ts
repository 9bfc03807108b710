/**
 * Contours over a triangle or square of mixtures, and the fields inside them.
 *
 * Height is taken as even slopes over the small triangles between neighbouring mixtures. What of each small triangle
 * lies above a level is cut out, sides that two pieces share cancel, and the rest is strung into loops: one outline for a
 * field, however many triangles it covers.
 *
 * @module
 */

/** A place in the drawing [px] and how high it lies there. */
export interface Height {
  x: number;
  y: number;
  height: number;
}

/** Three neighbours, all of them going round the same way. */
export type Facet = readonly [number, number, number];

/** What lies above one level, as path data. */
export interface Contour {
  /** Closed outlines. */
  field: string;
  /** The level's own lines: the outlines without the edge of the drawing; empty where the level is never crossed. */
  line: string;
}

/** A corner of a piece: a mixture, or where the level crosses the side between two. */
interface Corner {
  key: string;
  x: number;
  y: number;
  crossing: boolean;
}

/**
 * Where the height is at least a level.
 * @param heights - one a mixture
 * @param facets - places in `heights`
 * @example contourAt(heights, facets, 0.5).line // "M12 40l8.5-14.7"
 */
export function contourAt(heights: readonly Height[], facets: readonly Facet[], level: number): Contour {
  const sides = new Map<string, Map<string, { from: Corner; to: Corner }>>();
  for (const facet of facets) {
    const piece = pieceAbove(heights, facet, level);
    piece.forEach((from, k) => {
      const to = piece[(k + 1) % piece.length]!;
      const back = sides.get(to.key);
      if (back?.delete(from.key)) return;
      const out = sides.get(from.key) ?? new Map();
      sides.set(from.key, out.set(to.key, { from, to }));
    });
  }
  const loops = strung(sides);
  return {
    field: loops.map((loop) => `${pathOf(loop)}z`).join(""),
    line: loops.flatMap(crossingsOf).map(pathOf).join(""),
  };
}

function pieceAbove(heights: readonly Height[], facet: Facet, level: number): Corner[] {
  const piece: Corner[] = [];
  for (let k = 0; k < 3; k++) {
    const [i, j] = [facet[k]!, facet[(k + 1) % 3]!];
    const [a, b] = [heights[i]!, heights[j]!];
    if (a.height >= level) piece.push({ key: `${i}`, x: a.x, y: a.y, crossing: false });
    if (a.height >= level === b.height >= level) continue;
    const t = (level - a.height) / (b.height - a.height);
    const key = i < j ? `${i} ${j}` : `${j} ${i}`;
    piece.push({ key, x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), crossing: true });
  }
  return piece.length < 3 ? [] : piece;
}

function strung(sides: Map<string, Map<string, { from: Corner; to: Corner }>>): Corner[][] {
  const loops: Corner[][] = [];
  for (const [start, ways] of sides) {
    while (ways.size > 0) {
      const loop: Corner[] = [];
      for (let at = start; ; ) {
        const next = sides.get(at);
        const side = next?.values().next().value;
        if (!next || !side) break;
        next.delete(side.to.key);
        loop.push(side.from);
        at = side.to.key;
      }
      loops.push(loop);
    }
  }
  return loops;
}

/** Runs of a loop that go from crossing to crossing; closed again where all of it does. */
function crossingsOf(loop: readonly Corner[]): Corner[][] {
  const edge = loop.findIndex(({ crossing }) => !crossing);
  if (edge < 0) return [[...loop, loop[0]!]];
  const runs: Corner[][] = [];
  let run: Corner[] = [];
  for (let k = 0; k < loop.length; k++) {
    const corner = loop[(edge + k) % loop.length]!;
    if (corner.crossing) run.push(corner);
    else run = [];
    if (run.length === 2) runs.push(run);
  }
  return runs;
}

/** Straight runs as one stroke, in tenths of a pixel, each step from the one before. */
function pathOf(corners: readonly Corner[]): string {
  let out = "";
  let [x, y] = [0, 0];
  for (const { x: toX, y: toY } of corners.filter((_, k) => bendsAt(corners, k))) {
    const [tenX, tenY] = [Math.round(toX * 10), Math.round(toY * 10)];
    const [dx, dy] = [(tenX - x) / 10, (tenY - y) / 10];
    if (out !== "" && dx === 0 && dy === 0) continue;
    out += `${out === "" ? "M" : "l"}${dx}${dy < 0 ? "" : " "}${dy}`;
    [x, y] = [tenX, tenY];
  }
  return out;
}

function bendsAt(corners: readonly Corner[], k: number): boolean {
  const [before, at, after] = [corners[k - 1], corners[k]!, corners[k + 1]];
  if (!before || !after) return true;
  const turn = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x);
  return Math.abs(turn) > 1e-6;
}
