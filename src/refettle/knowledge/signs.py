"""Signs: what a person sees, and how often each fault shows it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

SIGN_KINDS: Final = ("look", "where", "try")
UNLISTED_LOOK: Final = 0.015
"""Chance that a fault is described by a look that no row gives it [1]; judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """
    One thing that can be seen, placed or tried.

    Attributes
    ----------
    id, name
        Permanent id and plain words.
    kind
        ``look`` what it looks like, ``where`` it sits, ``try`` what a small trial or the air says.
    question
        How one asks for it.
    base
        Chance that it is there whatever the fault [1].
    minutes
        Time to find out [min].
    words
        Phrases in which people say it.
    """

    id: str
    name: str
    kind: str
    question: str
    base: float
    minutes: float
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SignChance:
    """
    How often a fault shows a sign.

    Attributes
    ----------
    id
        Row id, kept for ever.
    sign, fault
        Ids.
    rule
        Rule card whose cause shows it in its own way; empty = whatever the cause.
    chance
        Chance that the sign is there when the fault is [1].
    source, grade
        On what it rests.
    """

    id: str
    sign: str
    fault: str
    rule: str
    chance: float
    source: str
    grade: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SignBook:
    """
    All signs with their chances.

    Attributes
    ----------
    signs
        Sign by id, in the order of the table.
    rows
        Row by sign, fault and rule.
    """

    signs: Mapping[str, Sign]
    rows: Mapping[tuple[str, str, str], SignChance]

    @classmethod
    def build(cls, signs: Iterable[Sign], chances: Iterable[SignChance]) -> "SignBook":
        """Return the book made from rows."""
        return cls(
            signs={sign.id: sign for sign in signs},
            rows={(row.sign, row.fault, row.rule): row for row in chances},
        )

    def row(self, sign: str, fault: str, rule: str) -> SignChance | None:
        """Return the row that speaks for a cause: its rule's own before its fault's; None where none does."""
        return self.rows.get((sign, fault, rule)) or self.rows.get((sign, fault, ""))

    def chance(self, sign: str, fault: str, rule: str) -> float:
        """
        Return the chance that a sign is there [1].

        Parameters
        ----------
        sign
            Id of the sign.
        fault, rule
            Ids of fault and rule; an empty fault stands for something that no rule knows.

        Returns
        -------
        float
            Of the row that speaks; where none does, the sign's base, for a look no more than `UNLISTED_LOOK`.
        """
        base = self.signs[sign].base
        if not fault:
            return base
        row = self.row(sign, fault, rule)
        if row is not None:
            return row.chance
        return min(base, UNLISTED_LOOK) if self.signs[sign].kind == "look" else base
