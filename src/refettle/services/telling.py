"""What tells things apart: the spot tests with what they speak for, and what an old finish is likely to be by age."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from refettle.domain.step import Step
from refettle.knowledge.facts import TestFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import ERA_BANDS, FactRow
from refettle.rules import RULES
from refettle.rules.card import Card
from refettle.services.look_up import time_words
from refettle.services.step_words import step_words

_FILMS: Final = ("film", "family")
_GROUPS: Final = {
    "what the old finish is": _FILMS,
    "what else is on it or in it": ("contaminant", "latent", "lead", "loose"),
    "veneer, solid wood or print": ("build",),
    "which white haze it is": ("rule",),
}
"""What tests tell, with the marks they speak for; a test stands where its first mark does."""
_SHOWN: Final = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """
    One spot test.

    Attributes
    ----------
    facts
        Its errors, time and price.
    ask
        What to do and to look for, as a question without its sign.
    speaks_for
        What a yes speaks for, in words.
    rows
        Fact rows behind what it detects.
    """

    facts: TestFacts
    ask: str
    speaks_for: tuple[str, ...]
    rows: tuple[FactRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ByAge:
    """
    What an old clear finish and old paint are likely to be.

    Attributes
    ----------
    years
        The time, in words.
    clear, paint
        Names of classes, likeliest first.
    """

    years: str
    clear: tuple[str, ...]
    paint: tuple[str, ...]


def telling_of(know: Knowledge, test: str) -> Telling:
    """Return a spot test with what it speaks for."""
    facts = know.test(test)
    names = dict.fromkeys(_mark_words(know, mark) for mark in facts.detects)
    return Telling(
        facts=facts,
        ask=step_words(know, Step(verb="test", what=test)),
        speaks_for=tuple(names),
        rows=know.rows(f"test:{test}", "detects"),
    )


def _mark_words(know: Knowledge, mark: str) -> str:
    """Return what a test speaks for in words."""
    kind, _, id_ = mark.partition(":")
    if kind == "rule":
        return next((sign_name(card) for card in RULES if card.id == id_), id_)
    if mark == "loose":
        return "a film that lets go"
    if not id_ or not know.has(kind, id_):
        return (id_ or kind).replace("-", " ")
    name = know.name(kind, id_).partition(" (")[0]
    return name.partition(" on ")[0].partition(" with ")[0] if kind == "build" else name


def sign_name(card: Card) -> str:
    """Return what one calls what a rule shows: the word before its first sign, else the rule's own name."""
    name, colon, _ = card.signs[0].partition(": ")
    return name if colon else card.id.replace("-", " ")


def tests_of_kind(know: Knowledge, kind: str) -> tuple[Telling, ...]:
    """Return the tests that speak for something of a kind, such as ``build``, in the order one tries them."""
    return tests_for(know, (f"{kind}:{id_}" for id_ in know.ids(kind)))


def tests_for(know: Knowledge, marks: Iterable[str]) -> tuple[Telling, ...]:
    """Return the tests that speak for some marks, such as ``build:veneer``, in the order one tries them."""
    wanted = set(marks)
    return tuple(telling_of(know, test) for test in know.ids("test") if wanted & set(know.test(test).detects))


def tests_by_question(know: Knowledge) -> dict[str, tuple[Telling, ...]]:
    """
    Return all spot tests under the question they answer.

    Parameters
    ----------
    know
        All facts.

    Returns
    -------
    dict
        Question in words → tests in the order one tries them: what bites least comes first. A test that answers
        several questions stands under each.
    """
    found: dict[str, tuple[Telling, ...]] = {}
    for question, kinds in _GROUPS.items():
        tests = [
            test
            for test in know.ids("test")
            if any(mark.partition(":")[0] in kinds for mark in know.test(test).detects)
        ]
        found[question] = tuple(telling_of(know, test) for test in tests)
    return found


def likely_by_age(know: Knowledge) -> tuple[ByAge, ...]:
    """
    Return what an old finish is likely to be by the time of the piece, before any test.

    Parameters
    ----------
    know
        All facts.

    Returns
    -------
    tuple of ByAge
        Oldest first.
    """
    return tuple(
        ByAge(
            years=time_words(band),
            clear=_likeliest(know, band, "clear"),
            paint=_likeliest(know, band, "paint"),
        )
        for band in ERA_BANDS
    )


def _likeliest(know: Knowledge, band: str, kind: str) -> tuple[str, ...]:
    """Return the likeliest classes of a time by name."""
    shares = sorted(know.era_prior(band, kind), key=lambda pair: -pair[1])
    return tuple(know.name("film", cls) for cls, _ in shares[:_SHOWN])
