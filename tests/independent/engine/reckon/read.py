"""The project's data, read from JSON; nothing else is shared with the engine."""

import json
from functools import cache
from pathlib import Path

DATA = Path(__file__).resolve().parents[4] / "data"


@cache
def table(name):
    """A file of data/, by its path without the ending."""
    return json.loads((DATA / f"{name}.json").read_text(encoding="utf-8"))


@cache
def materials():
    """Every built-in material by id."""
    files = sorted((DATA / "materials").glob("*.json"))
    rows = [row for file in files for row in table(f"materials/{file.stem}").get("materials", [])]
    return {row["id"]: row for row in rows}


WEIGHTS = {symbol: row["value"] for symbol, row in table("atomic-weights")["values"].items()}

# Documented in api/engine/chemistry/oxides.ts: the first 24 are those of the measured glasses.
OXIDES = (
    "SiO2 Al2O3 B2O3 Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO TiO2 ZrO2 P2O5 Fe2O3 FeO MnO SnO2 CoO CuO NiO Cr2O3 Bi2O3 "
    "V2O5 Sb2O3 CdO CeO2 Pr2O3 Rb2O HfO2 Cs2O BeO La2O3 Nb2O5"
).split()
MODEL_OXIDES = OXIDES[:24]
