"""The evenings of several pieces, as a page and as JSON; ``days.schema.json`` describes every name."""

from refettle.cli.json_parts import SCHEMA_VERSION, day_json, finding_json, written
from refettle.cli.page import Page
from refettle.cli.words import minutes_words
from refettle.domain.finding import Finding
from refettle.domain.piece import Workshop
from refettle.domain.piece_plan import Day, DayTask
from refettle.domain.plan import Range
from refettle.knowledge.knowledge import Knowledge
from refettle.services.calendar import Calendar, Ready


def days_text(calendar: Calendar, workshop: Workshop, page: Page) -> str:
    """
    Return the page of a calendar.

    Parameters
    ----------
    calendar
        The evenings.
    workshop
        Its name and free hours.
    page
        Empty page of the right width.

    Returns
    -------
    str
        When each piece is done, then evening by evening what to do and what goes on drying.
    """
    page.heading(f"Days for {', '.join(ready.piece for ready in calendar.ready)}")
    free = f"{workshop.evenings_per_week:g} evenings a week of {workshop.hours_per_evening:g} h"
    page.write(f"Workshop: {workshop.name}; {free}")
    page.gap()
    own = f"{calendar.ready[0].piece}: " if len(calendar.ready) == 1 else ""
    for ready in calendar.ready:
        page.write(_ready(ready), indent=2, hang=2)
    for number, (day, waits) in enumerate(zip(calendar.days, calendar.waits, strict=True), start=1):
        page.gap()
        minutes = Range(low=0.7 * day.minutes, likely=day.minutes, high=1.5 * day.minutes)
        page.ended(f"Day {day.day}, evening {number}", minutes_words(minutes), indent=2)
        for text, tasks in _alike(day).items():
            groups = "; ".join(dict.fromkeys(task.group.removeprefix(own) for task in tasks))
            page.write(f"{text} – {groups}", indent=4, hang=2)
        if waits:
            going = "; ".join(
                f"{wait.group.removeprefix(own)} until day {wait.until_day}" for wait in waits[:3]
            )
            more = f" and {len(waits) - 3} more" if len(waits) > 3 else ""
            page.write(f"drying or in clamps: {going}{more}", indent=6, hang=2)
    return page.text()


def _ready(ready: Ready) -> str:
    """Return when a piece is done, in words."""
    later = ready.wrap_day - ready.alone_day
    shared = f"; {later} days later than alone" if later > 1 else ""
    return f"{ready.piece}: last work on day {ready.last_day}, safe to wrap on day {ready.wrap_day}{shared}"


def _alike(day: Day) -> dict[str, list[DayTask]]:
    """Return the tasks of an evening by their words, in the order of the first of each."""
    found: dict[str, list[DayTask]] = {}
    for task in day.tasks:
        found.setdefault(task.text, []).append(task)
    return found


def days_json(calendar: Calendar, workshop: Workshop, know: Knowledge, findings: tuple[Finding, ...]) -> str:
    """
    Return a calendar as a JSON document.

    Parameters
    ----------
    calendar, workshop
        The evenings and the workshop they are free in.
    know
        Version of the facts.
    findings
        Problems in the files.

    Returns
    -------
    str
        Valid against ``days.schema.json``.
    """
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "workshop": workshop.name,
            "ready": [
                {
                    "piece": ready.piece,
                    "last_day": ready.last_day,
                    "wrap_day": ready.wrap_day,
                    "alone_day": ready.alone_day,
                }
                for ready in calendar.ready
            ],
            "days": [
                {
                    **day_json(day),
                    "waits": [{"group": wait.group, "until_day": wait.until_day} for wait in waits],
                }
                for day, waits in zip(calendar.days, calendar.waits, strict=True)
            ],
            "findings": [finding_json(finding) for finding in findings],
        }
    )
