"""The evidence register: a row for everything that wants a document, its state on the project's date, and who waits for it."""

import hashlib
import re
from datetime import date
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from layerfolio.assembly.resolve import resolve
from layerfolio.catalogue import materials
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.register import as_data, register, waits_for, with_rows
from layerfolio.codes.register_types import BUILDING, OPENINGS, RECORD, State
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets import desk

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*/*.yaml")) + sorted((ROOT / "shared" / "starters").glob("*/project.yaml"))
TEXT = b"%PDF-1.4 invented\n"

PROJECT = """
layerfolio: 1
project: {{title: Shed, {date}}}
code: {{set: {set_id}, zone: "6"}}
materials:
  own-batt:
    title: Own batts
    conductivity: 0.040 W/(m.K)
    vapour_resistance_factor: 2
    source: report B-1
    evidence: [{evidence}]
assemblies:
  W1: {{kind: wall, title: Wall, area: 30 m2, layers: [
    {{material: osb, thickness: 15 mm, serves: [bracing, vapour control]}}, {{material: own-batt, thickness: 140 mm,
      framing: {{member: stud, material: spruce, width: 38 mm, spacing: 600 mm, fraction: 20 %}}}},
    {{membrane: inner sheet, equivalent_air_layer: 5 m}}, {{material: gypsum-board, thickness: 12.7 mm}}]}}
{more}
"""
EVIDENCE = "{file: b.pdf, number: B-1, issuer: Skerry Test House, edition: 2026, proves: [conductivity]%s}"


def opened(folder, *, set_id="nbc-2020", date="date: 2027-02-03", evidence="", more="", file=True):
    path = folder / "project.yaml"
    path.write_text(PROJECT.format(set_id=set_id, date=date, evidence=evidence, more=more), encoding="utf-8")
    if file:
        (folder / "b.pdf").write_bytes(TEXT)
    return open_project(path)


def made(folder, findings=(), **how):
    loaded = opened(folder, **how)
    assemblies, _ = resolve(loaded.project)
    return register(loaded.project, assemblies, {}, findings, loaded.folder)


def batt(found):
    (row,) = found.of("own-batt")
    return row


def finding(name="W1", question="A question", next_step="", reason="", given="", id="nbc-2020/9.1/test", **more):
    return Finding(
        id=id, assembly=name, edition="", clause="9.1", topic="vapour", question=question, path="prescriptive",
        verdict=Verdict.NEEDS_EVIDENCE, asked="", given=given, provided=None, limit=None, reason=reason,
        next_step=next_step, **more,
    )  # fmt: skip


class TestStates:
    def test_attached(self, tmp_path):
        row = batt(made(tmp_path, evidence=EVIDENCE % ""))
        assert (row.state, row.verdict, row.waits) == (State.ATTACHED, None, False)
        assert row.proves == "conductivity 0.040 W/(m·K)"

    def test_the_check_sum_is_that_of_the_file(self, tmp_path):
        row = batt(made(tmp_path, evidence=EVIDENCE % ""))
        assert row.sha256 == hashlib.sha256(TEXT).hexdigest()
        assert row.sum_in_groups.replace(" ", "") == row.sha256[:16]
        assert re.fullmatch(r"([0-9a-f]{4} ){3}[0-9a-f]{4}", row.sum_in_groups)

    def test_named_and_absent_on_disk(self, tmp_path):
        row = batt(made(tmp_path, evidence=EVIDENCE % "", file=False))
        assert (row.state, row.verdict, row.sha256) == (State.NAMED, Verdict.NEEDS_EVIDENCE, "")

    def test_named_without_a_file(self, tmp_path):
        row = batt(made(tmp_path, evidence=(EVIDENCE % "").replace("file: b.pdf, ", "")))
        assert row.state is State.NAMED and "No file is named" in row.note

    def test_missing_says_whose_figure_is_in_use(self, tmp_path):
        row = batt(made(tmp_path))
        assert (row.state, row.verdict, row.document) == (State.MISSING, Verdict.NEEDS_EVIDENCE, None)
        assert "report B-1" in row.note
        (default,) = made(tmp_path, set_id="iso").of("osb")
        assert "default" in default.note and default.shows and default.expected

    @pytest.mark.parametrize(
        ("expires", "state"),
        [
            ("2027-02-02", State.EXPIRED),
            ("2027-02-03", State.ATTACHED),  # the last day on which it is valid is the day itself
            ("2027-02-04", State.ATTACHED),
            ("2026-12-31", State.EXPIRED),
            ("2030-01-01", State.ATTACHED),
        ],
    )
    def test_both_sides_of_the_date(self, tmp_path, expires, state):
        row = batt(made(tmp_path, evidence=EVIDENCE % f", expires: {expires}"))
        assert row.state is state
        assert (row.verdict is Verdict.NEEDS_EVIDENCE) == (state is State.EXPIRED)
        assert row.sha256  # an expired file is still the one that was handed in

    def test_without_a_date_nobody_can_tell(self, tmp_path):
        row = batt(made(tmp_path, date="revision: A", evidence=EVIDENCE % ", expires: 2020-01-01"))
        assert (row.state, row.verdict) == (State.ATTACHED, Verdict.NEEDS_JUDGEMENT)
        assert "states no date" in row.note

    @given(day=st.dates(date(2000, 1, 1), date(2060, 12, 31)), end=st.dates(date(2000, 1, 1), date(2060, 12, 31)))
    def test_expired_means_ended_before_the_date(self, day, end):
        from layerfolio.catalogue.datum import Document
        from layerfolio.codes.register_papers import Paper, standing

        paper = Paper(Document("", "N", "I", "", str(end), ("conductivity",)))
        assert (standing(paper, str(day), None).state is State.EXPIRED) == (end < day)

    @pytest.mark.parametrize(
        ("changed", "proves"),
        [
            ("", True),
            ("issuer: Skerry Test House, ", True),  # number and edition are left
            ("edition: 2026, ", True),  # number and issuer are left
            ("number: B-1, ", False),
            ("issuer: Skerry Test House, edition: 2026, ", False),
        ],
    )
    def test_a_document_that_nobody_can_find_again_proves_nothing(self, tmp_path, changed, proves):
        evidence = (EVIDENCE % "").replace(changed, "") if changed else EVIDENCE % ""
        row = batt(made(tmp_path, evidence=evidence))
        assert row.waits is not proves
        assert proves or "proves nothing" in row.note

    def test_the_findings_follow_the_same_rule(self, tmp_path):
        from layerfolio.codes.permeances import report

        for changed in ("", "number: B-1, "):
            evidence = (EVIDENCE % "").replace("[conductivity]", "[permeance]").replace(changed or "@", "")
            loaded = opened(tmp_path, evidence=evidence)
            layer = resolve(loaded.project)[0]["W1"].layer("own-batt")
            proved = report(layer, layer.vapour.dry, "2027-02-03")[0] is not None
            assert proved is not batt(made(tmp_path, evidence=evidence)).waits

    def test_a_document_that_says_not_what_it_proves(self, tmp_path):
        row = batt(made(tmp_path, evidence=(EVIDENCE % "").replace(", proves: [conductivity]", "")))
        assert row.waits and "not stated" in row.note

    def test_announced_only(self, tmp_path):
        found = made(tmp_path, more="documents: [{title: Airtightness test, for: airtightness}]")
        (row,) = found.of("airtightness")
        assert (row.state, row.verdict) == (State.MISSING, Verdict.NEEDS_EVIDENCE)


class TestRows:
    def test_materials_by_first_use_then_openings_joins_claims(self, tmp_path):
        more = """
openings: {A1: {kind: window, in: W1, width: 1 m, height: 1 m, transmittance: 1.2 W/(m2.K), basis: rated to CSA A440.2}}
joins: [{at: corner, of: W1, psi: 0.05 W/(m.K)}]
air_changes_at_50_pa: 1.5
"""
        found = made(tmp_path, more=more)
        assert [x.subject for x in found.rows] == [
            "osb", "own-batt", "spruce", "inner sheet", "gypsum-board", "A1", "corner of W1", "airtightness", "bracing",
        ]  # fmt: skip
        kinds = [x.kind for x in found.rows]
        assert kinds == sorted(kinds, key=["material", "opening", "join", "claim"].index)

    def test_several_documents_of_one_material_each_get_a_row(self, tmp_path):
        second = "{number: B-2, issuer: Skerry Test House, proves: [permeance]}"
        found = made(tmp_path, evidence=f"{EVIDENCE % ''}, {second}")
        assert [x.document.number for x in found.of("own-batt")] == ["B-1", "B-2"]

    def test_one_product_in_two_assemblies_has_one_row(self, tmp_path):
        more = "  R1: {kind: roof, slope: 30 deg, layers: [{material: own-batt, thickness: 200 mm}]}"
        assert batt(made(tmp_path, more=more)).used_on == ("W1", "R1")

    def test_a_document_of_the_project_can_speak_for_a_material(self, tmp_path):
        more = "documents: [{number: P-1, issuer: Skerry Test House, for: [osb, bracing, W1], file: b.pdf}]"
        found = made(tmp_path, more=more)
        (row,) = found.of("osb")
        assert row.document.number == "P-1" and found.of("bracing") == (row,)
        assert sum(1 for x in found.rows if x.document) == 1

    def test_a_document_with_a_claim_in_its_own_words_is_not_lost(self, tmp_path):
        found = made(tmp_path, more="documents: [{number: P-1, issuer: Skerry Test House, for: noise, file: b.pdf}]")
        assert found.rows[-1].document.number == "P-1" and found.rows[-1].used_on == (RECORD,)

    @pytest.mark.parametrize(
        ("set_id", "region", "standard"),
        [("nbc-2020", "Canada", "CSA O325"), ("irc-2021", "United States", "PS 2"), ("iso", "Europe", "EN 300")],
    )
    def test_the_country_decides_what_is_expected(self, tmp_path, set_id, region, standard):
        (row,) = made(tmp_path, set_id=set_id).of("osb")
        assert row.region == region and standard in row.expected_words

    def test_a_dagger_marks_what_was_not_re_read(self, tmp_path):
        assert "†" not in made(tmp_path).of("osb")[0].expected_words
        assert "†" in made(tmp_path, set_id="iso").of("osb")[0].expected_words

    def test_sheets_carry_the_numbers_that_the_sheets_have(self):
        assert (RECORD, BUILDING, OPENINGS) == (desk.RECORD, desk.BUILDING, desk.OPENINGS)

    def test_the_data_for_the_results_file(self, tmp_path):
        import json

        rows = as_data(made(tmp_path, evidence=EVIDENCE % ""))
        assert json.loads(json.dumps(rows)) == rows
        assert rows[1]["document"]["number"] == "B-1" and rows[1]["state"] == "attached"
        assert all(x["mark"] in ("found", "memory") for row in rows for x in row["expected"])


class TestWaiting:
    def test_a_layer_that_is_named(self, tmp_path):
        one = finding(next_step="supply the figure of Gypsum board (layer 4) with its source")
        found = made(tmp_path, [one])
        assert [found.row(x).subject for x in found.rows_for(one)] == ["gypsum-board"]

    def test_the_layer_that_is_provided_when_a_report_is_asked(self, tmp_path):
        one = finding(next_step="supply the test report of the product", given="80 ng; Oriented strand board (layer 1)")
        found = made(tmp_path, [one])
        assert [found.row(x).subject for x in found.rows_for(one)] == ["osb"]

    def test_a_claim(self, tmp_path):
        one = finding(next_step="supply the airtightness report")
        found = made(tmp_path, [one], more="air_changes_at_50_pa: 1.5")
        assert [found.row(x).subject for x in found.rows_for(one)] == ["airtightness"]

    def test_a_claim_that_nobody_made_gets_its_row(self, tmp_path):
        one = finding(
            None, "Efficiency of the heat recovery", "supply the rating of the equipment at 0 °C", id="a/b/heat-recovery"
        )
        found = made(tmp_path, [one])
        (row,) = (found.row(x) for x in found.rows_for(one))
        assert row.subject == "heat-recovery" and "at 0 °C" in row.note and row.expected

    def test_an_opening(self, tmp_path):
        one = finding("A1", opening=True, next_step="supply its rating")
        openings = "openings: {A1: {kind: door, in: W1, width: 1 m, height: 2 m}}"
        found = made(tmp_path, [one], more=openings)
        assert [found.row(x).subject for x in found.rows_for(one)] == ["A1"]

    def test_where_no_row_fits_the_finding_makes_one(self, tmp_path):
        two = [finding(next_step="supply the thing", id=f"nbc-2020/9.1/{n}") for n in ("a", "b")]
        found = made(tmp_path, two)
        rows = [found.row(found.rows_for(one)[0]) for one in two]
        assert all("Supply the thing" in row.note and row.kind == "claim" and row.waits for row in rows)

    def test_the_same_question_of_two_subjects_has_one_row(self, tmp_path):
        two = [finding(name, next_step="supply the thing") for name in ("W1", "R1")]
        more = "  R1: {kind: roof, slope: 30 deg, layers: [{material: own-batt, thickness: 200 mm}]}"
        found = made(tmp_path, two, more=more)
        assert found.rows_for(two[0]) == found.rows_for(two[1])
        row = found.row(found.rows_for(two[0])[0])
        assert row.title == "A question, W1, R1" and row.used_on == ("W1", "R1", RECORD) and row.proves == "for 9.1"

    def test_labels_of_all_insulation_and_of_all_openings(self, tmp_path):
        one = finding(None, "Standards of insulation", "supply the standard on each label")
        two = finding(None, "Standard of windows, doors and skylights", "supply the label", id="a/b/c")
        openings = "openings: {A1: {kind: door, in: W1, width: 1 m, height: 2 m}}"
        found = made(tmp_path, [one, two], more=openings)
        assert [found.row(x).subject for x in found.rows_for(one)] == ["own-batt"]
        assert [found.row(x).subject for x in found.rows_for(two)] == ["A1"]

    def test_a_document_that_is_there_is_to_be_looked_at(self, tmp_path):
        one = finding(None, "Standards of insulation", "supply the standard on each label")
        found = made(tmp_path, [one], evidence=EVIDENCE % "")
        assert waits_for(one, found) == "to be looked at: E1-02"

    def test_a_material_whose_document_proves_something_else_does_not_answer(self, tmp_path):
        one = finding(next_step="supply the permeance of Own batts (layer 2)")
        found = made(tmp_path, [one], evidence=EVIDENCE % "")
        assert found.row(found.rows_for(one)[0]).waits

    def test_others_wait_for_nothing(self, tmp_path):
        from dataclasses import replace

        one = replace(finding(next_step="supply the airtightness report"), verdict=Verdict.MEETS, topic="water")
        found = made(tmp_path, [one])
        assert with_rows([one], found) == (one,) and waits_for(one, found) == ""

    def test_what_follows_names_the_row(self, tmp_path):
        one = finding(next_step="supply the figure of Gypsum board (layer 4)")
        found = made(tmp_path, [one])
        (named,) = with_rows([one], found)
        assert named.evidence == found.rows_for(one)
        assert waits_for(named, found) == f"missing: {named.evidence[0]}"


@cache
def example(path):
    loaded = open_project(path)
    dossier = compile_dossier(loaded)
    found = register(loaded.project, dossier.assemblies, {}, dossier.findings, loaded.folder)
    return loaded, dossier, found


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: f"{p.parent.name}/{p.stem}")
class TestEveryExample:
    def test_each_finding_that_needs_evidence_names_a_row(self, path):
        _, dossier, found = example(path)
        numbers = {x.number for x in found.rows}
        for one in with_rows(dossier.findings, found):
            assert set(one.evidence) <= numbers, one.id
            if one.verdict is Verdict.NEEDS_EVIDENCE:
                assert one.evidence and waits_for(one, found), one.id
            elif one.verdict is Verdict.MEETS:  # each row that it names is open, and is said
                rows = [found.row(number) for number in one.evidence]
                assert all((row.waits or row.unproved) and row.number in one.what_follows for row in rows), one.id
            else:  # no row is named that the finding does not name itself
                named = [found.row(number).document.number for number in one.evidence]
                assert all(number in f"{one.given} {one.next_step}" for number in named), one.id

    def test_findings_are_told_apart_by_id_and_subject(self, path):
        _, dossier, _ = example(path)
        keys = [(x.id, x.assembly) for x in dossier.findings if x.verdict is Verdict.NEEDS_EVIDENCE]
        assert len(keys) == len(set(keys))

    def test_numbers_run_from_one(self, path):
        _, _, found = example(path)
        assert [x.number for x in found.rows] == [f"E1-{n:02d}" for n in range(1, len(found.rows) + 1)]

    def test_every_opening_and_every_file_has_a_row(self, path):
        loaded, _, found = example(path)
        for name in getattr(loaded.project, "openings", None) or {}:
            assert found.of(name, "opening")
        attached = {x.document.file for x in found.rows if x.sha256}
        listed = {one.file for x in loaded.project.materials.values() for one in x.evidence if one.file}
        used = {layer.material for a in loaded.project.assemblies.values() for layer in a.layers}
        unused = {one.file for n, x in loaded.project.materials.items() if n not in used for one in x.evidence}
        assert listed - unused <= attached | {x.document.file for x in found.rows if x.document}

    def test_the_same_input_gives_the_same_rows(self, path):
        loaded, dossier, found = example(path)
        assert register(loaded.project, dossier.assemblies, {}, dossier.findings, loaded.folder) == found

    def test_nothing_is_claimed_to_be_settled_by_the_register(self, path):
        _, _, found = example(path)
        text = " ".join(f"{x.title} {x.note} {x.shows} {x.expected_words}" for x in found.rows)
        assert not re.search(r"\b(approved|compliant|complies|guaranteed)\b", text, re.I)


SOLID = [name for name in materials.names() if materials.material(name).conductivity and not materials.material(name).membrane]
LAYER = st.one_of(
    st.sampled_from(SOLID).map(lambda name: f"{{material: {name}, thickness: 50 mm}}"),
    st.sampled_from(SOLID).map(
        lambda name: f"{{material: {name}, thickness: 90 mm, framing: {{material: spruce, width: 38 mm, spacing: 600 mm}}}}"
    ),
    st.sampled_from(["sheet", "felt"]).map(lambda name: f"{{membrane: {name}, equivalent_air_layer: 1 m}}"),
    st.just("{cavity: unventilated, thickness: 25 mm}"),
    st.just("{cavity: ventilated, thickness: 38 mm, battens: {material: larch-board, width: 38 mm, spacing: 400 mm}}"),
)


@settings(max_examples=40, deadline=None)
@given(layers=st.lists(LAYER, min_size=1, max_size=7), set_id=st.sampled_from(["nbc-2020", "irc-2021", "iso"]))
def test_every_material_of_an_assembly_has_a_row(tmp_path_factory, layers, set_id):
    folder = tmp_path_factory.mktemp("law", numbered=True)
    path = folder / "project.yaml"
    path.write_text(
        f"layerfolio: 1\nproject: {{title: Law}}\ncode: {{set: {set_id}}}\n"
        f"assemblies: {{W1: {{kind: wall, layers: [{', '.join(layers)}]}}}}\n",
        encoding="utf-8",
    )
    loaded = open_project(path)
    assemblies, _ = resolve(loaded.project)
    found = register(loaded.project, assemblies, {}, (), loaded.folder)
    subjects = [x.subject for x in found.rows]
    assert len(subjects) == len(set(subjects))
    for number, layer in enumerate(assemblies["W1"].layers):
        stated = loaded.project.assemblies["W1"].layers[number]
        wanted = [layer.material or stated.membrane] if layer.kind != "cavity" else []
        wanted += [layer.member.material] if layer.member else []
        for name in wanted:
            (row,) = found.of(name, "material")
            assert row.state is State.MISSING and row.used_on == ("W1",) and row.waits


def test_a_finding_that_names_a_document_has_its_row():
    """The reader of "read in HR-20" finds HR-20 in the register, whatever the verdict."""
    from layerfolio.dossier import compile_dossier, documented, open_project
    from layerfolio.home import folder

    made = documented(compile_dossier(open_project(folder("shared").parent / "examples" / "chandlery")))
    line = next(one for one in made.findings if one.id.endswith("/heat-recovery"))
    assert "HR-20" in line.given
    assert [made.register.row(number).document.number for number in line.evidence] == ["HR-20"]


@pytest.mark.parametrize(("paper", "there", "verdict"), [
    ("{file: a.pdf, number: Z-9, issuer: x, edition: 2026, proves: [transmittance]}", True, Verdict.MEETS),
    # the next row counts though its file is not there: E1 says so
    ("{file: a.pdf, number: Z-9, issuer: x, edition: 2026, proves: [transmittance]}", False, Verdict.MEETS),
    ("{number: Z-9, issuer: x, edition: 2026, proves: [colour]}", True, Verdict.NEEDS_EVIDENCE),
    ("{number: Z-9, issuer: x, edition: 2026}", True, Verdict.NEEDS_EVIDENCE),
])  # fmt: skip
def test_a_rating_rests_on_a_document_that_names_it(tmp_path, paper, there, verdict):
    if there:
        (tmp_path / "a.pdf").write_bytes(TEXT)
    window = "{kind: window, in: W1, width: 1 m, height: 1 m, transmittance: 1.0 W/(m2.K), basis: rated to CSA A440.2, "
    house = "building: {occupancy: house, storeys: 1, building_area: 50 m2}\n"
    loaded = opened(tmp_path, more=f"{house}openings: {{A1: {window}evidence: [{paper}]}}}}")
    (line,) = [one for one in compile_dossier(loaded).findings if one.id.endswith("/fenestration")]
    assert line.verdict is verdict


def wall_of(folder, *, thickness=184, paper=EVIDENCE % ", expires: 2026-12-31", more="", beside=""):
    """The line on the resistance of a wall of batts alone, whose report may have expired."""
    text = PROJECT.format(set_id="nbc-2020", date="date: 2027-02-03", evidence=paper, more=more)
    text = text.replace("{membrane:", beside + "{membrane:").replace("thickness: 140 mm", f"thickness: {thickness} mm")
    text = text.replace('zone: "6"', 'zone: "4", heat_recovery: true')
    (folder / "project.yaml").write_text(
        text + "building: {occupancy: house, storeys: 1, building_area: 50 m2}\n", encoding="utf-8"
    )
    (folder / "b.pdf").write_bytes(TEXT)
    return compile_dossier(open_project(folder / "project.yaml"))


def heat_line(dossier):
    return next(one for one in dossier.findings if one.topic == "thermal" and one.assembly == "W1" and one.limit)


class TestExpiredFigures:
    def test_a_verdict_that_turns_without_it_waits_for_a_newer_edition(self, tmp_path):
        line = heat_line(wall_of(tmp_path))
        assert line.verdict is Verdict.NEEDS_EVIDENCE and "whose document has expired" in line.reason
        assert "newer edition of the document of Own batts (layer 2)" in line.next_step

    def test_a_valid_document_lets_it_stand(self, tmp_path):
        assert heat_line(wall_of(tmp_path, paper=EVIDENCE % ", expires: 2027-02-03")).verdict is Verdict.MEETS

    def test_one_valid_document_is_enough(self, tmp_path):
        newer = (EVIDENCE % "").replace("B-1", "B-2")
        assert heat_line(wall_of(tmp_path, paper=f"{EVIDENCE % ', expires: 2026-12-31'}, {newer}")).verdict is Verdict.MEETS

    def test_a_newer_one_of_the_project_is_found(self, tmp_path):
        more = "documents: [{number: B-3, issuer: Skerry Test House, edition: 2027, for: own-batt, proves: conductivity}]"
        assert heat_line(wall_of(tmp_path, more=more)).verdict is Verdict.MEETS

    def test_an_old_document_of_another_figure_turns_nothing(self, tmp_path):
        old = (EVIDENCE % ", expires: 2026-12-31").replace("proves: [conductivity]", "proves: [density]")
        assert heat_line(wall_of(tmp_path, paper=f"{old}, {EVIDENCE % ''}")).verdict is Verdict.MEETS

    def test_a_layer_without_which_the_limit_is_reached_may_have_an_old_document(self, tmp_path):
        other = "{name: felt, material: wood-fibre-board-dry, conductivity: 0.040 W/(m.K), thickness: 200 mm, source: sheet F}, "
        assert heat_line(wall_of(tmp_path, beside=other)).verdict is Verdict.MEETS


class TestWhatAMeetsRestsOn:
    def lines(self, dossier):
        found = register(dossier.project, dossier.assemblies, dossier.openings, dossier.findings, dossier.folder)
        return found, with_rows(dossier.findings, found)

    def heat(self, folder, **how):
        dossier = wall_of(folder, **how)
        found, made = self.lines(dossier)
        return found, next(one for one in made if one.id == heat_line(dossier).id and one.assembly == "W1")

    def test_nothing_is_said_where_each_document_is_there(self, tmp_path):
        _, line = self.heat(tmp_path, paper=EVIDENCE % "")
        assert (line.verdict, line.evidence, line.what_follows) == (Verdict.MEETS, (), "")

    def test_a_missing_document_on_which_all_turns_is_waited_for(self, tmp_path):
        found, line = self.heat(tmp_path, paper="")
        row = batt(found)
        assert line.verdict is Verdict.NEEDS_EVIDENCE and line.evidence == (row.number,)
        assert "Own batts (layer 2), whose figure has no document" in line.reason

    def test_a_missing_document_of_the_insulation_is_named(self, tmp_path):
        felt = "{name: felt, material: wood-fibre-board-dry, conductivity: 0.040 W/(m.K), thickness: 200 mm, source: sheet F, "
        found, line = self.heat(tmp_path, paper="", beside=f"{felt}evidence: [{EVIDENCE % ''}]}}, ")
        row = batt(found)
        assert line.verdict is Verdict.MEETS and line.evidence == (row.number,)
        assert line.what_follows == f"rests on {row.number}, missing"

    def test_an_expired_one_that_turns_nothing_is_named(self, tmp_path):
        other = "{name: felt, material: wood-fibre-board-dry, conductivity: 0.040 W/(m.K), thickness: 200 mm, source: sheet F}, "
        found, line = self.heat(tmp_path, beside=other)
        felt = found.of("wood-fibre-board-dry")[0]
        assert line.what_follows == f"rests on {felt.number}, missing; {batt(found).number}, expired"

    def test_a_rating_without_a_file_is_named(self, tmp_path):
        window = "{kind: window, in: W1, width: 1 m, height: 1 m, transmittance: 1.0 W/(m2.K), basis: rated to CSA A440.2, "
        paper = "{number: Z-9, issuer: x, edition: 2026, proves: [transmittance]}"
        dossier = wall_of(tmp_path, more=f"openings: {{A1: {window}evidence: [{paper}]}}}}")
        found, made = self.lines(dossier)
        (line,) = [one for one in made if one.id.endswith("/fenestration")]
        assert line.verdict is Verdict.MEETS
        assert line.rests == f"rests on {found.of('A1', 'opening')[0].number}, not beside this set"

    def test_a_balance_rests_on_membranes_humidity_and_climate(self):
        _, dossier, found = example(ROOT / "examples" / "chandlery" / "project.yaml")
        made = with_rows(dossier.findings, found)
        for name, membrane in (("W1", "sheathing membrane"), ("R1", "roof underlay")):
            lines = [one for one in made if one.assembly == name and one.id.endswith(("/condensation", "/drying-reserve"))]
            wanted = {found.of(one)[0].number for one in (membrane, "indoor-humidity", "climate")}
            assert len(lines) == 2 and all(wanted <= set(one.evidence) and "missing" in one.rests for one in lines)

    def test_a_line_of_bracing_rests_on_the_figures_of_the_place_and_on_its_design(self):
        _, dossier, found = example(ROOT / "examples" / "chandlery" / "project.yaml")
        met = [one for one in with_rows(dossier.findings, found)
               if one.assembly in dossier.wall_lines and one.verdict is Verdict.MEETS]  # fmt: skip
        wanted = {found.of(one, "claim")[0].number for one in ("site-loads", "bracing")}
        assert met and all(wanted <= set(one.evidence) for one in met)

    def test_a_question_that_names_an_absent_document_says_so(self):
        _, dossier, found = example(ROOT / "examples" / "chandlery" / "project.yaml")
        (line,) = [one for one in with_rows(dossier.findings, found) if one.id.endswith("/heat-recovery")]
        assert line.verdict is Verdict.NEEDS_JUDGEMENT and line.rests == f"rests on {line.evidence[0]}, not beside this set"


class TestWhatARowSays:
    def test_a_hatch_has_no_label_to_look_at(self, tmp_path):
        one = finding(None, "Standard of windows, doors and skylights", "supply the label", id="a/b/c")
        hatch = "H1: {kind: hatch, in: W1, width: 1 m, height: 1 m}"
        openings = f"openings: {{A1: {{kind: door, in: W1, width: 1 m, height: 2 m}}, {hatch}}}"
        found = made(tmp_path, [one], more=openings)
        assert [found.row(x).subject for x in found.rows_for(one)] == ["A1"]
        assert "fire door" not in found.of("H1")[0].shows

    def test_labels_of_insulation_are_those_with_and_without_a_document(self, tmp_path):
        one = finding(None, "Standards of insulation", "supply the standard on each label")
        felt = "  F1: {kind: floor, layers: [{material: wood-fibre-board-dry, thickness: 60 mm}]}"
        found = made(tmp_path, [one], evidence=EVIDENCE % "", more=felt)
        assert [found.row(x).subject for x in found.rows_for(one)] == ["own-batt", "wood-fibre-board-dry"]

    def test_two_requests_at_one_claim_are_both_said(self, tmp_path):
        two = [finding(next_step=f"supply the flame-spread report of the {what}", id=f"a/b/{what}") for what in ("floor", "wall")]
        found = made(tmp_path, two)
        (row,) = {found.row(x).number: found.row(x) for one in two for x in found.rows_for(one)}.values()
        assert "report of the floor" in row.note and "report of the wall" in row.note

    def test_a_figure_that_no_document_proves_is_said(self, tmp_path):
        row = batt(made(tmp_path, evidence=EVIDENCE % ""))
        assert row.verdict is None and row.note == "In use and not among what it proves: vapour factor 2."
        both = (EVIDENCE % "").replace("[conductivity]", "[conductivity, vapour factor]")
        assert batt(made(tmp_path, evidence=both)).note == ""

    def test_parts_of_a_calculated_window_have_their_figures(self, tmp_path):
        parts = (
            "frame: {width: 110 mm, transmittance: 1.1 W/(m2.K)}, glass: {transmittance: 0.60 W/(m2.K)}, "
            "edge: {psi: 0.04 W/(m.K)}, evidence: [{number: P-6, issuer: x, edition: 2026, proves: [frame, glass, edge]}]"
        )
        found = made(tmp_path, more=f"openings: {{A1: {{kind: window, in: W1, width: 1 m, height: 1 m, {parts}}}}}")
        assert found.of("A1")[0].proves == "frame 1.10 W/(m²·K); glass 0.60 W/(m²·K); edge 0.040 W/(m·K)"

    def test_what_is_missing_is_never_a_matter_of_judgement(self, tmp_path):
        found = made(tmp_path, more="indoor: {humidity: {class: 2}}")
        assert found.of("indoor-humidity")
        assert all(row.verdict is Verdict.NEEDS_EVIDENCE for row in found.rows if row.state is State.MISSING)

    def test_a_drawing_of_foundations_is_named_where_they_are_asked(self, tmp_path):
        from dataclasses import replace

        one = finding(None, "Foundations and frost depth", "supply the soil report and the sizes", id="nbc-2020/9.12/foundations")
        papers = "documents: [{title: Foundations and roof, number: S-1, issuer: x, edition: 2026, for: [structure]}]"
        found = made(tmp_path, [replace(one, topic="structure")], more=papers)
        titles = [found.row(x).title for x in found.rows_for(one)]
        assert "Foundations and roof, S-1" in titles and len(titles) == 2  # what is asked beside it keeps a row of its own

    def test_glass_is_asked_of_those_openings_that_do_not_state_it(self, tmp_path):
        said = {"A1": "safety_glazing: false", "D1": "glazed: false", "D2": "operation: swinging"}
        kinds = {"A1": "window", "D1": "door", "D2": "door"}
        each = ", ".join(f"{n}: {{kind: {kinds[n]}, in: W1, width: 1 m, height: 1 m, {more}}}" for n, more in said.items())
        lines = compile_dossier(opened(tmp_path, more=f"openings: {{{each}}}")).findings
        (line,) = [one for one in lines if one.id.endswith("/safety-glass")]
        assert line.next_step == "state safety_glazing of D2; supply the marks of the glass"
