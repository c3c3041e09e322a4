"""Files that hold only what differs from another."""

import hashlib
import os

import pytest
from workbench import PROJECT, problems, read, write

from layerfolio.reading.variants import differences


def test_maps_merge_lists_replace_null_removes(tmp_path):
    write(tmp_path, PROJECT)
    text = "variant_of: project.yaml\nproject: {units: customary, owner: ~}\ncode: {amendments: ~}\n"
    text += "assemblies:\n  W1: {area: 60 m2, layers: [{material: spruce, thickness: 4 in}]}\n"
    project = read(write(tmp_path, text, "customary.yaml")).project
    assert project.variant_of == "project.yaml"
    assert (project.project.units, project.project.owner, project.project.title) == (
        "customary",
        None,
        "Tern Point chandlery",
    )
    wall = project.assemblies["W1"]
    assert wall.area.value == 60 and len(wall.layers) == 1 and wall.faces == "outside air"


def test_a_whole_map_can_be_removed(tmp_path):
    write(tmp_path, PROJECT)
    text = (
        "variant_of: project.yaml\nindoor: null\nassemblies: {W1: null, F1: {kind: slab, layers: [{membrane: foil}]}}\n"
    )
    project = read(write(tmp_path, text, "v.yaml")).project
    assert list(project.assemblies) == ["F1"] and project.indoor.temperature is None


def test_chain_and_checksum_in_chain_order(tmp_path):
    write(tmp_path, PROJECT)
    write(tmp_path, "variant_of: project.yaml\nproject: {revision: B, owner: second}\n", "b.yaml")
    path = write(tmp_path, "variant_of: b.yaml\nproject: {revision: C}\n", "c.yaml")
    found = read(path)
    assert (found.project.project.revision, found.project.project.owner) == ("C", "second")
    assert [one.name for one in found.files] == ["c.yaml", "b.yaml", "project.yaml"]
    assert found.input_sha256 == hashlib.sha256(b"".join(one.read_bytes() for one in found.files)).hexdigest()


def test_a_mistake_points_at_the_file_that_states_it(tmp_path):
    base = write(tmp_path, PROJECT.replace("area: 58 m2", "area: 58"))
    path = write(tmp_path, "variant_of: project.yaml\nproject:\n  date: 2027-02-31\n", "v.yaml")
    found = problems(path)
    assert [(one.file, one.line, one.column, one.path) for one in found] == [
        (str(base), 52, 11, "assemblies.W1.area"),
        (str(path), 3, 9, "project.date"),
    ]


def test_a_mistake_that_the_variant_mends_is_none(tmp_path):
    write(tmp_path, PROJECT.replace("area: 58 m2", "area: 58"))
    assert problems(write(tmp_path, "variant_of: project.yaml\nassemblies: {W1: {area: 58 m2}}\n", "v.yaml")) == ()


def test_loops(tmp_path):
    (found,) = problems(write(tmp_path, "variant_of: project.yaml\n"))
    assert "go round in a loop" in found.message and (found.line, found.column) == (1, 13)
    write(tmp_path, "variant_of: b.yaml\n", "a.yaml")
    path = write(tmp_path, "x: 1\nvariant_of: ./a.yaml\n", "b.yaml")
    (found,) = problems(path)
    assert "go round in a loop" in found.message and found.file.endswith("a.yaml")


@pytest.mark.parametrize(
    ("stated", "message"),
    [
        ("none.yaml", 'there is no file "none.yaml"'),
        ("../outside.yaml", "leaves the project's folder"),
        ("/etc/hostname", "leaves the project's folder"),
        ("C:/x.yaml", "leaves the project's folder"),
        (r"..\outside.yaml", "leaves the project's folder"),
        ("link.yaml", "leaves the project's folder"),
        ("linked/outside.yaml", "leaves the project's folder"),
        ("sub", "there is no file"),
        (".", "leaves the project's folder"),
        ("[a, b]", "the name of a file is expected here"),
        ("file:///etc/hostname", "leaves the project's folder"),
        ("x" * 300, "there is no file"),
        ('"a\\0b"', "leaves the project's folder"),
    ],
)
def test_paths_that_are_refused(tmp_path, stated, message):
    folder = tmp_path / "project"
    (folder / "sub").mkdir(parents=True)
    outside = write(tmp_path, PROJECT, "outside.yaml")
    os.symlink(outside, folder / "link.yaml")
    os.symlink(tmp_path, folder / "linked")
    (found,) = problems(write(folder, f"variant_of: {stated}\n"))
    assert message in found.message and (found.line, found.column) == (1, 13)


def test_paths_resolve_beside_the_file_that_states_them(tmp_path):
    evidence = "materials: {clay: {source: x, evidence: [{file: sheet.pdf}]}}\n"
    rest = "layerfolio: 1\nproject: {title: t}\ncode: {set: iso}\n"
    rest += "assemblies: {W1: {kind: wall, layers: [{material: clay}]}}\n"
    write(tmp_path, rest + evidence, "base/project.yaml")
    write(tmp_path, b"%PDF-", "base/sheet.pdf")
    found = read(write(tmp_path, "variant_of: base/project.yaml\n", "v.yaml"))
    assert found.cautions == ()
    assert found.project.materials["clay"].evidence[0].file == "base/sheet.pdf"


def test_evidence_may_not_lead_out_by_a_link(tmp_path):
    folder = tmp_path / "project"
    write(tmp_path, b"%PDF-", "secret.pdf")
    folder.mkdir()
    os.symlink(tmp_path / "secret.pdf", folder / "sheet.pdf")
    (found,) = problems(write(folder, PROJECT.replace("data-sheets/hemp-batt.pdf", "sheet.pdf")))
    assert "leaves the project's folder" in found.message


def test_a_long_chain_ends(tmp_path):
    for n in range(30):
        write(tmp_path, f"variant_of: {n + 1}.yaml\n", f"{n}.yaml")
    (found,) = problems(tmp_path / "0.yaml")
    assert "more than 20 files" in found.message


def test_what_a_variant_says_otherwise(tmp_path):
    write(tmp_path, PROJECT)
    base = read(tmp_path / "project.yaml").project
    text = f"layerfolio: 1\nvariant_of: project.yaml\nproject: {{title: {base.project.title}, revision: B, permit: ~}}\n"
    text += "indoor: ~\n"
    text += "climate: {cooling_degree_days: 12 K.d}\nassemblies: {W1: {layers: [{membrane: foil}]}, W9: ~}\n"
    told = differences(write(tmp_path, text, "v.yaml"))
    assert told == ("project.revision", "indoor", "climate.cooling_degree_days", "assemblies.W1.layers")
    assert differences(tmp_path / "project.yaml") == ()


def test_what_differs_is_told_against_the_next_base(tmp_path):
    write(tmp_path, PROJECT)
    write(tmp_path, "variant_of: project.yaml\nproject: {revision: B, owner: second}\n", "b.yaml")
    path = write(tmp_path, "variant_of: b.yaml\nproject: {revision: C, owner: second}\n", "c.yaml")
    assert differences(path) == ("project.revision",)
