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

    def _row(self, name, n):
        row = self.rows.setdefault(name, {"n": 0, "worst": 0.0, "where": ""})
        row["n"] += n
        return row

    def add(self, name, ours, theirs, where):
        """Two figures, lists or records of the same shape, compared figure by figure."""
        here, there = list(leaves(ours)), list(leaves(theirs))
        row = self._row(name, len(there))
        paths = [path for path, _ in here]
        if paths != [path for path, _ in there]:
            lone = sorted(set(paths) ^ {path for path, _ in there})
            row.update(worst=np.inf, where=f"{where}: only one has {lone[:4]}")
            return
        a, b = np.array([v for _, v in here], float), np.array([v for _, v in there], float)
        if not len(a):
            return
        largest = np.max(np.nan_to_num(np.abs(b)))
        size = np.maximum(np.maximum(np.abs(a), np.abs(b)), largest * LEAST_SIZE)
        both_none = np.isnan(a) & np.isnan(b)
        off = np.where((a == b) | both_none, 0.0, np.abs(a - b) / np.where(size > 0, size, 1))
        off = np.where(np.isnan(off), np.inf, off)
        i = int(np.argmax(off))
        if off[i] > row["worst"]:
            row.update(worst=float(off[i]), where=f"{where} {paths[i]}: {a[i]:.12g} here, {b[i]:.12g} there")

    def same(self, name, ours, theirs, where):
        """Counts and words: equal or not."""
        row = self._row(name, int(np.size(theirs)))
        if not np.array_equal(ours, theirs):
            row.update(worst=np.inf, where=f"{where}: {ours} here, {theirs} there"[:200])

    def rounded(self, name, ours, theirs, unit, where):
        """Figures that the engine gives rounded to `unit`: equal when none is further off than half of it."""
        here, there = dict(leaves(ours)), dict(leaves(theirs))
        row = self._row(name, len(there))
        for path in here.keys() | there.keys():
            a, b = here.get(path, np.nan), there.get(path, np.nan)
            if not (abs(a - b) <= unit / 2 + 1e-9) and not (np.isnan(a) and np.isnan(b)):
                row.update(worst=np.inf, where=f"{where} {path}: {a:.6g} here, {b:.6g} there, rounded to {unit:g}")

    def apart(self):
        """Quantities that disagree."""
        return [name for name, row in self.rows.items() if not row["worst"] <= LIMIT]

    def lines(self):
        """One line a quantity."""
        for name, row in self.rows.items():
            note = "" if row["worst"] <= LIMIT else f"  APART {row['where']}"
            yield f"{name:46}{row['n']:>9,}  {row['worst']:.1e}{note}"

    def by_part(self):
        """Rows of a Markdown table, one for each part of the engine, with what disagrees by name."""
        yield "| part | quantities | figures | largest disagreement | apart |"
        yield "|---|---:|---:|---:|---|"
        parts = dict.fromkeys(name.split(": ")[0] for name in self.rows)
        for part in parts:
            rows = {name: row for name, row in self.rows.items() if name.split(": ")[0] == part}
            agree = [row["worst"] for row in rows.values() if row["worst"] <= LIMIT]
            apart = "; ".join(name.split(": ")[1] for name, row in rows.items() if not row["worst"] <= LIMIT)
            n = sum(row["n"] for row in rows.values())
            yield f"| {part} | {len(rows)} | {n:,} | {max(agree, default=np.nan):.0e} | {apart} |"


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
