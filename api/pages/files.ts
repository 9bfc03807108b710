/** The files behind the pages: their names, their types, and who lends them. @module */

/** Every file that a page loads, with its type. */
export const PAGE_FILES = {
  "pages.css": "text/css; charset=utf-8",
  "check.js": "text/javascript; charset=utf-8",
  "lesson.js": "text/javascript; charset=utf-8",
  "making.js": "text/javascript; charset=utf-8",
  "worker.js": "text/javascript; charset=utf-8",
  "brygada.woff2": "font/woff2",
  "atkinson.woff2": "font/woff2",
} as const;

/** Name of a file behind the pages. */
export type PageFile = keyof typeof PAGE_FILES;

/** Reads or builds one file; called again only after a failure, since the routes keep what they got. */
export type PageFileLoader = (name: PageFile) => Promise<Uint8Array<ArrayBuffer>>;
