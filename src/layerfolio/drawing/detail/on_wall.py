"""What every junction at a wall measures from: the faces of its zones, and how far control lines run off a layer."""

from layerfolio.drawing.detail.arm import Arm


class OnWall:
    """Shared by the places of junctions that have a wall and a scale; lengths in building millimetres inward from its datum."""

    wall: Arm
    scale: float

    @property
    def off(self) -> float:
        """How far control lines run off the layer they follow."""
        return 1.75 * self.scale

    @property
    def outer(self) -> float:
        """The outermost face."""
        return self.wall.courses[0].start

    @property
    def inner(self) -> float:
        """The face to the room."""
        return self.wall.courses[-1].end

    @property
    def cover(self) -> float:
        """The outermost face of what lies between frame and rain screen."""
        outer = self.wall.zone("outer")
        return outer[0].start if outer else 0.0

    @property
    def frame_end(self) -> float:
        """The inner face of the frame."""
        return self.wall.zone("frame")[-1].end
