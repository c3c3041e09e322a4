"""The tie of a line's bottom plate to the framing below: nails of the table, strips of steel, or the sheathing's lap."""

from dataclasses import replace
from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.given_papers import title_of
from layerfolio.codes.line_facts import NOISE, Facts, named
from layerfolio.codes.line_fasteners import SHORT, common_diameter
from layerfolio.codes.line_types import Answer
from layerfolio.codes.line_under import Under, stands_on
from layerfolio.codes.stated import documents_for
from layerfolio.codes.wording import listed

ANCHORS = "9.23.6.1"
SOLE_PLATE = f"the plate is nailed to a sole plate of wood; the anchors of that one to concrete ({ANCHORS}) are not judged here"
BEST_FIRST = (Verdict.MEETS, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE, Verdict.DOES_NOT_MEET)


def judge_tie(known: Facts, tables: dict[str, Any], fastening: Answer, braced: bool) -> Answer:
    """One tie that suffices is enough. `braced`: at required braced panels; `fastening`: the answer on the panels' nails."""
    plates, line = tables["plates"], known.line
    ground = stands_on(known)
    if ground.concrete:
        return _anchored(known, plates, ground)
    spacing = plates["spacing_of_panels"] if braced else plates["spacing"]
    asked = _asked(known, plates, spacing, braced)
    ways = [_nails(known, tables, asked, spacing)] if line.plate_nailing else []
    if not line.interior:
        ways += [_strips(known, plates, asked, braced)] if line.plate_strips else []
        ways += [_lap(known, plates, asked, fastening)] if line.sheathing_lap else []
    if not ways:
        reason = "what ties the bottom plate to the framing below is not stated"
        step = f"state plate_nailing{_other_ways(known)}; for a plate on concrete show its anchors"
        return Answer(Verdict.NEEDS_EVIDENCE, plates["place"], asked, "not stated", reason, step)
    best = min(ways, key=lambda one: BEST_FIRST.index(one.verdict))
    return best if not ground.sole_plate or best.reason else replace(best, reason=SOLE_PLATE)


def _anchored(known: Facts, plates: dict[str, Any], ground: Under) -> Answer:
    """A plate on concrete: the rows speak of wood below, its anchors stand on the structural drawings."""
    papers = [title_of(one) for one in documents_for(known.about, known.study.name, None, "structure", "anchorage")]
    reason = f"the row ties a plate to joists, rim joist or blocking; on concrete the plate is anchored ({ANCHORS})"
    step = f"supply the anchors of the plate to the slab, {ANCHORS}, by the structural drawings"
    step += f" ({listed(papers)})" if papers else ""
    step += "" if known.line.plate_on else "; a sole plate of wood on the slab is stated by plate_on: wood"
    asked, given = f"anchors of the plate ({ANCHORS})", f"plate on {ground.words}"
    return Answer(Verdict.NEEDS_EVIDENCE, plates["place"], asked, given, reason, step)


def _other_ways(known: Facts) -> str:
    if known.line.interior:
        return ""
    return ", plate_strips or sheathing_lap" if known.inside is False else " or plate_strips"


def _asked(known: Facts, plates: dict[str, Any], spacing: float, braced: bool) -> str:
    """Nails, and what may stand for them on an exterior wall."""
    strips, plate = plates["strips"], "plate of braced panels" if braced else "plate to joists, rim joist or blocking"
    said = f"bottom {plate}: nails of {known.size(plates['nail'])} at {known.size(spacing)} or closer"
    if known.line.interior:
        return f"{said}, to the framing below and above; {plates['not_judged']}"
    size = f"{known.size(strips['width'])} × {known.size(strips['thickness'])}"
    held = f"{strips['nails']} nails of {known.size(strips['nail'])} at each end"
    said += f"; or strips of steel {size} at {known.long(strips['spacing'] / 1000)} or closer, {held} ({strips['place']})"
    if known.inside is False:
        said += f"; or the sheathing's lap over the floor framing ({plates['lap']['place']})"
    return f"{said}; {plates['not_judged']}"


def _nails(known: Facts, tables: dict[str, Any], asked: str, spacing: float) -> Answer:
    plates, stated = tables["plates"], known.line.plate_nailing
    nail, clause = stated.nail, plates["place"]
    need = [word for word, there in (("nail", nail), ("spacing", stated.spacing)) if not there]
    if need:
        words = f"plate_nailing: {' and '.join(need)}"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, "not stated in full", f"not stated: {words}", f"state {words}")
    given = f"nails {known.as_stated(nail.length)} × {known.as_stated(nail.diameter)} at {known.as_stated(stated.spacing)}"
    short = nail.length.value * 1000 < plates["nail"] - 0.5
    thin = nail.diameter.value * 1000 < common_diameter(tables, nail.length.value) * (1 - SHORT)
    if short or thin or named(stated.spacing) * 1000 > spacing + NOISE:
        reason = "the nails of the plate are too short, too thin or too far apart"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "nail the plate by the table")
    if known.line.interior:
        reason = "the bottom plate is nailed as asked; nails into the framing above are asked too and are not stated here"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "show the nails of the top plate")
    return Answer(Verdict.MEETS, clause, asked, given)


def _strips(known: Facts, plates: dict[str, Any], asked: str, braced: bool) -> Answer:
    """Strips by their clause; at required braced panels whether they stand for the closer nails is a question."""
    stated, rule = known.line.plate_strips, plates["strips"]
    figures = {
        "width": stated.width, "thickness": stated.thickness, "spacing": stated.spacing, "nails": stated.nails,
        "nail": stated.nail,
    }  # fmt: skip
    need, clause = [word for word, there in figures.items() if not there], rule["place"]
    if need:
        words, given = f"plate_strips: {', '.join(need)}", "strips, not stated in full"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, f"not stated: {words}", f"state {words}")
    said = known.as_stated
    size = f"{said(stated.width)} × {said(stated.thickness)}, at {said(stated.spacing)}"
    given = f"strips {size}, {stated.nails} nails of {said(stated.nail.length)} at each end"
    narrow = stated.width.value * 1000 < rule["width"] - NOISE or stated.thickness.value * 1000 < rule["thickness"] - NOISE
    loose = stated.nails < rule["nails"] or stated.nail.length.value * 1000 < rule["nail"] - NOISE
    if narrow or loose or named(stated.spacing) * 1000 > rule["spacing"] + NOISE:
        reason = "the strips are too thin, too few or held by too little"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "take the strips of the clause, or nail the plate")
    if braced:
        reason = f"{clause} lets strips tie an exterior wall; whether also at required braced panels it does not say"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "nail the plate by the table, or ask the authority")
    return Answer(Verdict.MEETS, clause, asked, given)


def _lap(known: Facts, plates: dict[str, Any], asked: str, fastening: Answer) -> Answer:
    """Panels outside that lap over the floor framing tie the plate as well as their nails are those of the table."""
    rule, given = plates["lap"], "sheathing that laps over the floor framing"
    clause = rule["place"]
    if known.inside is not False:
        reason = "the panels of the line are not known to stand outside: other sheathing that laps is not judged here"
        step = "nail the plate by the table, or show the sheathing that laps and its nails"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, step)
    if not known.grade:
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "not stated: panel.grade", "state panel.grade")
    if known.grade not in rule["grades"] or known.another:
        reason = f"the clause names plywood, OSB and waferboard; the panel is {known.grade}"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, known.another or reason, "nail the plate by the table")
    if fastening.verdict is Verdict.MEETS:
        return Answer(Verdict.MEETS, clause, asked, given)
    reason = "the lap ties as the nails of the panels hold it, and they are not those of the table"
    return Answer(fastening.verdict, clause, asked, given, reason, fastening.next_step)
