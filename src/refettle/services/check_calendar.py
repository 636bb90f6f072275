"""
Check the days of several pieces hour by hour, with own bookkeeping.

It shares rules and rates with what laid them, not the code: free hours are asked for minute by minute, drying is summed
hour by hour, and each group's steps are followed through the days. It certifies the books, not the weather.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from refettle.domain.air import Air
from refettle.domain.dates import day_number, weekday
from refettle.domain.finding import Finding, Where
from refettle.domain.piece_plan import Day, DayTask, GroupPlan
from refettle.domain.plan import StepCost
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import drying_rate
from refettle.services.calendar import Calendar
from refettle.services.day_queues import KEYED
from refettle.services.free_time import windows
from refettle.services.turning import loose_share

_SLACK_H = 0.26
"""What a task may run past the end of free hours [h]: the last few minutes of work are not begun anew another day."""
_LOOK_H = 24 * 430
_GOES_ON = " (goes on)"
_FIRST_FACES = ": first faces"


@dataclass(frozen=True, slots=True)
class _Placed:
    """A task with the hour it begins and is done [h]."""

    task: DayTask
    begin_h: float
    end_h: float


def check_calendar(
    know: Knowledge, workshop: Workshop, groups: tuple[GroupPlan, ...], calendar: Calendar
) -> tuple[Finding, ...]:
    """
    Return what is wrong with some days.

    Parameters
    ----------
    know
        Facts.
    workshop
        As it was laid into, its air by the hour read.
    groups
        Groups with their plans, named with their piece as in the days.
    calendar
        The days.

    Returns
    -------
    tuple
        Empty where the books are right.
    """
    placed = [_of(task) for day in calendar.days for task in day.tasks]
    found = [*_hands(placed), *_in_free_hours(workshop, calendar.days, placed)]
    for group in groups:
        own = [one for one in placed if one.task.group == group.name and one.task.number]
        found += _in_order(know, workshop, group, own)
        found += _when_sprayed(workshop, group, own)
    if workshop.places_m2 is not None:
        found += _on_places(know, workshop, groups, placed, workshop.places_m2)
    return tuple(found)


def _when_sprayed(workshop: Workshop, group: GroupPlan, own: list[_Placed]) -> Iterator[Finding]:
    """Yield coats that are sprayed outside the hours for it."""
    steps = dict(enumerate(group.route.steps if group.route else (), start=1))
    first = day_number(workshop.begins) if workshop.begins else 0
    for one in own:
        day, hour = int(one.begin_h // 24), one.begin_h % 24
        on = weekday(first + day) if workshop.begins else day % 7
        sprayed = steps[one.task.number].step.method in {"spray", "aerosol"} and one.task.text != KEYED
        if (
            sprayed
            and workshop.spraying
            and not any(
                on == of and begin <= hour + 1e-6 and hour < end for of, begin, end in workshop.spraying
            )
        ):
            what = f"step {one.task.number} of {group.name} is sprayed at hour {one.begin_h:.2f}"
            yield _finding("not-sprayed-then", what, "move it into the spraying hours")


def _on_places(
    know: Knowledge,
    workshop: Workshop,
    groups: tuple[GroupPlan, ...],
    placed: list[_Placed],
    places_m2: float,
) -> Iterator[Finding]:
    """Yield moments at which wet loose parts need more than the drying places; a group larger than them counts as all."""
    wet: list[tuple[float, float, float, str]] = []
    for group in groups:
        area = min(places_m2, group.area_m2 * loose_share(group.members))
        steps = dict(enumerate(group.route.steps if group.route else (), start=1))
        own = [one for one in placed if one.task.group == group.name and one.task.number and area > 0]
        for one in own:
            step = steps[one.task.number].step
            if step.is_coat and one.task.text != KEYED and not one.task.text.endswith(_GOES_ON):
                touch_h = know.film(step.what).touch_h / _rate(
                    know, step.what, step.air or workshop.air_likely
                )
                until = _dried_h(know, workshop, step, touch_h, one.end_h)
                wet.append((one.begin_h, until, area, group.name))
    for begin, _, area, name in wet:
        others = {other: a for b, u, a, other in wet if other != name and b <= begin < u - 1e-3}
        if area + sum(others.values()) > places_m2 + 1e-6:
            yield _finding("no-place", f"{name} finds no place to dry at hour {begin:.2f}", "lay it later")


def _of(task: DayTask) -> _Placed:
    """Return a task with its hours."""
    return _Placed(task, task.begin_h, task.begin_h + task.minutes / 60.0)


def _finding(code: str, what: str, do: str) -> Finding:
    """Return what is wrong in the days."""
    return Finding(code=code, level="error", where=Where(file="days"), what=what, do=do)


def _hands(placed: list[_Placed]) -> Iterator[Finding]:
    """Yield tasks that one pair of hands would do at once."""
    ordered = sorted(placed, key=lambda one: one.begin_h)
    for first, then in pairwise(ordered):
        if then.begin_h < first.end_h - 1e-6:
            what = f'"{then.task.text}" begins before "{first.task.text}" is done'
            yield _finding("two-at-once", what, "lay one after the other")


def _in_free_hours(workshop: Workshop, days: tuple[Day, ...], placed: list[_Placed]) -> Iterator[Finding]:
    """Yield tasks outside the free hours; refitting for want of any is left where it is."""
    free = list(windows(workshop))
    for one in placed:
        if not any(begin - 1e-6 <= one.begin_h and one.end_h <= end + _SLACK_H for begin, end in free):
            if not one.task.number and one.task.minutes <= 0:
                continue
            inside = any(begin - 1e-6 <= one.begin_h <= end for begin, end in free)
            alone = sum(task.begin_h // 24 == one.begin_h // 24 for day in days for task in day.tasks) == 1
            if not (inside and (alone or not one.task.number)):
                what = f'"{one.task.text}" at hour {one.begin_h:.2f} is not in the free hours'
                yield _finding("not-free", what, "move it into them")


def _in_order(know: Knowledge, workshop: Workshop, group: GroupPlan, own: list[_Placed]) -> Iterator[Finding]:
    """Yield steps out of order, begun before the wait before them is over, or coats laid in air that bars them."""
    steps = dict(enumerate(group.route.steps if group.route else (), start=1))
    over_h, last = 0.0, 0
    coats_done: dict[int, int] = {}
    for one in sorted(own, key=lambda placed: placed.begin_h):
        number = one.task.number
        if number < last:
            yield _finding(
                "out-of-order", f"step {number} of {group.name} comes after step {last}", "keep the order"
            )
        if one.begin_h < over_h - 1e-3:
            what = f"step {number} of {group.name} begins {over_h - one.begin_h:.1f} h before the wait before it is over"
            yield _finding("too-early", what, "wait for it")
        last = max(last, number)
        cost = steps[number]
        barred = "" if one.task.text.startswith(KEYED) else _barred(know, workshop, cost, one.begin_h)
        if barred:
            yield _finding("wrong-air", f"step {number} of {group.name}: {barred}", "wait for other air")
        if one.task.text.endswith(_GOES_ON) or one.task.text == KEYED:
            continue
        coats_done[number] = coats_done.get(number, 0) + 1
        over_h = _over_h(know, workshop, steps, number, coats_done[number], one.end_h)


def _barred(know: Knowledge, workshop: Workshop, cost: StepCost, at_h: float) -> str:
    """Return why a coat should not have been laid at an hour; nothing for other work, and for air that is made."""
    if not cost.step.is_coat or cost.step.air is not None or workshop.hours is None:
        return ""
    air, facts = workshop.hours.at(int(at_h)), know.film(cost.step.what)
    if not facts.min_c <= air.temp_c <= facts.max_c:
        return f"{air.temp_c:.0f} °C for {facts.name}"
    return f"{100 * air.rh:.0f} % humidity for {facts.name}" if air.rh > facts.rh_max else ""


def _over_h(
    know: Knowledge, workshop: Workshop, steps: dict[int, StepCost], number: int, coat: int, end_h: float
) -> float:
    """Return when the wait after a coat or other work is over [h], summed hour by hour."""
    step = steps[number].step
    coats = max(1, step.coats) if step.is_coat else 1
    wait = step.wait_after_h if coat >= coats else step.wait_between_h
    after = number + 1
    while coat >= coats and after in steps and steps[after].step.verb == "wait":
        wait += steps[after].step.wait_after_h
        after += 1
    return _dried_h(know, workshop, step, wait, end_h)


def _dried_h(know: Knowledge, workshop: Workshop, step: Step, wait: float, end_h: float) -> float:
    """Return when a wait in the planning air is over [h], summed hour by hour; only coats are summed."""
    if workshop.hours is None or not step.is_coat or step.air is not None or wait <= 0:
        return end_h + (wait if step.is_coat else 0.0)
    need = wait * _rate(know, step.what, workshop.air_likely)
    at = end_h
    while need > 1e-9 and at < _LOOK_H:
        rate = _rate(know, step.what, workshop.hours.at(int(at)))
        rest = int(at) + 1 - at
        spent = min(rest, need / rate)
        need -= spent * rate
        at += spent
    return at


def _rate(know: Knowledge, cls: str, air: Air) -> float:
    """Return how fast a class dries in an air [1]."""
    return drying_rate(know.film(cls), air)
