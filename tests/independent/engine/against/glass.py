"""Factor sets, measured-glass models, viscosity, contributions and doubts."""

from reckon import chemistry, doubts, glass, sets

PROPERTIES = ("expansion", "transition", "youngs", "liquidus")


def compare_glass(i, question, ours, told, probabilities, t):
    """What is said of a glass, from its chemistry."""
    where = f"glaze {i}"
    x, weight, mole = ours["moleFractions"], ours["firedWeightPercent"], ours["firedMolePercent"]

    def estimate(name, here, model, there):
        t.add(name, here, {key: there[key] for key in ("value", "scale")}, where)
        read = glass.quantile(here["value"], here["scale"], glass.shape(model), probabilities)
        t.add(f"{name}, interval", read, there["quantiles"], where)

    for name, value in told["sets"].items():
        t.add(f"set: {name}", sets.ask(name, weight, mole), value, where)
    t.add("set: density", sets.density(x), told["density"], where)
    t.add("set: modulus by packing", sets.makishima_mackenzie(x), told["youngsByPacking"], where)
    tension = sets.surface_tension(x, weight, 1150)
    t.rounded("set: surface tension", tension, {name: told["surfaceTension"].get(name) for name in tension}, 1, where)

    for name in PROPERTIES:
        estimate(f"model: {name}", glass.estimate(name, x), name, told[name])
    parameters = dict(zip(("limit", "t12K", "fragility"), glass.viscosity_parameters(x), strict=True))
    t.add("viscosity: parameters", parameters, told["viscosity"]["parameters"], where)
    for row in told["viscosity"]["byTemperature"]:
        estimate("viscosity: at a temperature", glass.viscosity(x, c=row["c"]), "viscosity", row)
    for row in told["viscosity"]["byViscosity"]:
        estimate("viscosity: temperature of", glass.viscosity(x, log_viscosity=row["log"]), "viscosity", row)

    split = glass.contributions(x)
    for key in ("contribution", "perMolePercent", "perWeightPercent"):
        by_oxide = {row["oxide"]: row[key] for row in told["contributions"]["oxides"]}
        t.add(f"contributions: {key}", {oxide: row[key] for oxide, row in split["oxides"].items()}, by_oxide, where)
    whole = split["reference"] + sum(row["contribution"] for row in split["oxides"].values())
    told_whole = [told["contributions"]["reference"], told["expansion"]["value"]]
    t.add("contributions: reference and sum", [split["reference"], whole], told_whole, where)
    t.add("contributions: one more part", per_part(question, split), told["perPart"], where)
    t.add("doubts: of the bulk glass", doubts.bulk(x), told["doubt"], where)
    t.rounded("doubts: on ware, by name and together", doubts.on_ware(ours, 0.3), told["doubts"], 0.01, where)


def per_part(question, split):
    """Σ gⱼ dⱼ/G: what one more part leaves, over the glass of the batch."""
    if "recipe" not in question:
        return []
    lines = [*question["recipe"], *question.get("additions", [])]
    left = [(line["parts"], chemistry.of_line(line)[0]) for line in lines]
    glass_g = sum(n * sum(grams.values()) for n, grams in left)
    slope = {oxide: 100 * each for oxide, each in split["everyPerWeightPercent"].items()}
    return [sum(g * slope.get(oxide, 0) for oxide, g in grams.items()) / glass_g for _, grams in left]
