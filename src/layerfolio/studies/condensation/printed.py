"""What of the monthly balance is printed step by step: the values used, both airs, one month at one plane."""

from layerfolio.catalogue.datum import Datum
from layerfolio.formulas import moisture as f
from layerfolio.steps.trace import Recorder, Trace
from layerfolio.studies.climate_year import MONTHS, SECONDS, Outside, Year, outside_of
from layerfolio.studies.condensation.march import DRY
from layerfolio.studies.condensation.run import LayerValue, Plane, Run, plane_words
from layerfolio.studies.condensation.section import main_insulation
from layerfolio.studies.condensation.shown import months_of
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.studies.condensation.walk import (
    Airs,
    Neighbours,
    method_figure,
    plane_steps,
    saturation_step,
)
from layerfolio.studies.indoor_air import CLASS_EXCESS
from layerfolio.studies.indoor_air import SOURCE as ANNEX
from layerfolio.studies.layer_heat import source_words, subject

METHOD, INDOOR = "iso-13788-2012", "project file, indoor"
CUP_WORDS = {"dry": "dry cup", "wet": "wet cup", "single": "one value for both cups"}


def trace_of(study: CondensationStudy) -> Trace:
    """All printed steps of a study, in the order in which a reader needs them."""
    from layerfolio.studies.condensation.printed_limits import record_surface, record_two_period

    record, basis, year = Recorder(), study.basis, study.year
    if not basis.expected:
        layers = ", ".join(study.missing_layers) or "any layer"
        record.choice("No moisture result", f"no heat or vapour figure for {layers}")
    else:
        record_values(record, basis.expected, basis.less_favourable, main_insulation(basis.parts).title)
    if year is not None and study.expected is not None:
        outside = outside_of(study.assembly.faces, year)
        month = month_to_show(study.expected)
        record_airs(record, year, outside, month)
        record_month(record, study.expected, year, outside, month, basis.films)
    if study.surface is not None:
        record_surface(record, study, outside_of(study.assembly.faces, year))
    if study.two_period is not None:
        record_two_period(record, study.two_period, study.assembly)
    return record.done()


def month_to_show(run: Run) -> int:
    """Number from 0 of the month that the picture shows as the worst."""
    return MONTHS.index(months_of(run)[0])


def record_values(
    record: Recorder, expected: tuple[LayerValue, ...], less_favourable: tuple[LayerValue, ...], main: str
) -> None:
    """The s_d of every layer in both runs, and the rule by which the cups were chosen."""
    record.section("Vapour values of both runs", key="cups", source="iso-10456-2007")
    record.choice(
        f"The main insulation is {main}", "it has the greatest resistance; the choice of cups turns on it", METHOD
    )
    record.choice(
        "As expected: dry cup inside the main insulation, wet cup for it and outside it",
        "so the layers are in winter; the less favourable run takes wet inside and for the insulation, dry outside",
    )
    others = {value.layer.name: value for value in less_favourable}
    for value in reversed(expected):
        other = others[value.layer.name]
        runs = "both runs" if other.cup == value.cup else "as expected"
        _given(record, value, runs)
        if other.cup != value.cup:
            _given(record, other, "less favourable")


def _given(record: Recorder, value: LayerValue, runs: str) -> None:
    fixed = ", fixed in the project file" if value.fixed else ""
    about = f"{subject(value.layer)}, {CUP_WORDS[value.cup]}, {runs}{fixed}"
    figures = value.layer.vapour
    datum: Datum | None = (figures.wet if value.cup == "wet" else figures.dry) if figures else None
    record.given("s_d", value.s_d, about, source_words(datum) if datum else METHOD, datum)


def record_airs(record: Recorder, year: Year, outside: Outside, month: int) -> None:
    """Vapour pressures of both airs in one month."""
    record.section(f"Air in {MONTHS[month]}", key="airs", source=METHOD)
    theta_e = record.given("theta_e", outside.temperature[month], outside.words, outside.source)
    if outside.temperature == year.outdoor_temperature:
        phi = record.given("phi_e", year.outdoor_humidity[month], "outside", "project file, climate")
        p_e = record.step(f.outside_vapour_pressure, phi_e=phi, p_sat=saturation_step(record, theta_e, "outside"))
    else:
        p_e = record.given("p_e", outside.pressure[month], outside.words, outside.source)
    theta_i = record.given("theta_i", year.indoor_temperature[month], "room", INDOOR)
    if year.rule.kind == "class":
        _excess(record, year, month, p_e if outside.temperature == year.outdoor_temperature else None)
    else:
        phi = record.given("phi_i", year.indoor_humidity[month], f"room, {year.rule.words}", _rule_source(year))
        record.step(f.room_vapour_pressure, phi_i=phi, p_sat=saturation_step(record, theta_i, "room"))


def _rule_source(year: Year) -> str:
    return f"{ANNEX}, continental chart, from memory" if year.rule.kind == "continental" else INDOOR


def _excess(record: Recorder, year: Year, month: int, p_e: float | None) -> None:
    """Room pressure by humidity class: that of the outside air and the class's excess."""
    at_zero = CLASS_EXCESS[year.rule.number]
    theta = year.outdoor_temperature[month]
    method_figure(record, "dp_0", at_zero, year.rule.words, METHOD, "Annex A, humidity classes", "memory")
    if p_e is None:
        p_e = record.given("p_e", year.outdoor_pressure[month], "outside air", "project file, climate")
    if theta <= 0:
        dp = at_zero
        record.choice("The excess is that of the class, in full", "the outside air is at 0 °C or below", ANNEX)
    elif theta < 20:
        dp = record.step(f.class_excess, dp_0=at_zero, theta_e=theta)
    else:
        dp = 0.0
        record.choice("There is no excess", "the outside air is at 20 °C or above", ANNEX)
    record.step(f.room_vapour_pressure_by_excess, p_e=p_e, dp=dp)


def record_month(
    record: Recorder, run: Run, year: Year, outside: Outside, month: int, films: tuple[Datum, Datum]
) -> None:
    """The plane with most condensate, or the one nearest to it, in one month; `films` inside, outside."""
    profile = run.profiles[month]
    node = _node_to_show(run, month)
    if node is None:
        record.section(f"{MONTHS[month]} at a plane", key="plane", source=METHOD)
        record.choice("No plane to show", "one layer without strips has no face inside it")
        return
    wet = node in profile.held
    words = plane_words(run.nodes[node].between)
    record.section(f"{MONTHS[month]} at the plane {words}", key="plane", source=METHOD)
    record.given("R_si", films[0].value, "inside film", source_words(films[0]), films[0])
    record.given("R_se", films[1].value, "outside film", source_words(films[1]), films[1])
    pressures = profile.pressure
    thetas, resistances = (year.indoor_temperature[month], outside.temperature[month]), (x.value for x in films)
    airs = Airs(*thetas, pressures[-1], pressures[0], *resistances)
    near = _neighbours(run, profile.held, pressures, node)
    rate = plane_steps(record, run.values, (run.nodes[0], run.nodes[-1]), run.nodes[node], airs, near, wet)
    if rate is None:
        record.choice(f"No condensation at {words}", "the relative humidity stays below 1; no other plane comes nearer")
        return
    _amount(record, run, month, node, rate)


def _node_to_show(run: Run, month: int) -> int | None:
    """The wet plane with the greatest flow of the month, else the node nearest to saturation; None without one."""
    profile = run.profiles[month]
    if profile.held:
        planes = {plane.node: plane for plane in run.month(MONTHS[month]).planes}
        return max(profile.held, key=lambda node: abs(planes[node].flow) if node in planes else 0.0)
    inner = range(1, len(run.nodes) - 1)
    return max(inner, key=lambda k: profile.pressure[k] / profile.saturation[k], default=None)


def _neighbours(run: Run, held: tuple[int, ...], pressure: tuple[float, ...], node: int) -> Neighbours:
    """The wet planes next to a node, or the airs."""
    last = len(run.nodes) - 1
    inner = min((k for k in held if k > node), default=last)
    outer = max((k for k in held if k < node), default=0)
    return Neighbours(
        run.nodes[inner], run.nodes[outer],
        None if inner == last else pressure[inner], None if outer == 0 else pressure[outer],
    )  # fmt: skip


def _amount(record: Recorder, run: Run, month: int, node: int, rate: float) -> None:
    """From the rate to the month's condensate, and to the amount where the month is not split."""
    seconds = run.profiles[month].seconds
    split = seconds < SECONDS[month] - 1e-6
    record.given("t", seconds, f"{MONTHS[month]}, {seconds / 86400:.3g} days", "calendar")
    gained = record.step(f.condensate, g_c=rate, t=seconds)
    if split:
        record.choice(
            "The month is split", "a plane runs dry in it: these lines are for its longest part, the rest runs alike"
        )
        return
    plane = _plane(run, month, node)
    before = max(plane.accumulated - plane.flow, 0.0)
    before = 0.0 if before < DRY else before
    record.given("M_0", before, f"before {MONTHS[month]}", "balance of the months before")
    record.step(f.accumulated, M_0=before, M_c=gained)


def _plane(run: Run, month: int, node: int) -> Plane:
    return next(plane for plane in run.month(MONTHS[month]).planes if plane.node == node)
