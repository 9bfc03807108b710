/**
 * The thread that turns SVG into PNG, see draw-png.ts. Plain JavaScript, since Node loads it as it lies here.
 *
 * Takes `{ id, svg }`, gives `{ id, png }` or `{ id, fault }`.
 *
 * @module
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { parentPort } from "node:worker_threads";
import { initWasm, Resvg } from "@resvg/resvg-wasm";

/** Pixels for each unit of the drawing: sharp on the screens of today, and in print at half a page's width. */
const ZOOM = 2;
const FAMILY = "Atkinson Hyperlegible Next";

const font = (name) => readFileSync(new URL(`../../data/fonts/${name}`, import.meta.url));
const fontBuffers = [font("atkinson-regular.ttf"), font("atkinson-bold.ttf")];
const fonts = { fontBuffers, loadSystemFonts: false, defaultFontFamily: FAMILY, sansSerifFamily: FAMILY };
await initWasm(readFileSync(createRequire(import.meta.url).resolve("@resvg/resvg-wasm/index_bg.wasm")));

parentPort.on("message", ({ id, svg }) => {
  try {
    const png = draw(svg);
    parentPort.postMessage({ id, png }, [png.buffer]);
  } catch (error) {
    parentPort.postMessage({ id, fault: String(error) });
  }
});

function draw(svg) {
  const picture = new Resvg(svg, { font: fonts, fitTo: { mode: "zoom", value: ZOOM } });
  try {
    const drawn = picture.render();
    // A copy of its own: what is handed over leaves this thread.
    const png = new Uint8Array(drawn.asPng());
    drawn.free();
    return png;
  } finally {
    picture.free();
  }
}
