"""Mineral formulas, their masses, and what a kiln leaves of them."""

import re

from .read import OXIDES, WEIGHTS

LOW_DIGITS = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
RAISED = "·•∙⋅"
NUMBER = re.compile(r"\d+(?:\.\d+)?")
TOKEN = re.compile(r"([A-Z][a-z]?)|([(\[])|([)\]])")


def _joins(text, at):
    """Whether the plain dot at `at`, outside brackets, joins two parts (rule: parseFormula)."""
    before = re.search(r"(\d*)$", text[:at])[1]
    after = text[at + 1 :]
    digits = re.match(r"\d*", after)[0]
    if not before or not digits:
        return True
    head = text[: at - len(before)]
    if head == "" or head[-1] in RAISED or head.endswith("\x00"):
        return False  # multiplier at the head of a part
    if float(before) == 0:
        return False
    rest = after[len(digits) :]
    if rest.startswith("."):
        return True  # of two dots in one run the first joins
    if digits[0] == "0" and len(digits) > 1:
        return False
    if rest == "":
        return False
    ends = re.search(r"(?:([A-Z][a-z]?)|[)\]])$", head)
    if ends[1] and ends[1] not in ("O", "F", "Cl", "S"):
        return False
    if rest[0] in "([":
        return not re.match(r"[(\[]OH[)\]]", rest)
    part = re.split(rf"[{RAISED}.]", rest)[0]
    symbols = re.findall(r"[A-Z][a-z]?", part)
    return bool(symbols) and symbols[0] != "O" and "O" in symbols


def parts(text):
    """A formula cut at its joining dots."""
    text = text.translate(LOW_DIGITS)
    depth, out, at = 0, "", 0
    while at < len(text):
        char = text[at]
        depth += (char in "([") - (char in ")]")
        if char in RAISED or (char == "." and depth == 0 and _joins(out + text[at:], len(out))):
            out += "\x00"
            head = re.match(r"\s*\d+(?:\.\d+)?", text[at + 1 :])
            if head:
                out += head[0]
                at += len(head[0])
        else:
            out += char
        at += 1
    return [part.strip() for part in out.split("\x00")]


def atoms(text):
    """Element → number of atoms in one formula unit."""
    total = {}
    for part in parts(text):
        lead = NUMBER.match(part)
        times = float(lead[0]) if lead else 1.0
        at = lead.end() if lead else 0
        stack = [{}]
        while at < len(part):
            token = TOKEN.match(part, at)
            if not token:
                raise ValueError(f"{text}: {part[at:]}")
            at = token.end()
            symbol, opened, closed = token.groups()
            if opened:
                stack.append({})
                continue
            number = NUMBER.match(part, at)
            count = float(number[0]) if number else 1.0
            at = number.end() if number else at
            group = stack.pop() if closed else {symbol: 1.0}
            for element, n in group.items():
                stack[-1][element] = stack[-1].get(element, 0.0) + n * count
        for element, n in stack[0].items():
            total[element] = total.get(element, 0.0) + n * times
    return total


def mass(found):
    """Molar mass of atoms [g/mol]."""
    return sum(WEIGHTS[element] * n for element, n in found.items())


def molar_mass(text):
    """Molar mass of a formula [g/mol]."""
    return mass(atoms(text))


MASS = {oxide: molar_mass(oxide) for oxide in OXIDES}
# Each element goes to its one oxide counted in air; of iron's two that is Fe2O3.
HOMES = {
    next(e for e in atoms(oxide) if e != "O"): (oxide, next(n for e, n in atoms(oxide).items() if e != "O"))
    for oxide in OXIDES
    if oxide != "FeO"
}
GASES = {"H", "C", "S", "N", "F", "Cl", "O"}


def fire(found):
    """Moles of each glaze oxide from one mole, fired in air."""
    left = {}
    for element, n in found.items():
        if element in HOMES:
            oxide, per = HOMES[element]
            left[oxide] = left.get(oxide, 0.0) + n / per
        elif element not in GASES:
            raise ValueError(f"{element} has no home")
    return left
