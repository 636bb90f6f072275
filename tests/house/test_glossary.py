"""Every unit, column and word that files and tables use is explained on the glossary page."""

import ast
import csv
import re
from pathlib import Path

import pytest

from refettle.domain import piece, step
from refettle.physics import drying, rates

ROOT = Path(__file__).parents[2]
GLOSSARY = (ROOT / "docs/reference/glossary.md").read_text(encoding="utf-8")
NAMED = frozenset(re.findall(r"`([^`]+)`", GLOSSARY))
DATA = ROOT / "src/refettle/knowledge/data"

UNIT_WORDS = frozenset(
    {
        "um", "mm", "cm", "m", "m2", "m3", "ft", "in", "mil", "l", "ml", "gal", "kg", "g", "lb", "mol",
        "h", "min", "s", "d", "days", "c", "k", "f", "pa", "j", "w", "pct", "per", "p", "vol",
    }
)  # fmt: skip
"""Endings that can only be units; a name ends in a run of them."""


def unit_suffix(name: str) -> str:
    """Return the run of unit words at the end of a name, ``""`` where there is none."""
    words = name.strip("_").lower().split("_")
    run: list[str] = []
    for word in reversed(words[1:]):
        if word not in UNIT_WORDS:
            break
        run.insert(0, word)
    return f"_{'_'.join(run)}" if run else ""


def numeric_names(source: str) -> set[str]:
    """Return the names of fields, parameters and functions that carry numbers."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            names.add(node.target.id)
        elif isinstance(node, ast.arg):
            names.add(node.arg)
        elif isinstance(node, ast.FunctionDef):
            names.add(node.name)
    return names


def used_suffixes() -> dict[str, str]:
    """Return every unit suffix in use with one name that carries it."""
    names = {row["property"] for row in table("properties.csv")}
    for folder in ("domain", "physics"):
        for path in sorted((ROOT / "src/refettle" / folder).glob("*.py")):
            names |= numeric_names(path.read_text(encoding="utf-8"))
    return {unit_suffix(name): name for name in sorted(names) if unit_suffix(name)}


def table(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_a_suffix_is_the_run_of_units_at_the_end_of_a_name() -> None:
    assert unit_suffix("spread_m2_per_l") == "_m2_per_l"
    assert unit_suffix("density_kg_m3") == "_kg_m3"
    assert unit_suffix("shrink_t") == ""
    assert unit_suffix("minutes") == ""


@pytest.mark.parametrize(("suffix", "name"), sorted(used_suffixes().items()))
def test_every_unit_suffix_in_use_is_explained(suffix: str, name: str) -> None:
    assert suffix in NAMED, f"{name} ends in {suffix}, which the glossary does not explain"


def test_every_unit_of_the_registry_is_explained() -> None:
    units = {row["unit"] for row in table("properties.csv") if row["unit"]}
    assert units <= NAMED, sorted(units - NAMED)


@pytest.mark.parametrize("path", sorted(DATA.glob("*.csv")), ids=lambda path: str(path.name))
def test_every_column_of_the_tables_is_explained(path: Path) -> None:
    columns = set(path.read_text(encoding="utf-8").partition("\n")[0].strip().split(","))
    assert columns <= NAMED, sorted(columns - NAMED)


@pytest.mark.parametrize(
    "words",
    [
        step.VERBS, piece.LOOKS, piece.SHEENS, piece.SOUNDNESS, piece.RELIEFS, piece.ORIENTATIONS,
        piece.USES, piece.VALUES, drying.FAMILIES, rates.CARRIERS,
    ],
)  # fmt: skip
def test_every_word_of_the_fixed_lists_is_explained(words: frozenset[str] | tuple[str, ...]) -> None:
    assert set(words) <= NAMED, sorted(set(words) - NAMED)


def test_every_kind_of_thing_is_explained() -> None:
    line = next(line for line in GLOSSARY.splitlines() if line.startswith("| `kind` |"))
    missing = {row["kind"] for row in table("properties.csv")} - set(re.findall(r"[a-z]+", line))
    assert not missing, sorted(missing)


# design, "Words that shops mix up": each pair is told apart by two entries of their own.
@pytest.mark.parametrize(
    "word",
    [
        "white ring", "black ring", "mineral spirits", "alcohol", "dewaxed shellac", "waxy shellac",
        "liming", "whitewash", "blush", "wax bloom", "water in the film", "sanding haze", "stain", "mark",
        "grit", "dry to touch", "dry to recoat", "dry to sand", "dry to wrap", "cured", "lifted veneer",
        "missing veneer",
    ],
)  # fmt: skip
def test_words_that_shops_mix_up_have_an_entry_each(word: str) -> None:
    assert re.search(rf"^\| {word} \|", GLOSSARY, flags=re.MULTILINE)


def test_no_word_is_explained_twice_in_one_sense() -> None:
    heads = re.findall(r"^\| ([a-z][a-z ]+) \|", GLOSSARY, flags=re.MULTILINE)
    assert len(heads) == len(set(heads))
