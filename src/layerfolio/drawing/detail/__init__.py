"""Junctions drawn from the assemblies that meet: first a model in building millimetres, then marks on paper."""
