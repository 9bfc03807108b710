/** The Lesson page as served: five steps in words; figures and drawings come when the service has answered. @module */
import { html } from "hono/html";
import { frame } from "../frame.ts";
import words from "../words.json" with { type: "json" };

const { lesson } = words;

const heading = (n: number, text: string, id = `h${n}`) =>
  html`<div class="say-col"><p class="num" aria-hidden="true">${n}</p><h2 id="${id}">${text}</h2></div>`;

/** A step with a drawing, a note beside it and a caption; all of them filled in later. */
const step = (n: number, text: string, more: ReturnType<typeof html> | string = "") =>
  html`<section class="step" id="s${n}" aria-labelledby="h${n}">${heading(n, text)}
<figure class="sec"><div class="draw" id="draw${n}"></div><div class="notes" id="notes${n}"></div><figcaption id="caption${n}"></figcaption></figure>${more}</section>`;

const ask = (id: string, question: string) =>
  html`<details class="ask"><summary><span class="q">${question}</span><span class="rv">${lesson.questions.show}</span></summary><p id="${id}"></p></details><p class="line" aria-hidden="true"></p>`;

const bare = (text: string) => text.replace(/\{\w+\}/g, "…");

export function lessonPage() {
  const { four, change, questions } = lesson;
  const main = html`<main id="main" class="lesson">
<div class="open"><h1 id="title">${bare(lesson.why.crazes).replace("…", "Sea Fret")}</h1>
<p class="because" id="because"><noscript>${lesson.needsScript}</noscript></p>
<p class="noprint acts2"><a class="btn main" href="#s1">${lesson.begin}</a> <button class="btn" type="button" id="fill">${lesson.fill}</button> <button class="btn bare" type="button" id="handout">${lesson.handout}</button></p>
<span id="poster" class="poster"></span><p class="namel" aria-hidden="true">${lesson.name} <i></i> ${lesson.date} <i></i></p></div>
<nav class="steps noprint" aria-label="${lesson.steps}">${[1, 2, 3, 4, 5].map((n) => html`<a href="#s${n}">${n}</a>`)}</nav>
${step(1, lesson.one.title)}
${step(2, lesson.two.title)}
${step(3, bare(lesson.three.title))}
<section class="step wide" id="s4" aria-labelledby="h4">${heading(4, four.title)}
${ask("answer-shorter", four.ask)}
<div class="try noprint">
<div class="slide"><output id="now" for="t"></output><div class="rng"><label for="t" class="sr">${four.slider}</label>
<input id="t" type="range" min="20" max="700" step="5" value="700" aria-describedby="say"><div class="ends" aria-hidden="true"><span id="hot"></span><span>${four.cooling}</span><span id="cold"></span></div></div>
<button class="btn" type="button" id="go">${four.cool}</button></div>
<div class="rowr"><p class="read" id="say"></p><div class="pick" id="pick" role="radiogroup" aria-label="${four.glaze}"></div></div>
<div class="stage"><div><h3>${four.free}</h3><p class="mut" id="times"></p><div id="free"></div></div>
<div><h3>${four.stuck}</h3><p class="mut" id="pull"></p><div id="stuck"></div></div>
<div class="meter" id="meter"></div><p class="mends" aria-hidden="true"><span>${four.left}</span><span>${four.right}</span></p></div>
<p class="mut sm">${four.curves}</p></div>
<div class="handstates" id="handstates"></div></section>
${step(5, lesson.five.title.crazes)}
<section class="step wide change noprint" aria-labelledby="h6"><h2 id="h6">${change.title}</h2><p class="lede">${change.lede}</p>
<div class="sliders" id="sliders"></div><p class="because" id="verdict" role="status"></p><div id="where"></div></section>
<section class="step wide" aria-label="${questions.less}">${ask("answer-less", questions.less)}${ask("answer-much", questions.much)}${ask("answer-thin", questions.thin)}</section>
<section class="key"><h2>${lesson.key.title}</h2><ol><li id="key-shorter"></li><li id="key-less"></li><li id="key-much"></li><li id="key-thin"></li></ol><p id="key-figures"></p></section>
</main>`;
  return frame({ name: "lesson", title: lesson.title, skip: lesson.skip, main });
}
