/** Where the tiles of a blend stand in its picture. @module */

/** The box of one tile [px]. */
export interface TilePlace {
  /** As scratched into its back. */
  label: string;
  left: number;
  top: number;
  width: number;
  height: number;
}

/** What a drawer leaves behind. */
export interface Drawn {
  /** Where the drawing ends [px]. */
  height: number;
  places: TilePlace[];
}
