"""A report decides on a permeance only when it can be found again: a number, and who issued it or which edition."""

from pathlib import Path

import pytest

from layerfolio.codes.findings import Verdict
from layerfolio.dossier import compile_dossier, open_project

PROJECT = Path(__file__).parents[2] / "examples" / "chandlery" / "project.yaml"


@pytest.mark.parametrize(
    ("said", "verdict"),
    [
        ("number: P-15-2, issuer: Test House", Verdict.MEETS),
        ("number: P-15-2, edition: 2026", Verdict.MEETS),
        ("number: P-15-2", Verdict.NEEDS_EVIDENCE),
        ("title: trust me", Verdict.NEEDS_EVIDENCE),
        ("issuer: Test House, edition: 2026", Verdict.NEEDS_EVIDENCE),
    ],
)
def test_a_report_that_nobody_can_find_proves_nothing(tmp_path, said, verdict):
    text = PROJECT.read_text(encoding="utf-8")
    start = text.index("      - {file: data-sheets/panel-15.pdf")
    end = text.index("proves: [permeance, conductivity]}") + len("proves: [permeance, conductivity]}")
    file = tmp_path / "project.yaml"
    file.write_text(f"{text[:start]}      - {{{said}, proves: [permeance]}}{text[end:]}", encoding="utf-8")
    found = compile_dossier(open_project(file)).findings
    assert [f.verdict for f in found if f.assembly == "W1" and "9.25.4.2" in f.clause] == [verdict]
