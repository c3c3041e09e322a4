"""What `layerfolio list` prints: one line a thing, its name first."""

import re
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
    """Explanations the tool can print: name, then the question; then by set the figures that can be amended, by id."""
    from layerfolio.home import folder

    for path in sorted((folder("templates") / "explanations").glob("*.txt")):
        question = re.search(r"\*\*(.+?)\*\*", path.read_text(encoding="utf-8"), re.S)
        words = re.sub(r"\{\{ *(\w+) *\}\}", r"\1", " ".join(question[1].split())) if question else ""
        yield f"{path.stem:<44} {words}".rstrip()
    yield from _amendable()


def _amendable() -> Iterator[str]:
    """By set: id, title and unit of each figure that a project's amendments can replace."""
    from layerfolio.catalogue.code_sets import code_set, set_ids
    from layerfolio.codes.amendments import DAY, amendable
    from layerfolio.codes.requirements import requirements
    from layerfolio.glossary import term

    for name in set_ids():
        known = amendable(name)
        titles = {one.id: one.title for one in requirements(name)}
        if known:
            yield ""
            yield f"{name}: figures that amendments can replace ({code_set(name).title})"
        for one, quantity in known.items():
            unit = "date" if quantity == DAY else f"{term(quantity).si} or {term(quantity).customary}"
            yield f"  {one:<52} {titles.get(one, 'Edition in force from')} ({unit})"


def climates() -> Iterator[str]:
    """Place, degree-days, heating design temperature, snow, wind, source: rows to copy, never a silent default."""
    from layerfolio.catalogue.climates import climates as rows
    from layerfolio.catalogue.sources import printed

    yield (
        "Figures to copy into a project file, with their source. Under climate: K·d is heating_degree_days, January 2.5 % "
        "is heating_design_temperature. Under site_loads: snow is snow, wind is wind_pressure_1_50."
    )
    for one in rows():
        yield (
            f"{one.place + ', ' + one.region:<40} {one.heating_degree_days:.0f} K·d below 18 °C, January 2.5 % "
            f"{one.january_2_5:g} °C, snow {one.snow:g} kPa, wind 1 in 50 {one.wind_1_50:g} kPa "
            f"({printed(one.origin.source)}, {one.origin.mark})"
        )


def starters() -> Iterator[str]:
    """Starter projects of `layerfolio new`: name, code set, what is in it."""
    import yaml

    from layerfolio.catalogue.code_sets import code_set
    from layerfolio.starters import starter_file
    from layerfolio.starters import starters as listed

    for name in listed():
        project = yaml.load(starter_file(name).read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
        held = ", ".join(f"{key} {one['title'].lower()}" for key, one in project["assemblies"].items())
        layers = sum(len(one["layers"]) for one in project["assemblies"].values())
        yield f"{name:<12} {held}, {layers} layers; code set {project['code']['set']}: {code_set(project['code']['set']).title}"
