/** Things to print and throw by. @module */
import { CHECK_BAR_MM, drawRuler, toSvg } from "../engine/rulers/index.ts";
import { within } from "../http/accept.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { SHRINK_RULER } from "../schemas/larch-lane-sizes.ts";
import { RulerReport, RulerRequest } from "../schemas/rulers.ts";
import { SHEET_TYPES, SheetQuery, sheetAnswer, sheetContent } from "./sheet-answer.ts";
import { STAMP } from "./stamp.ts";

export function rulerRoutes(api: Api): void {
  const shown = jsonAnswer(RulerReport, "Sheets to print at true scale: in JSON, one as SVG, or all as PDF.");
  mount(
    api,
    {
      method: "post",
      path: "/v1/rulers",
      operationId: "drawRuler",
      tags: ["rulers"],
      summary: "A shrink ruler, a rib or gauges to print at true scale",
      description:
        "A ruler whose printed divisions are fired ones, rib and profile templates from points, gauges for lid and gallery; on " +
        "A4 or Letter, over several sheets where one is too small, each with a check bar of 100 mm. `accept` chooses JSON with " +
        "every sheet in it, `image/svg+xml` for one sheet, or `application/pdf` for all.",
      request: { ...jsonRequest(RulerRequest, SHRINK_RULER), query: SheetQuery },
      responses: { 200: { ...shown, content: { ...shown.content, ...sheetContent } }, ...badJson },
      serves: SHEET_TYPES,
    },
    async (c) => {
      const request = await readJson(c, RulerRequest);
      const { sheets, paper, ...report } = within("", () => drawRuler(request));
      const printed = sheetAnswer(c, sheets, report.headline);
      if (printed) return printed;
      const drawn = sheets.map((sheet) => ({ widthMm: sheet.widthMm, heightMm: sheet.heightMm, svg: toSvg(sheet) }));
      return answer(c, RulerReport, { ...report, page: paper, checkBarMm: CHECK_BAR_MM, sheets: drawn, engine: STAMP });
    },
  );
}
