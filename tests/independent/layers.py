"""Independent solution of glazed plates, strips and rings, by minimising elastic energy numerically.

Not part of the test command. Run by hand: python3 tests/independent/layers.py > tests/independent/layers.json
Needs numpy and scipy. Written from the energy of layered plates alone: no closed form of the project is used.
Recorded with numpy and scipy; tests/literature/independent-layers.test.ts compares the engine with the record.
"""
import json
import math

import numpy as np
from scipy.optimize import minimize


def plate(e_g, e_b, nu_g, nu_b, t, h, mismatch, free):
    """Glaze on one face of a plate. Energy per area over the depth by Gauss quadrature; unknowns: strain and curvature."""
    m_g, m_b = e_g / (1 - nu_g), e_b / (1 - nu_b)
    nodes, weights = np.polynomial.legendre.leggauss(8)
    yg, wg = (nodes + 1) * t / 2, weights * t / 2
    yb, wb = (nodes - 1) * h / 2, weights * h / 2

    def energy(u):
        e0, k = (u[0] * 1e-4, u[1] * 1e-2 if free else 0.0)
        glaze = m_g * (e0 + k * yg) ** 2
        body = m_b * (e0 + k * yb + mismatch) ** 2
        return float((wg @ glaze + wb @ body) / (m_b * h * mismatch**2))

    best = minimize(energy, [0.0, 0.0], method="Nelder-Mead", options={"xatol": 1e-13, "fatol": 1e-18, "maxiter": 20000})
    best = minimize(energy, best.x, method="BFGS", options={"gtol": 1e-12})
    e0, k = best.x[0] * 1e-4, best.x[1] * 1e-2 if free else 0.0
    return {
        "glazeMeanMPa": m_g * (e0 + k * t / 2) / 1e6,
        "bodyInterfaceMPa": m_b * (e0 + mismatch) / 1e6,
        "bodyBackMPa": m_b * (e0 - k * h + mismatch) / 1e6,
        "curvaturePerM": k,
    }


def ring(e_g, e_b, t, h, r, mismatch):
    """A narrow ring glazed outside, cut: two uniaxial layers on a circle; each chooses strain and change of curvature."""
    nodes, weights = np.polynomial.legendre.leggauss(12)
    yg, wg = h / 2 + (nodes + 1) * t / 2, weights * t / 2
    yb, wb = nodes * h / 2, weights * h / 2

    def energy(u):
        e0, k = u[0] * 1e-4, u[1] * 1e-2
        # Strain at height y on a circle of radius r: (e0 + k y)/(1 + y/r); lengths grow as 1 + y/r.
        sg = (e0 + k * yg) / (1 + yg / r)
        sb = (e0 + k * yb) / (1 + yb / r) + mismatch
        return float((wg * (1 + yg / r)) @ (e_g * sg**2) + (wb * (1 + yb / r)) @ (e_b * sb**2)) / (e_b * h * mismatch**2)

    best = minimize(energy, [0.0, 0.0], method="Nelder-Mead", options={"xatol": 1e-13, "fatol": 1e-18, "maxiter": 20000})
    e0, k = best.x[0] * 1e-4, best.x[1] * 1e-2
    glaze = float(np.mean(e_g * (e0 + k * yg) / (1 + yg / r)))
    # A ring that only shrinks keeps its angle although k is then -mismatch/r; what is left turns the ends.
    turn = k + mismatch / r
    return {"gapClosingMm": 2 * math.pi * r * r * turn * 1e3, "glazeAfterCutMPa": glaze / 1e6}


CASES = [
    dict(e_g=70e9, e_b=60e9, nu_g=0.2, nu_b=0.2, t=3e-4, h=5e-3, mismatch=6e-4),
    dict(e_g=70e9, e_b=30e9, nu_g=0.2, nu_b=0.15, t=6e-4, h=4e-3, mismatch=-4e-4),
    dict(e_g=80e9, e_b=70e9, nu_g=0.22, nu_b=0.22, t=1.2e-3, h=3e-3, mismatch=8e-4),
]

print(json.dumps({
    "title": "Layered plates and a ring, solved by energy minimisation",
    "script": "tests/independent/layers.py",
    "plates": [{"case": c, "free": plate(**c, free=True), "straight": plate(**c, free=False)} for c in CASES],
    "ring": {"case": dict(e_g=70e9, e_b=60e9, t=3e-4, h=4e-3, r=3e-2, mismatch=9.19e-4), "solved": ring(70e9, 60e9, 3e-4, 4e-3, 3e-2, 9.19e-4)},
}, indent=1))
