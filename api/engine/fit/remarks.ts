/** What is unusual but possible: answered, with a warning. @module */
import type { BodyModel } from "../body/index.ts";
import type { Notice } from "../errors.ts";
import type { ViscosityCurve } from "../glass/index.ts";
import { MM } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import type { SingleGlaze } from "../recipe/types.ts";
import type { FitRequest } from "./types.ts";

/** A fired coat thinner than this is hardly ever met with, and mostly one told in inches [mm] (common practice, no source). */
const THIN_MM = 0.04;

/** Thickness left out, or unusual. */
export function thicknessRemarks({ thicknessMm }: SingleGlaze, taken: number, at: string): Notice[] {
  if (thicknessMm === undefined) {
    const message = `You did not say how thick the fired glaze is. I have taken ${taken} mm.`;
    return [{ code: "thickness-assumed", message, pointer: `${at}/thicknessMm` }];
  }
  if (thicknessMm < THIN_MM) {
    const message = `${thicknessMm} mm is very thin for a glaze: a coat is usually 0.1 to 1 mm. If it was measured in inches, it is ${round(thicknessMm * MM.in, 2)} mm.`;
    return [{ code: "thin-glaze", message, pointer: `${at}/thicknessMm` }];
  }
  if (thicknessMm <= 1.5) return [];
  const message = `${thicknessMm} mm is very thick for a glaze: it may run, crawl or pinhole, and cracks start at a small pull.`;
  return [{ code: "thick-glaze", message, pointer: `${at}/thicknessMm` }];
}

/** Stiffer than this at its peak a glaze stays rough and open [log10 Pa·s] (common practice, no source). */
const UNMELTED = 5;

/** A glaze that its firing does not melt: fit is a matter of a closed glassy skin. */
export function peakRemarks(viscosity: ViscosityCurve | null, peakC: number | undefined): Notice[] {
  if (viscosity === null || peakC === undefined) return [];
  const log = viscosity.logViscosity(peakC).value;
  if (log <= UNMELTED) return [];
  const message = `At ${peakC} °C this glaze is likely too stiff to melt to a closed skin (about 10^${round(log, 1)} Pa·s; it takes some 10^4, near ${round(viscosity.temperatureC(4).value, -1)} °C). What I say of its fit holds for the melted glaze.`;
  return [{ code: "under-fired", message, pointer: "/firing/peakC" }];
}

/** A wall hardly thicker than its glaze, a firing that its class does not know. */
export function remarks(request: FitRequest, body: BodyModel, thicknessMm: number, wallMm: number): Notice[] {
  const notices: Notice[] = [];
  if (wallMm < thicknessMm * 3) {
    notices.push({
      code: "thin-wall",
      message: `The wall (${wallMm} mm) is hardly thicker than the glaze (${thicknessMm} mm): clay and glaze share the stress, and a thin wall may split.`,
      pointer: "/ware/wallMm",
    });
  }
  const peak = request.firing?.peakC;
  const [low, high] = body.class.firingC;
  if (peak !== undefined && body.classId !== null && (peak < low - 20 || peak > high + 20)) {
    notices.push({
      code: "firing-unusual",
      message: `${peak} °C is outside what ${body.class.name} is usually fired to (${low}–${high} °C). Fired short it stays porous and grows with moisture; fired hard its quartz dissolves and it expands less.`,
      pointer: "/firing/peakC",
    });
  }
  return notices;
}
