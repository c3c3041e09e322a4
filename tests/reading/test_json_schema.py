"""The JSON Schema: an editor accepts what the tool accepts and marks what it refuses."""

import jsonschema
import pytest
import yaml
from workbench import PROJECT, spoilt

from layerfolio.reading.json_schema import json_schema
from layerfolio.reading.schema import Project


class Plain(yaml.SafeLoader):
    """Loads as an editor with YAML 1.2 does: dates stay texts."""


Plain.yaml_implicit_resolvers = {
    first: [one for one in pairs if one[0] != "tag:yaml.org,2002:timestamp"]
    for first, pairs in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


@pytest.fixture(scope="module")
def validator():
    schema = json_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def wrong(validator, text: str) -> bool:
    return bool(list(validator.iter_errors(yaml.load(text, Loader=Plain))))


def test_the_contract_example_is_valid(validator):
    assert list(validator.iter_errors(yaml.load(PROJECT, Loader=Plain))) == []


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("kind: wall", "kind: wal"),
        ("area: 58 m2", "area: 58"),
        ("thickness: 19 mm", "thicknes: 19 mm"),
        ("  title: Tern Point chandlery\n", ""),
        ("layerfolio: 1", "layerfolio: 2"),
        ("{class: 2}", "{class: 7}"),
        ("heat_recovery: true", "heat_recovery: maybe"),
        ("15, 18, 17.5", "15, 17.5"),
        ("seams: taped", "seams: glued"),
        ("[water control]", "[water]"),
        ("    kind: wall\n", ""),
        ("{dry: 2, wet: 1}", "{dri: 2}"),
    ],
)
def test_mistakes_are_marked(validator, before, after):
    assert wrong(validator, spoilt(before, after)[0])


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("{class: 2}", "{relative_humidity: 45 %}"),
        ("{dry: 2, wet: 1}", "2"),
        ("serves: [water control]", "serves: water control"),
        ("area: 58 m2", "area: null"),
        ("{class: 2}", '{unit: "%", values: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]}'),
        ('zone: "6"', "zone: 6"),
    ],
)
def test_other_forms_are_valid(validator, before, after):
    assert not wrong(validator, spoilt(before, after)[0])


def test_a_variant_needs_nothing_and_may_remove(validator):
    assert not wrong(validator, "variant_of: project.yaml\nassemblies: {W1: {area: null}, W2: null}\nindoor: null\n")
    assert wrong(validator, "variant_of: project.yaml\nassemblies: {W1: {aera: null}}\n")
    assert wrong(validator, "variant_of: project.yaml\nassemblies: {W1: {layers: [{thicknes: 1 m}]}}\n")


def test_every_key_says_what_it_means():
    for name, definition in json_schema()["$defs"].items():
        assert definition["description"], name
        for key, about in definition["properties"].items():
            assert len(about["description"]) > 3, (name, key)


def test_schema_and_reader_know_the_same_keys():
    definitions = json_schema()["$defs"]
    assert list(definitions["Project"]["properties"]) == list(Project.outside_names())
    assert list(definitions["ProjectInVariant"]["properties"]) == list(Project.outside_names())
