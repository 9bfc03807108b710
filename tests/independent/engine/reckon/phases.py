"""Thermal strain of the phases of fired bodies, and of mixtures of them."""

import numpy as np

from .read import table


def line(xs, ys, at):
    """Linear between points, the end segments carried on."""
    xs, ys, at = np.asarray(xs, float), np.asarray(ys, float), np.asarray(at, float)
    i = np.clip(np.searchsorted(xs, at, side="right") - 1, 0, len(xs) - 2)
    return ys[i] + (ys[i + 1] - ys[i]) * (at - xs[i]) / (xs[i + 1] - xs[i])


def sampled(strain, at):
    """The same read off a table every 2.5 °C from 20 to 1000, as the docstrings say of curves and mixtures."""
    grid = 20 + 2.5 * np.arange(393)
    return line(grid, strain(grid), at)


def phase(name):
    row = table("bodies/phases")["phases"][name]
    if "points" in row:
        xs, ys = np.array(row["points"], float).T
        mean = row.get("ceramicMean20To1000")
        share = mean * 1e-6 * 980 / (ys[-1] / 100) if mean else 1
        strain = lambda c: line(xs, ys / 100, c) * share
    else:
        strain = lambda c: row["meanExpansion"]["value"] * 1e-6 * (np.asarray(c, float) - 20)
    known = row["youngsGPa"] is not None
    young, poisson = (row["youngsGPa"], row["poisson"]) if known else (70, 0.2)
    return {
        "strain": strain,
        "bulk": young / (3 * (1 - 2 * poisson)),
        "shear": young / (2 * (1 + poisson)),
        "density": row["densityKgPerM3"],
    }


def mixture(fractions, c, quartz_factor=1.0, matrix="glass"):
    """Strain of a mixture by Kerner, Turner and by volume."""
    total = sum(fractions.values())
    shear = phase(matrix)["shear"]
    linear = turner = bulks = kerner = stiffs = 0.0
    for name, fraction in fractions.items():
        part = phase(name)
        strain = part["strain"](c) * (quartz_factor if name == "quartz" else 1)
        share, bulk = fraction / total, part["bulk"]
        stiff = bulk / (3 * bulk + 4 * shear)
        linear = linear + share * strain
        turner, bulks = turner + share * strain * bulk, bulks + share * bulk
        kerner, stiffs = kerner + share * strain * stiff, stiffs + share * stiff
    return {"linear": linear, "turner": turner / bulks, "kerner": kerner / stiffs}


def to_volume(masses):
    volumes = {name: m / phase(name)["density"] for name, m in masses.items()}
    return {name: v / sum(volumes.values()) for name, v in volumes.items()}
