/** What every page has around it: head, header, footer. Everything put in is escaped by the template. @module */
import { html, raw } from "hono/html";
import { MARK } from "./mark.ts";
import words from "./words.json" with { type: "json" };

/** The three pages. */
export type PageName = "check" | "lesson" | "making";

const ADDRESSES: Readonly<Record<PageName, string>> = { check: "/", lesson: "/lesson", making: "/making" };

type Piece = ReturnType<typeof html>;

/** A page's own parts. */
export interface PageParts {
  name: PageName;
  title: string;
  /** Where the skip link leads, in words. */
  skip: string;
  main: Piece;
}

/** The whole document. Scripts are modules, so they wait for the document by themselves. */
export function frame({ name, title, skip, main }: PageParts): Piece {
  const { nav, footer } = words.frame;
  const link = (page: PageName) =>
    html`<a href="${ADDRESSES[page]}"${page === name ? raw(' aria-current="page"') : ""}>${nav[page]}</a>`;
  return html`<!doctype html>
<html lang="${words.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title}</title>
<link rel="icon" href="/favicon.svg">
<link rel="preload" href="/pages/brygada.woff2" as="font" type="font/woff2" crossorigin>
<link rel="preload" href="/pages/atkinson.woff2" as="font" type="font/woff2" crossorigin>
<link rel="stylesheet" href="/pages/pages.css">
<script type="module" src="/pages/${name}.js"></script>
</head>
<body class="on-${name}">
<a class="skip" href="#main">${skip}</a>
<header>
<div class="top">
<a class="mark" href="/">${raw(MARK)}Ringtrue</a>
<nav aria-label="${words.frame.pages}">${link("check")}${link("lesson")}${link("making")}</nav>
<div class="who"><button class="btn bare noprint" type="button" id="theme" hidden>${words.frame.theme}</button></div>
</div>
<svg class="glazeline" viewBox="0 0 1200 12" preserveAspectRatio="none" aria-hidden="true"><path id="glazeline" d="M0 6H1200"/></svg>
</header>
${main}
<footer><span>${footer.likely}</span><span class="noprint">${footer.kept}</span><span class="noprint"><a href="/reference">${footer.api}</a></span></footer>
</body>
</html>
`;
}
