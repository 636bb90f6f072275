"""Marks of steps are one vocabulary: rules and effects read what a person can write, all of it, no more."""

import ast
from collections.abc import Iterator
from pathlib import Path

from refettle.domain.step import EVENT_MARKS, WORK_MARKS, mark_words

SOURCE = Path(__file__).parents[2] / "src/refettle"
READERS = (*sorted((SOURCE / "rules").glob("*.py")), *sorted((SOURCE / "planning").glob("*.py")),
           SOURCE / "services/foresee.py")  # fmt: skip
"""Rules, effects and costs, and the reading of a sequence before it is played."""
WRITABLE = frozenset(EVENT_MARKS.values()) | frozenset(WORK_MARKS.values())


def is_how(node: ast.expr, names: frozenset[str]) -> bool:
    """Return whether an expression is a step's marks, or marks joined with something."""
    if isinstance(node, ast.BinOp):
        return is_how(node.left, names) or is_how(node.right, names)
    if isinstance(node, ast.Name):
        return node.id in names
    return isinstance(node, ast.Attribute) and node.attr == "how"


def texts(node: ast.AST) -> set[str]:
    return {n.value for n in ast.walk(node) if isinstance(n, ast.Constant) and isinstance(n.value, str)}


def names_of_marks(function: ast.FunctionDef) -> frozenset[str]:
    """Return the local names that stand for a step's marks."""
    return frozenset(
        target.id
        for node in ast.walk(function)
        if isinstance(node, ast.Assign) and is_how(node.value, frozenset())
        for target in node.targets
        if isinstance(target, ast.Name) and isinstance(node.value, ast.Attribute)
    )


def asked_of(node: ast.AST, names: frozenset[str]) -> bool:
    """Return whether a node asks something of a step's marks."""
    if isinstance(node, ast.Compare):
        return any(is_how(side, names) for side in (node.left, *node.comparators))
    return isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitAnd) and is_how(node, names)


def read_marks(source: str) -> Iterator[str]:
    """Yield the marks that a module asks for: ``"wet" in step.how`` and ``step.how & {"wet"}``."""
    for function in ast.walk(ast.parse(source)):
        if isinstance(function, ast.FunctionDef):
            names = names_of_marks(function)
            for node in ast.walk(function):
                if asked_of(node, names):
                    yield from texts(node)


def all_read() -> dict[str, str]:
    """Return each mark that is read, with a module that reads it."""
    return {mark: path.name for path in READERS for mark in read_marks(path.read_text(encoding="utf-8"))}


def test_the_scan_finds_marks_however_they_are_asked_for() -> None:
    source = (
        "def judge(sit):\n    marks = sit.step.how\n"
        "    a = 'wet' in sit.step.how | {sit.step.method}\n    b = 'dark' not in marks\n"
        "    return a or b or sit.step.how & {'sun', 'heat'} or not {'cold'} & marks or 'key' in sit.keys\n"
    )
    assert set(read_marks(source)) == {"wet", "dark", "sun", "heat", "cold"}


def test_every_mark_that_is_read_can_be_written() -> None:
    unwritable = {mark: where for mark, where in all_read().items() if mark not in WRITABLE}
    assert not unwritable, f"not in EVENT_MARKS or WORK_MARKS: {unwritable}"


def test_every_mark_that_can_be_written_is_read() -> None:
    idle = WRITABLE - set(all_read())
    assert not idle, f"no rule, effect or cost reads: {sorted(idle)}"


def test_a_mark_has_one_word_and_a_word_one_mark() -> None:
    assert len(set(EVENT_MARKS.values())) == len(EVENT_MARKS)
    assert len(set(WORK_MARKS.values())) == len(WORK_MARKS)
    assert not set(EVENT_MARKS) & set(WORK_MARKS)
    assert mark_words(WRITABLE) == tuple(sorted((*EVENT_MARKS, *WORK_MARKS)))
