/**
 * Typed client of the Ringtrue API: will this glaze fit this clay?
 *
 * @module
 */

// The client, and what its calls give back
export type { Call } from "./call.ts";
export { Ringtrue } from "./client.ts";
// What can go wrong
export {
  AbortedError,
  ApiError,
  BadRequestError,
  ConnectionError,
  MethodNotAllowedError,
  NotFoundError,
  PayloadTooLargeError,
  RateLimitedError,
  RingtrueError,
  ServerError,
  TimeoutError,
  UnauthorizedError,
  UnprocessableError,
  UnreadableAnswerError,
  UnsupportedMediaTypeError,
} from "./errors.ts";
// Sheets to print
export type { SheetOptions } from "./sheets.ts";
// What calls take and answer, as the API describes it
export type * from "./generated/types.gen.ts";
// What is on its way out
export type { Deprecation } from "./deprecation.ts";
// What can be set
export type { CallOptions, ClientOptions, FetchLike } from "./options.ts";
// Pictures, lists and streams
export type { ListCall, Page } from "./page.ts";
export type { LineAnswer } from "./stream.ts";
export type { BlendPictureChoice } from "./resources/blends.ts";
export type { PictureChoice } from "./resources/fit.ts";
export type { RunningPictureChoice } from "./resources/running.ts";
export type { WithResponse } from "./transport.ts";
