/** Thermal expansion of a glaze from what it is made of. @module */
import { Call } from "../call.ts";
import type { EstimateExpansionData, EstimateExpansionResponse, ExpansionLine } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { type LineAnswer, streamLines } from "../stream.ts";
import type { Transport } from "../transport.ts";

/** `client.expansion` */
export class Expansion {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Mean linear expansion of a glaze, by the measured-glass model and by every published set beside it.
   *
   * Figures of different sets are not interchangeable: each has its own basis, range and bias.
   * @param body - a glaze as recipe (parts by weight) or oxides (wt %, mol % or moles); `doubts` to leave out;
   *   `include: ["nearest"]` for measured glasses near it and what each published set is off by there
   * @returns expansion [1e-6/K] with its range [°C]; what each oxide adds [1e-6/K] and one more part of each material
   *   would do; the named doubts and the expansion on ware; transition [°C], stiffness [GPa], density, viscosity
   *   [log10 Pa·s], surface tension and liquidus, or null where nothing like it was ever measured
   * @throws UnprocessableError when something cannot be
   * @example
   * const answer = await client.expansion.estimate({
   *   glaze: {
   *     oxides: { basis: "weightPercent", amounts: { SiO2: 62, Al2O3: 14, K2O: 6, CaO: 14, Na2O: 4 } },
   *   },
   * });
   * console.log(answer.best.expansion, answer.doubt.text);
   * console.log(answer.properties?.viscosity.atViscosities);
   */
  estimate(body: EstimateExpansionData["body"], options?: CallOptions): Call<EstimateExpansionResponse> {
    const request = { method: "POST", path: "/v1/expansion", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<EstimateExpansionResponse>(request, options));
  }

  /**
   * Any number of glazes, answered in order; a line that cannot be answered yields its problem.
   * @param lines - glazes as for {@link estimate}
   * @returns for each line its place from 1, its `id` if it had one, and either `result` (expansion [1e-6/K]) or `error`
   * @example
   * for await (const { line, result } of client.expansion.stream(glazes)) console.log(line, result?.best.expansion);
   */
  stream(
    lines: Iterable<ExpansionLine> | AsyncIterable<ExpansionLine>,
    options?: CallOptions,
  ): AsyncGenerator<LineAnswer<EstimateExpansionResponse>, void, undefined> {
    return streamLines<EstimateExpansionResponse>(this.#transport, "/v1/expansion/stream", lines, options);
  }
}
