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
import { PictureQuery } from "../schemas/fit-picture.ts";
import { SVG_TYPE } from "./sheet-answer.ts";

/** What a fit is served as, JSON first. */
export const FIT_TYPES = `${JSON_TYPE}, ${SVG_TYPE}`;

/** An SVG opened by itself may style itself and do nothing else. */
const SVG_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

/** The picture in the description. */
export const pictureContent = {
  [SVG_TYPE]: { schema: z.string().meta({ description: "A picture with a title and a description in words." }) },
};

type Draw = (report: FitReport, options: PictureOptions, question: FitRequest) => string;

const DRAWS: Record<NonNullable<z.output<typeof PictureQuery>["picture"]>, Draw> = {
  verdict: (report, options) => verdictPicture(report, options),
  expansion: (report, options) => expansionPicture(report, options),
  stress: (report, options, { ware }) => stressPicture(report, { ...options, ware: ware ?? {} }),
  contributions: (report, options) => contributionsPicture(report, options),
};

/** What was asked for beside the question: undefined where it is JSON. */
export function wantedPicture(c: Context): z.output<typeof PictureQuery> | undefined {
  // Most calls have no query, and reading one takes longer than looking for it.
  const query = c.req.url.includes("?") ? readQuery(c, PictureQuery) : PictureQuery.parse({});
  // Who names a picture and takes anything wants the picture.
  const served = query.picture === undefined ? FIT_TYPES : `${SVG_TYPE}, ${JSON_TYPE}`;
  return preferredType(c, served) === SVG_TYPE ? query : undefined;
}

/** Judges and draws. */
export function fitPicture(c: Context, question: FitRequest, wanted: z.output<typeof PictureQuery>): Response {
  const { picture = "verdict", theme, width, standalone } = wanted;
  const report = within("", () => checkFit(picture === "expansion" ? { ...question, include: ["curves"] } : question));
  const options = { theme, width: Number(width) as PictureWidth, standalone: standalone === "true" };
  return c.body(DRAWS[picture](report, options, question), 200, {
    "content-type": SVG_TYPE,
    "content-security-policy": SVG_POLICY,
    vary: "accept",
  });
}
