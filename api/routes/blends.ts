/** Where in a blend it fits: JSON, one JSON a line, a table or a picture. @module */
import type { Context } from "hono";
import type { z } from "zod";
import {
  type BlendRequest as Asked,
  type Blend,
  csvHeading,
  csvRow,
  type BlendReport as Judged,
  MOST_AT_ONCE,
  MOST_POINTS,
  openBlend,
} from "../engine/blends/index.ts";
import { blendPicture, canDrawBlend, type PictureWidth } from "../engine/pictures/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE, NDJSON_TYPE, preferredType } from "../http/media.ts";
import { type Api, answer, badJson, type Env, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { impossible } from "../http/problem.ts";
import { readJson } from "../http/read-json.ts";
import { readQuery } from "../http/read-query.ts";
import { BlendPictureQuery } from "../schemas/blend-picture.ts";
import { BlendLine, BlendReport, BlendRequest, THAW_TO_HAIL } from "../schemas/blends.ts";
import { svgText, words } from "../schemas/figures.ts";
import { SVG_TYPE } from "./sheet-answer.ts";

const CSV_TYPE = "text/csv";
const CSV_EXAMPLE =
  "index,label,Thaw [%],Hail [%],verdict,sound [-],crazes on cooling [-],crazes later [-],shivers [-]," +
  "expansion 20-300 °C [1e-6/K],low,high,stress [MPa; tension +],low,high,recipe,problem\r\n" +
  "0,1,100,0,crazes,0.108,0.582,0.31,0,6.38,5.7,6.99,36.8,-24.7,101.7,potash-feldspar 42; silica 22; whiting 36,\r\n";
const SERVED = [JSON_TYPE, NDJSON_TYPE, CSV_TYPE, SVG_TYPE].join(", ");
/** Points between turns for other callers. */
const POINTS_A_TURN = 32;
const SVG_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

export function blendRoutes(api: Api): void {
  const whole = jsonAnswer(BlendReport, "The tiles with their verdicts.");
  mount(
    api,
    {
      method: "post",
      path: "/v1/blends",
      operationId: "mapBlend",
      tags: ["blends"],
      summary: "Where in a line, triangle or grid of glazes, or a mixture of many, it fits",
      description:
        "Mixes two recipes or more in even steps by dry weight and judges every mixture: recipe, Seger formula, expansion, " +
        "verdict, chances. Points come in an order in which each is one step from the one before, which saves weighing; " +
        `labels are for the backs of the tiles. Corners may be many; what is limited is their mixtures, ${MOST_POINTS} in all. ` +
        `Asked for as \`${NDJSON_TYPE}\` or \`${CSV_TYPE}\`, points come as they are worked out, each with its index and how ` +
        "many there are, and `from` goes on where a stream broke off. Asked for as " +
        `\`${SVG_TYPE}\`, a line, triangle or grid is drawn with contours of soundness and the ring of each verdict on ` +
        "them; more corners as rings over their stress, with the likeliest to stay sound in words. In one piece an answer " +
        `holds ${MOST_AT_ONCE} points.`,
      request: { ...jsonRequest(BlendRequest, THAW_TO_HAIL), query: BlendPictureQuery },
      responses: {
        200: {
          ...whole,
          content: {
            ...whole.content,
            [NDJSON_TYPE]: { schema: BlendLine },
            [CSV_TYPE]: { schema: words("A heading, then a row a point.", CSV_EXAMPLE) },
            [SVG_TYPE]: {
              schema: svgText("A picture with a title and a description in words."),
            },
          },
        },
        ...badJson,
      },
      serves: SERVED,
    },
    async (c) => {
      const type = preferredType(c, SERVED);
      const look = readQuery(c, BlendPictureQuery);
      const request = await readJson(c, BlendRequest);
      const blend = within("", () => openBlend(request));
      if (type === NDJSON_TYPE) return streamed(c, blend, type, "", (point) => `${JSON.stringify(point)}\n`);
      if (type === CSV_TYPE)
        return streamed(c, blend, "text/csv; charset=utf-8", csvHeading(blend.ready.names), csvRow);
      atOnce(blend);
      const report = blend.report([...blend.points()]);
      return type === SVG_TYPE ? drawn(c, request, report, look) : answer(c, BlendReport, report);
    },
  );
}

function atOnce({ ready: { from, to } }: Blend): void {
  if (to - from <= MOST_AT_ONCE) return;
  throw impossible([
    {
      pointer: "/steps",
      message: `These are ${to - from} points; in one piece I answer ${MOST_AT_ONCE}. Take fewer steps, ask for part of it with from and count, or ask for ${NDJSON_TYPE} or ${CSV_TYPE}.`,
      allowed: [MOST_AT_ONCE],
    },
  ]);
}

function drawn(
  c: Context<Env>,
  { shape = "simplex", from }: Asked,
  report: Judged,
  { theme, width, standalone }: z.output<typeof BlendPictureQuery>,
): Response {
  const whole = report.points.length === report.points[0]?.of;
  if (!whole || !canDrawBlend(report, shape)) {
    const message = "I draw whole blends. Leave out where it begins and how many (from and count).";
    throw impossible([{ pointer: from === undefined ? "/count" : "/from", message }]);
  }
  const svg = blendPicture(report, shape, {
    theme,
    width: Number(width) as PictureWidth,
    standalone: standalone === "true",
  });
  return c.body(svg, 200, { "content-type": SVG_TYPE, "content-security-policy": SVG_POLICY });
}

/** Points as they are worked out; the caller's pace is kept, and others get a turn. */
function streamed(
  c: Context<Env>,
  blend: Blend,
  type: string,
  heading: string,
  line: (point: z.infer<typeof BlendLine>) => string,
): Response {
  const encoder = new TextEncoder();
  const points = blend.points();
  let head = heading;
  const body = new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        let out = head;
        head = "";
        for (let n = 0; n < POINTS_A_TURN; n++) {
          const { done, value } = points.next();
          if (done) {
            if (out) controller.enqueue(encoder.encode(out));
            controller.close();
            return;
          }
          out += line(value);
        }
        controller.enqueue(encoder.encode(out));
        await new Promise((resolve) => setTimeout(resolve));
      },
      cancel() {
        points.return(undefined);
      },
    },
    { highWaterMark: 0 },
  );
  return c.body(body, 200, { "content-type": type, "cache-control": "no-store" });
}
