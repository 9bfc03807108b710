/** Draws predicted against measured as a map of how many glasses lie where. @module */

/** What to draw. */
export interface PlotOptions {
  title: string;
  unit: string;
  /** Range of both axes. */
  range: [number, number];
  /** Distance of axis marks. */
  tick: number;
}

const SIZE = 480;
const MARGIN = 56;
const CELLS = 80;
const INSIDE = SIZE - 2 * MARGIN;

/**
 * Picture of held-out predictions: darker squares hold more glasses; the line is where both agree.
 * @param measured - values in `unit`
 * @param predicted - values in `unit`, from fits that had not seen them
 * @returns SVG text; figures rounded to 2 decimals, so that the same data give the same file
 */
export function agreementPlot(measured: ArrayLike<number>, predicted: ArrayLike<number>, options: PlotOptions): string {
  const { title, unit, range, tick } = options;
  const [low, high] = range;
  const at = (value: number) => ((value - low) / (high - low)) * INSIDE;
  const counts = new Map<number, number>();
  for (let i = 0; i < measured.length; i++) {
    const column = Math.floor((at(measured[i]!) / INSIDE) * CELLS);
    const line = Math.floor((at(predicted[i]!) / INSIDE) * CELLS);
    if (column < 0 || column >= CELLS || line < 0 || line >= CELLS) continue;
    counts.set(line * CELLS + column, (counts.get(line * CELLS + column) ?? 0) + 1);
  }
  const most = Math.max(...counts.values());
  const side = INSIDE / CELLS;
  const squares = [...counts]
    .sort(([a], [b]) => a - b)
    .map(([cell, count]) => {
      const x = MARGIN + (cell % CELLS) * side;
      const y = SIZE - MARGIN - (Math.floor(cell / CELLS) + 1) * side;
      // By the root of the count, so that thin regions stay visible.
      const opacity = 0.12 + 0.88 * Math.sqrt(count / most);
      return `<rect x="${r(x)}" y="${r(y)}" width="${r(side)}" height="${r(side)}" fill-opacity="${r(opacity)}"/>`;
    });
  const marks: string[] = [];
  for (let value = Math.ceil(low / tick) * tick; value <= high + 1e-9; value += tick) {
    const label = String(Number(value.toPrecision(6)));
    const x = r(MARGIN + at(value));
    const y = r(SIZE - MARGIN - at(value));
    marks.push(`<text x="${x}" y="${SIZE - MARGIN + 18}" text-anchor="middle">${label}</text>`);
    marks.push(`<text x="${MARGIN - 8}" y="${y}" text-anchor="end" dominant-baseline="middle">${label}</text>`);
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIZE} ${SIZE}" role="img" font-family="sans-serif" font-size="12">`,
    `<title>${title}: predicted against measured, glazes on publications left out of the fit</title>`,
    `<rect width="${SIZE}" height="${SIZE}" fill="#fdfbf7"/>`,
    `<g fill="#2f5d62">${squares.join("")}</g>`,
    `<path d="M${MARGIN} ${SIZE - MARGIN}L${SIZE - MARGIN} ${MARGIN}" stroke="#b4532a" fill="none"/>`,
    `<path d="M${MARGIN} ${MARGIN}V${SIZE - MARGIN}H${SIZE - MARGIN}" stroke="#333" fill="none"/>`,
    `<g fill="#333">${marks.join("")}`,
    `<text x="${SIZE / 2}" y="${SIZE - 14}" text-anchor="middle">measured [${unit}]</text>`,
    `<text x="16" y="${SIZE / 2}" text-anchor="middle" transform="rotate(-90 16 ${SIZE / 2})">predicted [${unit}]</text>`,
    `<text x="${SIZE / 2}" y="28" text-anchor="middle" font-size="14">${title}</text></g>`,
    "</svg>",
    "",
  ].join("\n");
}

function r(value: number): number {
  return Math.round(value * 100) / 100;
}
