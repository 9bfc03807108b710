"""Whole fits, draw by draw."""

from reckon import chemistry, fit, glass, outcome

from .glass import per_part
from .table import unpacked

MIDDLES = ("stress", "mismatch", "setPointC", "glazeMean", "bodyMean")
LIFTED = ("edges", "flakes", "splits")


def compare_fit(i, question, told, t):
    where = f"fit {i}"
    s = fit.read(question)
    run = fit.simulate(s, question.get("seed", 1))
    for name, text in told["perDraw"].items():
        if name != "outcome":
            t.add(f"fit: {name} of each draw", run[name], unpacked(text), where)
    for ours, text in zip(run["coats"], told["coats"], strict=True):
        t.add("fit: stress in each coat", ours, unpacked(text), where)
    for name, text in (told["bent"] or {}).items():
        t.add(f"fit: {name} of each draw that bends", run[name], unpacked(text), where)
    t.same("fit: outcome of each draw", run["outcome"], unpacked(told["perDraw"]["outcome"]).astype(int), where)
    t.same("fit: counts", list(run["counts"].values()), [told["counts"][name] for name in run["counts"]], where)
    t.same("fit: lifted", [run["lifted"][k] for k in LIFTED], [told["lifted"][k] for k in LIFTED], where)

    shares = outcome.shares(s, run)
    t.add("fit: shares of the stress", {**shares["stress"], "whole": 1}, {**told["shares"], "whole": 1}, where)
    t.add("fit: shares of the verdict", {**shares["verdict"], "whole": 1}, {**told["verdictShares"], "whole": 1}, where)

    summary, figures = outcome.summarise(s, run), told["summary"]
    for name in MIDDLES:
        t.add(f"fit: middle and ends of {name}", summary[name], figures[name], where)
    if figures["underGlaze"]:
        t.add("fit: middle and ends of underGlaze", summary["underGlaze"], figures["underGlaze"], where)
    for name, value in figures["thresholds"].items():
        t.add(f"fit: threshold {name}", summary[name], value, where)
    t.add("fit: stress that moisture adds", summary["moistureStress"], figures["moistureStress"], where)
    compare_report(where, question, s, run, summary, told["report"], t)
    compare_trials(where, s, run, told, t)


def compare_report(where, question, s, run, summary, report, t):
    cases = outcome.twenty_cases(run, summary)
    names = lambda rows: [row["outcome"] for row in rows]
    t.same("report: outcome of the twenty cases", names(cases), names(report["cases"]), where)
    stresses = [row["stressMPa"] for row in report["cases"]]
    t.rounded("report: stress of the twenty cases", [c["stressPa"] / 1e6 for c in cases], stresses, 0.1, where)
    t.same("report: verdict", outcome.judge(cases), report["verdict"], where)
    shares = {name: n / 1024 for name, n in run["counts"].items()}
    t.add("report: probabilities", shares, report["probabilities"], where)
    if len(s["coats"]) > 1 or "expansion" in question["glaze"]:
        return
    way = s["glazed"]
    per_unit = outcome.stress_per_expansion(s, summary) / 1e6
    split = glass.contributions(chemistry.analyse(question["glaze"])["moleFractions"])
    pulls = {oxide: row["contribution"] * per_unit for oxide, row in split["oxides"].items()}
    t.rounded(f"report: pulls, {way}", pulls, {row["oxide"]: row["pullMPa"] for row in report["pulls"]}, 0.1, where)
    parts = [effect * per_unit for effect in per_part(question["glaze"], split)]
    t.rounded(f"report: parts, {way}", parts, [row["perPartMPa"] for row in report["parts"]], 0.01, where)


def compare_trials(where, s, run, told, t):
    tried, trials = outcome.trials(s, run), told["report"]["trials"]
    t.add("trials: quench difference of each draw", tried["differences"], unpacked(told["quench"]), where)
    told_from = {key: trials["quench"]["cracksFrom"][key] for key in ("low", "value", "high")}
    t.rounded("trials: quench difference", tried["cracksFrom"], told_from, 1, where)
    # Told to three decimals of a 256th: the count can be read back.
    counted = lambda values: [round(v * 256) for v in values]
    passed = [row["passes"] for row in trials["quench"]["steps"]]
    t.same("trials: quench steps", counted(tried["quench"]), counted(passed), where)
    t.same("trials: steam", counted(tried["steam"]), counted(r["passes"] for r in trials["steam"]), where)
    t.same("trials: use", counted(tried["use"]), counted(r["cracks"] for r in trials["use"]), where)
