/** How much a glaze shrinks as it cools, one glaze or many. @module */
import { asProblem, within } from "../http/accept.ts";
import { lineAnswers } from "../http/line-answers.ts";
import { JSON_TYPE, NDJSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, badStream, jsonAnswer, jsonRequest, lines, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { ExpansionLine, ExpansionReport, ExpansionRequest } from "../schemas/expansion.ts";
import { THAW } from "../schemas/larch-lane.ts";
import { ExpansionLineAnswer } from "../schemas/stream.ts";
import { reportExpansion, reportWithNearest } from "./report-expansion.ts";

export function expansionRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/expansion",
      operationId: "estimateExpansion",
      tags: ["expansion"],
      summary: "How much a glaze shrinks as it cools",
      description:
        "The mean linear expansion from the measured-glass model, every published set beside it with its basis, range " +
        "and missing oxides, what each oxide contributes and one more part of each material would do, what the doubt " +
        "is made of, and what else the glass is like. `include` nearest for measured glasses near it.",
      request: jsonRequest(ExpansionRequest, { glaze: THAW }),
      responses: { 200: jsonAnswer(ExpansionReport, "Its expansion by every model."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const question = await readJson(c, ExpansionRequest);
      try {
        return answer(c, ExpansionReport, await reportWithNearest(question));
      } catch (error) {
        throw asProblem(error, "/glaze");
      }
    },
  );
  mount(
    api,
    {
      method: "post",
      path: "/v1/expansion/stream",
      operationId: "streamExpansion",
      tags: ["expansion"],
      summary: "The same for many glazes, one JSON a line",
      description:
        "One ExpansionLine a line in, one ExpansionLineAnswer a line out, in order, as they are worked out. A line that " +
        "cannot be answered gets a problem in its place and the lines after it still are. A line may hold 64 kB. " +
        "Measured glasses nearby are answered one glaze at a time, not here.",
      request: { body: { required: true, content: lines(ExpansionLine, { id: "thaw-1", glaze: THAW }) } },
      responses: { 200: { description: "One answer a line.", content: lines(ExpansionLineAnswer) }, ...badStream },
      serves: NDJSON_TYPE,
    },
    (c) => lineAnswers(c, ExpansionLine, (question) => within("/glaze", () => reportExpansion(question))),
  );
}
