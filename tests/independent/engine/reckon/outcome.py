"""What the draws amount to: centres, thresholds, twenty cases, trials, shares of the doubt."""

import numpy as np

from . import mechanics
from .body import drawn, span
from .draws import INPUTS
from .fit import RANKED
from .glass import ANCHOR_C, RISE, mean_over, quantile
from .mechanics import FIGURES, POISSON, TOUGHNESS, YEAR_S, weakest
from .read import table

VERDICT_ONLY = {"toughness", "moisture", "interface", "rupture", "quench"}
ONE_IN_TEN = -1.2815515655446004
QUENCH = span(FIGURES["quench"]["factor"])


def middle90(values):
    """5 %, 50 % and 95 % points: the value of rank p(n − 1), halves up."""
    ordered = np.sort(values)
    rank = lambda p: int(np.floor((len(ordered) - 1) * p + 0.5))
    return {name: float(ordered[rank(p)]) for name, p in (("low", 0.05), ("value", 0.5), ("high", 0.95))}


def summarise(s, run):
    """The stress over all draws, what is shown and not judged by over every fourth."""
    shown = {"mismatch": "mismatch", "setPointC": "setC", "glazeMean": "glazeMean", "bodyMean": "bodyMean"}
    return {
        "stress": middle90(run["stress"]),
        **{name: middle90(run[key][::4]) for name, key in shown.items()},
        "underGlaze": None if run["underGlaze"] is None else middle90(run["underGlaze"]),
        **thresholds(s, middle90(run["across"][::4])["value"]),
    }


def thresholds(s, across):
    """Where each outcome begins at the centre of the doubt, `across` of it stress that slopes through the glaze [Pa]."""
    outer, body = s["coats"][0], s["body"]
    thick = sum(coat["thickness"] for coat in s["coats"])
    youngs = float(quantile(outer["youngs"]["value"], outer["youngs"]["scale"], outer["youngs"]["shape"], 0.5)) * 1e9
    factor = float(
        mechanics.channelling(mechanics.contrast(youngs, POISSON, body["youngsGPa"]["value"] * 1e9, body["poisson"]))
    )
    critical = lambda k: k * 1e6 / np.sqrt(factor * thick)
    at_once = critical(weakest(s["coats"])["value"])
    creep = max(critical(TOUGHNESS["floor"]["value"]), mechanics.delayed_share(s["years"] * YEAR_S) * at_once)
    borne = lambda even: float(mechanics.mean_borne(np.asarray(even, float), np.asarray(across)))
    swelling = body["moisturePercent"]["value"] / 100 * mechanics.moisture_age(s["years"]) * youngs / (1 - POISSON)

    def lift(z):
        interface = FIGURES["interface"]["median"] * np.exp(FIGURES["interface"]["logSd"] * z)
        rupture = body["ruptureMPa"]["value"] + body["ruptureMPa"]["sd"] * z
        peel = -max(rupture, 1) * 1e6 * FIGURES["strength"]["tensileShare"] * s["edge"] / thick
        return float(max(mechanics.lifting_stress(interface, thick, youngs), peel))

    return {
        "cracksOnCooling": borne(at_once),
        "mayCrackInTime": float(borne(creep) - swelling),
        "flakesComeOff": lift(0),
        "edgesMayLift": lift(ONE_IN_TEN),
        "moistureStress": float(swelling),
    }


def stress_per_expansion(s, summary):
    """Change of the stress for 1e-6/K more of the glaze's 20–300 °C mean, at the centre, as the ware shares it [Pa]."""
    coat, body, c = s["coats"][0], s["body"], summary["setPointC"]["value"]
    youngs = float(quantile(coat["youngs"]["value"], coat["youngs"]["scale"], coat["youngs"]["shape"], 0.5)) * 1e9
    layer = [(youngs, coat["thickness"], 1.0)]
    per_mismatch = mechanics.stack(layer, body["youngsGPa"]["value"] * 1e9, body["poisson"], s["wall"], s["glazed"])[0]
    return float(np.ravel(per_mismatch)[0]) * -1e-6 * (c - 20) * mean_over(1.0, 20, c)


def twenty_cases(run, limits):
    """Draws in order of outcome, then stress; the middle one of each twentieth, on its own side of the thresholds."""
    order = np.lexsort((run["stress"], run["outcome"]))
    flakes = min(limits["flakesComeOff"], limits["mayCrackInTime"])
    between = {
        0: (-np.inf, flakes),
        1: (flakes, limits["mayCrackInTime"]),
        2: (limits["mayCrackInTime"], limits["cracksOnCooling"]),
        3: (limits["cracksOnCooling"], np.inf),
    }
    cases = []
    for i in range(20):
        draw = order[int((i + 0.5) / 20 * len(order))]
        rank = int(run["outcome"][draw])
        low, high = between[rank]
        cases.append({"outcome": RANKED[rank], "stressPa": float(min(max(run["stress"][draw], low), high))})
    return cases


def judge(cases):
    of20 = {name: sum(case["outcome"] == name for case in cases) for name in RANKED}
    crazes = of20["crazesOnCooling"] + of20["crazesLater"]
    if crazes >= 15:
        return "crazes"
    if of20["shivers"] >= 15:
        return "shivers"
    if of20["sound"] >= 17:
        return "sound"
    return "may-craze" if crazes >= of20["shivers"] else "may-shiver"


def cold_rise():
    """The surface strains between about 20 and 150 °C: the expansion in the middle, at 85, over the 20–300 °C mean."""
    return 1 + RISE * (85 - ANCHOR_C)


def quench_differences(s, run):
    """ΔT = (K/√(Zh) − σ)(1 − ν)/(f E α) of each draw, from 0 to 400 K."""
    z = run["deviates"].normal
    tough = drawn(weakest(s["coats"]), z["toughness"]) / run["root"]
    floor = drawn(TOUGHNESS["floor"], z["toughness"]) / run["root"]
    factor = np.clip(drawn(QUENCH, z["quench"]), 0.2, 1)
    per_kelvin = run["pa"] / (1 - POISSON) * run["alpha"] * 1e-6 * cold_rise()
    bears = mechanics.mean_borne(np.maximum(mechanics.delayed_share(10) * tough, floor), run["across"])
    return np.clip((bears - run["stress"]) / np.maximum(per_kelvin * factor, 1e3), 0, 400)


def trials(s, run):
    """Every fourth draw through quench, steam and use."""
    every = slice(None, None, 4)
    z = {name: values[every] for name, values in run["deviates"].normal.items()}
    stress, root, pa, alpha, across = (run[key][every] for key in ("stress", "root", "pa", "alpha", "across"))
    tough = drawn(weakest(s["coats"]), z["toughness"]) / root
    floor = drawn(TOUGHNESS["floor"], z["toughness"]) / root
    limit = lambda seconds: mechanics.mean_borne(np.maximum(mechanics.delayed_share(seconds) * tough, floor), across)
    stiff = pa / (1 - POISSON)
    per_kelvin = stiff * alpha * 1e-6 * cold_rise()
    factor = np.clip(drawn(QUENCH, z["quench"]), 0.2, 1)
    data = table("fit/trials")
    differences = quench_differences(s, run)[every]
    grown = np.maximum(drawn(s["body"]["moisturePercent"], z["moisture"]), 0) / 100 * stiff
    used = lambda row: per_kelvin * row["differenceK"] * row["share"] * factor
    return {
        "differences": quench_differences(s, run),
        "cracksFrom": middle90(differences),
        "quench": [float((differences > oven - data["quench"]["bathC"]).mean()) for oven in data["quench"]["stepsC"]],
        "steam": [float((stress + grown * row["share"] < limit(row["hours"] * 3600)).mean()) for row in data["steam"]],
        "use": [float((stress + used(row) >= limit(row["seconds"])).mean()) for row in data["use"]],
    }


def shares(s, run):
    """Squared correlation of stress, and of failing at all, with each input, over every fourth draw."""

    def share(values, name):
        values = values[::4]
        d = run["deviates"]
        if name == "onWare" and not s["onWare"]:
            return 0.0
        if name in run["shapes"]:
            z = d.shaped(name, run["shapes"][name])[::4]
        else:
            z = (d.even if name == "onWare" else d.normal)[name][::4]
        if np.ptp(values) == 0 or np.ptp(z) == 0:
            return 0.0
        z, v = z - z.mean(), values - values.mean()
        return float((z @ v) ** 2 / (z @ z) / (v @ v))

    failed = (run["outcome"] != 1).astype(float)
    return {
        "stress": {name: 0.0 if name in VERDICT_ONLY else share(run["stress"], name) for name in INPUTS},
        "verdict": {name: share(failed, name) for name in INPUTS},
    }
