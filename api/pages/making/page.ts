/** The Making page as served. @module */
import { html } from "hono/html";
import { frame } from "../frame.ts";

export function makingPage() {
  return frame({
    name: "making",
    title: "Making · Ringtrue",
    skip: "Skip to the making",
    main: html`<main id="main" class="making"></main>`,
  });
}
