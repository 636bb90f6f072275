"""
The journal: what really happened, in the order it was told.

Entries are only ever added. One that was wrong is taken back by `Undone`; it stays readable. Every
entry carries the key that its teller gave it, so that the same entry sent twice counts once.
"""

from dataclasses import dataclass

from refettle.domain.piece import Own, Piece
from refettle.domain.step import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class _Entry:
    """
    What every entry carries.

    Attributes
    ----------
    key
        Unique in the journal; given where the entry was made.
    at
        Moment it happened, ISO 8601 text with offset, e.g. ``2026-03-14T19:30+01:00``; empty = not told.
    piece
        Key of the piece.
    """

    key: str
    at: str
    piece: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceEntered(_Entry):
    """
    A piece came in.

    Attributes
    ----------
    text
        The piece file as it was written.
    """

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceChanged(_Entry):
    """
    The description was changed.

    Attributes
    ----------
    base
        Key of the `PieceEntered` or `PieceChanged` that the change starts from.
    text
        The whole piece file after the change.
    """

    base: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanChosen(_Entry):
    """
    A sequence was chosen for some surfaces.

    Attributes
    ----------
    surfaces
        Names of the surfaces.
    steps
        The sequence.
    chances
        Faults foreseen at that time with their chance [1].
    knowledge
        Version of the knowledge that foresaw them.
    """

    surfaces: tuple[str, ...]
    steps: tuple[Step, ...]
    chances: tuple[tuple[str, float], ...] = ()
    knowledge: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepBegun(_Entry):
    """
    Work on a step began.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = all.
    step
        The step.
    """

    surfaces: tuple[str, ...]
    step: Step


@dataclass(frozen=True, slots=True, kw_only=True)
class StepDone(_Entry):
    """
    A step is done.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = all.
    step
        The step as it was really done.
    minutes
        Hands-on time [min]; None = not told.
    litres
        Material used [L]; None = not told.
    """

    surfaces: tuple[str, ...]
    step: Step
    minutes: float | None = None
    litres: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class StepSkipped(_Entry):
    """
    A step was left out on purpose.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = all.
    step
        The step.
    why
        Reason in the person's words.
    """

    surfaces: tuple[str, ...]
    step: Step
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatLaid(_Entry):
    """
    One coat of a step is on: its clock starts.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = all.
    step
        The step that the coat belongs to.
    coat
        Number of this coat within the step [1], from 1.
    temp_c
        Temperature of the air [°C]; None = not read.
    rh
        Relative humidity [1]; None = not read.
    """

    surfaces: tuple[str, ...]
    step: Step
    coat: int = 1
    temp_c: float | None = None
    rh: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TestAnswered(_Entry):
    """
    A spot test was made.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = all.
    test
        Test id.
    answer
        ``yes`` or ``no``.
    """

    __test__ = False  # not a test class

    surfaces: tuple[str, ...]
    test: str
    answer: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SymptomSeen(_Entry):
    """
    Something looks wrong.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = all.
    signs
        Sign ids, as many as were seen.
    words
        What the person said.
    """

    surfaces: tuple[str, ...]
    signs: tuple[str, ...]
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoTaken(_Entry):
    """
    A photograph was taken.

    Attributes
    ----------
    surfaces
        Names of the surfaces; empty = the whole piece.
    file
        Name under which it is kept.
    words
        Caption in the person's words.
    """

    surfaces: tuple[str, ...]
    file: str
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase(_Entry):
    """
    Money went out: the piece itself, a tin, a part.

    Attributes
    ----------
    what
        What was bought, in the person's words.
    price
        Price [money].
    """

    what: str
    price: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sale(_Entry):
    """
    The piece was sold or the work was paid for.

    Attributes
    ----------
    price
        Money that came in [money].
    fees
        What selling and delivery took of it [money].
    """

    price: float
    fees: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Undone(_Entry):
    """
    An earlier entry was wrong and no longer counts.

    Attributes
    ----------
    entry
        Key of the entry taken back.
    """

    entry: str


Entry = (
    PieceEntered
    | PieceChanged
    | PlanChosen
    | StepBegun
    | StepDone
    | StepSkipped
    | CoatLaid
    | TestAnswered
    | SymptomSeen
    | PhotoTaken
    | Purchase
    | Sale
    | Undone
)


def standing(entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """
    Return the entries that count: each key once, without those taken back.

    Parameters
    ----------
    entries
        The journal, oldest first.

    Returns
    -------
    tuple[Entry, ...]
        Entries that still stand, in the same order; the `Undone` entries themselves are left out. Taking
        back an `Undone` brings its entry back.
    """
    seen: dict[str, Entry] = {}
    for entry in entries:
        seen.setdefault(entry.key, entry)
    taken_back: set[str] = set()
    for entry in reversed(tuple(seen.values())):
        if isinstance(entry, Undone) and entry.key not in taken_back:
            taken_back.add(entry.entry)
    return tuple(
        entry for entry in seen.values() if entry.key not in taken_back and not isinstance(entry, Undone)
    )


def _entries_of(own: Own, piece: str, start: int) -> tuple[StepDone, ...]:
    surfaces = (own.surface,) if own.surface else ()
    return tuple(
        StepDone(key=f"{piece}/done/{start + number}", at="", piece=piece, surfaces=surfaces, step=step)
        for number, step in enumerate(own.steps)
    )


def done_entries(piece: Piece, key: str) -> tuple[StepDone, ...]:
    """
    Return the steps that the piece file calls done, as journal entries.

    Parameters
    ----------
    piece
        The piece as read.
    key
        Key of the piece.

    Returns
    -------
    tuple[StepDone, ...]
        One entry per step in the order of the file; their moment is not told.
    """
    entries: list[StepDone] = []
    for own in piece.done:
        entries.extend(_entries_of(own, key, len(entries) + 1))
    return tuple(entries)
