/** Seeded bodies, firings and whole questions. @module */
import { listBodies, PHASES } from "../../../api/engine/body/index.ts";
import type { FitRequest } from "../../../api/engine/fit/index.ts";
import type { Chance } from "./chance.ts";
import { coat } from "./glazes.ts";

type Body = FitRequest["body"];

/** A body, in any of the four ways and with any facts beside it. */
export function body(chance: Chance): Body {
  const facts = {
    ...(chance.happens(0.3) ? { absorptionPercent: chance.between(0, 18) } : {}),
    ...(chance.happens(0.2) ? { moistureExpansionPercent: chance.between(0, 0.15) } : {}),
    ...(chance.happens(0.2) ? { youngsGPa: chance.between(12, 90) } : {}),
    ...(chance.happens(0.2) ? { ruptureMPa: chance.between(10, 90) } : {}),
    ...(chance.happens(0.15) ? { quartzPercent: chance.between(0, 40) } : {}),
    ...(chance.happens(0.1) ? { cristobalitePercent: chance.between(0, 15) } : {}),
  };
  const name = chance.pick(listBodies()).id;
  const way = chance.pick(["class", "mean", "mean", "curve", "phases"]);
  if (way === "class") return { class: name, ...facts };
  if (way === "mean") {
    return {
      expansion: {
        value: chance.between(2.5, 9.5),
        ...(chance.happens(0.8)
          ? {
              rangeC: chance.pick([
                [20, 500],
                [20, 600],
                [20, 300],
                [100, 700],
                [20, 1000],
              ]),
            }
          : {}),
        ...(chance.happens(0.7) ? { plusMinus: chance.between(0, 0.8) } : {}),
      },
      ...(chance.happens(0.7) ? { class: name } : {}),
      ...facts,
    };
  }
  if (way === "curve") return { ...curve(chance), ...facts };
  const chosen = chance.some([...PHASES.keys()], chance.pick([2, 3, 4]));
  const phases = Object.fromEntries(chosen.map((id) => [id, chance.between(1, chosen.length > 3 ? 24 : 30)]));
  return { phases, ...facts };
}

function curve(chance: Chance): Body {
  const end = chance.pick([400, 500, 570, 600, 640, 700, 1000]);
  const count = chance.pick([4, 7, 12]);
  const slope = chance.between(4, 8) * 1e-4;
  let c = chance.pick([20, 25, 30]);
  let strainPercent = 0;
  const points = [{ c, strainPercent }];
  for (let i = 1; i <= count; i++) {
    const next = i === count ? end : Number((c + ((end - c) / (count - i + 1)) * chance.between(0.7, 1.2)).toFixed(1));
    strainPercent = Number((strainPercent + (next - c) * slope * chance.between(0.8, 1.4)).toFixed(4));
    c = next;
    points.push({ c, strainPercent });
  }
  return { curve: points, ...(chance.happens(0.5) ? { plusMinusPercent: chance.between(0.005, 0.03) } : {}) };
}

function firing(chance: Chance): FitRequest["firing"] {
  if (chance.happens(0.3)) return undefined;
  if (chance.happens(0.5)) return { coolingCPerHour: chance.scale(5, 3000) };
  const turns = chance.pick([[700, 20], [650, 560, 20], [900, 620, 300], [600], [760, 640, 500, 100]]);
  return {
    cooling: turns.map((toC) => ({
      toC,
      cPerHour: chance.scale(10, 2000),
      ...(chance.happens(0.5) ? { holdMinutes: chance.pick([0, 5, 60, 600, 3000]) } : {}),
    })),
  };
}

/** A whole question. */
export function fitQuestion(chance: Chance): FitRequest {
  const layers = chance.happens(0.2) ? Array.from({ length: chance.pick([2, 3]) }, () => coat(chance)) : null;
  const switches = chance.happens(0.25)
    ? { [chance.pick(["betweenPapers", "materials", "onWare", "crystals"])]: false }
    : undefined;
  const cooling = firing(chance);
  return {
    glaze: layers ? { layers } : coat(chance),
    body: body(chance),
    ...(cooling ? { firing: cooling } : {}),
    ware: {
      ...(chance.happens(0.8) ? { wallMm: chance.scale(2, 15) } : {}),
      ...(chance.happens(0.8) ? { glazed: chance.pick(["both-faces", "one-face", "one-face-free"] as const) } : {}),
      ...(chance.happens(0.6) ? { serviceYears: chance.scale(0.02, 100) } : {}),
      ...(chance.happens(0.4) ? { edgeRadiusMm: chance.scale(0.3, 20) } : {}),
    },
    ...(switches ? { doubts: switches } : {}),
    seed: chance.pick([1, 1, 1, 2, 7, 12345]),
  };
}
