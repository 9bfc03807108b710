/** Tiles, remedies and blends: a valid request with one place made odd is answered or refused, never a fault. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { THAW_TO_HAIL } from "../../api/schemas/blends.ts";
import { BlendReport, EvidenceReport, Problem, RemediesReport } from "../../api/schemas/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { HOARFROST } from "../../api/schemas/larch-lane-tiles.ts";
import { faults, post } from "./support.ts";

const REMEDIES = {
  ...THAW_ON_RED_STONEWARE,
  target: 0.7,
  allow: ["silica", "kaolin"],
  forbid: ["zinc-oxide"],
  keep: ["kaolin"],
  parts: { silica: { min: 10, max: 30 } },
  seger: { Al2O3: { min: 0.3, max: 0.6 } },
  silicaToAlumina: { min: 4, max: 12 },
  melt: { logViscosity: 0.4, surfaceTensionPercent: 8 },
  bodies: [{ name: "white", body: { class: "studio-porcelain" } }],
};
const EVIDENCE = {
  ...HOARFROST,
  measured: [{ value: 7, rangeC: [20, 400], plusMinus: 0.3 }],
  tiles: [
    ...HOARFROST.tiles.slice(0, 1),
    {
      ...HOARFROST.tiles[3]!,
      seen: [
        ...HOARFROST.tiles[3]!.seen,
        { kind: "quench", differenceK: 130, cracked: false },
        { kind: "strip", lengthMm: 200, bowMm: 0.2, held: "both-ends" },
      ],
    },
  ],
};

type Path = (string | number)[];

function places(tree: unknown, path: Path = []): Path[] {
  if (typeof tree !== "object" || tree === null) return [path];
  return [path, ...Object.entries(tree).flatMap(([key, value]) => places(value, [...path, key]))];
}

function changed(tree: unknown, [key, ...rest]: Path, to: unknown): unknown {
  if (key === undefined) return to;
  const copy: Record<string | number, unknown> = Array.isArray(tree) ? ([...tree] as never) : { ...(tree as object) };
  copy[key] = changed(copy[key], rest, to);
  return copy;
}

const odd = fc.oneof(
  fc.constantFrom(0, -0, -1, 1e-300, 1e300, 5e-324, 0.01, 5, 19.9, 100, 1e4, null, true, [], {}, "", "silica", "K20"),
  fc.double({ noNaN: true, min: -1, max: 700 }),
  fc.jsonValue({ maxDepth: 2 }),
);

describe("one place made odd", () => {
  it.each([
    ["/v1/evidence", EvidenceReport, EVIDENCE, 40],
    ["/v1/remedies", RemediesReport, REMEDIES, 40],
    [
      "/v1/blends",
      BlendReport,
      { ...THAW_TO_HAIL, stepsDown: undefined, from: 1, count: 2, thicknessMm: 0.3, seed: 3 },
      120,
    ],
  ] as const)("%s answers or refuses", { timeout: 120_000 }, async (path, schema, base, numRuns) => {
    const all = places(JSON.parse(JSON.stringify(base)));
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...all), odd, async (place, value) => {
        const response = await post(path, changed(base, place, value));
        const body = await response.json();
        if (response.status === 200) schema.parse(body);
        else {
          expect(response.status).toBeGreaterThanOrEqual(400);
          expect(response.status).toBeLessThan(500);
          Problem.parse(body);
        }
        expect(faults).toEqual([]);
      }),
      { numRuns, seed: 9 },
    );
  });
});
