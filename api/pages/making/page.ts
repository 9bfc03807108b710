/** The Making page as served: frame and places; sizes come when the service has answered. @module */
import { html } from "hono/html";
import { frame } from "../frame.ts";
import words from "../words.json" with { type: "json" };

const { making } = words;

export function makingPage() {
  const main = html`<main id="main" class="page">
<details class="bench" id="bench" open><summary><b>${making.bench}</b><br><span id="summary"></span></summary>
<form id="form"></form></details>
<div class="out" id="out"><p class="sr" role="status" id="status"></p><div id="state"></div>
<div id="answer"><noscript><p>${making.needsScript}</p></noscript></div>
<div id="ruler"></div><div id="batch"></div></div>
</main>`;
  return frame({ name: "making", title: making.title, skip: making.skip, main });
}
