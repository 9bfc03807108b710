/**
 * Pictures as PNG, for programs that take no SVG.
 *
 * A picture takes some 80 ms, in which nobody else would be answered, so a thread of its own draws them, one after the
 * other. It starts with the first picture and ends after a while without any, and its memory with it.
 *
 * The renderer is WebAssembly, the only one in the process. It is compiled simply: compiled well, a picture takes 30 ms
 * less, the first one 150 ms more, and some 70 MB go to the compiler, of which half never come back.
 *
 * @module
 */
import { setFlagsFromString } from "node:v8";
import { Worker } from "node:worker_threads";
import type { PngDrawer } from "../routes/fit-picture.ts";

/** How long the thread is kept without a picture [ms]. */
const KEPT_MS = 20_000;
/** Most memory of the thread beside the renderer's own [MB]. */
const resourceLimits = { maxOldGenerationSizeMb: 64, maxYoungGenerationSizeMb: 4 };

interface Waiting {
  resolve: (png: Uint8Array<ArrayBuffer>) => void;
  reject: (fault: Error) => void;
}

interface Drawn {
  id: number;
  png?: Uint8Array<ArrayBuffer>;
  fault?: string;
}

setFlagsFromString("--liftoff-only");

let thread: DrawingThread | undefined;

/**
 * Draws an SVG of ours as PNG, two pixels for each unit.
 * @param svg - one of our own pictures; what it draws is bounded by its own width
 */
export const drawPng: PngDrawer = (svg) => {
  thread ??= new DrawingThread(() => {
    thread = undefined;
  });
  return thread.draw(svg);
};

class DrawingThread {
  private readonly worker = new Worker(new URL("./png-thread.mjs", import.meta.url), { resourceLimits });
  private readonly waiting = new Map<number, Waiting>();
  private readonly onEnd: () => void;
  private idle: NodeJS.Timeout | undefined;
  private drawn = 0;
  private ended = false;

  /** @param onEnd - told when it takes no more */
  constructor(onEnd: () => void) {
    this.onEnd = onEnd;
    this.worker.on("message", (answer: Drawn) => this.answered(answer));
    this.worker.on("error", (fault) => this.end(fault instanceof Error ? fault : new Error(String(fault))));
    this.worker.on("exit", () => this.end(new Error("The thread that draws pictures ended.")));
  }

  draw(svg: string): Promise<Uint8Array<ArrayBuffer>> {
    clearTimeout(this.idle);
    // Keeps the process alive while something is drawn, and only then.
    this.worker.ref();
    const id = this.drawn++;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      this.worker.postMessage({ id, svg });
    });
  }

  private answered({ id, png, fault }: Drawn): void {
    const caller = this.waiting.get(id);
    this.waiting.delete(id);
    if (png) caller?.resolve(png);
    else caller?.reject(new Error(fault));
    if (this.waiting.size > 0) return;
    this.worker.unref();
    this.idle = setTimeout(() => this.end(), KEPT_MS).unref();
  }

  private end(fault = new Error("The thread that draws pictures was told to end.")): void {
    // Ending tells of itself once more, when another thread may have taken over.
    if (this.ended) return;
    this.ended = true;
    this.onEnd();
    clearTimeout(this.idle);
    for (const { reject } of this.waiting.values()) reject(fault);
    this.waiting.clear();
    void this.worker.terminate();
  }
}
