"""The expansion model once more, written apart from the project's own regression: scikit-learn on the same folds.

Not part of the test command. Run by hand, with the result recorded in independent-check.json:

    python -m venv check && check/bin/pip install numpy scikit-learn
    check/bin/python data/fitting/independent-check.py

Nothing is shared with the TypeScript but the data, the definition of terms and the dealing of folds. Publications are
not weighted by their scatter here, so the figure to compare is the row "products of all common oxides" of the report,
and the model that ships must do no worse.
"""

import csv
import json
import pathlib
import platform

import numpy as np
import sklearn
from sklearn.linear_model import HuberRegressor

HERE = pathlib.Path(__file__).parent
FOLDS = 10


def read():
    with open(HERE.parent / "glasses" / "glasses.csv", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["cte"] and 1 <= float(row["cte"]) <= 20]
    oxides = list(rows[0])[3:27]
    x = np.array([[float(row[oxide]) for oxide in oxides] for row in rows])
    x /= x.sum(axis=1, keepdims=True)
    return oxides, x, np.array([float(row["cte"]) for row in rows]), [int(row["publication"]) for row in rows]


def deal(x, y, publications):
    """Publications that print the same value for the same glass go together; then a multiplicative hash."""
    parent = {}

    def root(a):
        while parent.get(a, a) != a:
            a = parent[a]
        return a

    seen = {}
    for row, value, publication in zip(x, y, publications):
        key = (tuple(np.floor(row * 1000 + 0.5)), f"{value:.3g}")
        if key not in seen:
            seen[key] = publication
        elif root(seen[key]) != root(publication):
            parent[root(publication)] = root(seen[key])
    return np.array([((root(p) * 0x9E3779B1 & 0xFFFFFFFF) >> 16) % FOLDS for p in publications])


def terms(oxides, x):
    of = {oxide: x[:, i] for i, oxide in enumerate(oxides)}
    alkali = of["Li2O"] + of["Na2O"] + of["K2O"]
    earths = sum(of[o] for o in "MgO CaO SrO BaO ZnO PbO FeO MnO CoO CuO NiO".split())
    common = "Al2O3 B2O3 Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO TiO2 ZrO2 P2O5".split()
    columns = [of[o] for o in oxides if o != "SiO2"]
    columns.append(np.minimum(of["Al2O3"], alkali))
    columns.append(np.minimum(of["Al2O3"], alkali + earths))
    columns.append(np.minimum(of["B2O3"], np.maximum(alkali + earths - of["Al2O3"], 0)))
    columns += [of[a] * of[b] for i, a in enumerate(common) for b in common[i:]]
    return np.column_stack(columns)


def domains(oxides, x):
    p = {oxide: 100 * x[:, i] for i, oxide in enumerate(oxides)}
    alkali = p["Li2O"] + p["Na2O"] + p["K2O"]
    earths = p["MgO"] + p["CaO"] + p["SrO"] + p["BaO"] + p["ZnO"]
    glaze = (p["SiO2"] >= 45) & (p["SiO2"] <= 80) & (p["Al2O3"] >= 2) & (p["Al2O3"] <= 20) & (p["B2O3"] < 25)
    glaze &= (p["Li2O"] < 12) & (p["TiO2"] < 6) & (p["ZrO2"] < 8) & (p["P2O5"] < 4)
    glaze &= alkali + earths + p["PbO"] >= 8
    stoneware = glaze & (alkali >= 1) & (alkali <= 16) & (earths >= 2) & (p["Al2O3"] >= 4) & (p["SiO2"] >= 50)
    return {"glaze": glaze, "stoneware-like": stoneware}


def main():
    oxides, x, y, publications = read()
    folds = deal(x, y, publications)
    design = terms(oxides, x)
    design /= np.maximum(np.sqrt((design**2).mean(axis=0)), 0.004)
    predicted = np.empty_like(y)
    for fold in range(FOLDS):
        train, test = folds != fold, folds == fold
        model = HuberRegressor(epsilon=1.35, alpha=1.0, max_iter=2000).fit(design[train], y[train])
        predicted[test] = model.predict(design[test])
    figures = {}
    for name, inside in domains(oxides, x).items():
        error = predicted[inside] - y[inside]
        figures[name] = {
            "n": int(inside.sum()),
            "medianAbsoluteError": round(float(np.median(np.abs(error))), 3),
            "bias": round(float(error.mean()), 3),
            "p90": round(float(np.quantile(np.abs(error), 0.9)), 3),
            "rmse": round(float(np.sqrt((error**2).mean())), 3),
        }
    result = {
        "title": "Expansion by an independent implementation on the same folds",
        "unit": "1e-6/K",
        "made": f"Python {platform.python_version()}, numpy {np.__version__}, scikit-learn {sklearn.__version__}",
        "figures": figures,
    }
    (HERE / "independent-check.json").write_text(json.dumps(result, indent=2) + "\n")
    print(json.dumps(result, indent=2))


if __name__ == "__main__":
    main()
