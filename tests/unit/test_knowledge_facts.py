"""The fact classes and the registry of properties say the same."""

from dataclasses import fields

import pytest

from refettle.files.tables import read_tables
from refettle.knowledge import facts
from refettle.knowledge.rows import KINDS, Property

TYPES = {"number": float, "flag": bool, "text": str, "list": tuple[str, ...]}
CLASSES = {
    "film": facts.FilmFacts,
    "wood": facts.WoodFacts,
    "build": facts.BuildFacts,
    "contaminant": facts.ContaminantFacts,
    "latent": facts.LatentFacts,
    "cleaner": facts.CleanerFacts,
    "remover": facts.RemoverFacts,
    "tool": facts.ToolFacts,
    "test": facts.TestFacts,
    "damage": facts.DamageFacts,
    "repair": facts.RepairFacts,
    "fault": facts.FaultFacts,
    "labour": facts.LabourFacts,
    "operation": facts.OperationFacts,
    "fitting": facts.FittingFacts,
    "supply": facts.SupplyFacts,
}


@pytest.fixture(scope="module")
def registry() -> tuple[Property, ...]:
    return read_tables().properties


def test_every_kind_has_a_fact_class() -> None:
    assert set(CLASSES) == set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_fields_and_registry_agree_both_ways(kind: str, registry: tuple[Property, ...]) -> None:
    due = {prop.name: TYPES[prop.type] for prop in registry if prop.kind == kind}
    have = {field.name: field.type for field in fields(CLASSES[kind]) if field.name not in {"id", "name"}}
    assert have == due


def test_the_registry_knows_no_kind_without_a_class(registry: tuple[Property, ...]) -> None:
    assert {prop.kind for prop in registry} == {*KINDS, "era"}


def test_every_default_reads_as_its_type_and_stands_within_bounds(registry: tuple[Property, ...]) -> None:
    for prop in registry:
        if prop.type == "number" and prop.default:
            assert prop.low is None or float(prop.default) >= prop.low, prop
            assert prop.high is None or float(prop.default) <= prop.high, prop
