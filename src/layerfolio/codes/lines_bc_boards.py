"""Boards of a line in British Columbia's system that fill no type of wood panels: gypsum board, and boards not carried."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import NOISE, Facts
from layerfolio.codes.line_fasteners import fasteners_given
from layerfolio.codes.line_types import Answer

GYPSUM = "gypsum board"


def no_type(known: Facts, types: dict[str, Any]) -> str:
    """Why no type of wood panels is the panel's, by its grade, in words; empty where one may be, or no grade is stated."""
    if not known.grade or known.grade in types["grades"]:
        return ""
    if known.grade == GYPSUM:
        return "gypsum board has types of its own, whose lengths are not carried here"
    return f"no framing type was read for {known.grade}"


def board_of_type(known: Facts, types: dict[str, Any]) -> Answer | None:
    """The answer on a board that is no wood panel of the types; None for one that is."""
    from layerfolio.codes.lines_nbc import panel_given

    reason, clause, given = no_type(known, types), types["place"], panel_given(known)
    if not reason:
        return None
    if known.grade != GYPSUM:
        step = "ask the authority whether it counts"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, "a board of a framing type", given, reason, step)
    least, apart = types["gypsum_board"]["thickness"], types["gypsum"][0]["studs"]
    asked = f"gypsum board of {known.size(least)} at least, studs at {known.size(apart)} at most"
    if known.thickness * 1000 < least - NOISE or known.studs * 1000 > apart + NOISE:
        wrong = "too thin, or the studs too far apart"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, wrong, "fit a type of gypsum board")
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "have the line judged by the types of gypsum board")


def nails_of_board(known: Facts, types: dict[str, Any]) -> Answer | None:
    """The answer on the fasteners of such a board, or of one without a grade; None for a wood panel."""
    clause, given, reason = types["place"], fasteners_given(known), no_type(known, types)
    if not known.grade:
        asked = "fasteners of a framing type"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "not stated: panel.grade", "state panel.grade")
    if not reason:
        return None
    if known.grade != GYPSUM:
        step = "ask the authority which fasteners it takes"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, "fasteners of a framing type", given, reason, step)
    return _nails_of_gypsum(known, types, (clause, given))


def _nails_of_gypsum(known: Facts, types: dict[str, Any], words: tuple[str, str]) -> Answer:
    """Ring nails or screws by the distance that every type of gypsum board keeps; their kind and length are not stated here."""
    (clause, given), rule, pins = words, types["gypsum_board"], known.pins
    names = f"{types['gypsum'][0]['name']} to {types['gypsum'][-1]['name']}"
    apart = f"nails at {known.size(rule['nail'])} or closer, screws at {known.size(rule['screw'])}"
    asked = f"ring nails or screws of a type {names}: {apart}"
    if pins is None or not pins.kind or known.edge is None:
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "fasteners are not stated", "state panel_fastening")
    farthest = rule.get(pins.kind)
    if farthest is not None and known.edge * 1000 > farthest + NOISE:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "the fasteners stand too far apart", "place them closer")
    reason = "the distance fits a type; whether they are ring nails or screws of its kind was not read"
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "confirm the fasteners against the adopted text")
