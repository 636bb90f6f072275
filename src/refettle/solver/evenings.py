"""Several pieces laid into evenings: sessions with hands, drying that depends on its start. Plain data in and out."""

from collections.abc import Sequence
from dataclasses import dataclass

LATE_DAY = 1000
"""What a day past a piece's due day costs [1]."""
SESSION = 30
"""What a session in which anything is done costs [1]."""


@dataclass(frozen=True, slots=True)
class Session:
    """
    A stretch of time in which somebody may work.

    Attributes
    ----------
    begin, end
        Real slots [1]; `end` is no longer part of it.
    day
        Day it lies on [1].
    """

    begin: int
    end: int
    day: int


@dataclass(frozen=True, slots=True)
class Wait:
    """
    Time in which nobody works, counted from a slot on.

    Attributes
    ----------
    curve
        Place in `Evenings.curves`; -1 for plain slots.
    need
        Growth of the curve after which it is over [h], or plain slots [1].
    """

    curve: int
    need: float


@dataclass(frozen=True, slots=True)
class Wet:
    """
    What a coat does to the room until it has dried.

    Attributes
    ----------
    tacky
        Until then no dust anywhere; none where the coat takes no dust.
    dry
        Until then it takes drying places.
    area
        Drying places taken [1].
    face
        Body of which only one face may be wet at a time; -1 for none.
    face_until
        Until then the face is in the way; as long as `dry` where it is not said.
    """

    tacky: Wait | None
    dry: Wait
    area: int
    face: int = -1
    face_until: Wait | None = None


@dataclass(frozen=True, slots=True)
class Task:
    """
    A step with hands on the work.

    Attributes
    ----------
    piece
        Place in `Evenings.pieces`.
    length
        Slots it takes [1], 1 or more.
    minutes
        True minutes of hands-on work [min].
    hands
        Hands it takes all along [1].
    kit
        Place in `Evenings.kits` of what must be set up before it in its session; -1 for none.
    dusty
        Whether it raises dust.
    means
        Places of things of which there is one.
    wet
        What it leaves wet; None for nothing.
    permit
        Place in `Evenings.permits` that says when it may begin; -1 for at any time.
    optional
        Whether it may be left out.
    """

    piece: int
    length: int
    minutes: int
    hands: int = 1
    kit: int = -1
    dusty: bool = False
    means: tuple[int, ...] = ()
    wet: Wet | None = None
    permit: int = -1
    optional: bool = False


@dataclass(frozen=True, slots=True)
class Link:
    """
    One task begins after another has ended.

    Attributes
    ----------
    first, then
        Places of the two in `Evenings.tasks`.
    wait
        Least wait from the end of `first` to the start of `then`.
    most
        Greatest wait; None for no limit.
    scuff
        Optional task that lifts the limit: after the wait, over before `then`; -1 for none.
    together
        Whether both belong into one session.
    """

    first: int
    then: int
    wait: Wait
    most: Wait | None = None
    scuff: int = -1
    together: bool = False


@dataclass(frozen=True, slots=True)
class Piece:
    """
    A piece of furniture.

    Attributes
    ----------
    last
        Task with which it is ready.
    due_day
        Day by which it should be ready [1]; None for no such day.
    """

    last: int
    due_day: int | None = None


@dataclass(frozen=True, slots=True)
class Evenings:
    """
    What is to be laid into which sessions.

    Attributes
    ----------
    slot_min
        Length of a slot [min].
    sessions
        Sessions, one after the other.
    hands
        From slot, until slot, hands there [1]; slots without are without hands.
    curves
        Dried hours up to each slot [h], never falling; past their end nothing dries.
    permits
        Each a tuple of intervals (from, until) of slots in which a task may begin.
    kits
        Minutes to set up and clean up each kit [min].
    places
        Drying places there are [1].
    means
        Number of things of which there is one [1].
    tasks, links, pieces
        The work.
    """

    slot_min: int
    sessions: tuple[Session, ...]
    hands: tuple[tuple[int, int, int], ...]
    curves: tuple[tuple[float, ...], ...]
    permits: tuple[tuple[tuple[int, int], ...], ...]
    kits: tuple[int, ...]
    places: int
    means: int
    tasks: tuple[Task, ...]
    links: tuple[Link, ...]
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """
    What was found.

    Attributes
    ----------
    starts
        Start of each task [slots]; None for one left out.
    kits_at
        Kit, session and slot at which its set-up begins, each once.
    value
        Value of the plan [1], less is better.
    bound
        Value below which no plan can be [1].
    proved
        Whether nothing better exists.
    """

    starts: tuple[int | None, ...]
    kits_at: tuple[tuple[int, int, int], ...]
    value: int
    bound: int = 0
    proved: bool = False

    @property
    def gap(self) -> float:
        """Return the share of the value that a better plan might save at the most [1]."""
        return 0.0 if self.proved or not self.value else max(0.0, 1 - self.bound / self.value)


@dataclass(frozen=True, slots=True)
class Value:
    """
    The parts of a plan's value.

    Attributes
    ----------
    late_days
        Days past the due days, over all pieces [d].
    sessions
        Sessions in which anything is done [1].
    kit_minutes
        Setting up and cleaning up [min].
    scuff_minutes
        Optional tasks done [min].
    ready_days
        Sum of the days on which the pieces are ready [d].
    """

    late_days: int
    sessions: int
    kit_minutes: int
    scuff_minutes: int
    ready_days: int

    @property
    def total(self) -> int:
        """Return the one number that is made small [1]."""
        return (
            LATE_DAY * self.late_days
            + SESSION * self.sessions
            + self.kit_minutes
            + self.scuff_minutes
            + self.ready_days
        )


def value(problem: Evenings, starts: Sequence[int | None]) -> Value:
    """
    Return what a plan costs, part by part.

    Parameters
    ----------
    problem
        What was to be laid.
    starts
        Start of each task [slots]; None for one left out.

    Returns
    -------
    Value
        A piece that is not ready counts as ready on the day after the last session.
    """
    where = {t: n for n, one in enumerate(problem.sessions) for t in range(one.begin, one.end)}
    used = [(task, where[at]) for task, at in zip(problem.tasks, starts, strict=True) if at is not None]
    kits = {(task.kit, session) for task, session in used if task.kit >= 0}
    after = max((one.day for one in problem.sessions), default=0) + 1
    late = ready = 0
    for piece in problem.pieces:
        at = starts[piece.last]
        day = after if at is None else problem.sessions[where[at]].day
        ready += day
        late += 0 if piece.due_day is None else max(0, day - piece.due_day)
    return Value(
        late_days=late,
        sessions=len({session for _, session in used}),
        kit_minutes=sum(problem.kits[kit] for kit, _ in kits),
        scuff_minutes=sum(task.minutes for task, _ in used if task.optional),
        ready_days=ready,
    )


def kit_slots(problem: Evenings, kit: int) -> int:
    """Return the slots that setting up a kit takes [1]."""
    return -(-problem.kits[kit] // problem.slot_min)
