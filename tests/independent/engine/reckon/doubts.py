"""The named doubts about a glaze's expansion, one by one and together."""

from math import hypot, sqrt

from . import glass
from .body import Z90
from .fit import crystal_sd, materials_sd
from .mechanics import FIGURES, taken_up


def ends(x):
    """How far the 90 % interval of the bulk glass reaches down and up."""
    e = glass.estimate("expansion", x)
    low, high = glass.quantile(e["value"], e["scale"], glass.shape("expansion"), [0.05, 0.95])
    return e["value"], e["value"] - low, high - e["value"]


def bulk(x):
    """Half-widths whose squares add up to that of the whole."""
    _, below, above = ends(x)
    half, share = (below + above) / 2, glass.papers_share()
    return {"between-papers": half * share, "model": half * sqrt(1 - share**2)}


def on_ware(chemistry, thickness_mm):
    """Every named doubt as value, low and high, and all together:

    low = value + Σ middles − √Σ (middle − low)², high the same upwards.
    """
    x = chemistry["moleFractions"]
    value, below, above = ends(x)
    share = glass.papers_share()
    drop = lambda evenly: FIGURES["onWare"]["mostDrop"] * float(taken_up(thickness_mm / 1000, evenly))
    even = lambda sd: (0.0, Z90 * sd, Z90 * sd)
    doubts = {
        "betweenPapers": (0.0, share * below, share * above),
        "model": (0.0, sqrt(1 - share**2) * below, sqrt(1 - share**2) * above),
        "materials": even(materials_sd(chemistry, glass.contributions(x)["oxides"])),
        "onWare": (-drop(0.5), drop(0.5) - drop(0.05), drop(0.5) - drop(0.05)),
        "crystals": even(crystal_sd(chemistry["firedMolePercent"])),
    }
    middle = value + sum(row[0] for row in doubts.values())
    reach = [hypot(*(row[i] for row in doubts.values())) for i in (1, 2)]
    doubts["together"] = (middle, *reach)
    return {name: {"value": at, "low": at - low, "high": at + high} for name, (at, low, high) in doubts.items()}
