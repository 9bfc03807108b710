/** A fit as a picture: the same question as JSON, answered as SVG. @module */
import type { Context } from "hono";
import { z } from "zod";
import { checkFit, type FitReport, type FitRequest } from "../engine/fit/index.ts";
import {
  contributionsPicture,
  expansionPicture,
  type PictureOptions,
  type PictureWidth,
  stressPicture,
  verdictPicture,
} from "../engine/pictures/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE, preferredType } from "../http/media.ts";
import { readQuery } from "../http/read-query.ts";
import { svgText } from "../schemas/figures.ts";
import { PictureQuery } from "../schemas/fit-picture.ts";
import { SVG_TYPE } from "./sheet-answer.ts";

export const PNG_TYPE = "image/png";

/** Draws a picture of ours as PNG; lent by runtimes that can. */
export type PngDrawer = (svg: string) => Promise<Uint8Array<ArrayBuffer>>;

/** What a fit is served as, JSON first. */
export const fitTypes = (drawPng?: PngDrawer) => [JSON_TYPE, SVG_TYPE, ...(drawPng ? [PNG_TYPE] : [])].join(", ");

/** An SVG opened by itself may style itself and do nothing else. */
const SVG_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

/** The pictures in the description. */
export const pictureContent = {
  [SVG_TYPE]: { schema: svgText("A picture with a title and a description in words.") },
  [PNG_TYPE]: {
    schema: z
      .string()
      .meta({ description: "The same, two pixels a unit, where the service can.", contentEncoding: "binary" }),
  },
};

type Draw = (report: FitReport, options: PictureOptions, question: FitRequest) => string;

const DRAWS: Record<NonNullable<z.output<typeof PictureQuery>["picture"]>, Draw> = {
  verdict: (report, options) => verdictPicture(report, options),
  expansion: (report, options) => expansionPicture(report, options),
  stress: (report, options, { ware }) => stressPicture(report, { ...options, ware: ware ?? {} }),
  contributions: (report, options) => contributionsPicture(report, options),
};

/** What a picture needs beside the plain answer. */
const NEEDS: Partial<Record<keyof typeof DRAWS, FitRequest["include"]>> = {
  expansion: ["curves"],
  contributions: ["parts"],
};

/** No query: every choice at its default. */
const UNASKED = PictureQuery.parse({});

/** A picture that was asked for, and the type it is wanted in. */
export type Wanted = z.output<typeof PictureQuery> & { type: string };

/** What was asked for beside the question: undefined where it is JSON. */
export function wantedPicture(c: Context, drawPng?: PngDrawer): Wanted | undefined {
  // Most calls have no query, and reading one takes longer than looking for it.
  const query = c.req.url.includes("?") ? readQuery(c, PictureQuery) : UNASKED;
  // Who names a picture and takes anything wants the picture.
  const types = fitTypes(drawPng);
  const type = preferredType(c, query.picture === undefined ? types : `${SVG_TYPE}, ${types}`);
  return type === JSON_TYPE ? undefined : { ...query, type };
}

/** Judges and draws. */
export async function fitPicture(
  c: Context,
  question: FitRequest,
  { picture = "verdict", theme, width, standalone, type }: Wanted,
  drawPng?: PngDrawer,
): Promise<Response> {
  const report = within("", () => checkFit({ ...question, include: NEEDS[picture] ?? [] }));
  const options = { theme, width: Number(width) as PictureWidth, standalone: standalone === "true" };
  const svg = DRAWS[picture](report, options, question);
  const headers = { "content-type": type, "content-security-policy": SVG_POLICY, vary: "accept" };
  return c.body(type === PNG_TYPE && drawPng ? await drawPng(svg) : svg, 200, headers);
}
