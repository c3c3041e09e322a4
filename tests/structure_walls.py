"""Walls with cladding hung through insulation, small enough to see through."""

from dataclasses import replace

import builders as b
from codes_builders import quantity
from codes_irc import house, wall
from layerfolio.assembly.beside import Fasteners
from layerfolio.catalogue.datum import Document

INCH, LBF, PSF = 0.0254, 4.4482216152605, 47.88025898
STRENGTH = Document(number="CS-1", issuer="a laboratory", proves=("compressive strength",))
SIZES = {"nail": (0.131, None, 1.25), "screw": (0.190, 0.152, 1.0), "lag": (0.25, 0.173, 1.5)}


def fasteners(kind="screw", *, outer=None, root=None, length=None, spacing=16.0, rows=16.0, words=None, **more):
    """Sizes in inches; root and diameter by kind where they are not given."""
    usual = SIZES.get(kind, (0.19, 0.15, 1))
    outer, root = outer or usual[0], root or usual[1]
    metres = {"outer": outer, "root": root, "length": length, "spacing": spacing, "rows": rows}
    found = {key: None if value is None else value * INCH for key, value in metres.items()}
    title = words or {"screw": "wood screw", "lag": "lag screw", "nail": "nail"}[kind]
    return Fasteners(title, None, found["outer"], None, found["spacing"], found["rows"], None, kind=title,
                     **{key: found[key] for key in ("outer", "root", "length")}, **more)  # fmt: skip


def board(depth, *, family="foam", documents=(STRENGTH,), density=30, name="board", material="", strength=15.0):
    """`strength`: compressive, psi."""
    made = b.layer(9, R=1.0, d=depth * INCH, mu=60, insulating=True, family=family, name=name)
    return replace(made, documents=tuple(documents), density=b.datum(density), material=material,
                   compressive_strength=None if strength is None else b.datum(strength * PSF * 144))  # fmt: skip


def cladding(weight, name="cladding", family="plain"):
    """A layer of that weight in psf."""
    made = b.layer(9, R=0.1, d=0.02, mu=60, name=name, counts=False, family=family)
    return replace(made, density=b.datum(weight * PSF / 9.80665 / 0.02))


def furring(pins, *, thickness=0.75, apart=16.0, direction="vertical", gravity=0.42, material="furring-wood", width=0.0):
    """Battens of no weight, so that the cladding alone is what hangs."""
    frame = b.member(width / apart if width else 0.0, lam=0.12, name="batten", direction=direction, material=material)
    frame = replace(frame, spacing=None if apart is None else b.length(apart * INCH), density=b.datum(500), title="Battens",
                    specific_gravity=b.datum(gravity))  # fmt: skip
    made = b.layer(9, kind="cavity", cavity="ventilated", d=thickness * INCH, family="air", counts=False, name="furred space")
    return replace(made, member=frame, fasteners=pins)


def studs(*, apart=16.0, gravity=0.42, material="stud-wood", depth=5.5):
    frame = replace(b.member(0.2, lam=0.12, material=material), spacing=b.length(apart * INCH), density=b.datum(500),
                    specific_gravity=b.datum(gravity), title="Studs")  # fmt: skip
    made = b.layer(9, R=3.5, d=depth * INCH, mu=1, frame=frame, insulating=True, name="batts", family="batt")
    return replace(made, density=b.datum(40))


def hung(pins, *, weight=10.0, depth=1.0, boards=None, apart=16.0, set_id="irc-2021", wood=0.42, studs_wood=0.42, **more):
    """Cladding, furring, a board, studs: the one joint of the tests."""
    boards = (board(depth),) if boards is None else boards
    batten = furring(pins, apart=apart, gravity=wood, **more)
    return wall(cladding(weight), batten, *boards, studs(apart=apart, gravity=studs_wood), set_id=set_id)


def long_enough(kind="screw", *, depth=1.0, thickness=0.75, more=0.0, least=None):
    """Length in inches that just gives the penetration that the table asks."""
    return thickness + depth + (SIZES[kind][2] if least is None else least) + more


def of_clause(ending, one, set_id="irc-2021", *, beside=(), occupancy="house", **loads):
    """The one finding of that ending on a wall, or None; `beside`: other assemblies of the building."""
    from types import SimpleNamespace as N

    about = {"suction": None, "category": None, "townhouse": None} | loads
    seismic = N(category=about["category"], Sa02=None, Smax=None)
    where = house("6A", set_id, occupancy=occupancy)
    where.building.townhouse = about["townhouse"]
    where.site_loads = N(wind_suction=quantity(about["suction"], "pressure"), seismic=seismic, wind_pressure_1_50=None)
    judged = findings_of((one, *beside), where)
    found = [x for x in judged if x.id.endswith(ending) and x.assembly == one.name]
    assert len(found) <= 1
    return found[0] if found else None


def findings_of(some, where):
    from codes_builders import studies
    from layerfolio import codes
    from layerfolio.codes.context import Envelope

    known = studies(*some)
    return codes.judge(where, known, Envelope({name: heat for name, (heat, _) in known.items()}))


__all__ = [
    "INCH", "LBF", "PSF", "STRENGTH", "board", "cladding", "fasteners", "furring", "hung", "long_enough", "of_clause",
    "studs",
]  # fmt: skip
