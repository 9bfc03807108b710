/** The teacher: five steps on a wall, a kiln that cools, sliders, answers, a handout. */
import { describe, expect, it } from "vitest";
import { output, overflow, pages, shot, shown, soon } from "./support.ts";

const { open } = pages();

const slide = (page: Awaited<ReturnType<typeof open>>, id: string, value: number) =>
  page.locator(id).evaluate((input: HTMLInputElement, to) => {
    input.value = String(to);
    input.dispatchEvent(new Event("input"));
  }, value);
const stressOf = (text: string) =>
  Number(/([−+]?\d+) MPa/.exec(text.replaceAll("\u00a0", " "))?.[1]?.replace("−", "-"));

describe("the teacher", () => {
  it("asks, cools, and shows why Sea Fret crazes", async () => {
    const page = await open("/lesson", { viewport: { width: 1920, height: 1080 } });
    await soon(() => shown(page.locator("#h3"))).toMatch(/At about \d+ °C/);
    expect((await shown(page.locator("h1"))).replace(/\s+/g, " ")).toBe(
      "Why does Sea Fret craze on that red stoneware?",
    );
    await slide(page, "#t", 700);
    expect(await shown(page.locator("#say"))).toMatch(/runny/);
    await slide(page, "#t", 20);
    expect(await shown(page.locator("#say"))).toMatch(/cracks/);
    expect(await page.locator("#free").textContent()).toMatch(/gap 0\.\d+\s%/);
    const cold = stressOf(await shown(page.locator("#pull")));
    const told = stressOf(await shown(page.locator("#caption5")));
    // The slider's end is the service's own figure: both are read off one answer.
    expect(Math.abs(cold - told)).toBeLessThanOrEqual(3);
    await page.getByText("Before you move the slider").click();
    expect(await shown(page.locator("#answer-shorter"))).toMatch(/^The glaze\. .*0\.\d+ %/);
    await page.locator("#s4").screenshot({ path: output("lesson-step4.png") });
    const box = (await page.locator("#s4").boundingBox())!;
    expect(box.height).toBeLessThan(1080 + 200);
  });

  it.each(["Sea Fret", "Low Sun", "Hoarfrost"])("begins the cooling of %s above where it sets", async (glaze) => {
    const page = await open("/lesson");
    await soon(() => shown(page.locator("#h3"))).toMatch(/At about \d+ °C/);
    await page.getByRole("radio", { name: glaze }).check();
    await soon(() => shown(page.locator("h1"))).toContain(glaze);
    const set = Number(/\d+/.exec(await shown(page.locator("#h3")))![0]);
    const hot = Number(/^(\d+) °C, runny$/.exec(await shown(page.locator("#hot")))![1]);
    expect(hot).toBeGreaterThan(set);
    await slide(page, "#t", hot);
    expect(await shown(page.locator("#now"))).toBe(`${hot} °C`);
    expect(await shown(page.locator("#say"))).toMatch(/^Still runny/);
  });

  it("says one set point in step 3 and on the handout", async () => {
    const page = await open("/lesson");
    await soon(() => shown(page.locator("#h3"))).toMatch(/At about \d+ °C/);
    const set = /\d+ °C/.exec(await shown(page.locator("#h3")))![0];
    const captions = (await page.locator("#handstates figcaption").allTextContents()).map((text) =>
      text.replaceAll("\u00a0", " "),
    );
    expect(captions[0]).toMatch(new RegExp(`^${set}: `));
    expect(captions[2]).toMatch(/^20 °C: /);
    const gaps = (await page.locator("#handstates svg").allTextContents()).join(" ");
    expect(gaps).toMatch(/gap 0\.\d{3}\s%/);
    expect(gaps).not.toMatch(/gap 0\.\d{1,2}\s%/);
  });

  it("lets it cool by itself, and holds it at any moment", async () => {
    const page = await open("/lesson");
    await soon(() => shown(page.locator("#h3"))).toMatch(/\d+ °C/);
    const at = async () => Number.parseInt(await shown(page.locator("#now")), 10);
    const start = await at();
    await page.getByRole("button", { name: "Let it cool" }).click();
    await soon(at).toBeLessThan(start - 20);
    await page.getByRole("button", { name: "Hold it there" }).click();
    const held = await at();
    await page.waitForTimeout(300);
    expect(await at()).toBe(held);
  });

  it("moves in three cuts for those who want no motion", async () => {
    const page = await open("/lesson", { reducedMotion: "reduce" });
    await soon(() => shown(page.locator("#h3"))).toMatch(/\d+ °C/);
    const seen: string[] = [];
    for (let i = 0; i < 4; i++) {
      await page.getByRole("button", { name: "Let it cool" }).click();
      seen.push(await shown(page.locator("#now")));
    }
    expect(seen.slice(1).map((text) => text.replaceAll("\u00a0", " "))).toEqual(["545 °C", "300 °C", "20 °C"]);
  });

  it("drags silica, soda, boron, clay, thickness and cooling, and every figure follows", async () => {
    const page = await open("/lesson");
    await soon(() => shown(page.locator("#verdict"))).toMatch(/craze/);
    const stress = async () => stressOf(await shown(page.locator("#caption5")));
    const start = await stress();
    const moves: [string, number, (now: number) => boolean][] = [
      ["#slide-silica", 72, (now) => now < start - 10],
      ["#slide-soda", 12, (now) => now > start + 10],
      ["#slide-boron", 10, (now) => now < start],
      ["#slide-body", 7.5, (now) => now < start - 20],
    ];
    for (const [id, value, holds] of moves) {
      await slide(page, id, value);
      await soon(async () => holds(await stress())).toBe(true);
      await page.getByRole("button", { name: "As it was" }).click();
      await soon(stress).toBe(start);
    }
    await slide(page, "#slide-thicknessMm", 0.1);
    await soon(() => shown(page.locator("#notes1"))).toMatch(/0\.10 mm/);
    await slide(page, "#slide-coolingCPerHour", 400);
    await soon(() => shown(page.locator("#caption3"))).toMatch(/400 °C an hour/);
  });

  it("chooses a glaze that fits and one that lifts", async () => {
    const page = await open("/lesson");
    await soon(() => shown(page.locator("#verdict"))).toMatch(/craze/);
    await page.getByRole("radio", { name: "Low Sun" }).check();
    await soon(() => shown(page.locator("h1"))).toMatch(/fit that red stoneware/);
    await page.getByRole("radio", { name: "Hoarfrost" }).check();
    await soon(() => shown(page.locator("h1"))).toMatch(/lift off that red stoneware/);
    await slide(page, "#t", 20);
    await soon(() => shown(page.locator("#say"))).toMatch(/flake|lift/);
    await shot(page, "lesson-hoarfrost");
  });

  it("projects at 1920, and stands on a phone without a sideways scroll", async () => {
    const wide = await open("/lesson", { viewport: { width: 1920, height: 1080 } });
    await soon(() => shown(wide.locator("#h3"))).toMatch(/\d+ °C/);
    await shot(wide, "lesson-projector");
    for (const width of [320, 390]) {
      const page = await open("/lesson", { viewport: { width, height: 800 } });
      await soon(() => shown(page.locator("#h3"))).toMatch(/\d+ °C/);
      expect([width, await overflow(page)]).toEqual([width, 0]);
      if (width === 390) await shot(page, "lesson-phone");
    }
  });
});
