"""Lists of the structural sheets: the code's nailing table, and what moving the bracing panel inside changes."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from layerfolio.catalogue.datum import Origin
from layerfolio.catalogue.files import load, origin
from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class NailRow:
    """One row of a nailing table: `count` nails, or one every `spacing` m (`field` m between the edges of a panel)."""

    detail: str
    nail: str
    count: int | None
    spacing: float | None
    field: float | None
    of_panels: bool  # holds at required braced panels
    clause: str
    origin: Origin
    of_boards: bool = False  # holds where boards stand on studs


@dataclass(frozen=True, slots=True)
class InsideItem:
    """One thing that changes when the panel moves inside; `instead` takes its place, `look` is what to look at."""

    key: str
    item: str
    clause: str
    rule: str
    instead: str
    look: str
    origin: Origin


@cache
def nailing(set_id: str) -> tuple[NailRow, ...]:
    """The rows of the set's nailing table, in its order; empty where the set carries none."""
    path = folder("shared") / "structure" / "nailing.yaml"
    for code in load(path).values():
        edition = code["editions"].get(set_id)
        if edition is not None:
            where = origin({**code["shared"], **edition}, path)
            return tuple(_nail(row, code["clause"], where) for row in code["rows"])
    return ()


def _nail(row: dict[str, Any], clause: str, where: Origin) -> NailRow:
    apart = [row[word] / 1000 if word in row else None for word in ("spacing", "field")]
    words, count = (row["detail"], row["nail"]), row.get("count")
    return NailRow(*words, count, *apart, row.get("panels", False), clause, where, row.get("boards", False))


@cache
def inside_panel(set_id: str) -> tuple[InsideItem, ...]:
    """What changes under that set; an edition that was not read carries the marks of memory. Empty for a set of methods."""
    path = folder("shared") / "structure" / "inside-panel.yaml"
    content, family = load(path), "nbc" if set_id.startswith(("nbc-", "bc-")) else set_id.partition("-")[0]
    found = []
    for one in content["items"]:
        if family in one:
            row = {**content["shared"][family], **one[family]}
            row["place"] = row["clause"]
            if set_id not in ("nbc-2020", "irc-2021"):
                row |= {"mark": "memory", "source": set_id} | ({"source": "nbc-2020"} if set_id == "bc-2024" else {})
            words = (row[word] for word in ("clause", "rule", "instead"))
            found.append(InsideItem(one["key"], one["item"], *words, one["look"], origin(row, path)))
    return tuple(found)
