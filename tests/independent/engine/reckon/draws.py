"""The deviates of every uncertain input: lattice, inverse normal, tables of residuals."""

from functools import cache

import numpy as np

try:
    from scipy.special import ndtri
except ImportError:  # The bench does with numpy alone.
    from statistics import NormalDist

    ndtri = np.vectorize(NormalDist().inv_cdf)

POINTS = 1024
# Documented in api/engine/numeric/lattice.ts and api/engine/fit/draws.ts.
VECTOR = [1, 275, 167, 403, 317, 181, 103, 297, 49, 193, 495, 449, 395, 259, 417, 113, 263, 423, 213, 231]
INPUTS = (
    "glazeExpansion bodyMean glazeRise setPoint onWare bodyQuartz transition recipe bodyRise thickness toughness "
    "moisture interface glazeStiffness bodyStiffness bodyCristobalite rupture quench"
).split()
WORD = 0xFFFFFFFF


def uniform(seed):
    """A Weyl sequence through the final mixer of MurmurHash3, in 32 bits."""
    state = int(seed) & WORD
    while True:
        state = (state + 0x9E3779B9) & WORD
        mixed = ((state ^ (state >> 16)) * 0x85EBCA6B) & WORD
        mixed = ((mixed ^ (mixed >> 13)) * 0xC2B2AE35) & WORD
        yield ((mixed ^ (mixed >> 16)) & WORD) / 2**32


@cache
def lattice(dimensions, seed):
    """uₖ = frac(k z/N + shift + 1/2N), kept off 0 and 1 by 1e-9."""
    numbers = uniform(seed)
    k = np.arange(POINTS)
    points = []
    for z in VECTOR[:dimensions]:
        # Exact: k z/N is a whole number of 1024ths, so no digit is lost in taking its fraction.
        u = (k * z % POINTS) / POINTS + next(numbers) + 0.5 / POINTS
        points.append(np.clip(u - np.floor(u), 1e-9, 1 - 1e-9))
    return points


class Deviates:
    """Even and normal deviates of every input for one seed."""

    def __init__(self, seed):
        self.even = dict(zip(INPUTS, lattice(len(INPUTS), seed), strict=True))
        self.normal = {name: ndtri(u) for name, u in self.even.items()}

    def shaped(self, name, shape):
        n = len(shape)
        return np.interp(self.even[name], (np.arange(n) + 0.5) / n, shape)


NORMAL_SHAPE = ndtri((np.arange(64) + 0.5) / 64)


@cache
def deviates(seed):
    return Deviates(seed)
