/** How the front page looks: quiet porcelain, iron-black ink, light and dark. @module */
export const FRONT_CSS = `:root {
  --paper: #f1f3ef; --ink: #1a201e; --ink2: #46504b; --ink3: #5b6660; --rule: #cdd4ce; --sheet: #fbfcfa;
}
@media (prefers-color-scheme: dark) {
  :root { --paper: #131715; --ink: #edf0ea; --ink2: #bcc5be; --ink3: #9ba69f; --rule: #343d38; --sheet: #1b211e; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 "Atkinson Hyperlegible Next", system-ui, sans-serif; }
main { max-width: 44rem; margin: 0 auto; padding: 2.25rem 1rem 3.5rem; }
.name { margin: 0; color: var(--ink2); border-bottom: 2px solid var(--ink); padding-bottom: .5rem; }
h1, h2 { font-family: "Brygada 1918", Georgia, serif; font-weight: 500; }
h1 { font-size: clamp(1.85rem, 6vw, 3.1rem); line-height: 1.09; margin: 1.5rem 0 1rem; }
h2 { font-size: 1.55rem; margin: 2.25rem 0 .5rem; }
.because { font-size: 1.14rem; line-height: 1.52; }
ul { padding-left: 1.2rem; } li { margin: .5rem 0; }
dl { display: grid; grid-template-columns: minmax(9rem, auto) 1fr; margin: 0; }
dt, dd { margin: 0; padding: .5rem 1rem .5rem 0; border-bottom: 1px solid var(--rule); font-variant-numeric: tabular-nums; }
dt { color: var(--ink2); }
pre { background: var(--sheet); border: 1px solid var(--rule); padding: .75rem; white-space: pre-wrap; overflow-wrap: anywhere; }
code { font-size: .9rem; }
a { color: inherit; text-underline-offset: .2em; } a:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
.small { font-size: .9rem; color: var(--ink3); }
@media (max-width: 30rem) { dl { grid-template-columns: 1fr; } dt { border: 0; padding-bottom: 0; } }
`;
