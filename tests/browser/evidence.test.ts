/** Tiles: what each did, what the glaze must be then, and what to fire next. */
import { describe, expect, it } from "vitest";
import { faultsOf, overflow, pages, shot, shown, soon, verdict } from "./support.ts";

const { open, service } = pages();
type Opened = Awaited<ReturnType<typeof open>>;

const tile = (page: Opened, n: number) => page.getByRole("group", { name: `Tile ${n}`, exact: true });
const says = (page: Opened) => expect.poll(() => shown(page.locator("#tiles-status")), { timeout: 20_000 });
const ask = (page: Opened) => page.getByRole("button", { name: "What do the tiles say?" }).click();

/** What the page asked and was answered, so that the page cannot tell another. */
async function exchange(page: Opened) {
  const response = await page.waitForResponse((one) => one.url().endsWith("/v1/evidence"), { timeout: 20_000 });
  return {
    asked: JSON.parse(response.request().postData()!) as {
      glaze?: unknown;
      tiles: { body: { class?: string }; thicknessMm?: number; seen: { kind: string; [figure: string]: unknown }[] }[];
    },
    told: (await response.json()) as {
      headline: string;
      glaze: { expansion: { value: number; plusMinus: number } };
      next: { text: string }[];
    },
  };
}

describe("I fired it", () => {
  it("learns from two tiles of a bought jar, uses that as a trial and names the next tile", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("radio", { name: "Nothing, a bought jar" }).check();
    await page.getByRole("button", { name: "Add another tile" }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("tile-1-clay");
    await tile(page, 2).getByLabel("On which clay").selectOption({ label: "Studio porcelain" });
    await tile(page, 2).getByLabel("Coat when fired").fill("0,4");
    await tile(page, 2).getByLabel("What it did").selectOption({ label: "Crazed within months" });
    await tile(page, 2).getByLabel("Seen after").fill("60");
    const both = exchange(page);
    await ask(page);
    const { asked, told } = await both;
    expect(asked.glaze).toBeUndefined();
    expect(asked.tiles.map(({ seen, thicknessMm }) => [thicknessMm, seen])).toEqual([
      [0.3, [{ kind: "not-crazed", afterDays: 90 }, { kind: "not-shivered" }]],
      [0.4, [{ kind: "crazed", byDays: 60, soundAtDays: 7 }]],
    ]);
    expect(asked.tiles[1]!.body).toEqual({ class: "studio-porcelain" });
    await says(page).toBe(told.headline.replace(/\s+/g, " "));
    const answer = page.locator("#tiles-answer");
    expect(await shown(answer)).toContain(told.next[0]!.text.replace(/\s+/g, " "));
    await answer.locator("summary").click();
    expect(await answer.locator("li").count()).toBe(2);
    await shot(page, "check-evidence");
    await page.getByRole("button", { name: "Use this expansion as a trial" }).click();
    await says(page).toMatch(/trial D, known by its expansion/);
    await page.getByRole("button", { name: "Work on D" }).click();
    await soon(() => verdict(page)).toMatch(/^Thaw, by its tiles/);
    expect(Number(await page.locator("#expansion").inputValue())).toBe(told.glaze.expansion.value);
    expect(Number(await page.locator("#plusMinus").inputValue())).toBeCloseTo(told.glaze.expansion.plusMinus, 3);
    // Its own tiles would count twice if it were what is known beforehand.
    await page.getByRole("radio", { name: "What is on the bench" }).check();
    await ask(page);
    await says(page).toMatch(/count twice/);
  });

  it.each([
    ["Crazed at once", null, [{ kind: "crazed", byDays: 0 }]],
    ["Crazed within days", "5", [{ kind: "crazed", byDays: 5, soundAtDays: 0 }]],
    ["Shivered", null, [{ kind: "shivered" }]],
    ["Cracked in a quench", "100", [{ kind: "quench", differenceK: 100, cracked: true }]],
    ["Held in a quench", "150", [{ kind: "quench", differenceK: 150, cracked: false }]],
  ] as const)("tells the service of a tile that did this: %s", async (fate, figure, seen) => {
    const page = await open("/");
    await verdict(page);
    await tile(page, 1).getByLabel("What it did").selectOption({ label: fate });
    const field = page.locator("#tile-0-number");
    if (figure === null) expect(await field.count()).toBe(0);
    else await field.fill(figure);
    const both = exchange(page);
    await ask(page);
    const { asked, told } = await both;
    expect(asked.tiles[0]!.seen).toEqual(seen);
    expect(asked.glaze).toHaveProperty("recipe");
    await says(page).toBe(told.headline.replace(/\s+/g, " "));
  });

  it("says which tile is at odds with the rest", async () => {
    const page = await open("/");
    await verdict(page);
    await tile(page, 1).getByLabel("What it did").selectOption({ label: "Crazed at once" });
    await page.getByRole("button", { name: "Add another tile" }).click();
    await tile(page, 2).getByLabel("What it did").selectOption({ label: "Shivered" });
    await ask(page);
    await says(page).toMatch(/×10⁻⁶\/K from 20 to 300 °C/);
    expect(await shown(page.locator("#tiles-answer"))).toMatch(/On your clay .*Tile \d is at odds with the rest\. \S/);
    await page.getByRole("button", { name: "Take tile 2 out" }).click();
    expect(await tile(page, 2).count()).toBe(0);
  });

  it("tells of a bad figure at its field, in its own words and the service's, and keeps the tiles", async () => {
    const page = await open("/");
    await verdict(page);
    const days = page.locator("#tile-0-number");
    await days.fill("9..0");
    await ask(page);
    await says(page).toMatch(/One field needs a word/);
    const note = page.locator("#tile-0-number-note");
    expect(await shown(note)).toMatch(/^Tile 1, Last looked after: “9\.\.0” is not a number\. Did you mean 9\.0\?/);
    await note.getByRole("button", { name: "Use 9.0" }).click();
    expect(await days.inputValue()).toBe("9.0");
    await page.locator("#tile-0-coat").fill("30");
    await ask(page);
    await soon(() => shown(page.locator("#tile-0-coat-note"))).toMatch(/30/);
    expect(await page.locator("#tile-0-coat").getAttribute("aria-invalid")).toBe("true");
    await page.locator("#tile-0-coat").fill("0.5");
    await page.reload();
    await verdict(page);
    expect(await page.locator("#tile-0-coat").inputValue()).toBe("0.5");
    await page.getByRole("radio", { name: "inch" }).check();
    await soon(() => page.locator("#tile-0-coat").inputValue()).toBe("0.0197");
  });

  it("works by keyboard on a phone, has no fault that axe can find, and says when the line is gone", async () => {
    const page = await open("/", { viewport: { width: 320, height: 700 }, mayFail: true });
    await verdict(page);
    await page.locator("#tile-0-number").focus();
    await page.keyboard.press("Enter");
    await says(page).toMatch(/×10⁻⁶\/K from 20 to 300 °C/);
    await tile(page, 1).getByLabel("What it did").selectOption({ label: "Shivered" });
    await soon(() => shown(page.locator("#tiles-answer"))).toMatch(/^What you put in has changed since/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("tile-0-fate");
    expect(await overflow(page)).toBe(0);
    expect(await faultsOf(page)).toEqual([]);
    await shot(page, "check-evidence-320");
    await service.stop();
    await ask(page);
    await says(page).toMatch(/^No connection/);
    await service.start();
  });
});
