/** Things to print and throw by. @module */
import { Call } from "../call.ts";
import type { DrawRulerData, DrawRulerResponses } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { type SheetOptions, sheetPdf, sheetSvg } from "../sheets.ts";
import type { Transport } from "../transport.ts";

const PATH = "/v1/rulers";
type Report = Exclude<DrawRulerResponses[200], string>;

/** `client.rulers` */
export class Rulers {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * A shrink ruler, a rib or gauges, with every sheet in it as SVG.
   * @param body - shrinkage [%] and fired sizes of what is drawn [mm, cm or in]
   * @returns sheets [mm], and the lengths on them with what the shrinkage leaves open [mm]
   * @throws UnprocessableError when something cannot be
   * @example
   * const { sheets, lengths } = await client.rulers.draw({
   *   shrinkage: { percent: 12, plusMinus: 0.5 },
   *   draw: { ruler: { length: "30 cm" } },
   * });
   * console.log(sheets.length, lengths[0]?.drawn.value);
   */
  draw(body: DrawRulerData["body"], options?: CallOptions): Call<Report> {
    const request = { method: "POST", path: PATH, body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<Report>(request, options));
  }

  /**
   * One sheet as SVG text, at true scale [mm].
   * @param body - as for {@link draw}
   * @param options - `sheet` from 1
   * @example
   * const svg = await client.rulers.svg({ shrinkage: { percent: 12 }, draw: { ruler: { length: "15 cm" } } });
   */
  svg(body: DrawRulerData["body"], options?: SheetOptions): Call<string> {
    return sheetSvg(this.#transport, PATH, JSON.stringify(body), options);
  }

  /**
   * Every sheet as the bytes of one PDF, at true scale [mm].
   * @param body - as for {@link draw}
   * @example
   * const pdf = await client.rulers.pdf({ shrinkage: { percent: 12 }, draw: { ruler: { length: "15 cm" } } });
   */
  pdf(body: DrawRulerData["body"], options?: CallOptions): Call<Uint8Array<ArrayBuffer>> {
    return sheetPdf(this.#transport, PATH, JSON.stringify(body), options);
  }
}
