"""Free hours: when somebody can be in the workshop, day by day."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Final

from refettle.domain.piece import Workshop
from refettle.services.day_queues import BEGINS_H

WEEKDAYS: Final = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
LONGEST_DAYS: Final = 400
"""Days looked ahead [d]."""


def session_days(evenings_per_week: float) -> list[int]:
    """Return the days of a week on which there is an evening, spread evenly; day 0 first."""
    count = max(1, min(7, round(evenings_per_week)))
    return [int(i * 7 / count) for i in range(count)]


def windows(workshop: Workshop) -> Iterator[tuple[float, float]]:
    """
    Yield the free hours ahead, in order.

    Parameters
    ----------
    workshop
        Free hours by weekday, else evenings a week; days that fall out; the day it begins.

    Yields
    ------
    tuple
        Begin and end, from midnight of the first day [h]; for `LONGEST_DAYS` days at the most.
    """
    evenings = session_days(workshop.evenings_per_week)
    first = date.fromisoformat(workshop.begins) if workshop.begins else None
    for day in range(LONGEST_DAYS):
        weekday = (first + timedelta(days=day)).weekday() if first else day % 7
        iso = (first + timedelta(days=day)).isoformat() if first else ""
        if WEEKDAYS[weekday] in workshop.not_on or (iso and iso in workshop.not_on):
            continue
        if workshop.free:
            for on, begin, end in sorted(workshop.free):
                if on == weekday:
                    yield day * 24.0 + begin, day * 24.0 + end
        elif day % 7 in evenings:
            yield day * 24.0 + BEGINS_H, day * 24.0 + BEGINS_H + workshop.hours_per_evening


def day_words(workshop: Workshop, day: int) -> str:
    """Return a day as one says it: its weekday and date where the workshop says when it begins, else its number."""
    if not workshop.begins:
        return f"Day {day}"
    when = date.fromisoformat(workshop.begins) + timedelta(days=day - 1)
    return f"{WEEKDAYS[when.weekday()][:3].capitalize()} {when.isoformat()}"
