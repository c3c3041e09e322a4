"""The JSON Schema of records, made from the same declarations that read them."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from layerfolio.reading.record import Record


class Definitions:
    """The `$defs` of a JSON Schema while it is written. `partial` is for variant files, where nothing is required."""

    def __init__(self) -> None:
        self.made: dict[str, dict] = {}
        self.partial = False

    def reference(self, record: "type[Record]") -> dict:
        name = f"{record.__name__}InVariant" if self.partial else record.__name__
        if name not in self.made:
            self.made[name] = {}
            self.made[name].update(self.mapping(record))
        return {"$ref": f"#/$defs/{name}"}

    def mapping(self, record: "type[Record]") -> dict:
        properties = {}
        required = []
        for name, one in record.KEYS.items():
            inner = one.reader.schema(self)
            if self.partial or not one.required:
                inner = {"anyOf": [inner, {"type": "null"}]}
            properties[one.name or name] = {**inner, "description": one.about}
            if one.required and not self.partial:
                required.append(one.name or name)
        about = (record.__doc__ or "").strip().split("\n")[0]
        made = {"type": "object", "description": about, "properties": properties, "additionalProperties": False}
        return {**made, "required": required} if required else made
