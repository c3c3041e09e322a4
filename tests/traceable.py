"""A trace that a reader can follow: nothing is used that was not given before or found above."""

from layerfolio.steps.trace import Given, Step


def each_number_is_given_or_found(trace, before=()):
    """Every argument of a step is a given figure with a source, a result above, or one of `before`."""
    known = set(before)
    for entry in trace.entries:
        if isinstance(entry, Given):
            assert entry.source
            known.add(entry.quantity)
        elif isinstance(entry, Step):
            assert {name for name, _ in entry.arguments} <= known
            known.add(entry.formula.result)
