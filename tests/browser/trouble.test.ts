/** Errors at the field, a service that goes and comes back, answers that come too late. */
import { describe, expect, it } from "vitest";
import { overflow, pages, shot, shown, soon, verdict } from "./support.ts";

const { open, service } = pages();
const isFit = (request: Request) => request.method === "POST" && new URL(request.url).pathname === "/v1/fit";

describe("a field that needs a word", () => {
  it("says where, what was read and the likely fix, once it is left; the verdict stays", async () => {
    const page = await open("/");
    await verdict(page);
    const whiting = page.getByLabel("Weight of Whiting");
    await whiting.fill("17..0");
    await soon(() => page.locator("#left-out").textContent()).toMatch(/Row 3, whiting/);
    expect(await page.locator(".note.bad").count()).toBe(0);
    await page.keyboard.press("Tab");
    const note = page.locator("#row-2-parts-note");
    await soon(() => shown(note)).toMatch(/^Row 3, whiting: “17\.\.0” is not a number\. Did you mean 17\.0\?/);
    expect(await whiting.getAttribute("aria-invalid")).toBe("true");
    expect(await whiting.getAttribute("aria-describedby")).toContain("row-2-parts-note");
    expect(await verdict(page)).toMatch(/^Thaw /);
    await shot(page, "check-field-error");
    await page.getByRole("button", { name: "Use 17.0" }).click();
    await page.keyboard.press("Tab");
    await soon(() => page.locator(".note.bad").count()).toBe(0);
    await soon(() => page.locator("#left-out").count()).toBe(0);
  });

  it("shows the service's own words at the row it means, and judges the rest", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#row-2-material").fill("whitting");
    await page.keyboard.press("Tab");
    const note = page.locator("#row-2-material-note");
    await soon(() => shown(note)).toMatch(/^Row 3, whitting: .*Did you mean whiting\?/);
    expect(await verdict(page)).toMatch(/^Thaw /);
    await note.getByRole("button", { name: "Use whiting" }).click();
    await page.keyboard.press("Tab");
    await soon(() => note.count()).toBe(0);
    await page.getByLabel("Weight of Silica").fill("-3");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#row-1-parts-note"))).toMatch(/^Row 2, silica: .*-3/);
  });

  it("says that 62 was meant to be 6.2, at the clay", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#body-expansion").fill("62");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#body-expansion-note"))).toMatch(/6\.2/);
    await soon(() => verdict(page)).toBe("One thing needs a word first.");
    await page.locator("#body-expansion").fill("6,2");
    await soon(() => verdict(page)).toMatch(/^Thaw /);
  });

  it("tells bounds by the field's own name and in its own unit, not by the service's", async () => {
    const page = await open("/");
    await verdict(page);
    const amiss = async (field: string, text: string) => {
      await page.locator(`#${field}`).fill(text);
      await page.keyboard.press("Tab");
      await soon(() => page.locator(`#${field}-note`).count()).toBe(1);
      const said = await shown(page.locator(`#${field}-note`));
      await soon(() => shown(page.locator("#answer .because"))).toBe(said);
      return said;
    };
    expect(await amiss("wall", "500")).toBe("Wall: “500” does not go here. It must be 100 mm or less.");
    await page.locator("#wall").fill("6");
    await soon(() => verdict(page)).toMatch(/^Thaw /);
    await page.getByRole("radio", { name: "°F" }).check();
    await page.getByRole("radio", { name: "inch" }).check();
    // 100 mm / 25.4 = 3.937 in; 400 and 1700 °C are 752 and 3092 °F (arithmetic)
    expect(await amiss("wall", "12")).toBe("Wall: “12” does not go here. It must be 3.937 in or less.");
    await page.locator("#wall").fill("0.25");
    await soon(() => verdict(page)).toMatch(/^Thaw /);
    expect(await amiss("peak", "100")).toBe("100 °F is no firing. Give the peak in °F, between 752 and 3092.");
  });

  it("says in the sentence that a field it cannot read is left out", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#cooling").fill("slow");
    await page.locator("#body-plusMinus").fill("a bit");
    await page.keyboard.press("Tab");
    await soon(async () => (await page.locator("#left-out").allTextContents()).join(" ")).toBe(
      "Left out for now: Clay, Give or take; Firing, Cooling. The verdict uses the rest.",
    );
    await page.locator("#cooling").fill("100");
    await page.locator("#body-plusMinus").fill("0,3");
    await soon(() => page.locator("#left-out").count()).toBe(0);
  });

  it("keeps the keyboard at a field whose word goes while its fix has the focus", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#cooling").fill("12x");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#cooling-note"))).toMatch(/Use 12$/);
    await page.locator("#cooling").fill("100");
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Use 12");
    await soon(() => page.locator("#cooling-note").count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("cooling");
  });

  it("tells what it assumed at the field it assumed it for", async () => {
    const page = await open("/");
    await verdict(page);
    await page.locator("#body-from").fill("");
    await page.locator("#body-to").fill("");
    await page.keyboard.press("Tab");
    await soon(() => shown(page.locator("#form .note:not(.bad)").first())).toMatch(/500 °C/);
  });
});

describe("the line to the service", () => {
  it("goes: the last answer stays with its time; comes back: the answer follows", async () => {
    const page = await open("/", { mayFail: true });
    const before = await verdict(page);
    const room = (await page.locator("#answer").boundingBox())!.width;
    await service.stop();
    await page.getByLabel("Weight of Silica").fill("60");
    await soon(() => shown(page.locator("#state"))).toMatch(
      /No connection since \d\d:\d\d\. This is the answer from \d\d:\d\d/,
    );
    expect(await verdict(page)).toBe(before);
    // The answer that stands is only fainter: it stays where it is.
    expect(await overflow(page)).toBe(0);
    expect((await page.locator("#answer").boundingBox())!.width).toBe(room);
    await shot(page, "check-offline");
    await service.start();
    await soon(() => verdict(page)).not.toBe(before);
    await soon(() => shown(page.locator("#state"))).not.toMatch(/No connection/);
    expect(await page.getByLabel("Weight of Silica").inputValue()).toBe("60");
  });

  it("is not needed for the pages themselves after the first load", async () => {
    const page = await open("/", { mayFail: true });
    const before = await verdict(page);
    await page.evaluate(() => navigator.serviceWorker.ready.then((ready) => ready.active?.state));
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await page.context().setOffline(true);
    await page.reload();
    await soon(() => shown(page.locator("#answer h1"))).toBeTruthy();
    expect(await verdict(page)).toBe(before);
    await page.goto(`${service.url}/lesson`);
    expect(await shown(page.locator("h1"))).toContain("Why does");
    await page.context().setOffline(false);
  });

  it("breaks on the service's side: said as mine, and asked again by hand", async () => {
    const page = await open("/", { mayFail: true });
    await verdict(page);
    service.gate = (request) => {
      if (!isFit(request)) return undefined;
      const problem = { type: "about:blank", title: "Broken", status: 500, detail: "Broken.", requestId: "x" };
      return new Response(JSON.stringify(problem), {
        status: 500,
        headers: { "content-type": "application/problem+json" },
      });
    };
    await page.getByLabel("Weight of Silica").fill("40");
    await soon(() => shown(page.locator("#state"))).toMatch(/That check did not come back\.\s*Your recipe is safe/);
    service.gate = () => undefined;
    await page.getByRole("button", { name: "Try again" }).click();
    await soon(() => shown(page.locator("#state"))).toBe("");
  });

  it("is slow: an answer overtaken by a later question is never shown", async () => {
    const page = await open("/");
    await verdict(page);
    let held = 0;
    service.gate = async (request) => {
      if (!isFit(request)) return undefined;
      const text = await request.clone().text();
      if (text.includes('"parts":61')) {
        held++;
        await new Promise((later) => setTimeout(later, 1500));
      }
      return undefined;
    };
    const silica = page.getByLabel("Weight of Silica");
    await silica.fill("61");
    await soon(() => held).toBeGreaterThan(0);
    await page.waitForTimeout(300);
    await silica.fill("10");
    await soon(() => verdict(page)).toMatch(/almost surely craze/);
    const settled = await verdict(page);
    await page.waitForTimeout(1600);
    expect(await verdict(page)).toBe(settled);
  });

  it("is slow: after 0.4 s the page says so, and the last answer stands greyed", async () => {
    const page = await open("/");
    const before = await verdict(page);
    service.gate = async (request) => {
      if (isFit(request)) await new Promise((later) => setTimeout(later, 1500));
      return undefined;
    };
    await page.getByLabel("Weight of Silica").fill("60");
    await soon(() => shown(page.locator("#state"))).toMatch(/Working it out again/);
    expect(await verdict(page)).toBe(before);
    await soon(() => verdict(page)).not.toBe(before);
  });
});
