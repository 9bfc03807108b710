/** Up to four glazes side by side on one scale. @module */
import type { FitReport } from "../../engine/fit/types.ts";
import { px } from "../../engine/pictures/marks/sheet.ts";
import { fill } from "../fill.ts";
import { signed } from "../say.ts";
import { drawing, h } from "../shared/dom.ts";
import { ring } from "../shared/rings.ts";
import { sayQuantity } from "../shared/say-quantity.ts";
import words from "../words.json" with { type: "json" };
import { type Draft, letterOf, MOST_TRIALS } from "./draft.ts";
import { telling } from "./say-verdict.ts";

const { trials: say, verdict: said } = words;

export interface TrialsTold {
  open(place: number): void;
  drop(place: number): void;
  another(): void;
}

export function trialsPart(draft: Draft, reports: readonly (FitReport | null)[], told: TrialsTold): HTMLElement {
  const rows = draft.trials.map((glaze, i) => {
    const now = i === draft.current;
    const letter = letterOf(i);
    const name = glaze.name || words.check.unnamed;
    const open = h(
      "button",
      { class: "btn bare", type: "button", onclick: () => told.open(i) },
      fill(say.open, { letter }),
    );
    const drop = h(
      "button",
      { class: "btn bare", type: "button", onclick: () => told.drop(i) },
      fill(say.drop, { letter }),
    );
    const acts = h("div", { class: "noprint" }, now ? null : open, draft.trials.length > 1 ? drop : null);
    const head = h(
      "th",
      { scope: "row" },
      h("span", { class: "nm" }, h("span", { class: "letter" }, letter), name),
      acts,
    );
    return h("tr", { class: now ? "now" : "" }, head, ...cells(reports[i] ?? null, draft));
  });
  const more = h("button", { class: "btn", type: "button", id: "another", onclick: told.another }, say.another);
  return h(
    "section",
    { "aria-labelledby": "trials-title" },
    h("h2", { id: "trials-title" }, say.title),
    h("p", { class: "lede" }, say.lede),
    h(
      "table",
      { class: "cmp wraps" },
      h(
        "thead",
        {},
        h(
          "tr",
          {},
          h("th", { scope: "col" }, say.trial),
          h("th", { scope: "col" }, say.verdict),
          h("th", { scope: "col", class: "pic" }, say.stress),
        ),
      ),
      h("tbody", {}, ...rows),
    ),
    draft.trials.length < MOST_TRIALS ? h("p", { class: "acts2" }, more) : null,
  );
}

function cells(report: FitReport | null, { units }: Draft): HTMLElement[] {
  if (!report) return [h("td", {}, h("span", { class: "v" }, ring("unknown", 32), say.waiting)), h("td", {}, "")];
  const count = fill(report.verdict === "sound" ? said.inTwentyHold : said.inTwenty, { count: telling(report) });
  const words_ = h("span", {}, h("b", {}, said.words[report.verdict]), h("br"), h("span", { class: "mut" }, count));
  const stress = sayQuantity(report.stress, units);
  const text = fill(say.stressText, { value: stress.value, low: stress.low, high: stress.high });
  return [
    h("td", {}, h("span", { class: "v" }, ring(report.verdict, 32), words_)),
    h("td", { class: "pic" }, drawing(onTheLine(report)), h("span", { class: "sm mut" }, text)),
  ];
}

const WIDTH = 320;
const place = (mpa: number) => px(8 + ((Math.min(Math.max(mpa, -200), 80) + 200) / 280) * (WIDTH - 16));

/** The line of glaze from −200 to +80 MPa with this glaze's middle and interval on it; the words beside say the same. */
function onTheLine({ stress, thresholds }: FitReport): string {
  const lift = place(thresholds.edgesMayLift.value);
  const craze = place(thresholds.mayCrackInTime.value);
  const waves = Math.max(1, Math.round((lift - 8) / 16));
  const step = px((lift - 8) / waves);
  const wave = Array.from({ length: waves }, () => `q${px(step / 4)} -6 ${px(step / 2)} 0t${px(step / 2)} 0`).join("");
  const line = `<path class="line-of-glaze" d="M8 44${wave}H${craze}"/><path class="line-of-glaze" stroke-dasharray="5 3" d="M${craze} 44H${WIDTH - 8}"/>`;
  const [low, at, high] = [stress.low, stress.value, stress.high].map(place) as [number, number, number];
  const whisker = `<path class="whisker" d="M${low} 22v12M${low} 28H${high}M${high} 22v12"/>`;
  const words_ = `<text x="${Math.min(Math.max(at, 24), WIDTH - 24)}" y="14" font-size="15" text-anchor="middle">${signed(stress.value)}</text>`;
  return `<svg viewBox="0 0 ${WIDTH} 52" aria-hidden="true">${line}${whisker}<circle cx="${at}" cy="28" r="5" class="whisker"/>${words_}</svg>`;
}
