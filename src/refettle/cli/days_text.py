"""The evenings of several pieces, as a page and as JSON; ``days.schema.json`` describes every name."""

from collections.abc import Iterable, Iterator

from refettle.bootstrap.days import DaysLaid
from refettle.cli.json_parts import SCHEMA_VERSION, Document, day_json, finding_json, rounded, written
from refettle.cli.page import Page
from refettle.cli.words import count_words, minutes_words
from refettle.domain.finding import Finding
from refettle.domain.piece_plan import Day, DayTask
from refettle.domain.plan import Range
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.calendar import Calendar, Ready
from refettle.services.clock import LONGEST_H, Block
from refettle.services.free_time import clock_changes, day_words
from refettle.services.kept import Kept
from refettle.services.searched import Search
from refettle.services.step_words import step_words
from refettle.services.what_if import Gain, Sureness, WhatIf

_TOLD_BLOCK_H = 12.0
"""Wait for other air [h] from which it is told."""
_FAR = 10_000
_MOST_GAINS = 3


def days_text(laid: DaysLaid, know: Knowledge, page: Page) -> str:
    """
    Return the page of a calendar.

    Parameters
    ----------
    laid
        The evenings, what would gain days, and how sure they are.
    know
        Names.
    page
        Empty page of the right width.

    Returns
    -------
    str
        When each piece is done, then day by day what to do at what time, the air, and what goes on drying.
    """
    calendar, around, workshop = laid.calendar, laid.around, laid.calendar.workshop
    page.heading(f"Days for {', '.join(ready.piece for ready in calendar.ready)}")
    free = f"{workshop.evenings_per_week:g} evenings a week of {workshop.hours_per_evening:g} h"
    page.write(f"Workshop: {workshop.name}; {'free hours as in its file' if workshop.free else free}", hang=2)
    if workshop.hours is not None:
        page.write(f"Air: {workshop.hours.said}", hang=2)
    if workshop.plan_safe:
        safe = workshop.air_likely
        page.write(
            f"Planned for the safe side of the air: {safe.temp_c:.0f} °C, {100 * safe.rh:.0f} %", hang=2
        )
    for day, hour, longer in clock_changes(workshop, max((one.day for one in calendar.days), default=0)):
        turned = "forward: an hour is skipped" if longer < 0 else "back: an hour comes twice"
        page.write(f"Clocks go {turned} on {_until(workshop, day)} at {hour}:00.", hang=2)
    page.gap()
    own = f"{calendar.ready[0].piece}: " if len(calendar.ready) == 1 else ""
    for ready in calendar.ready:
        page.write(_ready(ready, workshop), indent=2, hang=2)
    _kept_days(page, laid.kept, workshop, own)
    if laid.search is not None and laid.search.layings > 1:
        evenings = count_words(len(calendar.days), "evening")
        page.write(
            f"{evenings}: the best of {laid.search.layings} orders of the work that were tried.",
            indent=2,
            hang=2,
        )
    _around(page, around, workshop, own)
    _blocks(page, calendar, know, own)
    for number, waits in enumerate(calendar.waits, start=1):
        _day(page, calendar, number, own)
        if waits:
            going = "; ".join(
                f"{wait.group.removeprefix(own)} until {_until(workshop, wait.until_day)}"
                for wait in waits[:3]
            )
            more = f" and {len(waits) - 3} more" if len(waits) > 3 else ""
            page.write(f"drying or in clamps: {going}{more}", indent=6, hang=2)
    return page.text()


def _kept_days(page: Page, kept: Kept | None, workshop: Workshop, own: str) -> None:
    """Write what of earlier days stands, and which groups move."""
    if kept is None:
        return
    page.write(
        f"Of the days laid earlier {kept.stays} of {kept.stays + len(kept.moved)} tasks stay.",
        indent=2,
        hang=2,
    )
    moves: dict[tuple[int, int], list[str]] = {}
    for group, was, now in kept.moved:
        moves.setdefault((was, now), []).append(group.removeprefix(own))
    for (was, now), groups in moves.items():
        words = f"moved from {_until(workshop, was)} to {_until(workshop, now)}: {'; '.join(dict.fromkeys(groups))}"
        page.write(words, indent=4, hang=2)
    if kept.new:
        page.write(f"Not in them: {count_words(kept.new, 'task')}.", indent=2, hang=2)


def _around(page: Page, around: WhatIf, workshop: Workshop, own: str) -> None:
    """Write how sure the days are, what decides them, and what would gain some."""
    for sure in around.sure:
        if sure.half_day < _FAR:
            half, most = _until(workshop, sure.half_day), _until(workshop, sure.most_day)
            late = f"by {most}" if sure.most_day < _FAR else "not within sight"
            least = f"; not before {_until(workshop, sure.least_day)} in any order"
            kept = "" if sure.in_time is None else f"; in time in {sure.in_time} of {sure.cases}"
            words = f"{sure.piece}: in half of the cases by {half}, in nine of ten {late}{kept}{least}"
            page.write(words, indent=2, hang=2)
    group, text = around.decides
    if group:
        page.write(f"The last day hangs on {group.removeprefix(own)}: {text}.", indent=2, hang=2)
    for gain in around.gains[:_MOST_GAINS]:
        sooner = f"{gain.days} day{'s' * (gain.days > 1)} sooner"
        days = "all is finished, which else is not" if gain.days >= _FAR // 2 else sooner
        money = "" if gain.money is None else f"; materials {gain.money:+.0f} {workshop.currency}".rstrip()
        page.write(f"With {gain.words}: {days}{money}.", indent=2, hang=2)


def _until(workshop: Workshop, day: int) -> str:
    """Return a day inside a sentence."""
    said = day_words(workshop, day)
    return f"{said[:1].lower()}{said[1:]}" if not workshop.begins else said


def _blocks(page: Page, calendar: Calendar, know: Knowledge, own: str) -> None:
    """Write which coats had to wait for other air, and until when; hours within a day are not told."""
    told: dict[tuple[str, str, str], list[str]] = {}
    for block in calendar.blocks:
        if block.until_h - block.from_h >= _TOLD_BLOCK_H:
            until = _moment(calendar.workshop, block.until_h)
            told.setdefault((step_words(know, block.step), block.reason, until), []).append(
                block.group.removeprefix(own)
            )
    if told:
        page.gap()
    for (text, reason, until), groups in told.items():
        page.write(
            f"Waits for other air until {until}: {text} – {'; '.join(groups)} ({reason})", indent=2, hang=2
        )


def _moment(workshop: Workshop, at_h: float) -> str:
    """Return a moment: its day and the time of day."""
    if at_h > LONGEST_H:
        return "no day within sight"
    return f"{_until(workshop, int(at_h // 24) + 1)}, {clock_words(at_h)}"


def clock_words(at_h: float) -> str:
    """
    Return the time of day of an hour.

    Examples
    --------
    >>> clock_words(24.0 + 18.5)
    '18:30'
    """
    minutes = round(at_h * 60.0)
    return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"


def _day(page: Page, calendar: Calendar, number: int, own: str) -> None:
    """Write what to do on a day, each at its time."""
    workshop, day = calendar.workshop, calendar.days[number - 1]
    page.gap()
    minutes = Range(low=0.7 * day.minutes, likely=day.minutes, high=1.5 * day.minutes)
    head = day_words(workshop, day.day) if workshop.begins else f"Day {day.day}, evening {number}"
    page.ended(f"{head}{_air(workshop, day)}", minutes_words(minutes), indent=2)
    kept = _kept(calendar, day)
    if kept and workshop.hours is not None:
        page.write(kept, indent=4, hang=2)
    for tasks in _in_turn(day):
        groups = "; ".join(_named(dict.fromkeys(task.group.removeprefix(own) for task in tasks)))
        text = tasks[0].text.replace(": first faces (goes on)", ": first faces")
        page.marked(clock_words(tasks[0].begin_h), f"{text} – {groups}", indent=4, column=11)


def _kept(calendar: Calendar, day: Day) -> str:
    """Return at what the room is kept on a day, and until when; empty where it is left as it is."""
    made = [task for one in calendar.days for task in one.tasks if task.air is not None]
    if not made or day.day < min(task.begin_h for task in made) // 24 + 1:
        return ""
    over_h = max(task.begin_h + task.minutes / 60.0 + task.wait_h for task in made)
    air = made[0].air
    if air is None or day.day > over_h // 24 + 1:
        return ""
    until = _until(calendar.workshop, int(over_h // 24) + 1)
    return f"Keep the room at {air.temp_c:.0f} °C and {100 * air.rh:.0f} %, day and night until {until}."


def _named(groups: Iterable[str]) -> Iterator[str]:
    """Yield groups with the name of their piece where it is another than that of the group before."""
    last = ""
    for group in groups:
        piece, colon, name = group.partition(": ")
        yield name if colon and piece == last else group
        last = piece


def _air(workshop: Workshop, day: Day) -> str:
    """Return the air while one works, where it is known by the hour."""
    if workshop.hours is None or not day.tasks:
        return ""
    first, last = day.tasks[0].begin_h, day.tasks[-1].begin_h
    airs = [workshop.hours.at(hour) for hour in range(int(first), int(last) + 1)]
    low, high = min(air.temp_c for air in airs), max(air.temp_c for air in airs)
    temps = f"{low:.0f} °C" if round(low) == round(high) else f"{low:.0f}–{high:.0f} °C"
    return f": {temps}, {100 * max(air.rh for air in airs):.0f} %"


def _ready(ready: Ready, workshop: Workshop) -> str:
    """Return when a piece is done, in words."""
    if not ready.finished:
        return f"{ready.piece}: is not finished within the days looked ahead; see the notes"
    due = _due(ready, workshop)
    later = ready.wrap_day - ready.alone_day
    shared = f"; {later} days later than alone" if later > 1 and workshop.hours is None else ""
    last, wrap = _until(workshop, ready.last_day), _until(workshop, ready.wrap_day)
    return f"{ready.piece}: last work on {last}, safe to wrap on {wrap}{due}{shared}"


def _due(ready: Ready, workshop: Workshop) -> str:
    """Return whether the day is kept by which a piece is asked for."""
    if not ready.due_day:
        return ""
    late = f"{ready.late_days} day{'s' * (ready.late_days > 1)} late" if ready.late_days else "in time"
    return f"; asked for by {_until(workshop, ready.due_day)}: {late}"


def _in_turn(day: Day) -> list[list[DayTask]]:
    """Return the tasks of a day in their order, the same work on several groups in a row together."""
    found: list[list[DayTask]] = []
    for task in shown(day):
        if found and found[-1][0].text == task.text:
            found[-1].append(task)
        else:
            found.append([task])
    return found


def shown(day: Day) -> tuple[DayTask, ...]:
    """Return the tasks of a day that somebody does; a room that is kept warm need not be made so again."""
    return tuple(task for task in day.tasks if task.minutes > 0 or not task.number)


def days_json(laid: DaysLaid, know: Knowledge, findings: tuple[Finding, ...]) -> str:
    """
    Return a calendar as a JSON document.

    Parameters
    ----------
    laid
        The evenings, what would gain days, and how sure they are.
    know
        Version of the facts.
    findings
        Problems in the files.

    Returns
    -------
    str
        Valid against ``days.schema.json``.
    """
    calendar, around, workshop = laid.calendar, laid.around, laid.calendar.workshop
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "workshop": workshop.name,
            "begins": workshop.begins,
            "air": workshop.hours.said if workshop.hours is not None else "",
            "clock_changes": _changes(calendar),
            "blocks": [_block(block, know) for block in calendar.blocks],
            "decides": {"group": around.decides[0], "text": around.decides[1]},
            "gains": [_gain(gain) for gain in around.gains],
            "sure": [_sure(sure) for sure in around.sure],
            "search": _search(laid.search),
            "kept": _kept_json(laid.kept),
            "ready": [
                {
                    "piece": ready.piece,
                    "last_day": ready.last_day,
                    "wrap_day": ready.wrap_day,
                    "alone_day": ready.alone_day,
                    "finished": ready.finished,
                    "due_day": ready.due_day or None,
                    "late_days": ready.late_days,
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


def _changes(calendar: Calendar) -> list[Document]:
    """Return the nights of a calendar on which clocks change."""
    last = calendar.days[-1].day if calendar.days else 0
    return [
        {"day": day, "hour": hour, "longer_h": longer}
        for day, hour, longer in clock_changes(calendar.workshop, last)
    ]


def _gain(gain: Gain) -> Document:
    """Return what would gain days, and what it costs."""
    money = rounded(gain.money) if gain.money is not None else None
    return {"words": gain.words, "days": gain.days, "money": money}


def _search(search: Search | None) -> Document | None:
    """Return what the search of evenings came to."""
    if search is None:
        return None
    return {
        "layings": search.layings, "better": search.better,
        "value": search.value, "bound": search.bound, "gap": rounded(search.gap),
    }  # fmt: skip


def _kept_json(kept: Kept | None) -> Document | None:
    """Return what of earlier days stands."""
    if kept is None:
        return None
    moved = [{"group": group, "was_day": was, "day": now} for group, was, now in kept.moved]
    return {"stays": kept.stays, "moved": moved, "new": kept.new}


def _block(block: Block, know: Knowledge) -> Document:
    """Return a coat that had to wait for other air."""
    return {
        "group": block.group,
        "text": step_words(know, block.step),
        "from_h": rounded(block.from_h),
        "until_h": rounded(block.until_h) if block.until_h <= LONGEST_H else None,
        "reason": block.reason,
    }


def _sure(sure: Sureness) -> Document:
    """Return how sure the day of a piece is."""
    return {
        "piece": sure.piece,
        "half_day": sure.half_day if sure.half_day < _FAR else None,
        "most_day": sure.most_day if sure.most_day < _FAR else None,
        "least_day": sure.least_day,
        "in_time": sure.in_time,
        "cases": sure.cases,
    }
