/**
 * Sheets as PDF at true scale.
 *
 * A writer of our own, because what is drawn is lines and a standard font: the libraries that lay out pages want a file
 * system or carry their fonts along, and would not run on edge runtimes.
 *
 * @module
 */
import { round } from "../quantity.ts";
import type { Label, SheetDrawing, Stroke } from "./drawing.ts";
import { textWidth } from "./letters.ts";

/** Points in a millimetre: an inch has 72 of them. */
const PT = 72 / 25.4;
const n = (points: number) => String(round(points, 4));

/**
 * A PDF 1.7 document, one page a sheet, in Helvetica with the WinAnsi character set. Readers are told not to scale it.
 * @param sheets - at least one
 * @param title - of the document
 * @returns the bytes, ASCII all through; letters beyond WinAnsi become ?
 */
export function toPdf(sheets: readonly SheetDrawing[], title: string): Uint8Array<ArrayBuffer> {
  const count = sheets.length;
  const pageId = (i: number) => 6 + 2 * i;
  const objects: string[] = [
    "<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>",
    `<< /Type /Pages /Count ${count} /Kids [${sheets.map((_, i) => `${pageId(i)} 0 R`).join(" ")}] >>`,
    "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>",
    "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica-Bold /Encoding /WinAnsiEncoding >>",
    `<< /Title ${literal(title)} /Producer (Ringtrue) >>`,
  ];
  for (const [i, sheet] of sheets.entries()) {
    const box = `[0 0 ${n(sheet.widthMm * PT)} ${n(sheet.heightMm * PT)}]`;
    const fonts = "/Resources << /Font << /F1 3 0 R /F2 4 0 R >> >>";
    const content = contentOf(sheet);
    objects.push(
      `<< /Type /Page /Parent 2 0 R /MediaBox ${box} ${fonts} /Contents ${pageId(i) + 1} 0 R >>`,
      `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    );
  }
  let text = "%PDF-1.7\n";
  const offsets = objects.map((object, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const start = text.length;
  const entries = offsets.map((at) => `${String(at).padStart(10, "0")} 00000 n \n`).join("");
  const size = objects.length + 1;
  text += `xref\n0 ${size}\n0000000000 65535 f \n${entries}`;
  text += `trailer\n<< /Size ${size} /Root 1 0 R /Info 5 0 R >>\nstartxref\n${start}\n%%EOF\n`;
  return new TextEncoder().encode(text);
}

function contentOf({ heightMm, strokes, labels }: SheetDrawing): string {
  const x = (mm: number) => n(mm * PT);
  // PDF counts upwards from the bottom of the page.
  const y = (mm: number) => n((heightMm - mm) * PT);
  const draw = ({ points, closed, width, dashed }: Stroke) => {
    const [first, ...rest] = points.map(([px, py]) => `${x(px)} ${y(py)}`);
    const path = [`${first} m`, ...rest.map((point) => `${point} l`), closed ? "h S" : "S"].join(" ");
    return `${n(width * PT)} w ${dashed ? `[${n(2 * PT)} ${n(1.5 * PT)}] 0 d` : "[] 0 d"} ${path}`;
  };
  const write = ({ text, x: px, y: py, size, anchor = "start", bold = false }: Label) => {
    const back = anchor === "start" ? 0 : textWidth(text, size, bold) / (anchor === "middle" ? 2 : 1);
    return `BT /${bold ? "F2" : "F1"} ${n(size * PT)} Tf ${x(px - back)} ${y(py)} Td ${literal(text)} Tj ET`;
  };
  return ["0 G 0 g 0 J 0 j", ...strokes.map(draw), ...labels.map(write)].join("\n");
}

/** Where WinAnsi keeps letters that Latin-1 has not; minus and thin blanks are stood in for. */
const WIN_ANSI: Readonly<Record<string, number>> = {
  "…": 0x85,
  "‘": 0x91,
  "’": 0x92,
  "“": 0x93,
  "”": 0x94,
  "•": 0x95,
  "–": 0x96,
  "—": 0x97,
  "−": 0x96,
  "\u2009": 0x20,
  "\u202f": 0x20,
};

/** A PDF string; bytes beyond ASCII are written as octal escapes. */
function literal(text: string): string {
  let out = "";
  for (const letter of text) {
    const code = letter.codePointAt(0)!;
    const byte = WIN_ANSI[letter] ?? (code < 0x20 || (code > 0x7e && code < 0xa0) || code > 0xff ? 0x3f : code);
    if (byte > 0x7e) out += `\\${byte.toString(8)}`;
    else out += "()\\".includes(String.fromCharCode(byte)) ? `\\${letter}` : String.fromCharCode(byte);
  }
  return `(${out})`;
}
