/** Comma-separated values by RFC 4180, as spreadsheets read and write them. @module */

/** The rows of a CSV text; cells may be quoted and hold commas, quotes and line ends. Empty rows are left out. */
export function parseCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  // A cell, quoted or plain, and what ends it. The mark that spreadsheets put before UTF-8 is no part of the first cell.
  const cells = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/y;
  const body = text.replace(/^\uFEFF/, "");
  while (cells.lastIndex < body.length) {
    const from = cells.lastIndex;
    const found = cells.exec(body);
    if (!found) {
      const line = body.slice(0, from).split("\n").length;
      throw new Error(
        `Line ${line} of the CSV has a quote out of place: put the whole cell in quotes and double those inside.`,
      );
    }
    row.push(fromCell(found[1]?.replaceAll('""', '"') ?? found[2]!.trim()));
    const last = cells.lastIndex >= body.length;
    if (found[3] === "," && last) row.push("");
    if (found[3] !== "," || last) {
      if (row.some((cell) => cell !== "")) rows.push(row);
      row = [];
    }
  }
  return rows;
}

/** CSV text of rows, each line ended by CR LF. */
export function formatCsv(rows: readonly (readonly (string | number)[])[]): string {
  const quoted = (cell: string) => (/[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  return rows.map((row) => `${row.map((cell) => quoted(toCell(cell))).join(",")}\r\n`).join("");
}

// A spreadsheet takes a text that begins like a formula for one and runs it; an apostrophe before it prevents that.
const toCell = (cell: string | number) =>
  typeof cell === "string" && /^'*[=+\-@\t\r]/.test(cell) && !isNumber(cell) ? `'${cell}` : String(cell);
const fromCell = (cell: string) => (/^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell);
const isNumber = (cell: string) => cell.trim() !== "" && Number.isFinite(Number(cell));
