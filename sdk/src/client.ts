/** The front door. @module */
import { Call } from "./call.ts";
import type { GetHealthResponse } from "./generated/types.gen.ts";
import type { CallOptions, ClientOptions } from "./options.ts";
import { Batches } from "./resources/batches.ts";
import { Blends } from "./resources/blends.ts";
import { Bodies, ExpansionModels, Materials, Sources } from "./resources/catalogue.ts";
import { Chemistry } from "./resources/chemistry.ts";
import { Evidence } from "./resources/evidence.ts";
import { Expansion } from "./resources/expansion.ts";
import { Fit } from "./resources/fit.ts";
import { Remedies } from "./resources/remedies.ts";
import { Rulers } from "./resources/rulers.ts";
import { Running } from "./resources/running.ts";
import { Shrinkage } from "./resources/shrinkage.ts";
import { Sizes } from "./resources/sizes.ts";
import { Transport } from "./transport.ts";

/**
 * Client of a Ringtrue service, over the network or in process. Holds no state: make one and share it.
 * @example
 * const client = new Ringtrue({ baseUrl: "http://localhost:4600" });
 */
export class Ringtrue {
  /** Will this glaze fit this clay? */
  readonly fit: Fit;
  /** Thermal expansion of a glaze [1e-6/K]. */
  readonly expansion: Expansion;
  /** Oxides of a recipe, every way [wt %, mol %, mol]. */
  readonly chemistry: Chemistry;
  /** What a glaze must be, going by its tiles [1e-6/K]. */
  readonly evidence: Evidence;
  /** How far a glaze runs down a wall [mm]. */
  readonly running: Running;
  /** The least changes that make a glaze fit [parts, mm, K/h]. */
  readonly remedies: Remedies;
  /** Lines, triangles and grids of glazes, every mixture judged [1e-6/K, MPa]. */
  readonly blends: Blends;
  /** What to throw for the size wanted fired [mm, cm, in]. */
  readonly sizes: Sizes;
  /** Shrinkage of a clay from measured bars [%]. */
  readonly shrinkage: Shrinkage;
  /** Rulers, ribs and gauges to print at true scale [mm]. */
  readonly rulers: Rulers;
  /** Batch sheets: weights [g], water [g], specific gravity [-]. */
  readonly batches: Batches;
  /** Built-in materials [wt %]. */
  readonly materials: Materials;
  /** Classes of body [1e-6/K, %, GPa]. */
  readonly bodies: Bodies;
  /** The ways of computing expansion, with their measured error [1e-6/K]. */
  readonly expansionModels: ExpansionModels;
  /** Bibliography. */
  readonly sources: Sources;
  readonly #transport: Transport;

  /** @param options - address, connection, patience [ms] and retries [-] */
  constructor(options: ClientOptions = {}) {
    const transport = new Transport(options);
    this.#transport = transport;
    this.fit = new Fit(transport);
    this.expansion = new Expansion(transport);
    this.chemistry = new Chemistry(transport);
    this.evidence = new Evidence(transport);
    this.running = new Running(transport);
    this.remedies = new Remedies(transport);
    this.blends = new Blends(transport);
    this.sizes = new Sizes(transport);
    this.shrinkage = new Shrinkage(transport);
    this.rulers = new Rulers(transport);
    this.batches = new Batches(transport);
    this.materials = new Materials(transport);
    this.bodies = new Bodies(transport);
    this.expansionModels = new ExpansionModels(transport);
    this.sources = new Sources(transport);
  }

  /**
   * Whether the service is up, and which version answers.
   * @example
   * const health = await client.health();
   */
  health(options?: CallOptions): Call<GetHealthResponse> {
    return new Call(this.#transport.json<GetHealthResponse>({ method: "GET", path: "/health" }, options));
  }
}
