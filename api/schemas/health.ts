/** Whether the service is up. @module */
import { z } from "zod";
import { words } from "./figures.ts";

const running = {
  version: words("Version of the engine.", "0.1.0"),
  dataVersion: words("Date of the data.", "2026-11-25"),
};

export const Health = z
  .strictObject({
    status: z.literal("ok").meta({ description: "ok while the service answers.", examples: ["ok"] }),
    ...running,
  })
  .meta({ id: "Health", description: "The service is up, and which engine it runs." });

export const Ready = z
  .strictObject({
    status: z.literal("ready").meta({ description: "ready while new work is taken.", examples: ["ready"] }),
    ...running,
  })
  .meta({ id: "Ready", description: "The service takes work, and which engine it runs." });
