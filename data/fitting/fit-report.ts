/** Report on the fit: reliability of its chances, recorded ware beside what it answers. @module */
import { checkFit, type FitRequest } from "../../api/engine/fit/index.ts";
import { type ReliabilityBin, reliability } from "./fit-reliability.ts";

/** A published observation, a question that stands for it, and what of the answer to set beside it. */
interface Case {
  what: string;
  source: string;
  seen: string;
  standsFor: string;
  ask: FitRequest;
}

const soft = (thicknessMm: number) => ({
  oxides: {
    basis: "weightPercent" as const,
    amounts: { SiO2: 65, Al2O3: 10, CaO: 12, ZnO: 5, K2O: 3, Na2O: 2, MgO: 1.5 },
  },
  thicknessMm,
});
const stated = (value: number, thicknessMm = 0.3) => ({
  expansion: { value, rangeC: [20, 300] as const, plusMinus: 0.2 },
  thicknessMm,
});
const UNPRINTED = "the glaze's analysis is not printed; a soft alkali-lime-zinc glaze stands for it";

const CASES: readonly Case[] = [
  {
    what: "vitreous china, 0.1 mm",
    source: "inada-1978-4",
    seen: "−88 to −59 MPa",
    standsFor: UNPRINTED,
    ask: { glaze: soft(0.1), body: { class: "vitreous-china" } },
  },
  {
    what: "vitreous china, 1–1.5 mm",
    source: "inada-1978-4",
    seen: "0 MPa",
    standsFor: UNPRINTED,
    ask: { glaze: soft(1.25), body: { class: "vitreous-china" } },
  },
  {
    what: "bone china, 0.1 mm",
    source: "inada-1978-4",
    seen: "−49 MPa",
    standsFor: UNPRINTED,
    ask: { glaze: soft(0.1), body: { class: "bone-china" } },
  },
  {
    what: "bone china, 1–1.5 mm",
    source: "inada-1978-4",
    seen: "−10 MPa",
    standsFor: UNPRINTED,
    ask: { glaze: soft(1.25), body: { class: "bone-china" } },
  },
  {
    what: "hard porcelain, prone to craze",
    source: "inada-1978-11",
    seen: "+10 MPa",
    standsFor: "the limestone glaze 0.3 K2O 0.7 CaO 1.0 Al2O3 10 SiO2 (from memory) stands for it",
    ask: {
      glaze: { oxides: { basis: "moles", amounts: { K2O: 0.3, CaO: 0.7, Al2O3: 1, SiO2: 10 } }, thicknessMm: 0.2 },
      body: { class: "hard-porcelain" },
    },
  },
  {
    what: "8.1 on 5.4e-6/K",
    source: "okinawa-2017",
    seen: "crazes, near +142 MPa by the plain sum",
    standsFor: "ranges as printed",
    ask: {
      glaze: stated(8.1),
      body: { class: "buff-stoneware", expansion: { value: 5.4, rangeC: [20, 500], plusMinus: 0.2 } },
    },
  },
  {
    what: "4.9 on 5.4e-6/K",
    source: "okinawa-2017",
    seen: "some of the lowest did not craze",
    standsFor: "ranges as printed",
    ask: {
      glaze: stated(4.9),
      body: { class: "buff-stoneware", expansion: { value: 5.4, rangeC: [20, 500], plusMinus: 0.2 } },
    },
  },
];

/** The report and its plot. */
export function fitReport(): { markdown: string; svg: string } {
  const bins = reliability();
  const rows = CASES.map(({ what, source, seen, standsFor, ask }) => {
    const { stress, headline } = checkFit(ask);
    return `| ${what} | ${source} | ${seen} | ${stress.value} (${stress.low} to ${stress.high}) | ${headline} | ${standsFor} |`;
  });
  const table = (list: ReliabilityBin[]) =>
    list
      .filter(({ n }) => n > 0)
      .map(({ from, to, n, told, came }) => `| ${from}–${to} | ${n} | ${told.toFixed(3)} | ${came.toFixed(3)} |`)
      .join("\n");
  const markdown = `# How well the fit does
Written by \`npm run fit-models\`; do not edit.

## A chance told is a chance kept

${bins.crazes.reduce((sum, { n }) => sum + n, 0)} pots drawn at random from the doubts that 240 questions state, each judged by the physics alone. This
checks the arithmetic of the probabilities; whether the doubts are right shows in the held-out coverage of the glass
models (REPORT.md) and in the cases below.

![reliability](reliability.svg)

| chance of crazing told | pots | mean told | came |
|---|---:|---:|---:|
${table(bins.crazes)}

| chance of shivering told | pots | mean told | came |
|---|---:|---:|---:|
${table(bins.shivers)}

## Recorded ware

Stress in MPa, tension positive, with its 90 % interval. No published case with a complete analysis, both expansions and
the outcome was found, so something stands in for what is not printed, and a miss may be the stand-in's.

| what | source | seen | answered | in words | what stands in |
|---|---|---|---|---|---|
${rows.join("\n")}
`;
  return { markdown, svg: plot(bins.crazes, bins.shivers) };
}

const SIZE = 320;
const EDGE = 44;

function plot(crazes: ReliabilityBin[], shivers: ReliabilityBin[]): string {
  const x = (p: number) => (EDGE + p * (SIZE - 2 * EDGE)).toFixed(1);
  const y = (p: number) => (SIZE - EDGE - p * (SIZE - 2 * EDGE)).toFixed(1);
  const marks = (list: ReliabilityBin[], shape: (cx: string, cy: string) => string) =>
    list
      .filter(({ n }) => n > 0)
      .map(({ told, came }) => shape(x(told), y(came)))
      .join("");
  const ring = (cx: string, cy: string) =>
    `<circle cx="${cx}" cy="${cy}" r="5" fill="none" stroke="#9A3B14" stroke-width="2"/>`;
  const square = (cx: string, cy: string) =>
    `<rect x="${(Number(cx) - 4).toFixed(1)}" y="${(Number(cy) - 4).toFixed(1)}" width="8" height="8" fill="none" stroke="#27488A" stroke-width="2"/>`;
  const ticks = [0, 0.25, 0.5, 0.75, 1]
    .map(
      (p) =>
        `<text x="${x(p)}" y="${SIZE - EDGE + 18}" text-anchor="middle">${p}</text><text x="${EDGE - 8}" y="${y(p)}" text-anchor="end" dominant-baseline="middle">${p}</text>`,
    )
    .join("");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIZE} ${SIZE}" role="img" font-family="sans-serif" font-size="12"><title>Chance told against how often it came: every point lies near the line of equality</title><rect width="${SIZE}" height="${SIZE}" fill="#FBFCFA"/><path d="M${x(0)} ${y(0)}L${x(1)} ${y(1)}" stroke="#75807A"/><path d="M${x(0)} ${y(1)}V${y(0)}H${x(1)}" fill="none" stroke="#1A201E"/>${ticks}${marks(crazes, ring)}${marks(shivers, square)}<text x="${SIZE / 2}" y="${SIZE - 6}" text-anchor="middle">chance told [-]</text><text transform="translate(12 ${SIZE / 2}) rotate(-90)" text-anchor="middle">share that came [-]</text><text x="${EDGE + 10}" y="${EDGE - 14}" fill="#9A3B14">○ crazes</text><text x="${EDGE + 90}" y="${EDGE - 14}" fill="#27488A">□ shivers</text></svg>\n`;
}
