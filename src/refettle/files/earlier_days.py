"""Days laid earlier, read from the document that ``days --json`` wrote."""

import json
from collections.abc import Iterator

from refettle.domain.dates import day_number
from refettle.domain.finding import Finding, Where
from refettle.services.agenda import Agenda


def read_earlier_days(text: str, path: str, begins: str) -> Agenda | Finding:
    """
    Return what earlier days meant to be done when.

    Parameters
    ----------
    text
        A document of ``days --json``.
    path
        Where it stands, for what is said of it.
    begins
        Day on which the workshop's days now begin, ``2026-10-05``; empty = day 1, as then.

    Returns
    -------
    Agenda or Finding
        Hours count from midnight of the day on which the days now begin [h]; or what is wrong with the document.
    """
    try:
        read = json.loads(text)
        before = str(read.get("begins") or "")
        if bool(before) != bool(begins):
            return _finding(
                path, "begins", "only one of the two, these days and the workshop file, says on which date it begins",
                'write "begins: 2026-10-05" in the workshop file, as when the days were laid',
            )  # fmt: skip
        shift_h = 24.0 * (day_number(begins) - day_number(before)) if begins else 0.0
        found: dict[tuple[str, int], tuple[float, ...]] = {}
        for group, left, begin_h in _tasks(read):
            found[group, left] = (*found.get((group, left), ()), begin_h - shift_h)
    except (ValueError, KeyError, TypeError, AttributeError) as wrong:
        return _finding(
            path, "", f"these are no days as Refettle writes them ({type(wrong).__name__}: {wrong})",
            "name a file that was written by: refettle days WORKSHOP --json > days.json",
        )  # fmt: skip
    if not found:
        return _finding(
            path, "days", "no work stands in these days",
            "name a file that was written by: refettle days WORKSHOP --json > days.json",
        )  # fmt: skip
    return Agenda(begins=found)


def _tasks(read: dict[str, list[dict[str, list[dict[str, str]]]]]) -> Iterator[tuple[str, int, float]]:
    """Yield group, tasks left with it and begin [h] of each task that is counted."""
    for day in read["days"]:
        for task in day["tasks"]:
            if int(task["left"]):
                yield str(task["group"]), int(task["left"]), float(task["begin_h"])


def _finding(path: str, at: str, what: str, do: str) -> Finding:
    """Return what is wrong with a document of earlier days."""
    return Finding(code="no-earlier-days", level="error", where=Where(file=path, path=at), what=what, do=do)
