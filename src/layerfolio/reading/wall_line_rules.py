"""Rules between the keys of a line of bracing, and between lines and the walls they stand in."""

from itertools import pairwise

from layerfolio.reading.envelope_rules import _below, _meant
from layerfolio.reading.layer_rules import differs
from layerfolio.reading.report import Report, did_you_mean, join, quoted
from layerfolio.reading.schema import Project
from layerfolio.reading.tree import Mapping, Node
from layerfolio.reading.wall_lines import FASTENERS, SUPPORTS, WallLine

SLACK = 1e-6
"""Metres that rounding may leave between sizes that are meant to meet."""
UPRIGHT = ("wall", "foundation-wall")


def check_line(line: WallLine, node: Mapping, path: str, report: Report) -> None:
    """Report what does not fit together in one line."""
    _agree(line, node, path, report)
    _fastening(line, node, path, report)
    if line.length is None:
        return
    for word in ("panels", "openings"):
        _inside(line, word, node, path, report)
    _together(line, node, path, report)
    _heights(line, node, path, report)


def _agree(line: WallLine, node: Mapping, path: str, report: Report) -> None:
    """Storeys as a number and in words say the same."""
    if line.supports and line.storeys_above is not None and SUPPORTS.index(line.supports) != line.storeys_above:
        words = f"storeys_above says {line.storeys_above}, supports says {quoted(line.supports)}"
        right = SUPPORTS[min(line.storeys_above, len(SUPPORTS) - 1)]
        report.problem(node.items["supports"].place, join(path, "supports"), words, f"supports: {right}")


def _fastening(line: WallLine, node: Mapping, path: str, report: Report) -> None:
    one = line.panel_fastening
    if one is None:
        return
    stated = [word for word in FASTENERS if word in one.stated]
    where, inner = join(path, "panel_fastening"), node.items["panel_fastening"]
    if len(stated) > 1:
        words = f"{' and '.join(stated)} are stated: what holds the panels is one of them"
        report.problem(inner.keys[stated[1]], join(where, stated[1]), words, "nail: 63 mm x 3.25 mm")
    if one.edge and one.field and one.edge.value > one.field.value + SLACK:
        words = f"the edges at {one.edge.text} are fastened farther apart than the field, {one.field.text}: is that meant?"
        report.caution(join(where, "edge"), words)


def _sized(line: WallLine, word: str, node: Mapping) -> list[tuple[float, float, str, Mapping, int]]:
    """Panels or openings with start and size: (at, size, text of the size, node, number); NaN for an unknown start."""
    items, found = node.items.get(word), getattr(line, word)
    if not found or len(items.items) != len(found):
        return []  # one of them has a mistake of its own
    rows = []
    for n, one in enumerate(found):
        size = one.length if word == "panels" else one.along
        if size is not None:
            rows.append((one.at.value if one.at else float("nan"), size.value, size.text, items.items[n], n))
    return rows


def _inside(line: WallLine, word: str, node: Mapping, path: str, report: Report) -> None:
    """Each lies within the line, all know where they begin or none does, and none lies over another."""
    noun, rows, limit = word[:-1], _sized(line, word, node), line.length
    known = [row for row in rows if row[0] == row[0]]
    for at, size, text, inner, n in rows:
        where, key = f"{join(path, word)}[{n}]", "width" if "width" in inner.items else "length"
        if size > limit.value + SLACK:
            words = f"the {noun} of {text} is longer than the line, {limit.text}"
            report.problem(inner.items[key].place, join(where, key), words, f"{key}: {limit.text}")
        elif at + size > limit.value + SLACK:
            words = f"the {noun} ends {at + size:.4g} m from the start of the line, which is {limit.text} long"
            report.problem(inner.items["at"].place, join(where, "at"), words, f"at: {_m(limit.value - size)}")
        elif known and "at" not in inner.items and word == "panels":
            report.problem(inner.holder, join(where, "at"), f"at is missing: other {word} of the line state it", "at: 1.2 m")
    _apart(known, noun, join(path, word), report)


def _apart(known: list, noun: str, path: str, report: Report) -> None:
    ordered = sorted(known, key=lambda row: (row[0], row[4]))
    for before, after in pairwise(ordered):
        end = before[0] + before[1]
        if end > after[0] + SLACK:
            words = f"this {noun} begins before {noun} {before[4] + 1} ends, {end:.4g} m from the start of the line"
            place = after[3].items["at"].place
            report.problem(place, f"{path}[{after[4]}].at", words, f"at: {_m(end)}")


def _together(line: WallLine, node: Mapping, path: str, report: Report) -> None:
    """All panels fit into the line, beside its openings; a panel with an opening in it is none."""
    panels, openings = _sized(line, "panels", node), _sized(line, "openings", node)
    whole, cut = sum(row[1] for row in panels), sum(row[1] for row in openings)
    fit = all(row[1] <= line.length.value + SLACK for row in (*panels, *openings))
    if fit and whole > line.length.value + SLACK:
        words = f"the panels are {_m(whole)} long together, the line {line.length.text}"
        report.problem(node.keys["panels"], join(path, "panels"), words, "panels that fit into the line")
    elif fit and panels and whole + cut > line.length.value + SLACK:
        words = f"panels of {_m(whole)} and openings of {_m(cut)} are more than the line, {line.length.text}"
        report.problem(node.keys["openings"], join(path, "openings"), words, "panels and openings that fit into the line")
    for at, size, _, inner, n in openings if fit else ():
        for start, length, _, _, number in panels:
            if at < start + length - SLACK and start < at + size - SLACK:
                words = f"this opening lies in panel {number + 1}: a panel is unbroken from plate to plate"
                report.problem(inner.items["at"].place, f"{join(path, 'openings')}[{n}].at", words, f"at: {_m(start + length)}")


def _heights(line: WallLine, node: Mapping, path: str, report: Report) -> None:
    """Panels and openings are no taller than the wall."""
    if line.height is None:
        return
    for word in ("panels", "openings"):
        items = node.items.get(word)
        for n, one in enumerate(getattr(line, word)):
            if len(items.items) != len(getattr(line, word)) or one.height is None:
                continue
            sill = getattr(one, "sill", None)
            top = one.height.value + (sill.value if sill else 0)
            if top > line.height.value + SLACK:
                reach = f"{one.height.text} over a sill of {sill.text}" if sill else one.height.text
                words = f"{reach} is taller than the wall, {line.height.text}"
                place, where = items.items[n].items["height"].place, f"{join(path, word)}[{n}].height"
                fits = line.height.value - (sill.value if sill else 0)
                report.problem(place, where, words, f"height: {_m(fits)}" if fits > 0 else "sill: 0 m")


def check_wall_lines(project: Project, node: Mapping, report: Report) -> None:
    """Report lines that do not fit the rest of the file: their names, their assemblies, the layer of their panels."""
    walls = _below(node, "assemblies")
    _names(project, node, list(walls), report)
    for name, line in project.wall_lines.items():
        where, stated = f"wall_lines.{name}", node.items["wall_lines"].items[name].items
        if line.assembly and walls and line.assembly not in walls:
            words = f"there is no assembly {quoted(line.assembly)}{_meant(line.assembly, list(walls))}"
            report.problem(stated["assembly"].place, join(where, "assembly"), words, f"assembly: {next(iter(walls))}")
            continue
        holder = project.assemblies.get(line.assembly)
        if holder is None:
            continue
        if holder.kind and holder.kind not in UPRIGHT:
            words = f"a {holder.kind} holds no line of bracing"
            report.problem(stated["assembly"].place, join(where, "assembly"), words, "assembly: W1")
        else:
            _board(line, holder, stated, where, report)


def _board(line: WallLine, holder, stated: dict[str, Node], where: str, report: Report) -> None:
    """The board is a layer of the wall, and its thickness that layer's."""
    if line.panel is None:
        return
    names = [one.name for one in holder.layers]
    wanted, inner = line.panel.material, stated["panel"].items
    if wanted and names and wanted not in names:
        words = f"no layer of {line.assembly} is called {quoted(wanted)}{did_you_mean(wanted, names)}"
        report.problem(inner["material"].place, join(where, "panel.material"), words, f"material: {names[-1]}")
        return
    layers = [one for one in holder.layers if (one.name == wanted if wanted else "bracing" in one.serves)]
    own = line.panel.thickness
    if own and len(layers) == 1 and layers[0].thickness and differs(own.value, layers[0].thickness.value):
        words = f"the panel is {own.text} thick, its layer {quoted(layers[0].name)} {layers[0].thickness.text}"
        report.problem(inner["thickness"].place, join(where, "panel.thickness"), words, f"thickness: {layers[0].thickness.text}")


def _names(project: Project, node: Mapping, walls: list[str], report: Report) -> None:
    """Findings point at assemblies, openings and lines by name: no two may be alike, in capitals or not."""
    taken = {one.casefold(): ("assembly", one) for one in walls}
    taken |= {one.casefold(): ("opening", one) for one in project.openings}
    for name in project.wall_lines:
        what, first = taken.setdefault(name.casefold(), ("line", name))
        if what != "line" or first != name:
            clash = f"{quoted(name)} is the name of an {what} already: take another"
            words = f"{quoted(name)} and {quoted(first)} differ in capitals only" if what == "line" else clash
            report.problem(node.items["wall_lines"].keys[name], f"wall_lines.{name}", words, "L1")


def _m(value: float) -> str:
    return f"{round(value, 4):g} m"
