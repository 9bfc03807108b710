/** A blend as a table in a file: the one that the service gives. @module */
import { csvHeading, csvRow } from "../../../engine/blends/as-csv.ts";
import { h } from "../../shared/dom.ts";
import type { Tile } from "./ask-blend.ts";

/** @param names - of the corners */
export function saveTable(names: readonly string[], tiles: readonly Tile[]): void {
  const text = csvHeading(names) + tiles.map(csvRow).join("");
  const url = URL.createObjectURL(new Blob([text], { type: "text/csv;charset=utf-8" }));
  const slug =
    names
      .slice(0, 4)
      .join("-")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "") || "blend";
  h("a", { href: url, download: `${slug}.csv` }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
