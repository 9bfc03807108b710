"""Bodies and mixtures of phases."""

import numpy as np
from reckon import body, phases

DEVIATES = ("bodyMean", "bodyQuartz", "bodyCristobalite", "bodyRise")


def compare_body(i, question, told, t):
    where, ours = f"body {i}", body.describe(question)
    t.add("body: mean expansion", {key: ours["expansion"][key] for key in ("value", "sd")}, told["expansion"], where)
    for key in ("youngsGPa", "moisturePercent", "ruptureMPa"):
        t.add(f"body: {key}", ours[key], {"floor": None, **told[key]}, where)
    t.add("body: poisson", ours["poisson"], told["poisson"], where)
    way = next(key for key in ("curve", "phases", "expansion", "class") if key in question)
    for row in told["contraction"]:
        z = {name: row["z"].get(name, 0.0) for name in DEVIATES}
        c = np.array([point["c"] for point in row["at"]], float)
        t.add(f"body: strain curve by {way}", ours["contraction"](c, z), [p["strain"] for p in row["at"]], where)
    if told["bounds"]:
        mixed = phases.mixture(ours["fractions"], 640.0, ours["quartzFactor"])
        means = {rule: mixed[rule] / (640 - 20) * 1e6 for rule in ("turner", "linear")}
        t.rounded("body: bounds of a mixture", means, told["bounds"], 0.01, where)


def compare_mixture(row, t):
    t.add("mixture: volumes", phases.to_volume(row["masses"]), row["volume"], "mixture")
    for told in row["strain"]:
        ours = phases.mixture(row["masses"], told["c"])
        for rule in ("linear", "turner", "kerner"):
            t.add(f"mixture: {rule}", ours[rule], told[rule], str(row["masses"]))
