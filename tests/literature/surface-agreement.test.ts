/** What the interval of a surface tension rests on: how far three published sets differ on the measured glasses. */
import { describe, expect, it } from "vitest";
import { readGlasses } from "../../data/fitting/read-glasses.ts";
import { surfaceAgreement } from "../../data/fitting/surface-agreement.ts";
import agreement from "../../data/models/surface-tension.json" with { type: "json" };

describe("the interval", () => {
  it("is how far the other sets lie from each, as worked out from the measured glasses", () => {
    expect(surfaceAgreement(readGlasses())).toEqual(agreement.sets);
  });
  it("holds 85 to 95 % of the others on publications that its width was not taken from", () => {
    for (const { heldByFold } of Object.values(agreement.sets)) {
      expect(heldByFold[0]).toBeGreaterThan(0.85);
      expect(heldByFold[1]).toBeLessThan(0.95);
    }
  });
});
