"""Whatever bytes a file holds, reading ends in a project or in problems, never in anything else."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from workbench import PROJECT, read, write

from layerfolio.problems import ProblemsFound

FOLDER = []
QUICK = settings(deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow])


@pytest.fixture(scope="module", autouse=True)
def one_folder(tmp_path_factory):
    """A fixture of each test would be made anew for every example."""
    FOLDER[:] = [tmp_path_factory.mktemp("anything")]


def read_or_problems(text: str | bytes) -> bool:
    """Whether the text is a project; any other exception is a failure of the test that calls."""
    path = write(FOLDER[0], text)
    try:
        read(path)
    except ProblemsFound as found:
        assert found.problems
        for one in found.problems:
            assert one.message and str(one).isprintable(), str(one)
            assert one.line >= 0 and one.column >= 0
        return False
    return True


@QUICK
@given(st.binary(max_size=400))
def test_any_bytes(data):
    read_or_problems(data)


@QUICK
@given(st.text(max_size=300))
def test_any_text(text):
    read_or_problems(text.encode("utf-8", "surrogatepass"))


@QUICK
@given(st.text(alphabet="ab:-[]{}&*!|>'\"%@#,? \n\t~<0", max_size=80))
def test_any_yaml_looking_text(text):
    read_or_problems(text)


@QUICK
@given(st.integers(0, len(PROJECT)), st.integers(0, 40), st.text(alphabet="ab:-[]{}&*!'\"% \n~0,.mW", max_size=6))
def test_the_contract_example_with_a_piece_replaced(at, length, piece):
    read_or_problems(PROJECT[:at] + piece + PROJECT[at + length :])


VALUES = st.recursive(
    st.sampled_from(
        ["38 mm", "38", "~", "wall", "''", "20 %", "true", "-1", "1e400 m", "{}", "[]", "dry", "2027-02-30"]
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3).map(lambda items: "[" + ", ".join(items) + "]"),
        st.dictionaries(
            st.sampled_from(["dry", "value", "unit", "values", "at_thickness", "name", "layers"]), inner, max_size=3
        ).map(lambda items: "{" + ", ".join(f"{k}: {v}" for k, v in items.items()) + "}"),
    ),
    max_leaves=6,
)
LINES = [n for n, line in enumerate(PROJECT.splitlines()) if ": " in line and "- {" not in line]


@settings(QUICK, max_examples=300)
@given(st.sampled_from(LINES), VALUES)
def test_any_value_under_any_key(number, value):
    lines = PROJECT.splitlines()
    lines[number] = lines[number].split(": ")[0] + ": " + value
    read_or_problems("\n".join(lines) + "\n")


@QUICK
@given(
    st.lists(
        st.tuples(
            st.sampled_from(
                [
                    "material",
                    "membrane",
                    "cavity",
                    "name",
                    "thickness",
                    "framing",
                    "battens",
                    "openings",
                    "permeance",
                    "resistance",
                    "serves",
                    "evidence",
                ]
            ),
            VALUES,
        ),
        max_size=5,
        unique_by=lambda pair: pair[0],
    )
)
def test_any_layer(pairs):
    layer = "{" + ", ".join(f"{key}: {value}" for key, value in pairs) + "}"
    read_or_problems(PROJECT.replace("{material: larch-board, thickness: 19 mm}", layer))
