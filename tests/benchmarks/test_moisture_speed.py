"""Speed of the monthly balance: run with --benchmark-only."""

from builders import assembly, layer
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.studies.climate_year import outside_of
from layerfolio.studies.condensation.balance import balance
from moisture_cases import CLASS_3, HUMIDITY, months_of, section, wall


def test_five_layers_with_strips_and_three_planes(benchmark):
    """To reach: under 10 ms."""
    rows = (
        ("membrane", None, None, None, 0.05),
        ("foam", 0.08, 0.022, 100, None),
        ("batts", 0.184, 0.04, 1, None),
        ("fibre board", 0.0125, 0.05, 3, None),
        ("gypsum", 0.0125, 0.25, 10, None),
    )
    year = CLASS_3
    values, nodes = section(wall(rows))
    outside = outside_of("outside air", year)
    result = benchmark(lambda: balance(values, nodes, year, outside))
    assert len(result.planes()) >= 3
    assert benchmark.stats.stats.mean < 0.010


def test_sixty_strips_wet_and_drying_all_year(benchmark):
    """To reach: under 50 ms. A tight board outside a deep fill, a damp room, and summers hotter than the room."""
    rows = [layer(1, d=0.02, lam=0.13, mu=300), layer(2, d=0.6, lam=0.04, mu=1), layer(3, d=0.02, lam=0.13, mu=5)]
    temperature = (-15, -15, -10, 0, 15, 25, 30, 30, 20, 10, 0, -10)
    year = months_of(temperature, HUMIDITY, (20.0,) * 12, (0.85 * saturation_pressure(20.0),) * 12)
    values, nodes = section(assembly(rows))
    assert len(nodes.nodes) > 60
    outside = outside_of("outside air", year)
    result = benchmark(lambda: balance(values, nodes, year, outside))
    assert len(result.planes()) > 20 and result.years == 2
    assert benchmark.stats.stats.mean < 0.050
