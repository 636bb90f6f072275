"""Free hours that cannot be used: every day falls out, or it may be sprayed at no time that is free."""

from collections.abc import Mapping as Table

from refettle.domain.finding import Level
from refettle.domain.workshop import Workshop
from refettle.files.fields import Desk
from refettle.files.hours_entries import SHORT_H, WEEKDAYS


def check_hours(desk: Desk, workshop: Workshop, lines: Table[str, int]) -> None:
    """
    Say where nobody is ever free, or where no free hour may be sprayed in.

    Parameters
    ----------
    desk
        Where findings go.
    workshop
        With its free hours, its days that fall out and its spraying hours.
    lines
        Lines of the entries that were said [1].
    """
    free = [span for span in workshop.free if WEEKDAYS[span[0]] not in workshop.not_on]
    if workshop.not_on.issuperset(WEEKDAYS) or (workshop.free and not free):
        what = "every day on which somebody is free falls out"
        desk.say("never-free", lines.get("not on", 0), "not on", what, "take one of the weekdays out")
        return
    if workshop.spraying and workshop.free and not _meet(free, workshop.spraying):
        what = "no free hours lie in the hours in which it may be sprayed: nothing is ever sprayed"
        do = 'write hours that meet, or take "spraying" out'
        level: Level = "error" if workshop.methods <= {"spray", "aerosol"} else "warning"
        desk.say("never-sprayed", lines.get("spraying", 0), "spraying", what, do, level)
    if not workshop.free and 0 < workshop.hours_per_evening < SHORT_H:
        what = f"{60 * workshop.hours_per_evening:.0f} min an evening: hardly anything is set up and cleaned away in it"
        do = "free a quarter of an hour at the least"
        desk.say("short-hours", lines.get("hours per evening", 0), "hours per evening", what, do, "warning")


def _meet(one: list[tuple[int, float, float]], other: tuple[tuple[int, float, float], ...]) -> bool:
    """Return whether two rows of hours meet on any weekday."""
    return any(a[0] == b[0] and a[1] < b[2] and b[1] < a[2] for a in one for b in other)
