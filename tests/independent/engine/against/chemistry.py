"""Masses, materials, formulas and the chemistry of glazes."""

from reckon import chemistry, formula


def compare_materials(asked, t):
    masses = {name: formula.molar_mass(name) for name in asked["masses"]}
    t.add("formula: molar mass", masses, asked["masses"], "masses")
    t.add("formula: atoms", {text: formula.atoms(text) for text in asked["atoms"]}, asked["atoms"], "atoms")
    for name, answer in asked["materials"].items():
        grams, spread, lost = chemistry.of_material(name)
        kept = [oxide for oxide, g in grams.items() if g]
        t.add("material: oxides left", {o: 100 * grams[o] for o in kept}, answer["weightPercent"], name)
        t.add("material: spread", {o: 100 * spread[o] for o in kept}, answer["plusMinusWeightPercent"], name)
        t.add("material: loss on ignition", [100 * lost, 100], [answer["lossOnIgnitionPercent"], 100], name)


def compare_batch(i, row, t):
    t.add("formula: to weight per cent", chemistry.from_seger(row["moles"]), row["weightPercent"], f"formula {i}")
    ours = chemistry.batch_from_seger(row["moles"], row["ingredients"])
    # Two materials may be one and the same oxide: what they supply together is settled, how they share it is not.
    supplied = lambda parts: chemistry.supplied(row["ingredients"], parts)
    t.add("formula: to batch", supplied(ours), supplied(row["parts"]), f"formula {i}")


def compare_glaze(i, question, told, t):
    """Chemistry of a glaze; returns ours for what rests on it."""
    where, ours = f"glaze {i}", chemistry.analyse(question)
    t.add("chemistry: mole fractions", ours["moleFractions"], told["moleFractions"], where)
    t.add("chemistry: fired weight per cent", ours["firedWeightPercent"], told["fired"]["weightPercent"], where)
    t.add("chemistry: fired mole per cent", ours["firedMolePercent"], told["fired"]["molePercent"], where)
    t.add("chemistry: as weighed", ours["asWeighedWeightPercent"], told["asWeighed"]["weightPercent"], where)
    # Beside the whole of 100 g, so that a loss near nothing is not asked for digits it has not.
    losses = [ours["lossOnIgnitionPercent"], *ours["lineLossPercent"], 100]
    told_losses = [told["asWeighed"]["lossOnIgnitionPercent"], *told["lineLossPercent"], 100]
    t.add("chemistry: loss on ignition", losses, told_losses, where)
    t.add("chemistry: glass from 100 g", ours["glassG"], told["massBalance"]["glassG"], where)
    t.add("chemistry: moles", ours["moles"], told["moles"], where)
    seger = told["seger"] and {key: told["seger"][key] for key in ("moles", "silicaToAlumina", "alkaliShare")}
    t.add("chemistry: Seger formula", ours["seger"], seger, where)
    t.add("chemistry: spread", ours["weightPercentSd"], told["weightPercentSd"], where)
    return ours
