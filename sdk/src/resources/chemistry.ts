/** What a recipe becomes in the kiln. @module */
import { Call } from "../call.ts";
import type { AnalyseChemistryData, AnalyseChemistryResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import type { Transport } from "../transport.ts";

/** `client.chemistry` */
export class Chemistry {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Oxides of a recipe every way: wt % and mol % as fired, moles per mole of flux (Seger formula), loss on ignition.
   * @param body - a glaze as recipe (parts by weight) or oxides (wt %, mol % or moles)
   * @returns oxides [wt %, mol %, mol], loss on ignition [wt %], mass balance [g per 100 g weighed]
   * @throws UnprocessableError when something cannot be
   * @example
   * const answer = await client.chemistry.analyse({
   *   glaze: { recipe: [{ material: "whiting", parts: 20 }, { material: "silica", parts: 80 }] },
   * });
   */
  analyse(body: AnalyseChemistryData["body"], options?: CallOptions): Call<AnalyseChemistryResponse> {
    const request = { method: "POST", path: "/v1/chemistry", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<AnalyseChemistryResponse>(request, options));
  }
}
