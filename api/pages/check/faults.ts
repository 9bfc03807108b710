/** Words under fields: where, what was read, the likely fix as a button. @module */
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import { fromService, localise } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import type { FieldFault } from "./request.ts";

/** A remark of the service at a field, which is no fault. */
export type FieldRemark = Pick<FieldFault, "field" | "message">;

/**
 * How the service says that a number is out of bounds: by the name of its own field, in its own units, and between the
 * two what may have been meant.
 */
const OUT_OF_BOUNDS = /(?:Item \d+ of )?`\w+` is [-+.\de]+\. (.*)It must be ([^`]+)\.$/;

/**
 * The same by what was typed, and by bounds in the unit of the field. What may have been meant is in the service's unit,
 * so it is told only where the field has that.
 * @param sign - unit that stands in the field
 * @example sayBounds("`wallMm` is 304.8. It must be 100 or less.", "12", "in")
 * // "“12” does not go here. It must be 3.937 in or less."
 */
export function sayBounds(message: string, typed: string, sign: string): string {
  return message.replace(OUT_OF_BOUNDS, (_, meant: string, allowed: string) =>
    fill(words.field.outOfBounds, {
      text: typed.trim(),
      meant: sign === "in" || sign.startsWith("°F") ? "" : meant,
      allowed: fromService(allowed, sign),
    }),
  );
}

/** A fault as the person at the field knows it: by the field's label, what was typed, and the unit that stands there. */
export function inFieldWords({ field, message }: FieldRemark): string {
  const input = document.getElementById(field);
  if (!(input instanceof HTMLInputElement)) return message;
  const sign = document.getElementById(`${field}-unit`)?.textContent ?? "";
  const said = sayBounds(message, input.value, sign);
  const temperature = sign.startsWith("°F") ? "F" : "C";
  const inUnits = localise(said, { temperature, length: sign === "in" ? "in" : "mm" });
  const label = document.querySelector(`label[for="${CSS.escape(field)}"]`)?.textContent;
  return said === message || !label ? inUnits : `${label}: ${inUnits}`;
}

/**
 * Shows what is amiss under each field and takes away what is mended. A field being typed in is left in peace until it
 * is left.
 * @param use - told of a fix that was taken
 */
export function showFaults(
  form: HTMLElement,
  faults: readonly FieldFault[],
  remarks: readonly FieldRemark[],
  use: (field: string, fix: string) => void,
): void {
  const active = document.activeElement;
  for (const input of form.querySelectorAll<HTMLElement>("[data-field]")) {
    const field = input.dataset.field!;
    const fault = faults.find((one) => one.field === field);
    const remark = remarks.find((one) => one.field === field);
    const noteId = `${field}-note`;
    const old = document.getElementById(noteId);
    // While someone types, a word already shown may go, but none comes.
    if (input === active && !old && fault) continue;
    const text = fault ? inFieldWords(fault) : remark?.message;
    if (old?.dataset.text === text) continue;
    // Whoever stands on a fix of a word that goes is put back at its field.
    if (old?.contains(active)) input.focus();
    old?.remove();
    input.toggleAttribute("aria-invalid", false);
    if (fault) input.setAttribute("aria-invalid", "true");
    const unit = document.getElementById(`${field}-unit`) ? `${field}-unit ` : "";
    if (!text) {
      if (unit) input.setAttribute("aria-describedby", unit.trim());
      else input.removeAttribute("aria-describedby");
      continue;
    }
    const fixes = fault?.fix ? [fault.fix] : (fault?.choices ?? []);
    const buttons = fixes.map((fix) => [
      " ",
      h("button", { class: "n", type: "button", onclick: () => use(field, fix) }, fill(words.field.use, { fix })),
    ]);
    const note = h("p", { class: fault ? "note bad" : "note", id: noteId, "data-text": text }, text, buttons);
    input.setAttribute("aria-describedby", unit + noteId);
    const row = input.closest(".row");
    if (row) row.append(note);
    else (input.closest(".unit") ?? input.parentElement!).append(note);
  }
}

/**
 * Shows what is amiss in a panel: under each field, and in its status line. A fix that is taken is typed into its field.
 * @param form - the panel's form
 * @param status - its status line
 */
export function showPanelFaults(form: HTMLElement, faults: readonly FieldFault[], status: HTMLElement): void {
  showFaults(form, faults, [], (field, fix) => {
    const input = form.querySelector<HTMLInputElement>(`#${CSS.escape(field)}`)!;
    input.value = fix;
    input.dispatchEvent(new Event("input"));
    input.focus();
    showPanelFaults(form, [], status);
  });
  const first = faults[0];
  if (first) status.textContent = first.field === "other" ? first.message : words.panel.atField;
}
