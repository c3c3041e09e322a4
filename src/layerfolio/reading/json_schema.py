"""The JSON Schema of the project file, for editors that complete and check while one writes."""

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.schema import Project

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema() -> dict:
    """Draft 2020-12. A file with `variant_of` holds any part of a project, and null where a key is removed."""
    definitions = Definitions()
    whole = definitions.reference(Project)
    definitions.partial = True
    part = definitions.reference(Project)
    variant = {"properties": {"variant_of": {"type": "string"}}, "required": ["variant_of"]}
    return {
        "$schema": DIALECT,
        "title": "layerfolio project file",
        "if": variant,
        "then": part,
        "else": whole,
        "$defs": definitions.made,
    }
