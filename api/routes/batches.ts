/** What to weigh for a bucket of glaze. @module */
import { planBatch } from "../engine/batches/index.ts";
import { toSvg } from "../engine/rulers/index.ts";
import { within } from "../http/accept.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { BatchReport, BatchRequest } from "../schemas/batches.ts";
import { THAW_BUCKET } from "../schemas/larch-lane-sizes.ts";
import { SHEET_TYPES, SheetQuery, sheetAnswer, sheetContent } from "./sheet-answer.ts";
import { STAMP } from "./stamp.ts";

export function batchRoutes(api: Api): void {
  const shown = jsonAnswer(BatchReport, "What to weigh: in JSON, or as a sheet in SVG or PDF.");
  mount(
    api,
    {
      method: "post",
      path: "/v1/batches",
      operationId: "planBatch",
      tags: ["batches"],
      summary: "A batch sheet: weights, water, specific gravity",
      description:
        "Weights in order of weighing that add up to the hundredth of a gram, water for a specific gravity, what a bucket " +
        "whose gravity is off wants, what leaves in the kiln, and cautions for what is weighed. `accept` chooses JSON, " +
        "`image/svg+xml` for one sheet, or `application/pdf` for all.",
      request: { ...jsonRequest(BatchRequest, THAW_BUCKET), query: SheetQuery },
      responses: { 200: { ...shown, content: { ...shown.content, ...sheetContent } }, ...badJson },
      serves: SHEET_TYPES,
    },
    async (c) => {
      const request = await readJson(c, BatchRequest);
      const { sheets, ...report } = within("", () => planBatch(request));
      const printed = sheetAnswer(c, sheets, report.headline);
      if (printed) return printed;
      const drawn = sheets.map((sheet) => ({ widthMm: sheet.widthMm, heightMm: sheet.heightMm, svg: toSvg(sheet) }));
      return answer(c, BatchReport, { ...report, sheets: drawn, engine: STAMP });
    },
  );
}
