"""The bundled faces, registered once with reportlab."""

NAMES = {
    "regular": "LF",
    "bold": "LF-Bold",
    "oblique": "LF-Oblique",
    "bold oblique": "LF-BoldOblique",
    "mono": "LF-Mono",
}


def register() -> dict[str, str]:
    """Register the faces (once) and give the PDF font name of each style."""
    raise NotImplementedError
