/** From bench and panel to a question for the service, and from its pointers back to fields. @module */
import { gridSize, simplexSize } from "../../../engine/blends/lattice.ts";
import { fill } from "../../fill.ts";
import { readNumber } from "../../shared/read-number.ts";
import type { service } from "../../shared/service.ts";
import words from "../../words.json" with { type: "json" };
import type { FieldFault, Question } from "../request.ts";
import type { BlendDraft } from "./blend-draft.ts";
import type { CornerGlaze } from "./corners.ts";

const { blends: say, field: said } = words;

export type BlendRequest = Parameters<typeof service.blends.map>[0];

export interface BlendQuestion {
  request: BlendRequest;
  /** Every corner's glaze by its whole name. */
  titles: string[];
  /** Tiles that it makes; null while a number cannot be read. */
  tiles: number | null;
  /** Dry weight of one tile's glaze [g]. */
  grams: number;
  /** Whether there is a clay on the bench. */
  clay: boolean;
  faults: FieldFault[];
  places: Map<string, string>;
}

/** @param bench - the clay, firing, ware and coat on the bench */
export function blendQuestion(
  draft: BlendDraft,
  glazes: readonly CornerGlaze[],
  bench: Question["parts"],
): BlendQuestion {
  const faults: FieldFault[] = [];
  const places = new Map([
    ["/steps", "blend-steps"],
    ["/stepsDown", "blend-down"],
    ["/corners", "blend-steps"],
  ]);
  const number = (field: "steps" | "down" | "grams") => {
    const { value, empty, fix } = readNumber(draft[field]);
    if (value !== null) return value;
    if (empty && field === "down") return undefined;
    const where = say[field];
    const meant = fix === undefined ? "" : ` ${fill(said.meant, { fix })}`;
    const message = empty ? fill(say.missing, { where }) : fill(said.notNumber, { where, text: draft[field] }) + meant;
    faults.push({ field: `blend-${field}`, message, fix });
    return undefined;
  };
  const steps = number("steps");
  const down = draft.kind === "grid" ? number("down") : undefined;
  const grams = number("grams") ?? 0;
  if (faults.length === 0 && grams <= 0) faults.push({ field: "blend-grams", message: say.noWeight });
  const chosen = draft.corners.map((id) => glazes.find((glaze) => glaze.id === id));
  const corners = chosen.map((glaze, c) => {
    places.set(`/corners/${c}`, `blend-corner-${c}`);
    const twin = chosen.findIndex((other) => other && other === glaze);
    if (twin >= 0 && twin < c) {
      faults.push({ field: `blend-corner-${c}`, message: fill(say.twice, { name: glaze!.name }) });
    }
    const { name = "", recipe = [], additions = [] } = glaze ?? {};
    return { name: name.slice(0, 60), glaze: { recipe, ...(additions.length > 0 ? { additions } : {}) } };
  });
  const thicknessMm = bench.glaze && "thicknessMm" in bench.glaze ? bench.glaze.thicknessMm : undefined;
  const { firing, ware } = bench;
  const request: BlendRequest = {
    corners,
    ...(steps === undefined ? {} : { steps }),
    ...(down === undefined ? {} : { stepsDown: down }),
    ...(draft.kind === "grid" ? { shape: "grid" } : {}),
    body: bench.body ?? { class: "" },
    firing,
    ware,
    ...(thicknessMm === undefined ? {} : { thicknessMm }),
  };
  const titles = chosen.map((glaze) => glaze?.label ?? "");
  return { request, titles, tiles: tilesOf(draft, steps, down), grams, clay: bench.body !== null, faults, places };
}

function tilesOf({ kind, corners }: BlendDraft, steps: number | undefined, down: number | undefined): number | null {
  if (steps === undefined || !Number.isInteger(steps) || steps < 1) return null;
  return kind === "grid" ? gridSize(steps, down ?? steps) : simplexSize(corners.length, steps);
}
