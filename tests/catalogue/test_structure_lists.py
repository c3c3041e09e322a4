"""Nailing tables and what a panel inside changes. Outside figures: NBC Table 9.23.3.4, read in two editions cell by cell
(Ontario 2024, Alberta 2023); IRC 2021 Table R602.3(1), items 16, 31 and 32, in five adopted texts.
"""

import pytest

from layerfolio.catalogue.sources import all_sources
from layerfolio.catalogue.structure_lists import inside_panel, nailing

SETS = ("nbc-2015", "nbc-2020", "bc-2024", "irc-2018", "irc-2021", "irc-2024")


def test_plates_of_the_canadian_table():
    plates = [(one.nail, one.spacing, one.of_panels) for one in nailing("nbc-2020") if one.detail.startswith("bottom plate")]
    assert plates == [("82 mm", 0.4, False), ("82 mm", 0.15, True)]


def test_the_canadian_table_row_by_row():
    found = [(one.nail, one.count or round(one.spacing * 1000)) for one in nailing("nbc-2020")]
    assert found == [
        ("82 mm", 2), ("82 mm", 150), ("76 mm", 300), ("63 mm", 4), ("82 mm", 2), ("76 mm", 750), ("76 mm", 600), ("82 mm", 400),
        ("82 mm", 150), ("82 mm", 600), ("82 mm", 150), ("82 mm", 2), ("82 mm", 3), ("82 mm", 2), ("76 mm", 5),
    ]  # fmt: skip


def test_the_american_rows():
    assert [(one.spacing, one.field) for one in nailing("irc-2021")] == [(0.406, None), (0.152, 0.305), (0.152, 0.305)]


@pytest.mark.parametrize("set_id", SETS)
def test_every_row_has_its_source_and_only_what_was_read_is_found(set_id):
    rows = [*nailing(set_id), *inside_panel(set_id)]
    assert rows and all(one.origin.source in all_sources() and one.clause for one in rows)
    assert ("found" in {one.origin.mark for one in rows}) is (set_id in ("nbc-2020", "irc-2021"))


def test_a_set_of_methods_has_none():
    assert nailing("iso") == () == inside_panel("iso")


def test_the_items_of_the_issue_are_there():
    keys = [one.key for one in inside_panel("nbc-2020")]
    asked = {"bottom-plate", "storeys", "cladding-backing", "membrane", "boxes", "blown-insulation", "stud-faces", "lining"}
    assert asked <= set(keys)
    assert "gypsum-opposite" in [one.key for one in inside_panel("irc-2021")]
