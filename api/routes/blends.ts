/** Where in a blend it fits: JSON, one JSON a line, a table or a picture. @module */
import type { Context } from "hono";
import { z } from "zod";
import {
  type BlendRequest as Asked,
  type Blend,
  blendPicture,
  canDraw,
  csvHeading,
  csvRow,
  judgeBlend,
  openBlend,
} from "../engine/blends/index.ts";
import { type PictureWidth, blendPicture as verdictMap } from "../engine/pictures/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE, NDJSON_TYPE, preferredType } from "../http/media.ts";
import { type Api, answer, badJson, type Env, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { impossible } from "../http/problem.ts";
import { readJson } from "../http/read-json.ts";
import { readQuery } from "../http/read-query.ts";
import { BlendPictureQuery } from "../schemas/blend-picture.ts";
import { BlendLine, BlendReport, BlendRequest, THAW_TO_HAIL } from "../schemas/blends.ts";
import { SVG_TYPE } from "./sheet-answer.ts";

const CSV_TYPE = "text/csv";
const SERVED = [JSON_TYPE, NDJSON_TYPE, CSV_TYPE, SVG_TYPE].join(", ");
/** Points of an answer in one piece; more are streamed. */
const MOST_AT_ONCE = 2500;
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
      summary: "Where in a line, triangle or grid of glazes it fits",
      description:
        "Mixes two to six recipes in even steps by dry weight and judges every mixture: recipe, Seger formula, expansion, " +
        "verdict, chances. Points come in an order in which each is one step from the one before, which saves weighing; " +
        `labels are for the backs of the tiles. Asked for as \`${NDJSON_TYPE}\` or \`${CSV_TYPE}\`, points come as they are ` +
        "worked out, each with its index and how many there are, and `from` goes on where a stream broke off. Asked for " +
        `as \`${SVG_TYPE}\`, a line, triangle or grid is drawn with contours of soundness, or with the ring of each verdict. In one piece an answer holds ` +
        `${MOST_AT_ONCE} points.`,
      request: { ...jsonRequest(BlendRequest, THAW_TO_HAIL), query: BlendPictureQuery },
      responses: {
        200: {
          ...whole,
          content: {
            ...whole.content,
            [NDJSON_TYPE]: { schema: BlendLine },
            [CSV_TYPE]: { schema: z.string().meta({ description: "A heading, then a row a point." }) },
            [SVG_TYPE]: {
              schema: z.string().meta({ description: "A picture with a title and a description in words." }),
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
      const report = within("", () => judgeBlend(request));
      return type === SVG_TYPE ? drawn(c, request, report, look) : answer(c, BlendReport, report);
    },
  );
}

function atOnce({ ready: { from, to } }: Blend): void {
  if (to - from <= MOST_AT_ONCE) return;
  throw impossible([
    {
      pointer: "/steps",
      message: `These are ${to - from} points; in one piece I answer ${MOST_AT_ONCE}. Ask for ${NDJSON_TYPE} or ${CSV_TYPE}, or for part of it with from and count.`,
      allowed: [MOST_AT_ONCE],
    },
  ]);
}

function drawn(
  c: Context<Env>,
  { shape = "simplex" }: Asked,
  report: ReturnType<typeof judgeBlend>,
  { picture, theme, width, standalone }: z.output<typeof BlendPictureQuery>,
): Response {
  if (!canDraw(report, shape)) {
    const message =
      "I draw whole lines, triangles and grids. Leave from and count out, and give two or three corners, or four with shape grid.";
    throw impossible([{ pointer: "/corners", message }]);
  }
  const draw = picture === "verdicts" ? verdictMap : blendPicture;
  const svg = draw(report, shape, {
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
