"""A variant that changes a figure and keeps the document that proved the old one is asked whether it still does."""

import pytest
from openings_workbench import WHOLE
from workbench import PROJECT, problems, read, write


def cautions(tmp_path, variant, base=WHOLE):
    write(tmp_path, base)
    loaded = read(write(tmp_path, variant, "v.yaml"))
    own = [one for one in loaded.to_look_at if one.file.endswith("v.yaml")]
    return [(one.line, one.path, one.message.removeprefix("look again: ")) for one in own]


HEAD = "variant_of: project.yaml\n"


@pytest.mark.parametrize(("stated", "line", "key", "words"), [
    ("openings:\n  A1:\n    transmittance: 0.8 W/(m2.K)\n", 4, "transmittance",
     "keeps the evidence and solar factor of the base"),
    ("openings: {A1: {basis: rated to NFRC 100}}\n", 2, "basis", "keeps the evidence and solar factor of the base"),
    ("openings: {A1: {transmittance: 0.8 W/(m2.K), solar_factor: 0.4}}\n", 2, "transmittance",
     "keeps the evidence of the base"),
    ("openings: {A1: {solar_factor: 0.4}}\n", 2, "solar_factor", "does it still prove the new solar factor?"),
])  # fmt: skip
def test_an_opening(tmp_path, stated, line, key, words):
    ((at, path, message),) = cautions(tmp_path, HEAD + stated)
    assert (at, path) == (line, f"openings.A1.{key}") and words in message and message.startswith("openings.A1 keeps")


@pytest.mark.parametrize("stated", [
    "openings: {A1: {transmittance: 0.8 W/(m2.K), evidence: [{number: WD-8}]}}\n",
    "openings: {A1: {transmittance: 0.8 W/(m2.K), evidence: null}}\n", "openings: {A1: {evidence: [{number: WD-8}]}}\n",
    "openings: {A1: {count: 3}}\n", "openings: {D1: {transmittance: 0.8 W/(m2.K)}}\n",
])  # fmt: skip
def test_what_is_no_question(tmp_path, stated):
    assert cautions(tmp_path, HEAD + stated) == []


def test_a_material_and_part_of_its_map(tmp_path):
    (found,) = cautions(tmp_path, HEAD + "materials: {hemp-batt: {conductivity: 0.036 W/(m.K)}}\n", PROJECT)
    assert found[1] == "materials.hemp-batt.conductivity" and "new conductivity" in found[2]
    (found,) = cautions(tmp_path, HEAD + "materials: {hemp-batt: {vapour_resistance_factor: {dry: 3}}}\n", PROJECT)
    assert found[1] == "materials.hemp-batt.vapour_resistance_factor"


def test_a_file_that_stands_alone_is_not_asked(tmp_path):
    path = write(tmp_path, WHOLE)
    assert problems(path) == () and not any("base file" in one.message for one in read(path).cautions)
