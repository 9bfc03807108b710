/** The fitted properties, read once. @module */
import expansionFile from "../../../data/models/expansion.json" with { type: "json" };
import transitionFile from "../../../data/models/transition.json" with { type: "json" };
import youngsFile from "../../../data/models/youngs.json" with { type: "json" };
import { measuredModel } from "./measured-model.ts";
import type { ModelFile } from "./model-file.ts";

/** Mean linear expansion 20–300 °C [1e-6/K]. */
export const EXPANSION = measuredModel(expansionFile as unknown as ModelFile);
/** Glass transition as usually reported [°C]. */
export const TRANSITION = measuredModel(transitionFile as unknown as ModelFile);
/** Young's modulus at room temperature [GPa]. */
export const YOUNGS = measuredModel(youngsFile as unknown as ModelFile);
