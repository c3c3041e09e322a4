"""The index of the cover: a line a sheet, one line for neighbours of one series."""

from layerfolio.binding.filler import index_entries
from layerfolio.sheets.blocks import Sheet


def sheet(number, series=""):
    return Sheet(number, f"title of {number}", "—", (), series=series)


def test_neighbours_of_one_series_share_a_line():
    details = [sheet(f"D{n}", "details") for n in (1, 2, 3)]
    sheets = [sheet("W1"), sheet("W1-T", "both"), sheet("W1-V", "both"), sheet("D0"), *details]
    assert index_entries(sheets) == (
        (0, "W1", "title of W1"), (1, "W1-T, W1-V", "both"), (3, "D0", "title of D0"), (4, "D1 to D3", "details"),
    )  # fmt: skip


def test_a_series_that_is_interrupted_begins_again_and_one_alone_keeps_its_title():
    sheets = [sheet("D1", "details"), sheet("C1"), sheet("D2", "details"), sheet("D3", "details")]
    assert [one[1:] for one in index_entries(sheets)] == [
        ("D1", "title of D1"), ("C1", "title of C1"), ("D2, D3", "details"),
    ]  # fmt: skip
