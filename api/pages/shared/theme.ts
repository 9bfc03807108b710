/** Light, dark and paper: what the pictures are drawn for. @module */
import type { ThemeName } from "../../engine/pictures/index.ts";

const KEY = "ringtrue-theme";
const dark = matchMedia("(prefers-color-scheme: dark)");
const paper = matchMedia("print");
const listeners: (() => void)[] = [];
let printing = false;

/** The theme that pictures are to be drawn in now. */
export function theme(): ThemeName {
  if (printing || paper.matches) return "print";
  const chosen = document.documentElement.dataset.theme;
  return (chosen ? chosen === "dark" : dark.matches) ? "dark" : "light";
}

/** Calls back whenever pictures must be drawn anew: theme changed, or the page goes to paper. */
export function onTheme(listener: () => void): void {
  listeners.push(listener);
}

const tell = () => {
  for (const listener of listeners) listener();
};

/** Brings back the chosen theme and sets up the button in the header. */
export function startTheme(): void {
  const root = document.documentElement;
  const kept = localStorage.getItem(KEY);
  if (kept === "dark" || kept === "light") root.dataset.theme = kept;
  const button = document.getElementById("theme")!;
  button.hidden = false;
  button.addEventListener("click", () => {
    root.dataset.theme = theme() === "dark" ? "light" : "dark";
    localStorage.setItem(KEY, root.dataset.theme);
    tell();
  });
  dark.addEventListener("change", tell);
  paper.addEventListener("change", tell);
  addEventListener("beforeprint", () => {
    printing = true;
    tell();
  });
  addEventListener("afterprint", () => {
    printing = false;
    tell();
  });
}
