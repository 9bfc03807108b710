"""Ways of fitting the expansion that were tried apart and not kept, scored on the project's own folds.

Not part of the test command. Run by hand, with the figures recorded in tried-apart.json, from which the report takes
them:

    python -m venv check && check/bin/pip install numpy scikit-learn
    check/bin/python data/fitting/tried-apart.py [FROM [TO]]

FROM and TO, counted from 0, run only those ways again; the others keep their figures. Data, folds,
domains and the first terms come from independent-check.py; the regression is written anew, so the first line is also a
second check of the model that ships.
"""

import importlib.util
import itertools
import json
import pathlib
import sys

import numpy as np

HERE = pathlib.Path(__file__).parent
spec = importlib.util.spec_from_file_location("check", HERE / "independent-check.py")
check = importlib.util.module_from_spec(spec)
spec.loader.exec_module(check)

OXIDES, X, Y, PUBLICATIONS = check.read()
P = np.array(PUBLICATIONS)
FOLD = check.deal(X, Y, PUBLICATIONS)
INSIDE = check.domains(OXIDES, X)
GLAZE, STONEWARE = INSIDE["glaze"], INSIDE["stoneware-like"]
COMMON = "Al2O3 B2O3 Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO TiO2 ZrO2 P2O5".split()
of = {oxide: X[:, i] for i, oxide in enumerate(OXIDES)}
AL, B = of["Al2O3"], of["B2O3"]
R2O = of["Li2O"] + of["Na2O"] + of["K2O"]
RO = sum(of[o] for o in "MgO CaO SrO BaO ZnO PbO FeO MnO CoO CuO NiO".split())
WITH_ALKALI = np.minimum(AL, R2O)
WITH_FLUX = np.minimum(AL, R2O + RO)
DOMAIN_WEIGHT = np.where(STONEWARE, 5.0, np.where(GLAZE, 3.0, 1.0))


def above(v):
    return np.maximum(v, 0)


def times(group, names=COMMON):
    """A group, and the group times each oxide."""
    return np.column_stack([group, *[group * of[o] for o in names]])


def sized(terms, least=0.004):
    return terms / np.maximum(np.sqrt((terms**2).mean(axis=0)), least)


OWN = sized(
    np.column_stack(
        [check.terms(OXIDES, X), *[WITH_ALKALI * of[o] for o in COMMON[:10] if o != "B2O3"]]
    )
)
DESIGN = np.column_stack([np.ones(len(Y)), OWN])


def solve(d, y, w, ridge):
    a = (d * w[:, None]).T @ d
    a[np.diag_indices_from(a)] += ridge * w.sum()
    a[0, 0] -= ridge * w.sum()
    return np.linalg.solve(a, d.T @ (w * y))


def weight(residual, threshold, loss):
    if loss == "cauchy":
        return 1 / (1 + (residual / threshold) ** 2)
    return np.minimum(1, threshold / np.maximum(np.abs(residual), 1e-12))


def trusted(d, y, publications, own=None, ridge=1e-4, threshold=0.3, scatter=0.25, loss="huber", trust=True):
    """Robust regression, careful publications trusted more: the way of trusted-fit.ts."""
    own = np.ones(len(y)) if own is None else own
    w, b = own, None
    _, place = np.unique(publications, return_inverse=True)
    for rounds in (10, 6, 6) if trust else (15,):
        for _ in range(rounds):
            tamed = w if b is None else w * weight(y - d @ b, threshold, loss)
            b = solve(d, y, tamed, ridge)
        squares = np.bincount(place, np.minimum(np.abs(y - d @ b), 6 * scatter) ** 2)
        rows = np.bincount(place)
        w = own * (scatter / np.sqrt((squares + 3 * scatter**2) / (rows + 3)))[place]
    return b, w


def linear(extra=None, own=None, **options):
    """Predictions for unseen publications by a sum of terms."""
    d = DESIGN if extra is None else np.column_stack([DESIGN, extra])

    def predict(train, test):
        weights = None if own is None else own[train]
        return d[test] @ trusted(d[train], Y[train], P[train], weights, **options)[0]

    return predict


def cubes(groups):
    return sized(
        np.column_stack([a * b * c for a, b, c in itertools.combinations_with_replacement(groups, 3)])
    )


def composition_medians(train, test):
    """One row a composition (to 0.1 mol %): the median of the medians of its publications."""
    places = np.flatnonzero(train)
    _, key = np.unique(np.round(X[places] * 1000), axis=0, return_inverse=True)
    order = np.argsort(key.ravel(), kind="stable")
    groups = np.split(places[order], np.flatnonzero(np.diff(key.ravel()[order])) + 1)
    first = np.array([g[0] for g in groups])
    middle = [np.median([np.median(Y[g[P[g] == p]]) for p in np.unique(P[g])]) for g in groups]
    several = np.array([len(np.unique(P[g])) > 1 for g in groups])
    publications = np.where(several, -1 - np.arange(len(groups)), P[first])
    return DESIGN[test] @ trusted(DESIGN[first], np.array(middle), publications)[0]


def one_weight_a_composition(train, test):
    _, key, rows = np.unique(np.round(X[train] * 1000), axis=0, return_inverse=True, return_counts=True)
    return DESIGN[test] @ trusted(DESIGN[train], Y[train], P[train], 1 / rows[key.ravel()])[0]


def offsets(shrink):
    """A shift of its own for each publication, shrunk by so many imagined rows."""

    def predict(train, test):
        _, place = np.unique(P[train], return_inverse=True)
        shift = np.zeros(train.sum())
        for _ in range(3):
            b, _ = trusted(DESIGN[train], Y[train] - shift, P[train])
            residual = np.clip(Y[train] - DESIGN[train] @ b, -0.6, 0.6)
            shift = (np.bincount(place, residual) / (np.bincount(place) + shrink))[place]
        return DESIGN[test] @ b

    return predict


def by_root_of_rows(train, test):
    _, place = np.unique(P[train], return_inverse=True)
    return DESIGN[test] @ trusted(DESIGN[train], Y[train], P[train], np.bincount(place)[place] ** -0.5)[0]


def bagged(train, test, times=6):
    """Mean of fits to publications drawn with replacement; still one sum of terms."""
    random = np.random.default_rng(3)
    _, place = np.unique(P[train], return_inverse=True)
    total = 0
    for _ in range(times):
        drawn = np.bincount(random.integers(0, place.max() + 1, place.max() + 1), minlength=place.max() + 1)[place]
        use = drawn > 0
        total = total + trusted(DESIGN[train][use], Y[train][use], P[train][use], drawn[use].astype(float))[0]
    return DESIGN[test] @ (total / times)


def kernel(centres, reach):
    """Bells around cluster centres, fitted to the residuals of glazes; distances as in neighbours.ts."""
    from sklearn.cluster import MiniBatchKMeans

    oxide_weight = {"SiO2": 0.4, "Al2O3": 0.9, "Li2O": 1.5, "Na2O": 1.5, "K2O": 1.5}
    z = X * np.array([100 * oxide_weight.get(o, 1) for o in OXIDES])

    def bells(a, c):
        square = (a**2).sum(1)[:, None] + (c**2).sum(1)[None] - 2 * a @ c.T
        return np.exp(-np.sqrt(np.maximum(square, 0)) / reach)

    def predict(train, test):
        b, w = trusted(DESIGN[train], Y[train], P[train])
        residual = Y[train] - DESIGN[train] @ b
        means = MiniBatchKMeans(centres, random_state=0, n_init=1, max_iter=30, batch_size=4096)
        c = means.fit(z[train & GLAZE]).cluster_centers_
        k, penalty = bells(z[train], c), 3 * bells(c, c) + 1e-8 * np.eye(centres)
        a = np.zeros(centres)
        for _ in range(4):
            tamed = w * weight(residual - k @ a, 0.3, "huber")
            a = np.linalg.solve((k * tamed[:, None]).T @ k + penalty, k.T @ (tamed * residual))
        return DESIGN[test] @ b + bells(z[test], c) @ a

    return predict


def trees(kind):
    """Trees on the residuals: no parts by oxide, but a mark of how far anything might get on these rows."""
    from sklearn.ensemble import ExtraTreesRegressor, HistGradientBoostingRegressor

    features = np.column_stack([X, R2O, RO, WITH_ALKALI, WITH_FLUX, np.minimum(B, above(R2O + RO - AL))])

    def predict(train, test):
        b, w = trusted(DESIGN[train], Y[train], P[train])
        residual = np.clip(Y[train] - DESIGN[train] @ b, -1, 1)
        if kind == "random":
            forest = ExtraTreesRegressor(60, min_samples_leaf=5, max_features=0.5, n_jobs=1, random_state=1)
        else:
            forest = HistGradientBoostingRegressor(
                max_iter=80, learning_rate=0.05, max_leaf_nodes=15, min_samples_leaf=40, random_state=1
            )
        return DESIGN[test] @ b + forest.fit(features[train], residual, w).predict(features[test])

    return predict


EXCESS = above(AL - R2O - RO)
LEFT = above(R2O + RO - AL)
DELL_BRAY = np.minimum(np.minimum(LEFT, 0.5 * B + of["SiO2"] / 16), B)
STRENGTH = (
    of["Na2O"] + of["K2O"] + of["BaO"]
    + 0.7 * (of["CaO"] + of["SrO"] + of["PbO"])
    + 0.3 * (of["Li2O"] + of["MgO"] + of["ZnO"])
)
GROUPS = [AL, B, R2O, RO, of["Li2O"], of["Na2O"], of["K2O"]]
NINE = [AL, B, of["Li2O"], of["Na2O"], of["K2O"], of["MgO"], of["CaO"], of["SrO"] + of["BaO"], of["ZnO"]]
PAIRS = [("Li2O", "Na2O"), ("Li2O", "K2O"), ("Na2O", "K2O")]

WAYS = {
    "the model that ships, written anew": linear(),
    "mixed alkali: the lesser of each two alkalis": linear(
        sized(np.column_stack([np.minimum(of[a], of[b]) for a, b in PAIRS]))
    ),
    "mixed alkali: product over all alkali": linear(
        sized(np.column_stack([of[a] * of[b] / np.maximum(R2O, 1e-6) for a, b in PAIRS]))
    ),
    "the lesser of every two common oxides": linear(
        sized(np.column_stack([np.minimum(of[a], of[b]) for a, b in itertools.combinations(COMMON, 2)]))
    ),
    "alumina beyond all flux, times oxides": linear(sized(times(EXCESS))),
    "alumina beyond alkali, times oxides": linear(sized(times(above(AL - R2O)))),
    "flux left over by alumina and boron, times oxides": linear(sized(times(above(LEFT - np.minimum(B, LEFT))))),
    "four-fold boron after Dell and Bray (from memory), times oxides": linear(sized(times(DELL_BRAY))),
    "four-fold boron by strength of flux, times oxides": linear(
        sized(times(np.minimum(B, above(STRENGTH - AL))))
    ),
    "four-fold boron from alkali alone, times oxides": linear(sized(times(np.minimum(B, above(R2O - AL))))),
    "products of three: alumina, boron, alkali, earths and each alkali": linear(cubes(GROUPS)),
    "… the same, stoneware-like rows weighted 5, glazes 3": linear(cubes(GROUPS), DOMAIN_WEIGHT),
    "products of three of nine oxides, weighted so": linear(cubes(NINE), DOMAIN_WEIGHT),
    "stoneware-like rows weighted 5, glazes 3": linear(own=DOMAIN_WEIGHT),
    "one row a composition: the median over publications": composition_medians,
    "rows of one composition share one weight": one_weight_a_composition,
    "a shift for each publication, shrunk by 2 rows": offsets(2),
    "a shift for each publication, shrunk by 10 rows": offsets(10),
    "a shift for each publication, shrunk by 30 rows": offsets(30),
    "a publication counts as the root of its rows": by_root_of_rows,
    "mean of six fits to publications drawn with replacement": bagged,
    "Huber threshold 0.15 instead of 0.3": linear(threshold=0.15),
    "Huber threshold 1": linear(threshold=1),
    "Huber threshold 2": linear(threshold=2),
    "Huber threshold 1.5, no trust in publications": linear(threshold=1.5, trust=False),
    "Cauchy weights at 0.5": linear(threshold=0.5, loss="cauchy"),
    "ridge a tenth": linear(ridge=1e-5),
    "ridge ten times": linear(ridge=1e-3),
    "ordinary scatter 0.12 instead of 0.25": linear(scatter=0.12),
    "200 bells on the residuals": kernel(200, 6),
    "400 narrower bells on the residuals": kernel(400, 4),
    "80 boosted trees on the residuals": trees("boosted"),
    "60 random trees on the residuals": trees("random"),
}


def unseen(way):
    predicted = np.empty_like(Y)
    for fold in range(check.FOLDS):
        predicted[FOLD == fold] = way(FOLD != fold, FOLD == fold)
    return predicted


def figures(predicted):
    result = {}
    for name, inside in INSIDE.items():
        error = np.abs(predicted[inside] - Y[inside])
        result[name] = {
            "medianAbsoluteError": round(float(np.median(error)), 3),
            "p90": round(float(np.quantile(error, 0.9)), 3),
            "rmse": round(float(np.sqrt((error**2).mean())), 4),
        }
    return result


def gains(first, predicted, draws=2000):
    """Fall of the root mean square against the model that ships; 90 % interval, publications drawn with replacement."""
    random = np.random.default_rng(0)
    publications, place = np.unique(P, return_inverse=True)
    result = {}
    for name, inside in INSIDE.items():
        squares = [np.bincount(place, inside * (p - Y) ** 2) for p in (first, predicted)]
        rows = np.bincount(place, inside)
        falls = []
        for _ in range(draws):
            drawn = np.bincount(random.integers(0, len(publications), len(publications)), minlength=len(publications))
            before, after = (np.sqrt((drawn * s).sum() / (drawn * rows).sum()) for s in squares)
            falls.append(before - after)
        result[name] = [round(float(v), 4) for v in np.quantile(falls, [0.05, 0.95])]
    return result


def main():
    file = HERE / "tried-apart.json"
    known = {way["name"]: way for way in json.loads(file.read_text())["ways"]} if file.exists() else {}
    first = unseen(linear())
    at, to = (int(sys.argv[i]) if len(sys.argv) > i else other for i, other in ((1, 0), (2, len(WAYS))))
    for name, way in list(WAYS.items())[at:to]:
        predicted = unseen(way)
        known[name] = {"name": name, "figures": figures(predicted), "rmseFalls": gains(first, predicted)}
        print(name, known[name]["figures"], known[name]["rmseFalls"], flush=True)
        record(file, known)


def record(file, known):
    result = {
        "title": "Ways of fitting the expansion that were tried apart and not kept",
        "unit": "1e-6/K",
        "made": f"Python {check.platform.python_version()}, numpy {np.__version__}, "
        f"scikit-learn {check.sklearn.__version__}",
        "ways": [known[name] for name in WAYS if name in known],
    }
    file.write_text(json.dumps(result, indent=2, ensure_ascii=False) + "\n")


if __name__ == "__main__":
    main()
