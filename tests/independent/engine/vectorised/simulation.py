"""Stress and outcome of every draw of many fits at once."""

import numpy as np
from reckon import mechanics
from reckon.body import Z90
from reckon.draws import INPUTS, deviates
from reckon.glass import ANCHOR_C, RISE, RISE_SD, ZERO_C, shape
from reckon.mechanics import FIGURES, POISSON, TOUGHNESS, YEAR_S

from .bodies import clays, contraction
from .glasses import VISCOSITY_LIMIT, glasses

SHAPES = {"glazeExpansion": "expansion", "transition": "transition", "glazeStiffness": "youngs"}
FOURTH = slice(None, None, 4)
_known = {}


def drawn_of(seed):
    """Deviates of a seed, each in its shape, and those of every fourth draw about their mean; kept."""
    if seed not in _known:
        d = deviates(seed)
        z = {**d.normal, "onWare": d.even["onWare"], **{k: d.shaped(k, shape(v)) for k, v in SHAPES.items()}}
        about = np.array([z[name][FOURTH] - z[name][FOURTH].mean() for name in INPUTS])
        interface = FIGURES["interface"]["median"] * np.exp(FIGURES["interface"]["logSd"] * z["interface"])
        _known[seed] = z, about, (about * about).sum(1), interface
    return _known[seed]


def ratio(log, fragility):
    """T over T12 at a viscosity: ln u + k(u − 1) = ln((log η − A)/(12 − A)), u = T12/T, by Newton's method."""
    k = fragility / (12 - VISCOSITY_LIMIT) - 1
    wanted = np.log((log - VISCOSITY_LIMIT) / (12 - VISCOSITY_LIMIT))
    u = np.ones_like(k)
    for _ in range(8):
        u = u - (np.log(u) + k * (u - 1) - wanted) / (1 / u + k)
    return 1 / u


def wares(questions):
    """Thickness, wall, faces, years, edge and cooling, one row a question."""
    rows = []
    for question in questions:
        ware, wall = question.get("ware", {}), question.get("ware", {}).get("wallMm", 5)
        faces = {"both-faces": 2, "one-face": 1}[ware.get("glazed", "both-faces")]
        rate = question.get("firing", {}).get("coolingCPerHour", 100)
        edge = ware.get("edgeRadiusMm", max(wall / 2, 0.25))
        thick = question["glaze"].get("thicknessMm", 0.3)
        rows.append([thick / 1e3, wall / 1e3, faces, ware.get("serviceYears", 10), edge / 1e3, rate])
    names = ("thickness", "wall", "faces", "years", "edge", "rate")
    return dict(zip(names, np.array(rows, float).T[:, :, None], strict=True))


def drawn(spread, z):
    return spread[0][:, None] + spread[1][:, None] * z


def simulate(questions, seed):
    """Every draw of every question."""
    z, about, about_squared, interface = drawn_of(seed)
    g, body, ware = glasses(questions), clays(questions), wares(questions)
    m = ware["thickness"] * np.maximum(1 + 0.25 / Z90 * z["thickness"], 0.2)
    pa = np.maximum(drawn(g["youngs"], z["glazeStiffness"]), 20) * 1e9
    body_pa = np.maximum(body["youngs"] + body["youngsSd"] * z["bodyStiffness"], body["youngsFloor"]) * 1e9
    taken = z["onWare"] * np.minimum(1, FIGURES["onWare"]["fullUpToMm"] * 1e-3 / m)
    t12 = drawn(g["t12"], z["transition"]) + FIGURES["onWare"]["mostRiseK"] * taken
    setting = ratio(mechanics.log_setting_viscosity(ware["rate"][:, 0]), g["fragility"])[:, None]
    sets = (t12 + ZERO_C) * setting - ZERO_C + g["setPointSd"][:, None] * z["setPoint"]
    c = np.minimum(np.maximum(sets, 200), 1000)
    alpha = drawn(g["expansion"], z["glazeExpansion"]) + g["recipeSd"][:, None] * z["recipe"]
    alpha = alpha - FIGURES["onWare"]["mostDrop"] * taken
    glaze = 1e-6 * alpha * (c - 20) * (1 + (RISE + RISE_SD * z["glazeRise"]) * ((c + 20) / 2 - ANCHOR_C))
    clay = contraction(body, c, z)
    e1, e2 = pa / (1 - POISSON), body_pa / (1 - body["poisson"])
    mismatch = clay - glaze
    stress = -e1 * mismatch / (1 + ware["faces"] * e1 * m / (e2 * ware["wall"]))
    factor = mechanics.channelling(mechanics.contrast(pa, POISSON, body_pa, body["poisson"]))
    root = np.sqrt(factor * m) * 1e-6
    k = drawn(g["toughness"], z["toughness"])
    k0 = TOUGHNESS["floor"]["value"] + TOUGHNESS["floor"]["sd"] * z["toughness"]
    growth = np.maximum(body["moisture"] + body["moistureSd"] * z["moisture"], 0) / 100
    swollen = stress + growth * mechanics.moisture_age(ware["years"]) * e1
    in_time = np.array([[mechanics.delayed_share(years * YEAR_S)] for years in ware["years"][:, 0]])
    rupture = np.maximum(body["rupture"] + body["ruptureSd"] * z["rupture"], 1)
    bears = rupture * 1e6 * FIGURES["strength"]["tensileShare"]
    force = np.maximum(-stress * m, 0)
    flakes = (stress < 0) & (mechanics.edge_energy(stress, m, pa) >= interface)
    edges = (force > 0) & (force >= bears * ware["edge"])
    splits = (force > 0) & (force * ware["faces"] >= bears * ware["wall"])
    outcome = np.where(flakes | edges, 0, 1)
    outcome[swollen * root >= np.maximum(k0, in_time * k)] = 2
    outcome[stress * root >= k] = 3
    run = {"z": z, "about": about, "aboutSquared": about_squared, "g": g, "body": body, "ware": ware, "inTime": in_time}
    run |= {"stress": stress, "mismatch": mismatch, "setC": c, "pa": pa, "alpha": alpha, "root": root}
    run |= {"outcome": outcome, "k": k, "k0": k0, "growth": growth}
    run |= {"glazeMean": glaze * 1e6 / (c - 20), "bodyMean": clay * 1e6 / (c - 20)}
    return run | {"lifted": np.stack([edges.sum(1), flakes.sum(1), splits.sum(1)], 1)}
