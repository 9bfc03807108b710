"""Independent numerical solutions of a glaze running down a wall.

Not part of the test command. Run by hand: python3 tests/independent/film.py > tests/independent/film.json
Needs numpy and scipy. Written from the thin-film equation and the equation of steady shear flow alone; no closed form
of the project is used. tests/literature/running.test.ts compares the engine with the record.

- fronts: dh/dk + d(h^3)/dx = 0 by Godunov's first-order scheme, on two grids, extrapolated; k is the melt work
  (rho g / 3) * integral dt/eta. A coat of thickness 1 covers 0 < x < 1.
- rolls: dh/dt + d/dx[h^3 (1 + d3h/dx3)] = 0, the same film with surface tension, on a wet film of thickness b; lengths
  along the wall in units of (sigma h0 / rho g)^(1/3). Implicit in time (BDF).
- stacks: steady shear flow of layers of unlike viscosity, the stress integrated twice through the thickness.
- work: integral of dt / eta(T(t)) by adaptive quadrature for one viscosity curve and one firing.
"""
import json
import sys

import numpy as np
import scipy
from scipy.integrate import cumulative_trapezoid, quad, solve_ivp


def godunov(cells, length, times):
    """Front (where the cumulated volume ends, by the half-height point) and volume at each k."""
    dx = length / cells
    x = (np.arange(cells) + 0.5) * dx
    h = np.where(x < 1, 1.0, 0.0)
    k, out = 0.0, []
    for end in times:
        while k < end - 1e-15:
            step = min(0.9 * dx / (3 * max(h.max(), 1e-9) ** 2), end - k)
            flux = np.concatenate([[0.0], h**3])
            h = h - step / dx * np.diff(flux)
            k += step
        wet = np.nonzero(h > 0.5 * h.max())[0][-1]
        # Between the last cell above half height and the next, linearly.
        half = 0.5 * h.max()
        front = x[wet] + dx * (h[wet] - half) / (h[wet] - h[wet + 1])
        out.append((front - 1, h.sum() * dx))
    return out


def fronts():
    times = [0.05, 0.2, 0.45, 1.0, 3.0]
    coarse, fine = godunov(4000, 4.0, times), godunov(8000, 4.0, times)
    return [
        {"freeRun": k, "advance": 2 * f[0] - c[0], "advanceFine": f[0], "volume": f[1]}
        for k, c, f in zip(times, coarse, fine)
    ]


def roll(b, times, dx=0.05, before=14.0, after=22.0):
    """Height of the roll, in film thicknesses, against how far the front has come."""
    x = np.arange(-before, after, dx)
    start = b + (1 - b) * 0.5 * (1 - np.tanh(x / 0.1))

    def rate(_, h):
        p = np.concatenate([[1.0, 1.0], h, [b, b]])
        third = (p[3:] - 3 * p[2:-1] + 3 * p[1:-2] - p[:-3]) / dx**3
        left, right = p[1:-2], p[2:-1]
        # Mobility that keeps the film positive (Zhornitskaya and Bertozzi's entropy form for h^3).
        mobility = 2 * left**2 * right**2 / (left + right)
        flux = left**3 * 0.5 + right**3 * 0.5 + mobility * third
        return -(np.diff(flux)) / dx

    n = len(x)
    band = np.zeros((n, n))
    for o in range(-2, 3):
        band += np.eye(n, k=o)
    solution = solve_ivp(rate, (0, times[-1]), start, "BDF", t_eval=times, rtol=1e-5, atol=1e-7,
                         jac_sparsity=scipy.sparse.csr_matrix(band))
    rows = []
    for t, h in zip(solution.t, solution.y.T):
        half = 0.5 * (1 + b)
        last = np.nonzero(h > half)[0][-1]
        front = x[last] + dx * (h[last] - half) / (h[last] - h[last + 1])
        rows.append({"time": t, "advance": front, "height": float(h.max())})
    return rows


def stack(layers):
    """Mean velocity times 3/(rho g H^2): mean fluidity [1/(Pa s)]. Layers from the clay outwards: thickness, viscosity."""
    total = sum(t for t, _ in layers)
    y = np.linspace(0, total, 400001)
    edges = np.cumsum([t for t, _ in layers])
    eta = np.array([e for _, e in layers])[np.searchsorted(edges, (y[:-1] + y[1:]) / 2)]
    middle = (y[:-1] + y[1:]) / 2
    shear = (total - middle) / eta
    velocity = np.concatenate([[0.0], np.cumsum(shear * np.diff(y))])
    mean = cumulative_trapezoid(velocity, y)[-1] / total
    return {"layers": layers, "fluidity": 3 * mean / total**2}


def work():
    curve = {"limit": -2.0, "t12K": 900.0, "fragility": 38.0}
    steps = [[20, 20], [1140, 150], [1240, 60], [1100, 300], [20, 120]]
    hold_minutes = 20

    def fluidity(c):
        u = curve["t12K"] / (c + 273.15)
        span = 12 - curve["limit"]
        return 10 ** -(curve["limit"] + span * u * np.exp((curve["fragility"] / span - 1) * (u - 1)))

    total = hold_minutes * 60 * fluidity(1240)
    for (a, _), (z, rate) in zip(steps, steps[1:]):
        value, _ = quad(lambda c: fluidity(c) * 3600 / rate, min(a, z), max(a, z), epsrel=1e-11, limit=500)
        total += value
    return {"curve": curve, "segments": [{"toC": c, "cPerHour": r} for c, r in steps[1:]],
            "holdAtPeakMinutes": hold_minutes, "meltWork": total}


def rounded(value):
    """Nine figures of every number."""
    if isinstance(value, dict):
        return {key: rounded(each) for key, each in value.items()}
    if isinstance(value, (list, tuple)):
        return [rounded(each) for each in value]
    return float(f"{value:.9g}") if isinstance(value, float) else value


if __name__ == "__main__":
    times = [0.25, 0.5, 1, 2, 4, 8]
    record = {
        "title": "A glaze running down a wall, solved numerically",
        "script": "tests/independent/film.py",
        "made": {"numpy": np.__version__, "scipy": scipy.__version__},
        "fronts": fronts(),
        "rolls": [{"wet": b, "rows": roll(b, times)} for b in (0.1, 0.03, 0.01)],
        "stacks": [
            stack([[0.2e-3, 1e3], [0.2e-3, 1e4]]),
            stack([[0.2e-3, 1e4], [0.2e-3, 1e3]]),
            stack([[0.15e-3, 2e3], [0.1e-3, 5e2], [0.3e-3, 3e4]]),
        ],
        "work": work(),
    }
    json.dump(rounded(record), sys.stdout, indent=1)
    print()
