"""The JSON Schema of the project file, for editors that complete and check while one writes."""

from collections.abc import Iterable

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.schema import Project

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema(families: Iterable[str] = ()) -> dict:
    """Draft 2020-12; `families` are the hatch families that the tool draws, named in the descriptions.

    A file with `variant_of` holds any part of a project, and null where a key is removed.
    """
    definitions = Definitions()
    whole = definitions.reference(Project)
    definitions.partial = True
    part = definitions.reference(Project)
    _name_families(definitions, list(families))
    variant = {"properties": {"variant_of": {"type": "string"}}, "required": ["variant_of"]}
    return {
        "$schema": DIALECT,
        "title": "layerfolio project file",
        "if": variant,
        "then": part,
        "else": whole,
        "$defs": definitions.made,
    }


def _name_families(definitions: Definitions, families: list[str]) -> None:
    for one in definitions.made.values():
        if families and "family" in one["properties"]:
            family = one["properties"]["family"]
            family["description"] += f": {', '.join(families)}"
            family["examples"] = families
