"""Air by the hour from files: what a logger wrote, and weather files in the open EPW format."""

import csv
import re
from collections.abc import Sequence
from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import Final

from refettle.domain.airhours import AirHours
from refettle.domain.finding import Finding, Level, Where

_TIMES: Final = (
    "%Y-%m-%d %H:%M:%S", "%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M:%S", "%Y-%m-%dT%H:%M", "%d.%m.%Y %H:%M:%S", "%d.%m.%Y %H:%M",
    "%d/%m/%Y %H:%M:%S", "%d/%m/%Y %H:%M", "%m/%d/%Y %H:%M:%S", "%m/%d/%Y %H:%M", "%m/%d/%Y %I:%M:%S %p",
    "%m/%d/%Y %I:%M %p", "%d-%m-%Y %H:%M",
)  # fmt: skip
_ZONE: Final = re.compile(r"(\.\d+)?(Z|[+-]\d\d:?\d\d)?$")
_SAMPLES: Final = 200
_LONG_GAP_H: Final = 3
_BREAK_H: Final = 24 * 7
"""Gap from which a log is two logs [h]: a clock that was reset, or a season without readings."""
_LEAST_H: Final = 24
_MOST_TOLD: Final = 5
_COLDEST_C, _WARMEST_C = -40.0, 60.0
_OVER_PCT: Final = 105.0
"""What a sensor shows in fog, at the most [%]; beyond, it is no reading."""
_EPW_HEAD: Final = 8
_EPW_TEMP, _EPW_RH = 6, 8
_EPW_MOST_PCT: Final = 110.0
_EPW_MOST_MISSING: Final = 0.1
_YEAR_H: Final = 8760

Reading = tuple[int, str, float, float]
"""Line [1], time as it stands, temperature [°C], humidity [1]."""


def _say(file: str, line: int, code: str, what: str, do: str, level: Level = "error") -> Finding:
    """Return a finding on a file of air."""
    return Finding(code=code, level=level, where=Where(file=file, line=line), what=what, do=do)


def read_logger(text: str, file: str) -> tuple[AirHours | None, tuple[Finding, ...]]:
    """
    Return the air that a logger wrote, hour by hour.

    Parameters
    ----------
    text
        The file: one row a reading, a head with a time, a temperature (°C or °F) and a humidity (%) somewhere in it;
        comma, semicolon or tab between.
    file
        Its name, for findings.

    Returns
    -------
    tuple
        Hours from the first midnight on that the log covers, None where it cannot be read; and findings: rows left
        out, gaps filled. Hours without a reading are filled straight between their neighbours.
    """
    lines = text.replace("\ufeff", "").splitlines()
    head_at, mark = _head(lines)
    if head_at is None:
        do = "begin with a line that names columns for time, temperature and humidity"
        return None, (_say(file, 1, "no-columns", "no line names a time, a temperature and a humidity", do),)
    readings, findings = _readings(lines, head_at, mark, file)
    timed, told = _in_time(readings, file)
    findings += told
    found: dict[datetime, list[tuple[float, float]]] = {}
    for when, temp, damp in timed:
        found.setdefault(when.replace(minute=0, second=0, microsecond=0), []).append((temp, damp))
    if len(found) < _LEAST_H:
        what = f"readings of {len(found)} hours are too few"
        return None, (*findings, _say(file, 0, "too-short", what, "log a day at the least"))
    return _hourly(found, file, findings)


def _readings(lines: list[str], head_at: int, mark: str, file: str) -> tuple[list[Reading], list[Finding]]:
    """Return the rows below the head that hold an air of a workshop; and what is to be said of the others."""
    names = [name.strip().strip('"').casefold() for name in lines[head_at].split(mark)]
    at_time, at_temp, at_rh = _columns(names)
    fahrenheit = any(sign in names[at_temp] for sign in ("°f", "(f)", "fahrenheit", "_f", "[f]", " f"))
    found: list[Reading] = []
    left_out: list[tuple[int, str]] = []
    over: list[int] = []
    for number, row in enumerate(csv.reader(lines[head_at + 1 :], delimiter=mark), start=head_at + 2):
        if not any(cell.strip() for cell in row):
            continue
        try:
            said, temp, damp = row[at_time].strip(), _number(row[at_temp]), _number(row[at_rh])
        except (IndexError, ValueError) as slip:
            left_out.append((number, f"this row cannot be read ({slip})"))
            continue
        temp = (temp - 32.0) / 1.8 if fahrenheit else temp
        if not (_COLDEST_C <= temp <= _WARMEST_C and 0.0 <= damp <= _OVER_PCT):
            left_out.append((number, f"{temp:.0f} °C and {damp:.0f} % are no air of a workshop"))
            continue
        if damp > 100.0:
            over.append(number)
        found.append((number, said, temp, min(100.0, max(1.0, damp)) / 100.0))
    findings = _left_out(left_out, file)
    if over:
        what = f"{len(over)} readings are above 100 % humidity, the first here; they are taken for 100 %"
        findings.append(_say(file, over[0], "over-damp", what, "check the sensor over a salt", "note"))
    return found, findings


def _left_out(rows: list[tuple[int, str]], file: str) -> list[Finding]:
    """Return the rows that are left out: the first few each, the others together."""
    do = "mend it, or take it out"
    found = [_say(file, line, "row-left-out", what, do, "warning") for line, what in rows[:_MOST_TOLD]]
    if len(rows) > _MOST_TOLD:
        line, count = rows[_MOST_TOLD][0], len(rows) - _MOST_TOLD
        found.append(
            _say(file, line, "row-left-out", f"{count} more rows are left out, the first here", do, "warning")
        )
    return found


def _in_time(readings: list[Reading], file: str) -> tuple[list[tuple[datetime, float, float]], list[Finding]]:
    """Return readings with their moments; and what is to be said of times that repeat, step back or are none."""
    pattern = _pattern([said for _, said, _, _ in readings])
    timed: list[tuple[datetime, float, float]] = []
    wrong: list[tuple[int, str]] = []
    seen: set[datetime] = set()
    twice: list[int] = []
    back: list[tuple[int, datetime, datetime]] = []
    for line, said, temp, damp in readings:
        when = _time(said, pattern)
        if when is None:
            wrong.append((line, f"this row cannot be read ({said!r} is no time)"))
            continue
        if when in seen:
            twice.append(line)
        elif timed and when < timed[-1][0]:
            back.append((line, timed[-1][0], when))
        seen.add(when)
        timed.append((when, temp, damp))
    findings = _left_out(wrong, file)
    if twice:
        what = f"{len(twice)} times stand here more than once, the first here; what was read then is averaged"
        findings.append(_say(file, twice[0], "time-twice", what, "take one of each out", "warning"))
    if back:
        line, before, after = back[0]
        what = f"times step back from {before:%Y-%m-%d %H:%M} to {after:%Y-%m-%d %H:%M}"
        what += f", and {len(back) - 1} times more" if len(back) > 1 else ""
        do = "rows are put in the order of their times; check the logger's clock"
        findings.append(_say(file, line, "time-back", what, do, "warning"))
    return timed, findings


def _head(lines: list[str]) -> tuple[int | None, str]:
    """Return the line that names the columns, and what stands between them."""
    for number, line in enumerate(lines[:40]):
        for mark in (";", "\t", ","):
            names = [name.strip().strip('"').casefold() for name in line.split(mark)]
            if len(names) >= 3 and all(place is not None for place in _columns(names, strict=False)):
                return number, mark
    return None, ","


def _columns(names: list[str], *, strict: bool = True) -> tuple[int, int, int]:
    """Return the places of time, temperature and humidity; `None` among them where one is missing and not `strict`."""

    def place(words: tuple[str, ...], but: tuple[str, ...] = ()) -> int | None:
        return next(
            (
                n
                for n, name in enumerate(names)
                if any(w in name for w in words) and not any(b in name for b in but)
            ),
            None,
        )

    found = (
        place(("time", "date", "zeit", "datum")),
        place(("temp",), ("dew",)),
        place(("humid", "rh", "feuchte")),
    )
    if strict and None in found:
        message = "a column is missing"
        raise ValueError(message)
    return found  # type: ignore[return-value]  # with `strict` none is missing


def _pattern(said: list[str]) -> str:
    """
    Return the way times are written in this file: what most rows can be read by.

    Where day and month could stand either way round, the way by which the readings lie closer together.
    """
    some = said[:: max(1, len(said) // _SAMPLES)]
    best, best_rank = _TIMES[0], (0, 0.0)
    for pattern in _TIMES:
        times = [when for when in (_time(one, pattern) for one in some) if when is not None]
        if times:
            rank = len(times), -(max(times) - min(times)).total_seconds()
            if rank > best_rank or not best_rank[0]:
                best, best_rank = pattern, rank
    return best


def _time(said: str, pattern: str) -> datetime | None:
    """Return a moment of the wall clock; None where it is none."""
    plain = _ZONE.sub("", said.strip('"')) if "T" in said else said.strip('"')
    try:
        return datetime.strptime(plain, pattern)  # noqa: DTZ007 - a wall clock
    except ValueError:
        return None


def _number(said: str) -> float:
    """Return a number written with point or comma, a unit behind it left out."""
    plain = said.strip().strip('"').replace(",", ".").rstrip("°CF%c ").strip()
    return float(plain)


def _hourly(
    found: dict[datetime, list[tuple[float, float]]], file: str, findings: list[Finding]
) -> tuple[AirHours | None, tuple[Finding, ...]]:
    """Return readings as whole hours from the first midnight on, gaps filled and told."""
    means = {
        hour: (sum(t for t, _ in rows) / len(rows), sum(r for _, r in rows) / len(rows))
        for hour, rows in sorted(found.items())
    }
    hours, told = _longest_run(list(means), file)
    findings += told
    if len(hours) < _LEAST_H:
        what = f"readings of {len(hours)} hours in a row are too few"
        return None, (*findings, _say(file, 0, "too-short", what, "log a day at the least"))
    first = hours[0].replace(hour=0)
    temps: list[float] = []
    damps: list[float] = []
    at, before = first, hours[0]
    for hour in hours:
        gap = (hour - before) // timedelta(hours=1)
        if gap > _LONG_GAP_H:
            what = f"no reading from {before:%Y-%m-%d %H:%M} for {gap} h"
            findings.append(
                _say(file, 0, "gap", what, "filled straight between; log anew if it matters", "warning")
            )
        while at <= hour:
            share = 1.0 if hour == before else (at - before) / (hour - before)
            old, new = means[before], means[hour]
            temps.append(round(old[0] + max(0.0, share) * (new[0] - old[0]), 6))
            damps.append(round(old[1] + max(0.0, share) * (new[1] - old[1]), 6))
            at += timedelta(hours=1)
        before = hour
    days = max(1, len(temps) // 24)
    whole = days * 24 if len(temps) >= _LEAST_H else len(temps)
    said = f"logger {file}, {hours[0]:%Y-%m-%d} to {hours[-1]:%Y-%m-%d}"
    return AirHours(temps_c=tuple(temps[:whole]), rhs=tuple(damps[:whole]), said=said), tuple(findings)


def _longest_run(hours: list[datetime], file: str) -> tuple[list[datetime], list[Finding]]:
    """Return the longest run of hours without a break of a week; and what is to be said of the others."""
    runs = [[hours[0]]]
    for before, hour in pairwise(hours):
        if (hour - before) // timedelta(hours=1) > _BREAK_H:
            runs.append([])
        runs[-1].append(hour)
    best = max(runs, key=len)
    if len(runs) == 1:
        return best, []
    times = "once" if len(runs) == 2 else f"{len(runs) - 1} times"
    what = f"the log breaks off for more than a week, {times}"
    do = f"only {best[0]:%Y-%m-%d} to {best[-1]:%Y-%m-%d} is used; check the logger's clock, or cut the file"
    return best, [_say(file, 0, "long-gap", what, do, "warning")]


def read_epw(
    text: str, file: str, begins: date, summer: Sequence[int] = ()
) -> tuple[AirHours | None, tuple[Finding, ...]]:
    """
    Return outdoor air from a weather file, from a day of the year on.

    Parameters
    ----------
    text
        The file, in EPW format (EnergyPlus documentation, "Auxiliary Programs", EPW: eight lines of head, then
        8760 rows; column 7 the dry bulb [°C], column 9 the relative humidity [%]).
    file
        Its name, for findings.
    begins
        Day from which its hours are taken; the year does not matter.
    summer
        By how much the clock on the wall is ahead of standard time, in which such files are written, in each hour from
        that day on [h]; none = the file is taken by the clock on the wall.

    Returns
    -------
    tuple
        A year of hours from that day on, None where it cannot be read; and findings.
    """
    rows, unread = _epw_rows(text)
    told = _left_out(unread, file)
    if len(rows) < _YEAR_H:
        what = f"{len(rows)} rows of weather can be read, a year has {_YEAR_H}"
        return None, (*told, _say(file, 0, "no-epw", what, "take a whole EPW file"))
    days = (
        n for n, row in enumerate(rows) if (row[1], row[2]) >= (begins.month, begins.day)
    )  # 29 February in a plain year: the day after
    start = next(days, 0)
    turned = [rows[(start + n - (summer[n] if n < len(summer) else 0)) % len(rows)] for n in range(len(rows))]
    missing = [row[0] for row in rows if row[3] is None or row[4] is None]
    if len(missing) > _EPW_MOST_MISSING * len(rows):
        what = f"{len(missing)} of {len(rows)} hours have no reading of temperature or humidity"
        return None, (*told, _say(file, missing[0], "no-epw", what, "take a file with fewer gaps"))
    if missing:
        count = "1 hour has" if len(missing) == 1 else f"{len(missing)} hours have"
        what = f"{count} no reading of temperature or humidity, the first here"
        told.append(_say(file, missing[0], "gap", what, "filled from the hour before", "warning"))
    temps, damps = _filled([row[3] for row in turned]), _filled([row[4] for row in turned])
    return AirHours(temps_c=temps, rhs=damps, said=f"weather file {file} from {begins:%d %B} on"), tuple(told)


_Weather = tuple[
    int, int, int, float | None, float | None
]  # line, month, day, temperature [°C], humidity [1]


def _epw_rows(text: str) -> tuple[list[_Weather], list[tuple[int, str]]]:
    """Return the rows of a weather file, None for what was not measured; and lines that cannot be read."""
    found: list[_Weather] = []
    unread: list[tuple[int, str]] = []
    for line, row in enumerate(text.splitlines()[_EPW_HEAD:], start=_EPW_HEAD + 1):
        cells = row.split(",")
        if not row.strip():
            continue
        try:
            month, day, temp, damp = int(cells[1]), int(cells[2]), cells[_EPW_TEMP], cells[_EPW_RH]
        except (IndexError, ValueError):
            unread.append((line, "this row cannot be read"))
            continue
        rh = _within(damp, 0.0, _EPW_MOST_PCT)
        share = None if rh is None else min(1.0, max(0.01, rh / 100.0))
        found.append((line, month, day, _within(temp, _COLDEST_C, _WARMEST_C), share))
    return found, unread


def _within(said: str, low: float, high: float) -> float | None:
    """Return a figure of a weather file; None where it is missing (99.9, 999) or no figure of this earth."""
    try:
        value = float(said)
    except ValueError:
        return None
    return value if low <= value <= high else None


def _filled(values: list[float | None]) -> tuple[float, ...]:
    """Return values with the missing ones as the last before them, or the first there is."""
    last = next((value for value in values if value is not None), 0.0)
    full = []
    for value in values:
        last = last if value is None else value
        full.append(last)
    return tuple(full)
