"""Documents that a project file names: test reports, data sheets, listings."""

from __future__ import annotations

from datetime import date
from os.path import isfile

from layerfolio.reading.files import inside
from layerfolio.reading.groups import ListOf, Nested
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.scalars import Day, Line
from layerfolio.reading.tree import Node


class Document(Line):
    """A file below the project's folder: stated beside the file that names it, kept relative to that folder."""

    def __init__(self) -> None:
        super().__init__("data-sheets/hemp-batt.pdf", 300)

    def read(self, node: Node, path: str, report: Report) -> str | None:
        stated = super().read(node, path, report)
        if stated is None:
            return None
        found = inside(stated, report.folder(node.place), report.root)
        if found is None:
            message = f"the path {quoted(stated)} leaves the project's folder: copy the file into it"
            report.problem(node.place, path, message, self.example)
            return None
        if not isfile(found):
            report.caution(path, f"the file {quoted(stated)} is not there")
        return found.relative_to(report.root.resolve()).as_posix()


class Evidence(Record):
    """A document that proves a figure or a claim."""

    file: str | None = key(Document(), "PDF below the project's folder")
    title: str | None = key(Line("Test report, vapour permeance"), "what the document is called")
    number: str | None = key(Line("HB-1", 120), "number of the report, listing or data sheet")
    issuer: str | None = key(Line("testing institute"), "who issued it")
    edition: str | None = key(Line("2026", 120), "edition or date of issue")
    expires: date | None = key(Day(), "last day on which it is valid")
    proves: tuple[str, ...] = key(
        ListOf(Line("conductivity", 120), single=True),
        "what it proves. Understood: permeance (or permeability, vapour, equivalent air layer), air permeance (or air "
        "leakage), bracing, air; other words, conductivity too, print as they stand",
        default=(),
    )


def evidence() -> ListOf:
    """Reader of the documents of one layer or material."""
    return ListOf(Nested(Evidence), "[{file: data-sheets/hemp-batt.pdf, number: HB-1}]", single=True)
