"""Several pieces laid into one row of evenings: hands, set-ups and dust are shared by all."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from refettle.domain.finding import Finding, Where
from refettle.domain.piece_plan import Day, DayTask, GroupPlan, MendJob, PiecePlan
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.agenda import Agenda
from refettle.services.around import WHOLE, Around, around
from refettle.services.clock import Block, DryClock
from refettle.services.day_queues import Scale
from refettle.services.days import lay_days
from refettle.services.free_time import LONGEST_DAYS
from refettle.services.turning import loose_share

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
        The same if it were the only piece, in the planning air [d].
    finished
        Whether all of it is done within the days looked ahead.
    due_day
        Last day on which it is in time [d]; 0 = it is asked for by no day.
    """

    piece: str
    last_day: int
    wrap_day: int
    alone_day: int
    finished: bool = True
    due_day: int = 0

    @property
    def late_days(self) -> int:
        """Return the days by which it is safe to wrap too late [d]; 0 where no day is asked for."""
        return max(0, self.wrap_day - self.due_day) if self.due_day else 0


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
    workshop
        The workshop it is laid into, its air by the hour read.
    blocks
        Coats that had to wait for other air.
    findings
        What is to be said of it.
    piece_first
        Whether a piece went on with whatever it could before another had its turn.
    """

    days: tuple[Day, ...]
    waits: tuple[tuple[Waiting, ...], ...]
    ready: tuple[Ready, ...]
    workshop: Workshop
    blocks: tuple[Block, ...] = ()
    findings: tuple[Finding, ...] = ()
    piece_first: bool = False


def lay_pieces(
    know: Knowledge,
    workshop: Workshop,
    plans: tuple[tuple[str, PiecePlan], ...],
    scale: Scale | None = None,
    *,
    piece_first: bool = False,
    agenda: Agenda | None = None,
) -> Calendar:
    """
    Return the evenings of several pieces.

    Parameters
    ----------
    know, workshop
        Facts; free evenings and hours.
    plans
        Pieces by their names, each once, with their plans; the first has the first turn where two could go on
        (`services.turns` seeks the best turns).
    scale
        How a case differs from the likely one; None = not at all.
    piece_first
        Whether the first piece goes on with whatever it can before another has its turn.
    agenda
        What was meant to be done when; None = none.

    Returns
    -------
    Calendar
        One evening is one person's: tasks follow each other, set-up is made once for all that use the same,
        nothing makes dust while a film of any piece is tacky.
    """
    groups, jobs, work = gathered_work(know, plans)
    names = tuple(name for name, _ in plans)
    clock = None if workshop.hours is None else DryClock(know, workshop.hours, workshop.air_likely)
    days, _, _ = lay_days(
        know, workshop, groups, work, jobs, names, clock, scale, frozenset(), piece_first, agenda
    )
    return Calendar(
        days=days,
        waits=tuple(_waits(days[: i + 1]) for i in range(len(days))),
        ready=tuple(_ready(name, plan, days) for name, plan in plans),
        workshop=workshop,
        blocks=tuple(clock.blocks.values()) if clock is not None else (),
        findings=(
            *(_never_laid(group, days, clock) for group in groups if _left(group, days)),
            *_too_large(workshop, groups),
        ),
        piece_first=piece_first,
    )


def gathered_work(
    know: Knowledge, plans: tuple[tuple[str, PiecePlan], ...]
) -> tuple[tuple[GroupPlan, ...], tuple[MendJob, ...], Around]:
    """Return the groups, jobs and work on the whole of several pieces, each with its piece's name."""
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
    return tuple(groups), tuple(jobs), work


def _left(group: GroupPlan, days: tuple[Day, ...]) -> bool:
    """Return whether the last working step of a group stands in no day."""
    steps = group.route.steps if group.route is not None else ()
    last = max((n for n, cost in enumerate(steps, start=1) if cost.step.verb != "wait"), default=0)
    return last > max((t.number for day in days for t in day.tasks if t.group == group.name), default=0)


def _never_laid(group: GroupPlan, days: tuple[Day, ...], clock: DryClock | None) -> Finding:
    """Return what is said of a group that is not finished in all the hours looked ahead."""
    done = max((t.number for day in days for t in day.tasks if t.group == group.name), default=0)
    block = (
        next((b for b in clock.blocks.values() if b.group == group.name), None) if clock is not None else None
    )
    why = f": {block.reason}" if block is not None else ""
    return Finding(
        code="never-laid", level="warning", where=Where(file="days"),
        what=f"{group.name} is not finished within {LONGEST_DAYS} days; it stops after step {done}{why}",
        do="free more hours, heat the room, or take a finish that bears this air",
    )  # fmt: skip


def _too_large(workshop: Workshop, groups: tuple[GroupPlan, ...]) -> Iterator[Finding]:
    """Yield the groups whose loose parts need more room than there is to dry."""
    for group in groups:
        need = group.area_m2 * loose_share(group.members)
        if workshop.places_m2 is not None and need > workshop.places_m2 and group.route is not None:
            yield Finding(
                code="places-too-small", level="note", where=Where(file="days", path="drying places"),
                what=f"{group.name} needs {need:.1f} m² to dry, there are {workshop.places_m2:g} m²",
                do="coat it in rounds, or find another board to lay parts on",
            )  # fmt: skip


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
    begin_h = task.begin_h - 24.0 * (day.day - 1) if task.begin_h else _EVENING_H
    return day.day + int((begin_h + task.minutes / 60.0 + task.wait_h) // 24)


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
        due_day=plan.due_day,
        finished=not any(_left(replace(group, name=f"{name}: {group.name}"), days) for group in plan.groups),
    )
