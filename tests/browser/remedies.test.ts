/** What would make it fit: asked, told in sentences, put on the bench, and honest when nothing reaches. */
import { describe, expect, it } from "vitest";
import { faultsOf, output, overflow, pages, shown, soon, verdict } from "./support.ts";

const { open, service } = pages();
type Opened = Awaited<ReturnType<typeof open>>;

async function find(page: Opened, expected: RegExp): Promise<void> {
  await page.getByRole("button", { name: "Find what would make it fit" }).click();
  await expect.poll(() => shown(page.locator("#remedies-status")), { timeout: 20_000 }).toMatch(expected);
}

/** The service's own answer to what the page asked, so that the page cannot tell another. */
async function answered(page: Opened) {
  const response = await page.waitForResponse((one) => one.url().endsWith("/v1/remedies"), { timeout: 20_000 });
  return (await response.json()) as {
    before: { probabilities: { sound: number } };
    remedies: {
      reaches: boolean;
      kind: string;
      recipe: { lines: { name: string; before: number; after: number; change: number }[] } | null;
    }[];
  };
}

describe("what would make it fit", () => {
  it("says it in a sentence, shows each way before and after, and puts one in as a trial", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("button", { name: "Take C out" }).click();
    await soon(() => page.locator(".cmp tbody tr").count()).toBe(2);
    const answer = answered(page);
    await find(page, /^As it is, Thaw stays sound about \d+ in 20\. .*bring/);
    const { before, remedies } = await answer;
    expect(await shown(page.locator("#remedies-status"))).toContain(
      `about ${Math.round(before.probabilities.sound * 20)} in 20.`,
    );
    const reaching = remedies.filter(({ reaches }) => reaches);
    expect(await page.locator("#remedies-list > .ways > li").count()).toBe(reaching.length);
    const first = page.locator("#remedies-list > .ways > li").first();
    expect(await shown(page.locator("#remedies-list"))).toMatch(/^Now: .*sound about \d+ in 20; stress [+−]\d+ MPa/);
    expect(await shown(first)).toMatch(/Then: .*sound about \d+ in 20; stress [+−]\d+ MPa/);
    const moves = await first.locator(".moves tbody tr").allInnerTexts();
    const changed = reaching[0]!.recipe!.lines.filter(({ change }) => change !== 0);
    expect(moves.length - changed.length).toBeLessThanOrEqual(1);
    changed.forEach(({ name, before: was, after }, i) => {
      expect(moves[i]!.split("\t").slice(0, 3)).toEqual([name, String(was), String(after)]);
    });
    expect(await shown(first)).toMatch(/What it may cost/);
    await page.locator("#remedies-list summary").click();
    expect(await page.locator("#remedies-list .ways > li").count()).toBe(remedies.length);
    await first.getByRole("button", { name: /Put it in as a trial/ }).click();
    await soon(() => shown(page.locator("#remedies-status"))).toMatch(/trial C/);
    await soon(() => shown(page.locator(".cmp tbody tr").nth(2))).toMatch(/Thaw, least change.*Should hold/);
    await page.getByRole("button", { name: "Work on C" }).click();
    await soon(() => verdict(page)).toMatch(/should hold/);
    const weights = await page
      .locator("[id^=row-][id$=-parts]")
      .evaluateAll((all) => all.map((one) => Number((one as HTMLInputElement).value)));
    expect(weights).toEqual(reaching[0]!.recipe!.lines.map(({ after }) => after).filter((parts) => parts > 0));
    await soon(() => shown(page.locator("#remedies-list"))).toMatch(/^What you put in has changed since/);
  });

  it("says which limit blocks where nothing reaches", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByLabel("Should stay sound").selectOption({ label: "19 in 20" });
    await find(
      page,
      /^As it is, Thaw stays sound about 2 in 20\. Nothing within these limits brings it to 19 in 20.*What stands in the way: \S/,
    );
    expect(await page.locator("#remedies-list > details").evaluate((one: HTMLDetailsElement) => one.open)).toBe(true);
    expect(await shown(page.locator("#panels"))).not.toMatch(/melt\.|undefined|NaN|\{/);
  });

  it("puts another clay, a slower cooling or a thinner coat where they belong, and takes them back", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("button", { name: "Take C out" }).click();
    await find(page, /^As it is, Thaw/);
    await page.locator("#remedies-list > details").evaluate((one: HTMLDetailsElement) => {
      one.open = true;
    });
    await page.getByRole("button", { name: /^Put it in as a trial: a thinner coat/ }).click();
    await page.getByRole("button", { name: "Work on C" }).click();
    await soon(() => page.locator("#thickness").inputValue()).not.toBe("0.3");
    expect(Number(await page.locator("#thickness").inputValue())).toBeLessThan(0.3);
    const cooling = page.locator("#remedies-list li", { hasText: "where the glaze sets" });
    expect(await shown(cooling)).toMatch(/between \d+ and \d+ °C.*dunts there is not calculated/);
    await page.getByRole("button", { name: /^Cool all trials so/ }).click();
    expect(Number(await page.locator("input#cooling").inputValue())).toBeLessThan(100);
    await soon(() => shown(page.locator("#remedies-status"))).toMatch(
      /now cool at \d+ °C an hour, the rate that counts from \d+ °C to \d+ °C; elsewhere cool as you do\. Undo/,
    );
    await page.getByRole("button", { name: /^Use this clay for all trials/ }).click();
    await soon(() => page.locator("#body-class").inputValue()).not.toBe("red-stoneware");
    await soon(() => shown(page.locator("#remedies-status"))).toMatch(/Undo brings yours back/);
    await page.locator("#undo").click();
    await soon(() => page.locator("#body-class").inputValue()).toBe("red-stoneware");
    expect(await page.locator("#body-expansion").inputValue()).toBe("6.2");
  });

  it("tells of a misspelt material at its field, and takes the fix", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByLabel("Materials I don’t have, with commas").fill("talc, spodumeen");
    await find(page, /One field needs a word/);
    const note = page.locator("#remedies-without-note");
    expect(await shown(note)).toMatch(/spodumeen/);
    await note.getByRole("button", { name: "Use spodumene" }).click();
    await expect
      .poll(() => shown(page.locator("#remedies-status")), { timeout: 20_000 })
      .toMatch(/^As it is, Thaw stays sound/);
    expect(await page.getByLabel("Materials I don’t have, with commas").inputValue()).toBe("talc, spodumene");
    expect(await shown(page.locator("#remedies-list"))).not.toMatch(/talc|spodumene/);
  });

  it("shows that it is at work where an answer takes longer than a second, and nothing after it", async () => {
    const page = await open("/");
    await verdict(page);
    let go = () => {};
    const held = new Promise<void>((resolve) => {
      go = resolve;
    });
    service.gate = async (request) => {
      if (request.url.endsWith("/v1/remedies")) await held;
      return undefined;
    };
    const bar = page.getByRole("progressbar", { name: "Working it out …" });
    await page.getByRole("button", { name: "Find what would make it fit" }).click();
    expect(await shown(page.locator("#remedies-status"))).toBe("Working it out …");
    expect(await bar.count()).toBe(0);
    await bar.waitFor();
    await soon(() => shown(page.locator(".waiting"))).toMatch(/^[12] s so far$/);
    go();
    await expect.poll(() => shown(page.locator("#remedies-status")), { timeout: 20_000 }).toMatch(/^As it is, Thaw/);
    expect(await bar.count()).toBe(0);
  });

  it("speaks the reader's units in what stands in the way and in the cooling", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("radio", { name: "°F" }).check();
    await page.getByRole("radio", { name: "inch" }).check();
    await page.getByLabel("Should stay sound").selectOption({ label: "19 in 20" });
    await find(page, /^As it is, Thaw/);
    expect(await page.locator("#remedies-list > details").evaluate((one: HTMLDetailsElement) => one.open)).toBe(true);
    const all = `${await shown(page.locator("#remedies-status"))} ${await shown(page.locator("#remedies-list"))}`;
    expect(all).toMatch(/Cool at 18 °F an hour instead of 180 °F an hour between \d{4} and \d{4} °F/);
    expect(all).not.toMatch(/\d °C|\d mm/);
  });

  it.each([
    { width: 1280, scheme: "light" },
    { width: 1280, scheme: "dark" },
    { width: 320, scheme: "light" },
    { width: 320, scheme: "dark" },
  ] as const)("holds its shape at $width px, $scheme", async ({ width, scheme }) => {
    const page = await open("/", { viewport: { width, height: 900 }, colorScheme: scheme });
    await verdict(page);
    await find(page, /^As it is, Thaw/);
    await page.locator("#remedies-list > details").evaluate((one: HTMLDetailsElement) => {
      one.open = true;
    });
    expect(await overflow(page)).toBe(0);
    expect(await faultsOf(page)).toEqual([]);
    const panel = page.locator("section.panel", { has: page.locator("#remedies-title") });
    await panel.screenshot({ path: output(`check-remedies-${width}-${scheme}.png`) });
  });

  it("keeps to four trials, says when the line is gone, and works by keyboard on a phone", async () => {
    const page = await open("/", { viewport: { width: 320, height: 700 }, mayFail: true });
    await verdict(page);
    await page.getByRole("button", { name: "Try another change" }).click();
    await soon(() => page.locator(".cmp tbody tr").count()).toBe(4);
    await page.locator("#remedies-without").focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => shown(page.locator("#remedies-status")), { timeout: 20_000 }).toMatch(/^As it is/);
    expect(await overflow(page)).toBe(0);
    for (const one of await page.locator("#panels details").all())
      await one.evaluate((details: HTMLDetailsElement) => (details.open = true));
    expect(await faultsOf(page)).toEqual([]);
    await page
      .getByRole("button", { name: /Put it in as a trial/ })
      .first()
      .press("Enter");
    await soon(() => shown(page.locator("#remedies-status"))).toMatch(/^Four glazes/);
    expect(await page.locator(".cmp tbody tr").count()).toBe(4);
    await service.stop();
    await page.locator("#remedies-ask").click();
    await soon(() => shown(page.locator("#remedies-status"))).toMatch(/^No connection/);
    await service.start();
  });
});
