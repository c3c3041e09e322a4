"""Every requirement of a set that asks about a subject is found once about it, and nothing is found that nobody asked."""

from collections import Counter
from types import SimpleNamespace as N

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from codes_builders import of_resistance, studies
from codes_envelope import building, opening
from layerfolio import codes
from layerfolio.codes.context import Envelope
from layerfolio.codes.requirements import requirements

SILENT = {
    "figures_only", "heat_recovery", "egress", "vapour_barrier_position", "exits", "roof_ventilation", "safety_glazing",
    "control_line",
}  # fmt: skip
"""Judges that say nothing where their condition does not hold: no heat recovery, no way of escape, no layer named as barrier
(the line on its permeance says so), exits of dwellings, an unvented roof (another line asks of it), glass out of reach,
controls that no junction carries.
"""
OPENINGS = ("window", "door", "skylight", "hatch", "glass-block", "vehicle-door")
KINDS = ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
FACES = ("outside air", "vented space", "unheated space", "ground")
OCCUPANCIES = ("house", "dwelling-unit", "office", "mercantile", "workshop", "other", None)
TOPICS = {"structure", "thermal", "vapour", "air", "water", "fire", "openings", "materials", "administration"}

shapes = st.tuples(st.sampled_from(KINDS), st.sampled_from(FACES), st.floats(0.5, 9))
bases = st.sampled_from(["rated to CSA A440.2", "declared to EN 14351-1"])
gaps = st.tuples(st.sampled_from(OPENINGS), st.one_of(st.none(), st.floats(0.5, 3)), bases)


def found(set_id, some, holes, occupancy, zone):
    parts = [of_resistance(R, kind=kind, faces=faces, name=f"P{n}", set_id=set_id) for n, (kind, faces, R) in enumerate(some)]
    openings = [opening(f"A{n}", kind, U=U, basis=basis, wall="P0") for n, (kind, U, basis) in enumerate(holes)]
    known = studies(*parts)
    where = building(set_id=set_id, occupancy=occupancy, zone=zone)
    where.assemblies = {one.name: N() for one in parts}
    envelope = Envelope(thermal={n: x[0] for n, x in known.items()}, openings={x.name: x for x in openings})
    return parts, openings, codes.judge(where, known, envelope)


def asked(set_id, parts, openings):
    """(id, subject) of everything that is asked and always answered."""
    for one in requirements(set_id):
        if one.judge in SILENT or one.rule.get("when"):
            continue
        if one.of_building:
            yield one.id, None
        yield from ((one.id, x.name) for x in parts if one.asks(x))
        yield from ((one.id, x.name) for x in openings if x.kind in one.of_openings)


@pytest.mark.parametrize("set_id", codes.sets())
@settings(max_examples=25, deadline=None)
@given(
    some=st.lists(shapes, min_size=1, max_size=4), holes=st.lists(gaps, max_size=3), occupancy=st.sampled_from(OCCUPANCIES),
    zone=st.booleans(),
)  # fmt: skip
def test_each_requirement_is_found_once_for_each_subject(set_id, some, holes, occupancy, zone):
    named = {"qc-r1": "C", "iso": None}.get(set_id, "6") if zone else None
    parts, openings, findings = found(set_id, some, holes, occupancy, named)
    counted = Counter((one.id, one.assembly) for one in findings)
    assert max(counted.values()) == 1, [key for key, number in counted.items() if number > 1]
    missing = [key for key in asked(set_id, parts, openings) if key not in counted]
    assert not missing, missing
    known = {one.id for one in requirements(set_id)}
    assert {one.id for one in findings if one.topic != "applicability"} <= known


@pytest.mark.parametrize("set_id", ["nbc-2015", "nbc-2020", "bc-2024", "qc-r1"])
def test_every_topic_of_the_record_has_a_line(set_id):
    _, _, findings = found(set_id, [("wall", "outside air", 3.0)], [("window", 1.0, "rated to CSA A440.2")], "house", None)
    assert {one.topic for one in findings} >= TOPICS


@pytest.mark.parametrize("set_id", ["irc-2018", "irc-2021", "irc-2024", "iso"])
def test_no_other_set_finds_a_requirement_twice(set_id):
    some = [(kind, faces, 3.0) for kind in KINDS for faces in FACES]
    _, _, findings = found(set_id, some, [("window", 1.5, "rated to NFRC 100"), ("door", None, "")], "house", None)
    counted = Counter((one.id, one.assembly) for one in findings)
    assert max(counted.values()) == 1, [key for key, number in counted.items() if number > 1]


def test_nothing_of_the_edition_of_2015_decides():
    some = [(kind, faces, R) for kind in KINDS for faces in FACES for R in (0.5, 9.0)]
    _, _, findings = found("nbc-2015", some, [(kind, 1.0, "rated to CSA A440.2") for kind in OPENINGS], "house", "6")
    assert not {one.verdict for one in findings} & {codes.findings.Verdict.MEETS, codes.findings.Verdict.DOES_NOT_MEET}
