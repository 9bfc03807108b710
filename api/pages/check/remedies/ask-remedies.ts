/** From what stands on the bench and in the panel to the question for remedies, and what became of it. @module */
import { AbortedError, ApiError, type FitRequest, type RemediesReport, ServerError } from "@ringtrue/sdk";
import { service } from "../../shared/service.ts";
import words from "../../words.json" with { type: "json" };

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

/** What became of a question. */
export type Outcome<Report> =
  | { report: Report }
  | { faults: { pointer: string; message: string; fix?: string }[] }
  | { trouble: string }
  | { overtaken: true };

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

/** Asks, and turns every way of failing into words for the panel. */
export async function settle<Report>(asked: PromiseLike<Report>): Promise<Outcome<Report>> {
  try {
    return { report: await asked };
  } catch (error) {
    if (error instanceof AbortedError) return { overtaken: true };
    if (error instanceof ApiError && error.issues.length > 0) {
      return {
        faults: error.issues.map(({ pointer, message, suggestion }) => ({ pointer, message, fix: suggestion })),
      };
    }
    if (error instanceof ServerError) return { trouble: words.panel.fault };
    return { trouble: error instanceof ApiError ? error.message : words.panel.offline };
  }
}

export const askRemedies = (request: RemediesRequest, signal: AbortSignal): Promise<Outcome<RemediesReport>> =>
  settle(service.remedies.find(request, { signal }));
