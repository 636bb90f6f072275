"""Free hours: when somebody can be in the workshop, day by day."""

from collections.abc import Iterator
from typing import Final

from refettle.domain.air import Air
from refettle.domain.dates import day_number, iso_of, weekday
from refettle.domain.workshop import Workshop
from refettle.services.day_queues import BEGINS_H

WEEKDAYS: Final = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
LONGEST_DAYS: Final = 400
"""Days looked ahead [d]."""
_PLANNED_H: Final = 24.0 * 28


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
        Free hours by weekday, else evenings a week; days that fall out; the day it begins; hours that the clock skips.

    Yields
    ------
    tuple
        Begin and end, from midnight of the first day [h]; for `LONGEST_DAYS` days at the most.
    """
    skipped = [hour for hour, length in workshop.hour_lengths if length == 0]
    for begin, end in _as_written(workshop):
        clock_h = begin
        for hour in skipped:
            if clock_h < hour + 1 and hour < end:
                if hour > clock_h:
                    yield clock_h, float(hour)
                clock_h = hour + 1.0
        if clock_h < end:
            yield clock_h, end


def _as_written(workshop: Workshop) -> Iterator[tuple[float, float]]:
    """Yield the free hours ahead as the file has them [h], in order."""
    evenings = session_days(workshop.evenings_per_week)
    first = day_number(workshop.begins) if workshop.begins else None
    for day in range(LONGEST_DAYS):
        of_week = weekday(first + day) if first is not None else day % 7
        iso = iso_of(first + day) if first is not None else ""
        if WEEKDAYS[of_week] in workshop.not_on or (iso and iso in workshop.not_on):
            continue
        if workshop.free:
            for on, begin, end in sorted(workshop.free):
                if on == of_week:
                    yield day * 24.0 + begin, day * 24.0 + end
        elif day % 7 in evenings:
            yield day * 24.0 + BEGINS_H, day * 24.0 + BEGINS_H + workshop.hours_per_evening


def spray_h(workshop: Workshop, at_h: float) -> float:
    """
    Return the first moment from one on at which it may be sprayed.

    Parameters
    ----------
    workshop
        With its spraying hours; none = at all times.
    at_h
        Hour from midnight of the first day [h].

    Returns
    -------
    float
        Hour [h].
    """
    if not workshop.spraying:
        return at_h
    first = day_number(workshop.begins) if workshop.begins else 0
    today = int(at_h // 24)
    spans = (
        (day * 24.0 + begin, day * 24.0 + end)
        for day in range(today, today + 8)
        for on, begin, end in sorted(workshop.spraying)
        if on == (weekday(first + day) if workshop.begins else day % 7)
    )
    return next(max(at_h, begin) for begin, end in spans if end > at_h)


def day_words(workshop: Workshop, day: int) -> str:
    """Return a day as one says it: its weekday and date where the workshop says when it begins, else its number."""
    if not workshop.begins:
        return f"Day {day}"
    number = day_number(workshop.begins) + day - 1
    return f"{WEEKDAYS[weekday(number)][:3].capitalize()} {iso_of(number)}"


def planning_air(workshop: Workshop) -> tuple[Air, Air]:
    """
    Return the air that plans are made for, by the air of the free hours ahead.

    Parameters
    ----------
    workshop
        With its air by the hour.

    Returns
    -------
    tuple
        The mean over the free hours of four weeks, and the colder, damper side: a tenth of them lie beyond it.
    """
    airs = [
        workshop.hours.at(hour)
        for begin, end in windows(workshop)
        if workshop.hours is not None and begin < _PLANNED_H
        for hour in range(int(begin), max(int(begin) + 1, int(end)))
    ]
    if not airs:
        return workshop.air_likely, workshop.air_safe
    temps, damps = sorted(air.temp_c for air in airs), sorted(air.rh for air in airs)
    tenth = len(airs) // 10
    likely = Air(temp_c=sum(temps) / len(temps), rh=sum(damps) / len(damps), air_m_s=airs[0].air_m_s)
    return likely, Air(temp_c=temps[tenth], rh=damps[-1 - tenth], air_m_s=airs[0].air_m_s)


def clock_changes(workshop: Workshop, days: int) -> Iterator[tuple[int, int, float]]:
    """
    Yield the changes of the clock on the wall.

    Parameters
    ----------
    workshop
        With its hours that do not last one.
    days
        Days looked at [d].

    Yields
    ------
    tuple
        Day from 1, hour of that day, and by how much longer it lasts [h]: −1 skipped, 1 twice.
    """
    for hour, length in workshop.hour_lengths:
        if hour < days * 24:
            yield hour // 24 + 1, hour % 24, length - 1.0
