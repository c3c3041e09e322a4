"""The thermal study against published worked examples. Inputs and printed results as published."""

import pytest

from builders import assembly, layer, member
from layerfolio.studies.thermal import COMBINED, PARALLEL, PLANES, thermal_study


def nbc_wall(*continuous, stud=1.19, cavity=3.34, share=0.23, inside=0.12, outside=0.03):
    frame = layer(1, R=cavity, frame=member(share, R=stud))
    rest = [layer(i, R=r) for i, r in enumerate(continuous, 2)]
    return assembly([frame, *rest], inside=inside, outside=outside, method=PLANES)


def test_nbc_framed_layer_of_the_code_note():
    """NBC 2020 note A-9.36.2.4.(1), as restated in the BC amendment files: 23/77, 1.19 and 3.34 give 2.36, U 0.42."""
    study = thermal_study(nbc_wall())
    assert study.layers[0].with_framing == pytest.approx(2.36, abs=0.005)
    assert 1 / study.layers[0].with_framing == pytest.approx(0.42, abs=0.005)


def test_nbc_full_wall_of_the_code_note():
    """Same note: with films 0.03 and 0.12, siding 0.11, gypsum sheathing 0.08, gypsum board 0.08 the wall has 2.78.
    The framed part was read in the source; layer values and total of the full wall are from memory of the note."""
    study = thermal_study(nbc_wall(0.11, 0.08, 0.08))
    assert study.asked.resistance == pytest.approx(2.78, abs=0.005)


@pytest.mark.parametrize(
    ("cavity", "continuous", "layer_printed", "total_printed"),
    [(3.87, (0.11, 0.11, 0.08), 2.55, 3.00), (3.34, (0.11, 0.11, 1.78, 0.08), 2.36, 4.59)],
    ids=["N1", "N2"],
)
def test_trade_association_walls(cavity, continuous, layer_printed, total_printed):
    """A wood trade association's wall pages 1N and 6N (effective resistance by the Canadian method), within 0.01."""
    study = thermal_study(nbc_wall(*continuous, cavity=cavity))
    assert study.layers[0].with_framing == pytest.approx(layer_printed, abs=0.01)
    assert study.asked.resistance == pytest.approx(total_printed, abs=0.01)


class TestHandbook:
    """2021 ASHRAE Handbook - Fundamentals (SI), chapter 27, examples 2, 3, 6 and 7."""

    wall = assembly(
        [layer(1, R=0.11), layer(2, R=0.70), layer(3, R=2.30, frame=member(0.25, R=0.77)), layer(4, R=0.08)],
        inside=0.12,
        outside=0.03,
        method=PLANES,
    )

    def test_example_3_isothermal_planes(self):
        study = thermal_study(self.wall)
        assert study.layers[2].with_framing == pytest.approx(1.54, abs=0.005)
        assert study.by_method[PLANES].resistance == pytest.approx(2.58, abs=0.005)
        assert study.by_method[PLANES].transmittance == pytest.approx(0.388, abs=0.0005)

    def test_example_3_parallel_path(self):
        """Printed U 0.36; the printed R 2.78 rests on a slip of the handbook and is not asserted."""
        assert thermal_study(self.wall).by_method[PARALLEL].transmittance == pytest.approx(0.36, abs=0.005)

    def test_example_2_roof_without_framing(self):
        roof = assembly([layer(i, R=r) for i, r in enumerate((0.06, 0.52, 4.97, 0.09), 1)], inside=0.16, outside=0.04)
        study = thermal_study(roof)
        assert study.asked.transmittance == pytest.approx(0.17, abs=0.005)
        assert {round(m.resistance, 12) for m in study.by_method.values()} == {round(study.asked.resistance, 12)}

    def test_example_6_two_areas_side_by_side(self):
        """9.4 m2 at U 1.162 and 31.6 m2 at 0.287 give 0.49: the parallel paths of one framed layer without films."""
        share = 9.4 / 41
        both = assembly([layer(1, R=1 / 0.287, frame=member(share, R=1 / 1.162))], inside=0.0, outside=0.0)
        assert thermal_study(both).by_method[PARALLEL].transmittance == pytest.approx(0.49, abs=0.005)

    def test_example_7_interface_temperature(self):
        """Room 21, outside -1 degC: R 4.68; the cavity face of the foam lies at 4.3 degC."""
        rows = (("siding", 0.107), ("strand board", 0.12), ("foam", 0.88), ("batts", 3.34), ("gypsum", 0.08))
        wall = assembly([layer(i, R=r, name=name) for i, (name, r) in enumerate(rows, 1)], inside=0.12, outside=0.03)
        study = thermal_study(wall, indoor=21, outdoor=-1)
        assert study.asked.resistance == pytest.approx(4.68, abs=0.01)
        face = next(x for x in study.interfaces if x.between == ("foam", "batts"))
        assert face.temperature == pytest.approx(4.3, abs=0.1)
        assert face.through_framing is None


GYPSUM_FIBRE = {"d": 0.0125, "lam": 0.32}


def catalogue_wall(stud_depth, service_insulated=True):
    share, battens = 60 / 625, 50 / 400
    service = {"R": 0.18} if not service_insulated else {"lam": 0.040}
    return assembly(
        [
            layer(1, **GYPSUM_FIBRE),
            layer(2, d=stud_depth, lam=0.040, frame=member(share, lam=0.12)),
            layer(3, d=0.015, lam=0.13),
            layer(4, d=0.04, frame=member(battens, lam=0.12, name="batten"), **service),
            layer(5, **GYPSUM_FIBRE),
        ],
        inside=0.13,
        outside=0.13,
    )


def catalogue_roof(rafter_depth):
    return assembly(
        [
            layer(1, d=0.024, lam=0.12),
            layer(2, d=rafter_depth, lam=0.040, frame=member(80 / 800, lam=0.12, name="rafter")),
            layer(3, d=0.120, lam=0.13),
            layer(4, d=0.060, lam=0.040, frame=member(60 / 400, lam=0.12, name="batten")),
            layer(5, d=0.0125, lam=0.25),
        ],
        inside=0.10,
        outside=0.10,
        kind="roof",
    )


@pytest.mark.parametrize(
    ("case", "printed"),
    [
        (catalogue_wall(0.160), 0.21),
        (catalogue_wall(0.120), 0.26),
        (catalogue_wall(0.160, False), 0.25),
        (catalogue_roof(0.180), 0.15),
        (catalogue_roof(0.200), 0.14),
        (catalogue_roof(0.240), 0.13),
    ],
    ids=["T1", "T2", "T3", "T4", "T5", "T6"],
)
def test_timber_component_catalogue(case, printed):
    """Public on-line catalogue of timber components of a national timber research institute (www.dataholz.eu, walls
    awrhhi08a variants 00 to 02, roofs sdmhbi02a variants 00 to 02): U by the combined method, two decimals."""
    study = thermal_study(case)
    assert round(study.by_method[COMBINED].transmittance, 2) == printed


@pytest.mark.parametrize(
    ("insulation", "printed"),
    [(5, 0.173), (10, 0.093), (15, 0.063), (20, 0.048), (25, 0.039), (30, 0.032), (60, 0.016)],
)
def test_above_deck_roofs(insulation, printed):
    """Washington Administrative Code 51-11C-610226, insulation entirely above deck, Btu/(h.ft2.F), within 0.0005.
    The base resistance 0.78 was derived from the printed rows, not read."""
    roof = assembly([layer(1, R=insulation)], inside=0.61, outside=0.17)
    assert thermal_study(roof).asked.transmittance == pytest.approx(printed, abs=0.0005)


def test_two_brick_leaves():
    """A published trade example: render, two brick leaves, plaster between films 0.04 and 0.13 give R 0.54, U 1.85."""
    rows = ((0.018, 0.50), (0.102, 0.77), (0.102, 0.56), (0.013, 0.57))
    wall = assembly([layer(i, d=d, lam=lam) for i, (d, lam) in enumerate(rows, 1)])
    study = thermal_study(wall)
    assert study.asked.resistance == pytest.approx(0.54, abs=0.005)
    assert study.asked.transmittance == pytest.approx(1.85, abs=0.02)


def test_bridged_mean_of_two_paths():
    """Same page: paths of R 0.59 over 90 % and 0.88 over 10 % give R 0.61, U 1.64."""
    wall = assembly([layer(1, R=0.59, frame=member(0.1, R=0.88))], inside=0.0, outside=0.0)
    result = thermal_study(wall).by_method[PARALLEL]
    assert result.resistance == pytest.approx(0.61, abs=0.005)
    assert result.transmittance == pytest.approx(1.64, abs=0.005)
