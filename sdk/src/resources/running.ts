/** How far a glaze runs. @module */
import { Call } from "../call.ts";
import type { EstimateRunningData, EstimateRunningResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import type { Transport } from "../transport.ts";

/** `client.running` */
export class Running {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * How far a glaze, or a stack of coats, runs down a wall over a firing, and again when refired.
   * @param body - glaze or coats with their thickness [mm], firing [°C, K/h, min] or cone, wall [mm, °]
   * @returns run and roll [mm], the band to leave bare [mm], viscosity along the firing [log10(Pa·s)], what slows it, faults to look for
   * @throws UnprocessableError when glaze, firing or wall cannot be
   * @example
   * const report = await client.running.estimate({
   *   glaze: {
   *     oxides: { basis: "molePercent", amounts: { SiO2: 66, Al2O3: 8, CaO: 14, K2O: 5, Na2O: 7 } },
   *     thicknessMm: 0.4,
   *   },
   *   firing: { cone: "6", heatingCPerHour: 60, holdMinutes: 15, coolingCPerHour: 150 },
   *   wall: { glazedMm: 120, clearanceMm: 6 },
   * });
   * console.log(report.headline);
   */
  estimate(body: EstimateRunningData["body"], options?: CallOptions): Call<EstimateRunningResponse> {
    const request = { method: "POST", path: "/v1/running", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<EstimateRunningResponse>(request, options));
  }
}
