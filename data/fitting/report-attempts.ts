/** What the report says of other ways of fitting the expansion. @module */
import type { AttemptScore } from "./attempts.ts";
import { DOMAINS } from "./domains.ts";
import independent from "./independent-check.json" with { type: "json" };
import { type AccuracyRow, accuracyTable, attemptTable } from "./report-tables.ts";
import apart from "./tried-apart.json" with { type: "json" };

/** A gain below this in either domain is not worth other coefficients [1e-6/K]. */
const WORTH = 0.01;

/** Ways tried at every run, ways tried apart, and the same by other people's code. */
export function attemptsSection(attempts: readonly AttemptScore[]): string[] {
  return [
    "## Ways of fitting the expansion that were tried",
    "",
    attemptTable(attempts),
    "",
    ...apartSection(),
    ...independentSection(),
  ];
}

function apartSection(): string[] {
  const [ships, ...ways] = apart.ways;
  const cells = ({ figures, rmseFalls }: (typeof ways)[number]) =>
    DOMAINS.flatMap((domain) => {
      const { medianAbsoluteError, p90, rmse } = figures[domain];
      const [low, high] = rmseFalls[domain];
      return [
        [medianAbsoluteError, p90, rmse].map((v) => v.toFixed(3)).join(" / "),
        `${signed(low!)} to ${signed(high!)}`,
      ];
    }).join(" | ");
  const gain = (way: (typeof ways)[number]) =>
    Math.min(...DOMAINS.map((domain) => ships!.figures[domain].rmse - way.figures[domain].rmse));
  const worth = ways.filter((way) => gain(way) >= WORTH).map(({ name }) => name);
  return [
    "### Tried apart",
    "",
    `\`data/fitting/tried-apart.py\`, run by hand (${apart.made}): each way on the same folds, added to the model that ships.`,
    "Falls of the RMSE against it are given as 90 % intervals, publications drawn with replacement; above 0 is better.",
    "",
    "| way | glaze: median / 90th / RMSE | RMSE falls by | stoneware-like | RMSE falls by |",
    "|---|---|---|---|---|",
    ...[ships!, ...ways].map((way) => `| ${way.name} | ${cells(way)} |`),
    "",
    worth.length > 0
      ? `Ways that lower the RMSE by ${WORTH} or more in both domains: ${worth.join("; ")}.`
      : `No way lowers the RMSE by ${WORTH} in both domains.`,
    "Trees on the residuals have no parts by oxide and take megabytes: they only mark how far anything came on these",
    "rows. Products of three with more weight on stoneware-like rows are the best of the ways whose parts add up.",
    "",
    "Earlier, and not repeated: 600 bell-shaped corrections at cluster centres, fitted together with the products of",
    "oxides, gave 0.171 / 0.796 / 0.551 on glazes and 0.175 / 0.752 / 0.500 on stoneware-like ones; old publications",
    "counted less made nothing better.",
    "",
  ];
}

/** The same expansion model by other people's regression: independent-check.py. */
function independentSection(): string[] {
  const { made, figures } = independent;
  return [
    "## The same by an independent implementation",
    "",
    `\`data/fitting/independent-check.py\`, run by hand (${made}): Huber regression on the products of all common oxides,`,
    "same folds, nothing shared but data and definitions. To compare with *products of all common oxides* above.",
    "",
    accuracyTable(
      DOMAINS.map((d): AccuracyRow => ["independent", d, figures[d]]),
      2,
    ),
    "",
  ];
}

function signed(value: number): string {
  return `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(3)}`;
}
