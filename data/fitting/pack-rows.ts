/** Packs the measured glasses for the search of nearest ones. @module */
import { packRows } from "../../api/engine/glass/near/row-table.ts";
import { rowsFor } from "./fit-property.ts";
import type { GlassRow } from "./read-glasses.ts";
import { SPECS } from "./specs.ts";

/** Columns that are packed, in the order of the layout. */
const PACKED = ["expansion", "transition", "youngs"].map((id) => SPECS.find((spec) => spec.id === id)!);

/** Glasses with a believable expansion, transition or Young's modulus, as data/glasses/rows.json holds them. */
export function packedFile(glasses: readonly GlassRow[]) {
  const columns = PACKED.map((spec) => new Set(rowsFor(spec, glasses)));
  const rows = glasses.filter((glass) => columns.some((column) => column.has(glass)));
  const value = (glass: GlassRow, at: number) =>
    columns[at]!.has(glass) ? glass.measured[PACKED[at]!.column] : undefined;
  return {
    title: "Measured glasses in compact form",
    licence:
      "Derived from SciGlass, Copyright (c) 2019 EPAM Systems; under the Open Database License 1.0. See README.md.",
    layout: "api/engine/glass/near/row-table.ts",
    glasses: rows.length,
    rows: packRows(
      rows.map((glass) => ({
        ...glass,
        expansion: value(glass, 0),
        transitionC: value(glass, 1),
        youngsGPa: value(glass, 2),
      })),
    ),
  };
}
