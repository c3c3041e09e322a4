"""The evidence register: every document the package rests on, what it proves, and what is still missing."""

from collections.abc import Iterator

from layerfolio.catalogue.datum import Document
from layerfolio.codes.register_types import EvidenceRow, Register, State
from layerfolio.sheets.blocks import Block, Column, Head, Paragraph, Row, Sheet, Space, Table, VerdictCell
from layerfolio.sheets.desk import EVIDENCE, Desk
from layerfolio.sheets.figures import NONE, NOT_GIVEN
from layerfolio.sheets.markup import plain

WIDTHS = (15, 46, 30, 26, 40, 23)
"""The whole date on which a document ends needs 26 for edition and validity; the others give a little of theirs."""
HEADS = (("No.", ""), ("Document", "state"), ("Issuer", ""), ("Edition,", "valid to"), ("Proves", ""), ("Used on", "sheets"))
TITLE = "Evidence register"
FILES = (
    "These files lie beside the project file and are handed in beside this set, which does not hold them; their check sums "
    "(SHA-256, the first sixteen digits):"
)
RESTING = (
    "a line that meets says so where it rests on one: on heat for its insulation, on vapour for its control layer, on a balance "
    "of moisture for any layer, the humidity and the climate, on a line of bracing for its design and the figures of the place, "
    "on an opening for itself; and so does each line that waits for one."
)
NONE_OPEN = "None is missing and none has expired."
STATES = {State.ATTACHED: "beside this set", State.NAMED: "named, not beside this set", State.MISSING: "missing"}


def evidence_sheet(desk: Desk, register: Register) -> Sheet:
    """Sheet E1, of one page or more."""
    columns = tuple(Column(title, unit, width) for (title, unit), width in zip(HEADS, WIDTHS, strict=True))
    explained, seen = _explained_on(desk), {}
    rows = tuple(_row(one, explained, seen) for one in register.rows)
    head = Head(EVIDENCE, TITLE, "documents that prove a figure, and those still missing")
    table = (Table(columns, rows, top_rule=False),) if rows else (Paragraph("No layer and no opening asks for a document."),)
    return Sheet(EVIDENCE, TITLE, "—", (head, *table, Space(2), *_foot(register)))


def _explained_on(desk: Desk) -> dict[str, list[str]]:
    """Numbers of the explanation sheets by the material of the layer they explain."""
    found: dict[str, list[str]] = {}
    for number, one in enumerate(desk.dossier.explanations, 1):
        layer = desk.dossier.assemblies[one.assembly].layer(one.layer)
        found.setdefault(layer.material or layer.title, []).append(f"X{number}")
    return found


def _row(one: EvidenceRow, explained: dict[str, list[str]], seen: dict[tuple, str]) -> Row:
    """`seen`: the rows that have said already what such a document shows, by what they say."""
    title = plain(one.title)
    state = _state(one)
    used = (*one.used_on, *(explained.get(one.subject, ()) if one.kind == "material" else ()))
    document = f"**{title}**\n_{state}_" if one.waits else f"{title}\n_{state}_"
    cells = (f"**{one.number}**", document, *_paper(one.document), plain(_proves(one)), plain(", ".join(used)) or NONE)
    return Row(cells, after=_after(one, seen))


def _proves(one: EvidenceRow) -> str:
    """What it proves; of a missing document without a figure in use, what it has to show."""
    return one.proves or (one.shows if one.state is State.MISSING else "") or NONE


def _state(one: EvidenceRow) -> str:
    if one.state is State.EXPIRED:
        return f"{STATES[State.ATTACHED if one.sha256 else State.NAMED]}; expired"
    return STATES[one.state]


def _paper(document: Document | None) -> tuple[str, str]:
    """Issuer, then edition and end of validity."""
    if document is None or not (document.number or document.issuer or document.edition or document.file):
        return "to be named", NONE
    end = f"to {document.expires}" if document.expires else "no end stated"
    return plain(document.issuer or NOT_GIVEN), f"{plain(document.edition or NOT_GIVEN)}\n{plain(end)}"


def _after(one: EvidenceRow, seen: dict[tuple, str]) -> VerdictCell | str:
    """What is left to do with the document, what it has to show, and what its label is expected to name; a row before that
    says the same stands for the last two.
    """
    words = " ".join(filter(None, (plain(one.note), *_expected(one, seen))))
    return VerdictCell(one.verdict, words) if one.verdict else words


def _expected(one: EvidenceRow, seen: dict[tuple, str]) -> Iterator[str]:
    if not one.shows:
        return
    shows = one.shows if one.state is State.MISSING and one.proves else ""
    key = (shows, one.expected)
    if (before := seen.setdefault(key, one.number)) != one.number:
        yield f"To show and expected: as {before}." if shows else f"Expected: as {before}."
        return
    where = f" ({one.region})" if one.region else ""
    if shows:
        yield f"To show: {plain(shows)}."
    yield f"Expected{where}: {plain(one.expected_words)}." if one.expected else f"No standard is recorded here{where}."


def _foot(register: Register) -> list[Block]:
    rows = register.rows
    blocks: list[Block] = [Paragraph(f"**Beside this set {_beside(rows)} of {len(rows)}.** {_counted(register)}")]
    blocks.append(Paragraph(
        "A document proves only what its column says, for the thickness and the edition it names. A figure beside a missing "
        "document is the one in use here. What is expected is the standard that a label, mark or report names in this country; "
        "the authority may accept another. † is named from knowledge of the trade and was not re-read: confirm it."
    ))  # fmt: skip
    files = [one for one in rows if one.sha256]
    if files:
        blocks += [Paragraph(FILES), _sums(files)]
    return blocks


def _beside(rows: tuple[EvidenceRow, ...]) -> int:
    return sum(1 for one in rows if one.sha256)


def _counted(register: Register) -> str:
    """How many are missing, named alone or out of date, and on which day."""
    counts = {state: [x for x in register.rows if x.state is state] for state in State}
    date = f" on the date of this set, {register.date}" if register.date else ""
    said = ((State.MISSING, "missing"), (State.NAMED, "named without a file"), (State.EXPIRED, f"expired{date}"))
    parts = [f"{len(counts[state])} {word}" for state, word in said if counts[state]]
    words = f"{', '.join(parts)}: {RESTING}" if parts else NONE_OPEN
    return words if register.date else f"{words} The project file states no date, so no validity could be looked at."


def _sums(rows: list[EvidenceRow]) -> Table:
    columns = (Column("No.", width=15), Column("File", width=90), Column("Check sum"))
    made = [Row((one.number, f"`{_mono(one)}`", f"`{one.sum_in_groups} …`")) for one in rows]
    return Table(columns, tuple(made), extra=0.0)


def _mono(one: EvidenceRow) -> str:
    return plain(one.document.file if one.document else "").replace("`", "")
