"""What each layer lets through, the layer that controls vapour, and the rule-of-thumb ratio of inside to outside."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.catalogue.datum import Datum
from layerfolio.formulas import vapour as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.layer_heat import subject
from layerfolio.studies.types import LayerHeat, LayerVapour, VapourStudy


def vapour_study(assembly: Assembly, heat: tuple[LayerHeat, ...] = ()) -> VapourStudy:
    """Equivalent air layers of the layers inside the ventilated cavity; `heat` tells which insulation is the main one."""
    record = Recorder()
    record.section("Equivalent air layers", key="s_d")
    record.given("delta_0", f.DELTA_0, "still air", "iso-13788-2012, terms")
    rows = _rows(assembly, record)
    control = next((row for row in rows if "vapour control" in row.layer.serves), None)
    main = max(heat, key=lambda h: h.resistance or 0.0).layer if heat else None
    inside, outside = _sides(rows, main, record) if main else (None, None)
    ratio = record.step(f.openness_ratio, s_d_in=inside, s_d_out=outside) if inside and outside else None
    return VapourStudy(
        assembly,
        rows,
        control.layer.name if control else None,
        control,
        main.name if main else None,
        inside,
        outside,
        ratio,
        tuple(row.layer.name for row in rows if row.s_d_dry is None or row.s_d_wet is None),
        record.done(),
    )


BASES = ("s_d", "permeance", "permeability", "mu")
"""The order in which layers are listed, so that steps of one formula stand together."""


def _rows(assembly: Assembly, record: Recorder) -> tuple[LayerVapour, ...]:
    """Every layer that counts, from the outside in; recorded by the kind of figure."""
    counted = [layer for layer in assembly.layers if layer.counts]
    by_kind = sorted(counted, key=lambda x: (BASES.index(x.vapour.basis) if x.vapour else -1, x.number))
    found = {layer.number: _row(layer, record) for layer in by_kind}
    return tuple(found[layer.number] for layer in counted)


def _row(layer: Layer, record: Recorder) -> LayerVapour:
    figures = layer.vapour
    dry = _s_d(layer, figures.dry if figures else None, "dry cup", record)
    same = figures is not None and figures.single
    wet = dry if same else _s_d(layer, figures.wet if figures else None, "wet cup", record)
    return LayerVapour(layer, dry, wet, _permeance(dry), _permeance(wet))


def _s_d(layer: Layer, datum: Datum | None, cup: str, record: Recorder) -> float | None:
    """s_d of a layer for one cup, m; None without a figure, or without the thickness the figure needs."""
    if datum is None:
        return None
    about = f"{subject(layer)}, {cup}" if layer.vapour and not layer.vapour.single else subject(layer)
    basis = layer.vapour.basis
    if basis == "s_d":
        return record.given("s_d", datum.value, about, datum.origin.source, datum)
    if basis == "permeance":
        return record.step(f.equivalent_air_layer_of_permeance, about=about, delta_0=f.DELTA_0, W=datum.value)
    if layer.thickness is None:
        return None
    mu = datum.value
    if basis == "permeability":
        mu = record.step(f.resistance_factor, about=about, delta_0=f.DELTA_0, delta=datum.value)
    return record.step(f.equivalent_air_layer, about=about, mu=mu, d=layer.thickness.value)


def _permeance(s_d: float | None) -> float | None:
    return f.permeance(delta_0=f.DELTA_0, s_d=s_d) if s_d else None


def _sides(rows: tuple[LayerVapour, ...], main: Layer, record: Recorder) -> tuple[float | None, float | None]:
    """Sums inside and outside of the main insulation, as expected in winter: dry cup inside, wet cup outside."""
    inside = [row.s_d_dry for row in rows if row.layer.number > main.number]
    outside = [row.s_d_wet for row in rows if row.layer.number < main.number]
    record.section("Inside to outside", key="ratio")
    return tuple(
        record.step(f.sum_of_air_layers, about=about, s_d=tuple(values)) if values and None not in values else None
        for about, values in (("inside the main insulation, dry cup", inside), ("outside it, wet cup", outside))
    )  # type: ignore[return-value]
