"""What evidence is asked for: each material and product in order of first use, then openings, then joins."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from layerfolio.assembly.types import Assembly, Layer, Member
from layerfolio.catalogue import materials
from layerfolio.catalogue.expected_documents import ExpectedDocument, for_material, for_member, for_opening
from layerfolio.codes import register_figures as figures
from layerfolio.codes.edge_insulation import edge_key
from layerfolio.codes.register_papers import Paper, papers
from layerfolio.codes.register_types import BUILDING, OPENINGS, RowKind
from layerfolio.codes.wording import figure


@dataclass(slots=True)
class Subject:
    """A material, opening, join or claim with all that the register knows of it; grows while the assemblies are read."""

    key: str
    kind: RowKind
    title: str
    expected: ExpectedDocument
    papers: list[Paper] = field(default_factory=list)
    used_on: list[str] = field(default_factory=list)
    figures: dict[str, str] = field(default_factory=dict)
    why: str = ""  # why a document is wanted, where none is listed
    counts: bool = True  # False: only outside of a ventilated cavity so far

    def add(self, found: tuple[Paper, ...], sheet: str) -> None:
        """Documents and a sheet, each once."""
        self.papers += [one for one in found if one not in self.papers]
        if sheet and sheet not in self.used_on:
            self.used_on.append(sheet)

    def wanted(self) -> list[str]:
        """The figures that a missing document has to show; the density of a layer enters no verdict here."""
        return [words for matter, words in self.figures.items() if matter != "density"]


def material_key(layer: Layer, given: Any) -> str:
    """The name by which layers of one product are told: material, else membrane, else the printed title."""
    return layer.material or getattr(given, "membrane", None) or layer.title


def member_key(member: Member) -> str:
    """The name of a member's product: of a kind that is a product of its own, else its material, else its title."""
    product = for_member(member.name)
    return product.name if product else member.material or member.title


def given_layer(project: Any, assembly: Assembly, layer: Layer) -> Any:
    """The project file's own record of a layer."""
    return project.assemblies[assembly.name].layers[layer.number - 1]


def material_subjects(project: Any, assemblies: Mapping[str, Assembly], customary: bool) -> dict[str, Subject]:
    """By key, in order of first use: the layers from the outside in, each followed by its framing."""
    found: dict[str, Subject] = {}
    for assembly in assemblies.values():
        for layer in assembly.layers:
            given = given_layer(project, assembly, layer)
            if layer.kind != "cavity" or getattr(given, "evidence", None):
                _enter_layer(found, project, assembly, layer, given, customary)
            if layer.member is not None:
                _enter_member(found, project, assembly, layer.member, customary)
        _enter_edge(found, project, assembly, customary)
    return found


def _enter_edge(found: dict[str, Subject], project: Any, assembly: Assembly, customary: bool) -> None:
    """Insulation at the edge of a slab, which stands in no layer."""
    edge = getattr(getattr(project.assemblies[assembly.name], "ground", None), "edge_insulation", None)
    if edge is None:
        return
    key, name = edge_key(assembly.name), getattr(edge, "material", None) or ""
    subject = Subject(key, "material", _capital(key) + (f", {name}" if name else ""), for_material(name, ""))
    resistance = figure("R", edge.resistance.value, customary=customary)
    subject.figures = {"conductivity": f"resistance {resistance}"}
    source = getattr(edge, "source", None)
    subject.why = f"no document is listed for its figure ({source})" if source else "its figure has neither source nor document"
    subject.add(papers(edge), assembly.name)
    found[key] = subject


def _enter_layer(found: dict[str, Subject], project: Any, assembly: Assembly, layer: Layer, given: Any, customary: bool) -> None:
    key, own = material_key(layer, given), project.materials.get(layer.material)
    if key not in found:
        title = _title(layer.material, own) or getattr(given, "membrane", None) or layer.title
        found[key] = Subject(key, "material", _capital(title), for_material(layer.material, layer.family), counts=False)
    subject = found[key]
    subject.add((*papers(given), *papers(own)), assembly.name)
    if not subject.why or (layer.counts and not subject.counts):
        heat = figures.of_layer(layer, customary) if layer.counts or subject.papers else {}
        subject.figures, subject.why = heat | _flames(own) | _flames(given), figures.where_from(layer)
        subject.counts = layer.counts


def _enter_member(found: dict[str, Subject], project: Any, assembly: Assembly, member: Member, customary: bool) -> None:
    key, own = member_key(member), project.materials.get(member.material)
    if key not in found:
        product = for_member(member.name)
        title = product.title if product else _title(member.material, own) or member.title
        expected = product or for_material(member.material, member.family)
        found[key] = Subject(key, "material", _capital(title), expected)
    subject = found[key]
    subject.add(papers(own), assembly.name)
    if not subject.why or not subject.counts:
        subject.figures, subject.why = figures.of_member(member, customary), figures.where_from(member)
        subject.counts = True


def _flames(entry: Any) -> dict[str, str]:
    spread, smoke = getattr(entry, "flame_spread", None), getattr(entry, "smoke_developed", None)
    said = [f"flame spread {spread:g}"] if spread is not None else []
    said += [f"smoke {smoke:g}"] if smoke is not None else []
    return {"flame spread": ", ".join(said)} if said else {}


def _title(name: str, own: Any) -> str:
    """A material's own title: of the project, else of the catalogue; empty without a material."""
    if not name:
        return ""
    if getattr(own, "title", None):
        return str(own.title)
    return materials.material(name).title if own is None and name in materials.names() else name.replace("-", " ")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def opening_subjects(project: Any, studies: Mapping[str, Any], customary: bool) -> Iterator[Subject]:
    """The openings in file order."""
    for name, stated in (getattr(project, "openings", None) or {}).items():
        kind = stated.kind.replace("-", " ")
        title = f"{_capital(kind)} {name}" + (f", {stated.title}" if stated.title else "")
        subject = Subject(name, "opening", title, for_opening(stated.kind), why=_opening_why(stated))
        subject.figures = figures.of_opening(stated, studies.get(name), customary)
        subject.add(papers(stated), OPENINGS)
        yield subject


def _opening_why(stated: Any) -> str:
    if stated.transmittance is not None:
        said = stated.source or stated.basis
        return f"its transmittance is stated ({said}); no document is listed" if said else "its transmittance has no basis"
    parts = [word for word, part in (("frame", stated.frame), ("glass", stated.glass), ("edge", stated.edge)) if part]
    if parts:
        return f"its transmittance is calculated from {', '.join(parts)}; no document is listed for these"
    return "no transmittance is given"


def join_subjects(project: Any, customary: bool) -> Iterator[Subject]:
    """The joins that have something to prove: a linear transmittance, or documents."""
    for one in getattr(project, "joins", None) or ():
        if one.psi is None and not one.evidence:
            continue
        where = f"{one.at} of {' and '.join(one.of)}"
        said = f"its linear transmittance is stated from {one.source}" if one.source else "its linear transmittance has no source"
        subject = Subject(where, "join", _capital(where), for_opening("join"), why=f"{said}; no document is listed")
        if one.psi is not None:
            subject.figures["psi"] = f"linear transmittance {_psi(one.psi.value, customary)}"
        subject.add(papers(one), BUILDING)
        yield subject


def _psi(value: float, customary: bool) -> str:
    """Linear transmittance; the glossary's name is looked up, so that both systems print as elsewhere."""
    return figure("psi_j", value, customary=customary, digits=3)
