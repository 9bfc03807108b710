/** What to throw for the size that is wanted fired. @module */
import { Call } from "../call.ts";
import type { WorkOutSizesData, WorkOutSizesResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import type { Transport } from "../transport.ts";

/** `client.sizes` */
export class Sizes {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Sizes to throw, with leather-hard, bone-dry and fired sizes; sets, lids, capacity, clay, slabs and old notes.
   * @param body - shrinkage [%] and what is wanted fired [mm, cm or in, mixed as they come; ml, l]
   * @returns every size exact with its 90 % interval and as callipers are set [mm, cm or in], clay [g]
   * @throws UnprocessableError when something cannot be
   * @example
   * const { sizes } = await client.sizes.thrown({
   *   shrinkage: { percent: 12, plusMinus: 0.5 },
   *   fired: { height: "4 in", rim: "90 mm" },
   * });
   * for (const { name, throwTo } of sizes) console.log(name, throwTo.text);
   */
  thrown(body: WorkOutSizesData["body"], options?: CallOptions): Call<WorkOutSizesResponse> {
    const request = { method: "POST", path: "/v1/sizes", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<WorkOutSizesResponse>(request, options));
  }
}
