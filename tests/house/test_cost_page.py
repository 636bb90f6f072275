"""The page on what a plan adds up tells every constant of the sum, at the value that it has."""

import ast
import re
from collections.abc import Mapping
from pathlib import Path
from types import ModuleType

import pytest

from refettle.planning import cost, goal, search

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs/why/cost.md"
IN_THE_SUM = {
    cost: None,
    goal: None,
    search: ("_MISSED_M2", "_REDO_M2", "_NEEDED_WEIGHT", "MAX_EXPANSIONS"),
}
"""Modules, and which of their constants count; None = all that are numbers."""


def written(value: object) -> str:
    """Return a constant as the page writes it, empty where it is no number."""
    if isinstance(value, Mapping):
        numbers = all(isinstance(number, float) for number in value.values())
        return ", ".join(f"{key} {number:g}" for key, number in value.items()) if numbers else ""
    return f"{value:g}" if isinstance(value, int | float) else ""


def constants(module: ModuleType) -> dict[str, str]:
    """Return the names of a module's own constants with their values as written."""
    tree = ast.parse(Path(str(module.__file__)).read_text(encoding="utf-8"))
    names = [
        target.id
        for node in tree.body
        if isinstance(node, ast.Assign)
        for target in node.targets
        if isinstance(target, ast.Name)
    ]
    wanted = IN_THE_SUM[module]
    values = {name: written(getattr(module, name)) for name in names if wanted is None or name in wanted}
    return {name: value for name, value in values.items() if value}


USED = {name: value for module in IN_THE_SUM for name, value in constants(module).items()}
TOLD = dict(re.findall(r"^\| `(\w+)` \| ([^|]+) \|", PAGE.read_text(encoding="utf-8"), flags=re.MULTILINE))


def test_the_scan_finds_numbers_and_tables_of_numbers() -> None:
    assert {"_TROUBLE", "VALUE_LOST_M2", "_FLAW_MONEY", "_NEEDED_WEIGHT"} <= set(USED)


@pytest.mark.parametrize("name", sorted(USED))
def test_the_page_tells_a_constant_at_its_value(name: str) -> None:
    assert TOLD.get(name) == USED[name], f"docs/why/cost.md: | `{name}` | {USED[name]} | why |"


def test_the_page_tells_no_constant_that_is_not_there() -> None:
    assert set(TOLD) <= set(USED), sorted(set(TOLD) - set(USED))


def test_the_page_tells_the_weightings() -> None:
    told = dict(
        re.findall(r"^\| ([a-z ]+) \| ([^|]+) \|$", PAGE.read_text(encoding="utf-8"), flags=re.MULTILINE)
    )
    for aim in cost.AIMS[1:]:
        parts = {part: getattr(aim, part) for part in ("money", "hours", "days", "risk")}
        assert told[aim.name] == ", ".join(
            f"{part} {value:g}" for part, value in parts.items() if value != 1.0
        )
