/** How the tests of expansion ask. @module */
import { expect } from "vitest";
import type { z } from "zod";
import { ExpansionReport } from "../../api/schemas/expansion.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { post } from "./support.ts";

export type Report = z.output<typeof ExpansionReport>;

/** Asks about Thaw, or another glaze, and reads the answer by its schema. */
export async function ask(question: object): Promise<Report> {
  const response = await post("/v1/expansion", { glaze: THAW, ...question });
  expect(response.status).toBe(200);
  return ExpansionReport.parse(await response.json());
}

/** A glaze by its oxides in mole per cent. */
export const oxides = (amounts: Record<string, number>) => ({ oxides: { basis: "molePercent" as const, amounts } });
