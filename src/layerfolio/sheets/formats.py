"""What each sheet format leaves to drawings, paper millimetres."""

WIDE = ("tabloid", "a3")
FIELDS = {"letter": 180.0, "a4": 180.0, "tabloid": 193.95, "a3": 191.0}
"""Width of a field; on wide sheets there are two, and tags carry notes."""
ROOM = {"letter": 203.0, "tabloid": 203.0, "a4": 220.6, "a3": 220.6}
"""What a page leaves below its head."""
