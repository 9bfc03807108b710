/** What stands in the panel about mixing, as typed, and how it is kept in the browser. @module */

export type Kind = "line" | "triangle" | "grid" | "many";

export interface BlendDraft {
  kind: Kind;
  /** Which glaze stands at each corner: see `corners.ts`. */
  corners: string[];
  steps: string;
  /** Down the side of a grid; as many as across where nothing is typed. */
  down: string;
  /** Dry weight of one tile's glaze [g]. */
  grams: string;
}

/** Corners of each kind; of more there may be as many as there are glazes. */
export const CORNERS: Readonly<Record<Exclude<Kind, "many">, number>> = { line: 2, triangle: 3, grid: 4 };
export const LEAST_OF_MANY = 4;
/** Steps that suit each kind: tiles that a kiln shelf holds. */
const STEPS: Readonly<Record<Kind, string>> = { line: "10", triangle: "5", grid: "4", many: "3" };
const KEY = "ringtrue-blend";

export const isKind = (value: unknown): value is Kind => typeof value === "string" && value in STEPS;

/** Corners for a kind: those that are there, filled up with glazes that stand at none. */
export function cornersFor(kind: Kind, chosen: readonly string[], glazes: readonly string[]): string[] {
  const wanted = kind === "many" ? Math.max(chosen.length, LEAST_OF_MANY) : CORNERS[kind];
  const kept = chosen.slice(0, wanted).map((corner) => (glazes.includes(corner) ? corner : ""));
  const free = glazes.filter((glaze) => !kept.includes(glaze));
  while (kept.length < wanted) kept.push("");
  return kept.map((corner) => corner || free.shift() || glazes[0] || "");
}

/** Turns to another kind: its corners, each glaze at one, and steps that suit it. */
export function turnKind(draft: BlendDraft, kind: Kind, glazes: readonly string[]): void {
  draft.kind = kind;
  draft.corners = cornersFor(kind, [...new Set(draft.corners)], glazes);
  draft.steps = STEPS[kind];
  draft.down = "";
}

export function keepBlend(draft: BlendDraft): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {}
}

/** The panel of the last visit, as far as it can be read. */
export function keptBlend(): BlendDraft {
  const fresh: BlendDraft = { kind: "line", corners: [], steps: STEPS.line, down: "", grams: "100" };
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<BlendDraft>;
    if (!isKind(kept.kind) || !Array.isArray(kept.corners)) return fresh;
    const { kind, corners, steps, down, grams } = kept;
    return {
      kind,
      corners: corners.map(String),
      steps: String(steps ?? STEPS[kind]),
      down: String(down ?? ""),
      grams: String(grams ?? fresh.grams),
    };
  } catch {
    return fresh;
  }
}
