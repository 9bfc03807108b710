/** What single parts of the engine cost, in process. @module */
import { openBlend } from "../../api/engine/blends/index.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import {
  glassDensity,
  glassProperties,
  liquidusIndication,
  nearestGlasses,
  surfaceTension,
  viscosityCurve,
} from "../../api/engine/glass/index.ts";
import { expansionPicture, verdictPicture } from "../../api/engine/pictures/index.ts";
import { corners, question } from "./questions.ts";

/** Cost of one call [µs of processor time], the least of eight batches: the others measure the machine's other work. */
export function costUs(call: () => unknown, times: number): number {
  const batch = () => {
    const before = process.cpuUsage();
    for (let i = 0; i < times; i++) call();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / times;
  };
  batch();
  return Math.min(...Array.from({ length: 8 }, batch));
}

/** One part with its aim [µs]. */
export interface PartCost {
  what: string;
  us: number;
  aimUs: number;
}

/** Costs of the parts that have an aim. */
export async function partCosts(): Promise<PartCost[]> {
  const asked = question();
  const { moleFractions, fired } = analyseGlaze({
    oxides: { basis: "weightPercent", amounts: { SiO2: 65, Al2O3: 13, B2O3: 2, Na2O: 4, K2O: 4, CaO: 10, MgO: 2 } },
  });
  const everyProperty = () => {
    const curve = viscosityCurve(moleFractions);
    return [
      glassProperties(moleFractions),
      glassDensity(moleFractions),
      surfaceTension(moleFractions, fired.weightPercent),
      liquidusIndication(moleFractions),
      curve.logViscosity(1200),
      curve.temperatureC(12),
    ];
  };
  const report = checkFit({ ...asked, include: ["curves"] });
  await nearestGlasses(moleFractions);
  const before = process.cpuUsage();
  for (let i = 0; i < 50; i++) await nearestGlasses(moleFractions);
  const { user, system } = process.cpuUsage(before);
  return [
    { what: "one fit, 1024 draws", us: costUs(() => checkFit(asked), 500), aimUs: 150 },
    { what: "one full set of glass properties", us: costUs(everyProperty, 2000), aimUs: 20 },
    { what: "nearest measured glasses, all sets judged", us: (user + system) / 50, aimUs: 2000 },
    { what: "verdict picture", us: costUs(() => verdictPicture(report), 100), aimUs: 1000 },
    { what: "expansion picture", us: costUs(() => expansionPicture(report), 100), aimUs: 1000 },
  ];
}

/** Points of the blend that is timed. */
export const BLEND_POINTS = 10_000;

/** Processor time of judging every mixture of a square of four glazes, 100 by 100 [s]: one core's, whatever else runs. */
export function blendS(): number {
  const blend = openBlend({ ...corners(4), shape: "grid", steps: Math.sqrt(BLEND_POINTS) - 1 });
  const before = process.cpuUsage();
  let judged = 0;
  for (const point of blend.points()) if ("verdict" in point) judged++;
  const { user, system } = process.cpuUsage(before);
  if (judged !== BLEND_POINTS) throw new Error(`Only ${judged} points were judged: the figure would lie.`);
  return (user + system) / 1e6;
}
