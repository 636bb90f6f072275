"""A module past 400 lines or a function past 40 is a question; each exception gives its answer here."""

import ast
from pathlib import Path

import pytest

SRC = Path(__file__).parents[2] / "src/refettle"
LONGEST_MODULE = 400
LONGEST_FUNCTION = 40
SHORT_AGAIN = 0.85
LONG_MODULES = {
    "files/amounts.py": "one short reader per kind of amount, each with its units and an example",
    "files/surface_fields.py": "one short reader per entry of a surface, sought in one place",
    "knowledge/knowledge.py": "one typed look-up per kind of thing; all that rules see",
    "planning/effects.py": "one function per verb, state to state; half of it is what goes in and comes out",
}
"""Modules that may be longer, each with its reason."""
LONG_FUNCTIONS = {
    "files/form_entries.py:build_places": "reads, builds, reports; most lines carry fields over",
}
"""Functions that may be longer, ``module.py:name``, each with its reason."""


def modules() -> list[Path]:
    return sorted(SRC.rglob("*.py"))


def code_lines(function: ast.FunctionDef) -> int:
    """Return the lines of a function below its signature and docstring."""
    body = function.body
    if ast.get_docstring(function) is not None:
        body = body[1:]
    if not body:
        return 0
    return (body[-1].end_lineno or 0) - body[0].lineno + 1


def weigh(lengths: dict[str, int], longest: int, reasons: dict[str, str]) -> None:
    """Refuse what is too long without a reason, and a reason for what has become short."""
    unasked = {name: lines for name, lines in lengths.items() if lines > longest and name not in reasons}
    assert not unasked, f"split, or give the reason in this file: {unasked}"
    stale = [name for name in reasons if lengths.get(name, 0) < SHORT_AGAIN * longest]
    assert not stale, f"short again, or gone: take off the list: {stale}"


def test_no_module_is_longer_than_its_reader_can_hold() -> None:
    lengths = {
        str(path.relative_to(SRC)): len(path.read_text(encoding="utf-8").splitlines()) for path in modules()
    }
    weigh(lengths, LONGEST_MODULE, LONG_MODULES)


def test_no_function_is_longer_than_a_screen() -> None:
    lengths = {
        f"{path.relative_to(SRC)}:{node.name}": code_lines(node)
        for path in modules()
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef)
    }
    weigh(lengths, LONGEST_FUNCTION, LONG_FUNCTIONS)


@pytest.mark.parametrize("reasons", [LONG_MODULES, LONG_FUNCTIONS], ids=["modules", "functions"])
def test_every_exception_gives_a_reason(reasons: dict[str, str]) -> None:
    assert all(len(reason.split()) > 3 for reason in reasons.values())


def test_no_module_is_a_drawer_for_odds_and_ends() -> None:
    drawers = {"utils", "util", "helpers", "helper", "manager", "misc", "common", "tools"}
    assert not [str(path.relative_to(SRC)) for path in modules() if path.stem in drawers]
