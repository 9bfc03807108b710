/** What to weigh for a bucket of glaze. @module */
import { Call } from "../call.ts";
import type { PlanBatchData, PlanBatchResponses } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { type SheetOptions, sheetPdf, sheetSvg } from "../sheets.ts";
import type { Transport } from "../transport.ts";

const PATH = "/v1/batches";
type Report = Exclude<PlanBatchResponses[200], string>;

/** `client.batches` */
export class Batches {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Weights in order of weighing, water for a specific gravity, a bucket put right, losses and cautions.
   * @param body - recipe (parts by weight), how much of it [g, kg, lb; ml, l; dips], specific gravity [-]
   * @returns weights [g] that add up, water [g] and volume [ml] with 90 % intervals, losses [g], the sheet as SVG
   * @throws UnprocessableError when something cannot be
   * @example
   * const { lines, water } = await client.batches.plan({
   *   glaze: { recipe: [{ material: "potash-feldspar", parts: 60 }, { material: "whiting", parts: 40 }] },
   *   amount: { dry: "2 kg" },
   *   specificGravity: 1.45,
   * });
   * for (const { label, weighG } of lines) console.log(label, weighG);
   * console.log(water.value, water.unit);
   */
  plan(body: PlanBatchData["body"], options?: CallOptions): Call<Report> {
    const request = { method: "POST", path: PATH, body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<Report>(request, options));
  }

  /**
   * One batch sheet as SVG text [mm].
   * @param body - as for {@link plan}
   * @param options - `sheet` from 1
   * @example
   * const svg = await client.batches.svg({
   *   glaze: { recipe: [{ material: "whiting", parts: 1 }] },
   *   amount: { volume: "5 l" },
   * });
   */
  svg(body: PlanBatchData["body"], options?: SheetOptions): Call<string> {
    return sheetSvg(this.#transport, PATH, JSON.stringify(body), options);
  }

  /**
   * Every batch sheet as the bytes of one PDF [mm].
   * @param body - as for {@link plan}
   * @example
   * const pdf = await client.batches.pdf({
   *   glaze: { recipe: [{ material: "whiting", parts: 1 }] },
   *   amount: { volume: "5 l" },
   * });
   */
  pdf(body: PlanBatchData["body"], options?: CallOptions): Call<Uint8Array<ArrayBuffer>> {
    return sheetPdf(this.#transport, PATH, JSON.stringify(body), options);
  }
}
