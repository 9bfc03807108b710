/** A judged blend as the page tells it, on the screen and on paper. @module */
import type { BlendShape } from "../../../engine/pictures/blends/mixtures.ts";
import type { Units } from "../../shared/units.ts";
import type { Tile } from "./ask-blend.ts";
import type { BlendQuestion } from "./blend-question.ts";

export interface BlendTold {
  blend: {
    headline: string;
    /** Names of the corners. */
    corners: string[];
    points: readonly Tile[];
  };
  shape: BlendShape;
  asked: BlendQuestion;
  /** What to mind with any of the tiles. */
  notices: readonly string[];
  units: Units;
}
