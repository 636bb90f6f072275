"""Free hours, days that fall out, and air by the hour, as they stand in the workshop file."""

import math
import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Final

from refettle.domain.airhours import AirHours, HoursFrom
from refettle.domain.finding import Finding, Where
from refettle.files.air_hours import read_epw, read_logger
from refettle.files.amounts import quoted, share, temp_c
from refettle.files.fields import Desk
from refettle.files.yaml_tree import Mapping, Tree, plain
from refettle.physics.climate import day_rhs, day_temps_c, indoors

HOUR_KEYS: Final = ("day", "logger", "weather", "building", "heated to", "heated", "fan")
DAY_KEYS: Final = ("low", "high", "humidity")
BUILDINGS: Final = {
    "outdoors": (0.01, 20.0, 0.0),
    "open shed": (2.0, 4.0, 0.0),
    "unheated garage": (10.0, 0.6, 60.0),
    "cellar": (80.0, 0.3, 150.0),
    "house": (60.0, 0.4, 100.0),
}
"""Building → lag [h], air changes [1/h], vapour from floor and people [Pa]; judgement."""
WEEKDAYS: Final = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_FAN_M_S: Final = 0.5
SHORT_H: Final = 0.25
_NIGHT_H: Final = 12.0
_SPAN: Final = re.compile(r"^(\d{1,2})(?::(\d{2}))?\s*(?:-|–|to)\s*(\d{1,2})(?::(\d{2}))?$")


def read_day(desk: Desk, tree: Tree, path: str) -> str:
    """Return a day, ISO 8601; empty with a finding where it is none."""
    said = desk.text(tree, path)
    if said is None:
        return ""
    try:
        return date.fromisoformat(said).isoformat()
    except ValueError:
        desk.say(
            "unclear-date",
            tree.line,
            path,
            f"{quoted(said)} is no day",
            "write year-month-day, e.g. 2026-10-05",
        )
        return ""


def read_free(desk: Desk, tree: Tree, key: str = "free") -> tuple[tuple[int, float, float], ...]:
    """Return hours by weekday, of free time, help or spraying: weekday from Monday = 0, begin and end [h]."""
    mapping = desk.mapping(tree, key, '"saturday: [9:00-12:00, 13:00-17:00]"')
    found: list[tuple[int, float, float]] = []
    for entry in mapping.entries if mapping else ():
        path = f"{key}/{entry.key}"
        days = [
            n
            for n, name in enumerate(WEEKDAYS)
            if len(plain(entry.key)) > 1 and name.startswith(plain(entry.key))
        ]
        if len(days) != 1:
            desk.unknown_key(entry, path, WEEKDAYS)
            continue
        for item in desk.items(entry.value):
            span = _span(desk, item, path)
            if span is None:
                continue
            clash = next(
                (one for one in found if one[0] == days[0] and span[0] < one[2] and one[1] < span[1]), None
            )
            if clash is not None:
                desk.say(
                    "hours-overlap", item.line, path, "these hours overlap others of that day", "join them"
                )
                continue
            if span[1] - span[0] < SHORT_H:
                what, do = "hardly anything is set up and cleaned away in this", "join it to other hours"
                desk.say("short-hours", item.line, path, what, do, "warning")
            found.append((days[0], *span))
    if mapping is not None and not mapping.entries:
        desk.say("no-value", tree.line, key, "no hours are written", 'write e.g. "sat: 9:00-12:00"')
    return tuple(sorted(found))


def _span(desk: Desk, tree: Tree, path: str) -> tuple[float, float] | None:
    """Return begin and end of free hours [h]; None with a finding where there are none."""
    said = desk.text(tree, path)
    if said is None:
        return None
    span = _clock(said)
    if span is not None and span[0] < span[1]:
        return span
    do = "write begin and end within one day, e.g. 18:00-21:00"
    if span is not None and span[0] > span[1] and span[1] <= _NIGHT_H:
        do = "write what goes past midnight as two, e.g. 22:00-24:00 and on the next day 0:00-1:00"
    desk.say("unclear-amount", tree.line, path, f"{quoted(said)} are no hours of a day", do)
    return None


def _clock(said: str) -> tuple[float, float] | None:
    """Return two times of day [h]; None where they are none."""
    met = _SPAN.match(said.strip())
    if not met or int(met[2] or 0) > 59 or int(met[4] or 0) > 59:
        return None
    begin, end = int(met[1]) + int(met[2] or 0) / 60.0, int(met[3]) + int(met[4] or 0) / 60.0
    return (begin, end) if begin <= 24 and end <= 24 else None


def _heated(desk: Desk, tree: Tree, path: str) -> frozenset[int] | None:
    """Return the hours of the day at which a heater is on, past midnight too; None with a finding where there are none."""
    said = desk.text(tree, path)
    if said is None:
        return None
    span = _clock(said)
    if span is None or span[0] == span[1]:
        do = "write from when to when, e.g. 8:00-22:00 or 22:00-6:00"
        desk.say("unclear-amount", tree.line, path, f"{quoted(said)} are no hours of a day", do)
        return None
    begin, end = int(span[0]), math.ceil(span[1] if span[1] > span[0] else span[1] + 24.0)
    return frozenset(hour % 24 for hour in range(begin, end))


def read_not_on(desk: Desk, tree: Tree) -> frozenset[str]:
    """Return the days that fall out: dates and weekdays."""
    found = set()
    for item in desk.items(tree):
        said = desk.text(item, "not on")
        if said is None:
            continue
        names = [name for name in WEEKDAYS if len(plain(said)) > 1 and name.startswith(plain(said))]
        found.add(names[0] if len(names) == 1 else read_day(desk, item, "not on"))
    return frozenset(found - {""})


def read_hours(desk: Desk, tree: Tree) -> HoursFrom | None:
    """Return where the air of the hours comes from."""
    path = "air by the hour"
    mapping = desk.mapping(tree, path, '"day: {low: 4 C, high: 14 C, humidity: 80 %}"')
    if mapping is None:
        return None
    made = HoursFrom()
    sources = 0
    for entry in mapping.entries:
        key, below = plain(entry.key), f"{path}/{entry.key}"
        sources += key in {"day", "logger", "weather"}
        match key:
            case "day":
                made = _day(desk, entry.value, below, made)
            case "logger":
                made = replace(made, logger=desk.text(entry.value, below) or "")
            case "weather":
                made = replace(made, weather=desk.text(entry.value, below) or "")
            case "building":
                made = replace(
                    made, building=desk.choice(entry.value, below, tuple(BUILDINGS), "building") or ""
                )
            case "heated to":
                made = replace(made, heated_to_c=desk.amount(entry.value, below, temp_c))
            case "heated":
                made = replace(made, heated=_heated(desk, entry.value, below) or made.heated)
            case "fan":
                made = replace(made, fan=bool(desk.yes(entry.value, below)))
            case _:
                desk.unknown_key(entry, below, HOUR_KEYS)
    if sources != 1:
        what = "no air is named" if not sources else "several kinds of air are named"
        desk.say("one-air", mapping.line, path, what, "name one of day, logger, weather")
        return None
    return made


def _day(desk: Desk, tree: Tree, path: str, made: HoursFrom) -> HoursFrom:
    """Return the source with a typical day."""
    mapping: Mapping | None = desk.mapping(tree, path, '"low: 4 C"')
    for entry in mapping.entries if mapping else ():
        below = f"{path}/{entry.key}"
        match plain(entry.key):
            case "low":
                made = replace(made, low_c=desk.amount(entry.value, below, temp_c))
            case "high":
                made = replace(made, high_c=desk.amount(entry.value, below, temp_c))
            case "humidity":
                made = replace(made, rh=desk.amount(entry.value, below, share) or made.rh)
            case _:
                desk.unknown_key(entry, below, DAY_KEYS)
    said = {plain(entry.key) for entry in mapping.entries} if mapping else {"low", "high"}
    unread = (made.low_c is None and "low" in said) or (made.high_c is None and "high" in said)
    turned = made.low_c is not None and made.high_c is not None and made.low_c > made.high_c
    if turned or (not {"low", "high"} <= said and not unread):
        what, do = "a day needs a low and a high above it", 'write "low: 4 C" and "high: 14 C"'
        desk.say("one-air", tree.line, path, what, do)
    return made


def air_of(
    source: HoursFrom, text: str, file: str, begins: str, summer: Sequence[int] = ()
) -> tuple[AirHours | None, tuple[Finding, ...]]:
    """
    Return the air of the hours.

    Parameters
    ----------
    source
        Where it comes from.
    text, file
        The logger's or weather file and its name; empty for a typical day.
    begins
        First day, ISO 8601; a weather file needs it.
    summer
        By how much the clock on the wall is ahead of that of a weather file, hour by hour [h].

    Returns
    -------
    tuple
        Air in the room hour by hour, None where there is none; and findings.
    """
    if source.logger:
        outside, said = read_logger(text, file)
    elif source.weather:
        if not begins:
            what, do = (
                "a weather file needs the day it begins",
                'write "begins: 2026-10-05" in the workshop file',
            )
            return None, (Finding(code="no-begin", level="error", where=Where(file=file), what=what, do=do),)
        outside, said = read_epw(text, file, date.fromisoformat(begins), summer)
    else:
        temps = day_temps_c(source.low_c or 0.0, source.high_c or 0.0)
        words = f"a typical day, {source.low_c:g} to {source.high_c:g} °C, {100 * source.rh:.0f} %"
        outside, said = AirHours(temps_c=temps, rhs=day_rhs(temps, source.rh), said=words), ()
    return (None if outside is None else _inside(source, outside)), said


def _inside(source: HoursFrom, outside: AirHours) -> AirHours:
    """Return the air in the room by the air outdoors, heater and fan counted in."""
    lag_h, changes, damp_pa = BUILDINGS[source.building or "outdoors"]
    words = [outside.said]
    temps, rhs = outside.temps_c, outside.rhs
    if source.building or source.heated_to_c is not None:
        temps, rhs = indoors(
            temps, rhs, lag_h=lag_h, air_changes_h=changes, damp_pa=damp_pa,
            heated_to_c=source.heated_to_c, heated_hours=source.heated,
        )  # fmt: skip
        words += [f"in {source.building}"] if source.building else []
        words += [f"heated to {source.heated_to_c:g} °C"] if source.heated_to_c is not None else []
    words += ["with a fan"] if source.fan else []
    speed = _FAN_M_S if source.fan else outside.air_m_s
    return AirHours(temps_c=temps, rhs=rhs, air_m_s=speed, said=", ".join(words))
