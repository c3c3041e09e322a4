"""Houses under the American sets, small enough to see through."""

from dataclasses import replace

import builders as b
from codes_builders import of_resistance, only, project, quantity, studies
from layerfolio import codes
from layerfolio.catalogue.datum import Document

NG = 1e-12
PERM = 64.79891e-6 / (3600 * 0.09290304 * 3386.389)
"""One US perm from its own definition, kg/(m2.s.Pa)."""
RSI = 0.3048**2 / 1055.05585262 * 3600 * 5 / 9
"""One ft2.h.F/Btu from its own definition, m2.K/W."""
SETS = ("irc-2018", "irc-2021", "irc-2024")
REPORT = Document(file="data-sheets/panel.pdf", number="PB-7", issuer="a laboratory", proves=("permeance",))
AIR_REPORT = Document(number="AP-3", proves=("air permeance",))


def house(zone, set_id="irc-2021", **about):
    usual = {"occupancy": "house", "storeys": 2, "degree_days": None, "heat_recovery": None, "humidity_class": None}
    found = project(set_id=set_id, zone=zone, **usual | about)
    found.climate.cooling_degree_days = quantity(about.pop("cooling", None), "degree_days")
    return found


def panel(dry, wet=None, *, documents=(REPORT,), serves=("vapour control",), name="panel", family="plain", **more):
    """A panel of so many US perm, dry and wet cup; with its own report unless `documents` says otherwise."""
    wet = dry if wet is None else wet
    made = b.layer(9, R=0.1, d=0.015, permeance=(dry * PERM, wet * PERM), serves=serves, name=name, family=family, **more)
    return replace(made, documents=tuple(documents))


def studs(depth=0.140, R=3.5, *, name="batts", family="batt", framed=True, **more):
    frame = b.member(0.2, lam=0.12) if framed else None
    return b.layer(9, R=R, d=depth, mu=1, frame=frame, insulating=True, name=name, family=family, **more)


def board(R, *, family="foam", name="board", mark="given", dry=5.0, d=0.05):
    """Continuous insulation of so many ft2.h.F/Btu."""
    return b.layer(9, R=R * RSI, d=d, permeance=(dry * PERM, dry * PERM), insulating=True, name=name, family=family, mark=mark)


def sheathing(family="plywood", name="sheathing", dry=5.0):
    return b.layer(9, R=0.1, d=0.012, permeance=(dry * PERM, dry * PERM), name=name, family=family)


def cladding(family="timber-board", name="boards", material=""):
    return replace(b.layer(9, R=0.1, d=0.019, name=name, family=family, counts=False), material=material)


def air(depth=0.038, counts=False, kind="ventilated"):
    return b.layer(9, kind="cavity", cavity=kind, d=depth, family="air", counts=counts, name=f"{kind} cavity", s_d=0.01)


def wall(*layers, kind="wall", slope=None, name="W1", set_id="irc-2021", faces="outside air"):
    numbered = [replace(one, number=i + 1) for i, one in enumerate(layers)]
    return of_resistance(
        0, layers=numbered, method="parallel-path", kind=kind, slope=slope, name=name, set_id=set_id, faces=faces
    )


def findings(one, zone, set_id="irc-2021", **about):
    return codes.judge(house(zone, set_id, **about), studies(one))


def found(ending, *layers, zone="6A", set_id="irc-2021", where=None, **about):
    """The one finding of that ending on a wall (or what `about` makes of it) of these layers."""
    shape = {key: about.pop(key) for key in ("kind", "slope", "faces") if key in about}
    judged = codes.judge(where or house(zone, set_id, **about), studies(wall(*layers, **shape)))
    return only(judged, ending)
