/** What the report says of density and surface tension, which no measured glasses of the data tell of. @module */
import type { DensityCalibration } from "./calibrate-density.ts";
import type { Agreement } from "./surface-agreement.ts";

const percent = (share: number, decimals = 1) => `${(100 * share).toFixed(decimals).replace("-", "−")} %`;

/** Density: a published sum against the few printed values. */
export function densitySection({ checks, halfWidth, held }: DensityCalibration): string[] {
  return [
    "## Density",
    "",
    "Not fitted: the data hold no densities. The sum of Appen's volumes is held against the glasses whose density was",
    "found printed beside an analysis, `data/factor-sets/printed-densities.json`. They are industrial glasses; none is a",
    "glaze, and the two borosilicates are near twins, so the interval is as good as the likeness.",
    "",
    "| glass | printed, g/cm3 | reckoned less printed | half-width from the others | source |",
    "|---|---:|---:|---:|---|",
    ...checks.map(
      ({ glass, density, off, halfWidthOfOthers, source }) =>
        `| ${glass} | ${density} | ${percent(off)} | ${percent(halfWidthOfOthers)} | ${source} |`,
    ),
    "",
    `Stated 90 % interval: ${percent(halfWidth)} to either side, Student's t times the root mean square. Each glass left out in`,
    `turn: ${percent(held, 0)} lie within the half-width that the others give.`,
    "",
  ];
}

/** Surface tension: published sums against each other. */
export function surfaceSection(agreement: Agreement): string[] {
  return [
    "## Surface tension",
    "",
    "Not fitted and not checked by measurement: the data hold no surface tensions, and no measured value with a full",
    "analysis was found in print. Three published sums are compared on every glaze composition of the data, brought to",
    "1300 °C with Dietzel's slope. A set's stated 90 % interval holds nine in ten of the other two sets' figures: what all",
    "three get wrong alike is not in it.",
    "",
    "| set | comparisons | others read, in the middle | half-width | held, by fold |",
    "|---|---:|---:|---:|---|",
    ...Object.entries(agreement).map(
      ([
        model,
        {
          n,
          bias,
          halfWidthShare,
          heldByFold: [low, high],
        },
      ]) =>
        `| ${model} | ${n} | ${bias > 0 ? "+" : ""}${percent(bias)} | ${percent(halfWidthShare)} | ${percent(low)} to ${percent(high)} |`,
    ),
    "",
    "Held by fold: a half-width from nine folds of publications, tried on the tenth.",
    "",
  ];
}
