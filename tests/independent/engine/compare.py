"""Recomputes every answer of the engine from the documented formulas, and reports the largest disagreement a quantity.

    python3 compare.py ASKED.json [--record README.md]

Exits with 1 where anything disagrees by more than 1e-9. `--record` puts the table by parts into the README.
"""

import json
import re
import sys

import numpy as np
import scipy
from against.body import compare_body, compare_mixture
from against.chemistry import compare_batch, compare_glaze, compare_materials
from against.fit import compare_fit
from against.glass import compare_glass
from against.mechanics import compare_draws, compare_mechanics, compare_quantile
from against.table import LIMIT, Table


def compared(asked):
    t = Table()
    compare_materials(asked, t)
    for i, row in enumerate(asked["batches"]):
        compare_batch(i, row, t)
    for i, row in enumerate(asked["glazes"]):
        if "answer" in row:
            ours = compare_glaze(i, row["question"], row["answer"]["chemistry"], t)
            compare_glass(i, row["question"], ours, row["answer"], asked["probabilities"], t)
    for i, row in enumerate(asked["bodies"]):
        if "answer" in row:
            compare_body(i, row["question"], row["answer"], t)
    for row in asked["mixtures"]:
        compare_mixture(row, t)
    for i, row in enumerate(asked["mechanics"]):
        compare_mechanics(i, row, t)
    for row in asked["draws"]:
        compare_draws(row, t)
    for row in asked["quantiles"]:
        compare_quantile(row, t)
    for i, row in enumerate(asked["fits"]):
        if "answer" in row:
            compare_fit(i, row["question"], row["answer"], t)
    return t


def record(path, lines):
    """Puts lines between the README's marks."""
    with open(path, encoding="utf-8") as file:
        text = file.read()
    block = "<!-- recorded -->\n" + "\n".join(lines) + "\n<!-- end -->"
    with open(path, "w", encoding="utf-8") as file:
        file.write(re.sub(r"<!-- recorded -->.*<!-- end -->", lambda _: block, text, flags=re.S))


def main(path, *options):
    with open(path, encoding="utf-8") as file:
        asked = json.load(file)
    t = compared(asked)
    print("\n".join(t.lines()))
    counts = [f"{len(asked[name])} {name}" for name in ("glazes", "bodies", "fits")]
    refused = sum("refused" in row for name in ("glazes", "bodies", "fits") for row in asked[name])
    total = sum(row["n"] for row in t.rows.values())
    apart = t.apart()
    told = (
        f"{', '.join(counts)} from seed {asked['seed']}, {refused} of them refused by the engine: {total:,} figures of "
        f"{len(t.rows)} quantities compared, {len(apart)} quantities apart by more than {LIMIT:g}. "
        f"numpy {np.__version__}, scipy {scipy.__version__}."
    )
    print("\n" + told)
    if "--record" in options:
        record(options[options.index("--record") + 1], [told, "", *t.by_part()])
    return 1 if apart else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
