"""Centres, thresholds, cases, trials and shares of many fits at once."""

import numpy as np
from reckon import mechanics
from reckon.draws import INPUTS
from reckon.fit import RANKED
from reckon.glass import ANCHOR_C, RISE, quantile, shape
from reckon.mechanics import FIGURES, POISSON, TOUGHNESS
from reckon.outcome import ONE_IN_TEN, QUENCH, VERDICT_ONLY, cold_rise
from reckon.read import table

from .simulation import FOURTH, simulate

MIDDLES = [int((i + 0.5) / 20 * 1024) for i in range(20)]


def middle90(values):
    n = values.shape[1]
    ranks = [int(np.floor((n - 1) * p + 0.5)) for p in (0.05, 0.5, 0.95)]
    return np.partition(values, ranks, axis=1)[:, ranks]


def thresholds(run):
    """Where each outcome begins at the centre of the doubt [Pa], one row a question."""
    g, body, ware = run["g"], run["body"], run["ware"]
    h = ware["thickness"][:, 0]
    pa = quantile(*g["youngs"], shape("youngs"), 0.5) * 1e9
    alpha = mechanics.contrast(pa, POISSON, body["youngs"][:, 0] * 1e9, body["poisson"][:, 0])
    critical = 1e6 / np.sqrt(mechanics.channelling(alpha) * h)
    at_once = g["toughness"][0] * critical
    creep = np.maximum(TOUGHNESS["floor"]["value"] * critical, run["inTime"][:, 0] * at_once)
    swelling = body["moisture"][:, 0] / 100 * mechanics.moisture_age(ware["years"][:, 0]) * pa / (1 - POISSON)

    def lift(z):
        interface = FIGURES["interface"]["median"] * np.exp(FIGURES["interface"]["logSd"] * z)
        rupture = np.maximum((body["rupture"] + body["ruptureSd"] * z)[:, 0], 1)
        bears = rupture * 1e6 * FIGURES["strength"]["tensileShare"]
        return np.maximum(mechanics.lifting_stress(interface, h, pa), -bears * ware["edge"][:, 0] / h)

    return np.stack([at_once, creep - swelling, lift(0), lift(ONE_IN_TEN)], 1), pa


def twenty_cases(run, limits):
    key = run["outcome"] * 1e6 + run["stress"] / 1e6
    chosen = np.partition(key, MIDDLES, axis=1)[:, MIDDLES]
    rank = np.rint(chosen / 1e6).astype(int)
    flakes, in_time, at_once = np.minimum(limits[:, 2], limits[:, 1]), limits[:, 1], limits[:, 0]
    ends = np.stack([np.full_like(flakes, -np.inf), flakes, in_time, at_once, np.full_like(flakes, np.inf)], 1) / 1e6
    row = np.arange(len(rank))[:, None]
    return rank, np.minimum(np.maximum(chosen - rank * 1e6, ends[row, rank]), ends[row, rank + 1])


def trials(run):
    z = {name: values[FOURTH] for name, values in run["z"].items()}
    at = {name: run[name][..., FOURTH] for name in ("stress", "root", "pa", "alpha", "k", "k0", "growth")}
    tough, floor, stiff = at["k"] / at["root"], at["k0"] / at["root"], at["pa"] / (1 - POISSON)
    limit = lambda seconds: np.maximum(mechanics.delayed_share(seconds) * tough, floor)
    per_kelvin = stiff * at["alpha"] * 1e-6 * cold_rise()
    factor = np.minimum(np.maximum(QUENCH["value"] + QUENCH["sd"] * z["quench"], 0.2), 1)
    differences = np.clip((limit(10) - at["stress"]) / np.maximum(per_kelvin * factor, 1e3), 0, 400)
    data, grown = table("fit/trials"), at["growth"] * stiff
    steamed = lambda row: grown * row["share"]
    used = lambda row: per_kelvin * row["differenceK"] * row["share"] * factor
    steps = np.array(data["quench"]["stepsC"]) - data["quench"]["bathC"]
    return {
        "cracksFrom": middle90(differences),
        "quench": np.stack([(differences > step).mean(1) for step in steps], 1),
        "steam": np.stack(
            [(at["stress"] + steamed(row) < limit(row["hours"] * 3600)).mean(1) for row in data["steam"]], 1
        ),
        "use": np.stack([(at["stress"] + used(row) >= limit(row["seconds"])).mean(1) for row in data["use"]], 1),
    }


def shares(values, run):
    """Squared correlation with each input."""
    v = values[:, FOURTH] - values[:, FOURTH].mean(1, keepdims=True)
    squares = np.maximum((v * v).sum(1, keepdims=True), 1e-300)
    return (v @ run["about"].T) ** 2 / (squares * run["aboutSquared"])


MOVES_STRESS = np.array([name not in VERDICT_ONLY for name in INPUTS], float)


def fits(questions, seed=1):
    """Everything that a fit says in figures, one row a question."""
    run = simulate(questions, seed)
    limits, pa = thresholds(run)
    rank, cases = twenty_cases(run, limits)
    middles = {name: middle90(run[name][:, FOURTH]) for name in ("mismatch", "setC", "glazeMean", "bodyMean")}
    middles["stress"] = middle90(run["stress"])
    c, ware, body = middles["setC"][:, 1], run["ware"], run["body"]
    e1 = pa / (1 - POISSON)
    wall = body["youngs"][:, 0] * 1e9 / (1 - body["poisson"][:, 0]) * ware["wall"][:, 0]
    per_unit = e1 * 1e-6 * (c - 20) * (1 + RISE * ((c + 20) / 2 - ANCHOR_C))
    per_unit = per_unit / (1 + ware["faces"][:, 0] * e1 * ware["thickness"][:, 0] / wall)
    return {
        **{"run": run, "middles": middles, "thresholds": limits, "ranks": rank, "cases": cases},
        "probabilities": np.stack([(run["outcome"] == rank_).mean(1) for rank_ in range(len(RANKED))], 1),
        "trials": trials(run),
        "shares": shares(run["stress"], run) * MOVES_STRESS,
        "verdictShares": shares((run["outcome"] != 1).astype(float), run),
        "pulls": run["g"]["contributions"] * per_unit[:, None],
        "perWeight": run["g"]["perWeight"] * per_unit[:, None],
    }
