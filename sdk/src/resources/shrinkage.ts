/** How much a clay shrinks. @module */
import { Call } from "../call.ts";
import type { MeasureShrinkageData, MeasureShrinkageResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import type { Transport } from "../transport.ts";

/** `client.shrinkage` */
export class Shrinkage {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Drying, firing and total shrinkage of measured bars, by the definitions of ASTM C326.
   * @param body - bars with plastic, dry and fired lengths [mm, cm or in, mixed as they come], and weights [g]
   * @returns means with 90 % intervals [%], spread [points], outliers, bars still wanted [-], absorption [%]
   * @throws UnprocessableError when a bar cannot be
   * @example
   * const { total } = await client.shrinkage.measure({
   *   bars: [
   *     { plastic: "100 mm", dry: "94.2 mm", fired: "87.9 mm" },
   *     { plastic: "4 in", dry: "3 3/4 in", fired: "3 1/2 in" },
   *   ],
   * });
   * console.log(total?.message);
   */
  measure(body: MeasureShrinkageData["body"], options?: CallOptions): Call<MeasureShrinkageResponse> {
    const request = { method: "POST", path: "/v1/shrinkage", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<MeasureShrinkageResponse>(request, options));
  }
}
