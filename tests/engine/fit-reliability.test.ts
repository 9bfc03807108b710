/** A chance told is a chance kept, on pots drawn at random from the stated doubts (data/fitting/fit-reliability.ts). */
import { describe, expect, it } from "vitest";
import { reliability } from "../../data/fitting/fit-reliability.ts";

describe("reliability", () => {
  const bins = reliability(11);
  it.each(["crazes", "shivers"] as const)("%s as often as told, in every tenth", (side) => {
    let filled = 0;
    for (const { from, n, told, came } of bins[side]) {
      if (n < 3000) continue;
      filled++;
      // Random pots err by √(p(1−p)/n), under 0.01 here; 1024 quasi-random draws by about as much.
      expect(Math.abs(came - told), `told about ${from}`).toBeLessThan(0.03);
    }
    expect(filled).toBeGreaterThan(4);
  });
});
