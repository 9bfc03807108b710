/** The maker: what to throw, a lid that fits, bars measured, a ruler and a batch sheet to print. */
import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { output, overflow, pages, shot, shown, soon, verdict } from "./support.ts";

const { open } = pages();
const title = (page: Awaited<ReturnType<typeof open>>) => shown(page.locator("#answer h1"));

describe("the maker", () => {
  it("reads what to throw for the jar that is wanted", async () => {
    const page = await open("/making");
    // 100 mm fired at 12 % from wet to fired: 100 / 0.88 = 113.6, thrown to the millimetre (derived, arithmetic).
    await soon(() => title(page)).toBe("To finish 100 mm tall, throw the jar 114 mm tall and 106 mm at the rim.");
    expect(await shown(page.locator(".sz"))).toMatch(/Lid flange\s+93\.6/);
    expect(await shown(page.locator("#answer"))).toMatch(/0\.8\d mm of play all round/);
    await shot(page, "making");
  });

  it("follows what is typed, and stays on the device", async () => {
    const page = await open("/making");
    await soon(() => title(page)).toMatch(/114 mm/);
    await page.getByLabel("Fired height").fill("200");
    // 200 / 0.88 = 227.3 (derived, arithmetic)
    await soon(() => title(page)).toMatch(/throw the jar 227 mm tall/);
    await page.getByLabel("Form").selectOption({ label: "Bowl" });
    await soon(() => title(page)).toMatch(/throw the bowl 227 mm tall/);
    expect(await page.getByLabel("Fired belly").count()).toBe(0);
    await page.reload();
    await soon(() => title(page)).toMatch(/throw the bowl 227 mm tall/);
  });

  it("speaks inches, fractions too", async () => {
    const page = await open("/making");
    await soon(() => title(page)).toMatch(/114 mm/);
    await page.getByRole("radio", { name: "inch" }).check();
    expect(await page.getByLabel("Fired height").inputValue()).toBe("3.937");
    await page.getByLabel("Fired height").fill("3 1/2 in");
    // 3.5 / 0.88 = 3.98 in, thrown to the sixteenth (derived, arithmetic)
    await soon(() => title(page)).toMatch(/3\.5 in tall, throw the jar 4 in tall/);
    // The ruler is one of inches, and both ends of where a wall lands can be told apart.
    expect(await shown(page.locator("#ruler .lede"))).toMatch(/its printed inch is a fired inch/);
    expect(await page.locator("#ruler svg").textContent()).toContain("fired in: throw to this edge");
    const wall = await shown(page.locator(".sz tbody tr", { hasText: "Wall" }).locator("td").last());
    const [low, high] = wall.split(" to ").map(Number) as [number, number];
    expect(low).toBeLessThan(high);
  });

  it("takes shrinkage from bars", async () => {
    const page = await open("/making");
    await soon(() => title(page)).toMatch(/114 mm/);
    await page.getByText("Measure it from bars").click();
    await page.getByLabel("One bar a line").fill("100, 94, 88\n100; 93.5; 87.5\n100 94 88.5");
    await page.getByRole("button", { name: "Work it out" }).click();
    // (12 + 12.5 + 11.5) / 3 (derived, arithmetic)
    await soon(() => page.getByLabel("Wet to fired").inputValue()).toBe("12.0");
    expect(Number(await page.getByLabel("Give or take").inputValue())).toBeGreaterThan(0.3);
  });

  it("is told at the field what cannot be", async () => {
    const page = await open("/making");
    await soon(() => title(page)).toMatch(/114 mm/);
    await page.getByLabel("Wet to fired").fill("0,12");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#percent-note"))).toMatch(/Did you mean 12 %/);
    await page.getByRole("button", { name: "Use 12" }).click();
    await soon(() => page.locator(".note.bad").count()).toBe(0);
    await page.getByLabel("Fired height").fill("tall");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#height-note"))).toMatch(/tall/);
    // The sizes of before stand fainter until the field is mended.
    const faint = () => page.locator("#answer h1").evaluate((one) => getComputedStyle(one).color);
    const stale = await faint();
    await page.getByLabel("Fired height").fill("100");
    await soon(faint).not.toBe(stale);
    await page.getByLabel("Give or take").fill("13");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#plusMinus-note"))).toBe(
      "Give or take: “13” does not go here. It must be 10 % or less.",
    );
  });

  it.each([
    ["percent", "", "Wet to fired: a number is missing."],
    ["percent", "12x", "Wet to fired: “12x” is not a number. Did you mean 12?"],
    ["plusMinus", "abc", "Give or take: “abc” is not a number."],
    ["pieces", "some", "How many: “some” is not a number."],
    ["dry", "", "Dry weight: a number is missing."],
    ["gravity", "abc", "Stop at: “abc” is not a number."],
  ])("puts no figure of its own in the place of %s “%s”", async (field, text, said) => {
    const page = await open("/making");
    await soon(() => title(page)).toMatch(/114 mm/);
    await page.locator(`#${field}`).fill(text);
    await page.keyboard.press("Tab");
    await soon(() => page.locator(`#${field}-note`).count()).toBe(1);
    expect((await shown(page.locator(`#${field}-note`))).replace(/ Use 12$/, "")).toBe(said);
    expect(await page.locator("#status").textContent()).toBe(said);
  });

  it("refuses no pieces, and reads a weight in words, with a comma", async () => {
    const page = await open("/making");
    await soon(() => title(page)).toMatch(/114 mm/);
    await page.locator("#pieces").fill("0");
    await page.keyboard.press("Tab");
    await soon(() => page.locator("#pieces-note").count()).toBe(1);
    await page.locator("#dry").fill("2,5 kg");
    await soon(() => shown(page.locator("#batch-title"))).toMatch(/2500 g dry/);
    // 3,5 in is 3.5 in, thrown as 3.5 / 0.88 = 3.98 in, 101 mm to the millimetre (arithmetic)
    await page.locator("#pieces").fill("6");
    await page.locator("#height").fill("3,5 in");
    await soon(() => title(page)).toMatch(/throw the jar (101 mm|4 in) tall/);
  });

  it("gets ruler and batch sheet as PDF, the batch of the glaze on the Check page", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#name").fill("Low Sun");
    await soon(() => page.evaluate(() => localStorage.getItem("ringtrue-check"))).toContain("Low Sun");
    await page.goto(`${new URL(page.url()).origin}/making`);
    await soon(() => shown(page.locator("#batch-title"))).toMatch(/Batch sheet: Low Sun, 2000 g dry/);
    expect(await page.locator(".bt tbody tr").count()).toBe(5);
    expect(await shown(page.locator(".bt tbody tr").last())).toMatch(/2000/);
    await page.getByLabel("Potash feldspar weighed").check();
    for (const [button, name] of [
      ["#ruler-pdf", "ruler.pdf"],
      ["#batch-pdf", "batch.pdf"],
    ] as const) {
      const download = page.waitForEvent("download");
      await page.locator(button).click();
      await (await download).saveAs(output(name));
      expect((await readFile(output(name))).subarray(0, 5).toString()).toBe("%PDF-");
    }
  });

  it("tells on a phone what each figure is, with its unit, where it lands and the running total", async () => {
    const page = await open("/making", { viewport: { width: 320, height: 640 } });
    await soon(() => title(page)).toMatch(/114 mm/);
    const height = page.locator(".sz tbody tr").first();
    // 114 × 0.875 = 99.75 and 114 × 0.885 = 100.89 (arithmetic)
    expect(await shown(height)).toBe("Height throw 114 mm fired 100 mm lands at 99.8 to 100.9 mm");
    await soon(() => page.locator(".bt tbody tr").count()).toBe(5);
    // 2000 g × 22 / 100 = 440 g, after 840 g (arithmetic)
    expect(await shown(page.locator(".bt tbody tr").nth(1))).toBe("Silica 440 g running total 1280 g");
    const left = async (what: string) => (await page.locator(what).boundingBox())!.x;
    expect(await left("#batch-pdf")).toBe(await left("#batch-title"));
    expect(await overflow(page)).toBe(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    expect(await shown(height)).toBe("Height 114 108.5 107.2 100 99.8 to 100.9");
  });

  it("stands on a phone without a sideways scroll", async () => {
    const page = await open("/making", { viewport: { width: 390, height: 844 } });
    await soon(() => title(page)).toMatch(/114 mm/);
    expect(await overflow(page)).toBe(0);
    await shot(page, "making-phone");
  });
});
