/** What tiles say about a glaze. @module */
import { Call } from "../call.ts";
import type { LearnFromTilesData, LearnFromTilesResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import type { Transport } from "../transport.ts";

/** `client.evidence` */
export class Evidence {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * What a glaze's expansion must be, going by its tiles; and which tile to fire next.
   * @param body - what is known of the glaze (nothing for a bought one), tiles with what was seen [days, K, mm],
   * dilatometer runs [1e-6/K], clays to judge
   * @returns expansion before and after with 90 % intervals [1e-6/K, 20–300 °C], what each tile taught, chances [-]
   * @throws UnprocessableError when something cannot be
   * @example
   * const { after, glaze, next } = await client.evidence.learn({
   *   tiles: [
   *     { body: { class: "red-stoneware" }, seen: [{ kind: "not-crazed", afterDays: 90 }] },
   *     { body: { class: "buff-stoneware" }, seen: [{ kind: "crazed", byDays: 7, soundAtDays: 0 }] },
   *   ],
   * });
   * const report = await client.fit.check({ glaze, body: { class: "studio-porcelain" } });
   * console.log(after.value, next[0]?.text, report.headline);
   */
  learn(body: LearnFromTilesData["body"], options?: CallOptions): Call<LearnFromTilesResponse> {
    const request = { method: "POST", path: "/v1/evidence", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<LearnFromTilesResponse>(request, options));
  }
}
