"""How a fired body shrinks, however it was described."""

import numpy as np

from .phases import line, mixture, phase, sampled
from .read import table

Z90 = 1.6448536269514722
MATRIX_RISE, MATRIX_RISE_SD, MATRIX_MIDDLE_C = 0.0006, 0.00025, 260
LEAST_MATRIX_SHARE = 0.25
DEBONDED = 0.68
PHASES_SD = 0.06
ANY = {
    "quartzFraction": [0, 0.25],
    "quartzFactor": 0.8,
    "cristobaliteFraction": [0, 0.02],
    "moistureExpansionPercent": [0, 0.06],
    "youngsGPa": [30, 75],
    "ruptureMPa": [20, 80],
    "poisson": [0.15, 0.25],
}


def span(low_high, floor=None):
    low, high = low_high
    return {"value": (low + high) / 2, "sd": (high - low) / 2 / Z90, "floor": floor}


def drawn(spread, z):
    value = spread["value"] + spread["sd"] * z
    return value if spread["floor"] is None else np.maximum(value, spread["floor"])


def stated(value, share=0.1, floor=0):
    return {"value": value, "sd": value * share / Z90, "floor": floor}


def left_by_pores(absorption):
    """P = W ρ/(1 + W ρ), E/E₀ = 1 − 1.9 P + 0.9 P²."""
    w = absorption / 100 * 2.5
    pores = w / (1 + w)
    return 1 - 1.9 * pores + 0.9 * pores**2


def stiffness(absorption, row):
    """70 GPa less its pores, a quarter to either side; of a class its range, as other pores than its middle's leave it."""
    if absorption is None:
        return span(row["youngsGPa"], 3)
    usual = row.get("absorptionPercent")
    if usual is None:
        return stated(70 * left_by_pores(absorption), 0.25, 3)
    return span(np.array(row["youngsGPa"]) * left_by_pores(absorption) / left_by_pores(sum(usual) / 2), 3)


def growth_by(absorption):
    """Lines through the growth of vitreous, stoneware and porous classes at 0.5, 3 and 10 % absorption."""
    at = [0.5, 3, 10]
    return np.array([np.interp(absorption, at, [0, 0.005, 0.02]), np.interp(absorption, at, [0.005, 0.05, 0.18])])


def moisture_of(absorption, row):
    """Of the class within what it takes up; above it more by the difference, below it less in proportion."""
    own, usual = row["moistureExpansionPercent"], row.get("absorptionPercent")
    if absorption is None:
        return own or ANY["moistureExpansionPercent"]
    if own is None or usual is None:
        return growth_by(absorption)
    if absorption < usual[0]:
        return own * growth_by(absorption) / growth_by(usual[0])
    return own + growth_by(absorption) - growth_by(min(absorption, usual[1]))


def facts(body, row):
    absorption = body.get("absorptionPercent")
    if "youngsGPa" in body:
        youngs = stated(body["youngsGPa"])
    else:
        youngs = stiffness(absorption, row)
    if "moistureExpansionPercent" in body:
        moisture = stated(body["moistureExpansionPercent"])
    else:
        moisture = span(moisture_of(absorption, row), 0)
    return {
        "youngsGPa": youngs,
        "moisturePercent": moisture,
        "ruptureMPa": stated(body["ruptureMPa"]) if "ruptureMPa" in body else span(row["ruptureMPa"], 1),
        "poisson": sum(row["poisson"]) / 2,
    }


def mineral(body, key, row, span_key, to_volume_):
    """A counted mineral by volume, 15 % and at least half a per cent to either side; else the range of the class."""
    if key not in body:
        return span(row[span_key], 0)
    value = body[key] / 100 * to_volume_
    return {"value": value, "sd": max(0.15 * value, 0.005) / Z90, "floor": 0}


def from_mean(mean, row, body):
    """ε(T) = A m(T) + q f Q(T) + c C(T), A from the stated mean; q and c give way where less than a quarter is left."""
    quartz = mineral(body, "quartzPercent", row, "quartzFraction", 2450 / 2650)
    cristobalite = mineral(body, "cristobalitePercent", row, "cristobaliteFraction", 2450 / 2330)
    a, b = mean["rangeC"]
    factor = row["quartzFactor"]
    q_of, c_of = phase("quartz")["strain"], phase("cristobalite")["strain"]

    def contraction(c, z):
        k = MATRIX_RISE + MATRIX_RISE_SD * z["bodyRise"]
        length = lambda t: (t - 20) * (1 + k * ((t + 20) / 2 - MATRIX_MIDDLE_C))
        strain = (mean["value"] + mean["sd"] * z["bodyMean"]) * 1e-6 * (b - a)
        q, x = drawn(quartz, z["bodyQuartz"]), drawn(cristobalite, z["bodyCristobalite"])
        grains = lambda t: q * factor * q_of(t) + x * c_of(t)
        wanted = grains(b) - grains(a)
        room = np.maximum((1 - LEAST_MATRIX_SHARE) * strain, 0)
        with np.errstate(divide="ignore", invalid="ignore"):
            kept = np.where(wanted > room, room / wanted, 1.0)
        matrix = (strain - kept * wanted) / (length(b) - length(a))
        return matrix * length(c) + kept * grains(c)

    return contraction


def mean_of(body, row):
    """The stated mean with its range, else the middle of the class."""
    if "expansion" not in body:
        printed = row["expansion"]
        return {**span([printed["low"], printed["high"]]), "rangeC": printed["rangeC"]}
    told = body["expansion"]
    return {"value": told["value"], "sd": told.get("plusMinus", 0.4) / Z90, "rangeC": told.get("rangeC", [20, 500])}


def from_curve(body):
    points = [(p["c"], p["strainPercent"] / 100) for p in body["curve"]]
    xs, ys = np.array(points, float).T
    zero = float(line(xs, ys, 20))
    end, last = xs[-1], ys[-1]
    half = body.get("plusMinusPercent")
    share = 0.03 / Z90 if half is None else half / 100 / Z90 / max(abs(last - zero), 1e-6)
    # A curve that ends early goes on as a body of which only its mean to there is known.
    mean = (last - zero) / (end - 20) * 1e6
    stone = {**ANY, "cristobaliteFraction": [0, 0]}
    beyond = from_mean({"value": mean, "sd": mean * share, "rangeC": [20, end]}, stone, {})
    middle = {key: 0.0 for key in ("bodyMean", "bodyQuartz", "bodyCristobalite", "bodyRise")}

    def seen(c):
        if end < 650:
            on = beyond(c, middle)
        else:
            start = max(end - 100, 600)
            slope = (last - float(line(xs, ys, start))) / (end - start)
            on = last + slope * (c - end) - zero
        return np.where(c <= end, line(xs, ys, c) - zero, on)

    def contraction(c, z):
        read = sampled(seen, c) * (1 + share * z["bodyMean"])
        return read if end >= 650 else np.where(c <= end, read, beyond(c, z))

    return contraction, float(sampled(seen, 500)) / 480 * 1e6, share


def from_phases(body):
    given = dict(body["phases"])
    total = sum(given.values())
    if total < 99.5:
        given["glass"] = given.get("glass", 0) + 100 - total
    factor = 1 - (1 - DEBONDED) * min(given.get("glass", 0) / 20, 1)
    strain = lambda c: mixture(given, c, factor)["kerner"]
    contraction = lambda c, z: sampled(strain, c) * (1 + PHASES_SD * z["bodyMean"])
    return contraction, float(strain(500.0)) / 480 * 1e6, given, factor


def describe(body):
    """A body as the fit sees it."""
    classes = {row["id"]: row for row in table("bodies/classes")["classes"]}
    row = classes.get(body.get("class"), ANY) if "curve" not in body and "phases" not in body else ANY
    out = facts(body, row)
    if "curve" in body:
        out["contraction"], mean, share = from_curve(body)
        out["expansion"] = {"value": mean, "sd": abs(mean * share), "rangeC": [20, 500]}
    elif "phases" in body:
        out["contraction"], mean, out["fractions"], out["quartzFactor"] = from_phases(body)
        out["expansion"] = {"value": mean, "sd": abs(mean) * PHASES_SD, "rangeC": [20, 500]}
    else:
        mean = mean_of(body, row)
        out["expansion"] = {key: mean[key] for key in ("value", "sd", "rangeC")}
        out["contraction"] = from_mean(mean, row, body)
    return out
