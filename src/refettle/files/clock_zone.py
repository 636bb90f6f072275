"""The clock on the wall through the year: where a time zone turns it, as plain numbers for the days."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from typing import Final
from zoneinfo import ZoneInfo, available_timezones

from refettle.domain.workshop import Workshop
from refettle.files.amounts import quoted
from refettle.files.fields import Desk, nearest
from refettle.files.hours_entries import WEEKDAYS
from refettle.files.yaml_tree import Tree

_AHEAD_H: Final = 24 * 420
"""Hours looked ahead [h]: as far as days are laid."""


def read_zone(desk: Desk, tree: Tree, path: str) -> str:
    """
    Return the name of a time zone; empty with a finding where there is none of that name.

    Parameters
    ----------
    desk
        Where findings go.
    tree
        The entry's value, e.g. ``Europe/Berlin``.
    path
        Path of the entry.

    Returns
    -------
    str
        Name as in the tables of time zones (IANA).
    """
    said = desk.text(tree, path)
    if said is None:
        return ""
    if said in available_timezones():
        return said
    known = {name.casefold(): name for name in available_timezones()}
    near = said.casefold().replace(" ", "_")
    near = near if near in known else nearest(near, sorted(known)) or _of_town(near, known)
    do = f'write "{known[near]}"' if near else 'write it as continent and town, e.g. "Europe/Berlin"'
    desk.say("unknown-zone", tree.line, path, f"{quoted(said)} is no time zone", do)
    return ""


def _of_town(town: str, known: dict[str, str]) -> str:
    """Return the zone of a town that was named alone, the first by name; empty where there is none."""
    return next((name for name in sorted(known) if name.rpartition("/")[2] == town), "")


def hour_lengths(zone: str, begins: str) -> tuple[tuple[int, float], ...]:
    """
    Return the hours of the clock on the wall that do not last an hour.

    Parameters
    ----------
    zone
        Name of the time zone; empty = every hour lasts an hour.
    begins
        First day, ISO 8601; empty = not known, so that nothing can be said.

    Returns
    -------
    tuple
        Hour from midnight of the first day, and how long it lasts [h]: 0 where the clock skips it, 2 where it comes
        twice; for as many days as are laid.

    Examples
    --------
    >>> hour_lengths("Europe/Berlin", "2026-10-24")
    ((26, 2.0), (3722, 0.0))
    """
    if not zone or not begins:
        return ()
    instants = _instants(zone, begins)
    spans = [(later - before).total_seconds() / 3600.0 for before, later in pairwise(instants)]
    return tuple((hour, span) for hour, span in enumerate(spans) if span != 1.0)


def summer_hours(zone: str, begins: str) -> tuple[int, ...]:
    """
    Return by how much the clock on the wall is ahead of standard time, hour by hour.

    Parameters
    ----------
    zone
        Name of the time zone; empty = it never is.
    begins
        First day, ISO 8601.

    Returns
    -------
    tuple of int
        Whole hours ahead from midnight of the first day on [h]; empty without a zone.
    """
    if not zone or not begins:
        return ()
    place, first = ZoneInfo(zone), datetime.combine(date.fromisoformat(begins), time())
    moments = (first + timedelta(hours=hour) for hour in range(_AHEAD_H))
    return tuple(
        round(((one.replace(tzinfo=place).dst() or timedelta()).total_seconds()) / 3600.0) for one in moments
    )


def _instants(zone: str, begins: str) -> list[datetime]:
    """Return when each hour of the clock on the wall begins; one that is skipped begins when the next does."""
    place, first = ZoneInfo(zone), datetime.combine(date.fromisoformat(begins), time())
    moments = (first + timedelta(hours=hour) for hour in range(_AHEAD_H + 1))
    return [moment.replace(tzinfo=place).astimezone(UTC) for moment in moments]


def check_zone(desk: Desk, workshop: Workshop, line: int) -> None:
    """
    Say where a time zone does nothing, and where free hours fall into one that the clock skips.

    Parameters
    ----------
    desk
        Where findings go.
    workshop
        With its time zone, its hours that are no hour, and its free hours.
    line
        Line of the time zone [1].
    """
    if not workshop.time_zone:
        return
    if not workshop.begins:
        what, do = (
            "without a first day nobody knows when the clocks change",
            'write e.g. "begins: 2026-10-05"',
        )
        desk.say("zone-without-day", line, "time zone", what, do, "warning")
        return
    first = date.fromisoformat(workshop.begins)
    for hour in [hour for hour, length in workshop.hour_lengths if length == 0.0][
        :1
    ]:  # the next spring will do
        on, of_day = first + timedelta(days=hour // 24), hour % 24
        out = on.isoformat() in workshop.not_on or WEEKDAYS[on.weekday()] in workshop.not_on
        free = any(day == on.weekday() and a < of_day + 1 and of_day < b for day, a, b in workshop.free)
        if free and not out:
            what = f"the clocks skip {of_day}:00 to {of_day + 1}:00 on {on:%A} {on}, which stands among the free hours"
            do = "nothing is planned in it; free another hour if you need it"
            desk.say("hour-missing", line, "time zone", what, do, "warning")
