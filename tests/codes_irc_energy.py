"""Houses of the American energy chapter: insulation by cavity and continuous layers, rated openings, in customary units."""

from dataclasses import replace
from types import SimpleNamespace as N

import builders as b
from codes_builders import of_resistance, quantity, studies
from codes_envelope import opening
from codes_irc import RSI, house
from layerfolio import codes
from layerfolio.codes.context import Envelope
from layerfolio.units.quantity import Quantity

BTU = 1 / RSI
FT2 = 0.3048**2
TEST_REPORT = N(number="BD-1", issuer="a tester", edition="2026", expires=None, file="tests/blower.pdf", for_=("airtightness",))


def insulated(cavity=0.0, continuous=0.0, *, name="W1", kind="wall", faces="outside air", slope=None, area=None, ground=None,
              mark="given", set_id="irc-2021", framed=True):  # fmt: skip
    """A part with so much insulation between framing and so much without it, ft2.h.F/Btu, and a board that is none."""
    layers = [b.layer(1, R=0.1, d=0.012, name="board")]
    if continuous:
        layers.append(b.layer(2, R=continuous * RSI, d=0.05, name="ci", insulating=True, family="foam", mark=mark))
    if cavity or framed:
        frame = b.member(0.2, R=0.2) if framed else None
        R = max(cavity, 0.01) * RSI
        layers.append(b.layer(3, R=R, d=0.14, name="batts", frame=frame, insulating=bool(cavity), mark=mark))
    one = of_resistance(0, layers=layers, name=name, kind=kind, faces=faces, slope=slope, ground=ground, method="parallel-path",
                        set_id=set_id)  # fmt: skip
    return replace(one, area=None if area is None else Quantity(area * FT2, "area", f"{area} ft2"))


def of_u(u, **about):
    """A part of that transmittance, Btu/(h.ft2.F), framed so that no milder row can be meant; its insulation is no cavity's."""
    area = about.pop("area", None)
    layer = b.layer(1, R=RSI / u - 0.15, d=0.2, name="batts", frame=b.member(0.0, R=1.0), insulating=False)
    one = of_resistance(0, layers=[layer], method="parallel-path", **about)
    return replace(one, area=None if area is None else Quantity(area * FT2, "area", f"{area} ft2"))


def window(name="A1", kind="window", *, u=0.3, gain=None, feet=(4.0, 4.0), basis="rated to NFRC 100", **more):
    """An opening of so many Btu/(h.ft2.F), rated with its document unless `more` says otherwise; sides in feet."""
    made = opening(name, kind, U=None if u is None else u * BTU, basis=basis, size=tuple(x * 0.3048 for x in feet), **more)
    return replace(made, solar_factor=gain)


def judged(parts=(), openings=(), *, zone="6A", set_id="irc-2021", path=None, aim=None, measured=None, documents=(), ground=None,
           **about):  # fmt: skip
    """All findings on a house of these parts."""
    where = house(zone, set_id, **about)
    where.code.energy_path, where.air_changes_at_50_pa, where.documents, where.assemblies = path, aim, documents, {}
    where.measured_air_changes_at_50_pa = measured
    found = studies(*parts)
    envelope = Envelope({n: x[0] for n, x in found.items()}, ground or {}, {one.name: one for one in openings})
    return codes.judge(where, found, envelope), where


def ending(findings, end, subject=None):
    found = [one for one in findings if one.id.endswith(end) and subject in (None, one.assembly)]
    assert len(found) == 1, [(one.id, one.assembly) for one in findings if one.id.endswith(end)]
    return found[0]


__all__ = ["BTU", "FT2", "TEST_REPORT", "ending", "insulated", "judged", "of_u", "quantity", "window"]
