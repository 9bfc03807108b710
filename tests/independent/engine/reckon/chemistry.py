"""From recipe or oxides to the chemistry of the fired glaze."""

from math import sqrt

from .formula import MASS, atoms, fire, mass
from .read import OXIDES, materials

Z90 = 1.6449
ALKALIS = ["Li2O", "Na2O", "K2O", "Rb2O", "Cs2O"]
FLUXES = [*ALKALIS, "MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "CdO", "BeO"]


def in_order(amounts):
    return {oxide: amounts[oxide] for oxide in OXIDES if amounts.get(oxide)}


def name_atoms(name):
    """Atoms of a name in an analysis; the two waters of mineral analyses are one."""
    return atoms(name.rstrip("+-"))


def of_formula(text, plus_minus=None):
    """Grams of each oxide from one gram, half-width at 90 % of each, and the net loss."""
    found = atoms(text)
    whole = mass(found)
    grams = {oxide: n * MASS[oxide] / whole for oxide, n in fire(found).items()}
    spread = {o: plus_minus.get(o, 0) / 100 if plus_minus else 0.03 * g for o, g in grams.items()}
    return grams, spread, 1 - sum(grams.values())


def of_analysis(analysis, plus_minus=None):
    """The same from weight per cent: shares of the total; what is missing from 100 is loss where none is stated."""
    listed = analysis["weightPercent"]
    total = sum(listed.values()) + analysis.get("lossOnIgnitionPercent", 0)
    if "lossOnIgnitionPercent" not in analysis:
        total = max(total, 100)
    grams, spread = {}, {}
    for name, percent in listed.items():
        if plus_minus:
            half = plus_minus.get(name, 0)
        else:
            half = max(0.02 * percent, 0.05) if percent else 0
        found = name_atoms(name)
        for oxide, n in fire(found).items():
            turned = n * MASS[oxide] / mass(found)
            grams[oxide] = grams.get(oxide, 0) + percent / total * turned
            # Forms of one element (FeO beside Fe2O3) err together: their half-widths add.
            spread[oxide] = spread.get(oxide, 0) + half / total * turned
    return grams, spread, 1 - sum(grams.values())


def of_material(name):
    row = materials()[name]
    if "formula" in row:
        return of_formula(row["formula"], row["plusMinusWeightPercent"])
    return of_analysis(row["analysis"], row["plusMinusWeightPercent"])


def of_line(line):
    if "material" in line:
        return of_material(line["material"])
    return of_analysis(line["analysis"]) if "analysis" in line else of_formula(line["formula"])


def read_oxides(basis, amounts):
    """Moles of a fired glass given by its oxides; FeO stays FeO, gases are left out."""
    moles = {}
    for name, amount in amounts.items():
        found = name_atoms(name)
        of_name = amount / mass(found) if basis == "weightPercent" else amount
        for oxide, n in ({name: 1} if name in MASS else fire(found)).items():
            moles[oxide] = moles.get(oxide, 0) + n * of_name
    return moles


def seger(moles):
    fluxes = sum(moles.get(oxide, 0) for oxide in FLUXES)
    if not fluxes:
        return None
    alumina = moles.get("Al2O3", 0)
    return {
        "moles": in_order({oxide: n / fluxes for oxide, n in moles.items()}),
        "silicaToAlumina": moles.get("SiO2", 0) / alumina if alumina else None,
        "alkaliShare": sum(moles.get(oxide, 0) for oxide in ALKALIS) / fluxes,
    }


def analyse(glaze):
    """Chemistry of a glaze, in the shape of the engine's answer."""
    lines = []
    if "recipe" in glaze:
        given = [*glaze["recipe"], *glaze.get("additions", [])]
        parts = sum(line["parts"] for line in given)
        lines = [(line["parts"] / parts, *of_line(line)) for line in given]
        grams = {}
        for share, leaves, _, _ in lines:
            for oxide, g in leaves.items():
                grams[oxide] = grams.get(oxide, 0) + share * g
        lost = sum(share * loss for share, _, _, loss in lines)
    else:
        moles = read_oxides(**glaze["oxides"])
        weighed = sum(n * MASS[oxide] for oxide, n in moles.items())
        grams, lost = {oxide: n * MASS[oxide] / weighed for oxide, n in moles.items()}, 0.0
    glass = sum(grams.values())
    fired = {oxide: 100 * g / glass for oxide, g in grams.items()}
    moles = {oxide: w / MASS[oxide] for oxide, w in fired.items()}
    whole = sum(moles.values())
    return {
        "moleFractions": in_order({oxide: n / whole for oxide, n in moles.items()}),
        "firedWeightPercent": in_order(fired),
        "firedMolePercent": in_order({oxide: 100 * n / whole for oxide, n in moles.items()}),
        "asWeighedWeightPercent": in_order({oxide: 100 * g for oxide, g in grams.items()}),
        "lossOnIgnitionPercent": 100 * lost,
        "moles": in_order(moles),
        "seger": seger(moles),
        "weightPercentSd": spread(lines, glass, fired),
        "lineLossPercent": [100 * loss for *_, loss in lines],
        "glassG": 100 * glass,
    }


def spread(lines, glass, fired):
    """var w_i = Σ_lines (p/M)² [(100 − w_i)² s_i² + w_i² Σ_j≠i s_j²]."""
    variance = dict.fromkeys(fired, 0.0)
    for share, _, half, _ in lines:
        sd = {oxide: h / Z90 for oxide, h in half.items()}
        all_squared = sum(s * s for s in sd.values())
        for oxide, w in fired.items():
            own = sd.get(oxide, 0) ** 2
            variance[oxide] += (share / glass) ** 2 * ((100 - w) ** 2 * own + w * w * (all_squared - own))
    return {oxide: sqrt(v) for oxide, v in variance.items()}


def from_seger(moles):
    """Weight per cent of a formula."""
    grams = {oxide: n * MASS[oxide] for oxide, n in moles.items()}
    return in_order({oxide: 100 * g / sum(grams.values()) for oxide, g in grams.items()})


def columns(ingredients):
    """Moles of each oxide from one gram of each ingredient."""
    return [{o: g / MASS[o] for o, g in of_line(line)[0].items()} for line in ingredients]


def batch_from_seger(moles, ingredients):
    """Grams of each ingredient by non-negative least squares on moles."""
    from scipy.optimize import nnls

    given = columns(ingredients)
    rows = sorted({*moles, *(oxide for column in given for oxide in column)})
    amounts, _ = nnls([[column.get(o, 0) for column in given] for o in rows], [moles.get(o, 0) for o in rows])
    return [float(amount) for amount in amounts]


def supplied(ingredients, parts):
    """Moles of each oxide that so much of each ingredient brings."""
    moles = {}
    for column, grams in zip(columns(ingredients), parts, strict=True):
        for oxide, n in column.items():
            moles[oxide] = moles.get(oxide, 0) + n * grams
    return moles
