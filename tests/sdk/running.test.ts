/** `client.running`, in process. */
import { describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { CLOUDBURST_OVER_THAW } from "../../api/schemas/larch-lane-running.ts";
import { Ringtrue, UnprocessableError } from "../../sdk/src/index.ts";

const client = new Ringtrue({ fetch: (url, init) => app.request(url, init) });

describe("client.running.estimate", () => {
  it("gives the report, typed", async () => {
    const report = await client.running.estimate(CLOUDBURST_OVER_THAW);
    const lows: number[] = report.slows.map(({ run }) => run.low);
    expect(lows.length).toBeGreaterThan(2);
    expect(report.layers?.mixingLength.unit).toBe("mm");
  });

  it("draws the picture asked for", async () => {
    const svg = await client.running.picture(CLOUDBURST_OVER_THAW, { theme: "dark", width: 720, standalone: false });
    expect(svg).toMatch(/^<svg [^>]*viewBox="0 0 720 /);
  });

  it("names the field that cannot be", async () => {
    const asked = client.running.estimate({ ...CLOUDBURST_OVER_THAW, firing: { cone: "66" } });
    const error = await asked.catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(UnprocessableError);
    expect((error as UnprocessableError).issues[0]).toMatchObject({ pointer: "/firing/cone" });
  });
});
