"""Resistance of each layer that counts: its main material, its framing, and both side by side."""

from layerfolio.assembly.types import Assembly, Layer, Member
from layerfolio.catalogue.datum import Datum
from layerfolio.formulas import thermal as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.types import LayerHeat

CARRIES_NO_HEAT = ("membrane",)


def counted_layers(assembly: Assembly) -> tuple[Layer, ...]:
    """Layers that add resistance: inside a ventilated cavity, and with a thickness that counts for heat."""
    return tuple(x for x in assembly.layers if x.counts and (x.kind not in CARRIES_NO_HEAT or x.resistance))


def layers_without_figures(assembly: Assembly) -> tuple[str, ...]:
    """Names of counted layers whose own figure, or whose framing's, is missing."""
    return tuple(
        x.name for x in counted_layers(assembly)
        if not _figure(x) or (x.member and x.member.share.value > 0 and not _figure(x.member))
    )  # fmt: skip


def _figure(part: Layer | Member) -> Datum | None:
    return part.resistance or part.resistivity or part.conductivity


def _basis(part: Layer | Member) -> int:
    """0 given by resistance, 1 by resistivity, 2 by conductivity: the order in which layers are listed."""
    return 0 if part.resistance else 1 if part.resistivity else 2


def subject(layer: Layer, member: Member | None = None) -> str:
    """How a step names its layer: the number of the drawing's tag, then the printed title."""
    return f"{layer.number}a {member.title}" if member else f"{layer.number} {layer.title}"


def _resistance(part: Layer | Member, layer: Layer, about: str, record: Recorder) -> float:
    """R of a layer's main material or of its member, recorded; the part has a figure (see layers_without_figures)."""
    if part.resistance:
        return record.given("R", part.resistance.value, about, source_words(part.resistance), part.resistance)
    thickness = layer.thickness.value if layer.thickness else 0.0
    if part.resistivity:
        return record.step(f.resistance_by_thickness, about=about, d=thickness, r=part.resistivity.value)
    return record.step(f.layer_resistance, about=about, d=thickness, lam=part.conductivity.value)


def _give_resistivities(parts: list[tuple[Layer, Member | None]], record: Recorder) -> None:
    """Resistances per thickness with their sources, before the steps that multiply by them."""
    for layer, member in parts:
        part = member or layer
        if part.resistivity and not part.resistance:
            record.given("r", part.resistivity.value, subject(layer, member), source_words(part.resistivity), part.resistivity)


def source_words(datum: Datum) -> str:
    """A figure's source in one line: key or the person's own words, place, and what was chosen."""
    return ", ".join(part for part in (datum.origin.source, datum.origin.place, datum.note) if part)


def homogeneous(assembly: Assembly, record: Recorder) -> dict[int, LayerHeat]:
    """The layers without framing, by number."""
    plain = [x for x in counted_layers(assembly) if not (x.member and x.member.share.value > 0)]
    if plain:
        record.section("Homogeneous layers", key="homogeneous")
    _give_resistivities([(x, None) for x in plain], record)
    found = {}
    for layer in sorted(plain, key=lambda x: (_basis(x), x.number)):
        value = _resistance(layer, layer, subject(layer), record)
        found[layer.number] = LayerHeat(layer, value, None, value)
    return found


def framed(assembly: Assembly, record: Recorder) -> dict[int, LayerHeat]:
    """The layers with framing, by number: main material, member, and the two by area side by side."""
    mixed = [x for x in counted_layers(assembly) if x.member and x.member.share.value > 0]
    if mixed:
        record.section("Framed layers, parts side by side", key="framed")
    parts = [(x, None) for x in mixed] + [(x, x.member) for x in mixed]
    _give_resistivities(parts, record)
    values = {
        (x.number, member is not None): _resistance(member or x, x, subject(x, member), record)
        for x, member in sorted(parts, key=lambda p: (_basis(p[1] or p[0]), p[0].number, p[1] is not None))
    }
    found = {}
    for layer in mixed:
        share = layer.member.share.value
        main, member = values[layer.number, False], values[layer.number, True]
        side_by_side = record.step(
            f.framed_layer_resistance, about=subject(layer), f=(share, 1 - share), R=(member, main)
        )
        found[layer.number] = LayerHeat(layer, main, member, side_by_side)
    return found
