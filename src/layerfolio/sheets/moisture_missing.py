"""What the project file lacks for a moisture answer, with an example of what is right."""

from layerfolio.sheets.markup import plain
from layerfolio.studies.condensation.section import Part
from layerfolio.studies.condensation.types import CondensationStudy

EXAMPLES = {
    "climate.monthly.temperature": "twelve monthly means of the outside air, January first: "
                                   "`temperature: {unit: degC, values: [-12, ...]}`",
    "climate.monthly.relative_humidity": "twelve monthly means of the outside air: "
                                         '`relative_humidity: {unit: "%", values: [80, ...]}`',
    "indoor.temperature": "temperature of the room: `temperature: 20 degC`",
    "indoor.humidity": "humidity of the room: `humidity: {class: 2}` or `humidity: {relative_humidity: 45 %}`",
}  # fmt: skip
HEAT = "`conductivity`, or `resistance` of the layer as built"
VAPOUR = "`vapour_resistance_factor`, `permeance` or `equivalent_air_layer`, for the dry and the wet cup"


def missing_lead(study: CondensationStudy) -> str:
    """What could not be evaluated."""
    if study.evaluated:
        return "Without these the monthly balance and the surface are not evaluated. Add to the project file:"
    return "Not evaluated, and nothing is guessed in its place. Add to the project file:"


def missing(study: CondensationStudy) -> list[str]:
    """What to add to the project file, one line each."""
    lines = [f"`{plain(key)}`: {EXAMPLES[key]}" if key in EXAMPLES else plain(key) for key in study.missing_inputs]
    parts = {part.layer.name: part for part in study.basis.parts}
    return [*lines, *(_lacking(study, name, parts.get(name)) for name in study.missing_layers)]


def _lacking(study: CondensationStudy, name: str, part: Part | None) -> str:
    """What one layer lacks, with its source, under materials or on the layer itself."""
    heat = part is None or part.resistance is None
    vapour = part is None or not part.dry or not part.wet
    layer = next((one for one in study.assembly.layers if one.name == name), None)
    title = f"layer {layer.number}, {layer.title}" if layer else name
    wanted = "; ".join(words for words, lacks in ((HEAT, heat), (VAPOUR, vapour)) if lacks)
    return f"**{plain(title)}**: {wanted}, with its source"


