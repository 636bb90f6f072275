"""What went wrong: causes by what was done on a surface, ranked by what is seen."""

from dataclasses import dataclass, replace

from refettle.domain.piece import Piece, Surface
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.signs import SignBook
from refettle.planning.replay import trace
from refettle.planning.start import start
from refettle.rules import RULES
from refettle.services.foresee import closed, own_steps
from refettle.trouble.rank import UNFORESEEN, Question, Ranked, Suspect, Told, by_fault, questions, rank
from refettle.trouble.words import ONSETS, Heard, hear

_CARDS = {card.id: card for card in RULES}
_HIDDEN = frozenset({"lead-dust"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnosis:
    """
    What may be behind trouble on one surface.

    Attributes
    ----------
    surface
        Its name.
    steps
        What was done, as it was played.
    heard
        What was understood of the person's words.
    told
        All that is known, answers included.
    causes
        Causes, likeliest first; "something else" among them.
    faults
        Faults with their chance [1], causes of one added up.
    questions
        What to find out next, that which tells most first.
    """

    surface: str
    steps: tuple[Step, ...]
    heard: Heard
    told: Told
    causes: tuple[Ranked, ...]
    faults: tuple[tuple[str, float], ...]
    questions: tuple[Question, ...]


def suspects_of(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, steps: tuple[Step, ...]
) -> tuple[Suspect, ...]:
    """
    Return the causes that may be at work on a surface by what was done to it.

    Parameters
    ----------
    know, piece, workshop
        Facts; piece; place, for its air.
    surface
        The surface as it was before.
    steps
        What was done, in order; use since then as a closing step.

    Returns
    -------
    tuple of Suspect
        One per rule that fires, at its chance over all worlds and zones; and one per fault that none saw
        coming, as rules do not know everything.
    """
    begin = start(know, piece, replace(surface, done=()))
    found: dict[tuple[str, str], Suspect] = {}
    for world, row in zip(begin.worlds, trace(know, begin, steps, workshop.air_likely), strict=True):
        whole: dict[tuple[str, str], tuple[float, int, str]] = {}
        for met, _ in row:
            for hit, number in met.values():
                before = whole.get((hit.fault, hit.rule), (0.0, 0, ""))
                whole[hit.fault, hit.rule] = max(before, (hit.chance, number, hit.why))
        for key, (chance, number, why) in whole.items():
            known = found.get(key)
            added = world.weight * chance
            found[key] = Suspect(
                fault=key[0], rule=key[1], step=number, onset=_CARDS[key[1]].onset,
                chance=added + (known.chance if known else 0.0),
                why=known.why if known and known.chance >= added else why,
            )  # fmt: skip
    known_faults = [f for f in know.ids("fault") if f not in _HIDDEN]
    leaks = [_unforeseen(know, fault) for fault in known_faults]
    return (*(s for s in found.values() if s.fault not in _HIDDEN), *leaks)


def _unforeseen(know: Knowledge, fault: str) -> Suspect:
    """Return a fault that no rule saw coming."""
    cards = [card for card in RULES if card.fault == fault]
    first = min((ONSETS.index(card.onset[0]) for card in cards), default=0)
    last = max((ONSETS.index(card.onset[1]) for card in cards), default=len(ONSETS) - 1)
    return Suspect(
        fault=fault, rule="", step=0, chance=UNFORESEEN, onset=(ONSETS[first], ONSETS[last]),
        why=f"{know.fault(fault).name}, though nothing that is told of the steps explains it",
    )  # fmt: skip


def diagnose(
    know: Knowledge,
    book: SignBook,
    piece: Piece,
    workshop: Workshop,
    surface: Surface,
    *,
    says: str = "",
    answers: Told | None = None,
    steps: tuple[Step, ...] | None = None,
) -> Diagnosis:
    """
    Return what may be behind trouble on a surface.

    Parameters
    ----------
    know, book
        Facts and signs.
    piece, workshop
        Piece with `done`; place.
    surface
        The surface.
    says
        The person's own words.
    answers
        Answers given; they go before what was understood of the words.
    steps
        What was done; None = the piece's `done`, closed by ordinary use.

    Returns
    -------
    Diagnosis
        Never empty: "something else" is always in the list.
    """
    played = closed(own_steps(piece.done, surface)) if steps is None else steps
    heard = hear(says, book)
    given = answers or Told()
    signs = dict(heard.signs) | dict.fromkeys(heard.denied, 0.0) | dict(given.signs)
    told = Told(signs=signs, when=given.when or heard.when)
    ranked = rank(suspects_of(know, piece, workshop, surface, played), told, book)
    return Diagnosis(
        surface=surface.name, steps=played, heard=heard, told=told, causes=ranked, faults=by_fault(ranked),
        questions=questions(ranked, told, book),
    )  # fmt: skip
