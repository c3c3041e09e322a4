"""Framing and battens: what they are made of, and which share of the area they take."""

from typing import Any

from layerfolio.assembly.figures import Sources, heat, other, stated_origin
from layerfolio.assembly.types import Choice, Kind, Member
from layerfolio.catalogue.code_tables import CodeTables
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.types import Material
from layerfolio.steps.spelling import shown

FRAME_OF = {"slab": "floor", "foundation-wall": "foundation-wall"}
USUAL_MEMBER = {
    "wall": "stud",
    "foundation-wall": "stud",
    "roof": "rafter",
    "ceiling": "joist",
    "floor": "joist",
    "slab": "joist",
}
METAL_FROM = 10.0
"""W/(m.K): framing that conducts better than this is metal, for which the three methods here are not meant."""


def plural(word: str) -> str:
    """The printed plural of a member's name."""
    return word + ("es" if word.endswith(("s", "x", "ch")) else "s")


def member(
    framing: Any,
    kind: Kind,
    layer_name: str,
    assembly: str,
    thickness: float | None,
    tables: CodeTables,
    project_material: Any,
    catalogue: Material | None,
    *,
    is_batten: bool,
) -> tuple[Member, list[Choice]]:
    """The resolved member of a layer or cavity and the choices taken for it."""
    name = "batten" if is_batten else (getattr(framing, "member", None) or USUAL_MEMBER[kind])
    material = framing.material or ""
    sources = Sources(
        framing, project_material, tables, catalogue, material, thickness, f"{plural(name)} of layer {layer_name} of {assembly}"
    )
    figures = heat(sources)
    share, choices = _share(framing, kind, name, (layer_name, assembly), tables, is_batten)
    title = f"{_material_words(material, project_material, catalogue)} {plural(name)}".strip()
    conductivity = figures.conductivity
    return Member(
        name=name,
        material=material,
        title=title[:1].upper() + title[1:],
        family=getattr(project_material, "family", None) or (catalogue.family if catalogue else "timber"),
        share=share,
        width=framing.width,
        spacing=framing.spacing,
        direction=framing.direction or _direction(kind, is_batten),
        member_id=getattr(framing, "member_id", None) or "",
        conductivity=conductivity,
        resistivity=figures.resistivity,
        resistance=figures.resistance,
        is_metal=bool(catalogue and catalogue.metal) or bool(conductivity and conductivity.value >= METAL_FROM),
        density=other(sources, "density"),
        specific_gravity=other(sources, "specific_gravity", listed=False),
        staggered=bool(getattr(framing, "staggered", None)),
    ), choices


def _direction(kind: Kind, is_batten: bool) -> str:
    if is_batten:
        return "" if kind in ("wall", "foundation-wall") else "across the slope" if kind == "roof" else ""
    return {"wall": "vertical", "foundation-wall": "vertical", "roof": "up the slope"}.get(kind, "")


def _material_words(name: str, project_material: Any, catalogue: Material | None) -> str:
    title = getattr(project_material, "title", None)
    if title:
        return str(title)
    return name.replace("-", " ") if name else ""


def share_is_known(framing: Any, kind: Kind, tables: CodeTables, is_batten: bool) -> bool:
    """Whether a stated fraction, the set's own table or the width tells the share of the area."""
    if framing.fraction is not None or framing.width is not None:
        return True
    spacing = framing.spacing.value if framing.spacing else None
    name = framing.member or USUAL_MEMBER[kind]
    return bool(spacing and not is_batten and tables.framing_share(FRAME_OF.get(kind, kind), name, spacing))


def _share(
    framing: Any, kind: Kind, name: str, where: tuple[str, str], tables: CodeTables, is_batten: bool
) -> tuple[Datum, list[Choice]]:
    """The stated fraction, else the set's own table share, else width over spacing."""
    if framing.fraction is not None:
        origin = stated_origin(framing, "layer", f"share of the {plural(name)} of layer {where[0]} of {where[1]}")
        return Datum(framing.fraction.value, origin), []
    spacing = framing.spacing.value if framing.spacing else None
    if spacing and not is_batten:
        table = tables.framing_share(FRAME_OF.get(kind, kind), name, spacing)
        if table:
            return table, [
                Choice(
                    f"{plural(name).capitalize()} of layer {where[0]} take {table.value * 100:g} % of the area",
                    f"no fraction is stated; the set's table has this share ({table.note})"
                    + ("; the row was not re-read in its source" if table.origin.mark == "memory" else ""),
                    table.origin.source,
                )
            ]
    width = framing.width.value if framing.width else 0.0
    share = width / spacing if spacing else 0.0
    words = f"{plural(name).capitalize()} of layer {where[0]} take {shown(share * 100, 3)} % of the area"
    origin = Origin("default", "common-practice", "width over spacing", "given")
    return Datum(share, origin, "width over spacing"), [Choice(words, "no fraction is stated: width over spacing")]
