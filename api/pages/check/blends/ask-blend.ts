/** Tiles as the service works them out; where the line breaks, those that came are kept. @module */
import type { BlendGap, BlendPoint } from "../../../engine/blends/types.ts";
import { service } from "../../shared/service.ts";
import { type Outcome, settle } from "../panels.ts";
import type { BlendRequest } from "./blend-question.ts";

export type Tile = BlendPoint | BlendGap;

/** Rest between two looks at how far it is [ms]. */
const LOOK_MS = 100;

/** What goes for all tiles: what is unusual about the corners, and what could hurt someone; or why there is no answer. */
export async function askNotices(request: BlendRequest, signal: AbortSignal): Promise<Outcome<string[]>> {
  const outcome = await settle(service.blends.map({ ...request, count: 1 }, { signal }));
  if (!("report" in outcome)) return outcome;
  const { warnings, cautions } = outcome.report;
  return { report: [...warnings, ...cautions].map(({ message }) => message) };
}

/**
 * Asks for the tiles that are missing, and adds each to those that are there.
 * @param tiles - those that have come; grows
 * @param look - told now and then how far it is
 */
export function askBlend(
  request: BlendRequest,
  tiles: Tile[],
  signal: AbortSignal,
  look: () => void,
): Promise<Outcome<Tile[]>> {
  const ask = async () => {
    let looked = performance.now();
    for await (const tile of service.blends.stream({ ...request, from: tiles.length }, { signal })) {
      tiles.push(tile as Tile);
      if (performance.now() - looked < LOOK_MS) continue;
      looked = performance.now();
      look();
    }
    return tiles;
  };
  return settle(ask());
}
