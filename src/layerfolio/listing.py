"""What `layerfolio list` prints: one line a thing, its name first."""

from collections.abc import Iterator


def materials() -> Iterator[str]:
    """Name, conductivity with source, title."""
    from layerfolio.catalogue.materials import material, names
    from layerfolio.catalogue.sources import printed

    for name in names():
        one = material(name)
        figure = one.conductivity
        words = f"λ {figure.value:g} W/(m·K), {printed(figure.origin.source)}, {figure.origin.mark}" if figure else (
            "no conductivity: a declared value is needed" if "conductivity" in one.needs else ""
        )  # fmt: skip
        yield f"{name:<34} {one.title}" + (f"  ({words})" if words else "")


def codes() -> Iterator[str]:
    """Set, title, method."""
    from layerfolio.catalogue.code_sets import code_set, set_ids, zones

    for name in set_ids():
        one = code_set(name)
        zone_words = f"; zones {', '.join(zones(name))}" if zones(name) else ""
        yield f"{name:<12} {one.title}; {one.content['method'].replace('-', ' ')}{zone_words}"


def questions() -> Iterator[str]:
    """Explanations the tool can print."""
    from layerfolio.home import folder

    for path in sorted((folder("templates") / "explanations").glob("*.txt")):
        yield path.stem


def climates() -> Iterator[str]:
    """Place, degree-days, heating design temperature, snow, wind, source: rows to copy, never a silent default."""
    from layerfolio.catalogue.climates import climates as rows
    from layerfolio.catalogue.sources import printed

    for one in rows():
        yield (
            f"{one.place + ', ' + one.region:<40} {one.heating_degree_days:.0f} K·d below 18 °C, January 2.5 % "
            f"{one.january_2_5:g} °C, snow {one.snow:g} kPa, wind 1 in 50 {one.wind_1_50:g} kPa "
            f"({printed(one.origin.source)}, {one.origin.mark})"
        )


def starters() -> Iterator[str]:
    """Starter projects of `layerfolio new`."""
    from layerfolio.starters import starters as listed

    yield from listed()
