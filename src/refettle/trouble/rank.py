"""Causes ranked by what was done and what is seen, and the question that tells most."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import log2
from typing import Final

from refettle.knowledge.signs import SignBook
from refettle.trouble.words import ONSETS

SOMETHING_ELSE: Final = 0.03
"""Weight of a cause that no rule knows, against the chance of the others [1]; judgement."""
UNFORESEEN: Final = 0.012
"""Weight of a fault that no rule saw coming [1]; judgement: rules do not know everything that was done."""
_IN_TIME: Final = 0.85
_SAME: Final = 0.12
_HEARD: Final = 0.7
"""Surety [1] from which a sign that was heard is not asked for again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """
    One cause that may be behind it.

    Attributes
    ----------
    fault
        Fault id; empty = something else.
    rule
        Rule id; empty where no rule saw the fault coming.
    step
        Number of the step it came with, from 1; 0 = none.
    chance
        Chance by what was done [1].
    onset
        Earliest and latest time at which it shows, of `ONSETS`.
    why
        One sentence without full stop.
    """

    fault: str
    rule: str
    step: int
    chance: float
    onset: tuple[str, str]
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """
    What is known of the trouble.

    Attributes
    ----------
    signs
        Sign id → how surely it is there [1]: 1 seen, 0 seen not to be there, between where words left a doubt.
    when
        One of `ONSETS`; empty where not known.
    """

    signs: Mapping[str, float] = field(default_factory=dict)
    when: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranked:
    """
    A cause with what speaks for it.

    Attributes
    ----------
    suspect
        The cause.
    chance
        Chance that it is behind what is seen [1]; all add up to 1.
    fits
        Signs told that speak for it, strongest first.
    """

    suspect: Suspect
    chance: float
    fits: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """
    What to find out next.

    Attributes
    ----------
    sign
        Sign id, or ``when``.
    tells
        Expected information [bit].
    minutes
        Time to find out [min].
    """

    sign: str
    tells: float
    minutes: float


def in_time(onset: tuple[str, str], when: str) -> float:
    """Return the chance that a cause shows at a time [1]; all six times add up to 1."""
    first, last = ONSETS.index(onset[0]), ONSETS.index(onset[1])
    inside = last - first + 1
    if inside == len(ONSETS):
        return 1.0 / inside
    if first <= ONSETS.index(when) <= last:
        return _IN_TIME / inside
    return (1.0 - _IN_TIME) / (len(ONSETS) - inside)


def _likelihood(suspect: Suspect, told: Told, book: SignBook) -> float:
    """Return how well what is told fits a cause, against a stranger [1]."""
    fit = 1.0
    for sign, surety in told.signs.items():
        fit *= _ratio(suspect, sign, surety, book)
    if told.when:
        fit *= in_time(suspect.onset, told.when) * len(ONSETS)
    return fit


def _ratio(suspect: Suspect, sign: str, surety: float, book: SignBook) -> float:
    """Return how much likelier a sign, seen with a surety, is under a cause than under a stranger [1]."""
    base = book.signs[sign].base
    chance = book.chance(sign, suspect.fault, suspect.rule)
    return surety * chance / base + (1.0 - surety) * (1.0 - chance) / (1.0 - base) if surety in {0.0, 1.0} else (
        surety * chance / base + 1.0 - surety
    )  # fmt: skip


def rank(suspects: Sequence[Suspect], told: Told, book: SignBook) -> tuple[Ranked, ...]:
    """
    Return the causes, likeliest first.

    Parameters
    ----------
    suspects
        Causes by what was done; `something_else` is added.
    told
        What is seen.
    book
        Signs.

    Returns
    -------
    tuple of Ranked
        Chances add up to 1: P(cause | signs) is in proportion to P(cause | done) times P(signs | cause), signs
        taken as independent given the cause.
    """
    everyone = (*suspects, STRANGER)
    weights = [s.chance * _likelihood(s, told, book) for s in everyone]
    total = sum(weights) or 1.0
    ranked = [
        Ranked(suspect=s, chance=w / total, fits=_fits(s, told, book))
        for s, w in zip(everyone, weights, strict=True)
    ]
    return tuple(sorted(ranked, key=lambda r: (-r.chance, r.suspect.fault, r.suspect.rule)))


STRANGER: Final = Suspect(
    fault="",
    rule="",
    step=0,
    chance=SOMETHING_ELSE,
    onset=("immediate", "years"),
    why="something that is not known here",
)
"""Something else: always in the list."""


def _fits(suspect: Suspect, told: Told, book: SignBook) -> tuple[str, ...]:
    """Return the signs that make a cause at least half as likely again, strongest first."""
    ratios = {sign: _ratio(suspect, sign, surety, book) for sign, surety in told.signs.items() if surety > 0}
    return tuple(sign for sign in sorted(ratios, key=lambda s: -ratios[s]) if ratios[sign] >= 1.5)


def by_fault(ranked: Sequence[Ranked]) -> tuple[tuple[str, float], ...]:
    """Return the faults with their chance [1], causes of one added up, likeliest first."""
    sums: dict[str, float] = {}
    for one in ranked:
        sums[one.suspect.fault] = sums.get(one.suspect.fault, 0.0) + one.chance
    return tuple(sorted(sums.items(), key=lambda pair: (-pair[1], pair[0])))


def entropy(chances: Sequence[float]) -> float:
    """Return what is not known yet [bit]."""
    return -sum(p * log2(p) for p in chances if p > 0)


def questions(ranked: Sequence[Ranked], told: Told, book: SignBook) -> tuple[Question, ...]:
    """
    Return what is worth finding out, that which tells most per effort first.

    Parameters
    ----------
    ranked
        Causes as they stand.
    told
        What is known.
    book
        Signs.

    Returns
    -------
    tuple of Question
        With the information expected of the answer [bit]; what is known already is left out. A minute of trying
        counts as a fiftieth of a bit, so that of two alike the one that is only a look comes first.
    """
    now = entropy([one.chance for one in ranked])
    open_ones = [s for s in book.signs.values() if 0.0 < told.signs.get(s.id, 0.5) < _HEARD]
    asked = [
        Question(sign=s.id, tells=now - _after_sign(ranked, s.id, book), minutes=s.minutes) for s in open_ones
    ]
    if not told.when:
        asked.append(Question(sign="when", tells=now - _after_when(ranked), minutes=0.0))
    return tuple(sorted(asked, key=lambda q: (-(q.tells - 0.02 * q.minutes), q.sign)))


def _after_sign(ranked: Sequence[Ranked], sign: str, book: SignBook) -> float:
    """Return what is not known on average after a yes or no [bit]."""
    yes = [r.chance * book.chance(sign, r.suspect.fault, r.suspect.rule) for r in ranked]
    no = [r.chance - y for r, y in zip(ranked, yes, strict=True)]
    return sum(sum(part) * entropy([p / sum(part) for p in part]) for part in (yes, no) if sum(part) > 0)


def _after_when(ranked: Sequence[Ranked]) -> float:
    """Return what is not known on average after the time is told [bit]."""
    left = 0.0
    for when in ONSETS:
        part = [r.chance * in_time(r.suspect.onset, when) for r in ranked]
        if sum(part) > 0:
            left += sum(part) * entropy([p / sum(part) for p in part])
    return left


def told_apart(first: Ranked, second: Ranked, asked: Sequence[Question], book: SignBook) -> str:
    """
    Return the sign that would tell two causes apart best, or nothing where no sign does.

    Parameters
    ----------
    first, second
        Two causes.
    asked
        What can still be found out.
    book
        Signs.

    Returns
    -------
    str
        Sign id whose chance differs most between them; empty where it differs by less than `_SAME` for all.
    """
    gaps = {
        q.sign: abs(
            book.chance(q.sign, first.suspect.fault, first.suspect.rule)
            - book.chance(q.sign, second.suspect.fault, second.suspect.rule)
        )
        for q in asked
        if q.sign != "when"
    }
    best = max(gaps, key=lambda sign: gaps[sign], default="")
    return best if best and gaps[best] >= _SAME else ""
