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
    workshop: Workshop, wrap_h: float, days: list[Day], name: str, minutes: float, clock: DryClock | None
) -> tuple[int, float]:
    """Return the day on which a piece is put together again, once it may be wrapped, and the hour it begins [h]."""
    after_day = last_day_of(days, name)
    if clock is None and not workshop.free:
        day = max(int(wrap_h // 24) + 1, after_day + 1)
        return day, (day - 1) * 24.0 + BEGINS_H
    ends = {day.day: max(_end_h(task) for task in day.tasks) for day in days}
    for begin, end in windows(workshop):
        day = int(begin // 24) + 1
        if begin < wrap_h or begin < 24.0 * after_day:
            continue
        free_h = ends.get(day, 0.0)
        if free_h <= end and (max(begin, free_h) + minutes / 60.0 <= end + 1e-6 or day not in ends):
            return day, max(begin, free_h)
    return int(wrap_h // 24) + 1, wrap_h


def _end_h(task: DayTask) -> float:
    """Return when a task is done, its wait not counted [h]."""
    return task.begin_h + task.minutes / 60.0


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
        end = max(_end_h(task) for task in before.tasks)
        later = after_each_other(day.tasks, max(end, day.tasks[0].begin_h))
        day = Day(day=day.day, tasks=(*before.tasks, *later), minutes=before.minutes + day.minutes)
    days.insert(place, day)


def add(days: list[Day], day: Day) -> None:
    """Add what is done in some hours to the days; two windows of one day stand together."""
    if days and days[-1].day == day.day:
        before = days.pop()
        day = Day(day=day.day, tasks=(*before.tasks, *day.tasks), minutes=before.minutes + day.minutes)
    days.append(day)
