"""Furring or cladding fastened through insulation: lateral capacity by the yield modes, withdrawal, and what comes to a fastener.

Information for the engineer: the stiffness of the boards, creep and moisture are not in it.
"""

from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.fastening import PublishedRow, fastener_data
from layerfolio.formulas import dowel as d
from layerfolio.formulas import loads as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.attachment_inputs import Inputs, inputs
from layerfolio.studies.dead_load import dead_load
from layerfolio.studies.joint import DESIGN, Joint, joint
from layerfolio.studies.layer_heat import source_words, subject
from layerfolio.studies.structure_types import Attachment, YieldMode
from layerfolio.studies.yield_modes import Dowel, governing, withdrawal, yield_modes

MARGIN = (
    "the published table for foam plastics keeps 1.34 to 1.41 between such a capacity and the weight on a fastener; "
    "stiffness of the boards, creep and moisture are not in it"
)
OF_TABLE = "irc-2021, Table R703.15.2, compared cell by cell (derived)"


def attachment(assembly: Assembly, project: Any) -> Attachment | None:
    """The study of an assembly whose cladding hangs outside insulation; None for others.

    `project` gives the wind suction on the cladding (site_loads.wind_suction), without which withdrawal is not compared.
    """
    found = joint(assembly)
    if found is None:
        return None
    about, record = inputs(found, dead_load(assembly)), Recorder()
    if found.borrowed:
        record.choice(f"The fasteners of {subject(found.carrier)} are taken", f"those of {subject(found.side)} are not stated")
    if about.not_wood:
        about.refused.append(about.not_wood)
    area = _area(about, record)
    demand = None
    if area and about.weight is not None:
        record.section("Weight on a fastener", key="demand")
        demand = record.step(f.fastener_weight, p_D=about.weight, A_t=area)
    length = _length(about, record) if not about.missing else None
    modes, pull, pulled = (), None, None
    if length is not None and not about.refused:
        modes, pull = _capacities(about, length, record)
        pulled = _suction(project, area, record)
        if demand is not None:
            _compared(modes, demand, record)
    for one in about.refused:
        record.choice("The method does not reach", f"{one}: {DESIGN}")
    return _attachment(about, modes, demand, pull, pulled, record)


def _area(about: Inputs, record: Recorder) -> float | None:
    """Area that comes to one fastener, m2; None while its spacing is unknown."""
    pins = about.joint.fasteners
    if pins is None or not ((pins.spacing and about.rows) or pins.per_area):
        return None
    record.section("Area of a fastener", key="area")
    if pins.spacing and about.rows:
        return record.step(f.tributary_area, a_f=pins.spacing, b_f2=about.rows)
    return record.given("A_t", 1 / pins.per_area, f"{pins.per_area:g} fasteners a square metre", "project file")


def published_row(about: Joint, kind: str) -> PublishedRow | None:
    """The row of the published table whose own penetration governs; None outside what the table is for."""
    pins = about.fasteners
    return fastener_data().row(kind, pins.outer) if about.foam and not about.direct and kind and pins.outer else None


def _length(about: Inputs, record: Recorder) -> float | None:
    """Length in the main member that counts, m; None, with the reason under `refused`, where it is too short."""
    one, pins, data = about.joint, about.joint.fasteners, fastener_data()
    record.section("Penetration", key="penetration")
    if not one.penetration:
        about.refused.append(f"the fasteners ({round(pins.length * 1000, 1):g} mm) do not reach the framing")
        return None
    depth = record.step(f.penetration, L_f=pins.length, l_s=one.side_thickness, gap=one.gap)
    if one.main.thickness and depth > one.main.thickness.value:
        record.choice("The depth of the framing is counted, not the whole length", "the fastener comes out behind it")
        depth = one.main.thickness.value
    row = published_row(one, about.kind)
    if row is not None and depth >= row.penetration * 0.999:
        words = f"the published row asks for {row.penetration * 1000:.3g} mm and governs over the general rule"
        record.choice("The whole penetration counts", words, f"{row.origin.source}, {row.origin.place}")
        return depth
    least, full = (data.figures[f"penetration.{name}"] for name in ("least", "full"))
    if depth < least.value * pins.outer:
        short = f"short of {least.value:g} diameters, {least.value * pins.outer * 1000:.3g} mm"
        about.refused.append(f"a penetration of {depth * 1000:.3g} mm is {short}")
        return None
    if depth >= full.value * pins.outer:
        record.choice("The tip counts", f"the penetration is {full.value:g} diameters or more", source_words(full))
        return depth
    return record.step(f.penetration_without_tip, p_f=depth, D_s=pins.outer)


def _capacities(about: Inputs, length: float, record: Recorder) -> tuple[tuple[YieldMode, ...], float]:
    """The yield modes, and the withdrawal capacity, N."""
    one, pins = about.joint, about.joint.fasteners
    record.section("Fastener and wood", key="fastener")
    for quantity, figure, words in (
        ("F_yb", about.bending_yield, pins.title),
        ("G_s", about.side_gravity, "side member"),
        ("G_m", about.main_gravity, "main member"),
    ):
        record.given(quantity, figure.value, words, source_words(figure), figure)
    for words in about.taken:
        record.choice("A species group is taken", words)
    record.choice("All that is crossed is counted as a gap", "no bearing is credited to boards, sheathing or air", d.TR12)
    dowel = Dowel(
        about.kind, pins.outer, pins.outer if about.kind == "nail" else pins.root, about.bending_yield.value, one.side_thickness,
        one.gap, length, about.side_gravity.value, about.main_gravity.value,
        90.0 if one.battens and one.battens.direction == "horizontal" else 0.0,
        90.0 if one.main.member.direction == "horizontal" else 0.0,
    )  # fmt: skip
    modes = yield_modes(dowel, record)
    least = governing(modes)
    record.choice(f"Mode {least.name} governs", "it has the least capacity", d.NDS)
    drawn = length - pins.outer if about.kind == "lag" else length  # the tip of a lag screw holds nothing
    return modes, withdrawal(dowel, max(drawn, 0.0), record)


def _suction(project: Any, area: float | None, record: Recorder) -> float | None:
    """Pull of wind on a fastener, N; None, and said so, where no suction on the cladding is given."""
    suction = getattr(getattr(project, "site_loads", None), "wind_suction", None)
    record.choice("No factor for the duration of wind is applied", "the reference capacity is the lower figure", d.WITHDRAWAL)
    if suction is None or area is None:
        because = "the design suction on the cladding is not given (site_loads.wind_suction); an hourly pressure is not it"
        record.choice("Withdrawal is not compared with wind", because)
        return None
    record.given("p_w", suction.value, "wind suction", "project file, site_loads.wind_suction")
    return record.step(f.fastener_suction, p_w=suction.value, A_t=area)


def _compared(modes: tuple[YieldMode, ...], demand: float, record: Recorder) -> None:
    record.step(f.use_of_capacity, V_f=demand, Z_y=governing(modes).capacity)
    record.choice("The figure is for the engineer", MARGIN, OF_TABLE)


def _attachment(
    about: Inputs, modes: tuple[YieldMode, ...], demand: float | None, pull: float | None, pulled: float | None, record: Recorder
) -> Attachment:
    one, pins = about.joint, about.joint.fasteners
    least = governing(modes) if modes else None
    return Attachment(
        assembly=one.assembly.name, layer=(one.carrier or one.side).name, gap=one.gap, side_thickness=one.side_thickness,
        penetration=one.penetration, modes=modes, governing_mode=least.name if least else "",
        capacity_lateral=least.capacity if least else None, demand=demand, withdrawal_capacity=pull, withdrawal_demand=pulled,
        insulating_foam=one.foam, missing=tuple(about.missing), trace=record.done(), refused=tuple(about.refused),
        fastener=pins.title if pins else "", kind=about.kind, diameter=pins.outer if pins else None,
        length=pins.length if pins else None, spacing=pins.spacing if pins else None, rows=about.rows, weight=about.weight,
        insulation_depth=one.insulation_depth, side=subject(one.side),
        main=subject(one.main, one.main.member) if one.main else "",
    )  # fmt: skip
