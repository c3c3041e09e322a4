"""Rules between the parts of a project file."""

from layerfolio.reading.layer_rules import differs
from layerfolio.reading.layers import VAPOUR_KEYS, Layer
from layerfolio.reading.materials import Material
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.schema import Project
from layerfolio.reading.tree import Mapping
from layerfolio.reading.unusual import caution_unusual


def check_project(project: Project, node: Mapping, report: Report) -> None:
    """Report what does not fit together in the whole file."""
    _storeys(project, node, report)
    _revision(project, node, report)
    _sheet_numbers(project, node, report)
    caution_unusual(project.climate, project.indoor, project.materials, project.assemblies, report)
    if project.openings or project.wall_lines or (project.site_loads and project.site_loads.stated):
        from layerfolio.reading.unusual_sizes import caution_sizes

        for path, message in caution_sizes(project):
            report.caution(path, message)
    if project.openings or project.joins or project.documents:
        from layerfolio.reading.envelope_rules import check_envelope

        check_envelope(project, node, report)
    if project.joins or project.foundation:
        from layerfolio.reading.join_rules import check_joins

        check_joins(project, node, report)
    if project.wall_lines:
        from layerfolio.reading.wall_line_rules import check_wall_lines

        check_wall_lines(project, node, report)
    _heat_recovery(project, report)
    _absent(project, node, report)
    for name, assembly in project.assemblies.items():
        layers = node.items["assemblies"].items[name].items.get("layers")
        for n, layer in enumerate(assembly.layers):
            if len(layers.items) == len(assembly.layers):
                _rated(project, layer, layers.items[n], f"assemblies.{name}.layers[{n}]", report)


def _storeys(project: Project, node: Mapping, report: Report) -> None:
    """`building.storeys` counts what `storeys` lists."""
    count = project.building.storeys if project.building else None
    listed = node.items.get("storeys")
    if count is None or not project.storeys or len(listed.items) == count:
        return
    message = f"building.storeys says {count}, this list holds {len(listed.items)}"
    report.problem(node.keys["storeys"], "storeys", message, "as many entries as storeys")


def _revision(project: Project, node: Mapping, report: Report) -> None:
    """`project.revision` is the mark of the last entry of `revisions`."""
    mark = project.project.revision if project.project else None
    if not mark or not project.revisions:
        return
    last = project.revisions[-1].mark
    if last and last != mark:
        message = f"project.revision says {mark}, the last entry of this list says {last}"
        report.problem(node.keys["revisions"], "revisions", message, f"mark: {mark}")


def _heat_recovery(project: Project, report: Report) -> None:
    """What the set asks and what the building has say the same."""
    code, ventilation = project.code, project.building.ventilation if project.building else None
    share = ventilation.recovery if ventilation else None
    if code and share is not None and code.heat_recovery is not None and code.heat_recovery != (share.value > 0):
        said = str(code.heat_recovery).lower()
        words = f"code.heat_recovery says {said}, the ventilation recovers {share.text}: are both meant?"
        report.caution("building.ventilation.recovery", words)


def _absent(project: Project, node: Mapping, report: Report) -> None:
    """A building without openings lists none."""
    said = project.building.absent if project.building else ()
    if "openings" in said and project.openings:
        message = f"openings are stated to be absent, and {next(iter(project.openings))} is one"
        place = node.items["building"].keys["absent"]
        report.problem(place, "building.absent", message, "absent: [appendages]")


def _sheet_numbers(project: Project, node: Mapping, report: Report) -> None:
    """Names that differ in capitals only would be one file and one sheet."""
    seen: dict[str, str] = {}
    for name in project.assemblies:
        first = seen.setdefault(name.upper(), name)
        if first != name:
            place = node.items["assemblies"].keys[name]
            report.problem(place, f"assemblies.{name}", f"{quoted(name)} and {quoted(first)} differ in capitals only")


def _rated(project: Project, layer: Layer, node: Mapping, path: str, report: Report) -> None:
    """Figures of a product as delivered hold for its own thickness, never for another."""
    material = project.materials.get(layer.material or "")
    if material is None:
        return
    if not {"resistance", "conductivity"} & layer.stated:
        _one_figure(material, "resistance", layer, node, path, report)
    if not set(VAPOUR_KEYS) & layer.stated:
        for word in ("permeance", "equivalent_air_layer"):
            _one_figure(material, word, layer, node, path, report)


def _one_figure(material: Material, word: str, layer: Layer, node: Mapping, path: str, report: Report) -> None:
    figure = getattr(material, word)
    if figure is None or layer.thickness is None:
        return
    at, thickness = figure.at_thickness, layer.thickness
    name = quoted(layer.material or "")
    if at is None:
        message = f"the {word} of {name} states no at_thickness, and this layer is {thickness.text} thick"
        report.problem(node.items["thickness"].place, f"{path}.thickness", message, f"at_thickness: {thickness.text}")
    elif differs(at.value, thickness.value):
        message = f"the {word} of {name} is for {at.text}, this layer is {thickness.text} thick"
        report.problem(node.items["thickness"].place, f"{path}.thickness", message, f"thickness: {at.text}")
