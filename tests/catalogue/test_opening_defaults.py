"""The code's default figures of unrated openings, against the table as adopted: R303.1.3 of 2018, 2021 and 2024."""

import pytest

from layerfolio.catalogue.opening_defaults import has_defaults, opening_defaults
from layerfolio.units.show import in_units

SETS = ("irc-2018", "irc-2021", "irc-2024")


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize(
    ("frame", "figures"),
    [
        ("metal", (1.20, 0.80, 2.00, 1.30)),
        ("metal with thermal break", (1.10, 0.65, 1.90, 1.10)),
        ("wood", (0.95, 0.55, 1.75, 1.05)),
        ("pvc", (0.95, 0.55, 1.75, 1.05)),
    ],
)
def test_table_of_glazing(set_id, frame, figures):
    """Single and double windows, single and double skylights, Btu/(h.ft2.F)."""
    cases = [(kind, panes) for kind in ("window", "skylight") for panes in (1, 2)]
    found = [opening_defaults(set_id, kind, frame=frame, panes=panes).transmittance for kind, panes in cases]
    assert tuple(round(in_units(one.value, "Btu/(h.ft2.F)"), 6) for one in found) == figures
    assert {(one.origin.mark, one.origin.chosen_by) for one in found} == {("found", "code")}


@pytest.mark.parametrize(
    ("panes", "tint", "factor"), [(1, "clear", 0.8), (1, "tinted", 0.7), (2, "clear", 0.7), (2, "tinted", 0.6), (2, None, 0.7)]
)
def test_solar_factors(panes, tint, factor):
    assert opening_defaults("irc-2021", "window", frame="wood", panes=panes, tint=tint).solar_factor.value == factor


def test_glass_block_and_wood_door():
    block, door = opening_defaults("irc-2021", "glass-block"), opening_defaults("irc-2021", "door", frame="wood")
    assert in_units(block.transmittance.value, "Btu/(h.ft2.F)") == pytest.approx(0.60) and block.solar_factor.value == 0.6
    assert in_units(door.transmittance.value, "Btu/(h.ft2.F)") == pytest.approx(0.50)
    assert opening_defaults("irc-2021", "door", frame="metal") is None


def test_a_third_pane_has_no_column():
    three, two = (opening_defaults("irc-2021", "window", frame="wood", panes=panes) for panes in (3, 2))
    assert three.transmittance == two.transmittance


@pytest.mark.parametrize(
    ("frame", "panes", "lacking"), [(None, 2, ("frame.material",)), ("wood", None, ("glass.panes",)),
                                    (None, None, ("frame.material", "glass.panes"))]
)  # fmt: skip
def test_what_would_tell_the_row_is_named(frame, panes, lacking):
    assert opening_defaults("irc-2021", "window", frame=frame, panes=panes).lacking == lacking


def test_sets_without_such_a_table():
    assert not has_defaults("nbc-2020") and opening_defaults("nbc-2020", "window", frame="wood", panes=2) is None
    assert has_defaults("irc-2024") and opening_defaults("irc-2024", "hatch") is None
