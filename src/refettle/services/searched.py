"""Days laid by search: other orders of the work tried by laying them, and for few pieces the proof of how good they are."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from refettle.knowledge.knowledge import Knowledge
from refettle.services.agenda import Agenda, Key, agenda_of
from refettle.services.all_queues import all_queues
from refettle.services.calendar import Calendar, gathered_work, lay_pieces
from refettle.services.clock import DryClock
from refettle.services.evenings_of import Posed, posed
from refettle.services.free_time import LONGEST_DAYS
from refettle.services.turns import Plans, calendar_value
from refettle.solver.evenings_sweep import Draws, sweep
from refettle.solver.evenings_whole import Limits, whole

EFFORT_S: Final = 1.0
"""Deterministic time of the proof [s]: the same work on every machine."""
_LAYINGS_A_PIECE: Final = 40
_MOST_LAYINGS: Final = 160
_SPARE_DAYS: Final = 10
_PROVED_UP_TO: Final = 60
"""Tasks up to which a bound is sought [1]: beyond that it says nothing."""
_SWEEPS: Final = 24
_LONGEST_SHIFT_D: Final = 10


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """
    What a search of evenings came to.

    Attributes
    ----------
    layings
        Orders of the work laid as days [1].
    better
        Of these, orders better than all before [1].
    value, bound
        Value of the best order that the solver found, and the value that no order can fall below, in its own terms (a
        day late 1000, an evening 30, minutes of set-up, ready days) [1]; 0 where it was not asked.
    """

    layings: int
    better: int
    value: int = 0
    bound: int = 0

    @property
    def gap(self) -> float:
        """Return the share of the value that a better order might save at the most [1]."""
        return 0.0 if not self.value else max(0.0, 1 - self.bound / self.value)


@dataclass(slots=True)
class _Best:
    """The best days so far, what they are worth, and the agenda that they follow; None = the turns."""

    calendar: Calendar
    value: tuple[float, ...]
    agenda: Agenda | None
    layings: int = 0
    better: int = 0


def searched(
    know: Knowledge,
    calendar: Calendar,
    plans: Plans,
    stop: Callable[[], bool] | None = None,
    on_better: Callable[[Calendar], None] | None = None,
) -> tuple[Calendar, Agenda | None, Search | None]:
    """
    Return days at least as good as those given.

    Parameters
    ----------
    know
        Facts.
    calendar
        Days laid by turns, for their workshop.
    plans
        The pieces with their plans, in the order of their turns.
    stop
        Asked now and then whether to end with the best there is.
    on_better
        Told of each better calendar.

    Returns
    -------
    tuple
        The best calendar found; the agenda that it follows, None where it follows the turns; what the search came to,
        None where nothing was sought: a piece that is not finished in sight waits for its air, and no order mends that.
        The same pieces give the same days.

    Notes
    -----
    The work of a piece or a group, or the rest of it, is meant for some days earlier or later, and all is laid anew
    with all its rules; what is no worse is gone on from. Few pieces are also put to the solver as a whole.
    """
    if not calendar.ready or not all(ready.finished for ready in calendar.ready):
        return calendar, None, None
    best = _Best(calendar, calendar_value(calendar), None)
    ended = stop if stop is not None else lambda: False
    draws = Draws(1)
    for _ in range(min(_MOST_LAYINGS, _LAYINGS_A_PIECE * len(plans))):
        if ended():
            break
        agenda = replace(agenda_of(best.calendar.days), hold=False)
        _lay(know, plans, best, _shifted(agenda, draws), on_better)
    found = None if ended() else _proved(know, plans, best, on_better)
    search = Search(
        layings=best.layings,
        better=best.better,
        value=found[0] if found else 0,
        bound=found[1] if found else 0,
    )
    order = {ready.piece: place for place, ready in enumerate(calendar.ready)}
    ready = tuple(sorted(best.calendar.ready, key=lambda one: order[one.piece]))
    return replace(best.calendar, ready=ready), best.agenda, search


def _lay(
    know: Knowledge, plans: Plans, best: _Best, agenda: Agenda, on_better: Callable[[Calendar], None] | None
) -> None:
    """Lay days after an agenda and take them if they are no worse."""
    laid = lay_pieces(know, best.calendar.workshop, plans, agenda=agenda)
    value = calendar_value(laid)
    best.layings += 1
    if value > best.value:
        return
    better = value < best.value
    if better or best.agenda is not None:
        best.calendar, best.value, best.agenda = laid, value, agenda
    if better:
        best.better += 1
        if on_better is not None:
            on_better(laid)


def _shifted(agenda: Agenda, draws: Draws) -> Agenda:
    """Return an agenda in which a piece, a group or the rest of a group is meant for some days earlier or later."""
    keys = sorted(agenda.begins)
    (group, left), kind = keys[draws.below(len(keys))], draws.below(3)
    piece = group.partition(": ")[0]

    def moves(key: Key) -> bool:
        if kind == 0:
            return key[0].partition(": ")[0] == piece
        return key[0] == group and (kind == 1 or abs(key[1]) <= abs(left))

    shift_h = (24.0 if draws.below(2) else -24.0) * (1 + draws.below(_LONGEST_SHIFT_D))
    begins = {
        key: tuple(max(0.0, hour + shift_h) for hour in hours) if moves(key) else hours
        for key, hours in agenda.begins.items()
    }
    return replace(agenda, begins=begins)


def _proved(
    know: Knowledge, plans: Plans, best: _Best, on_better: Callable[[Calendar], None] | None
) -> tuple[int, int] | None:
    """Put few pieces to the solver and lay what it finds; return its value and bound."""
    work = _posed(know, best.calendar, plans)
    if len(work.evenings.tasks) > _PROVED_UP_TO:
        return None
    first, left = sweep(work.evenings, tries=_SWEEPS)
    if left:
        return None
    found = whole(work.evenings, first, Limits(effort=EFFORT_S))
    for hold in (True, False):
        _lay(know, plans, best, work.agenda(found.starts, hold=hold), on_better)
    return found.value, found.bound


def _posed(know: Knowledge, calendar: Calendar, plans: Plans) -> Posed:
    """Return the work of some pieces as the search wants it."""
    workshop = calendar.workshop
    groups, jobs, work = gathered_work(know, plans)
    queues, before = all_queues(know, workshop, groups, work, jobs, tuple(name for name, _ in plans))
    clock = None if workshop.hours is None else DryClock(know, workshop.hours, workshop.air_likely)
    last = {
        name: (
            sum(task.minutes for task in work.after if task.group.startswith(f"{name}: ")),
            plan.due_day or None,
        )
        for name, plan in plans
    }
    days = max(max(ready.wrap_day, ready.last_day) for ready in calendar.ready) + _SPARE_DAYS
    return posed(know, workshop, clock, queues, before, last, min(days, LONGEST_DAYS))
