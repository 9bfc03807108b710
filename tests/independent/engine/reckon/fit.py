"""From a question to a thousand judged draws, all draws at once."""

from math import hypot

import numpy as np

from . import glass, mechanics
from .body import Z90, describe, drawn
from .chemistry import analyse
from .draws import NORMAL_SHAPE, deviates
from .mechanics import FIGURES, POISSON, TOUGHNESS, YEAR_S, weakest

RANKED = ["shivers", "sound", "crazesLater", "crazesOnCooling"]


def crystal_sd(mole_percent):
    """Opacifiers above 1.5 mol %, titania by half: 0.12e-6/K for each further per cent, at most 0.6."""
    have = lambda oxide: mole_percent.get(oxide, 0)
    opacifier = have("ZrO2") + have("SnO2") + have("TiO2") / 2
    return min(max(opacifier - 1.5, 0) * 0.12, 0.6)


def materials_sd(chemistry, parts):
    sd = chemistry["weightPercentSd"]
    return np.sqrt(sum((row["perWeightPercent"] * sd.get(oxide, 0)) ** 2 for oxide, row in parts.items()))


def toughness(x):
    """Boron's share of the way from 8 to 12 mol % toward borosilicate, then lead's from 3 to 7 toward lead."""
    lead, boron = np.interp(x.get("PbO", 0), [0.03, 0.07], [0, 1]), np.interp(x.get("B2O3", 0), [0.08, 0.12], [0, 1])
    weights = {"lead": lead, "borosilicate": (1 - lead) * boron, "alkali-lime": (1 - lead) * (1 - boron)}
    mixed = {key: sum(w * TOUGHNESS[kind][key] for kind, w in weights.items()) for key in ("value", "sd")}
    return {**TOUGHNESS["lead"], **mixed}


def feldspar(x):
    """How far alumina takes up all alkali, with hardly any earths and no boron: straight lines from 0 to 1."""
    have = lambda *oxides: sum(x.get(oxide, 0) for oxide in oxides)
    alkali = have("Li2O", "Na2O", "K2O")
    earths = have("MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "MnO", "FeO")
    if alkali == 0:
        return 0.0
    taken_up = np.interp(have("Al2O3") / (alkali + earths), [0.9, 1], [0, 1])
    few = np.interp(earths, [0.02, 0.05], [1, 0]) * np.interp(have("B2O3"), [0, 0.05], [1, 0])
    return float(taken_up * few * np.interp(alkali, [0, 0.07], [0, 1]))


def read_coat(glaze, doubts):
    """Everything drawn of one coat."""
    thickness = glaze.get("thicknessMm", 0.3) / 1000
    if "expansion" in glaze:
        told = glaze["expansion"]
        low, high = told.get("rangeC", [20, 300])
        # A mean over another range is brought to 20–300 °C.
        to_books = 1 / glass.mean_over(1.0, low, high)
        sd = 10.0 if "transitionC" in glaze else 40.0
        t12 = {"value": glaze.get("transitionC", 630), "scale": sd, "shape": NORMAL_SHAPE}
        return {
            "expansion": {
                "value": told["value"] * to_books,
                "scale": told.get("plusMinus", 0.4) / Z90 * to_books,
                "shape": NORMAL_SHAPE,
            },
            "recipeSd": 0.0,
            "t12": t12,
            "fragility": FIGURES["setPoint"]["fragility"],
            "setPointSd": FIGURES["setPoint"]["shiftSdK"],
            "youngs": {"value": 70, "scale": 5, "shape": NORMAL_SHAPE},
            "toughness": TOUGHNESS["alkali-lime"],
            "thickness": thickness,
        }
    chemistry = analyse(glaze)
    x = chemistry["moleFractions"]
    parts = glass.contributions(x)["oxides"]
    materials = materials_sd(chemistry, parts) if doubts.get("materials", True) else 0
    crystals = crystal_sd(chemistry["firedMolePercent"]) if doubts.get("crystals", True) else 0
    transition = glass.estimate("transition", x)
    stiff = glass.viscosity(x, log_viscosity=12)
    property_of = lambda name: {**glass.estimate(name, x), "shape": glass.shape(name)}
    expansion = property_of("expansion")
    if not doubts.get("betweenPapers", True):
        # What is left of the doubt where all papers agreed.
        expansion["scale"] *= np.sqrt(1 - glass.papers_share() ** 2)
    return {
        "expansion": expansion,
        "recipeSd": hypot(materials, crystals),
        # Two witnesses of like weight; half of the gap between them is added to the doubt of the set point.
        "t12": {
            "value": (stiff["value"] + transition["value"]) / 2 + 70 * feldspar(x),
            "scale": hypot(stiff["scale"], transition["scale"]) / 2,
            "shape": glass.shape("transition"),
        },
        "fragility": glass.viscosity_parameters(x)[2],
        "setPointSd": hypot(
            FIGURES["setPoint"]["shiftSdK"], (stiff["value"] - transition["value"]) / 2, 50 * feldspar(x)
        ),
        "youngs": property_of("youngs"),
        "toughness": toughness(x),
        "thickness": thickness,
    }


def read(request):
    """The question with what is taken where it is silent."""
    glaze, ware, firing = request["glaze"], request.get("ware", {}), request.get("firing", {})
    doubts = request.get("doubts", {})
    wall = ware.get("wallMm", 5)
    return {
        "coats": [read_coat(coat, doubts) for coat in glaze.get("layers", [glaze])],
        "body": describe(request["body"]),
        "wall": wall / 1000,
        "glazed": ware.get("glazed", "both-faces"),
        "years": ware.get("serviceYears", 10),
        "edge": ware.get("edgeRadiusMm", max(wall / 2, 0.25)) / 1000,
        "cooling": firing.get("cooling", [{"toC": 20, "cPerHour": firing.get("coolingCPerHour", 100)}]),
        "onWare": doubts.get("onWare", True),
        "thicknessSd": 0.25 / Z90,
    }


def value_of(estimate, z):
    return estimate["value"] + estimate["scale"] * z


def coat_arrays(s, coat, on_clay, d):
    """Thickness, stiffness, set point, expansion and mismatch of a coat, one element a draw."""
    z = d.normal
    evenly = d.even["onWare"] if s["onWare"] and on_clay else np.zeros(len(z["thickness"]))
    shaped = lambda name, estimate: value_of(estimate, d.shaped(name, estimate["shape"]))
    m = coat["thickness"] * np.maximum(1 + s["thicknessSd"] * z["thickness"], 0.2)
    pa = np.maximum(shaped("glazeStiffness", coat["youngs"]), 20) * 1e9
    taken = mechanics.taken_up(m, evenly)
    t12 = shaped("transition", coat["t12"]) + FIGURES["onWare"]["mostRiseK"] * taken
    sets = mechanics.set_point_along(t12, s["cooling"], coat["fragility"])
    set_c = np.clip(sets + coat["setPointSd"] * z["setPoint"], 200, 1000)
    bulk = shaped("glazeExpansion", coat["expansion"]) + coat["recipeSd"] * z["recipe"]
    alpha = bulk - FIGURES["onWare"]["mostDrop"] * taken
    rise = glass.RISE + glass.RISE_SD * z["glazeRise"]
    glaze = 1e-6 * (set_c - 20) * glass.mean_over(alpha, 20, set_c, rise)
    clay = s["body"]["contraction"](set_c, z)
    return {"m": m, "pa": pa, "setC": set_c, "alpha": alpha, "glaze": glaze, "clay": clay, "mismatch": clay - glaze}


def simulate(s, seed):
    """Stress and fate of every draw."""
    d = deviates(seed)
    z = d.normal
    coats = [coat_arrays(s, coat, i == len(s["coats"]) - 1, d) for i, coat in enumerate(s["coats"])]
    body_pa = drawn(s["body"]["youngsGPa"], z["bodyStiffness"]) * 1e9
    poisson = s["body"]["poisson"]
    layers = [(c["pa"], c["m"], c["mismatch"]) for c in coats]
    bends = s["glazed"] == "one-face-free"
    if bends:
        _, slopes, under_glaze = mechanics.free_plate(layers, body_pa, poisson, s["wall"])
    else:
        slopes, under_glaze = [np.zeros_like(body_pa) for _ in coats], None
    for coat, stress in zip(coats, mechanics.stack(layers, body_pa, poisson, s["wall"], s["glazed"]), strict=True):
        coat["stress"] = stress
    thick = sum(c["m"] for c in coats)
    mean = lambda key: sum(c[key] * c["m"] for c in coats) / thick
    skin = {key: mean(key) for key in ("stress", "mismatch", "pa", "alpha")}
    outer = coats[0]
    factor = mechanics.channelling(mechanics.contrast(skin["pa"], POISSON, body_pa, poisson))

    # Cracking, in MPa·√m: at once, and when moisture has swollen the clay.
    k = drawn(weakest(s["coats"]), z["toughness"])
    k0 = drawn(TOUGHNESS["floor"], z["toughness"])
    in_the_end = np.maximum(drawn(s["body"]["moisturePercent"], z["moisture"]), 0) / 100
    growth = in_the_end * mechanics.moisture_age(s["years"])
    sections = [(skin["stress"], skin["pa"], thick, sum(slopes))]
    if len(coats) > 1:
        sections += [(c["stress"], c["pa"], c["m"], slope) for c, slope in zip(coats, slopes, strict=True)]
    intense = lambda stress, h, slope: mechanics.driving(stress, slope) * np.sqrt(factor * h) / 1e6
    intensity = np.max([intense(stress, h, slope) for stress, _, h, slope in sections], axis=0)
    swollen = lambda stress, pa, h, slope: intense(stress + growth * pa / (1 - POISSON), h, slope)
    later = np.max([swollen(*section) for section in sections], axis=0)
    in_time = np.maximum(k0, mechanics.delayed_share(s["years"] * YEAR_S) * k)

    # Lifting and splitting, only where the glaze is squeezed.
    squeezed = skin["stress"] < 0
    rupture = np.maximum(drawn(s["body"]["ruptureMPa"], z["rupture"]), 1) * 1e6
    bears = rupture * FIGURES["strength"]["tensileShare"]
    interface = FIGURES["interface"]["median"] * np.exp(FIGURES["interface"]["logSd"] * z["interface"])
    flakes = squeezed & (mechanics.edge_energy(skin["stress"], thick, skin["pa"]) >= interface)
    edges = squeezed & (-skin["stress"] * thick / s["edge"] >= bears)
    faces = 2 if s["glazed"] == "both-faces" else 1
    splits = squeezed & (-skin["stress"] * faces * thick / s["wall"] >= bears)
    if bends:
        # Pulled on one side alone, clay bears its whole modulus of rupture.
        splits |= under_glaze >= rupture

    outcome = np.where(intensity >= k, 3, np.where(later >= in_time, 2, np.where(flakes | edges, 0, 1)))
    cooled = 1e6 / (outer["setC"] - 20)
    return {
        **skin,
        "coats": [c["stress"] for c in coats],
        "across": sum(slopes),
        "underGlaze": under_glaze,
        "setC": outer["setC"],
        "glazeMean": outer["glaze"] * cooled,
        "bodyMean": outer["clay"] * cooled,
        "root": np.sqrt(factor * thick) * 1e-6,
        "outcome": outcome,
        "lifted": {"edges": int(edges.sum()), "flakes": int(flakes.sum()), "splits": int(splits.sum())},
        "counts": {name: int((outcome == rank).sum()) for rank, name in enumerate(RANKED)},
        "deviates": d,
        "shapes": {
            "glazeExpansion": s["coats"][0]["expansion"]["shape"],
            "transition": s["coats"][0]["t12"]["shape"],
            "glazeStiffness": s["coats"][0]["youngs"]["shape"],
        },
    }
