/** Whether a glaze fits a clay body, one question or many. @module */
import { checkFit, judgeFit } from "../engine/fit/index.ts";
import { within } from "../http/accept.ts";
import { lineAnswers } from "../http/line-answers.ts";
import { NDJSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, badStream, jsonAnswer, jsonRequest, lines, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { PictureQuery } from "../schemas/fit-picture.ts";
import { FitReport } from "../schemas/fit-report.ts";
import { FitLine, FitRequest } from "../schemas/fit-request.ts";
import { THAW_ON_RED_STONEWARE } from "../schemas/larch-lane.ts";
import { FitLineAnswer, FitVerdictLineAnswer } from "../schemas/stream.ts";
import { fitPicture, fitTypes, type PngDrawer, pictureContent, wantedPicture } from "./fit-picture.ts";

/** @param drawPng - draws pictures as PNG; where left out, they are SVG alone */
export function fitRoutes(api: Api, drawPng?: PngDrawer): void {
  const told = jsonAnswer(
    FitReport,
    "Whether it fits, how sure, and why; in JSON, or one picture of it as SVG or PNG.",
  );
  mount(
    api,
    {
      method: "post",
      path: "/v1/fit",
      operationId: "checkFit",
      tags: ["fit"],
      summary: "Whether a glaze fits a clay body",
      description:
        "The main question. Answers with a verdict, the chances of each outcome, the stress with its twenty equally " +
        "likely cases, the reasons in plain words, and what to fire or measure next. `accept: image/svg+xml` draws it, `image/png` too.",
      request: { ...jsonRequest(FitRequest, THAW_ON_RED_STONEWARE), query: PictureQuery },
      responses: { 200: { ...told, content: { ...told.content, ...pictureContent } }, ...badJson },
      serves: fitTypes(drawPng),
    },
    async (c) => {
      const picture = wantedPicture(c, drawPng);
      const question = await readJson(c, FitRequest);
      if (picture) return fitPicture(c, question, picture, drawPng);
      c.header("vary", "accept");
      return answer(
        c,
        FitReport,
        within("", () => checkFit(question)),
      );
    },
  );
  mount(
    api,
    {
      method: "post",
      path: "/v1/fit/stream",
      operationId: "streamFit",
      tags: ["fit"],
      summary: "The same for many glazes or bodies, one JSON a line",
      description:
        "One FitLine a line in, one FitLineAnswer a line out, in order, as they are worked out. A line that cannot be " +
        "answered gets a problem in its place and the lines after it still are. A line may hold 64 kB.",
      request: { body: { required: true, content: lines(FitLine, { id: "thaw-1", ...THAW_ON_RED_STONEWARE }) } },
      responses: { 200: { description: "One answer a line.", content: lines(FitLineAnswer) }, ...badStream },
      serves: NDJSON_TYPE,
    },
    (c) => lineAnswers(c, FitLine, checkFit),
  );
  mount(
    api,
    {
      method: "post",
      path: "/v1/fit/verdicts",
      operationId: "judgeFits",
      tags: ["fit"],
      summary: "The same in short, for long tables",
      description:
        "Lines as for the stream, judged from the same draws, each answered with the verdict and the figures it rests on. " +
        "Reasons, trials, what each oxide does and what to do next are left out, so it is a third of the size and quicker.",
      request: { body: { required: true, content: lines(FitLine, { id: "thaw-1", ...THAW_ON_RED_STONEWARE }) } },
      responses: { 200: { description: "One answer a line.", content: lines(FitVerdictLineAnswer) }, ...badStream },
      serves: NDJSON_TYPE,
    },
    (c) => lineAnswers(c, FitLine, judgeFit),
  );
}
