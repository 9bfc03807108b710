/**
 * What a page may do: load its own files and call its own service, nothing else.
 *
 * @module
 */
import { secureHeaders } from "hono/secure-headers";

/** Strict policy for pages. Styles set by script are allowed by browsers; inline ones are not. */
export const pageHeaders = secureHeaders({
  strictTransportSecurity: false,
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    imgSrc: ["'self'", "data:"],
    fontSrc: ["'self'"],
    connectSrc: ["'self'"],
    workerSrc: ["'self'"],
    baseUri: ["'none'"],
    formAction: ["'none'"],
    frameAncestors: ["'none'"],
  },
});
