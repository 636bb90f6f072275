"""The days as a calendar file, RFC 5545: one event for each stretch of work, one for each piece that is ready."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from icalendar import Calendar as CalendarFile
from icalendar import Event

from refettle.domain.piece_plan import Day, DayTask
from refettle.services.calendar import Calendar

_STAMP = datetime(2000, 1, 1, tzinfo=UTC)
"""Stamp of every event: a file made twice of the same is the same."""
_REST_H = 0.75
"""Break between two tasks [h] from which they are two events."""


def days_ics(calendar: Calendar) -> str:
    """
    Return the days as a calendar file.

    Parameters
    ----------
    calendar
        Days of a workshop that says when it begins.

    Returns
    -------
    str
        Text of the file; times are those of the clock on the wall: of the workshop's time zone, described in the file,
        or bound to none where it names none.
    """
    zone = ZoneInfo(calendar.workshop.time_zone) if calendar.workshop.time_zone else None
    begins = date.fromisoformat(calendar.workshop.begins)
    made = CalendarFile()
    made.add("prodid", "-//Refettle//days//EN")
    made.add("version", "2.0")
    for day in calendar.days:
        for number, tasks in enumerate(_stretches(day), start=1):
            made.add_component(_work(begins, day, number, tasks, zone))
    for ready in calendar.ready:
        if ready.finished:
            made.add_component(_ready(begins, ready.piece, ready.wrap_day))
    if zone is not None:
        made.add_missing_timezones()
    text: str = made.to_ical().decode("utf-8")
    return text


def _stretches(day: Day) -> list[list[DayTask]]:
    """Return the tasks of a day in stretches without a long break."""
    parts: list[list[DayTask]] = []
    end = -1.0
    for task in sorted(day.tasks, key=lambda one: one.begin_h):
        if not parts or task.begin_h - end > _REST_H:
            parts.append([])
        parts[-1].append(task)
        end = max(end, task.begin_h + task.minutes / 60.0)
    return parts


def _moment(begins: date, at_h: float, zone: ZoneInfo | None) -> datetime:
    """Return a moment of the clock on the wall."""
    plain = datetime.combine(begins, time()) + timedelta(minutes=round(60.0 * at_h))
    return plain.replace(tzinfo=zone)


def _work(begins: date, day: Day, number: int, tasks: list[DayTask], zone: ZoneInfo | None) -> Event:
    """Return a stretch of work as an event."""
    event = Event()
    event.add("uid", f"day-{day.day}-{number}@refettle")
    event.add("dtstamp", _STAMP)
    event.add("dtstart", _moment(begins, tasks[0].begin_h, zone))
    event.add("dtend", _moment(begins, max(task.begin_h + task.minutes / 60.0 for task in tasks), zone))
    first = tasks[0].text
    event.add("summary", first if len(tasks) == 1 else f"{first} and {len(tasks) - 1} more")
    event.add("description", "\n".join(f"{task.text} – {task.group}" for task in tasks))
    return event


def _ready(begins: date, piece: str, wrap_day: int) -> Event:
    """Return the day from which a piece is safe to wrap as an event of a whole day."""
    event = Event()
    on = begins + timedelta(days=wrap_day - 1)
    event.add("uid", f"ready-{abs(hash_of(piece))}@refettle")
    event.add("dtstamp", _STAMP)
    event.add("dtstart", on)
    event.add("dtend", on + timedelta(days=1))
    event.add("summary", f"{piece}: safe to wrap")
    return event


def hash_of(text: str) -> int:
    """Return a number for a text that is the same on every machine."""
    number = 0
    for sign in text:
        number = (number * 131 + ord(sign)) % 1_000_003
    return number
