"""Courses of assemblies, as the details draw them: what is drawn and what is judged of it share one home (assembly.courses)."""

from layerfolio.assembly.courses import Course, Zone, courses, frame_range

__all__ = ["Course", "Zone", "courses", "frame_range"]
