/**
 * Every address of the service.
 *
 * @module
 */
import type { Api } from "../http/operation.ts";
import type { PageFileLoader } from "../pages/files.ts";
import { batchRoutes } from "./batches.ts";
import { blendRoutes } from "./blends.ts";
import { bodyRoutes } from "./bodies.ts";
import { chemistryRoutes } from "./chemistry.ts";
import { evidenceRoutes } from "./evidence.ts";
import { expansionRoutes } from "./expansion.ts";
import { expansionModelRoutes } from "./expansion-models.ts";
import { fitRoutes } from "./fit.ts";
import type { PngDrawer } from "./fit-picture.ts";
import { healthRoutes } from "./health.ts";
import { materialRoutes } from "./materials.ts";
import { openapiRoutes } from "./openapi.ts";
import { pageRoutes } from "./pages.ts";
import { type AssetLoader, referenceRoutes } from "./reference.ts";
import { remedyRoutes } from "./remedies.ts";
import { rulerRoutes } from "./rulers.ts";
import { runningRoutes } from "./running.ts";
import { shrinkageRoutes } from "./shrinkage.ts";
import { sizeRoutes } from "./sizes.ts";
import { sourceRoutes } from "./sources.ts";

/** What a runtime lends to the routes. */
export interface Lent {
  /** Reads a file of the reference page; where left out, /reference says where the description is. */
  loadAsset?: AssetLoader;
  /** Reads or builds a file behind the pages; where left out, pages show a worked answer and no more. */
  loadPageFile?: PageFileLoader;
  /** Draws pictures as PNG; where left out, they are SVG alone. */
  drawPng?: PngDrawer;
  /** Where callers reach the service, for the front page's example; `http://localhost:4600` if left out. */
  address?: string;
}

/** Mounts them all. */
export function mountRoutes(api: Api, lent: Lent = {}): void {
  const { loadAsset, loadPageFile, address = "http://localhost:4600" } = lent;
  // Judged and worked out.
  fitRoutes(api, lent.drawPng);
  expansionRoutes(api);
  chemistryRoutes(api);
  evidenceRoutes(api);
  remedyRoutes(api);
  blendRoutes(api);
  runningRoutes(api);
  // At the wheel and the bucket.
  sizeRoutes(api);
  shrinkageRoutes(api);
  rulerRoutes(api);
  batchRoutes(api);
  // Looked up.
  materialRoutes(api);
  bodyRoutes(api);
  expansionModelRoutes(api);
  sourceRoutes(api);
  // The service itself.
  pageRoutes(api, address, loadPageFile);
  healthRoutes(api);
  openapiRoutes(api);
  referenceRoutes(api, loadAsset);
}
