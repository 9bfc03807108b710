/** The Lesson page as served. @module */
import { html } from "hono/html";
import { frame } from "../frame.ts";

export function lessonPage() {
  return frame({
    name: "lesson",
    title: "Lesson · Ringtrue",
    skip: "Skip to the lesson",
    main: html`<main id="main" class="lesson"></main>`,
  });
}
