"""Recipes to everything that is drawn of their glasses."""

import numpy as np
from reckon.chemistry import of_material
from reckon.formula import MASS
from reckon.glass import ALKALIS, AT, EARTHS, WIDENING, ZERO_C
from reckon.mechanics import FIGURES, TOUGHNESS
from reckon.read import MODEL_OXIDES, OXIDES, table

N = len(MODEL_OXIDES)
MASSES = np.array([MASS[oxide] for oxide in OXIDES])
GROUPS = ["R2O", "RO", "AluminaWithAlkali", "AluminaWithFlux", "BoronInFour"]
PLACE = {name: i for i, name in enumerate([*MODEL_OXIDES, *GROUPS])}
AL, B = AT["Al2O3"], AT["B2O3"]
IS_ALKALI = np.array([oxide in ALKALIS for oxide in MODEL_OXIDES], float)
IS_FLUX = np.array([oxide in ALKALIS or oxide in EARTHS for oxide in MODEL_OXIDES], float)
EYE = np.eye(N)
KINDS = ("alkali-lime", "borosilicate", "lead")


class Sum:
    """A sum of terms as a linear and a quadratic form in the quantities."""

    def __init__(self, file):
        self.constant = file["intercept"]
        self.linear = np.zeros(len(PLACE))
        self.square = np.zeros((len(PLACE), len(PLACE)))
        for name, weight in file["terms"].items():
            at = [PLACE[factor] for factor in name.split("*")]
            if len(at) == 1:
                self.linear[at[0]] += weight
            else:
                self.square[at[0], at[1]] += weight

    def of(self, q):
        return self.constant + q @ self.linear + np.einsum("bi,bi->b", q @ self.square, q)

    def slopes(self, q):
        """By each oxide, on the branch of each minimum that holds."""
        by = self.linear + q @ (self.square + self.square.T)
        alkali, flux = q[:, [PLACE["R2O"]]], q[:, [PLACE["R2O"]]] + q[:, [PLACE["RO"]]]
        al, boron = q[:, [AL]], q[:, [B]]
        left = flux - al
        rows = [
            np.broadcast_to(IS_ALKALI, (len(q), N)),
            np.broadcast_to(IS_FLUX - IS_ALKALI, (len(q), N)),
            np.where(al <= alkali, EYE[AL], IS_ALKALI),
            np.where(al <= flux, EYE[AL], IS_FLUX),
            np.where(boron <= np.maximum(left, 0), EYE[B], np.where(left > 0, IS_FLUX - EYE[AL], 0)),
        ]
        return by[:, :N] + sum(by[:, [N + i]] * row for i, row in enumerate(rows))


class Scale:
    """The doubt of a fitted property as a function of the glass."""

    def __init__(self, file):
        spread = file["spread"]
        self.factor = np.zeros((N, N))
        self.factor[np.tril_indices(N)] = spread["leverageFactor"]
        self.slopes = np.array([spread["slopes"].get(oxide, 0) for oxide in MODEL_OXIDES])
        self.spread = spread
        self.low, self.high = np.array([file["training"]["rangesMolePercent"][o] for o in MODEL_OXIDES]).T / 100

    def of(self, x, unknown):
        part = np.concatenate([np.ones((len(x), 1)), x[:, 1:]], axis=1) @ self.factor.T
        ln = self.spread["base"] + x @ self.slopes + self.spread["leverageSlope"] * np.log((part * part).sum(1))
        beyond = np.maximum(np.maximum(self.low - x, x - self.high), 0).sum(1)
        return np.exp(np.clip(ln, *self.spread["limits"]) + WIDENING * beyond) * (1 + 10 * unknown)


PROPERTIES = {name: table(f"models/{name}") for name in ("expansion", "transition", "youngs")}
VISCOSITY = table("models/viscosity")
# The limit that the set point goes by, api/engine/fit/set-point.ts.
VISCOSITY_LIMIT = -1.95
SUMS = {name: Sum(file) for name, file in PROPERTIES.items()} | {k: Sum(VISCOSITY[k]) for k in ("t12K", "lnFragility")}
SCALES = {name: Scale(file) for name, file in (PROPERTIES | {"viscosity": VISCOSITY}).items()}
YIELDS = {}


def leaves(name):
    """Grams of each oxide from one gram, and the standard deviation of each."""
    if name not in YIELDS:
        grams, half, _ = of_material(name)
        YIELDS[name] = np.array([[grams.get(o, 0), half.get(o, 0) / 1.6449] for o in OXIDES]).T
    return YIELDS[name]


def chemistry(questions):
    """Weight per cent, its standard deviation, and mole fractions of each glaze."""
    weight, sd = np.empty((2, len(questions), len(OXIDES)))
    for b, question in enumerate(questions):
        lines = [*question["glaze"]["recipe"], *question["glaze"].get("additions", [])]
        parts = np.array([line["parts"] for line in lines])
        left = np.array([leaves(line["material"]) for line in lines])
        grams, own = parts @ left[:, 0], (parts * parts) @ left[:, 1] ** 2
        glass = grams.sum()
        weight[b] = w = 100 * grams / glass
        sd[b] = np.sqrt((100 - w) ** 2 * own + w * w * (own.sum() - own)) / glass
    moles = weight / MASSES
    return weight, sd, moles / moles.sum(1, keepdims=True)


def quantities(x):
    q = np.empty((len(x), len(PLACE)))
    q[:, :N] = x
    q[:, N] = alkali = x @ IS_ALKALI
    flux = x @ IS_FLUX
    q[:, N + 1] = flux - alkali
    q[:, N + 2] = np.minimum(x[:, AL], alkali)
    q[:, N + 3] = np.minimum(x[:, AL], flux)
    q[:, N + 4] = np.minimum(x[:, B], np.maximum(flux - x[:, AL], 0))
    return q


def glasses(questions):
    """Everything drawn of each glaze, and its expansion split by oxide."""
    weight, weight_sd, moles = chemistry(questions)
    known = moles[:, :N].sum(1, keepdims=True)
    x, unknown = moles[:, :N] / known, 1 - known[:, 0]
    q = quantities(x)
    g = {name: (SUMS[name].of(q), SCALES[name].of(x, unknown)) for name in PROPERTIES}
    t12 = np.clip(SUMS["t12K"].of(q), *VISCOSITY["t12K"]["range"])
    fragility = np.exp(np.clip(SUMS["lnFragility"].of(q), *VISCOSITY["lnFragility"]["range"]))
    # At T12 the slope of log η is fragility/T12.
    slope = fragility / t12
    noise = np.hypot(VISCOSITY["noise"]["logSd"], VISCOSITY["noise"]["temperatureSdK"] * slope)
    stiff_sd = noise * SCALES["viscosity"].of(x, unknown) / slope
    stiff, (reported, reported_sd) = t12 - ZERO_C, g["transition"]
    here = SUMS["expansion"].slopes(q)
    per_mole = (here - (x * here).sum(1, keepdims=True)) / 100
    per_weight = per_mole * (x @ MASSES[:N])[:, None] / MASSES[:N]
    middle = x / 2 + EYE[0] / 2
    mean = SUMS["expansion"].slopes(quantities(middle))
    opacifier = 100 * (moles[:, AT["ZrO2"]] + moles[:, AT["SnO2"]] + moles[:, AT["TiO2"]] / 2)
    materials = ((per_weight * weight_sd[:, :N]) ** 2).sum(1)
    ramp = lambda at, low, high: np.interp(moles[:, at], [low, high], [0, 1])[:, None]
    lead, boron = ramp(AT["PbO"], 0.03, 0.07), ramp(B, 0.08, 0.12)
    alkali_lime, boric, leaded = (np.array([TOUGHNESS[k]["value"], TOUGHNESS[k]["sd"]]) for k in KINDS)
    have = lambda *oxides: sum(moles[:, AT[oxide]] for oxide in oxides)
    alkali = have("Li2O", "Na2O", "K2O")
    earths = have("MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "MnO", "FeO")
    feldspar = np.interp(have("Al2O3") / np.maximum(alkali + earths, 1e-300), [0.9, 1], [0, 1])
    feldspar *= np.interp(earths, [0.02, 0.05], [1, 0]) * np.interp(have("B2O3"), [0, 0.05], [1, 0])
    feldspar *= np.interp(alkali, [0, 0.07], [0, 1])
    g["t12"] = ((stiff + reported) / 2 + 70 * feldspar, np.hypot(stiff_sd, reported_sd) / 2)
    spread = np.hypot(FIGURES["setPoint"]["shiftSdK"], (stiff - reported) / 2)
    g["setPointSd"] = np.hypot(spread, 50 * feldspar)
    g["fragility"] = fragility
    g["recipeSd"] = np.hypot(np.sqrt(materials), np.minimum(np.maximum(opacifier - 1.5, 0) * 0.12, 0.6))
    g["toughness"] = (lead * leaded + (1 - lead) * (boron * boric + (1 - boron) * alkali_lime)).T
    g["contributions"], g["perWeight"], g["weight"] = x * (mean - mean[:, :1]), per_weight, weight
    return g
