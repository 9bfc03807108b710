"""Single formulas of stress, cracking, lifting, bending and setting; and the draws."""

import numpy as np
from reckon import body, draws, glass
from reckon import mechanics as m
from reckon.mechanics import FIGURES, POISSON

from .table import unpacked

RING_M = 0.03


def compare_mechanics(i, row, t):
    told = row["answers"]
    for name, value in {**stresses(row), **limits(row), **bending(row), **setting(row)}.items():
        t.add(f"mechanics: {name}", value, told[name], f"mechanics {i}")


def stresses(row):
    pair, d = row["layers"], row["mismatch"]
    e, h, eb, wall, poisson = (pair[key] for key in ("glazePa", "glazeM", "bodyPa", "wallM", "bodyPoisson"))
    one = lambda faces: m.straight(e, h, eb, poisson, wall, d, faces)
    layers = [(c["pa"], c["thicknessM"], c["mismatch"]) for c in row["coats"]]
    stacked = lambda glazed: [np.ravel(stress)[0] for stress in m.stack(layers, eb, poisson, wall, glazed)]
    return {
        "thin": -m.biaxial(e, POISSON) * d,
        "straight2": one(2),
        "straight1": one(1),
        "bilayer": bilayer(pair, d),
        "bodyStress": -row["stress"] * 2 * h / wall,
        "stackBoth": stacked("both-faces"),
        "stackOne": stacked("one-face"),
        "stackFree": stacked("one-face-free"),
    }


def bilayer(pair, d):
    """Plate of two layers by balance of force and moment, the two equations as the docstring writes them."""
    e1, e2 = m.biaxial(pair["glazePa"], POISSON), m.biaxial(pair["bodyPa"], pair["bodyPoisson"])
    t, h = pair["glazeM"], pair["wallM"]
    slope = (e1 * t**2 - e2 * h**2) / 2
    stiff = np.array([[e1 * t + e2 * h, slope], [slope, (e1 * t**3 + e2 * h**3) / 3]])
    strain, curvature = np.linalg.solve(stiff, [-d * e2 * h, d * e2 * h**2 / 2])
    return {
        "glazeInterface": e1 * strain,
        "glazeSurface": e1 * (strain + curvature * t),
        "glazeMean": e1 * (strain + curvature * t / 2),
        "bodyInterface": e2 * (strain + d),
        "bodyBack": e2 * (strain - curvature * h + d),
        "curvature": curvature,
    }


def limits(row):
    pair = row["layers"]
    e, h = pair["glazePa"], pair["glazeM"]
    factor = m.channelling(row["contrast"])
    return {
        "stiffnessContrast": m.contrast(e, POISSON, pair["bodyPa"], pair["bodyPoisson"]),
        "channelling": factor,
        "drivingStress": float(m.driving(np.float64(row["stress"]), np.float64(abs(row["mismatch"]) * 1e11))),
        "meanBorne": float(m.mean_borne(np.float64(row["toughness"] * 3e7), np.float64(abs(row["mismatch"]) * 1e11))),
        "critical": row["toughness"] * 1e6 / np.sqrt(factor * h),
        "delayedShare": m.delayed_share(row["seconds"]),
        "edgeEnergy": m.edge_energy(row["stress"], h, e),
        "lifting": m.lifting_stress(row["interfaceToughness"], h, e),
        "moistureAge": m.moisture_age(row["seconds"] / m.YEAR_S),
        "stiffnessLeft": body.left_by_pores(row["absorption"]),
    }


def bending(row):
    pair, d = row["layers"], row["mismatch"]
    e, h, eb, wall = (pair[key] for key in ("glazePa", "glazeM", "bodyPa", "wallM"))
    curvature = m.strip_curvature(d, h, wall, e, eb)
    closing = 2 * np.pi * RING_M**2
    return {
        "curvature": curvature,
        "cantilever": curvature * 0.2**2 / 2,
        "sag": curvature * 0.2**2 / 8,
        "stripMismatch": d,
        "ringClosing": closing * -6 * row["stress"] * h / (eb * wall**2),
        "ringClosingOf": closing * curvature,
        "ringStress": -eb * wall**2 * 6e-4 / (6 * closing * h),
    }


def setting(row):
    log, c = m.log_setting_viscosity(row["rate"]), row["t12C"]
    ratio = m.setting_ratio(log, row["fragility"])
    return {
        "logSetting": log,
        "settingRatio": ratio,
        "setPointOffset": (c + m.ZERO_C) * (ratio - 1),
        "setPointAlong": m.set_point_along(c, row["soaked"], row["fragility"]),
        "glassContraction": 6.5e-6 * (c - 20) * (1 + glass.RISE * ((c + 20) / 2 - glass.ANCHOR_C)),
        "meanOver": glass.mean_over(6.5, 20, c),
    }


def compare_draws(row, t):
    where, d = f"seed {row['seed']}", draws.deviates(row["seed"])
    for name, even, normal in zip(draws.INPUTS, row["lattice"], row["normal"], strict=True):
        t.add("draws: lattice", d.even[name], unpacked(even), f"{where} {name}")
        t.add("draws: normal deviates", d.normal[name], unpacked(normal), f"{where} {name}")
    interface = FIGURES["interface"]["median"] * np.exp(FIGURES["interface"]["logSd"] * d.normal["interface"])
    t.add("draws: interface toughness", interface, unpacked(row["interface"]), where)


def compare_quantile(row, t):
    t.add("draws: inverse normal", draws.ndtri(row["p"]), row["z"], f"p {row['p']}")
