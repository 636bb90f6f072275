"""What leads to a fault: its rules as their own cases play them, how each shows, what avoids and what mends it."""

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Final

from refettle.domain.piece import Piece
from refettle.domain.plan import Hit, Range
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.resolve import plain_spelling
from refettle.planning.engine import play
from refettle.planning.start import start
from refettle.rules import RULES
from refettle.rules.card import Card
from refettle.rules.case import Case

CasesByCard = Mapping[str, tuple[Case, ...]]
_ASKING: Final = frozenset(
    {"a", "an", "and", "are", "did", "do", "does", "get", "go", "gone", "has", "have", "how", "i", "in", "is", "it",
     "look", "looks", "my", "of", "on", "so", "the", "there", "this", "to", "turn", "turned", "turns", "up", "went",
     "what", "when", "where", "why"}
)  # fmt: skip
_ENDINGS: Final = ("ings", "ing", "iness", "ness", "ed", "es", "s", "y", "e")
_NOT: Final = "un"
_SHORTEST_STEM: Final = 3
_NEAR: Final = 0.75


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownCase:
    """
    One typical case of a cause, played.

    Attributes
    ----------
    name
        What was done, in words.
    chance
        Chance of the fault in it [1].
    why
        Why, in one sentence without full stop.
    avoided
        The one change that avoids it, in words.
    left
        Chance with that change [1].
    because
        Ids of the fact rows read.
    """

    name: str
    chance: float
    why: str
    avoided: str
    left: float
    because: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownCause:
    """
    One cause of a fault.

    Attributes
    ----------
    card
        Its rule.
    cases
        Its typical cases, likeliest first.
    tests
        Ids of spot tests that tell it.
    """

    card: Card
    cases: tuple[ShownCase, ...]
    tests: tuple[str, ...]

    @property
    def chance(self) -> float:
        """Return its chance in the case that shows it most [1]."""
        return max((case.chance for case in self.cases), default=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownFault:
    """
    A fault with what leads to it and what mends it.

    Attributes
    ----------
    fault
        Id of the fault.
    causes
        Causes, likeliest first.
    back
        What one has to go back to: ``nothing``, ``surface``, ``film`` or ``wood``.
    mend
        What is done, in words; empty where no row says so.
    hours_m2, days
        Hands-on time [h/m²] and days lost [d] where it shows.
    """

    fault: str
    causes: tuple[KnownCause, ...]
    back: str
    mend: str
    hours_m2: Range
    days: Range

    @property
    def signs(self) -> tuple[str, ...]:
        """Return what all its causes show alike."""
        shown = [cause.card.signs for cause in self.causes]
        alike = shown[0] if shown else ()
        return tuple(sign for sign in alike if len(shown) > 1 and all(sign in signs for signs in shown))


def hits_of(know: Knowledge, case: Case) -> dict[str, Hit]:
    """
    Return what each rule says, at its strongest, anywhere in the run of a case.

    Parameters
    ----------
    know
        All facts.
    case
        The case; nothing in it is unknown.

    Returns
    -------
    dict
        Rule id → hit.

    Raises
    ------
    ValueError
        If the surface of the case may be several things.
    """
    piece = Piece(name="case", form="free", surfaces=(case.surface,))
    begin = start(know, piece, case.surface)
    if len(begin.worlds) != 1:
        message = f"{case.card}: {case.name}: a case has nothing unknown"
        raise ValueError(message)
    state, ground = begin.worlds[0].states[0], begin.grounds[0]
    highest: dict[str, Hit] = {}
    for step in case.steps:
        state, hits = play(know, ground, state, step, case.air)
        for hit in hits:
            if hit.rule not in highest or hit.chance > highest[hit.rule].chance:
                highest[hit.rule] = hit
    return highest


def cards_meant(know: Knowledge, word: str) -> tuple[Card, ...]:
    """
    Return the rules that a word asks for: those of a fault by its name, else those that show it.

    Parameters
    ----------
    know
        Names of faults.
    word
        A fault, or what one sees: ``craters``, ``white``, ``why does it peel``.

    Returns
    -------
    tuple of Card
        Empty where no fault is called so and no sign speaks of it.

    Notes
    -----
    Signs are searched for every word of the question that asks for something, endings left off.
    """
    named = faults_named(know, word)
    if named:
        return tuple(card for card in RULES if card.fault in named)
    wanted = _stems(word) - {_stem(asking) for asking in _ASKING}
    if not wanted:
        return ()
    return tuple(
        card for card in RULES if wanted <= _stems(f"{know.name('fault', card.fault)} {' '.join(card.signs)}")
    )


def faults_named(know: Knowledge, word: str) -> frozenset[str]:
    """Return every fault that a word is the name of, or another word for."""
    bare = plain_spelling(word)
    return frozenset(
        id_
        for id_, identity in know.identities["fault"].items()
        if bare in {plain_spelling(said) for said in (id_, identity.name, *identity.aliases)}
    )


def near_signs(know: Knowledge, word: str) -> tuple[str, ...]:
    """Return words of signs and faults spelt nearly like those of a question, for a question that finds nothing."""
    said = (f"{know.name('fault', card.fault)} {' '.join(card.signs)}" for card in RULES)
    known = list(dict.fromkeys(one for text in said for one in _split(text) if one not in _ASKING))
    asked = [one for one in _split(word) if one not in _ASKING]
    near = (hit for one in asked for hit in get_close_matches(one, known, n=2, cutoff=_NEAR))
    return tuple(dict.fromkeys(near))


def _split(text: str) -> list[str]:
    """Return the words of a text in small letters, signs left off."""
    return "".join(sign if sign.isalnum() else " " for sign in text.casefold()).split()


def _stems(text: str) -> set[str]:
    """Return the words of a text, endings left off."""
    return {_stem(word) for word in _split(text)}


def _stem(word: str) -> str:
    """Return a word without its ending: ``peel`` for peels, peeling and peeled; even for uneven: one asks for either."""
    if word.startswith(_NOT) and len(word) - len(_NOT) > _SHORTEST_STEM:
        word = word.removeprefix(_NOT)
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST_STEM:
            return word.removesuffix(ending)
    return word


def faults_of(know: Knowledge, cards: tuple[Card, ...], cases: CasesByCard) -> tuple[KnownFault, ...]:
    """
    Return the faults that some rules speak of, each with its causes.

    Parameters
    ----------
    know
        All facts.
    cards
        Rules asked for; a fault keeps only these of its causes.
    cases
        Cases of each card.

    Returns
    -------
    tuple of KnownFault
        In the order of the rules.
    """
    found = []
    for fault in dict.fromkeys(card.fault for card in cards):
        causes = [_cause(know, card, cases.get(card.id, ())) for card in cards if card.fault == fault]
        causes.sort(key=lambda cause: -cause.chance)
        subject = f"fault:{fault}"
        rows = know.rows(subject, "harm_h_m2")
        found.append(
            KnownFault(
                fault=fault,
                causes=tuple(causes),
                back=know.fault(fault).goes_back_to,
                mend=rows[0].note if rows else "",
                hours_m2=_range(know, subject, "harm_h_m2"),
                days=_range(know, subject, "harm_days"),
            )
        )
    return tuple(found)


def _range(know: Knowledge, subject: str, prop: str) -> Range:
    """Return a number with its width."""
    low, likely, high = know.range_of(subject, prop)
    return Range(low=low, likely=likely, high=high)


def _cause(know: Knowledge, card: Card, cases: tuple[Case, ...]) -> KnownCause:
    """Return one cause with its firing cases played."""
    shown = []
    reads: set[str] = {f"rule:{card.id}"}
    for case in cases:
        hit = hits_of(know, case).get(card.id)
        if not case.fires or case.twin is None or hit is None:
            continue
        left = hits_of(know, case.twin).get(card.id)
        reads.update(subject for subject, _ in hit.reads if not subject.startswith("film:"))
        shown.append(
            ShownCase(
                name=case.name,
                chance=hit.chance,
                why=hit.why,
                avoided=case.twin.change,
                left=0.0 if left is None else left.chance,
                because=tuple(
                    dict.fromkeys(i for subject, prop in hit.reads for i in know.because(subject, prop))
                ),
            )
        )
    tests = tuple(test for test in know.ids("test") if reads & set(know.test(test).detects))
    return KnownCause(card=card, cases=tuple(sorted(shown, key=lambda one: -one.chance)), tests=tests)
