"""Days laid by search: the evenings put to the solver, and what it finds laid as days."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from refettle.knowledge.knowledge import Knowledge
from refettle.services.agenda import Agenda
from refettle.services.all_queues import all_queues
from refettle.services.calendar import Calendar, gathered_work, lay_pieces
from refettle.services.clock import DryClock
from refettle.services.evenings_of import Posed, posed
from refettle.services.free_time import LONGEST_DAYS
from refettle.services.turns import Plans, calendar_value
from refettle.solver.evenings_better import improve
from refettle.solver.evenings_sweep import sweep
from refettle.solver.evenings_whole import Limits, whole

EFFORT_S: Final = 1.5
"""Deterministic time of a search [s]: the same work on every machine."""
_SPARE_DAYS: Final = 10
_PROVED_UP_TO: Final = 90
"""Tasks up to which a bound is sought [1]: beyond that it says nothing."""
_SWEEPS: Final = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """
    What a search of evenings came to, in its own terms (a day late 1000, an evening 30, minutes of set-up, ready days).

    Attributes
    ----------
    value
        Value of the best order found [1].
    bound
        No order has a smaller value [1]; 0 where none was sought.
    used
        Whether days laid after it are better than those laid by turns.
    """

    value: int
    bound: int
    used: bool

    @property
    def gap(self) -> float:
        """Return the share of the value that a better order might save at the most [1]."""
        return 0.0 if not self.value else max(0.0, 1 - self.bound / self.value)


def searched(
    know: Knowledge,
    calendar: Calendar,
    plans: Plans,
    effort_s: float = EFFORT_S,
    stop: Callable[[], bool] | None = None,
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
    effort_s
        Deterministic time of the search [s].
    stop
        Asked now and then whether to end with the best there is.

    Returns
    -------
    tuple
        The better of the calendar given and the one laid after what was found; the agenda that it follows, None where it
        follows the turns; what the search came to, None where nothing was sought: a piece that is not finished in
        sight waits for its air, and no order mends that.
    """
    if not calendar.ready or not all(ready.finished for ready in calendar.ready):
        return calendar, None, None
    work = _posed(know, calendar, plans)
    first, left = sweep(work.evenings, tries=_SWEEPS)
    if left:
        return calendar, None, None
    limits = Limits(effort=effort_s)
    found = improve(work.evenings, first, limits, stop=stop)
    few = len(work.evenings.tasks) <= _PROVED_UP_TO
    if few and not (stop is not None and stop()):
        found = whole(work.evenings, found, limits)
    best, agenda = calendar, None
    for hold in (True, False):
        meant = work.agenda(found.starts, hold=hold)
        laid = lay_pieces(know, calendar.workshop, plans, agenda=meant)
        if calendar_value(laid) < calendar_value(best):
            best, agenda = laid, meant
    search = Search(value=found.value, bound=found.bound if few else 0, used=agenda is not None)
    order = {ready.piece: place for place, ready in enumerate(calendar.ready)}
    return replace(best, ready=tuple(sorted(best.ready, key=lambda one: order[one.piece]))), agenda, search


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
