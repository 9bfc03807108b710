/**
 * ETags for answers that only change with the engine or its data. Never on streams: they would be held back whole.
 *
 * @module
 */
import { etag } from "hono/etag";

/** Tags an answer by its content and answers 304 to a caller who has it. */
export const tagged = etag();
