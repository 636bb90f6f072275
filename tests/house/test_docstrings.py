"""Every public function of physics says the unit of each number, its source, and runs an example."""

import ast
import re
from pathlib import Path

import pytest

PHYSICS = Path(__file__).parents[2] / "src/refettle/physics"
NUMBERS = {"float", "int", "float | None", "tuple[float, float]", "tuple[int, ...]"}


def public_functions() -> dict[str, ast.FunctionDef]:
    return {
        f"{path.stem}.{node.name}": node
        for path in sorted(PHYSICS.glob("*.py"))
        for node in ast.parse(path.read_text(encoding="utf-8")).body
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")
    }


def section(doc: str, title: str) -> str:
    """Return the text under an underlined title, up to the next one."""
    found = re.search(rf"^{title}\n-+\n(.*?)(?=^\w+\n-+\n|\Z)", doc, flags=re.MULTILINE | re.DOTALL)
    return found.group(1) if found else ""


def entry(text: str, name: str) -> str:
    """Return what a section says of one parameter, also where it shares its line with others."""
    for head, body in re.findall(r"^(\S[^\n]*)\n((?:[ \t]+[^\n]*\n?)+)", text + "\n", flags=re.MULTILINE):
        if name in [word.strip() for word in head.split(",")]:
            return str(body)
    return ""


@pytest.mark.parametrize("name", public_functions())
def test_every_number_that_goes_in_has_its_unit(name: str) -> None:
    function = public_functions()[name]
    parameters = section(ast.get_docstring(function) or "", "Parameters")
    for argument in (*function.args.args, *function.args.kwonlyargs):
        said = entry(parameters, argument.arg)
        assert said, f"{name}: {argument.arg} is not explained"
        if argument.annotation is not None and ast.unparse(argument.annotation) in NUMBERS:
            assert re.search(r"\[[^\]]+\]", said), f"{name}: {argument.arg} has no [unit]"


@pytest.mark.parametrize("name", public_functions())
def test_every_number_that_comes_out_has_its_unit(name: str) -> None:
    function = public_functions()[name]
    if function.returns is not None and ast.unparse(function.returns) in NUMBERS:
        assert re.search(r"\[[^\]]+\]", section(ast.get_docstring(function) or "", "Returns"))


@pytest.mark.parametrize("name", public_functions())
def test_every_function_has_an_example_and_those_that_reckon_a_source(name: str) -> None:
    doc = ast.get_docstring(public_functions()[name]) or ""
    assert ">>>" in section(doc, "Examples")
    if not name.startswith("limits.") and section(doc, "Returns"):
        assert re.search(r"[Ss]ource|[Cc]ommon practice|[Jj]udgement|ISO \d|published", section(doc, "Notes"))
