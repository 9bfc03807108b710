"""Published factor sets, each summed as its file and docstring say."""

from .formula import MASS
from .read import table

WEIGHT_SETS = {
    "winkelmann-schott-1894": 3,
    "mayer-havas-1911": 3,
    "english-turner-1927": 1,
    "hall-1930": 1,
}
MOST_MISSING_PERCENT = 10


def additive(name, percent):
    """Σ aᵢ pᵢ [1e-6/K]; cubic factors give three times the linear figure."""
    factors = table(f"factor-sets/{name}")["factors"]
    return sum(factors[o]["value"] * p for o, p in percent.items() if o in factors) / WEIGHT_SETS[name] / 10


def gilard_dubrul(percent):
    factors = table("factor-sets/gilard-dubrul-1937")["factors"]
    bent = lambda oxide, p: p * (factors[oxide]["value"] + factors[oxide]["perPercent"] * p)
    return sum(bent(oxide, p) for oxide, p in percent.items() if oxide in factors) / 10


def psi(percent):
    """Flux left by alumina per boron, weighted: the formula stands in the data file."""
    x = lambda *oxides: sum(percent.get(oxide, 0) for oxide in oxides)
    flux = x("Na2O", "K2O", "BaO") + 0.7 * x("CaO", "SrO", "CdO", "PbO") + 0.3 * x("Li2O", "MgO", "ZnO")
    return (flux - x("Al2O3")) / x("B2O3")


def appen(percent):
    data = table("factor-sets/appen-1949")
    value = {oxide: row["value"] for oxide, row in data["constant"].items()}
    silica = percent.get("SiO2", 0)
    alkali = sum(percent.get(oxide, 0) for oxide in ("Li2O", "Na2O", "K2O"))
    soda = percent.get("Na2O", 0)
    value["SiO2"] = min(38, max(5, 38 - (silica - 67)))
    if percent.get("B2O3"):
        value["B2O3"] = min(0, max(-50, -12.5 * psi(percent)))
    value["TiO2"] = 30 - 1.5 * (min(max(silica, 50), 80) - 50)
    value["PbO"] = min(190, 130 + 5 * max(0, alkali - 3))
    value["K2O"] = 425 + 40 * min(soda, 1)
    return sum(value[o] * p / 100 for o, p in percent.items() if o in value) / 10


def known(name):
    data = table(f"factor-sets/{name}")
    return {*data.get("factors", {}), *data.get("constant", {}), *data.get("variable", {})}


SUMS = {
    **{name: (lambda percent, name=name: additive(name, percent)) for name in WEIGHT_SETS},
    "gilard-dubrul-1937": gilard_dubrul,
    "appen-1949": appen,
}


def ask(name, weight_percent, mole_percent):
    """A set about a whole glass: what it lacks is left out and the rest scaled to 100; null beyond a tenth."""
    percent = mole_percent if name == "appen-1949" else weight_percent
    has = known(name)
    missing = sum(p for oxide, p in percent.items() if oxide not in has)
    if missing > MOST_MISSING_PERCENT:
        return None
    return SUMS[name]({o: p * 100 / (100 - missing) for o, p in percent.items() if o in has})


def density(x):
    """Appen's volumes: ρ = Σ x M / Σ x V; boron between three-fold and four-fold."""
    data = table("factor-sets/appen-1949-volume")
    volume = {oxide: row["value"] for oxide, row in data["constant"].items()}
    if x.get("B2O3"):
        share = boron_in_four(x) / x["B2O3"]
        volume["B2O3"] = share * data["boron"]["fourFold"] + (1 - share) * data["boron"]["threeFold"]
    counted = {oxide: n for oxide, n in x.items() if oxide in volume}
    return sum(n * MASS[o] for o, n in counted.items()) / sum(n * volume[o] for o, n in counted.items())


def boron_in_four(x):
    """min(B2O3, max(R2O + RO − Al2O3, 0))."""
    flux = "Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO FeO MnO CoO CuO NiO".split()
    return min(x.get("B2O3", 0), max(sum(x.get(oxide, 0) for oxide in flux) - x.get("Al2O3", 0), 0))


def makishima_mackenzie(x):
    """E = 2 Vt Σ G x, Vt = (ρ/M) Σ V x [GPa]; oxides without figures are left out."""
    values = table("factor-sets/makishima-mackenzie-1973")["values"]
    counted = {oxide: n for oxide, n in x.items() if oxide in values}
    whole = sum(counted.values())
    counted = {oxide: n / whole for oxide, n in counted.items()}
    molar = sum(n * MASS[oxide] for oxide, n in counted.items())
    packing = density(counted) / molar * sum(n * values[oxide]["volume"] for oxide, n in counted.items())
    return 2 * packing * sum(n * values[oxide]["energy"] for oxide, n in counted.items())


def surface_tension(x, weight_percent, c):
    """[mN/m] by three sets: what they lack is left out, the rest scaled up; none beyond a tenth."""

    def scaled(shares, factors, whole):
        counted = {oxide: share for oxide, share in shares.items() if oxide in factors}
        total = sum(counted.values())
        if 1 - total / whole > 0.1:
            return None
        return sum(factors[oxide] * share for oxide, share in counted.items()) * whole / total

    kucuk = table("factor-sets/kucuk-1999")
    dietzel = table("factor-sets/dietzel-1942")
    first = scaled(x, {**kucuk["coefficients"], **dict.fromkeys(kucuk["zero"], 0)}, 1)
    second = scaled(weight_percent, dietzel["factors"], 100)
    return {
        "kucuk-1999": None if first is None else kucuk["intercept"] + 100 * first,
        "dietzel-1942": None if second is None else second + dietzel["perKelvin"] * (c - dietzel["temperatureC"]),
        "appen-1949": scaled(x, table("factor-sets/appen-1949-surface")["factors"], 1),
    }
