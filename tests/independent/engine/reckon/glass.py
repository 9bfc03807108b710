"""Properties fitted to measured glasses: prediction, scale of the doubt, contributions, viscosity."""

import numpy as np

from .formula import MASS
from .read import MODEL_OXIDES, table

AT = {oxide: i for i, oxide in enumerate(MODEL_OXIDES)}
ALKALIS = ["Li2O", "Na2O", "K2O"]
EARTHS = ["MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "FeO", "MnO", "CoO", "CuO", "NiO"]
WIDENING = 8
ZERO_C = 273.15
RISE, RISE_SD, ANCHOR_C = 0.0011, 0.00035, 160


def vector(moles):
    """Mole fractions in the models' order, what they lack left out and the rest scaled up; and what was left out."""
    x = np.array([moles.get(oxide, 0.0) for oxide in MODEL_OXIDES])
    unknown = sum(n for oxide, n in moles.items() if oxide not in AT)
    return x / x.sum(), unknown


def real_min(a, b):
    """Minimum by real parts, so that a derivative carried in the imaginary part goes along."""
    return a if a.real <= b.real else b


def quantities(x):
    q = dict(zip(MODEL_OXIDES, x, strict=True))
    q["R2O"] = sum(q[oxide] for oxide in ALKALIS)
    q["RO"] = sum(q[oxide] for oxide in EARTHS)
    flux = q["R2O"] + q["RO"]
    q["AluminaWithAlkali"] = real_min(q["Al2O3"], q["R2O"])
    q["AluminaWithFlux"] = real_min(q["Al2O3"], flux)
    left = flux - q["Al2O3"]
    q["BoronInFour"] = real_min(q["B2O3"], left if left.real > 0 else left * 0)
    return q


def term_sum(file, x):
    q = quantities(x)
    total = file["intercept"]
    for name, weight in file["terms"].items():
        product = weight
        for factor in name.split("*"):
            product = product * q[factor]
        total = total + product
    return total


def scale(file, x, unknown=0.0):
    """ln scale = base + Σ slope x + leverageSlope ln h, within limits; wider outside the training range."""
    spread = file["spread"]
    n = len(MODEL_OXIDES)
    factor = np.zeros((n, n))
    factor[np.tril_indices(n)] = spread["leverageFactor"]
    # The constant takes the place of silica, which follows from the rest.
    part = factor @ np.concatenate([[1.0], x[1:]])
    ln = spread["base"] + sum(slope * x[AT[oxide]] for oxide, slope in spread["slopes"].items())
    ln += spread["leverageSlope"] * np.log(part @ part)
    ln = min(max(ln, spread["limits"][0]), spread["limits"][1])
    beyond = 0.0
    for oxide, (low, high) in file["training"]["rangesMolePercent"].items():
        share = x[AT[oxide]]
        beyond += max(low / 100 - share, 0) + max(share - high / 100, 0)
    return float(np.exp(ln + WIDENING * beyond)) * (1 + 10 * unknown)


def estimate(name, moles):
    file = table(f"models/{name}")
    x, unknown = vector(moles)
    return {"value": float(term_sum(file, x)), "scale": scale(file, x, unknown)}


def shape(name):
    return np.array(table(f"models/{name}")["shape"])


def quantile(value, width, shape_, p):
    """Linear in the table of residuals at (i + 0.5)/n, flat beyond its ends."""
    n = len(shape_)
    return value + width * np.interp(p, (np.arange(n) + 0.5) / n, shape_)


def slopes(x):
    """∂f/∂xⱼ of the expansion by complex steps."""
    file = table("models/expansion")
    step = 1e-30
    out = np.empty(len(x))
    for j in range(len(x)):
        moved = x.astype(complex)
        moved[j] += 1j * step
        out[j] = complex(term_sum(file, moved)).imag / step
    return out


def contributions(moles):
    """Path integral from silica to the glass by three Gauss points, and local derivatives by the whole glass."""
    x, unknown = vector(moles)
    total = sum(moles.values())
    left = 1 - unknown / total
    mean_mass = sum(n * MASS[oxide] for oxide, n in moles.items()) / total
    silica = np.zeros(len(x))
    silica[AT["SiO2"]] = 1
    nodes, weights = np.polynomial.legendre.leggauss(3)
    mean = np.zeros(len(x))
    for node, weight in zip(nodes, weights, strict=True):
        mean += weight / 2 * slopes(silica + (node + 1) / 2 * (x - silica))
    here = slopes(x)
    masses = np.array([MASS[oxide] for oxide in MODEL_OXIDES])
    per_mole = (here - x @ here) / 100 / left
    per_weight = per_mole * mean_mass / masses
    return {
        "reference": float(term_sum(table("models/expansion"), silica)),
        "oxides": {
            oxide: {
                "contribution": float(x[j] * (mean[j] - mean[AT["SiO2"]])),
                "perMolePercent": float(per_mole[j]),
                "perWeightPercent": float(per_weight[j]),
            }
            for oxide, j in AT.items()
            if x[j] > 0
        },
        "everyPerWeightPercent": {oxide: float(per_weight[j]) for oxide, j in AT.items()},
    }


def myega(limit, t12, fragility, kelvin):
    u = t12 / kelvin
    return limit + (12 - limit) * u * np.exp((fragility / (12 - limit) - 1) * (u - 1))


def viscosity_parameters(moles):
    file = table("models/viscosity")
    x, _ = vector(moles)
    t12 = np.clip(term_sum(file["t12K"], x), *file["t12K"]["range"])
    ln = np.clip(term_sum(file["lnFragility"], x), *file["lnFragility"]["range"])
    return file["limit"], float(t12), float(np.exp(ln))


def kelvin_at(parameters, log_viscosity):
    """Temperature of a viscosity by bracketing; the curve falls."""
    from scipy.optimize import brentq

    return brentq(lambda kelvin: myega(*parameters, kelvin) - log_viscosity, 100, 6000, xtol=1e-11, rtol=1e-15)


def slope_at(parameters, kelvin):
    """−d log η/dT."""
    limit, t12, fragility = parameters
    u = t12 / kelvin
    k = fragility / (12 - limit) - 1
    return (12 - limit) * np.exp(k * (u - 1)) * (1 + k * u) * u / kelvin


def viscosity(moles, c=None, log_viscosity=None):
    """Estimate of log η at a temperature, or of the temperature [°C] of a viscosity."""
    file = table("models/viscosity")
    x, unknown = vector(moles)
    parameters = viscosity_parameters(moles)
    kelvin = c + ZERO_C if c is not None else kelvin_at(parameters, log_viscosity)
    slope = slope_at(parameters, kelvin)
    noise = file["noise"]
    scatter = np.hypot(noise["logSd"], noise["temperatureSdK"] * slope) * scale(file, x, unknown)
    if c is not None:
        return {"value": float(myega(*parameters, kelvin)), "scale": float(scatter)}
    return {"value": float(kelvin - ZERO_C), "scale": float(scatter / slope)}


def mean_over(mean, low, high, rise=RISE):
    """ᾱ(20–300)·(1 + s((a + b)/2 − 160)): the mean of a straight line is its value at the middle."""
    return mean * (1 + rise * ((low + high) / 2 - ANCHOR_C))


def papers_share():
    """Two papers differ by √2 times what either is off; as a share of the model's error, at most 1."""
    file = table("models/expansion")
    return min(file["betweenPapers"]["all"]["p90"] / np.sqrt(2) / file["heldOut"]["glaze"]["p90"], 1)
