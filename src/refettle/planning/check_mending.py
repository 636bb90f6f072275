"""Checks of mending: every damage has its job, whole and in order, and no coat goes on before it."""

from collections.abc import Iterator

from refettle.domain.finding import Finding
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import Day, DayTask, GroupPlan, MendJob, PiecePlan
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_sums import near
from refettle.planning.check_whole import finding
from refettle.planning.mended import all_wrong

_GOES_ON = " (goes on)"
_OVERNIGHT_H = 12.0


def mending(know: Knowledge, piece: Piece, plan: PiecePlan) -> Iterator[Finding]:
    """
    Yield what is wrong with the mending of a plan.

    Parameters
    ----------
    know
        Facts.
    piece
        As described.
    plan
        The plan.

    Yields
    ------
    Finding
        Damage without its job, operations left out of the evenings or out of order, coats before their time.
    """
    for wrong in all_wrong(know, piece):
        repair = know.damage(wrong.damage).mend
        if not any(job.repair == repair and job.part == wrong.part for job in plan.mending):
            name = know.name("damage", wrong.damage)
            yield finding(piece, "not-mended", wrong.part, f"{name} has no job", "mend it before colour")
    for job in plan.mending:
        yield from _laid(piece, plan, job)
        yield from _ground(piece, plan, job)
    yield from _coats(piece, plan)


def _tasks(plan: PiecePlan, job: MendJob) -> list[tuple[Day, DayTask]]:
    """Return the tasks of a job with their days."""
    return [
        (day, task) for day in plan.days for task in day.tasks if task.group == job.name and not task.number
    ]


def _laid(piece: Piece, plan: PiecePlan, job: MendJob) -> Iterator[Finding]:
    """Yield operations that no evening has room for, or that stand in another order or length."""
    found: list[float] = [0.0]
    for _, task in _tasks(plan, job):
        found[-1] += task.minutes
        if not task.text.endswith(_GOES_ON):
            found.append(0.0)
    wanted = [step.minutes.likely for step in job.steps]
    if len(found) - 1 != len(wanted) or not all(near(a, b) for a, b in zip(found, wanted, strict=False)):
        what = f"{job.name}: {len(found) - 1} of its {len(wanted)} operations stand in the evenings, or take another time"
        yield finding(piece, "job-differs", job.name, what, "lay every operation into the evenings, in order")
        return
    done = [(day, task) for day, task in _tasks(plan, job) if not task.text.endswith(_GOES_ON)]
    for (day, task), (later, _), step in zip(done, done[1:], job.steps, strict=False):
        if later is day and step.wait_h.likely >= _OVERNIGHT_H:
            what = (
                f'{job.name}: "{task.text}" waits {step.wait_h.likely:g} h, and it goes on the same evening'
            )
            yield finding(piece, "task-too-early", job.name, what, "move what comes after to a later evening")


def _ground(piece: Piece, plan: PiecePlan, job: MendJob) -> Iterator[Finding]:
    """Yield filling before the old finish is off, and toning before the last sanding."""
    at = {(day.day, id(task)): n for n, (day, task) in enumerate((d, t) for d in plan.days for t in d.tasks)}
    number = 0
    for day, task in _tasks(plan, job):
        wanted = job.steps[number].waits_for if number < len(job.steps) else ""
        number += not task.text.endswith(_GOES_ON)
        if not wanted:
            continue
        for group in plan.groups:
            if not set(group.members) & set(job.surfaces):
                continue
            before = _numbers_before(group, wanted)
            late = [
                d.day for d in plan.days for t in d.tasks
                if t.group == group.name and t.number in before and at[d.day, id(t)] > at[day.day, id(task)]
            ]  # fmt: skip
            if late:
                what = f'"{task.text}" is on day {day.day}, {group.name} is {wanted} on day {max(late)}'
                yield finding(piece, "filled-too-soon", job.name, what, "fill bare wood, tone sanded wood")


def _numbers_before(group: GroupPlan, wanted: str) -> set[int]:
    """Return the steps of a group after which its faces are bare, or smooth."""
    numbers: set[int] = set()
    for number, cost in enumerate(group.route.steps if group.route else (), start=1):
        step = cost.step
        if step.is_coat:
            break
        off = step.verb in {"strip", "rinse", "neutralise"} or "to bare" in step.how
        if step.verb != "wait" and (wanted == "smooth" or off):
            numbers.add(number)
    return numbers


def _coats(piece: Piece, plan: PiecePlan) -> Iterator[Finding]:
    """Yield coats laid on a day when a job of the surface is not over, its wait included."""
    ends = {}
    for job in plan.mending:
        days = [(day.day, task.wait_h) for day, task in _tasks(plan, job)]
        if job.stage != "after coats" and days:
            ends[job.name] = days[-1][0] + int(days[-1][1] // 24)
    for group in plan.groups:
        coats = {
            number
            for number, cost in enumerate(group.route.steps if group.route else (), start=1)
            if cost.step.is_coat
        }
        first = min(
            (d.day for d in plan.days for t in d.tasks if t.group == group.name and t.number in coats),
            default=0,
        )
        for job in plan.mending:
            waits = job.stage == "first" or set(job.surfaces) & set(group.members)
            if first and waits and first < ends.get(job.name, 0):
                what = f"the first coat is on day {first}, {job.name} is over on day {ends[job.name]}"
                yield finding(piece, "coat-before-mending", group.name, what, "mend before colour")
