"""The vapour barrier, its place, tight layers elsewhere; what a permeance must rest on before it decides."""

from dataclasses import replace
from pathlib import Path

import pytest

import builders as b
from codes_builders import amendment, cases, insulation, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.catalogue import materials
from layerfolio.catalogue.code_rows import read
from layerfolio.catalogue.code_sets import code_folder
from layerfolio.catalogue.datum import Datum, Document, Origin
from layerfolio.codes.findings import Verdict
from layerfolio.dossier import compile_dossier, open_project

NG = 1e-12
REPORT = Document(file="data-sheets/panel.pdf", number="PB-7", issuer="a laboratory", proves=("permeance",))


def panel(number, ng, *, documents=(REPORT,), serves=("vapour control",), name="panel-15", d=0.015, R=0.115, **more):
    """A panel of the project's own, with or without a report."""
    made = b.layer(number, R=R, d=d, permeance=(ng * NG, 3 * ng * NG), serves=serves, name=name, family="plain", **more)
    return replace(made, documents=tuple(documents))


def catalogue_panel(number, material, d, *, mu=None, s_d=None, mark="memory", serves=("vapour control",), family="strand-board"):
    """A panel with the catalogue's own vapour figure."""
    made = b.layer(number, R=0.1, d=d, mu=mu, s_d=s_d, serves=serves, name=material, family=family)
    origin = Origin("catalogue", "iso-10456-2007", "Table 3", mark)
    dry = Datum(made.vapour.dry.value, origin)
    return replace(made, material=material, vapour=replace(made.vapour, dry=dry, wet=dry))


def gypsum(number):
    return b.layer(number, R=0.0775, d=0.0127, permeance=(2600 * NG, 2600 * NG), name="gypsum-board", family="gypsum")


def numbered(*layers):
    return [replace(one, number=i + 1) for i, one in enumerate(layers)]


def wall(*layers, **more):
    return of_resistance(0, layers=numbered(*layers), **more)


def found(ending, *layers, where=None, **more):
    return only(codes.judge(where or project(), studies(wall(*layers, **more))), ending)


@pytest.mark.parametrize(("ng", "verdict"), [
    (48, Verdict.MEETS), (60, Verdict.MEETS), (60.01, Verdict.DOES_NOT_MEET), (200, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_a_tested_panel_is_judged_against_60_ng_dry_cup(ng, verdict):
    """9.25.4.2.(1); the wet cup of this panel is three times as open and is not what the clause names."""
    one = found("/vapour-barrier", insulation(4), panel(2, ng), gypsum(3))
    assert one.verdict == verdict and one.limit.value == 60 * NG and one.provided.value == pytest.approx(ng * NG)
    assert "PB-7" in one.reason
    assert one.asked == "60 ng/(Pa·s·m²) or less, dry cup" and one.given.endswith("panel-15 (layer 2)")
    assert one.given.startswith(f"{ng:g} ng/(Pa·s·m²) dry cup, ")


@pytest.mark.parametrize("documents", [
    (), (Document(number="HB-1", proves=("conductivity",)),), (Document(number="X"),),
    (replace(REPORT, expires="2027-02-02"),), (Document(number="AP-3", proves=("air permeance",)),),
], ids=["none", "of another property", "proves nothing", "expired", "of air"])  # fmt: skip
@pytest.mark.parametrize("ng", [48, 200])
def test_the_projects_own_figure_needs_its_report(documents, ng):
    one = found("/vapour-barrier", insulation(4), panel(2, ng, documents=documents), gypsum(3))
    assert one.verdict == Verdict.NEEDS_EVIDENCE and "report" in one.next_step
    assert ("expired" in one.reason) == (bool(documents) and bool(documents[0].expires))


def test_a_report_holds_until_its_day():
    dated = (replace(REPORT, expires="2027-02-03"),)
    assert found("/vapour-barrier", insulation(4), panel(2, 48, documents=dated), gypsum(3)).verdict == Verdict.MEETS


@pytest.mark.parametrize(("material", "d", "mu", "shown"), [
    ("osb", 0.011, 50, ("364 ng", "44 ng")),
    ("osb", 0.015, 50, ("267 ng", "32.3 ng")),
    ("plywood", 0.0125, 200, ("80 ng", "40 to 57 ng")),
    ("plywood", 0.0185, 200, ("54.1 ng", "40 to 57 ng")),
])  # fmt: skip
def test_published_values_of_wood_panels_do_not_decide(material, d, mu, shown):
    """12.5 mm plywood: 80 ng by ISO 10456 (µ 200), 40 to 57 by note A-9.25.5.1.(1); OSB 44 at 11, 32.3 at 15 mm."""
    one = found("/vapour-barrier", insulation(4), catalogue_panel(2, material, d, mu=mu), gypsum(3))
    assert one.verdict == Verdict.NEEDS_EVIDENCE
    assert all(figure in one.reason for figure in shown), one.reason


def test_published_values_on_one_side_decide():
    """Polyethylene 0.15 mm: 4 ng from memory, 1.6 to 5.8 ng as the note prints it."""
    film = catalogue_panel(2, "polyethylene-150", None, s_d=50, family="membrane")
    one = found("/vapour-barrier", insulation(4), film, gypsum(3))
    assert one.verdict == Verdict.MEETS and "1.6 to 5.8 ng" in one.reason
    felt = catalogue_panel(2, "asphalt-felt-15", None, s_d=0.5, family="membrane")
    assert found("/vapour-barrier", insulation(4), felt, gypsum(3)).verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("mark", "s_d", "verdict"), [
    ("memory", 5, Verdict.NEEDS_EVIDENCE), ("found", 5, Verdict.MEETS),
    ("memory", 0.1, Verdict.DOES_NOT_MEET), ("found", 0.1, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_a_figure_from_memory_alone_never_makes_it_meet(mark, s_d, verdict):
    film = catalogue_panel(2, "some-film", None, s_d=s_d, mark=mark, family="membrane")
    assert found("/vapour-barrier", insulation(4), film, gypsum(3)).verdict == verdict


def test_a_layer_without_a_dry_figure_needs_evidence():
    bare = b.layer(2, R=0.1, d=0.015, serves=["vapour control"], name="bare", family="plain")
    one = found("/vapour-barrier", insulation(4), bare, gypsum(3))
    assert one.verdict == Verdict.NEEDS_EVIDENCE and one.provided is None and "not given" in one.given


def test_no_control_layer():
    none = found("/vapour-barrier", insulation(1), gypsum(2))
    assert none.verdict == Verdict.DOES_NOT_MEET and "no layer" in none.given
    could = found("/vapour-barrier", insulation(1), panel(2, 48, serves=()), gypsum(3))
    assert could.verdict == Verdict.NEEDS_JUDGEMENT and "panel-15" in could.reason
    outside = found("/vapour-barrier", panel(1, 48, serves=()), insulation(2), gypsum(3))
    assert outside.verdict == Verdict.DOES_NOT_MEET
    unknown = found("/vapour-barrier", insulation(1), b.layer(2, R=0.1, d=0.01, name="bare"))
    assert unknown.verdict == Verdict.NEEDS_EVIDENCE
    findings = codes.judge(project(), studies(wall(insulation(1), gypsum(2))))
    assert not [one for one in findings if one.id.endswith("/vapour-barrier-position")]


def test_the_limit_can_be_amended():
    change = amendment("nbc-2020/9.25.4.2/vapour-barrier", "45 ng/(Pa.s.m2)", "by-law")
    one = found("/vapour-barrier", insulation(1), panel(2, 48), gypsum(3), where=project(amendments=[change]))
    assert one.verdict == Verdict.DOES_NOT_MEET and one.amended == "by-law"


@pytest.mark.parametrize("about", [
    {"kind": "slab", "faces": "ground"}, {"kind": "floor", "faces": "ground"}, {"kind": "wall", "faces": "ground"},
], ids=str)  # fmt: skip
def test_assemblies_on_the_ground_are_not_asked(about):
    findings = codes.judge(project(), studies(wall(insulation(1), panel(2, 48), **about)))
    assert not [one for one in findings if one.topic == "vapour"]


def test_an_uninsulated_assembly_is_not_asked():
    findings = codes.judge(project(), studies(wall(panel(1, 48), gypsum(2))))
    assert not [one for one in findings if one.topic == "vapour"]


def test_the_barriers_place():
    """9.25.4.3: the warm side; the code gives no share of insulation that may lie inside it."""
    inside = found("/vapour-barrier-position", insulation(1), panel(2, 48), gypsum(3))
    assert inside.verdict == Verdict.MEETS
    outside = found("/vapour-barrier-position", panel(1, 48), insulation(2), gypsum(3))
    assert outside.verdict == Verdict.DOES_NOT_MEET
    service = insulation(3, name="service batts")
    between = found("/vapour-barrier-position", insulation(1, name="batts"), panel(2, 48), replace(service, number=3), gypsum(4))
    assert between.verdict == Verdict.NEEDS_JUDGEMENT and "service batts" in between.reason
    assert {one.clause for one in (inside, outside, between)} == {"9.25.4.3.(1)"}  # the place alone is shown
    assert "9.25.4.3.(2)" in between.next_step
    foam = insulation(1, serves=["vapour control"])
    assert found("/vapour-barrier-position", foam, gypsum(2)).verdict == Verdict.MEETS


def ratio_wall(outer, inner, ng=20, **panel_like):
    """A tight panel (its own resistance counts outboard) between two insulations of those resistances."""
    tight = panel(2, ng, serves=(), name="tight", R=0.08, **panel_like)
    return insulation(outer - 0.08, name="outer"), tight, insulation(inner, name="inner")


def board(outer, inner, ng=20, days=4600, **panel_like):
    return found("/tight-layers", *ratio_wall(outer, inner, ng, **panel_like), where=project(zone=None, degree_days=days))


@pytest.mark.parametrize("row", cases("nbc-tight-layers")["rows"], ids=lambda row: str(row["degree_days"]))
def test_ratio_of_outboard_to_inboard_resistance_on_both_sides(row):
    inner = 2.0
    at = board(inner * row["ratio"], inner, days=row["degree_days"])
    below = board(inner * row["ratio"] - 0.01, inner, days=row["degree_days"])
    assert (at.verdict, below.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET), below.reason


def test_the_papers_edge_of_the_ratio():
    """R_in 3.60, R_out 1.08: exactly 0.300, enough at 5999 degree-days, not at 6000."""
    assert board(1.08, 3.60, days=5999).verdict == Verdict.MEETS
    assert board(1.08, 3.60, days=6000).verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("ng", "verdict"), [(59.9, Verdict.DOES_NOT_MEET), (60, Verdict.NOT_ASKED)])
def test_sixty_itself_is_not_tight(ng, verdict):
    """9.25.5.1.(1) speaks of less than 60."""
    assert board(0.1, 3.0, ng).verdict == verdict


def test_on_the_warm_face_a_tight_panel_may_stand():
    one = found("/tight-layers", insulation(1), panel(2, 20), gypsum(3))
    assert one.verdict == Verdict.MEETS and "warm face" in one.reason


def test_thin_wood_sheathing_and_mild_insulation_are_exempt():
    """9.25.5.1.(3): wood sheathing to 12.5 mm; (4): 30 ng, 0.7 m²·K/W, fewer than 6000 degree-days."""

    def sheathed(d):
        thin = replace(panel(1, 20, serves=(), name="sheathing", d=d), family="plywood")
        return found("/tight-layers", thin, insulation(2), gypsum(3)).verdict

    assert (sheathed(0.0125), sheathed(0.0126)) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)

    def foam(ng, R, days):
        outer = replace(panel(1, ng, serves=(), name="foam", R=R), family="foam")
        return found("/tight-layers", outer, insulation(10), gypsum(3), where=project(zone=None, degree_days=days)).verdict

    assert foam(30, 0.7, 5999) == Verdict.MEETS
    assert foam(29.9, 0.7, 5999) == Verdict.DOES_NOT_MEET
    assert foam(30, 0.69, 5999) == Verdict.DOES_NOT_MEET
    assert foam(30, 0.7, 6000) == Verdict.DOES_NOT_MEET


def test_a_tight_layer_whose_tightness_is_not_proved_needs_evidence():
    assert board(0.1, 3.0, documents=()).verdict == Verdict.NEEDS_EVIDENCE
    osb = replace(catalogue_panel(1, "osb", 0.015, mu=50), serves=())  # 267 ng by one source, 32 by the other
    one = found("/tight-layers", osb, insulation(2), gypsum(3))
    assert one.verdict == Verdict.NEEDS_EVIDENCE and "not proved" in one.reason


def test_without_degree_days_or_permeance_no_ratio():
    nothing = found("/tight-layers", *ratio_wall(2, 2), where=project(degree_days=None))
    assert nothing.verdict == Verdict.NEEDS_JUDGEMENT
    bare = b.layer(1, R=0.1, d=0.01, name="bare", family="plain")
    assert found("/tight-layers", bare, insulation(2), gypsum(3)).verdict == Verdict.NEEDS_EVIDENCE


def test_resistance_from_memory_outside_it_does_not_carry_the_ratio():
    outer, tight, inner = ratio_wall(1.0, 2.0)
    memory = insulation(0.92, name="outer", mark="memory")
    assert found("/tight-layers", outer, tight, inner).verdict == Verdict.MEETS
    assert found("/tight-layers", memory, tight, inner).verdict == Verdict.NEEDS_EVIDENCE


def test_masonry_and_batts_are_no_sheets():
    wall_of_brick = replace(panel(1, 5, serves=(), name="brick"), family="masonry")
    assert found("/tight-layers", wall_of_brick, insulation(2), gypsum(3)).verdict == Verdict.NOT_ASKED


@pytest.mark.parametrize(("humidity", "verdict"), [
    (None, Verdict.MEETS), (3, Verdict.MEETS), (4, Verdict.NEEDS_JUDGEMENT), (5, Verdict.NEEDS_JUDGEMENT),
])  # fmt: skip
@pytest.mark.parametrize("ending", ["/vapour-barrier", "/vapour-barrier-position", "/tight-layers"])
def test_much_moisture_goes_to_part_5(ending, humidity, verdict):
    """9.25.4.2.(3) and 9.25.5.1.(2); humidity classes of ISO 13788."""
    one = found(ending, insulation(4), panel(2, 48), gypsum(3), where=project(humidity_class=humidity))
    assert one.verdict == verdict and ("Part 5" in one.next_step) == (verdict == Verdict.NEEDS_JUDGEMENT)


@pytest.mark.parametrize(("ng", "said"), [(57.21, False), (57.22, True), (60, True), (60.01, False)])
def test_a_barrier_between_one_perm_and_60_ng_says_so(ng, said):
    """60 ng/(Pa·s·m²) is 1.05 US perm: it meets here and is no Class II retarder in the United States."""
    one = found("/vapour-barrier", insulation(4), panel(2, ng), gypsum(3))
    assert ("no Class II retarder" in one.given) == said
    assert one.verdict == (Verdict.MEETS if ng <= 60 else Verdict.DOES_NOT_MEET)


def test_both_cups_of_a_barrier_print():
    one = found("/vapour-barrier", insulation(4), panel(2, 48), gypsum(3))
    assert one.given == "48 ng/(Pa·s·m²) dry cup, 144 ng/(Pa·s·m²) wet cup; panel-15 (layer 2)"


def test_materials_of_the_permeance_note_are_in_the_catalogue():
    rows = read(code_folder("nbc-2020") / "method" / "permeances.yaml")["rows"]
    assert {name for row in rows for name in row["for"]} <= set(materials.names())


def vented(d=0.038):
    return b.layer(1, d=d, counts=False, kind="cavity", cavity="ventilated", name="Cavity", family="air")


def sheet(**figures):
    """A steel sheet outside the cavity; µ of metals is taken as a million."""
    return b.layer(1, d=0.0006, counts=False, name="Steel", family="metal", **{"mu": 1e6} | figures)


@pytest.mark.parametrize(("layers", "given"), [
    ((insulation(1), panel(2, 20), gypsum(3)), "panel-15 (layer 2), inside the insulation"),
    ((panel(1, 20), insulation(2), gypsum(3)), "panel-15 (layer 1), outside the insulation"),
    ((insulation(1), panel(2, 20), insulation(3), gypsum(4)), "panel-15 (layer 2), between insulation"),
    ((sheet(), vented(), insulation(3), gypsum(4)), "Steel (layer 1), outside the ventilated cavity"),
    ((sheet(), vented(), insulation(3), panel(4, 20)),
     "Steel (layer 1), outside the ventilated cavity; panel-15 (layer 4), inside the insulation"),
    ((sheet(), insulation(2), gypsum(3)), "no tight sheet or panel"),
    ((sheet(mu=None), vented(), insulation(3), gypsum(4)), "no tight sheet or panel"),
    ((sheet(mu=None, permeance=70e-12), vented(), insulation(3), gypsum(4)), "no tight sheet or panel"),
    ((sheet(mu=None, permeance=50e-12), vented(), insulation(3), gypsum(4)), "Steel (layer 1), outside the ventilated cavity"),
    ((sheet(mu=None, s_d=50), vented(), insulation(3), gypsum(4)), "Steel (layer 1), outside the ventilated cavity"),
], ids=str)  # fmt: skip
def test_each_tight_layer_says_where_it_lies(layers, given):
    assert found("/tight-layers", *layers).given == given


@pytest.mark.parametrize(("kind", "depth", "verdict"), [
    ("roof", 0.005, Verdict.MEETS), ("wall", 0.0095, Verdict.MEETS), ("wall", 0.009, Verdict.NEEDS_JUDGEMENT),
    ("wall", None, Verdict.NEEDS_JUDGEMENT),
])  # fmt: skip
def test_the_air_space_of_a_wall_is_deep_enough(kind, depth, verdict):
    """9.25.5.2.(2) with 9.27.2.2.(1)(a): a drained and vented air space of 9.5 mm (read in the Alberta edition of 2023)."""
    slope = 90.0 if kind == "wall" else 30.0
    one = found("/tight-layers", sheet(), vented(depth), insulation(3), gypsum(4), kind=kind, slope=slope)
    assert one.verdict == verdict and ("9.27.2.2" in one.next_step) == (verdict == Verdict.NEEDS_JUDGEMENT)


def test_the_chandlerys_steel_lies_outside_the_ventilated_cavity():
    dossier = compile_dossier(open_project(Path(__file__).parents[2] / "examples" / "chandlery"))
    one = only([x for x in dossier.findings if x.assembly == "R1"], "/tight-layers")
    assert one.given.startswith("Standing-seam steel (layer 1), outside the ventilated cavity; ")
