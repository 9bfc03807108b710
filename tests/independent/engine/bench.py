"""What a fit costs a vectorised numpy version of the same computation.

    python3 bench.py QUESTIONS.json [SECONDS]

QUESTIONS.json is a list of more than 64 questions. Tries several numbers of fits at once and prints the least processor
time as JSON. Needs numpy; where scipy is there too, the first answers are compared with those of `reckon` beforehand.
Set OPENBLAS_NUM_THREADS=1 to keep it on one core.
"""

import importlib.util
import json
import sys
import time

import numpy as np
from vectorised.fits import fits

AT_ONCE = (1, 4, 16, 64)
CHECKED = 8


def check(questions):
    """Largest relative difference to the long way round."""
    from reckon import fit, outcome

    many = fits(questions[:CHECKED])
    worst = 0.0
    for b, question in enumerate(questions[:CHECKED]):
        s = fit.read(question)
        run = fit.simulate(s, 1)
        summary, tried, shares = outcome.summarise(s, run), outcome.trials(s, run), outcome.shares(s, run)
        cases = outcome.twenty_cases(run, summary)
        arrays = ("stress", "mismatch", "setC", "root", "outcome", "bodyMean")
        pairs = [(run[name], many["run"][name][b]) for name in arrays]
        pairs += [(tried[name], many["trials"][name][b]) for name in ("quench", "steam", "use")]
        pairs += [(list(tried["cracksFrom"].values()), many["trials"]["cracksFrom"][b])]
        pairs += [(list(summary["mismatch"].values()), many["middles"]["mismatch"][b])]
        pairs += [(list(summary["setPointC"].values()), many["middles"]["setC"][b])]
        pairs += [([c["stressPa"] / 1e6 for c in cases], many["cases"][b])]
        names = ("cracksOnCooling", "mayCrackInTime", "flakesComeOff", "edgesMayLift")
        pairs += [([summary[name] for name in names], many["thresholds"][b])]
        pairs += [(list(shares["stress"].values()), many["shares"][b])]
        pairs += [(list(shares["verdict"].values()), many["verdictShares"][b])]
        for here, there in pairs:
            here, there = np.asarray(here, float), np.asarray(there, float)
            worst = max(worst, float(np.max(np.abs(here - there)) / max(float(np.max(np.abs(here))), 1e-300)))
    return worst


def cost_us(questions, at_once, seconds):
    """Processor time for each fit [µs], every fit of another question: the least of eight batches."""
    costs = []
    for batch in range(8):
        began, used, done = time.perf_counter(), time.process_time(), 0
        while time.perf_counter() - began < seconds / 8:
            start = (batch + done) % (len(questions) - at_once)
            fits(questions[start : start + at_once])
            done += at_once
        costs.append((time.process_time() - used) / done * 1e6)
    return min(costs)


def main(path, seconds="4"):
    with open(path, encoding="utf-8") as file:
        questions = json.load(file)
    worst = check(questions) if importlib.util.find_spec("scipy") else None
    if worst is not None and worst > 1e-9:
        print(f"The vectorised fits are off by {worst:.1e}.", file=sys.stderr)
        return 1
    fits(questions[:4])
    costs = {n: cost_us(questions, n, float(seconds) / len(AT_ONCE)) for n in AT_ONCE}
    best = min(costs, key=costs.get)
    print(json.dumps({"us": costs[best], "atOnce": best, "numpy": np.__version__, "checked": worst, "by": costs}))
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
