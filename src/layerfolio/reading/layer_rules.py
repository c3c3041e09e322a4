"""Rules between the keys of one layer."""

from layerfolio.reading.layers import VAPOUR_KEYS, Layer
from layerfolio.reading.report import Report, join
from layerfolio.reading.tree import Mapping

_WHAT = ("material", "membrane", "cavity")
_FIGURES = ("conductivity", "resistance", *VAPOUR_KEYS)
_STRANGE = {  # keys that mean nothing on such a layer, and what to write instead
    "cavity": {"framing": "battens", "conductivity": "resistance", "density": "", "specific_heat": "",
               "permeability": "", "vapour_resistance_factor": "equivalent_air_layer", "air_voids": ""},
    "membrane": {"framing": "", "battens": "", "openings": "", "conductivity": "", "resistance": "",
                 "air_voids": ""},
    "solid": {"battens": "framing", "openings": ""},
}  # fmt: skip


def check_layer(layer: Layer, node: Mapping, path: str, report: Report) -> None:
    """Report what does not fit together in one layer."""
    _one_kind(layer, node, path, report)
    for word, instead in _STRANGE[layer.kind].items():
        if word in layer.stated:
            hint = f": write {instead}" if instead else ""
            message = f"{word} has no meaning on a {_noun(layer.kind)}{hint}"
            report.problem(node.keys[word], join(path, word), message)
    one_vapour_figure(layer, node, path, report)
    _thickness(layer, node, path, report)
    _openings(layer, node, path, report)
    _as_built(layer, node, path, report)
    if layer.fasteners is not None:
        from layerfolio.reading.fasteners import check_fasteners

        check_fasteners(layer, node, path, report)


def one_vapour_figure(record, node: Mapping, path: str, report: Report) -> None:
    """A layer or material states its resistance to vapour once."""
    stated = [word for word in VAPOUR_KEYS if word in record.stated]
    for word in stated[1:]:
        message = f"the resistance to vapour stands already under {stated[0]}: keep one of them"
        report.problem(node.keys[word], join(path, word), message)


def _one_kind(layer: Layer, node: Mapping, path: str, report: Report) -> None:
    stated = [word for word in _WHAT if word in layer.stated]
    if len(stated) > 1:
        message = f"a layer is either a {stated[0]} or a {stated[1]}, not both"
        report.problem(node.keys[stated[1]], join(path, stated[1]), message)
    if stated:
        return
    if "name" not in layer.stated:
        message = "what the layer is made of is missing: material, membrane, cavity, or a name with its own figures"
        report.problem(node.place, path, message, "material: hemp-batt")
    elif not set(_FIGURES) & layer.stated:
        message = "a layer with a name alone needs its own figures: conductivity or resistance, and one for vapour"
        report.problem(node.place, path, message, "conductivity: 0.040 W/(m.K)")


def _thickness(layer: Layer, node: Mapping, path: str, report: Report) -> None:
    """Cavities and layers given by conductivity need a thickness; others may go without."""
    by_conductivity = "conductivity" in layer.stated and "resistance" not in layer.stated
    needs = layer.kind == "cavity" or (layer.kind == "solid" and by_conductivity)
    if needs and "thickness" not in layer.stated:
        report.problem(node.place, join(path, "thickness"), "thickness is missing", "thickness: 38 mm")


def _openings(layer: Layer, node: Mapping, path: str, report: Report) -> None:
    if layer.kind != "cavity" or layer.cavity is None:
        return
    if layer.cavity == "slightly ventilated" and "openings" not in layer.stated:
        message = "a slightly ventilated cavity needs the area of its openings"
        report.problem(node.place, join(path, "openings"), message, "openings: 800 mm2/m")
    elif layer.cavity != "slightly ventilated" and "openings" in layer.stated:
        message = f"openings have no meaning in a cavity that is {layer.cavity}"
        report.problem(node.keys["openings"], join(path, "openings"), message, "cavity: slightly ventilated")


def _as_built(layer: Layer, node: Mapping, path: str, report: Report) -> None:
    """Figures of a layer are for the layer as built: another `at_thickness` contradicts it."""
    for word in ("permeance", "equivalent_air_layer"):
        figure = getattr(layer, word)
        at = figure.at_thickness if figure else None
        if at and layer.thickness and differs(at.value, layer.thickness.value):
            message = f"the figure is for {at.text}, the layer is {layer.thickness.text} thick"
            report.problem(node.items[word].place, join(path, word), message, layer.thickness.text)


def differs(a: float, b: float) -> bool:
    """Whether two thicknesses are not the same (to a millionth)."""
    return abs(a - b) > 1e-6 * max(a, b)


def _noun(kind: str) -> str:
    return {"cavity": "cavity", "membrane": "membrane", "solid": "layer that is no cavity"}[kind]
