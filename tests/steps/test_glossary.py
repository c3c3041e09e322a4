"""A single term is read from its own line; it is the same as in the glossary read whole."""

import pytest

from layerfolio.glossary import term, terms


def test_every_term_alone_is_the_term_of_the_whole():
    assert len(terms()) > 50
    for name, whole in terms().items():
        assert term(name) == whole


def test_an_unknown_name_is_a_key_error():
    with pytest.raises(KeyError):
        term("no such quantity")
