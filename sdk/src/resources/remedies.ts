/** What would make a misfit fit. @module */
import { Call } from "../call.ts";
import type { FindRemediesData, FindRemediesResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import type { Transport } from "../transport.ts";

/** `client.remedies` */
export class Remedies {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * The least changes that make a glaze fit, of as many kinds as there are.
   * @param body - a fit's question, with the chance of staying sound to reach [-], materials allowed, forbidden or kept,
   * bounds on parts [parts in 100] and Seger formula [mol], tolerance of the melt [log10 Pa·s, %], clays at hand
   * @returns remedies with new recipe, before and after; those that reach the target first, by parts and materials moved
   * @throws UnprocessableError when something cannot be; that nothing reaches the target is an answer
   * @example
   * const { headline, remedies } = await client.remedies.find({
   *   glaze: { recipe: [{ material: "nepheline-syenite", parts: 60 }, { material: "silica", parts: 20 }, { material: "whiting", parts: 20 }] },
   *   body: { class: "buff-stoneware" },
   *   target: 0.6,
   * });
   * console.log(headline, remedies[0]?.recipe?.text);
   */
  find(body: FindRemediesData["body"], options?: CallOptions): Call<FindRemediesResponse> {
    const request = { method: "POST", path: "/v1/remedies", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<FindRemediesResponse>(request, options));
  }
}
