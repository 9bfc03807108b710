/** The fields of the tiles, built from what is typed in them. @module */
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import words from "../../words.json" with { type: "json" };
import { choiceField, numberField, segments } from "../fields.ts";
import { type Fate, isQuench, type TilesDraft, usualNumber } from "./tiles.ts";
import { isTimed, labelOf } from "./tiles-question.ts";

const { evidence: say } = words;

export interface TileFormTold {
  typed(): void;
  /** Something was chosen, added or taken away: build anew. */
  changed(focus: string): void;
}

export function tileForm(
  draft: TilesDraft,
  bodies: readonly { id: string; name: string }[],
  told: TileFormTold,
): HTMLElement[] {
  const known = Object.entries(say.knownOf);
  const clays = [["bench", say.bench] as const, ...bodies.map(({ id, name }) => [id, capital(name)] as const)];
  const about = segments("known", say.known, draft.known, known, (value) => {
    draft.known = value as TilesDraft["known"];
    told.typed();
  });
  const tiles = draft.tiles.map((tile, i) => {
    const name = fill(say.tile, { n: i + 1 });
    const kept = clays.some(([id]) => id === tile.clay) ? clays : [...clays, [tile.clay, tile.clay] as const];
    const drop = () => {
      draft.tiles.splice(i, 1);
      told.changed("tile-add");
    };
    const put = (field: "coat" | "number") => (value: string) => {
      tile[field] = value;
      told.typed();
    };
    const fate = choiceField(`tile-${i}-fate`, say.fate, tile.fate, Object.entries(say.fates), (value) => {
      tile.fate = value as Fate;
      tile.number = usualNumber(tile.fate, draft.units);
      told.changed(`tile-${i}-fate`);
    });
    const unit = isQuench(tile.fate) ? `°${draft.units.temperature}` : say.days;
    return h(
      "fieldset",
      { class: "asks tile" },
      h("legend", {}, name),
      choiceField(`tile-${i}-clay`, say.clay, tile.clay, kept, (value) => {
        tile.clay = value;
        told.typed();
      }),
      numberField(`tile-${i}-coat`, say.coat, tile.coat, draft.units.length, put("coat")),
      fate,
      isTimed(tile.fate) ? numberField(`tile-${i}-number`, labelOf(tile.fate), tile.number, unit, put("number")) : null,
      draft.tiles.length > 1
        ? h(
            "button",
            { class: "btn bare", type: "button", onclick: drop },
            fill(say.drop, { tile: name.toLowerCase() }),
          )
        : null,
    );
  });
  return [h("p", { class: "lab gap", "aria-hidden": "true" }, say.known), about, ...tiles];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
