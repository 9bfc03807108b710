/** Words with gaps: the one place where figures and names are put into them. @module */

/**
 * Fills `{name}` gaps in a text; a gap without a value stays as it stands, so that it is seen.
 * @example fill("Row {row}, {material}", { row: 3, material: "Whiting" }) // "Row 3, Whiting"
 */
export function fill(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (gap, name: string) => (name in values ? String(values[name]) : gap));
}
