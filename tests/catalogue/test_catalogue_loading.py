"""What loads, what does not, and what the error says."""

import pytest

from layerfolio.catalogue.files import CatalogueError, index, load
from layerfolio.catalogue.materials import material, names, nearest, read

HEAD = "title: Cloud\nfamily: batt\n"
GOOD = "{conductivity: 0.04, source: iso-10456-2007, place: Table 4, mark: memory}"
BESIDE = HEAD + f"figures:\n  - {GOOD}\nalso_published:\n  - "


def written(tmp_path, text):
    path = tmp_path / "cloud.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_good_file_loads(tmp_path):
    text = HEAD + f"figures:\n  - {GOOD}\n  - {{mu_dry: 3, mu_wet: 2, source: masea, place: row, mark: found}}\n"
    one = read(written(tmp_path, text))
    assert (one.name, one.title, one.family) == ("cloud", "Cloud", "batt")
    assert one.conductivity.value == 0.04
    assert (one.vapour.basis, one.vapour.dry.value, one.vapour.wet.value) == ("mu", 3.0, 2.0)
    assert one.absorbent and not one.insulating and one.density is None


def test_a_single_vapour_figure_serves_both_cups(tmp_path):
    one = read(written(tmp_path, HEAD + "figures:\n  - {s_d: 0.2, source: masea, place: row, mark: found}\n"))
    assert one.vapour.single
    assert one.vapour.dry is one.vapour.wet


def test_permeance_comes_in_nanograms_and_thickness_in_millimetres(tmp_path):
    row = "{permeance_dry_ng: 44, at_mm: 11, source: masea, place: row, mark: found}"
    vapour = read(written(tmp_path, HEAD + f"figures:\n  - {row}\n")).vapour
    assert vapour.dry.value == 4.4e-11
    assert vapour.at_thickness == 0.011
    assert vapour.wet is None


def test_an_infinite_factor_becomes_a_million_and_says_so(tmp_path):
    text = HEAD + "figures:\n  - {mu: infinite, source: masea, place: row, mark: memory}\n"
    figure = read(written(tmp_path, text)).vapour.dry
    assert figure.value == 1_000_000
    assert "infinite" in figure.note


def test_a_range_stands_beside_as_its_two_ends(tmp_path):
    beside = "{what: Dry cup, permeance_dry_ng: [40, 57], source: masea, place: row, mark: found}\n"
    one = read(written(tmp_path, BESIDE + beside))
    assert [other.what for other in one.also_published] == ["Dry cup, lowest published", "Dry cup, highest published"]


BAD = {
    "no source": (HEAD + "figures:\n  - {conductivity: 0.04, place: here, mark: found}\n", "no source"),
    "no mark": (HEAD + "figures:\n  - {conductivity: 0.04, source: masea, place: here}\n", "no mark"),
    "mark of a project": (HEAD + "figures:\n  - {conductivity: 0.04, source: masea, mark: given}\n", "no mark"),
    "mark unknown": (HEAD + "figures:\n  - {conductivity: 0.04, source: masea, mark: sure}\n", "no mark"),
    "unmarked beside": (BESIDE + "{what: x, mu: 2, source: masea}\n", "mark"),
    "unnamed beside": (BESIDE + "{mu: 2, source: masea, mark: found}\n", "what"),
    "unknown figure": (HEAD + "figures:\n  - {colour: 3, source: masea, mark: found}\n", "'colour'"),
    "row without figure": (HEAD + "figures:\n  - {source: masea, mark: found}\n", "no figure"),
    "row that is no map": (HEAD + "figures:\n  - 0.04\n", "must be a map"),
    "zero": (HEAD + "figures:\n  - {conductivity: 0, source: masea, mark: found}\n", "positive"),
    "negative": (HEAD + "figures:\n  - {conductivity: -1, source: masea, mark: found}\n", "positive"),
    "text for a number": (HEAD + "figures:\n  - {conductivity: 0.04 W, source: masea, mark: found}\n", "positive"),
    "yes for a number": (HEAD + "figures:\n  - {conductivity: yes, source: masea, mark: found}\n", "positive"),
    "not a number": (HEAD + "figures:\n  - {conductivity: .nan, source: masea, mark: found}\n", "positive"),
    "infinite heat": (HEAD + "figures:\n  - {conductivity: infinite, source: masea, mark: found}\n", "positive"),
    "twice": (HEAD + f"figures:\n  - {GOOD}\n  - {GOOD}\n", "twice"),
    "two kinds": (HEAD + "figures:\n  - {mu_dry: 3, s_d_wet: 2, source: masea, mark: found}\n", "one kind"),
    "two dry": (HEAD + "figures:\n  - {mu_dry: 3, s_d_dry: 2, source: masea, mark: found}\n", "one cup"),
    "single and dry": (HEAD + "figures:\n  - {mu: 3, mu_dry: 2, source: masea, mark: found}\n", "serves both"),
    "nothing at all": (HEAD, "no figure"),
    "no title": (f"family: batt\nfigures:\n  - {GOOD}\n", "title"),
    "no family": (f"title: Cloud\nfigures:\n  - {GOOD}\n", "family"),
    "unknown key": (HEAD + f"colour: red\nfigures:\n  - {GOOD}\n", "colour"),
    "a list": ("- 1\n", "title"),
    "no yaml": ("title: [\n", "not readable"),
}


@pytest.mark.parametrize(("text", "says"), BAD.values(), ids=BAD)
def test_a_bad_file_does_not_load_and_the_error_names_it(tmp_path, text, says):
    with pytest.raises(CatalogueError) as caught:
        read(written(tmp_path, text))
    assert "cloud.yaml" in str(caught.value)
    assert says in str(caught.value)


@pytest.mark.parametrize("name", ["cloud", "", "../sources", "timber/spruce", "Spruce", "spruce.yaml"])
def test_a_name_outside_the_catalogue_is_a_key_error(name):
    with pytest.raises(KeyError):
        material(name)


def test_names_are_sorted_and_unique():
    assert list(names()) == sorted(set(names()))


def test_only_the_material_asked_for_is_read(monkeypatch):
    asked = []
    monkeypatch.setattr("layerfolio.catalogue.materials.load", lambda path: asked.append(path.stem) or load(path))
    material.cache_clear()
    material("spruce")
    material("spruce")
    assert asked == ["spruce"]


def test_a_name_may_stand_once_only(tmp_path, monkeypatch):
    for family in ("a", "b"):
        (tmp_path / "things" / family).mkdir(parents=True)
        (tmp_path / "things" / family / "cloud.yaml").write_text("", encoding="utf-8")
    monkeypatch.setattr("layerfolio.catalogue.files.folder", lambda name: tmp_path)
    with pytest.raises(CatalogueError, match="exists already"):
        index("things")


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("spruse", "spruce"),
        ("gypsum board", "gypsum-board"),
        ("Gypsum_Bord", "gypsum-board"),
        ("hemp", "hemp-batt"),
        ("mineral wool board", "mineral-wool-board"),
        ("OSB", "osb"),
        ("oriented strand board", "osb"),
        ("plywod", "plywood"),
        ("larch", "larch-board"),
        ("extruded polystyrene", "xps"),
    ],
)
def test_did_you_mean(typed, meant):
    assert nearest(typed)[0] == meant


@pytest.mark.parametrize("typed", ["", "   ", "qqq", "\x00", "panel-15"])
def test_nothing_near_is_nothing(typed):
    assert nearest(typed) == ()


def test_few_suggestions():
    assert len(nearest("board")) == 3
    assert nearest("concrete", count=1) == ("concrete",)
