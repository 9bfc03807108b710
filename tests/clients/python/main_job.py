"""The main job through a generated client: judge a fit, read figures with their units, and be told what is wrong.

Fails with an AssertionError at the first thing that does not come out right. Run it through run.sh.

Recorded on 2026-11-25 with openapi-python-client 0.29.1 on Python 3.11, the whole run 15 s. Every call is generated
except the two streams (the generator knows no application/x-ndjson). It printed (engine figures move with the data):

    fit: crazes, 31.2 MPa (-31.3 to 98.7)
         This glaze will most likely craze on this clay: about 17 in 20.
    expansion: 6.29 1e-6/K (5.67 to 6.82), 7 models beside it
    chemistry: 10 oxides, 100.00 % in all
    materials: 133 in pages of 20
    refused: /glaze/recipe/0/material: “whitting” is not a material known here. Did you mean whiting?
    all as it should be
"""

import sys

from ringtrue_client import AuthenticatedClient, Client
from ringtrue_client.api.bodies import get_body
from ringtrue_client.api.chemistry import analyse_chemistry
from ringtrue_client.api.expansion import estimate_expansion
from ringtrue_client.api.fit import check_fit
from ringtrue_client.api.materials import get_material, list_materials
from ringtrue_client.api.service import get_health, get_ready
from ringtrue_client.models import (
    ChemistryRequest,
    ClassBody,
    ExpansionRequest,
    FitReport,
    FitRequest,
    FormulaLine,
    MaterialLine,
    Problem,
    RecipeGlaze,
    StatedBody,
    StatedBodyExpansion,
)

base_url = sys.argv[1]
client = Client(base_url=base_url)

glaze = RecipeGlaze(
    recipe=[
        MaterialLine(material="potash-feldspar", parts=42),
        MaterialLine(material="silica", parts=22),
        MaterialLine(material="whiting", parts=18),
        MaterialLine(material="kaolin", parts=12),
        FormulaLine(formula="Na2O·2CaO·5B2O3·16H2O", parts=6),
    ],
    thickness_mm=0.3,
)
stated = StatedBodyExpansion(value=6.2, range_c=[20, 500], plus_minus=0.3)

report = check_fit.sync(client=client, body=FitRequest(glaze=glaze, body=StatedBody(expansion=stated)))
assert isinstance(report, FitReport), report
assert report.stress.unit == "MPa" and report.stress.low < report.stress.value < report.stress.high
chances = report.probabilities
total = chances.crazes_on_cooling + chances.crazes_later + chances.sound + chances.shivers
assert abs(total - 1) < 1e-9, total
assert len(report.stress.cases) == 20
print(f"fit: {report.verdict.value}, {report.stress.value} MPa ({report.stress.low} to {report.stress.high})")
print(f"     {report.headline}")

by_class = check_fit.sync(client=client, body=FitRequest(glaze=glaze, body=ClassBody(class_="red-stoneware")))
assert isinstance(by_class, FitReport) and by_class.engine == report.engine, by_class

expansion = estimate_expansion.sync(client=client, body=ExpansionRequest(glaze=glaze))
best = expansion.best.expansion
assert best.unit == "1e-6/K" and best.range_c == [20, 300], best
print(f"expansion: {best.value} {best.unit} ({best.low} to {best.high}), {len(expansion.all_)} models beside it")

chemistry = analyse_chemistry.sync(client=client, body=ChemistryRequest(glaze=glaze))
percent = sum(chemistry.fired.weight_percent.additional_properties.values())
assert abs(percent - 100) < 0.1, percent
print(f"chemistry: {len(chemistry.fired.weight_percent.additional_properties)} oxides, {percent:.2f} % in all")

seen, cursor = [], None
while True:
    page = list_materials.sync(client=client, limit=20, **({"cursor": cursor} if cursor else {}))
    seen += [material.id for material in page.data]
    cursor = page.next_cursor
    if cursor is None:
        break
assert len(seen) == len(set(seen)) and "whiting" in seen
print(f"materials: {len(seen)} in pages of 20")
assert get_body.sync(id="red-stoneware", client=client).id == "red-stoneware"

wrong = RecipeGlaze(recipe=[MaterialLine(material="whitting", parts=20)])
refused = check_fit.sync_detailed(client=client, body=FitRequest(glaze=wrong, body=ClassBody(class_="red-stoneware")))
assert refused.status_code == 422 and isinstance(refused.parsed, Problem), refused
(issue,) = refused.parsed.issues
assert (issue.pointer, issue.suggestion) == ("/glaze/recipe/0/material", "whiting"), issue
print(f"refused: {issue.pointer}: {issue.message}")
missing = get_material.sync_detailed(id="whitting", client=client)
assert missing.status_code == 404 and missing.parsed.suggestion == "whiting"
kept = AuthenticatedClient(base_url=base_url, token="any key will do where none is asked for")
assert get_health.sync(client=kept).status == "ok" and get_ready.sync(client=kept).status == "ready"
print("all as it should be")
