/** How the picture of a blend should look. @module */
import { z } from "zod";
import { PictureQuery } from "./fit-picture.ts";

const { theme, width, standalone } = PictureQuery.shape;

export const BlendPictureQuery = z.strictObject({ theme, width, standalone });
