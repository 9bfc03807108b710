/** Mixing on the Check page: tiles that come one by one, a picture to tap, what to weigh, a table, labels, a trial. */
import { readFile } from "node:fs/promises";
import type { Download, Request } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faultsOf, output, overflow, pages, shown, soon, verdict } from "./support.ts";

const { open, service } = pages();
type Opened = Awaited<ReturnType<typeof open>>;

interface Tile {
  label: string;
  of: number;
  verdict: string;
  shares: number[];
  recipe: { material: string; parts: number }[];
  probabilities: { sound: number };
}

const told = (page: Opened) => shown(page.locator("#blend-status"));

async function judge(page: Opened, expected = /should hold\./): Promise<void> {
  await page.getByRole("button", { name: "Judge the mixtures" }).click();
  await expect.poll(() => told(page), { timeout: 20_000 }).toMatch(expected);
}

const panelShot = (page: Opened, name: string) =>
  page.locator("section", { has: page.locator("#blend-title") }).screenshot({ path: output(`${name}.png`) });

/** The question for all tiles; the one before it asks for what goes for any of them. */
const forAll = (request: Request) => request.url().endsWith("/v1/blends") && !request.postData()!.includes('"count"');

/** Asks the service itself what the page asks of it, so that the page cannot tell another answer. */
async function answered(page: Opened, accept: string): Promise<string> {
  const request = await page.waitForRequest(forAll, { timeout: 20_000 });
  const headers = { "content-type": "application/json", accept };
  return (await fetch(request.url(), { method: "POST", headers, body: request.postData()! })).text();
}

async function textOf(download: Download): Promise<string> {
  const path = output(download.suggestedFilename());
  await download.saveAs(path);
  return readFile(path, "utf8");
}

describe("mixing glazes in steps", () => {
  it("judges a line, draws it, reads a tile out and puts one in as a trial", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("button", { name: "Take C out" }).click();
    await soon(() => page.locator(".cmp tbody tr").count()).toBe(2);
    expect(await shown(page.locator("#blend-makes"))).toBe("That makes 11 tiles.");
    await page.getByLabel("Other end").selectOption({ label: "Hoarfrost, of Larch Lane" });
    const answer = answered(page, "application/json");
    await judge(page);
    const tiles = (JSON.parse(await answer) as { points: Tile[] }).points;
    expect(tiles).toHaveLength(11);
    const holding = tiles.filter((tile) => tile.verdict === "sound").length;
    expect(await told(page)).toMatch(new RegExp(`^(${holding}|None|One|Two|Three|Four|Five|Six|Seven) of 11 mixtures`));
    const picture = page.locator("#blend-answer svg[role=img]");
    const labels = await picture.locator("text").allTextContents();
    for (const { label } of tiles) expect(labels).toContain(label);
    await page.getByLabel("Read a tile").selectOption("3");
    const third = page.locator("#blend-tile");
    expect(await shown(third)).toMatch(/^Tile 3: .* 80 % Thaw and 20 % Hoarfrost\. It stays sound .* in 20\./);
    expect(await shown(third)).toMatch(/Stress [+−]?\d+ MPa, likely .* Expansion \d\.\d\d ×10⁻⁶\/K/);
    // A tap reads another one: the row of tile 9.
    await picture.locator('text[font-weight="700"]', { hasText: /^9$/ }).click();
    await soon(() => shown(third)).toMatch(/^Tile 9: /);
    expect(await page.getByLabel("Read a tile").inputValue()).toBe("9");
    await panelShot(page, "check-blend-line");
    await third.getByRole("button", { name: "Put it in as a trial" }).click();
    await soon(() => told(page)).toBe("Tile 9 is in as trial C, side by side with the others.");
    await page.getByRole("button", { name: "Work on C" }).click();
    const weights = () =>
      page
        .locator("[id^=row-][id$=-parts]")
        .evaluateAll((all) => all.map((one) => Number((one as HTMLInputElement).value)));
    await soon(weights).toEqual(tiles[8]!.recipe.map(({ parts }) => parts));
    // Back from working on it, and back from putting it in.
    await page.locator("#undo").click();
    await page.locator("#undo").click();
    await soon(() => page.locator(".cmp tbody tr").count()).toBe(2);
  });

  it("maps a triangle, says what to weigh, and saves the table that the service gives", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("radio", { name: "Triangle" }).check();
    expect(await shown(page.locator("#blend-makes"))).toBe("That makes 21 tiles.");
    await page.getByLabel("Dry glaze for a tile").fill("50");
    const table = answered(page, "text/csv");
    await judge(page);
    const picture = page.locator("#blend-answer svg[role=img]");
    // Twenty-one rings, and those of the tally.
    expect(await picture.locator("use").count()).toBeGreaterThan(21);
    const { width } = (await picture.boundingBox())!;
    await picture.click({ position: { x: width / 2, y: 48 } });
    await soon(() => shown(page.locator("#blend-tile"))).toMatch(/^Tile A1: .* alone\./);
    await page.locator("summary", { hasText: "What to weigh" }).click();
    const rows = page.locator(".weigh tbody tr");
    expect(await rows.count()).toBe(21);
    // Corner alone: all 50 g of it; the second tile is a step away: 40 g and 10 g (derived).
    expect(await shown(rows.nth(0))).toMatch(/^A1 50\.0 g Thaw /);
    expect(await shown(rows.nth(1))).toMatch(/^B\d 40\.0 g Thaw, 10\.0 g /);
    expect(await rows.nth(1).locator("b").count()).toBe(2);
    // A third of 21 tiles of 50 g from each corner (derived, by symmetry): 350 g.
    const heaps = await page.locator("#blend-answer details .mind > li > b").allTextContents();
    expect(heaps).toHaveLength(3);
    for (const heap of heaps) expect(heap.replace(/\s/g, " ")).toMatch(/, 350\.0 g$/);
    // Another weight for a tile needs no other answer.
    await page.getByLabel("Dry glaze for a tile").fill("25,5");
    expect(await shown(rows.nth(1))).toMatch(/^B\d 20\.4 g Thaw, 5\.1 g /);
    expect(await page.locator("#blend-answer .stale").isVisible()).toBe(false);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as a table" }).click(),
    ]);
    expect(await textOf(download)).toBe(await table);
    await panelShot(page, "check-blend-triangle");
  });

  it("prints a sheet and a label for every tile, and nothing of the page around", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("radio", { name: "Square" }).check();
    await page.getByLabel("Steps across").fill("2");
    await page.getByLabel("Steps down").fill("3");
    await judge(page);
    await page.evaluate(() => {
      window.print = () => {};
    });
    await page.getByRole("button", { name: "Print sheet and labels" }).click();
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".labels > div").count()).toBe(12);
    expect(await shown(page.locator(".labels > div").first())).toMatch(
      /^A1 .* alone .*, sound .* in 20 Stress .* MPa.* Fired _+ to _+ °C Seen:$/,
    );
    expect(await page.locator("#main").isVisible()).toBe(false);
    const label = (await page.locator(".labels > div").first().boundingBox())!;
    // 60 by 38 mm at 96 px an inch (derived).
    expect(label.width).toBeCloseTo((60 / 25.4) * 96, 0);
    expect(label.height).toBeCloseTo((38 / 25.4) * 96, 0);
    await page.pdf({ path: output("check-blend.pdf"), preferCSSPageSize: true, printBackground: true });
    await page.emulateMedia({ media: null });
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    expect(await page.locator(".blend-paper").count()).toBe(0);
    expect(await page.locator("#main").isVisible()).toBe(true);
  });

  it("shows how far it is, stops when told, and goes on where it stopped", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByRole("radio", { name: "More" }).check();
    for (let corners = 4; corners < 12; corners++) await page.getByRole("button", { name: "Add a corner" }).click();
    // Twelve corners in three steps: C(14, 11) = 364 (derived).
    expect(await shown(page.locator("#blend-makes"))).toBe("That makes 364 tiles.");
    await page.getByLabel("Steps along an edge").fill("5");
    expect(await shown(page.locator("#blend-makes"))).toBe("That makes 4368 tiles.");
    await page.getByRole("button", { name: "Judge the mixtures" }).click();
    const bar = page.getByRole("progressbar", { name: "Tiles judged so far" });
    await soon(() => bar.evaluate((one: HTMLProgressElement) => one.max === 4368 && one.value > 0)).toBe(true);
    await page.getByRole("button", { name: "Stop here" }).click();
    await soon(() => told(page)).toMatch(/^Stopped after \d+ of 4368 tiles\. They are kept; go on when you like\.$/);
    const done = Number(/after (\d+)/.exec(await told(page))![1]);
    const asked = page.waitForRequest(forAll);
    await page.getByRole("button", { name: `Go on with tile ${done + 1} of 4368` }).click();
    expect(((await asked).postDataJSON() as { from: number }).from).toBe(done);
    await expect.poll(() => told(page), { timeout: 40_000 }).toMatch(/^[\w]+ of 4368 mixtures should hold\./);
    expect(await bar.isVisible()).toBe(false);
    const picture = page.locator("#blend-answer svg[role=img]");
    const words = (await picture.locator("text").allTextContents()).join(" ");
    expect(words).toContain("Likeliest to stay sound");
    expect(await shown(page.locator("#blend-answer"))).toContain("Read a tile, of the 400 likeliest to hold");
    expect(await shown(page.locator("#blend-answer"))).toMatch(/lithium/);
    await panelShot(page, "check-blend-many");
  }, 60_000);

  it("says at the field what is amiss, and takes a fix", async () => {
    const page = await open("/");
    await verdict(page);
    await page.getByLabel("Steps along an edge").fill("1..0");
    await judge(page, /One field needs a word/);
    const note = page.locator("#blend-steps-note");
    expect(await shown(note)).toMatch(/“1\.\.0” is not a number\. Did you mean 1\.0\?/);
    await note.getByRole("button", { name: "Use 1.0" }).click();
    expect(await page.getByLabel("Steps along an edge").inputValue()).toBe("1.0");
    await page.getByRole("radio", { name: "More" }).check();
    await page.getByLabel("Steps along an edge").fill("90");
    await judge(page, /One field needs a word/);
    expect(await shown(note)).toMatch(
      /4 corners in 90 steps make 129766 points; I answer 20000 at most\. Take at most \d+ steps/,
    );
    await page.getByLabel("Steps along an edge").fill("2");
    await page.getByLabel("Corner B").selectOption({ index: 0 });
    await judge(page, /One field needs a word/);
    expect(await shown(page.locator("#blend-corner-1-note"))).toMatch(/Thaw stands at another corner already/);
    await page.getByRole("radio", { name: "Line" }).check();
    await judge(page);
    expect(await page.locator("#blend-answer .stale").isVisible()).toBe(false);
    await page.getByLabel("Steps along an edge").fill("4");
    expect(await shown(page.locator("#blend-answer .stale"))).toMatch(/^What you put in has changed since/);
  });

  it("keeps the tiles that came when the line breaks, and what was typed for the next visit", async () => {
    const page = await open("/", { mayFail: true });
    await verdict(page);
    await page.getByLabel("Steps along an edge").fill("6");
    service.gate = async (request) => {
      if (request.headers.get("accept") !== "application/x-ndjson") return undefined;
      service.gate = () => undefined;
      const whole = await (await fetch(request.url, request)).text();
      return new Response(`${whole.split("\n").slice(0, 3).join("\n")}\n`, {
        headers: { "content-type": "application/x-ndjson" },
      });
    };
    await judge(page, /3 of 7 tiles came and are kept\./);
    await page.getByRole("button", { name: "Go on with tile 4 of 7" }).click();
    await soon(() => told(page)).toMatch(/of 7 mixtures should hold/);
    await page.reload();
    await verdict(page);
    expect(await page.getByLabel("Steps along an edge").inputValue()).toBe("6");
  });

  it.each([
    [320, "light"],
    [320, "dark"],
    [1280, "light"],
    [1280, "dark"],
  ] as const)("has no fault that axe can find at %i px, %s, by keyboard alone", async (width, scheme) => {
    const page = await open("/", { viewport: { width, height: 900 }, colorScheme: scheme });
    await verdict(page);
    await page.locator("#blend-kind-line").focus();
    await page.keyboard.press("ArrowRight");
    expect(await page.locator("#blend-kind-triangle").isChecked()).toBe(true);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("blend-kind-triangle");
    await page.locator("#blend-steps").focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => told(page), { timeout: 20_000 }).toMatch(/should hold\./);
    await page.locator("#blend-choose").focus();
    await page.keyboard.press("ArrowDown");
    await page.locator("#blend-answer summary").press("Enter");
    expect(await page.locator(".weigh").isVisible()).toBe(true);
    expect(await overflow(page)).toBe(0);
    expect(await faultsOf(page)).toEqual([]);
    await panelShot(page, `check-blend-${width}-${scheme}`);
  });
});
