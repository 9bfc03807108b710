/** The lesson's drawings: clay below, glaze above; left is squeezed, right is pulled. @module */
import type { FitReport, Verdict } from "../../engine/fit/types.ts";
import { RINGS } from "../../engine/pictures/marks/rings.ts";
import { px } from "../../engine/pictures/marks/sheet.ts";
import { SIDE } from "../shared/rings.ts";
import type { Doing, Moment } from "./cooling.ts";

let patterns = 0;

function sheet(width: number, height: number, body: (clay: string) => string, told?: string): string {
  const id = `stipple-${patterns++}`;
  const dots = [
    [3, 4, 0.9],
    [13, 2.2, 0.7],
    [18.5, 9, 1.1],
    [8, 10.5, 0.8],
    [14, 14, 0.7],
    [2, 14, 0.6],
  ];
  const specks = dots.map(([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}"/>`).join("");
  const pattern = `<pattern id="${id}" width="22" height="16" patternUnits="userSpaceOnUse"><rect class="f-clay" width="22" height="16"/><g class="f-speck">${specks}</g></pattern>`;
  const title = told ? ` role="img" aria-label="${told.replace(/[&<>"]/g, "")}"` : ` aria-hidden="true"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}"${title}><defs>${pattern}</defs>${body(`url(#${id})`)}</svg>`;
}

const block = (x: number, y: number, width: number, height: number, fill: string) =>
  `<rect x="${px(x)}" y="${y}" width="${px(Math.max(width, 0))}" height="${height}" fill="${fill}"/>`;
const skin = (x: number, y: number, width: number, height: number) =>
  `<rect class="skin" x="${px(x)}" y="${y}" width="${px(Math.max(width, 0))}" height="${height}"/>`;

/** A slice through the wall, one scale for both. */
export function toScale(thicknessMm: number, wallMm: number, told: string): string {
  const clay = 233;
  const glaze = Math.max(px((clay * thicknessMm) / wallMm), 2);
  const top = 8;
  const braces = `<path class="ink" stroke-width="2" d="M616 ${top}h12M616 ${top + glaze}h12M622 ${top}v${glaze}M616 ${top + glaze + 2}h12M616 ${top + glaze + clay}h12M622 ${top + glaze + 2}v${clay - 2}"/>`;
  return sheet(
    640,
    px(top + glaze + clay + 8),
    (fill) => block(0, top + glaze, 600, clay, fill) + skin(1, top, 598, glaze) + braces,
    told,
  );
}

export function runny(told: string): string {
  const wave = Array.from({ length: 8 }, (_, i) => `Q${i * 80 + 20} 14 ${i * 80 + 40} 26T${i * 80 + 80} 26`).join("");
  return sheet(640, 180, (fill) => `${block(0, 46, 640, 130, fill)}<path class="skin" d="M0 46V26${wave}V46Z"/>`, told);
}

export function pinned(told: string): string {
  const pins = Array.from({ length: 13 }, (_, i) => 26 + i * 49);
  const drawn = pins.map(
    (x) => `<path class="ink" stroke-width="2.5" d="M${x} 12V92"/><circle class="f-ink" cx="${x}" cy="12" r="7"/>`,
  );
  return sheet(640, 190, (fill) => block(0, 56, 640, 130, fill) + skin(1, 30, 638, 26) + drawn.join(""), told);
}

/** A skin of this width doing what it does. */
function skinDoing(doing: Doing | Verdict, width: number, top: number, height: number): string {
  const low = top + height;
  if (doing === "crazes" || doing === "mayCraze" || doing === "may-craze") {
    const n = doing === "crazes" ? Math.round(width / 48) : 3;
    const cuts = Array.from({ length: n + 1 }, (_, i) =>
      i === 0 || i === n ? (i * width) / n : (width * (i + 0.28 * Math.sin(i * 2.4))) / n,
    );
    const half = doing === "crazes" ? 2.4 : 0.9;
    return cuts
      .slice(1)
      .map((x, i) => {
        const [a, b] = [cuts[i]! + (i > 0 ? half : 1), x - (i < n - 1 ? half : 1)];
        const lean = doing === "crazes" ? 1.6 : 0;
        return `<path class="skin" d="M${px(a + (i > 0 ? lean : 0))} ${top}H${px(b - (i < n - 1 ? lean : 0))}L${px(b)} ${low}H${px(a)}Z"/>`;
      })
      .join("");
  }
  if (doing === "lifts" || doing === "may-shiver") {
    const n = 6;
    const w = width / n;
    return Array.from(
      { length: n },
      (_, i) =>
        `<path class="skin" d="M${px(i * w)} ${low}Q${px((i + 0.5) * w)} ${low - 22} ${px((i + 1) * w)} ${low}V${top}Q${px((i + 0.5) * w)} ${top - 22} ${px(i * w)} ${top}Z"/>`,
    ).join("");
  }
  if (doing === "flakes" || doing === "shivers") {
    const n = 5;
    const w = width / n;
    return Array.from({ length: n }, (_, i) => {
      const rise = 16 + 7 * (i % 2);
      return `<path class="skin" d="M${px(i * w + 3)} ${low - 4}Q${px((i + 0.6) * w)} ${low - 6} ${px((i + 0.95) * w)} ${low - rise - 8}l-4 ${-height}Q${px((i + 0.5) * w)} ${top - 4} ${px(i * w + 3)} ${top - 2}Z"/>`;
    }).join("");
  }
  if (doing === "runny") {
    const n = 8;
    const w = width / n;
    const wave = Array.from(
      { length: n },
      (_, i) => `Q${px((i + 0.25) * w)} ${top - 8} ${px((i + 0.5) * w)} ${top}T${px((i + 1) * w)} ${top}`,
    ).join("");
    return `<path class="skin" d="M0 ${low}V${top}${wave}V${low}Z"/>`;
  }
  return skin(1, top, width - 2, height);
}

/** Step 5: how it ends. */
export const ending = (verdict: Verdict, told: string): string =>
  sheet(640, 180, (fill) => block(0, 46, 640, 130, fill) + skinDoing(verdict, 640, 20, 26), told);

/** Both as if free, and the gap between their ends. @param times - how much too big the shrinkage is drawn */
export function apart(
  moment: Moment,
  times: number,
  words: { glaze: string; clay: string; gap: string },
  told: string,
): string {
  const full = 658;
  const length = (percent: number) => full * (1 - (percent / 100) * times);
  const [g, c] = [length(moment.glaze), length(moment.clay)];
  const [low, high] = [Math.min(g, c), Math.max(g, c)];
  const side = g < c ? "pull" : "push";
  const room = high < 430;
  const gap =
    high - low > 2
      ? `<path class="${side}-line" stroke-width="3" d="M${px(low)} 62v22M${px(low)} 73H${px(high)}M${px(high)} 62v22"/><text class="big" x="${px(room ? high + 12 : low - 12)}" y="81"${room ? "" : ' text-anchor="end"'}>${words.gap}</text>`
      : "";
  return sheet(
    660,
    206,
    (fill) =>
      `<path class="ink" stroke-width="2" stroke-dasharray="6 6" d="M${full} 4V202"/>${skin(1, 10, g - 1, 40)}<text class="big" x="14" y="38">${words.glaze}</text>${block(0, 96, c, 106, fill)}<rect class="f-clay" x="8" y="132" width="66" height="38"/><text class="big" x="14" y="158">${words.clay}</text>${gap}`,
    told,
  );
}

/** Stuck together, with arrows that pull or push as hard as the stress. */
export function together(moment: Moment, doing: Doing, told: string): string {
  const width = 440;
  const size = Math.min(60, Math.abs(moment.stress) * 1.2);
  const pulled = moment.stress > 0;
  const arrow = (way: -1 | 1) => {
    const from = width / 2 + way * (pulled ? 14 : 14 + size);
    const to = width / 2 + way * (pulled ? 14 + size : 14);
    const head = pulled ? -way : way;
    return `<path class="ink" stroke-width="3" d="M${px(from)} -8H${px(to)}M${px(to + head * 10)} -15L${px(to)} -8L${px(to + head * 10)} -1"/>`;
  };
  const arrows = !moment.runny && size > 3 ? arrow(-1) + arrow(1) : "";
  return sheet(width, 206, (fill) => arrows + block(0, 72, width, 130, fill) + skinDoing(doing, width, 32, 40), told);
}

/** The line of glaze from −200 to +80 MPa with the ring on it. */
export function meter({ thresholds }: FitReport, { stress }: Moment, verdict: Verdict): string {
  const at = (mpa: number) => px(((Math.min(Math.max(mpa, -200), 80) + 200) / 280) * 1200);
  const flakes = at(thresholds.flakesComeOff.value);
  const lift = Math.max(at(thresholds.edgesMayLift.value), flakes + 30);
  const later = at(thresholds.mayCrackInTime.value);
  const once = Math.max(at(thresholds.cracksOnCooling.value), later);
  const chips = Array.from(
    { length: Math.max(Math.floor(flakes / 75), 1) },
    (_, i) => `M${i * 75} ${2 - (i % 2) * 6}l54 9`,
  ).join("");
  const n = Math.max(Math.round((lift - flakes) / 58), 1);
  const w = px((lift - flakes) / n);
  const waves = Array.from({ length: n }, () => `q${px(w / 4)} -16 ${px(w / 2)} 0t${px(w / 2)} 0`).join("");
  const x = at(stress);
  const line = `<g class="ink" stroke-width="5"><path d="${chips}"/><path d="M${flakes} 8${waves}H${later}"/><path stroke-dasharray="34 7" d="M${later} 8H${once}"/><path stroke-dasharray="12 7" d="M${once} 8H1200"/></g>`;
  const ringMark = `<circle class="f-paper" cx="${x}" cy="8" r="25"/><g class="${SIDE[verdict]}-line" stroke-width="13" transform="translate(${px(x - 24)} -16) scale(.48)"><path d="${RINGS[verdict]}"/></g>`;
  return `<svg viewBox="-26 -26 1252 62" aria-hidden="true">${line}${ringMark}</svg>`;
}
