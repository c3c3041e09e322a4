"""Heat through the ground by ISO 13370: slabs, floors over an underfloor space, basement floors and walls.

The value serves the sum of heat losses; the code's own resistance against the ground is judged elsewhere.
"""

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.ground import GroundData, ground_data
from layerfolio.formulas import ground as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.envelope_types import GroundStudy
from layerfolio.studies.ground_edge import edge_insulation
from layerfolio.studies.layer_heat import source_words
from layerfolio.studies.types import ThermalStudy

SLAB, SUSPENDED, BASEMENT, WALL = "slab on ground", "suspended floor", "basement floor", "basement wall"
STANDARD = "iso-13370-2017, scope"
FILE = "project file"


def ground_study(assembly: Assembly, thermal: ThermalStudy, floor: GroundStudy | None = None) -> GroundStudy | None:
    """Transmittance through the ground; None where the assembly does not meet it.

    `floor` is the basement floor of a basement wall, whose equivalent thickness the wall's formula asks for; without it the
    wall takes its own, which gives the greatest transmittance that may come out.
    """
    kind = _kind(assembly)
    if kind is None:
        return None
    record = Recorder()
    missing = _missing(assembly, thermal, kind)
    if missing:
        record.section("Heat through the ground: not calculated", key="ground-missing")
        record.choice("No value through the ground", f"not stated: {', '.join(missing)}")
        return GroundStudy(assembly.name, kind, None, None, None, missing, record.done())
    data = ground_data()
    found = _wall(assembly, thermal, floor, data, record) if kind == WALL else _floor(assembly, thermal, kind, data, record)
    return GroundStudy(assembly.name, kind, *found, (), record.done())


def ground_studies(assemblies: dict[str, Assembly], thermal: dict[str, ThermalStudy]) -> dict[str, GroundStudy]:
    """The studies of all assemblies that meet the ground, in the order of the file; walls know the basement's floor.

    Where there are several basement floors, nothing tells which one a wall belongs to, and it takes its greatest value.
    """
    floors = {n: ground_study(a, thermal[n]) for n, a in assemblies.items() if _kind(a) not in (None, WALL)}
    below = [one for one in floors.values() if one.kind == BASEMENT]
    floor = below[0] if len(below) == 1 else None
    found = {n: floors.get(n) or ground_study(a, thermal[n], floor) for n, a in assemblies.items()}
    return {name: one for name, one in found.items() if one is not None}


def _kind(assembly: Assembly) -> str | None:
    """What the standard calls it; None where the assembly does not meet the ground."""
    if assembly.kind in ("floor", "slab") and "underfloor" in assembly.ground:
        return SUSPENDED
    if assembly.faces != "ground":
        return None
    if assembly.kind in ("wall", "foundation-wall"):
        return WALL
    return BASEMENT if assembly.ground.get("depth") else SLAB


def _missing(assembly: Assembly, thermal: ThermalStudy, kind: str) -> tuple[str, ...]:
    """Keys of the project file that the kind needs and that are not stated."""
    ground = assembly.ground
    wanted = ["conductivity", *(["depth"] if kind == WALL else ["perimeter"])]
    found = [] if assembly.area is not None or kind == WALL else ["area"]
    found += [f"ground.{key}" for key in wanted if not ground.get(key)]
    if kind == SUSPENDED:
        keys = ("height", "wall_transmittance", "vents", "wind_speed", "shielding")
        found += [f"ground.underfloor.{key}" for key in keys if ground["underfloor"].get(key) is None]
    return (*found, *(f"a thermal figure of layer {name}" for name in thermal.missing))


def _floor(
    assembly: Assembly, thermal: ThermalStudy, kind: str, data: GroundData, record: Recorder
) -> tuple[float, float, float]:
    """Transmittance, characteristic dimension and equivalent thickness of a floor."""
    ground = assembly.ground
    record.section("Size of the floor", key="ground-size")
    area = record.given("area", assembly.area.value, "area of the floor", FILE)
    perimeter = record.given("P", ground["perimeter"], "its exposed perimeter", FILE)
    dimension = record.step(f.characteristic_dimension, area=area, P=perimeter)
    layers = _own_layers(thermal, f.floor_layers, record)
    films = _films(data.floor_film, data.floor_film if kind == SUSPENDED else data.outside_film, record)
    thickness = _wall_thickness(ground, data, record)
    conductivity = _conductivity(ground, record)
    if ground.get("heated"):
        record.choice("The slab is heated", "this value takes the room's temperature; a heated slab loses more", STANDARD)
    if kind == SUSPENDED:
        value, equivalent = _suspended(ground, data, dimension, layers, films, (thickness, conductivity), record)
        return value, dimension, equivalent
    equivalent = record.step(
        f.floor_equivalent, w_e=thickness, lam_g=conductivity, R_si=films[0], R_f=layers, R_se=films[1]
    )
    if kind == BASEMENT:
        return _basement(ground, dimension, equivalent, conductivity, record), dimension, equivalent
    return _slab(ground, dimension, equivalent, conductivity, record), dimension, equivalent


def _slab(ground: dict, dimension: float, equivalent: float, conductivity: float, record: Recorder) -> float:
    """A floor at the level of the ground outside, with its edge insulation."""
    record.section("Floor on the ground", key="ground-slab")
    insulated = _say_branch(equivalent, dimension, record)
    formula = f.insulated_slab_transmittance if insulated else f.slab_transmittance
    plain = record.step(formula, lam_g=conductivity, B=dimension, d_f=equivalent, running_total=True)
    if not (edge := ground.get("edge_insulation")):
        return plain
    return edge_insulation(edge, plain, dimension, equivalent, conductivity, record)


def _say_branch(equivalent: float, dimension: float, record: Recorder) -> bool:
    """Whether the floor is well insulated: its equivalent thickness reaches its characteristic dimension."""
    insulated = equivalent >= dimension
    words = "reaches" if insulated else "is less than"
    record.choice(
        "The formula of well insulated floors" if insulated else "The formula of floors with little or moderate insulation",
        f"the equivalent thickness, {equivalent:.4g} m, {words} the characteristic dimension, {dimension:.4g} m",
    )
    return insulated


def _basement(ground: dict, dimension: float, equivalent: float, conductivity: float, record: Recorder) -> float:
    """A floor below the ground outside."""
    record.section("Basement floor", key="ground-basement")
    depth = record.given("z", ground["depth"], "below the ground outside", FILE)
    if "edge_insulation" in ground:
        record.choice("The edge insulation is not counted", "the standard has it for floors on the ground", STANDARD)
    insulated = _say_branch(equivalent + depth / 2, dimension, record)
    formula = f.insulated_basement_floor if insulated else f.basement_floor
    return record.step(formula, lam_g=conductivity, B=dimension, d_f=equivalent, z=depth, running_total=True)


def _suspended(
    ground: dict,
    data: GroundData,
    dimension: float,
    layers: float,
    films: tuple[float, float],
    walls_and_ground: tuple[float, float],
    record: Recorder,
) -> tuple[float, float]:
    """Transmittance of a floor over a vented space, and the equivalent thickness of the ground below."""
    below = ground["underfloor"]
    thickness, conductivity = walls_and_ground
    record.section("Suspended floor over the underfloor space", key="ground-suspended")
    floor = record.step(f.suspended_part, R_si=films[0], R_f=layers, R_se=films[1])
    outside = data.outside_film
    record.given("R_se", outside.value, "film outside", source_words(outside), outside)
    equivalent = record.step(
        f.bottom_equivalent, w_e=thickness, lam_g=conductivity, R_si=films[0], R_se=outside.value
    )
    bottom = record.step(f.bottom_transmittance, lam_g=conductivity, B=dimension, d_gr=equivalent)
    shielding = data.shielding[below["shielding"]]
    record.given("f_w", shielding.value, f"{below['shielding']} vents", source_words(shielding), shielding)
    walls = record.step(
        f.underfloor_transmittance,
        h_u=record.given("h_u", below["height"], "height of the floor above the ground", FILE),
        U_uw=record.given("U_uw", below["wall_transmittance"], "walls of the space", FILE),
        B=dimension,
        eps=record.given("eps", below["vents"] / 1e6, "vents", FILE),
        v_w=record.given("v_w", below["wind_speed"], "wind", FILE),
        f_w=shielding.value,
    )
    value = record.step(f.suspended_floor, U_fl=floor, U_bot=bottom, U_x=walls, running_total=True)
    return value, equivalent


def _wall(
    assembly: Assembly, thermal: ThermalStudy, floor: GroundStudy | None, data: GroundData, record: Recorder
) -> tuple[float, None, float]:
    """Transmittance of a basement wall and its equivalent thickness."""
    record.section("Basement wall", key="ground-wall")
    layers = _own_layers(thermal, f.wall_layers, record)
    films = _films(data.wall_film, data.outside_film, record)
    conductivity = _conductivity(assembly.ground, record)
    equivalent = record.step(f.wall_equivalent, lam_g=conductivity, R_si=films[0], R_w=layers, R_se=films[1])
    own = floor.equivalent_thickness if floor else None
    if own is None:
        because = "the floor's is not known here, and its own gives the greatest transmittance that may come out"
        record.choice("The wall's equivalent thickness stands for that of the floor", because, STANDARD)
    elif own > equivalent:
        record.choice("The wall's equivalent thickness stands for that of the floor", "it is the smaller one", STANDARD)
    below = equivalent if own is None else min(own, equivalent)
    taken = "the wall's own" if below == equivalent else "steps of the basement floor"
    record.given("d_f", below, "equivalent thickness taken for the floor", taken)
    depth = record.given("z", assembly.ground["depth"], "below the ground outside", FILE)
    value = record.step(f.basement_wall, lam_g=conductivity, z=depth, d_f=below, d_w=equivalent, running_total=True)
    return value, None, equivalent


def _own_layers(thermal: ThermalStudy, formula: object, record: Recorder) -> float:
    """The layers that count, each with its framing by parallel paths, without films."""
    return record.step(formula, R=tuple(one.with_framing for one in thermal.layers) or (0.0,))  # type: ignore[arg-type]


def _films(inside: Datum, outside: Datum, record: Recorder) -> tuple[float, float]:
    record.given("R_si", inside.value, "film inside", source_words(inside), inside)
    words = "film below, that of an inner surface" if outside is inside else "film outside"
    record.given("R_se", outside.value, words, source_words(outside), outside)
    return inside.value, outside.value


def _wall_thickness(ground: dict, data: GroundData, record: Recorder) -> float:
    if "wall_thickness" in ground:
        return record.given("w_e", ground["wall_thickness"], "walls on the edge", FILE)
    taken = data.wall_thickness
    words = f"{taken.value:.2f} m is taken for the thickness of the walls on the edge"
    record.choice(words, "wall_thickness is not stated", taken.origin.source)
    return record.given("w_e", taken.value, "walls on the edge", source_words(taken), taken)


def _conductivity(ground: dict, record: Recorder) -> float:
    return record.given("lam_g", ground["conductivity"], "ground", FILE)
