/** Sharing, pasting, saving and opening. @module */
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import words from "../words.json" with { type: "json" };
import type { PastedRecipe } from "./read-csv.ts";
import { readRecipes } from "./read-csv.ts";
import { toFragment, type Work } from "./work.ts";

function dialog(title: string, ...children: (Node | string)[]): HTMLDialogElement {
  const box = h("dialog", { "aria-labelledby": "dialog-title" }, h("h2", { id: "dialog-title" }, title), ...children);
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
  return box;
}

/** Shows the link that holds the whole question. */
export function shareDialog(work: Work): void {
  const { share } = words;
  const link = `${location.origin}/${toFragment(work)}`;
  const field = h("input", { id: "share-link", readonly: true, value: link, "aria-label": share.title });
  const status = h("p", { role: "status" });
  const copy = async () => {
    field.select();
    await navigator.clipboard?.writeText(link).then(
      () => (status.textContent = share.copied),
      () => {},
    );
  };
  const box = dialog(
    share.title,
    h("p", {}, share.text),
    h("p", {}, field),
    status,
    h(
      "div",
      { class: "acts2" },
      h("button", { class: "btn main", type: "button", onclick: copy }, share.copy),
      h("button", { class: "btn", type: "button", onclick: () => box.close() }, share.close),
    ),
  );
  field.select();
}

/** Takes a recipe as text. */
export function pasteDialog(take: (recipes: PastedRecipe[]) => void): void {
  const { paste } = words;
  const area = h("textarea", { id: "paste-text", spellcheck: "false" });
  const note = h("p", { class: "note bad", role: "alert", hidden: true });
  const use = () => {
    const { recipes, left } = readRecipes(area.value);
    if (recipes.length > 0 && (left.length === 0 || note.dataset.told === area.value)) {
      box.close();
      return take(recipes);
    }
    const rows = recipes[0]?.rows.length ?? 0;
    note.hidden = false;
    note.dataset.told = area.value;
    note.textContent = rows > 0 ? fill(paste.left, { rows, lines: left.join(", ") }) : paste.none;
  };
  const box = dialog(
    paste.title,
    h("p", {}, paste.text),
    h("p", {}, h("label", { for: "paste-text" }, paste.label), area),
    note,
    h(
      "div",
      { class: "acts2" },
      h("button", { class: "btn main", type: "button", onclick: use }, paste.take),
      h("button", { class: "btn", type: "button", onclick: () => box.close() }, paste.cancel),
    ),
  );
  area.focus();
}

/** Saves the work as a file. */
export function saveWork(work: Work): void {
  const name = (work.trials[0]?.name ?? "").toLowerCase().replace(/[^a-z0-9]+/g, "-") || "glaze";
  const url = URL.createObjectURL(new Blob([`${JSON.stringify(work, null, 2)}\n`], { type: "application/json" }));
  h("a", { href: url, download: `${name}.ringtrue.json` }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Buttons under the bench. */
export function fileButtons(told: {
  save(): void;
  open(name: string, text: string): void;
  empty(): void;
  sample(): void;
}): Node[] {
  const { check } = words;
  const picker = h("input", { type: "file", accept: ".json,application/json", hidden: true, id: "open-file" });
  picker.addEventListener("change", async () => {
    const [file] = picker.files ?? [];
    if (file) told.open(file.name, await file.text());
    picker.value = "";
  });
  const button = (id: string, word: string, onclick: () => void) =>
    h("button", { class: "btn bare", type: "button", id, onclick }, word);
  return [
    h("h2", { class: "sr" }, check.files),
    button("save", check.save, told.save),
    button("open", check.open, () => picker.click()),
    button("start", check.start, told.empty),
    button("sample", check.sample, told.sample),
    picker,
  ];
}
