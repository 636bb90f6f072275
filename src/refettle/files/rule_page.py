"""
The reference page of all fault rules, made from their cards and cases.

``python -m refettle.files.rule_page docs/reference/rules.md`` writes it.
"""

import sys
from dataclasses import dataclass
from importlib.resources import files
from itertools import groupby
from pathlib import Path
from typing import Final

from refettle.files.tables import load_knowledge
from refettle.knowledge import Knowledge
from refettle.rules import RULES
from refettle.rules.card import Card

_HEAD: Final = """# Fault rules

A rule says how likely one fault is when a step meets a surface, and why. Rules of one mechanism read
the same properties. Independent causes of one fault combine; one cause counts once, however many coats
meet it. Every rule is held to cases: some must make it speak, some must leave it silent, and each case
that makes it speak has a twin with the one change that avoids the fault, where the chance must at least
halve. The cases stand in `src/refettle/rules/cases`, one file a rule.

This page is made from the program's own cards and cases; a test keeps them alike.
"""
_ASKED: Final = {
    "coat": "as each coat is laid",
    "work": "at work that lays no coat",
    "expose": "when it meets sun, water, cold or transport",
    "use": "in use",
}
_SITS: Final = {
    "wood": "in the wood",
    "below": "in what is below",
    "between": "between the films",
    "film": "in the film",
    "on top": "on top",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseNames:
    """
    What the cases of one card are called.

    Attributes
    ----------
    fires
        Names of firing cases, each with the name of its twin.
    silent
        Names of silent cases.
    """

    fires: tuple[tuple[str, str], ...]
    silent: tuple[str, ...]


def case_names() -> dict[str, CaseNames]:
    """
    Return the names of all cases by card.

    Returns
    -------
    dict
        Card id → names, in the order of the files.
    """
    from ruamel.yaml import YAML  # noqa: PLC0415 - slow to load, and only this page needs it

    yaml = YAML(typ="safe", pure=True)
    found = {}
    for path in files("refettle.rules").joinpath("cases").iterdir():
        if not path.name.endswith(".yaml"):
            continue
        tree = yaml.load(path.read_text(encoding="utf-8"))
        found[tree["card"]] = CaseNames(
            fires=tuple((case["name"], case["twin"]["name"]) for case in tree["fires"]),
            silent=tuple(case["name"] for case in tree["silent"]),
        )
    return found


def rule_page() -> str:
    """
    Return the reference page of fault rules as Markdown.

    Returns
    -------
    str
        The page, with a line end at its end.
    """
    know, names = load_knowledge(), case_names()
    lines = [_HEAD]
    ordered = sorted(RULES, key=lambda card: card.mechanism)
    for mechanism, cards in groupby(ordered, key=lambda card: card.mechanism):
        lines.append(f"## {mechanism[0].upper()}{mechanism[1:]}\n")
        for card in cards:
            lines.extend(_section(know, card, names.get(card.id, CaseNames(fires=(), silent=()))))
    return "\n".join(lines)


def _section(know: Knowledge, card: Card, names: CaseNames) -> list[str]:
    """Return the lines of one card."""
    earliest, latest = card.onset
    shows = earliest if earliest == latest else f"{earliest} to {latest}"
    lines = [
        f"### `{card.id}`",
        "",
        f"- Fault: {know.name('fault', card.fault)}, {_SITS.get(card.layer, card.layer)}",
        f"- Asked: {', '.join(_ASKED[level] for level in card.levels)}",
        f"- Shows: {shows}",
        f"- Signs: {'; '.join(card.signs)}",
        f"- Sources: {'; '.join(know.source(key).title for key in card.sources)}",
    ]
    lines.extend(f"- Speaks: {fires}. Avoided: {avoided}." for fires, avoided in names.fires)
    lines.extend(f"- Silent: {silent}." for silent in names.silent)
    return [*lines, ""]


def main(words: list[str] | None = None) -> int:
    """
    Write the page.

    Parameters
    ----------
    words
        Words of the command line: the file to write.

    Returns
    -------
    int
        0 when it is written, 2 for a wrong call.
    """
    given = sys.argv[1:] if words is None else words
    if len(given) != 1:
        sys.stderr.write("one word is due: the file to write, docs/reference/rules.md\n")
        return 2
    Path(given[0]).write_text(rule_page(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
