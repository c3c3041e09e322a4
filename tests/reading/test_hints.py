"""What a mistake is answered with: words of the trade, lists said once, sizes of nails by the penny."""

import pytest
from workbench import PROJECT, problems, read, spoilt, write

from layerfolio.dossier import open_project
from layerfolio.home import folder
from layerfolio.problems import ProblemsFound

OPENING = "openings:\n  A1: {kind: window, in: W1, orientation: ORIENTATION, width: 1200 mm, height: 1000 mm}\n"
LINE = "wall_lines:\n  L1: {assembly: W1, length: 9.6 m, height: 2.4 m, panel_fastening: {nail: NAIL}}\n"


@pytest.mark.parametrize(("before", "after", "meant"), [
    ("units: metric", "units: imperial", "customary"),
    ("occupancy: mercantile", "occupancy: industrial", "workshop"),
    ("occupancy: mercantile", "occupancy: Retail", "mercantile"),
    ("kind: wall", "kind: slab on ground", "slab"),
    ("kind: wall", "kind: slab-on-grade", "slab"),
    ("serves: [water control]", "serves: [air barrier]", "air control"),
    ("serves: [water control]", "serves: [vapour barrier]", "vapour control"),
    ("serves: [water control]", "serves: [vapor retarder]", "vapour control"),
    ("serves: [water control]", "serves: [water-resistive barrier]", "water control"),
])  # fmt: skip
def test_words_of_the_trade(tmp_path, before, after, meant):
    (found,) = [one for one in problems(write(tmp_path, spoilt(before, after)[0])) if "is not known here" in one.message]
    assert found.message.endswith(f': did you mean "{meant}"?')


@pytest.mark.parametrize(("point", "meant"), [
    ("N", "north"), ("NE", "north-east"), ("E", "east"), ("se", "south-east"), ("S", "south"), ("SW", "south-west"),
    ("w", "west"), ("NW", "north-west"), ("southeast", "south-east"), ("south west", "south-west"),
])  # fmt: skip
def test_points_of_the_compass(tmp_path, point, meant):
    (found,) = problems(write(tmp_path, PROJECT + OPENING.replace("ORIENTATION", point)))
    assert found.message.endswith(f': did you mean "{meant}"?')


@pytest.mark.parametrize("word", ["brewery", "mercantil", "industrial"])
def test_known_words_stand_once(tmp_path, word):
    (found,) = problems(write(tmp_path, spoilt("occupancy: mercantile", f"occupancy: {word}")[0]))
    assert str(found).count("dwelling-unit") == 1


@pytest.mark.parametrize(("word", "meant"), [("NBC 2020", "nbc-2020"), ("nbc", "nbc-2020"), ("IS0", "iso")])
def test_the_example_of_a_code_set_is_the_one_that_was_meant(tmp_path, word, meant):
    (found,) = problems(write(tmp_path, spoilt("set: nbc-2020", f"set: {word}")[0]))
    assert f'did you mean "{meant}"?' in found.message and found.example == meant


@pytest.mark.parametrize(("word", "meant"), [
    ("Quebec", "qc-r1"), ("BC", "bc-2024"), ("British Columbia", "bc-2024"), ("BCBC 2024", "bc-2024"), ("NBC 2020", "nbc-2020"),
    ("IRC 2021", "irc-2021"), ("irc2024", "irc-2024"),
])  # fmt: skip
def test_sets_by_the_name_of_their_place(tmp_path, word, meant):
    path = write(tmp_path, spoilt("set: nbc-2020", f"set: {word}")[0])
    with pytest.raises(ProblemsFound) as found:
        open_project(path)
    (one,) = [one for one in found.value.problems if one.path == "code.set"]
    assert one.message.endswith(f': did you mean "{meant}"?') and one.example == meant


def test_a_code_set_that_nobody_knows_has_an_example(tmp_path):
    (found,) = problems(write(tmp_path, spoilt("set: nbc-2020", "set: xyzzy")[0]))
    assert found.example in ("iso", "nbc-2020")


@pytest.mark.parametrize("gauge", ["24 ga", "24 gauge", "24 gage", "24 GA"])
def test_a_gauge_is_answered_with_a_thickness(tmp_path, gauge):
    (found,) = problems(write(tmp_path, spoilt("thickness: 19 mm", f"thickness: {gauge}")[0]))
    assert "is a gauge" in found.message and "did you mean" not in found.message and "mm" in found.example


@pytest.mark.parametrize("unit", ["gg", "kgg", "psy"])
def test_no_unit_of_another_kind_is_suggested(tmp_path, unit):
    (found,) = problems(write(tmp_path, spoilt("thickness: 19 mm", f"thickness: 19 {unit}")[0]))
    assert "did you mean" not in found.message


class TestPennyweight:
    """Sizes of common nails of shared/structure/unit-shear.yaml (SDPWS 2008, Table 4.3A)."""

    @pytest.mark.parametrize(("written", "length", "diameter"), [
        ("6d common", 2.0, 0.113), ("8d common", 2.5, 0.131), ("8D Common nails", 2.5, 0.131), ("10 d common", 3.0, 0.148),
        ("8d common, 2-1/2 x 0.131 in", 2.5, 0.131),
    ])  # fmt: skip
    def test_common_nails_have_their_published_sizes(self, tmp_path, written, length, diameter):
        text = PROJECT + LINE.replace("NAIL", f'"{written}"')
        nail = read(write(tmp_path, text)).project.wall_lines["L1"].panel_fastening.nail
        assert nail.length.value == pytest.approx(length * 0.0254) and nail.diameter.value == pytest.approx(diameter * 0.0254)
        assert nail.text == f"{written.split(',')[0]}"

    @pytest.mark.parametrize("written", ["8d", "16d box", "16d common", "8d sinker", "60d common"])
    def test_others_are_refused_with_those_that_are_known(self, tmp_path, written):
        (found,) = problems(write(tmp_path, PROJECT + LINE.replace("NAIL", written)))
        assert "6d common, 8d common, 10d common" in found.message and found.example == "2.5 in x 0.131 in"

    def test_a_size_beside_it_has_to_be_its_own(self, tmp_path):
        (found,) = problems(write(tmp_path, PROJECT + LINE.replace("NAIL", '"8d common, 3 in x 0.131 in"')))
        assert "8d common" in found.message

    def test_the_data_name_their_source(self):
        text = (folder("shared") / "structure" / "unit-shear.yaml").read_text(encoding="utf-8")
        rows = [one for one in text.splitlines() if one.lstrip().startswith(("6d: {", "8d: {", "10d: {"))]
        assert len(rows) == 3 and all("source: sdpws-2008" in one and "mark: found" in one for one in rows)
