"""Days laid anew after something has changed, so that nothing moves that need not."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.agenda import Agenda, Key, agenda_of
from refettle.services.calendar import Calendar, lay_pieces
from refettle.services.turns import Plans, calendar_value


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """
    How much of earlier days stands.

    Attributes
    ----------
    stays
        Tasks that are done on the day they were meant for [1].
    moved
        Groups and the days, meant and new, of the tasks that are not [d], in the order of the days meant.
    new
        Tasks of which the earlier days say nothing [1].
    """

    stays: int
    moved: tuple[tuple[str, int, int], ...]
    new: int


def kept_days(
    know: Knowledge, workshop: Workshop, plans: Plans, earlier: Agenda
) -> tuple[Calendar, Agenda, Kept]:
    """
    Return days that keep to earlier ones wherever they still can.

    Parameters
    ----------
    know, workshop
        Facts; free hours and air as they are now.
    plans
        The pieces with their plans as they are now, in the order of their turns.
    earlier
        What was meant to be done when.

    Returns
    -------
    tuple
        The calendar; the agenda it follows; what of the earlier days stands. What cannot be done on its evening has
        its turn on the next before what is meant for that one, or after it: whichever moves fewer tasks.
    """
    best: tuple[tuple[object, ...], Calendar, Agenda, Kept] | None = None
    for moved_last in (False, True):
        agenda = replace(earlier, moved_last=moved_last)
        laid = lay_pieces(know, workshop, plans, agenda=agenda)
        kept = _kept(agenda_of(laid.days).begins, earlier.begins)
        value = calendar_value(laid)
        key = (value[0], value[1], len(kept.moved), value)
        if best is None or key < best[0]:
            best = (key, laid, agenda, kept)
    assert best is not None  # noqa: S101 - two were tried
    return best[1], best[2], best[3]


def _kept(now: Mapping[Key, tuple[float, ...]], meant: Mapping[Key, tuple[float, ...]]) -> Kept:
    """Return what stands of what was meant."""
    moved = [
        (meant[key][0], key[0], _day(meant[key][0]), _day(hours[0]))
        for key, hours in now.items()
        if key in meant and _day(meant[key][0]) != _day(hours[0])
    ]
    known = sum(key in meant for key in now)
    return Kept(
        stays=known - len(moved),
        moved=tuple((group, was, day) for _, group, was, day in sorted(moved)),
        new=len(now) - known,
    )


def _day(hour: float) -> int:
    """Return the day an hour lies on [d]."""
    return int(hour // 24) + 1
