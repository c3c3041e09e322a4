"""Names that stand for something elsewhere: materials of the catalogue, code sets, climate zones."""

from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass

from layerfolio.problems import Problem
from layerfolio.reading.places import place_of
from layerfolio.reading.report import Report, did_you_mean, meant, nearest, quoted
from layerfolio.reading.schema import Project
from layerfolio.reading.tree import Mapping, Node, Scalar, Sequence


@dataclass(frozen=True)
class Known:
    """What is asked when a name has to be looked up; None: not checked. `near` gives materials that may be meant,
    `amendments` what is wrong with the figures that the project replaces.
    """

    materials: Callable[[], Collection[str]] | None
    sets: Callable[[], Collection[str]] | None
    zones: Callable[[str], Collection[str]] | None
    near: Callable[[str], Collection[str]] | None = None
    amendments: Callable[[Project], Iterable[Problem]] | None = None


def check_names(tree: Mapping, project: Project | None, known: Known, report: Report) -> None:
    """Report materials, sets and zones that nobody knows."""
    _materials(tree, known, report)
    code = project.code if project else None
    if code is None or code.set is None:
        return
    stated = tree.items["code"].items
    if known.sets and code.set not in (sets := sorted(known.sets())):
        from layerfolio.reading.trade_words import meant_by

        other = meant_by(code.set, sets)
        message = f"the code set {quoted(code.set)} is not known{meant([other]) if other else did_you_mean(code.set, sets)}"
        example = next((one for one in sets if quoted(one) in message), sets[0] if sets else "")
        report.problem(stated["set"].place, "code.set", message, example)
        return
    if known.zones and code.zone is not None:
        zones = list(known.zones(code.set))
        if zones and code.zone not in zones:
            message = f"zone {quoted(code.zone)} is not a zone of {code.set}{_zones(code.zone, zones)}"
            report.problem(stated["zone"].place, "code.zone", message, f'zone: "{zones[0]}"')
    if known.amendments and code.amendments:
        for one in known.amendments(project):
            report.problem(place_of(tree, one.path), one.path, one.message, one.example)


def _zones(stated: str, zones: list[str]) -> str:
    """What is near, and always all of them: they are few."""
    near = did_you_mean(stated, zones)
    return f"{near if '?' in near else ''}{'' if '?' in near else ':'} there are {', '.join(zones)}"


def _materials(tree: Mapping, known: Known, report: Report) -> None:
    if known.materials is None:
        return
    own = _mapping(tree.items.get("materials"))
    catalogue: Collection[str] | None = None
    for node, path in _stated_materials(tree):
        name = " ".join(node.text.split())
        if not name or name in own:
            continue
        catalogue = known.materials() if catalogue is None else catalogue
        if name not in catalogue:
            message = f"the material {quoted(name)} is not known{_suggested(name, list(own), sorted(catalogue), known)}"
            report.problem(node.place, path, message, "a name under materials in this file, or of: layerfolio list materials")


def _suggested(name: str, own: list[str], catalogue: list[str], known: Known) -> str:
    """What may be meant: a material of the file, one the catalogue finds near, one that shares a part of its name."""
    near = [one for one in [nearest(name, own)] if one]
    near += [one for one in (known.near(name) if known.near else []) if one not in near]
    if near:
        return meant(near[:3])
    sharing = _sharing(name, catalogue)
    return did_you_mean(name, [*own, *catalogue]) or (meant(sharing) if sharing else "")


def _sharing(name: str, catalogue: list[str]) -> list[str]:
    """hemp-batt for hempcrete: names with a part of four letters or more that begins or ends the word."""
    word = name.casefold()
    parts = {one: [part for part in one.split("-") if len(part) > 3] for one in catalogue}
    return [one for one, its in parts.items() if any(word.startswith(p) or word.endswith(p) for p in its)][:3]


def _stated_materials(tree: Mapping) -> Iterator[tuple[Scalar, str]]:
    """Every `material` of a layer, its framing and its battens."""
    for name, assembly in _mapping(tree.items.get("assemblies")).items():
        layers = _mapping(assembly).get("layers")
        for n, layer in enumerate(layers.items if isinstance(layers, Sequence) else ()):
            path = f"assemblies.{name}.layers[{n}]"
            for inner, where in ((layer, path), *_members(layer, path)):
                node = _mapping(inner).get("material")
                if isinstance(node, Scalar) and not node.is_null:
                    yield node, f"{where}.material"


def _members(layer: Node, path: str) -> Iterator[tuple[Node, str]]:
    for word in ("framing", "battens"):
        if word in _mapping(layer):
            yield _mapping(layer)[word], f"{path}.{word}"


def _mapping(node: Node | None) -> dict[str, Node]:
    return node.items if isinstance(node, Mapping) else {}
