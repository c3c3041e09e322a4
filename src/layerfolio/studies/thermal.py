"""The thermal study of a plane assembly: three methods, share of heat through framing, temperatures in design winter."""

from dataclasses import dataclass, replace

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import thermal as f
from layerfolio.steps.trace import Recorder, Section
from layerfolio.studies import layer_heat
from layerfolio.studies.layer_heat import source_words, subject
from layerfolio.studies.paths import Path, paths
from layerfolio.studies.temperatures import interfaces
from layerfolio.studies.types import Interface, LayerHeat, MethodResult, ThermalStudy

GREATEST_RATIO = 1.5
"""Beyond this ratio of the limits ISO 6946 does not offer the combined method (clause 6.7.2.1)."""

PLANES, PARALLEL, COMBINED = "isothermal-planes", "parallel-path", "combined"

TRANSMITTANCE = {
    PLANES: (f.transmittance_of_planes, "R_lower"),
    PARALLEL: (f.transmittance_of_paths, "R_upper"),
    COMBINED: (f.transmittance, "R_T"),
}
"""The formula of each method's transmittance and the symbol of its resistance."""


def thermal_study(assembly: Assembly, *, indoor: float | None = None, outdoor: float | None = None) -> ThermalStudy:
    """Resistance and transmittance by all three methods; temperatures when both design temperatures (degC) are given."""
    missing = _missing(assembly)
    record = Recorder()
    if missing:
        record.choice("No thermal result", "no thermal figure for " + ", ".join(missing))
        return ThermalStudy(assembly, (), {}, None, (), missing, record.done())
    still = _as_still(assembly.still, record) if assembly.still else None
    found = _totals(assembly, record)
    if still:
        from layerfolio.studies.spaces import between

        found = replace(found, by_method=between(assembly.openings, still.by_method, found.by_method, record),
                        within_limits=still.within_limits and found.within_limits)  # fmt: skip
    results = _transmittances(assembly, found, record)
    corrected = None
    if assembly.completions is not None:
        from layerfolio.studies.corrections import corrections

        corrected = corrections(assembly, found.layers, found.space, results[assembly.method].transmittance, record)
    temperatures: tuple[Interface, ...] = ()
    if indoor is not None and outdoor is not None and assembly.faces != "ground":
        temperatures = interfaces(_with_space(assembly, found.space), found.layers, indoor, outdoor, record)
    framing = found.share_of_heat
    return ThermalStudy(assembly, found.layers, results, framing, temperatures, (), record.done(), corrected)


@dataclass(frozen=True, slots=True)
class _Totals:
    """Of one way to count the layers: total resistance by method, m2.K/W, and the resistance of an unheated space in it."""

    layers: tuple[LayerHeat, ...]
    space: float
    by_method: dict[str, float]
    within_limits: bool
    share_of_heat: float | None


def _missing(assembly: Assembly) -> tuple[str, ...]:
    """Names of layers without a figure, those that count only with a still cavity included."""
    names = layer_heat.layers_without_figures(assembly)
    return tuple(dict.fromkeys((*names, *layer_heat.layers_without_figures(assembly.still)))) if assembly.still else names


def _totals(assembly: Assembly, record: Recorder) -> _Totals:
    """Films, layers and the total resistance by each method."""
    films = _films(assembly, record)
    space = _space(assembly, record)
    plain = layer_heat.homogeneous(assembly, record)
    parts = (films, *((space,) if space else ()), *(h.with_framing for _, h in sorted(plain.items())))
    base = record.step(f.homogeneous_total, R=parts, running_total=True)
    by_number = plain | layer_heat.framed(assembly, record)
    layers = tuple(by_number[x.number] for x in assembly.layers if x.number in by_number)
    by_method, within, share_of_heat = _by_method(layers, paths(layers), base, record)
    return _Totals(layers, space, by_method, within, share_of_heat)


def _space(assembly: Assembly, record: Recorder) -> float:
    """Resistance of an unheated space; what works it out is loaded only where there is one."""
    if assembly.roof_space is None and assembly.unheated_space is None:
        return 0.0
    from layerfolio.studies.spaces import unheated_space

    return unheated_space(assembly, record)


def _with_space(assembly: Assembly, space: float) -> Assembly:
    """The assembly with an unheated space put to its outside film, as a profile of temperatures needs it."""
    film = assembly.outside_film
    return replace(assembly, outside_film=replace(film, value=film.value + space)) if space else assembly


def _as_still(assembly: Assembly, record: Recorder) -> _Totals:
    """The totals with the slightly ventilated cavity as a still one, in steps of their own."""
    own = Recorder()
    found = _totals(assembly, own)
    for entry in own.entries:
        named = isinstance(entry, Section)
        record.entries.append(Section(f"Cavity still: {entry.title}", f"still-{entry.key}", entry.source) if named else entry)
    return found


def _films(assembly: Assembly, record: Recorder) -> float:
    title = "Cavity well ventilated: surface resistances" if assembly.still else "Surface resistances"
    record.section(title, key="films")
    inside, outside = assembly.inside_film, assembly.outside_film
    record.given("R_si", inside.value, "inside film", source_words(inside), inside)
    record.given("R_se", outside.value, "outside film", source_words(outside), outside)
    return record.step(f.surface_resistances, R_si=inside.value, R_se=outside.value, running_total=True)


def _by_method(
    layers: tuple[LayerHeat, ...], crossing: tuple[Path, ...], base: float, record: Recorder
) -> tuple[dict[str, float], bool, float | None]:
    """All three methods, recorded in the order in which a reader needs them; whether the combined one holds; heat by framing."""
    record.section("Isothermal planes: all layers in series", key=PLANES)
    lower = record.step(f.series_resistance, R=(base, *(h.with_framing for h in layers if _framed(h))), running_total=True)
    through_framing = None
    if len(crossing) > 1:
        upper, through_framing = _upper(layers, crossing, base, record)
    else:
        upper = lower
        record.choice("The three methods agree", "no layer is framed, so there is one heat-flow path")
    combined, within = _combined(lower, upper, record) if len(crossing) > 1 else (lower, True)
    return {PLANES: lower, PARALLEL: upper, COMBINED: combined}, within, through_framing


def _transmittances(assembly: Assembly, found: _Totals, record: Recorder) -> dict[str, MethodResult]:
    """The transmittance that is asked, recorded; those of all methods."""
    record.section(f"Transmittance as the set asks it: {assembly.method.replace('-', ' ')}", key="transmittance")
    value = found.by_method
    formula, name = TRANSMITTANCE[assembly.method]
    record.step(formula, **{name: value[assembly.method]})
    results = {method: MethodResult(r, TRANSMITTANCE[method][0](**{TRANSMITTANCE[method][1]: r})) for method, r in value.items()}
    limits = {"upper_limit": value[PARALLEL], "lower_limit": value[PLANES], "within_limits": found.within_limits}
    results[COMBINED] = replace(results[COMBINED], **limits)
    return results


def _upper(layers: tuple[LayerHeat, ...], crossing: tuple[Path, ...], base: float, record: Recorder) -> tuple[float, float]:
    """Upper limit of the total resistance and the share of heat through the paths that hold framing."""
    record.section("Parallel paths: every path on its own", key=PARALLEL)
    shares = _shares(layers, crossing, record)
    framed = [i for i, heat in enumerate(layers) if _framed(heat)]
    totals = tuple(
        record.step(f.path_resistance, about=path_name(path, layers), R=(base, *(path.resistances[i] for i in framed)))
        for path in crossing
    )
    upper = record.step(f.upper_limit, f_q=shares, R_q=totals, running_total=True)
    record.section("Heat through framing", key="framing-heat")
    held = [i for i, path in enumerate(crossing) if path.in_member]
    u_framing = record.step(f.framing_heat, f_q=tuple(shares[i] for i in held), R_q=tuple(totals[i] for i in held))
    return upper, record.step(f.framing_share_of_heat, U_fr=u_framing, R_upper=upper)


def _shares(layers: tuple[LayerHeat, ...], crossing: tuple[Path, ...], record: Recorder) -> tuple[float, ...]:
    """Shares of the paths; multiplied step by step where framings cross."""
    if len(crossing[0].factors) == 1:
        return tuple(path.share for path in crossing)
    return tuple(record.step(f.path_share, about=path_name(path, layers), f=path.factors) for path in crossing)


def _combined(lower: float, upper: float, record: Recorder) -> tuple[float, bool]:
    """Mean of both limits and whether the method still holds."""
    record.section("Combined method: mean of both limits", key=COMBINED)
    mean = record.step(f.mean_of_limits, R_upper=upper, R_lower=lower, running_total=True)
    ratio = record.step(f.limits_ratio, R_upper=upper, R_lower=lower)
    record.step(f.greatest_relative_error, R_upper=upper, R_lower=lower, R_T=mean)
    within = ratio <= GREATEST_RATIO
    if not within:
        record.choice(
            "The combined value decides nothing here",
            f"the ratio of the limits is over {GREATEST_RATIO:g}",
            "iso-6946-2017, 6.7.2.1",
        )
    return mean, within


def _framed(heat: LayerHeat) -> bool:
    return heat.member_resistance is not None


def path_name(path: Path, layers: tuple[LayerHeat, ...]) -> str:
    """A path named by what it crosses: the tags of framing, else of the main material, of each framed layer."""
    framed = [h for h in layers if _framed(h)]
    return " + ".join(
        f"{h.layer.number}a {h.layer.member.name}" if h.layer.number in path.in_member else f"{h.layer.number}" for h in framed
    )


__all__ = ["COMBINED", "PARALLEL", "PLANES", "path_name", "subject", "thermal_study"]
