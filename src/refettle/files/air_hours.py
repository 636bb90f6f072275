"""Air by the hour from files: what a logger wrote, and weather files in the open EPW format."""

import csv
from collections.abc import Iterator
from datetime import date, datetime, timedelta
from typing import Final

from refettle.domain.airhours import AirHours
from refettle.domain.finding import Finding, Level, Where

_TIMES: Final = (
    "%Y-%m-%d %H:%M:%S", "%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M:%S", "%Y-%m-%dT%H:%M", "%d.%m.%Y %H:%M:%S", "%d.%m.%Y %H:%M",
    "%d/%m/%Y %H:%M:%S", "%d/%m/%Y %H:%M", "%m/%d/%Y %H:%M:%S", "%m/%d/%Y %H:%M", "%m/%d/%Y %I:%M:%S %p",
    "%m/%d/%Y %I:%M %p", "%d-%m-%Y %H:%M",
)  # fmt: skip
_LONG_GAP_H: Final = 3
_LEAST_H: Final = 24
_EPW_HEAD: Final = 8
_EPW_TEMP, _EPW_RH = 6, 8
_EPW_MISSING_C: Final = 99.0
_YEAR_H: Final = 8760


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
    names = [name.strip().strip('"').casefold() for name in lines[head_at].split(mark)]
    at_time, at_temp, at_rh = _columns(names)
    fahrenheit = any(sign in names[at_temp] for sign in ("°f", "(f)", "fahrenheit", "_f", "[f]", " f"))
    found: dict[datetime, list[tuple[float, float]]] = {}
    findings: list[Finding] = []
    pattern = ""
    for number, row in enumerate(csv.reader(lines[head_at + 1 :], delimiter=mark), start=head_at + 2):
        if not any(cell.strip() for cell in row):
            continue
        try:
            pattern, when = _time(row[at_time].strip(), pattern)
            temp, damp = _number(row[at_temp]), _number(row[at_rh])
        except (IndexError, ValueError) as slip:
            findings.append(
                _say(
                    file,
                    number,
                    "row-left-out",
                    f"this row cannot be read ({slip})",
                    "mend it, or take it out",
                    "warning",
                )
            )
            continue
        temp = (temp - 32.0) / 1.8 if fahrenheit else temp
        if not (-30.0 <= temp <= 60.0 and 0.0 <= damp <= 100.0):
            what = f"{temp:.0f} °C and {damp:.0f} % are no air of a workshop"
            findings.append(_say(file, number, "row-left-out", what, "mend it, or take it out", "warning"))
            continue
        found.setdefault(when.replace(minute=0, second=0), []).append((temp, max(1.0, damp) / 100.0))
    if len(found) < _LEAST_H:
        what = f"readings of {len(found)} hours are too few"
        return None, (*findings, _say(file, 0, "too-short", what, "log a day at the least"))
    return _hourly(found, file, findings)


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


def _time(said: str, pattern: str) -> tuple[str, datetime]:
    """Return the way times are written in this file, and a moment; ValueError where it is none."""
    for one in (pattern, *_TIMES) if pattern else _TIMES:
        try:
            return one, datetime.strptime(said[:19] if "T" in said else said, one)  # noqa: DTZ007 - a wall clock
        except ValueError:
            continue
    message = f"{said!r} is no time"
    raise ValueError(message)


def _number(said: str) -> float:
    """Return a number written with point or comma, a unit behind it left out."""
    plain = said.strip().strip('"').replace(",", ".").rstrip("°CF%c ").strip()
    return float(plain)


def _hourly(
    found: dict[datetime, list[tuple[float, float]]], file: str, findings: list[Finding]
) -> tuple[AirHours, tuple[Finding, ...]]:
    """Return readings as whole hours from the first midnight on, gaps filled and told."""
    means = {
        hour: (sum(t for t, _ in rows) / len(rows), sum(r for _, r in rows) / len(rows))
        for hour, rows in sorted(found.items())
    }
    hours = list(means)
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
            temps.append(old[0] + max(0.0, share) * (new[0] - old[0]))
            damps.append(old[1] + max(0.0, share) * (new[1] - old[1]))
            at += timedelta(hours=1)
        before = hour
    days = max(1, len(temps) // 24)
    whole = days * 24 if len(temps) >= _LEAST_H else len(temps)
    said = f"logger {file}, {hours[0]:%Y-%m-%d} to {hours[-1]:%Y-%m-%d}"
    return AirHours(temps_c=tuple(temps[:whole]), rhs=tuple(damps[:whole]), said=said), tuple(findings)


def read_epw(text: str, file: str, begins: date) -> tuple[AirHours | None, tuple[Finding, ...]]:
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

    Returns
    -------
    tuple
        A year of hours from that day on, None where it cannot be read; and findings.
    """
    rows = list(_epw_rows(text))
    if len(rows) < _YEAR_H:
        what = f"{len(rows)} rows of weather, a year has {_YEAR_H}"
        return None, (_say(file, 0, "no-epw", what, "take a whole EPW file"),)
    start = next(
        (n for n, (month, day, _, _) in enumerate(rows) if (month, day) == (begins.month, begins.day)), 0
    )
    turned = [*rows[start:], *rows[:start]]
    missing = sum(temp >= _EPW_MISSING_C for _, _, temp, _ in turned)
    temps = _filled([temp if temp < _EPW_MISSING_C else None for _, _, temp, _ in turned])
    damps = _filled([min(1.0, max(0.01, rh / 100.0)) if rh <= 110 else None for _, _, _, rh in turned])
    findings: tuple[Finding, ...] = ()
    if missing:
        findings = (
            _say(
                file, 0, "gap", f"{missing} hours have no reading", "filled from their neighbours", "warning"
            ),
        )
    return AirHours(temps_c=temps, rhs=damps, said=f"weather file {file} from {begins:%d %B} on"), findings


def _epw_rows(text: str) -> Iterator[tuple[int, int, float, float]]:
    """Yield month, day, temperature and humidity of the rows that can be read."""
    for line in text.splitlines()[_EPW_HEAD:]:
        cells = line.split(",")
        try:
            yield int(cells[1]), int(cells[2]), float(cells[_EPW_TEMP]), float(cells[_EPW_RH])
        except (IndexError, ValueError):
            continue


def _filled(values: list[float | None]) -> tuple[float, ...]:
    """Return values with the missing ones as the last before them, or the first there is."""
    last = next((value for value in values if value is not None), 0.0)
    full = []
    for value in values:
        last = last if value is None else value
        full.append(last)
    return tuple(full)
