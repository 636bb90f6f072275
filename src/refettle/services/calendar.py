"""Several pieces laid into one row of evenings: hands, set-ups and dust are shared by all."""

from dataclasses import dataclass, replace

from refettle.domain.piece import Workshop
from refettle.domain.piece_plan import Day, DayTask, GroupPlan, MendJob, PiecePlan
from refettle.knowledge.knowledge import Knowledge
from refettle.services.around import WHOLE, Around, around
from refettle.services.days import lay_days

_EVENING_H = 18.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Ready:
    """
    When a piece is done.

    Attributes
    ----------
    piece
        Its name.
    last_day
        Day of the last work on it [d], counted from 1.
    wrap_day
        Day from which it is safe to wrap [d].
    alone_day
        The same if it were the only piece [d].
    """

    piece: str
    last_day: int
    wrap_day: int
    alone_day: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """
    A wait under way when an evening ends.

    Attributes
    ----------
    group
        Piece and group.
    until_day
        Day on which it is over [d].
    """

    group: str
    until_day: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """
    Evenings for several pieces.

    Attributes
    ----------
    days
        Evenings with work; groups are named with their piece.
    waits
        Per evening the waits that go on after it.
    ready
        Per piece, in the order given.
    """

    days: tuple[Day, ...]
    waits: tuple[tuple[Waiting, ...], ...]
    ready: tuple[Ready, ...]


def lay_pieces(know: Knowledge, workshop: Workshop, plans: tuple[tuple[str, PiecePlan], ...]) -> Calendar:
    """
    Return the evenings of several pieces.

    Parameters
    ----------
    know, workshop
        Facts; free evenings and hours.
    plans
        Pieces by their names, each once, with their plans; the first has the first turn where two could go on.

    Returns
    -------
    Calendar
        One evening is one person's: tasks follow each other, set-up is made once for all that use the same,
        nothing makes dust while a film of any piece is tacky.
    """
    groups: list[GroupPlan] = []
    jobs: list[MendJob] = []
    works: list[Around] = []
    for number, (name, plan) in enumerate(plans, start=1):
        works.append(_of(name, around(know, plan.groups)))
        groups.extend(
            replace(g, name=f"{name}: {g.name}", members=_marked(g.members, number)) for g in plan.groups
        )
        jobs.extend(
            replace(job, name=f"{name}: {job.name}", surfaces=_marked(job.surfaces, number))
            for job in plan.mending
        )
    work = Around(
        tests=tuple(task for one in works for task in one.tests),
        before=tuple(task for one in works for task in one.before),
        after=tuple(task for one in works for task in one.after),
    )
    names = tuple(name for name, _ in plans)
    days, _, _ = lay_days(know, workshop, tuple(groups), work, tuple(jobs), names)
    return Calendar(
        days=days,
        waits=tuple(_waits(days[: i + 1]) for i in range(len(days))),
        ready=tuple(_ready(name, plan, days) for name, plan in plans),
    )


def _of(name: str, work: Around) -> Around:
    """Return work on the whole piece with the piece's name."""

    def named(tasks: tuple[DayTask, ...]) -> tuple[DayTask, ...]:
        return tuple(replace(task, group=f"{name}: {WHOLE}") for task in tasks)

    return Around(tests=named(work.tests), before=named(work.before), after=named(work.after))


def _marked(members: tuple[str, ...], number: int) -> tuple[str, ...]:
    """Return surface names with the number of their piece, so that doors of two pieces are not taken for one."""
    marked = []
    for name in members:
        part, slash, face = name.partition("/")
        marked.append(f"{part}.@{number}{slash}{face}")
    return tuple(marked)


def _over_day(day: Day, task: DayTask) -> int:
    """Return the day on which the wait after a task is over [d]."""
    return day.day + int((_EVENING_H + task.minutes / 60.0 + task.wait_h) // 24)


def _waits(days: tuple[Day, ...]) -> tuple[Waiting, ...]:
    """Return the waits that go on after the last of some evenings, longest first."""
    now = days[-1].day
    until: dict[str, int] = {}
    for day in days:
        for task in day.tasks:
            until[task.group] = _over_day(day, task)
    going = [Waiting(group=group, until_day=over) for group, over in until.items() if over > now]
    return tuple(sorted(going, key=lambda wait: (-wait.until_day, wait.group)))


def _ready(name: str, plan: PiecePlan, days: tuple[Day, ...]) -> Ready:
    """Return when a piece is done."""
    own = [(day, task) for day in days for task in day.tasks if task.group.startswith(f"{name}: ")]
    return Ready(
        piece=name,
        last_day=max((day.day for day, _ in own), default=0),
        wrap_day=max((_over_day(day, task) for day, task in own if task.number), default=0),
        alone_day=plan.wrap_day,
    )
