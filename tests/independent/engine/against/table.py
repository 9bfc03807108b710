"""What was compared, and how far apart it came out."""

import base64

import numpy as np

LIMIT = 1e-9
# A stress is the difference of two contractions, each many times as large: below this share of the largest figure of
# its kind in the same answer it has no digits left to compare.
LEAST_SIZE = 1e-2


class Table:
    """Largest disagreement and number of figures, by quantity; a quantity is named `part: what`."""

    def __init__(self):
        self.rows = {}

    def _note(self, name, n, off, where, words):
        """Enters one answer: how many figures, how far off the worst of them, and what to say where that is too far."""
        new = {"n": 0, "answers": 0, "apart": 0, "agree": 0.0, "worst": 0.0, "words": ""}
        row = self.rows.setdefault(name, new)
        row["n"] += n
        row["answers"] += 1
        if off <= LIMIT:
            row["agree"] = max(row["agree"], off)
            return
        row["apart"] += 1
        if off > row["worst"]:
            row.update(worst=off, words=f"{where}{words()}"[:200])

    def add(self, name, ours, theirs, where):
        """Two figures, lists or records of the same shape, compared figure by figure."""
        here, there = list(leaves(ours)), list(leaves(theirs))
        paths = [path for path, _ in here]
        if paths != [path for path, _ in there]:
            lone = sorted(set(paths) ^ {path for path, _ in there})
            self._note(name, len(there), np.inf, where, lambda: f": only one has {lone[:4]}")
            return
        if not paths:
            return
        a, b = np.array([v for _, v in here], float), np.array([v for _, v in there], float)
        largest = np.max(np.nan_to_num(np.abs(b)))
        size = np.maximum(np.maximum(np.abs(a), np.abs(b)), largest * LEAST_SIZE)
        both_none = np.isnan(a) & np.isnan(b)
        off = np.where((a == b) | both_none, 0.0, np.abs(a - b) / np.where(size > 0, size, 1))
        off = np.where(np.isnan(off), np.inf, off)
        i = int(np.argmax(off))
        self._note(name, len(b), float(off[i]), where, lambda: f"{paths[i]}: {a[i]:.12g} here, {b[i]:.12g} there")

    def same(self, name, ours, theirs, where):
        """Counts and words: equal or not."""
        off = 0.0 if np.array_equal(ours, theirs) else np.inf
        self._note(name, int(np.size(theirs)), off, where, lambda: f": {ours} here, {theirs} there")

    def rounded(self, name, ours, theirs, unit, where):
        """Figures that the engine gives rounded to `unit`: equal when none is further off than half of it."""
        here, there = dict(leaves(ours)), dict(leaves(theirs))
        pairs = {path: (here.get(path, np.nan), there.get(path, np.nan)) for path in here.keys() | there.keys()}
        near = lambda a, b: abs(a - b) <= unit / 2 + 1e-9 or (np.isnan(a) and np.isnan(b))
        far = {path: pair for path, pair in pairs.items() if not near(*pair)}
        self._note(name, len(there), np.inf if far else 0.0, where, lambda: f" {next(iter(far.items()))} to {unit:g}")

    def apart(self):
        """Quantities that disagree."""
        return [name for name, row in self.rows.items() if row["apart"]]

    def lines(self):
        """One line a quantity."""
        for name, row in self.rows.items():
            apart = f"  APART in {row['apart']} of {row['answers']}: {row['words']}" if row["apart"] else ""
            yield f"{name:46}{row['n']:>9,}  {row['agree']:.1e}{apart}"

    def by_part(self):
        """Rows of a Markdown table, one for each part of the engine, with what disagrees by name."""
        yield "| part | quantities | figures | largest disagreement where none is apart | apart (answers) |"
        yield "|---|---:|---:|---:|---|"
        parts = dict.fromkeys(name.split(": ")[0] for name in self.rows)
        for part in parts:
            rows = {name.split(": ")[1]: row for name, row in self.rows.items() if name.split(": ")[0] == part}
            n = sum(row["n"] for row in rows.values())
            most = max(row["agree"] for row in rows.values())
            apart = "; ".join(
                f"{what} ({row['apart']} of {row['answers']})" for what, row in rows.items() if row["apart"]
            )
            yield f"| {part} | {len(rows)} | {n:,} | {most:.0e} | {apart} |"


def leaves(value, path=""):
    """Numbers of a record with their paths, in an order that does not depend on how it was built."""
    if isinstance(value, dict):
        for key in sorted(value):
            yield from leaves(value[key], f"{path}/{key}")
    elif isinstance(value, (list, tuple)) or np.ndim(value):
        for i, item in enumerate(value):
            yield from leaves(item, f"{path}/{i}")
    else:
        yield path, np.nan if value is None else float(value)


def unpacked(text):
    """An array of doubles, as `ask.ts` packs them."""
    return np.frombuffer(base64.b64decode(text), dtype="<f8")
