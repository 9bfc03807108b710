/**
 * Every address of the service.
 *
 * @module
 */
import type { Api } from "../http/operation.ts";
import { bodyRoutes } from "./bodies.ts";
import { chemistryRoutes } from "./chemistry.ts";
import { expansionRoutes } from "./expansion.ts";
import { expansionModelRoutes } from "./expansion-models.ts";
import { fitRoutes } from "./fit.ts";
import { healthRoutes } from "./health.ts";
import { materialRoutes } from "./materials.ts";
import { openapiRoutes } from "./openapi.ts";
import { type AssetLoader, referenceRoutes } from "./reference.ts";
import { sourceRoutes } from "./sources.ts";

/** Mounts them all. */
export function mountRoutes(api: Api, loadAsset?: AssetLoader): void {
  // Judged and worked out.
  fitRoutes(api);
  expansionRoutes(api);
  chemistryRoutes(api);
  // Looked up.
  materialRoutes(api);
  bodyRoutes(api);
  expansionModelRoutes(api);
  sourceRoutes(api);
  // The service itself.
  healthRoutes(api);
  openapiRoutes(api);
  referenceRoutes(api, loadAsset);
}
