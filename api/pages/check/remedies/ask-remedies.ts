/** From what stands on the bench and in the panel to the question for remedies. @module */
import type { FitRequest, RemediesReport } from "@ringtrue/sdk";
import { service } from "../../shared/service.ts";
import { type Outcome, settle } from "../panels.ts";

type RemediesRequest = Parameters<typeof service.remedies.find>[0];

/** What the panel asks on top of the bench. */
export interface Wishes {
  /** Cases of twenty that should stay sound. */
  target: number;
  /** How far the melt may change. */
  melt: "little" | "more" | "much";
  /** Names of materials not at hand, between commas. */
  without: string;
}

/** Change of viscosity at the peak, up or down [log10(Pa·s)], and of surface tension [%]. */
const MELTS = {
  little: { logViscosity: 0.2, surfaceTensionPercent: 5 },
  more: { logViscosity: 0.4, surfaceTensionPercent: 10 },
  much: { logViscosity: 0.8, surfaceTensionPercent: 20 },
} as const;

/** @example remediesRequest(fit, { target: 17, melt: "little", without: "talc, zinc oxide" }).forbid // ["talc", "zinc oxide"] */
export function remediesRequest(fit: FitRequest, { target, melt, without }: Wishes): RemediesRequest {
  const forbid = without
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== "");
  const { glaze, body, firing, ware } = fit;
  return {
    glaze,
    body,
    firing,
    ware,
    target: target / 20,
    melt: MELTS[melt],
    ...(forbid.length > 0 ? { forbid } : {}),
  };
}

export const askRemedies = (request: RemediesRequest, signal: AbortSignal): Promise<Outcome<RemediesReport>> =>
  settle(service.remedies.find(request, { signal }));
