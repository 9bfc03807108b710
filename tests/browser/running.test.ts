/** How far it runs: a panel of the Check page that follows bench and wall, on screens, by keys and on paper. */
import { writeFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { faultsOf, output, overflow, pages, shot, shown, soon, verdict } from "./support.ts";

const { open, service } = pages();
type Opened = Awaited<ReturnType<typeof open>>;

const answer = (page: Opened) => page.locator("#run-answer");
const sentence = (page: Opened) => shown(page.locator("#run-answer > .say"));

async function panel(page: Opened): Promise<void> {
  await verdict(page);
  await page.locator("#run > summary").click();
  await page.locator("#run-answer > .say").waitFor();
}

describe("the panel about running", () => {
  it("stays shut and asks nothing until it is wanted, and says then what the service says", async () => {
    const page = await open("/");
    const asked: string[] = [];
    page.on("request", (request) => {
      if (request.url().endsWith("/v1/running")) asked.push(request.postData() ?? "");
    });
    await verdict(page);
    expect(asked).toEqual([]);
    await panel(page);
    expect(asked.length).toBe(1);
    expect(JSON.parse(asked[0]!)).toMatchObject({
      firing: { peakC: 1240, holdMinutes: 0 },
      wall: { slopeDeg: 90, glazedMm: 100, clearanceMm: 3 },
    });
    const response = await fetch(`${service.url}/v1/running`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: asked[0],
    });
    const report = (await response.json()) as { headline: string; slows: { text: string }[]; bareBandMm: number };
    const told = (await shown(answer(page))).replaceAll("\u00a0", " ");
    for (const text of [report.headline, ...report.slows.map((one) => one.text)]) {
      expect(told).toContain(text.replaceAll("\u00a0", " "));
    }
    expect(told).toContain(`Leave ${report.bareBandMm} mm bare.`);
    expect(told).toMatch(/edge comes .* mm down, nine times in ten .* mm to .* mm/);
    expect(await page.locator("#run-picture desc").textContent()).toMatch(/9 in 10 between/);
    await shot(page, "check-running");
  });

  it("follows bench and wall: thicker runs further, level does not run, and the chance asks for a plate", async () => {
    const page = await open("/");
    await panel(page);
    const before = await sentence(page);
    await page.locator("#thickness").fill("0.9");
    await soon(() => sentence(page)).not.toBe(before);
    await soon(() => shown(answer(page))).toMatch(
      /Set it on a catch plate: .* in 20 such pots run across 3\smm of bare clay/,
    );
    await page.getByLabel("Soak at the peak").fill("45");
    await soon(() => shown(answer(page))).toContain("Half the soak");
    await page.getByLabel("Slope from level").fill("0");
    await soon(() => shown(answer(page))).toContain("No catch plate is needed");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("run-slope");
    // Kept on this device, open as it was left.
    await page.reload();
    await soon(() => shown(answer(page))).toContain("A wall at 0° from level");
    expect(await page.getByLabel("Soak at the peak").inputValue()).toBe("45");
  });

  it("tells of a second firing, and of a coat put on before it", async () => {
    const page = await open("/");
    await panel(page);
    expect(await page.getByLabel("New coat, fired").count()).toBe(0);
    await page.getByLabel("It will be fired again").check();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("run-again");
    await soon(() => shown(answer(page))).toMatch(/Fired again as it is/);
    await page.getByLabel("New coat, fired").fill("0,4");
    await soon(() => shown(answer(page))).toMatch(/With 0\.70\smm in all after the new coat/);
    await page.getByRole("radio", { name: "inch" }).check();
    expect(await page.getByLabel("New coat, fired").inputValue()).toBe("0.0157");
    await soon(() => shown(answer(page))).toMatch(/With 0\.028\sin in all after the new coat/);
    // Told aloud as it is shown.
    await soon(() => page.locator("#run-status").textContent()).toMatch(/0\.\d{3}.in/);
    expect(await page.locator("#run-part").textContent()).not.toMatch(/\d.mm\b/);
  });

  it("says at the field what cannot be, and lets the last answer stand", async () => {
    const page = await open("/");
    await panel(page);
    const before = await sentence(page);
    await page.getByLabel("Slope from level").fill("95");
    await page.getByLabel("Soak at the peak").focus();
    await soon(() => page.locator("#run-slope-note").textContent()).toBe(
      "The slope, in ° from level, is 95. It must be 90 or less.",
    );
    expect(await page.locator("#run-slope").getAttribute("aria-invalid")).toBe("true");
    expect(await sentence(page)).toBe(before);
    await page.getByLabel("Slope from level").fill("7..5");
    await page.getByLabel("Soak at the peak").focus();
    await page.getByRole("button", { name: "Use 7.5" }).click();
    await soon(() => shown(answer(page))).toContain("A wall at 7.5° from level");
    expect(await page.locator("#run-slope-note").count()).toBe(0);
  });

  it("says what is missing on the bench", async () => {
    const page = await open("/");
    await panel(page);
    await page.locator("#peak").fill("");
    await soon(() => shown(answer(page))).toContain("The top of the firing is still missing");
    await page.getByRole("radio", { name: "Expansion" }).check();
    await page.locator("#expansion").fill("7");
    await soon(() => shown(answer(page))).toContain("only the expansion is known");
    await page.getByRole("button", { name: "Start from nothing" }).click();
    await soon(() => shown(answer(page))).toContain("The glaze is still missing");
  });

  it("never shows an answer that came late", async () => {
    const page = await open("/");
    await panel(page);
    let held = 0;
    service.gate = async (request) => {
      if (!request.url.endsWith("/v1/running")) return undefined;
      if (!(await request.clone().text()).includes('"glazedMm":200')) return undefined;
      held++;
      await new Promise((done) => setTimeout(done, 1200));
      return undefined;
    };
    const height = page.getByLabel("Height of the glaze");
    await height.fill("200");
    await soon(() => held).toBe(1);
    await height.fill("300");
    await soon(() => shown(answer(page))).toContain("glazed 300 mm down");
    await page.waitForTimeout(1500);
    expect(await shown(answer(page))).toContain("glazed 300 mm down");
  });

  it("says that no answer came, and answers with the next change", async () => {
    const page = await open("/", { mayFail: true });
    await panel(page);
    service.gate = (request) => (request.url.endsWith("/v1/running") ? new Response("no", { status: 503 }) : undefined);
    await page.getByLabel("Soak at the peak").fill("10");
    await soon(() => page.locator("#run-status").textContent()).toMatch(/No answer about running/);
    expect(await answer(page).getAttribute("class")).toBe("waiting");
    service.gate = () => undefined;
    await page.getByLabel("Soak at the peak").fill("12");
    await soon(() => page.locator("#run-status").textContent()).toMatch(/runs about|hardly/);
    expect(await answer(page).getAttribute("class")).toBe("");
  });
});

describe("the panel about running, for everyone", () => {
  it.each([
    [320, "light"],
    [390, "dark"],
    [1280, "light"],
    [1280, "dark"],
  ] as const)("has no fault that axe can find at %i px, %s, and no sideways scroll", async (width, scheme) => {
    const page = await open("/", { viewport: { width, height: 900 }, colorScheme: scheme });
    await panel(page);
    await page.getByLabel("It will be fired again").check();
    await soon(() => shown(answer(page))).toMatch(/Fired again as it is/);
    expect(await faultsOf(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await page.locator("#run-part").screenshot({ path: output(`running-${width}-${scheme}.png`) });
  });

  it("opens and is filled in by keys alone", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#run > summary").focus();
    await page.keyboard.press("Enter");
    await page.locator("#run-answer > .say").waitFor();
    for (const id of ["run-slope", "run-glazed", "run-clearance", "run-soak", "run-again"]) {
      await page.keyboard.press("Tab");
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(id);
    }
    await page.keyboard.press("Space");
    await soon(() => shown(answer(page))).toMatch(/Fired again as it is/);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("run-coat");
  });

  it("takes a sheet of its own on paper where it stands open, and none where it is shut", async () => {
    const page = await open("/");
    const sheets = async () => {
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      await writeFile(output("check-running.pdf"), pdf);
      return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    };
    await verdict(page);
    expect(await sheets()).toBe(1);
    await panel(page);
    expect(await sheets()).toBe(2);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator("#run-slope").isVisible()).toBe(false);
    expect(await shown(answer(page))).toMatch(/A wall at 90° from level, glazed 100 mm down.*soaked 0\smin/);
  });
});
