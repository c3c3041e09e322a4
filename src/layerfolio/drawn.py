"""What the command `draw` draws: an assembly by its name, or a junction by the number of its sheet."""

from dataclasses import dataclass
from typing import Literal

from layerfolio.dossier import Dossier
from layerfolio.drawing.marks import Drawing

ALONE = 225.0
"""Width of an assembly that stands alone, paper mm: room for the names of its layers."""


class NoView(ValueError):
    """A view that something has not."""


@dataclass(frozen=True, slots=True)
class Wish:
    """How something is to be drawn; `scale` is a denominator, None for the largest that fits."""

    scale: float | None = None
    view: Literal["plan", "vertical"] | None = None
    light: bool = False


def drawn(dossier: Dossier, name: str, wish: Wish) -> Drawing | None:
    """The drawing of that name; None where the project has nothing of the name. NoView for a view that it has not."""
    if name in dossier.assemblies:
        return _assembly(dossier, name, wish)
    junction = next((one for one in dossier.junctions if f"D{one.number}" == name and not one.cannot), None)
    if junction is None:
        return None
    if wish.view is not None:
        raise NoView(f"{name} is a junction: it has one view")
    from layerfolio.drawing.detail.all import junction_drawn

    return junction_drawn(junction, dossier.assemblies, dossier.system, scale=wish.scale, light=wish.light).drawing


def _assembly(dossier: Dossier, name: str, wish: Wish) -> Drawing:
    from layerfolio.drawing.section import NO_PLAN, WALLS, section

    if wish.view == "plan" and dossier.assemblies[name].kind not in WALLS:
        raise NoView(NO_PLAN.format(dossier.assemblies[name].kind))

    return section(
        dossier.assemblies[name], units=dossier.system, page=dossier.project.project.page, width=ALONE, notes=True,
        scale=wish.scale, view=wish.view, light=wish.light,
    )  # fmt: skip
