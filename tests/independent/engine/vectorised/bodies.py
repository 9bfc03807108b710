"""Bodies of many questions: their figures side by side, and how they shrink."""

import numpy as np
from reckon.body import LEAST_MATRIX_SHARE, MATRIX_MIDDLE_C, MATRIX_RISE, MATRIX_RISE_SD, facts, mean_of, mineral
from reckon.read import table

CURVES = {
    name: np.array(table("bodies/phases")["phases"][name]["points"]).T * [[1], [0.01]]
    for name in ("quartz", "cristobalite")
}
CLASSES = {row["id"]: row for row in table("bodies/classes")["classes"]}
SPREADS = ("youngs", "moisture", "rupture", "quartz", "cristobalite")


def strain(name, c):
    xs, ys = CURVES[name]
    return np.interp(c, xs, ys)


def clays(questions):
    """Scalars of each body, one row a question."""
    rows = []
    for question in questions:
        told = question["body"]
        row = CLASSES[told["class"]]
        body, mean = facts(told, row), mean_of(told, row)
        quartz = mineral(told, "quartzPercent", row, "quartzFraction", 2450 / 2650)
        cristobalite = mineral(told, "cristobalitePercent", row, "cristobaliteFraction", 2450 / 2330)
        spreads = [body["youngsGPa"], body["moisturePercent"], body["ruptureMPa"], quartz, cristobalite]
        numbers = [*mean["rangeC"], mean["value"], mean["sd"], row["quartzFactor"], body["poisson"]]
        rows.append(numbers + [spread[key] for spread in spreads for key in ("value", "sd", "floor")])
    names = ["a", "b", "mean", "meanSd", "factor", "poisson"]
    names += [f"{what}{key}" for what in SPREADS for key in ("", "Sd", "Floor")]
    return dict(zip(names, np.array(rows, float).T[:, :, None], strict=True))


def contraction(body, c, z):
    k = MATRIX_RISE + MATRIX_RISE_SD * z["bodyRise"]
    length = lambda t: (t - 20) * (1 + k * ((t + 20) / 2 - MATRIX_MIDDLE_C))
    a, b = body["a"], body["b"]
    whole = (body["mean"] + body["meanSd"] * z["bodyMean"]) * 1e-6 * (b - a)
    q = np.maximum(body["quartz"] + body["quartzSd"] * z["bodyQuartz"], 0) * body["factor"]
    x = np.maximum(body["cristobalite"] + body["cristobaliteSd"] * z["bodyCristobalite"], 0)
    wanted = q * (strain("quartz", b) - strain("quartz", a)) + x * (
        strain("cristobalite", b) - strain("cristobalite", a)
    )
    room = np.maximum((1 - LEAST_MATRIX_SHARE) * whole, 0)
    kept = np.minimum(room / np.maximum(wanted, 1e-300), 1)
    matrix = (whole - kept * wanted) / (length(b) - length(a))
    return matrix * length(c) + kept * (q * strain("quartz", c) + x * strain("cristobalite", c))
