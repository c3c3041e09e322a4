"""Water control past a junction: it sheds outward, so that each layer laps over the one below it."""

from layerfolio.assembly.joining import joined_by, said, short, way
from layerfolio.assembly.junction_titles import called
from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.assembly.types import Assembly, Layer

WATER = "water control"
EDGES = {  # by edge: of a membrane, of anything else
    "window sill": ("sill pan drains over {a}", "sill pan drains over {a}"),
    "window jamb": ("{a} turned in, taped to {frame}", "{a} taped to {frame}"),
    "window head": ("{a} laps the head flashing", "head flashing taped to {a}"),
}


def water_link(junction: Junction, sides: list[Assembly]) -> Link | None:
    """The link of the water line; None where no side has a layer for it."""
    layers = [_serving(one) for one in sides]
    first = layers[0]
    ends = [(side.name, layer.name) if layer else None for side, layer in zip(sides, layers, strict=True)]
    if junction.opening:
        return first and _opening(junction, ends[0], first)
    if junction.kind == "penetration":
        return first and _pipe(ends[0], first)
    if junction.kind == "sill":
        return _sill(sides, layers, ends)
    if len(sides) == 1 or junction.kind == "rim":
        return first and _same(junction, ends[0], first)
    return _over(sides, layers, ends)


def _serving(assembly: Assembly) -> Layer | None:
    return next((one for one in assembly.layers if WATER in one.serves), None)


def _opening(junction: Junction, at: tuple[str, str] | None, layer: Layer) -> Link:
    words = EDGES[junction.kind][way(layer) != "membrane"].format(a=short(layer), frame=f"frame of {junction.opening}")
    return Link("W", at, (junction.opening, "frame"), "tape" if "taped" in words else "lap", words)


def _pipe(at: tuple[str, str] | None, layer: Layer) -> Link:
    if way(layer) == "membrane":
        return Link("W", at, ("pipe", "pipe"), "lap", f"{short(layer)} laps the collar of the pipe")
    return Link("W", at, ("pipe", "pipe"), "tape", f"collar taped to {short(layer)} and pipe")


def _sill(sides: list[Assembly], layers: list[Layer | None], ends: list) -> Link | None:
    """The wall's layer ends over a flashing that sheds clear of the floor: what keeps the ground's water out is another line."""
    if layers[0]:
        how = "laps" if way(layers[0]) == "membrane" else "is taped over"
        return Link("W", ends[0], None, "lap" if how == "laps" else "tape", f"{short(layers[0])} {how} the flashing at the foot")
    return Link("W", None, ends[1], broken=_none(sides[0])) if layers[1] else None


def _same(junction: Junction, at: tuple[str, str] | None, layer: Layer) -> Link:
    where = {"ridge": "over the ridge", "rim": "past the floor"}.get(junction.kind, "round the corner")
    how = "lapped" if way(layer) == "membrane" else "in one plane" if junction.kind == "rim" else "taped"
    return Link("W", at, at, "lap" if how == "lapped" else "same layer" if how == "in one plane" else "tape",
                f"{short(layer)} {where}, {how}")  # fmt: skip


def _over(sides: list[Assembly], layers: list[Layer | None], ends: list) -> Link | None:
    """Wall under roof, or wall to wall. A ceiling under a roof of another assembly has no water line of its own."""
    first, second = layers
    if first and second and sides[1].kind == "roof":  # the roof's own line sheds over the edge, and the wall's begins below it
        return Link("W", *ends, "tape", f"{short(first)} taped up to the roof's boards, below {short(second)}")
    if first and second:
        by = joined_by(first, second)
        return Link("W", *ends, by, said(by, short(first), short(second)))
    if not first and not second:
        return None
    if first and sides[1].kind == "ceiling":
        return Link("W", ends[0], None, "lap", f"{short(first)} up to the roof over the ceiling")
    return Link("W", *ends, broken=_none(sides[1] if first else sides[0]))


def _none(assembly: Assembly) -> str:
    return f"no layer of {called(assembly)} serves {WATER}"
