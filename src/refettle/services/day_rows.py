"""Days as rows: tasks one after the other, days put in their places, and the day on which all is put together."""

from dataclasses import replace

from refettle.domain.piece_plan import Day, DayTask
from refettle.domain.workshop import Workshop
from refettle.services.clock import DryClock
from refettle.services.day_queues import BEGINS_H
from refettle.services.free_time import windows


def after_each_other(tasks: tuple[DayTask, ...], begin_h: float) -> tuple[DayTask, ...]:
    """Return tasks that follow each other from an hour on."""
    placed = []
    for task in tasks:
        placed.append(replace(task, begin_h=begin_h))
        begin_h += task.minutes / 60.0
    return tuple(placed)


def put_together(
    workshop: Workshop, wrap_h: float, after_day: int, clock: DryClock | None
) -> tuple[int, float]:
    """Return the day on which all is put together again, once it may be wrapped, and the hour it begins [h]."""
    if clock is None and not workshop.free:
        day = max(int(wrap_h // 24) + 1, after_day + 1)
        return day, (day - 1) * 24.0 + BEGINS_H
    begin = next((b for b, _ in windows(workshop) if b >= wrap_h and b >= 24.0 * after_day), wrap_h)
    return int(begin // 24) + 1, begin


def last_day_of(days: list[Day], name: str) -> int:
    """Return the last day on which something of a piece is done."""
    return max(
        (day.day for day in days if any(task.group.startswith(name) for task in day.tasks)),
        default=days[-1].day,
    )


def insert(days: list[Day], day: Day) -> None:
    """Put a day in its place among the others; what is done on it already comes first."""
    place = next((n for n, other in enumerate(days) if other.day >= day.day), len(days))
    if place < len(days) and days[place].day == day.day:
        before = days.pop(place)
        end = max(task.begin_h + task.minutes / 60.0 for task in before.tasks)
        later = after_each_other(day.tasks, max(end, day.tasks[0].begin_h))
        day = Day(day=day.day, tasks=(*before.tasks, *later), minutes=before.minutes + day.minutes)
    days.insert(place, day)


def add(days: list[Day], day: Day) -> None:
    """Add what is done in some hours to the days; two windows of one day stand together."""
    if days and days[-1].day == day.day:
        before = days.pop()
        day = Day(day=day.day, tasks=(*before.tasks, *day.tasks), minutes=before.minutes + day.minutes)
    days.append(day)
