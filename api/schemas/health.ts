/** Whether the service is up. @module */
import { z } from "zod";

export const Health = z
  .strictObject({
    status: z.literal("ok").meta({ description: "ok while the service answers.", examples: ["ok"] }),
    version: z.string().meta({ description: "Version of the engine.", examples: ["0.1.0"] }),
    dataVersion: z.string().meta({ description: "Date of the data.", examples: ["2026-11-25"] }),
  })
  .meta({ id: "Health", description: "The service is up, and which engine it runs." });

export const Ready = z
  .strictObject({
    status: z.literal("ready").meta({ description: "ready while new work is taken.", examples: ["ready"] }),
    version: z.string().meta({ description: "Version of the engine.", examples: ["0.1.0"] }),
    dataVersion: z.string().meta({ description: "Date of the data.", examples: ["2026-11-25"] }),
  })
  .meta({ id: "Ready", description: "The service takes work, and which engine it runs." });
