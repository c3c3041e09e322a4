"""The thermal study of a plane assembly: three methods, share of heat through framing, temperatures in design winter."""

from dataclasses import replace

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import thermal as f
from layerfolio.steps.trace import Recorder
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
    missing = layer_heat.layers_without_figures(assembly)
    record = Recorder()
    if missing:
        record.choice("No thermal result", "no thermal figure for " + ", ".join(missing))
        return ThermalStudy(assembly, (), {}, None, (), missing, record.done())
    films = _films(assembly, record)
    plain = layer_heat.homogeneous(assembly, record)
    base = record.step(f.homogeneous_total, R=(films, *(h.with_framing for _, h in sorted(plain.items()))), running_total=True)
    by_number = plain | layer_heat.framed(assembly, record)
    layers = tuple(by_number[x.number] for x in assembly.layers if x.number in by_number)
    crossing = paths(layers)
    results, through_framing = _by_method(assembly, layers, crossing, base, record)
    temperatures: tuple[Interface, ...] = ()
    if indoor is not None and outdoor is not None and assembly.faces != "ground":
        temperatures = interfaces(assembly, layers, indoor, outdoor, record)
    return ThermalStudy(assembly, layers, results, through_framing, temperatures, (), record.done())


def _films(assembly: Assembly, record: Recorder) -> float:
    record.section("Surface resistances", key="films")
    inside, outside = assembly.inside_film, assembly.outside_film
    record.given("R_si", inside.value, "inside film", source_words(inside), inside)
    record.given("R_se", outside.value, "outside film", source_words(outside), outside)
    return record.step(f.surface_resistances, R_si=inside.value, R_se=outside.value, running_total=True)


def _by_method(
    assembly: Assembly, layers: tuple[LayerHeat, ...], crossing: tuple[Path, ...], base: float, record: Recorder
) -> tuple[dict[str, MethodResult], float | None]:
    """All three methods, recorded in the order in which a reader needs them; then the transmittance that is asked."""
    record.section("Isothermal planes: all layers in series", key=PLANES)
    lower = record.step(f.series_resistance, R=(base, *(h.with_framing for h in layers if _framed(h))), running_total=True)
    through_framing = None
    if len(crossing) > 1:
        upper, through_framing = _upper(layers, crossing, base, record)
    else:
        upper = lower
        record.choice("The three methods agree", "no layer is framed, so there is one heat-flow path")
    combined, within = _combined(lower, upper, record) if len(crossing) > 1 else (lower, True)
    value = {PLANES: lower, PARALLEL: upper, COMBINED: combined}
    record.section(f"Transmittance as the set asks it: {assembly.method.replace('-', ' ')}", key="transmittance")
    formula, name = TRANSMITTANCE[assembly.method]
    record.step(formula, **{name: value[assembly.method]})
    results = {method: MethodResult(r, TRANSMITTANCE[method][0](**{TRANSMITTANCE[method][1]: r})) for method, r in value.items()}
    results[COMBINED] = replace(results[COMBINED], upper_limit=upper, lower_limit=lower, within_limits=within)
    return results, through_framing


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
