/** The front page: what this is, and a live answer. Everything shown is escaped by the template. @module */
import { html } from "hono/html";
import type { FitReport } from "../engine/fit/types.ts";
import { THAW_ON_RED_STONEWARE } from "../schemas/larch-lane.ts";
import { sampleRecipe, sampleWare, sayCases, tellingReasons } from "./sample.ts";
import { sayExpansion, sayStress } from "./say.ts";

/**
 * @param report - the sample's answer, worked out for this request
 * @param address - where callers reach the service, for the command line; never taken from the request
 */
export function frontPage(report: FitReport, address: string) {
  const command =
    `curl ${address}/v1/fit -H 'content-type: application/json' \\\n` +
    `  -d '${JSON.stringify(THAW_ON_RED_STONEWARE)}'`;
  const list = (items: string[]) => items.map((item) => html`<li>${item}</li>`);
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Ringtrue: will this glaze fit this clay?</title>
<link rel="stylesheet" href="/front.css">
</head>
<body>
<main>
<p class="name">Ringtrue</p>
<h1>${report.headline}</h1>
<p class="because">${sayCases(report)} The stress in the glaze is ${sayStress(report.stress)}; tension is +.</p>
<p>That is Thaw, a glaze of the invented studio Larch Lane: ${sampleRecipe} (parts by weight). On ${sampleWare}.</p>
<h2>Why</h2>
<ul>${list(tellingReasons(report))}</ul>
<h2>What next</h2>
<ul>${list(report.next.map((step) => step.text))}</ul>
<h2>The figures</h2>
<dl>
<dt>The glaze shrinks</dt><dd>${sayExpansion(report.glaze.expansion)}</dd>
<dt>to where it sets</dt><dd>${sayExpansion(report.glaze.expansionToSetPoint)}</dd>
<dt>The clay shrinks</dt><dd>${sayExpansion(report.body.expansion)}</dd>
<dt>to the same point</dt><dd>${sayExpansion(report.body.expansionToSetPoint)}</dd>
</dl>
<h2>Mind</h2>
<ul>${list([...report.warnings, ...report.cautions].map((notice) => notice.message))}</ul>
<h2>Ask about yours</h2>
<p>Ringtrue tells you whether a glaze will fit a clay body before you mix a batch or pack a kiln. Send it a recipe or an
analysis, what you know of the clay, and how you fire. It keeps nothing you send.</p>
<pre><code>${command}</code></pre>
<p><a href="/reference">Every call, to try</a> · <a href="/openapi.json">the description</a> ·
<a href="/v1/materials">materials</a> · <a href="/v1/bodies">clays</a> · <a href="/v1/sources">what the answers rest on</a></p>
<p class="small">Engine ${report.engine.version}, data of ${report.engine.dataVersion}. This answer was worked out when you
opened the page.</p>
</main>
</body>
</html>
`;
}
