/** The Check page as served: its frame, and a worked answer for browsers without scripts. @module */
import { html } from "hono/html";
import type { FitReport } from "../../engine/fit/types.ts";
import { THAW_ON_RED_STONEWARE } from "../../schemas/larch-lane.ts";
import { frame } from "../frame.ts";
import { sampleRecipe, sampleWare, sayCases, tellingReasons } from "../sample.ts";
import { sayStress } from "../say.ts";
import words from "../words.json" with { type: "json" };

const { check, help, plain, running } = words;

/**
 * @param report - the sample's answer
 * @param address - where callers reach the service, for the command line; never taken from the request
 */
export function checkPage(report: FitReport, address: string) {
  const command =
    `curl ${address}/v1/fit -H 'content-type: application/json' \\\n` +
    `  -d '${JSON.stringify(THAW_ON_RED_STONEWARE)}'`;
  const list = (items: string[]) => items.map((item) => html`<li>${item}</li>`);
  const main = html`<main id="main" class="page">
<details class="bench" id="bench" open hidden><summary><b>${check.bench}</b><br><span id="summary"></span><span class="paper" id="on-paper"></span></summary>
<p class="kept noprint"><span id="kept"></span><button class="btn bare" type="button" id="undo">${check.undo}</button></p>
<form id="form"></form>
<div class="noprint" id="files"></div></details>
<div class="out" id="out">
<p class="sr" role="status" id="status"></p>
<div id="state"></div>
<div id="answer"><noscript>
<p class="mut">${plain.needsScript}</p>
<h1>${report.headline}</h1>
<p class="because">${sayCases(report)} The stress in the glaze is ${sayStress(report.stress)}; tension is +.</p>
<p>That is Thaw, a glaze of the invented studio Larch Lane: ${sampleRecipe} (parts by weight). On ${sampleWare}.</p>
<ul class="mind">${list(tellingReasons(report))}</ul>
<ul class="mind">${list(report.next.map((step) => step.text))}</ul>
<ul class="mind">${list([...report.warnings, ...report.cautions].map((notice) => notice.message))}</ul>
<p>${plain.ask}</p>
<pre><code>${command}</code></pre>
</noscript></div>
<div class="noprint" id="panels"></div>
<section id="run-part" hidden><details class="more" id="run"><summary>${running.title}</summary>
<form class="noprint" id="run-form"></form><p class="sr" role="status" id="run-status"></p><div id="run-answer"></div></details></section>
<section class="noprint"><details class="more"><summary>${help.title}</summary>
<p class="lede">${help.keys}</p><p class="lede">${help.kept}</p>
<p class="lede">${help.work} <a href="/ringtrue-work.schema.json">${help.schema}</a>; <a href="/openapi.json">${help.describe}</a>.</p>
</details></section>
</div>
<a class="live" href="#out" id="live"></a>
</main>`;
  return frame({ name: "check", title: check.title, skip: check.skip, main });
}
