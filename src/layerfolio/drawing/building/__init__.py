"""One section through the whole building, put together from its junctions."""
