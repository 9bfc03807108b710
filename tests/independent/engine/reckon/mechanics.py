"""Set point, stress, cracking and lifting; tension positive, a mismatch above 0 squeezes the glaze."""

import numpy as np

from .body import span
from .glass import myega
from .phases import line
from .read import table

FIGURES = table("fit/mechanics")
POISSON = FIGURES["poisson"]["value"]
ZERO_C = 273.15
YEAR_S = 31_557_600
TOUGHNESS = {name: span(row["range"]) for name, row in FIGURES["toughness"].items()}


def weakest(coats):
    """A crack runs from the coat that it runs through most easily."""
    return min((coat["toughness"] for coat in coats), key=lambda k: k["value"])


def log_setting_viscosity(c_per_hour):
    """η = G δT/q."""
    point = FIGURES["setPoint"]
    return np.log10(point["shearModulusGPa"] * 1e9 * point["structuralIntervalK"] * 3600 / c_per_hour)


def setting_ratio(log_viscosity, fragility, limit=-1.95):
    """Temperature of a viscosity over T12, both in kelvin, by bracketing the falling curve."""
    from scipy.optimize import brentq

    return brentq(lambda r: myega(limit, 1.0, fragility, r) - log_viscosity, 0.1, 20, xtol=1e-14, rtol=1e-15)


def set_point_along(t12_c, segments, fragility):
    """The last place at which a cooling glass could still relax: on a ramp up to η = G δT/q, at a soak up to G t."""
    kelvin = t12_c + ZERO_C
    at = lambda log: kelvin * setting_ratio(log, fragility) - ZERO_C
    place, start = np.full(np.shape(t12_c), np.inf), np.inf
    for segment in segments:
        end = segment["toC"]
        ramp = at(log_setting_viscosity(segment["cPerHour"]))
        place = np.where(ramp <= start, np.minimum(place, np.maximum(ramp, end)), place)
        if segment.get("holdMinutes"):
            hold = np.log10(FIGURES["setPoint"]["shearModulusGPa"] * 1e9 * segment["holdMinutes"] * 60)
            place = np.where(end >= at(hold), end, place)
        start = end
    # A schedule that ends hot goes on cooling at its last rate.
    return np.where((place <= end) & (ramp <= end), ramp, place)


def biaxial(pa, poisson):
    return pa / (1 - poisson)


def straight(glaze_pa, glaze_m, body_pa, body_poisson, wall_m, mismatch, faces):
    e1, e2 = biaxial(glaze_pa, POISSON), biaxial(body_pa, body_poisson)
    return -e1 * mismatch / (1 + faces * e1 * glaze_m / (e2 * wall_m))


def free_plate(layers, wall_pa, wall_poisson, wall_m):
    """Mean stress in each layer of a plate free to bend, how far it slopes from face to face, and the stress in the clay
    directly under the glaze, from force and moment balance; `layers` outer first.

    Strain ε₀ + κ y, y = 0 at the clay's face: ∫σ dy = 0 and ∫σ y dy = 0, solved draw by draw by numpy.
    """
    e2 = biaxial(wall_pa, wall_poisson)
    n = np.broadcast(wall_pa, *[m for layer in layers for m in layer]).size
    stiff, load = np.zeros((n, 2, 2)), np.zeros((n, 2))

    def add(e, low, high, free):
        moments = [(high ** (k + 1) - low ** (k + 1)) / (k + 1) for k in range(3)]
        for i in range(2):
            load[:, i] += e * moments[i] * free
            for j in range(2):
                stiff[:, i, j] += e * moments[i + j]

    add(e2, -wall_m, 0.0, 0.0)
    top, middles = 0.0, []
    for pa, thickness, mismatch in reversed(layers):
        add(biaxial(pa, POISSON), top, top + thickness, mismatch)
        middles.append(top + thickness / 2)
        top = top + thickness
    solved = np.linalg.solve(stiff, load[:, :, None])[:, :, 0]
    means = [
        biaxial(pa, POISSON) * (solved[:, 0] + solved[:, 1] * middle - mismatch)
        for (pa, _, mismatch), middle in zip(layers, reversed(middles), strict=True)
    ]
    across = [np.abs(biaxial(pa, POISSON) * solved[:, 1] * thickness) for pa, thickness, _ in layers]
    return means, across, e2 * solved[:, 0]


def stack(layers, wall_pa, wall_poisson, wall_m, glazed):
    """Mean stress in each coat [Pa]; `layers` are (modulus, thickness, mismatch), the outer one first."""
    if glazed == "one-face-free":
        return free_plate(layers, wall_pa, wall_poisson, wall_m)[0]
    faces = 2 if glazed == "both-faces" else 1
    stiff = sum(faces * biaxial(pa, POISSON) * t for pa, t, _ in layers)
    pull = sum(faces * biaxial(pa, POISSON) * t * d for pa, t, d in layers)
    given = pull / (biaxial(wall_pa, wall_poisson) * wall_m + stiff)
    return [biaxial(pa, POISSON) * (given - d) for pa, _, d in layers]


def contrast(glaze_pa, glaze_poisson, body_pa, body_poisson):
    """Dundurs' α."""
    glaze, body = glaze_pa / (1 - glaze_poisson**2), body_pa / (1 - body_poisson**2)
    return (glaze - body) / (glaze + body)


def channelling(alpha):
    row = FIGURES["channelling"]
    xs = row["start"] + row["step"] * np.arange(len(row["z"]))
    return np.maximum(line(xs, row["z"], alpha), 1)


def driving(mean, across):
    """σ̄(a) √(a/t) at its greatest over the depth a of a crack, with a/t from 0 to 1; the mean where no face is pulled.

    σ̄ = s − d a/2t from the face pulled harder, s = m + d/2: greatest at a/t = 2s/3d, or through the whole coat.
    """
    face = np.asarray(mean + across / 2)
    deep = np.clip(np.divide(2 * face, 3 * across, out=np.ones_like(face), where=across > 0), 0, 1)
    return np.where(face > 0, (face - across * deep / 2) * np.sqrt(deep), mean)


def mean_borne(even, across):
    """Mean stress at which a sloping coat cracks that an even stress would crack: √(a/t) = x solves x³ d = K there.

    From σ̄ = K/x and σ̄ = m + d/2 − d x²/2 at the depth where the drive is greatest, 3 d x² = 2 (m + d/2).
    """
    x = np.cbrt(np.divide(even, across, out=np.ones_like(even + across), where=across > even))
    return np.where(x < 1, even / x - across / 2 + across * x**2 / 2, even)


def delayed_share(seconds):
    """(L/(A t))^(1/n), at most 1."""
    row = FIGURES["crackGrowth"]
    return min((row["runM"] / (row["speedAtToughnessMPerS"] * seconds)) ** (1 / row["exponent"]), 1)


def edge_energy(stress, glaze_m, pa):
    return (1 - POISSON**2) * stress**2 * glaze_m / (2 * pa)


def lifting_stress(toughness, glaze_m, pa):
    return -np.sqrt(2 * pa * toughness / ((1 - POISSON**2) * glaze_m))


def taken_up(glaze_m, evenly):
    """Share of the most clay on record that a glaze has taken up."""
    return evenly * np.minimum(1, FIGURES["onWare"]["fullUpToMm"] * 1e-3 / glaze_m)


def moisture_age(years):
    return (years / 30) ** 0.25


def strip_curvature(mismatch, t, h, glaze_pa, body_pa):
    """Two layers in one direction, from force and moment balance about the interface (no closed form)."""
    stiff = np.array(
        [
            [glaze_pa * t + body_pa * h, (glaze_pa * t**2 - body_pa * h**2) / 2],
            [(glaze_pa * t**2 - body_pa * h**2) / 2, (glaze_pa * t**3 + body_pa * h**3) / 3],
        ]
    )
    load = np.array([glaze_pa * t, glaze_pa * t**2 / 2]) * mismatch
    return float(np.linalg.solve(stiff, load)[1])
