"""What would gain days, how sure the days are, and what decides them: the same pieces laid again and again."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from refettle.domain.airhours import AirHours
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.physics.air import warmed
from refettle.services.agenda import Agenda
from refettle.services.calendar import Calendar, lay_pieces
from refettle.services.clock import DryClock
from refettle.services.day_queues import BEGINS_H, Scale
from refettle.services.days import lay_days
from refettle.services.free_time import WEEKDAYS

Plans = tuple[tuple[str, PiecePlan], ...]
_MINUTES: Final = (0.72, 0.88, 1.0, 1.16, 1.5)
"""Hands-on time at 10, 30, 50, 70 and 90 % of cases, as a share of the likely [1]; as wide as plans print it."""
_WAITS: Final = (0.75, 0.9, 1.0, 1.12, 1.35)
"""Waits at the same; a third either way, as the comparison with data has it (coatings notes §2.2)."""
_HEATED_C: Final = 20.0
_FAN_M_S: Final = 0.5
_EVENING_H: Final = 2.0
_ALL_MADE: Final = frozenset({"warmer", "drier", "cooler"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Gain:
    """
    Something that would gain days.

    Attributes
    ----------
    words
        What, in a few words.
    days
        Days by which the last piece is sooner safe to wrap [d].
    money
        What its materials cost more than those planned [money]; None where that is not known.
    """

    words: str
    days: int
    money: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sureness:
    """
    When a piece is safe to wrap, slow and quick cases counted.

    Attributes
    ----------
    piece
        Its name.
    half_day, most_day
        Day by which it is in half of the cases, and in nine of ten [d].
    least_day
        Day before which it cannot be in any order: its slowest group laid alone [d].
    cases, in_time
        Cases counted [1], and those in which it is in time; None where it is asked for by no day.
    """

    piece: str
    half_day: int
    most_day: int
    least_day: int
    cases: int = 0
    in_time: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIf:
    """
    What stands around some days.

    Attributes
    ----------
    decides
        Group, and its last work, on which the last day hangs; empty where nothing is laid.
    gains
        What would gain at least a day, most first.
    sure
        Per piece, in the order given.
    """

    decides: tuple[str, str]
    gains: tuple[Gain, ...]
    sure: tuple[Sureness, ...]


def what_if(know: Knowledge, calendar: Calendar, plans: Plans, agenda: Agenda | None = None) -> WhatIf:
    """
    Return what would gain days, how sure they are, and what decides them.

    Parameters
    ----------
    know
        Facts.
    calendar
        The days as laid.
    plans
        The pieces with their plans, in the order of their turns.
    agenda
        What the days were laid after; None = after the turns.

    Returns
    -------
    WhatIf
        Twenty-five cases of hands-on time and waits, each as likely as the other; nothing is drawn by lot, so that the
        same pieces give the same answer.
    """
    workshop = calendar.workshop
    last = _last(calendar)
    gains = [
        Gain(words=words, days=last - _soonest(know, other, plans, calendar, agenda))
        for words, other in _others(workshop)
    ]
    gains.extend(_quicker(know, calendar, plans, last, agenda))
    cases = [
        lay_pieces(
            know,
            workshop,
            plans,
            Scale(minutes=minutes, waits=waits),
            piece_first=calendar.piece_first,
            agenda=agenda,
        )
        for minutes in _MINUTES
        for waits in _WAITS
    ]
    return WhatIf(
        decides=_decides(calendar),
        gains=tuple(
            sorted((gain for gain in gains if gain.days > 0), key=lambda gain: (-gain.days, gain.words))
        ),
        sure=tuple(
            _sure(number, name, cases, _least(know, workshop, plan))
            for number, (name, plan) in enumerate(plans)
        ),
    )


def _quicker(
    know: Knowledge, calendar: Calendar, plans: Plans, last: int, agenda: Agenda | None
) -> Iterator[Gain]:
    """Yield what the quicker sequences would gain that the plans of the pieces ready last know of."""
    late = {ready.piece for ready in calendar.ready if ready.finished and ready.wrap_day == last}
    for name, plan in plans:
        if name not in late:
            continue
        groups, taken, money = [], [], 0.0
        for group in plan.groups:
            other = next((route for route in group.alternatives if route.aim == "sooner"), None)
            if other is not None and group.route is not None:
                taken.append(group.name)
                money += other.money.likely - group.route.money.likely
                groups.append(replace(group, route=other))
            else:
                groups.append(group)
        if taken:
            swapped = tuple((n, replace(p, groups=tuple(groups)) if n == name else p) for n, p in plans)
            days = last - _soonest(know, calendar.workshop, swapped, calendar, agenda)
            yield Gain(words=f"the quicker coats for {name}: {', '.join(taken)}", days=days, money=money)


def _soonest(
    know: Knowledge, other: Workshop, plans: Plans, calendar: Calendar, agenda: Agenda | None
) -> int:
    """Return the last day in another workshop [d], laid by turns and, where there is one, in the order of the agenda."""
    laid = [lay_pieces(know, other, plans, piece_first=calendar.piece_first)]
    if agenda is not None:
        laid.append(lay_pieces(know, other, plans, agenda=replace(agenda, hold=False)))
    return min(_last(one) for one in laid)


def _last(calendar: Calendar) -> int:
    """Return the day on which the last piece is safe to wrap [d]; far off where one is not finished."""
    return max((one.wrap_day if one.finished else 10_000 for one in calendar.ready), default=0)


def _others(workshop: Workshop) -> list[tuple[str, Workshop]]:
    """Return workshops with one thing more: an evening, an hour, warmth, moving air."""
    found: list[tuple[str, Workshop]] = []
    if workshop.free:
        taken = {day for day, _, _ in workshop.free}
        found += [
            (
                f"{WEEKDAYS[day].capitalize()} evening as well",
                replace(workshop, free=(*workshop.free, (day, BEGINS_H, BEGINS_H + _EVENING_H))),
            )
            for day in range(7)
            if day not in taken
        ]
        longer = tuple((day, begin, min(24.0, end + 1.0)) for day, begin, end in workshop.free)
        found.append(
            ("an hour more each time", replace(workshop, free=longer)) if _apart(longer) else ("", workshop)
        )
    else:
        found += [
            (
                "one evening more a week",
                replace(workshop, evenings_per_week=min(7.0, workshop.evenings_per_week + 1)),
            ),
            (
                "an hour more each evening",
                replace(workshop, hours_per_evening=workshop.hours_per_evening + 1.0),
            ),
        ]
    if workshop.hours is not None:
        found.append(
            (
                f"a heater that holds {_HEATED_C:g} °C day and night",
                replace(workshop, hours=_heated(workshop.hours)),
            )
        )
        found.append(
            ("a fan over what dries", replace(workshop, hours=replace(workshop.hours, air_m_s=_FAN_M_S)))
        )
    return [pair for pair in found if pair[0]]


def _apart(free: tuple[tuple[int, float, float], ...]) -> bool:
    """Return whether no free hours run into the next of their day."""
    ordered = sorted(free)
    return all(a[0] != b[0] or a[2] <= b[1] for a, b in pairwise(ordered))


def _heated(hours: AirHours) -> AirHours:
    """Return the air with a heater; the water in it stays, so that it gets drier."""
    pairs = [warmed(temp, rh, _HEATED_C) for temp, rh in zip(hours.temps_c, hours.rhs, strict=True)]
    return replace(hours, temps_c=tuple(t for t, _ in pairs), rhs=tuple(rh for _, rh in pairs))


def _decides(calendar: Calendar) -> tuple[str, str]:
    """Return the group whose last wait ends last, and the work before it."""
    ends = [
        (task.begin_h + task.minutes / 60.0 + task.wait_h, task.group, task.text)
        for day in calendar.days for task in day.tasks if task.number
    ]  # fmt: skip
    if not ends:
        return "", ""
    _, group, text = max(ends)
    return group, text


def _sure(number: int, piece: str, cases: list[Calendar], least_day: int) -> Sureness:
    """Return how sure the day of a piece is over all cases."""
    days = sorted(_day(case, number) for case in cases)
    half, most = days[len(days) // 2], days[min(len(days) - 1, int(0.9 * len(days)))]
    due = cases[0].ready[number].due_day
    in_time = sum(day <= due for day in days) if due else None
    return Sureness(
        piece=piece, half_day=half, most_day=most, least_day=least_day, cases=len(cases), in_time=in_time
    )


def _least(know: Knowledge, workshop: Workshop, plan: PiecePlan) -> int:
    """
    Return the day before which a piece cannot be safe to wrap [d].

    Notes
    -----
    One group alone does each step as soon as it may, and waits are over no earlier for beginning later: nothing is sooner.
    """
    days = [0]
    for group in plan.groups:
        clock = None if workshop.hours is None else DryClock(know, workshop.hours, workshop.air_likely)
        if group.route is not None:
            days.append(lay_days(know, workshop, (group,), clock=clock, made=_ALL_MADE)[1])
    return max(days)


def _day(case: Calendar, number: int) -> int:
    """Return the day of a piece in a case [d]; far off where it is not finished."""
    ready = case.ready[number]
    return ready.wrap_day if ready.finished else 10_000
