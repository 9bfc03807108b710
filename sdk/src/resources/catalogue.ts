/** What the service knows by name: materials, body classes, expansion models, sources. @module */
import { Call } from "../call.ts";
import { RingtrueError } from "../errors.ts";
import type {
  GetBodyResponse,
  GetMaterialResponse,
  ListBodiesData,
  ListBodiesResponse,
  ListExpansionModelsData,
  ListExpansionModelsResponse,
  ListMaterialsData,
  ListMaterialsResponse,
  ListSourcesData,
  ListSourcesResponse,
} from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { ListCall } from "../page.ts";
import type { Transport } from "../transport.ts";

type Item<L extends { data: unknown[] }> = L["data"][number];

/** `client.materials` */
export class Materials {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Built-in, supplier-neutral materials with analysis [wt %], loss on ignition [wt %], spread and source.
   * @param query - filters, page size [-] and cursor
   * @returns one page when awaited, every material when iterated
   * @example
   * for await (const material of client.materials.list({ kind: "feldspars" })) console.log(material.id);
   */
  list(query?: ListMaterialsData["query"], options?: CallOptions): ListCall<Item<ListMaterialsResponse>> {
    return new ListCall(this.#transport, "/v1/materials", query, options);
  }

  /**
   * One material: analysis [wt %], loss on ignition [wt %], spread and source.
   * @param id - for example `whiting`
   * @throws NotFoundError with the closest known id when there is none of that name
   * @example
   * const whiting = await client.materials.get("whiting");
   */
  get(id: string, options?: CallOptions): Call<GetMaterialResponse> {
    const request = { method: "GET", path: `/v1/materials/${segment(id)}` } as const;
    return new Call(this.#transport.json<GetMaterialResponse>(request, options));
  }
}

/** `client.bodies` */
export class Bodies {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Classes of fired clay with their ranges of expansion [1e-6/K], absorption [%] and stiffness [GPa], and source.
   * @returns one page when awaited, every class when iterated
   * @example
   * for await (const body of client.bodies.list()) console.log(body.id);
   */
  list(query?: ListBodiesData["query"], options?: CallOptions): ListCall<Item<ListBodiesResponse>> {
    return new ListCall(this.#transport, "/v1/bodies", query, options);
  }

  /**
   * One class of body: expansion [1e-6/K], absorption [%], stiffness [GPa] and source.
   * @param id - for example `red-stoneware`
   * @throws NotFoundError with the closest known id when there is none of that name
   * @example
   * const redStoneware = await client.bodies.get("red-stoneware");
   */
  get(id: string, options?: CallOptions): Call<GetBodyResponse> {
    const request = { method: "GET", path: `/v1/bodies/${segment(id)}` } as const;
    return new Call(this.#transport.json<GetBodyResponse>(request, options));
  }
}

/** `client.expansionModels` */
export class ExpansionModels {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * The measured-glass model and every published set: basis, range [°C], oxides, error against measurement [1e-6/K].
   * Under `properties` of the first, how close every other fitted property comes, each in its unit.
   * @returns one page when awaited, every model when iterated
   * @example
   * for await (const model of client.expansionModels.list()) console.log(model.id);
   */
  list(query?: ListExpansionModelsData["query"], options?: CallOptions): ListCall<Item<ListExpansionModelsResponse>> {
    return new ListCall(this.#transport, "/v1/expansion-models", query, options);
  }
}

/** `client.sources` */
export class Sources {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * The bibliography: what every `sources` key in an answer stands for.
   * @returns one page when awaited, every source when iterated
   * @example
   * for await (const source of client.sources.list()) console.log(source.key);
   */
  list(query?: ListSourcesData["query"], options?: CallOptions): ListCall<Item<ListSourcesResponse>> {
    return new ListCall(this.#transport, "/v1/sources", query, options);
  }
}

/** An id as one piece of a path. Empty and dotted ids would quietly ask for something else. */
function segment(id: string): string {
  if (/^\.{0,2}$/.test(id)) throw new RingtrueError(`An id is needed here, and ${JSON.stringify(id)} is none.`);
  return encodeURIComponent(id);
}
