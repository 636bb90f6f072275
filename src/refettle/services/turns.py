"""Whose turn it is where several pieces could go on: the order that is least late, then takes the fewest evenings."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import permutations
from typing import Final

from refettle.domain.piece_plan import PiecePlan
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.calendar import Calendar, lay_pieces

Plans = tuple[tuple[str, PiecePlan], ...]
Value = tuple[int, int, int, float, int]
_ALL_UP_TO: Final = 3
"""Pieces up to which every order is tried [1]."""
_TRIES: Final = 24
"""Days laid beyond that [1]."""
_ENOUGH: Final = 99


def calendar_value(calendar: Calendar) -> Value:
    """
    Return what days are worth, as stages: of two calendars the one with the smaller value is better.

    Parameters
    ----------
    calendar
        The days.

    Returns
    -------
    tuple
        Pieces that are not finished [1], days late [d], evenings [1], hands-on time with set-ups [min, rounded], and
        the sum of the days on which pieces are safe to wrap [d].
    """
    return (
        sum(not ready.finished for ready in calendar.ready),
        sum(ready.late_days for ready in calendar.ready),
        len(calendar.days),
        round(sum(day.minutes for day in calendar.days), 1),
        sum(ready.wrap_day for ready in calendar.ready),
    )


def best_turns(know: Knowledge, workshop: Workshop, plans: Plans) -> tuple[Calendar, Plans]:
    """
    Return the best days found, and the pieces in the order of their turns.

    Parameters
    ----------
    know, workshop
        Facts; free evenings and hours.
    plans
        Pieces by their names, each once, with their plans.

    Returns
    -------
    tuple
        The calendar, its pieces in the order given; and the plans in the order of their turns. Each order is laid with
        all dust before all coats, and with a piece going on as far as it can. Up to three pieces all orders are tried;
        beyond that two dozen days: as given, by due date, longest and shortest first, and neighbours exchanged from the
        best of them on. The same pieces give the same days.
    """
    best, turns = lay_pieces(know, workshop, plans), plans
    value = calendar_value(best)
    tried: set[tuple[Plans, bool]] = {(plans, False)}
    most = _TRIES if len(plans) > _ALL_UP_TO else _ENOUGH
    improved = True
    while improved and len(tried) < most:
        improved = False
        orders = [plans, *_starts(plans)] if turns is plans else [turns, *_exchanged(turns)]
        for order in orders:
            for first in (False, True):
                if (order, first) in tried or len(tried) >= most:
                    continue
                tried.add((order, first))
                calendar = lay_pieces(know, workshop, order, piece_first=first)
                if calendar_value(calendar) < value:
                    best, turns, value, improved = calendar, order, calendar_value(calendar), True
    place = {name: number for number, (name, _) in enumerate(plans)}
    ready = tuple(sorted(best.ready, key=lambda one: place[one.piece]))
    return replace(best, ready=ready), turns


def _starts(plans: Plans) -> Iterator[Plans]:
    """Yield orders to begin with: all of them while they are few."""
    if len(plans) <= _ALL_UP_TO:
        yield from permutations(plans)
        return
    far = max(plan.wrap_day for _, plan in plans) + 1
    yield tuple(sorted(plans, key=lambda one: one[1].due_day or 10 * far))
    yield tuple(sorted(plans, key=lambda one: -one[1].wrap_day))
    yield tuple(sorted(plans, key=lambda one: one[1].wrap_day))
    yield tuple(sorted(plans, key=lambda one: (one[1].due_day or 10 * far) - one[1].wrap_day))


def _exchanged(turns: Plans) -> Iterator[Plans]:
    """Yield orders with two neighbours exchanged."""
    for place in range(len(turns) - 1):
        yield (*turns[:place], turns[place + 1], turns[place], *turns[place + 2 :])
