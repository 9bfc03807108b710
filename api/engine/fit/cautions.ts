/** Where a result could hurt someone: said once, with the usual defence. @module */
import type { Notice } from "../errors.ts";
import { TENSILE_SHARE } from "./constants.ts";
import { facesOf, skinOf } from "./simulate.ts";
import type { Prepared } from "./situation.ts";
import type { Summary } from "./summary.ts";
import type { Judgement } from "./verdict.ts";

/** Cautions that follow from the verdict and the ware; the chemistry adds its own. */
export function cautionsFor(prepared: Prepared, summary: Summary, { of20 }: Judgement): Notice[] {
  const { situation, body, chemistry, model } = prepared;
  const notices: Notice[] = [];
  const crazes = of20.crazesOnCooling + of20.crazesLater;
  if (crazes >= 4) {
    notices.push({
      code: "crazed-food-surface",
      message:
        "A crazed glaze on a food surface holds dirt and weakens the ware. Keep crazed pieces for flowers, and ask your local code what it allows for food.",
    });
  }
  if (of20.shivers >= 2) {
    notices.push({
      code: "shivering-slivers",
      message:
        "A shivering glaze sheds slivers as sharp as glass. Wear eye protection when you handle such ware and never use it for food or drink.",
    });
  }
  // Pulled on one side alone, clay bears more than pulled evenly, so as much of it is a smaller part.
  const { tension, part } = summary.bent
    ? { tension: summary.bent.underGlaze.high, part: TENSILE_SHARE }
    : { tension: (-summary.stress.low * facesOf(situation) * skinOf(situation)) / situation.wallM, part: 1 };
  if (situation.glazed !== "both-faces" && tension * part > (body.ruptureMPa.value * 1e6) / 4) {
    notices.push({
      code: "inside-only-burst",
      message: `A wall glazed on one face only carries up to ${Math.round(tension / 1e6)} MPa of pull here, a good part of what the clay bears (${Math.round(body.ruptureMPa.value)} MPa). Such a pot can burst with hot liquid: glaze both faces, or make the wall thicker.`,
    });
  }
  if (model === "stated" || chemistry === null) {
    notices.push({
      code: "unknown-composition",
      message:
        "The composition is unknown, so nothing is known of what may leach. For food use, have a laboratory test it (ISO 6486, ASTM C738, EN 1388); limits differ by country.",
    });
  }
  notices.push({
    code: "not-a-certificate",
    message:
      "This is a calculation from compositions. It never certifies that ware is safe for food; a leach test by a licensed laboratory does.",
  });
  return notices;
}
