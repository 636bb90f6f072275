"""
Twins: the same case with the change that is said to have avoided the fault.

Advice is read by `case_twin_words` and turned into changes of steps and air (`case_changes`), in the
order of the text. Where the advice offers alternatives (", or ..."), each is a twin of its own. Within
one twin the first word on a thing wins: one class per role, one length of wait.
"""

import re
from dataclasses import dataclass, replace

from case_changes import CHANGES, Trial
from case_reading import Reading, read_text
from case_twin_words import DO, DONT
from refettle.domain.piece import Piece
from refettle.domain.workshop import Workshop

NEGATED = re.compile(
    r"\b(?:do not|don't|no|not|never|without|nor|instead of|rather than|avoid|skip|leave out|omit|stop)\b"
    r"(.*?)(?=[,;.:()]|\bbut\b|\bthen\b|$)"
)
ALTERNATIVE = re.compile(r"[,;.]\s+or\s+", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Twin:
    """
    A case changed as advised.

    Attributes
    ----------
    piece, workshop
        The case with the change.
    changes
        Changes made, in the words of `case_twin_words`.
    """

    piece: Piece
    workshop: Workshop
    changes: tuple[str, ...]


def twins_of(advice: str, piece: Piece, workshop: Workshop) -> tuple[Twin, ...]:
    """
    Return the case changed as advised, once per alternative that the table can read.

    Parameters
    ----------
    advice
        What would have avoided the fault, as text.
    piece, workshop
        The case in our words.

    Returns
    -------
    tuple[Twin, ...]
        Twins whose sequence or air differs from the case; empty when nothing was understood.
    """
    twins = []
    for part in ALTERNATIVE.split(advice):
        changes = read_advice(part)
        trial = Trial(steps=list(piece.intend[0].steps), air=workshop.air_likely)
        for change in changes:
            kind, _, rest = change.partition(":")
            CHANGES[kind](trial, rest)
        own = replace(
            piece.intend[0], steps=tuple(trial.steps), where=(piece.intend[0].where[:1] * len(trial.steps))
        )
        changed = replace(piece, intend=(own,))
        room = replace(workshop, air_likely=trial.air, air_safe=trial.air)
        if changed.intend[0].steps != piece.intend[0].steps or room != workshop:
            twins.append(Twin(piece=changed, workshop=room, changes=changes))
    return tuple(twins)


def read_advice(text: str) -> tuple[str, ...]:
    """
    Return the changes that a piece of advice speaks of.

    Parameters
    ----------
    text
        Advice without alternatives.

    Returns
    -------
    tuple[str, ...]
        Changes in the order of the text, what is forbidden after what is advised.
    """
    plain = text.lower()
    forbidden = [read_text(match[1], DONT) for match in NEGATED.finditer(plain)]
    advised = read_text(NEGATED.sub(" ", plain), DO)
    changes = [*advised.tags, *_stated_wait(advised)]
    for reading in forbidden:
        airs = [tag for tag in reading.tags if tag.startswith("air:")]
        changes += airs or reading.tags
    return tuple(dict.fromkeys(changes))


def _stated_wait(reading: Reading) -> tuple[str, ...]:
    """Return a stated length of time as a change: of the drying wood, of the cure, or of the coats."""
    hours = reading.lasts_h or reading.waited_h
    if not hours:
        return ()
    if any(tag.startswith(("rinse", "prep", "grain")) for tag in reading.tags):
        return (f"prep:{hours}",)
    return (f"last:{hours}",) if "last:cure" in reading.tags or hours >= 100 else (f"between:{hours}",)
