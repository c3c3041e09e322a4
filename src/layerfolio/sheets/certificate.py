"""The contents of the certificate that the energy chapter asks to be posted (IECC R401.3, IRC N1101.14), to be filled in.

What the project file knows is filled in; tests, equipment and names are blank lines. It is not signed and says nothing of
what was built.
"""

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.code_sets import code_set
from layerfolio.codes.findings import Verdict, limits_of_u
from layerfolio.codes.wording import listed
from layerfolio.sheets.blocks import Column, Head, Pairs, Row, Sheet, Table
from layerfolio.sheets.criteria_rows import at
from layerfolio.sheets.desk import CERTIFICATE, OPENINGS, RECORD, Desk
from layerfolio.sheets.figures import u_cell, unit_of
from layerfolio.sheets.markup import plain
from layerfolio.sheets.record_summary import in_words
from layerfolio.studies.types import ThermalStudy
from layerfolio.units.show import fixed

BLANK, SHORT = "\\_" * 22, "\\_" * 8
GROUPS = (
    ("Ceiling", ("ceiling",)), ("Roof", ("roof",)), ("Walls", ("wall",)), ("Floors", ("floor",)),
    ("Foundation: walls, slabs", ("foundation-wall", "slab")),
)  # fmt: skip
KINDS = (("Windows", ("window", "glass-block")), ("Skylights", ("skylight",)), ("Doors", ("door", "vehicle-door")),
         ("Attic hatches", ("hatch",)))  # fmt: skip
GLAZED = ("window", "glass-block", "skylight", "door")
MEANS_FROM = 2021  # edition that first asks for means by area, path, photovoltaics and rating
MEASURES_FROM = 2024  # edition that adds efficiency measures and the solar-ready zone


def certificate(desk: Desk) -> Sheet | None:
    """Sheet C7; None for a set that asks for no certificate."""
    set_id = desk.dossier.project.code.set
    if not set_id.startswith("irc-"):
        return None
    year = int(set_id.partition("-")[2])
    blocks = desk.templates.blocks(
        "certificate",
        head=Head("", "Insulation certificate: contents", "N1101.14; IECC R401.3"),
        lead="Where a part has several values, the one over the largest area stands here"
        + (", and the mean by area beside it." if year >= MEANS_FROM else "."),
        building=_building(desk, year),
        insulation=_insulation(desk, year),
        openings=_openings(desk, year),
        not_rated=not_rated(desk),
        equipment=_equipment(desk, year),
    )  # fmt: skip
    return Sheet(CERTIFICATE, "Insulation certificate", "—", blocks)


def _aimed(desk: Desk) -> str:
    aim, measured = at(desk, "air_changes_at_50_pa"), at(desk, "measured_air_changes_at_50_pa")
    return ("" if aim is None else f", aimed at {aim:g}") + ("" if measured is None else f", measured {measured:g}")


def _building(desk: Desk, year: int) -> Pairs:
    about, code = desk.dossier.project.project, desk.dossier.project.code
    rows = [("Address", plain(about.location or "") or BLANK), ("Code and edition", plain(code_set(code.set).title))]
    if year >= MEANS_FROM:
        rows.append(("Path of the energy chapter", plain(getattr(code, "energy_path", None) or "") or BLANK))
    rows += [("Builder or design professional", BLANK), ("Date", BLANK)]
    return Pairs(tuple(rows), label_width=52)


def _insulation(desk: Desk, year: int) -> Table:
    means = year >= MEANS_FROM
    columns = (
        Column("Part", width=44), Column("R of the insulation", "largest area", 48), Column("U of it", _unit(desk), 44),
        *((Column("Mean by area", "R of the insulation"),) if means else ()),
    )  # fmt: skip
    rows = []
    for words, kinds in GROUPS:
        for name, R, U, mean in _of_group(desk, kinds):
            cells = (f"{words}{f', {plain(name)}' if name else ''}", R, U)
            rows.append(Row((*cells, mean) if means else cells))
    for name, R, far in _edges(desk):
        rows.append(Row((f"Slab edge, {plain(name)}", R, far, "–")[: len(columns)]))
    rows.append(Row(("Ducts in unheated spaces", BLANK, "–", "–")[: len(columns)]))
    return Table(columns, tuple(rows))


def _edges(desk: Desk) -> list[tuple[str, str, str]]:
    """Insulation at the edge of floors on the ground: its resistance, how far it goes and which way."""
    from layerfolio.codes.stated import metres

    found = []
    for name in desk.dossier.assemblies:
        edge = getattr(getattr(desk.dossier.project.assemblies[name], "ground", None), "edge_insulation", None)
        if edge is not None:
            far = metres(edge.width.value, desk.system == "customary")
            found.append((name, nominal(edge.resistance.value, desk.system), f"{far} {edge.direction}"))
    return found


def _of_group(desk: Desk, kinds: tuple[str, ...]) -> list[tuple[str, str, str, str]]:
    """The assembly of the largest area: its name, R of its insulation, its U; and the mean of the group by area."""
    studies = [one for one in desk.dossier.thermal.values() if one.assembly.kind in kinds]
    if not studies:
        return [("", "none in this package", "–", "–")]
    areas = [_area(one.assembly) for one in studies]
    if any(area is None for area in areas) and len(studies) > 1:
        return [(one.assembly.name, *_values(one, desk), "areas not given") for one in studies]
    most = max(range(len(studies)), key=lambda i: areas[i] or 0.0)
    values = [insulation_resistance(one) for one in studies]
    if any(open_lines(desk, one.assembly.name) for one in studies):
        return [(studies[most].assembly.name, *_values(studies[most], desk), "–" if len(studies) == 1 else BLANK)]
    mean = values[0] if len(studies) == 1 else None
    if mean is None and all(value is not None for value in values):
        mean = sum(R * area for R, area in zip(values, areas, strict=True)) / sum(areas)  # type: ignore[misc, operator]
    shown = "one value" if len(studies) == 1 else BLANK if mean is None else nominal(mean, desk.system)
    return [(studies[most].assembly.name, *_values(studies[most], desk), shown)]


def _area(one: Assembly) -> float | None:
    return getattr(one.area, "value", one.area)


def insulation_resistance(study: ThermalStudy) -> float | None:
    """Sum of the insulating layers between framing, m2.K/W; None where one has no figure."""
    layers = [one.resistance for one in study.layers if one.layer.insulating]
    return None if study.missing or any(R is None for R in layers) else float(sum(layers))


def _values(study: ThermalStudy, desk: Desk) -> tuple[str, str]:
    R, asked, limits = insulation_resistance(study), study.asked, limits_of_u(desk.dossier.findings)
    if open_lines(desk, study.assembly.name):
        return BLANK, BLANK
    return (
        BLANK if R is None else nominal(R, desk.system),
        _u(None if asked is None else asked.transmittance, desk.system, limits.get(study.assembly.name)),
    )


def open_lines(desk: Desk, name: str) -> list[int]:
    """Lines of the record on the figures of an assembly or opening that still wait for a document or an answer."""
    waits = (Verdict.NEEDS_EVIDENCE, Verdict.NEEDS_JUDGEMENT)
    return [
        number for number, one in enumerate(desk.dossier.findings, 1)
        if one.assembly == name and one.topic in ("thermal", "openings") and one.verdict in waits and one.provided
        and one.provided.quantity in ("U", "R")
    ]  # fmt: skip


def nominal(R: float, system: str) -> str:
    """A resistance as American papers name it, R-20, with SI beside it."""
    from layerfolio.units.show import in_units

    return f"R-{fixed(in_units(R, 'h.ft2.F/Btu'), 1).removesuffix('.0')} ({fixed(R, 2)}\u00a0m²·K/W)"


def _openings(desk: Desk, year: int) -> Table:
    means = year >= MEANS_FROM
    columns = (
        Column("Part", width=44), Column("U, largest area", _unit(desk), 48), Column("SHGC, largest area", "", 44),
        *((Column("Mean by area", "U; SHGC"),) if means else ()),
    )  # fmt: skip
    found = desk.dossier.openings
    rows = []
    for words, kinds in KINDS:
        alike = [one for one in found.values() if one.kind in kinds]
        if alike or "hatch" not in kinds:
            rows.append(Row((words, *_of_openings(alike, desk))[: len(columns)]))
    return Table(columns, tuple(rows))


def _of_openings(found: list, desk: Desk) -> tuple[str, str, str]:
    """U and solar factor of the largest kind by area; means by area of all. Blank where a figure is not a rated one."""
    if not found:
        return "none in this package", "–", "–"
    most = max(found, key=lambda one: one.total_area)
    rated = {one.name: _is_rated(one, desk) and not open_lines(desk, one.name) for one in found}
    means = [_mean(found, name) if all(rated.values()) else None for name in ("transmittance", "solar_factor")]
    glass = any(one.kind in GLAZED for one in found)
    U = SHORT if means[0] is None else _u(means[0], desk.system)
    both = f"{U}; {SHORT if means[1] is None else fixed(means[1], 2)}" if glass else U
    gain = "–" if not glass else BLANK if most.solar_factor is None else fixed(most.solar_factor, 2)
    if not rated[most.name]:
        return BLANK, BLANK if glass else gain, both
    limit = limits_of_u(desk.dossier.findings).get(most.name)
    return _u(most.transmittance, desk.system, limit), gain, both


def _is_rated(one: object, desk: Desk) -> bool:
    """Whether the code takes the figure of an opening as a rated one; kinds that it does not rate stand as stated."""
    from layerfolio.codes.rating import rated_to, understood

    standards = understood(desk.dossier.project.code.set, one.kind)
    return not standards or bool(rated_to(one.basis, standards))


def not_rated(desk: Desk) -> str:
    """The parts whose figures are left blank, in words; empty where there is none."""
    openings = desk.dossier.openings
    names = [name for name, one in openings.items() if not _is_rated(one, desk)]
    said = [f"{listed(names)}: not rated, see {OPENINGS}"] if names else []
    waiting = [(name, open_lines(desk, name)) for name in (*desk.dossier.thermal, *openings) if name not in names]
    said += [f"{name}: open, {RECORD}, {in_words(found)}" for name, found in waiting if found]
    if not said:
        return ""
    blank = "The blanks take the figure that is settled, of windows the rated one or the code's default"
    return f"{'; '.join(map(plain, said))}. {blank}; means stand over such figures alone."


def _unit(desk: Desk) -> str:
    """Unit of a transmittance; behind it that of the brackets."""
    first = unit_of("U", desk.system)
    return first if desk.system == "metric" else f"{first} (W/(m²·K))"


def _u(value: float | None, system: str, limit: float | None = None) -> str:
    return BLANK if value is None else u_cell(value, system, limit)


def _mean(found: list, name: str) -> float | None:
    values = [getattr(one, name) for one in found]
    if any(value is None for value in values):
        return None
    return sum(value * one.total_area for value, one in zip(values, found, strict=True)) / sum(one.total_area for one in found)


def _equipment(desk: Desk, year: int) -> Table:
    """Results of tests and what is installed, blank; then what later editions add."""
    columns = (Column("Item", width=44), Column("Result, or type", width=48), Column("Size", width=44), Column("Efficiency"))
    rows = [
        (f"Air leakage of the envelope{_aimed(desk)}", f"{SHORT} air changes an hour at 50 Pa", "–", "–"),
        ("Leakage of the ducts", BLANK, "–", "–"),
        *((words, BLANK, BLANK, BLANK) for words in ("Heating", "Cooling", "Hot water", "Ventilation")),
    ]
    if year >= MEANS_FROM:
        rows += [
            ("Photovoltaics", f"tilt, facing {SHORT}", f"capacity {SHORT}", f"inverter {SHORT}"),
            ("Energy rating index", f"without photovoltaics {SHORT}", f"with them {SHORT}", "–"),
        ]
    if year >= MEASURES_FROM:
        rows.append(("Additional efficiency measures", BLANK, f"solar-ready zone {SHORT}", "–"))
    return Table(columns, tuple(map(Row, rows)))
