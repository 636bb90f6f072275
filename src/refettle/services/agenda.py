"""An agenda: on which evening each task was meant to be done, and in which order."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from refettle.domain.piece_plan import Day

Key = tuple[str, int]
"""Group or job with its piece; how many of its tasks are left with the one meant [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Agenda:
    """
    What was meant to be done when.

    Attributes
    ----------
    begins
        Hours at which each task was meant to begin and, on later evenings, to go on, from midnight of the first day [h].
    hold
        Whether a task waits for its evening, though it could be done before; else only the order is kept.
    moved_last
        Whether what should have been done on an earlier evening has its turn after what is meant for this one.
    """

    begins: Mapping[Key, tuple[float, ...]]
    hold: bool = True
    moved_last: bool = False

    def held_h(self, group: str, left: int, evenings: tuple[tuple[float, float], ...]) -> float:
        """
        Return the hour before which a task is not begun.

        Parameters
        ----------
        group, left
            The task.
        evenings
            Begin and end of the free hours ahead, in order [h].

        Returns
        -------
        float
            Begin of the evening it was meant for; its own hour where that evening is lost; 0 where it is free [h].
        """
        if not self.hold or (group, left) not in self.begins:
            return 0.0
        meant = self.begins[group, left][0]
        return next((begin for begin, end in evenings if begin <= meant + _NEAR_H and meant < end), meant)

    def turn(self, group: str, left: int, evening_h: float, *, begun: bool) -> tuple[bool, float]:
        """
        Return what puts tasks of an evening in order, the smallest first; those of no agenda come last.

        Parameters
        ----------
        group, left
            The task.
        evening_h
            Hour at which the evening begins [h].
        begun
            Whether a part of it was done on an evening before.
        """
        hours = self.begins.get((group, left)) or self.begins.get((group, abs(left)), (_NEVER_H,))
        meant = (
            next((hour for hour in hours if hour >= evening_h - _NEAR_H), hours[-1]) if begun else hours[0]
        )
        return self.moved_last and meant < evening_h - _NEAR_H, meant


_NEAR_H = 1e-6
_NEVER_H = 1e9


def agenda_of(
    days: Iterable[Day], *, from_h: float = 0.0, hold: bool = True, moved_last: bool = False
) -> Agenda:
    """
    Return the agenda that days were.

    Parameters
    ----------
    days
        The days.
    from_h
        Hours by which the first day of a new calendar lies after theirs [h].
    hold, moved_last
        As in `Agenda`.

    Returns
    -------
    Agenda
        A task that goes on for several evenings has an hour for each.
    """
    begins: dict[Key, tuple[float, ...]] = {}
    for day in days:
        for task in day.tasks:
            if task.left:
                key = (task.group, task.left)
                begins[key] = (*begins.get(key, ()), task.begin_h - from_h)
    return Agenda(begins=begins, hold=hold, moved_last=moved_last)
