"""A simple list of evenings: steps laid into free hours with their waits at the planning air."""

from dataclasses import dataclass, field

from refettle.domain.piece import Workshop
from refettle.domain.piece_plan import Day, DayTask, GroupPlan
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.search import setup_hours

_DUSTY = frozenset({"sand", "scuff", "scrape", "strip"})
_LONGEST_DAYS = 400


@dataclass(slots=True)
class _Queue:
    """Steps of one group with the hour from which the next may start."""

    plan: GroupPlan
    next: int = 0
    free_h: float = 0.0
    coats_left: int = 0
    tasks: list[tuple[Step, float]] = field(default_factory=list)


def session_days(evenings_per_week: float) -> list[int]:
    """Return the days of a week on which there is an evening, spread evenly; day 0 first."""
    count = max(1, min(7, round(evenings_per_week)))
    return [int(i * 7 / count) for i in range(count)]


def lay_days(
    know: Knowledge, workshop: Workshop, plans: tuple[GroupPlan, ...], words: dict[Step, str]
) -> tuple[tuple[Day, ...], int, int]:
    """
    Return the evenings, the day it is safe to wrap and the day it is cured.

    Parameters
    ----------
    know
        All facts.
    workshop
        Free evenings and hours.
    plans
        Plans of the groups, in working order.
    words
        Text per step.

    Returns
    -------
    tuple
        Evenings with work, wrap day [d], cured day [d]. A step longer than an evening goes on the next.
        Dust-making steps come first in an evening, then coats, so that nothing dusty meets a wet film.
    """
    queues = [_Queue(p, tasks=_split(p)) for p in plans if p.route is not None]
    evening = workshop.hours_per_evening * 60.0
    week = session_days(workshop.evenings_per_week)
    days: list[Day] = []
    carried: dict[int, float] = {}
    day = 0
    while any(q.next < len(q.tasks) for q in queues) and day < _LONGEST_DAYS:
        if day % 7 in week:
            tasks, used = _evening(know, queues, day * 24.0 + 18.0, evening, words, carried)
            if tasks:
                days.append(Day(day=day + 1, tasks=tuple(tasks), minutes=used))
        day += 1
    wrap = max((q.free_h for q in queues), default=0.0)
    cured = wrap + max((_cure_h(know, p) for p in plans if p.route is not None), default=0.0)
    return tuple(days), int(wrap // 24) + 1, int(cured // 24) + 1


def _split(plan: GroupPlan) -> list[tuple[Step, float]]:
    """Return the steps with hands-on minutes; waits between coats become tasks of their own."""
    tasks: list[tuple[Step, float]] = []
    if plan.route is None:
        return tasks
    for cost in plan.route.steps:
        step, minutes = cost.step, cost.minutes.likely
        coats = max(1, step.coats) if step.is_coat else 1
        for n in range(coats):
            last = n == coats - 1
            wait = step.wait_after_h if last else step.wait_between_h
            tasks.append((_one(step, coats, wait), minutes / coats))
    return tasks


def _one(step: Step, coats: int, wait: float) -> Step:
    """Return one coat of a step with the wait that follows it."""
    if coats == 1:
        return step
    return Step(
        verb=step.verb, what=step.what, method=step.method, coats=1, wait_after_h=wait, film=step.film,
        grit=step.grit, how=step.how, air=step.air,
    )  # fmt: skip


def _evening(
    know: Knowledge, queues: list[_Queue], start_h: float, evening: float, words: dict[Step, str],
    carried: dict[int, float],
) -> tuple[list[DayTask], float]:  # fmt: skip
    """Return the tasks of one evening and the minutes used; queues move on."""
    tasks: list[DayTask] = []
    used = 0.0
    ready: set[tuple[str, str]] = set()
    wet = False
    moved = True
    while moved and used < evening - 4:
        moved = False
        order = sorted(range(len(queues)), key=lambda i: (_rank(queues[i]), i))
        for i in order:
            queue = queues[i]
            if queue.next >= len(queue.tasks):
                continue
            now = start_h + used / 60.0
            step, minutes = queue.tasks[queue.next]
            if queue.free_h > now + 0.26:
                continue
            if step.verb in _DUSTY and "wet" not in step.how and wet:
                continue
            key = (step.verb, step.what)
            setup = 0.0 if key in ready else setup_hours(know, step) * 60.0
            left = carried.get(i, minutes)
            room = evening - used - setup
            if room < min(left, 8.0) and left > 0:
                continue
            done = min(left, room)
            used += done + setup
            ready.add(key)
            finished = left - done < 1.0
            end = start_h + used / 60.0
            if finished:
                carried.pop(i, None)
                queue.next += 1
                queue.free_h = end + step.wait_after_h
                wet = wet or step.is_coat
            else:
                carried[i] = left - done
            if minutes > 0 or step.verb != "wait":
                text = words.get(step, step.verb)
                tasks.append(
                    DayTask(group=queue.plan.name, number=queue.next, text=text if finished else f"{text} (goes on)",
                            minutes=done, wait_h=step.wait_after_h if finished else 0.0)
                )  # fmt: skip
            moved = True
            break
    return tasks, used


def _rank(queue: _Queue) -> int:
    """Return the turn of a queue's next step in an evening: dust first, then the rest, coats last."""
    if queue.next >= len(queue.tasks):
        return 9
    step, _ = queue.tasks[queue.next]
    return 0 if step.verb in _DUSTY else (2 if step.is_coat else 1)


def _cure_h(know: Knowledge, plan: GroupPlan) -> float:
    """Return the hours from wrapping to full cure of the slowest film of a plan [h]."""
    if plan.route is None:
        return 0.0
    films = [know.film(c.step.what) for c in plan.route.steps if c.step.is_coat]
    return max((f.cured_h - f.wrap_h for f in films), default=0.0)
