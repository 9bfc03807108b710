/** What could hurt someone about a glaze that runs or crawls. @module */
import type { Notice } from "../errors.ts";
import type { ReadRunning } from "./read-request.ts";
import type { Fault, Run } from "./types.ts";

/**
 * Cautions, each once: those of the chemistry, then those of the wall.
 * @param read - the question
 * @param outcome - at the foot
 * @param faults - the checklist
 */
export function cautionsFor(
  { coats, refiring, laterHeat }: ReadRunning,
  outcome: Run,
  faults: readonly Fault[],
): Notice[] {
  const byCode = new Map<string, Notice>();
  const add = (notice: Notice) => byCode.has(notice.code) || byCode.set(notice.code, notice);
  for (const { chemistry } of [...coats, ...refiring.coats]) for (const caution of chemistry.cautions) add(caution);
  if (faults.some(({ likelihood }) => likelihood === "likely")) {
    add({
      code: "bare-or-pitted-food-surface",
      message:
        "A crawled, pinholed or rough glaze holds food and cannot be cleaned: keep such a piece off the table. A calculation never certifies food safety; where it matters, ask a licensed laboratory and your local code.",
    });
  }
  if (outcome.catchPlate) {
    add({
      code: "sharp-drips",
      message:
        "Glaze that reached the shelf breaks off as sharp as a knife: wear goggles and gloves to free the pot, and grind the foot wet.",
    });
  }
  if (laterHeat.length > 0) {
    add({
      code: "kiln-fumes",
      message:
        "Decals and lustres burn off solvents and resin below 500 °C: fire with the room aired, and stay out of it.",
    });
  }
  return [...byCode.values()];
}
