"""The 2015 edition is carried from memory: its questions are asked, and none of its figures decides."""

from pathlib import Path

import pytest

from layerfolio.codes.findings import Verdict
from layerfolio.dossier import compile_dossier, open_project

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery"


@pytest.mark.parametrize("batts", ["184 mm", "20 mm"])
@pytest.mark.parametrize("permeance", ["48", "70"])
def test_nothing_of_it_decides(tmp_path, batts, permeance):
    text = (CHANDLERY / "project.yaml").read_text(encoding="utf-8").replace("set: nbc-2020", "set: nbc-2015")
    text = text.replace("thickness: 184 mm", f"thickness: {batts}").replace("dry: 48 ng", f"dry: {permeance} ng")
    file = tmp_path / "project.yaml"
    file.write_text(text, encoding="utf-8")
    found = [f for f in compile_dossier(open_project(file)).findings if f.id.startswith("nbc-2015/")]
    assert len(found) > 10
    assert {f.mark for f in found} == {"memory"}
    assert not {f.verdict for f in found} & {Verdict.MEETS, Verdict.DOES_NOT_MEET}
