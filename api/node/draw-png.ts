/** Pictures as PNG, for programs that take no SVG. @module */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { PngDrawer } from "../routes/fit-picture.ts";

/** Pixels for each unit of the drawing: sharp on the screens of today, and in print at half a page's width. */
const ZOOM = 2;
const FAMILY = "Atkinson Hyperlegible Next";

type Module = typeof import("@resvg/resvg-wasm");
interface Renderer {
  Resvg: Module["Resvg"];
  fontBuffers: Uint8Array[];
}

/** Loaded on the first picture: most processes never draw one. */
let renderer: Promise<Renderer> | undefined;

async function load(): Promise<Renderer> {
  const { initWasm, Resvg } = await import("@resvg/resvg-wasm");
  const wasm = createRequire(import.meta.url).resolve("@resvg/resvg-wasm/index_bg.wasm");
  const font = (name: string) => readFile(new URL(`../../data/fonts/${name}`, import.meta.url));
  const [code, ...fontBuffers] = await Promise.all([
    readFile(wasm),
    font("atkinson-regular.ttf"),
    font("atkinson-bold.ttf"),
  ]);
  await initWasm(code);
  return { Resvg, fontBuffers };
}

/**
 * Draws an SVG of ours as PNG, two pixels for each unit.
 * @param svg - one of our own pictures; what it draws is bounded by its own width
 */
export const drawPng: PngDrawer = async (svg) => {
  renderer ??= load();
  const { Resvg, fontBuffers } = await renderer;
  const fonts = { fontBuffers, loadSystemFonts: false, defaultFontFamily: FAMILY, sansSerifFamily: FAMILY };
  const picture = new Resvg(svg, { font: fonts, fitTo: { mode: "zoom", value: ZOOM } });
  const drawn = picture.render();
  const png = new Uint8Array(drawn.asPng());
  drawn.free();
  picture.free();
  return png;
};
