"""Design criteria: code, climate, loads, room, building, assumptions, and the documents that stand outside the package."""

import re
from itertools import groupby

from layerfolio.codes.document_words import USUAL
from layerfolio.codes.left_to_do import left_to_do
from layerfolio.codes.wording import sentence
from layerfolio.sheets.blocks import Column, Head, Row, Sheet, Table
from layerfolio.sheets.criteria_rows import (
    Rows,
    american_rows,
    building_rows,
    climate_rows,
    code_rows,
    inside_rows,
    load_rows,
)  # fmt: skip
from layerfolio.sheets.desk import BUILDING, CRITERIA, RECORD, SOURCES, Desk
from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.sheets.markup import plain
from layerfolio.sheets.stated_answers import stated_answers

MOST_KEYS = 20  # of a variant that are named
ANNOUNCED = "announced, not given"
_SOIL = re.compile(r"\b(soil|geotechnical|borehole|ground investigation)", re.IGNORECASE)


def criteria(desk: Desk) -> Sheet:
    """Sheet C2. Every criterion with its source; what the project file does not give says so."""
    american = desk.dossier.project.code.set.startswith("irc-")
    asked = _asked(desk)
    blocks = desk.templates.blocks(
        "criteria",
        head=Head("", "Design criteria", "figures, sources, documents"),
        variant=_variant(desk),
        code=_table("Criterion", code_rows(desk)),
        climate=_table("Criterion", climate_rows(desk)),
        american=_table("Criterion", american_rows(desk)) if american else "",
        loads=_table("Criterion", load_rows(desk)),
        inside=_table("Criterion", inside_rows(desk)),
        building=_table("Fact", building_rows(desk)),
        stated=stated_answers(desk) or "",
        assumptions=_table("What is assumed", _assumptions(desk), "As", "Where it stands"),
        documents=_table("Document", _documents(desk), "For", "State", (60, 36)),
        asked=asked if asked.rows else "",
    )
    return Sheet(CRITERIA, "Design criteria", "—", blocks)


def _table(what: str, rows: Rows, value: str = "Value", source: str = "Source", widths: tuple = (68, 62)) -> Table:
    columns = (Column(what, width=widths[0]), Column(value, width=widths[1]), Column(source))
    return Table(columns, tuple(Row(tuple(map(plain, row))) for row in rows))


def _variant(desk: Desk) -> str:
    """What the project file of a variant says otherwise than its base, at most so many keys."""
    base, files = desk.dossier.project.variant_of, desk.dossier.files
    if not base or not files:
        return ""
    from layerfolio.reading.variants import differences

    told = differences(files[0])
    more = f", and {len(told) - MOST_KEYS} more" if len(told) > MOST_KEYS else ""
    words = ", ".join(told[:MOST_KEYS]) or "nothing"
    return f"This project file is a variant of {base}. It states otherwise: {words}{more}."


def _assumptions(desk: Desk) -> Rows:
    """What the calculations take for granted, in one line each; the whole list is on the assumptions sheet."""
    found = desk.dossier
    choices = len({(one.text, one.because) for assembly in found.assemblies.values() for one in assembly.choices})
    methods = ", ".join(dict.fromkeys(one.method for one in found.condensation.values() if one.assembly.faces != "ground"))
    rows = [
        ("Air films", "by kind, face and direction of heat", SOURCES),
        ("Choices where the project file leaves one open", f"{choices}, each with its reason", SOURCES),
        ("Moisture method", methods or "none: no assembly faces air", "sheets that end in -V" if methods else ""),
        ("Figures without a source in the project file", "taken as stated there, marked", SOURCES),
    ]
    if found.openings:
        rows.append(("Areas of assemblies", _areas(desk), "project file"))
    return rows


def _areas(desk: Desk) -> str:
    """Which stated areas hold their openings."""
    project = desk.dossier.project
    own = {name: one.area_includes_openings for name, one in project.assemblies.items()}
    gross = [name for name, said in own.items() if (project.area_includes_openings if said is None else said)]
    return f"with openings: {', '.join(gross)}; net areas on {BUILDING}" if gross else "without openings"


def _documents(desk: Desk) -> Rows:
    """Usual papers beside the package, then whatever else the project file names. A soil report is no design, whatever it is
    for: it stands by itself.
    """
    given = list(desk.dossier.project.documents)
    rows, used = [], []
    for words, claims in USUAL:
        named = [one for one in given if set(_claims(one)) & set(claims) and not _SOIL.search(_title(one))]
        used += named
        rows.append((words, ", ".join(dict.fromkeys(c for one in named for c in _claims(one))) or "the application",
                     "; ".join(map(_named, named)) or f"{NOT_GIVEN}: from others"))  # fmt: skip
    for one in (other for other in given if other not in used):
        state = _named(one).removeprefix(f"{_title(one)}: ")
        rows.append((_title(one), ", ".join(_claims(one)) or "not said", state))
    return rows


def _claims(document: object) -> tuple[str, ...]:
    return tuple(str(one) for one in getattr(document, "for_", None) or ())


def _title(document: object) -> str:
    named = (getattr(document, key, None) for key in ("title", "number", "file"))
    return next((str(one) for one in named if one), "no name")


def _named(document: object) -> str:
    """A document as one can find it again; one without a number is announced, not given."""
    parts = [str(one) for key in ("number", "issuer", "edition") if (one := getattr(document, key, None))]
    if getattr(document, "number", None) is None:
        file = getattr(document, "file", None)
        return f"{_title(document)}: {f'file {file}, its number not stated' if file else ANNOUNCED}"
    expires = getattr(document, "expires", None)
    return ", ".join(dict.fromkeys((_title(document), *parts))) + (f", valid to {expires}" if expires else "")


def _asked(desk: Desk) -> Table:
    """What each open line of the record leaves to do: keys of the project file first, equal wishes once."""
    rows: list[Row] = []
    for kind, group in groupby(left_to_do(desk.dossier.findings), key=lambda one: one.kind):
        rows.append(Row((f"**{sentence(kind)}**",), head=True))
        rows += [Row((plain(sentence(one.words)), plain(", ".join(_line(*line) for line in one.lines)))) for one in group]
    return Table((Column("What is left to do", width=140), Column(f"Lines of {RECORD}")), tuple(rows))


def _line(number: int, subject: str | None) -> str:
    return f"{number} ({subject})" if subject else str(number)
