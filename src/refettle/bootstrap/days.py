"""Days of several pieces: read what was laid earlier, lay, search, and ask what would gain days."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from refettle.bootstrap import Laid, Refused, opened, piece_names, plan

if TYPE_CHECKING:
    from refettle.services.calendar import Calendar
    from refettle.services.kept import Kept
    from refettle.services.searched import Search
    from refettle.services.what_if import WhatIf


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysLaid:
    """
    Days, and what stands around them.

    Attributes
    ----------
    calendar
        The days.
    around
        What would gain days, and how sure they are.
    search
        What the search of evenings came to; None where nothing was sought.
    kept
        What of earlier days stands; None where none were given.
    """

    calendar: "Calendar"
    around: "WhatIf"
    search: "Search | None" = None
    kept: "Kept | None" = None


def days_of(
    laid: tuple[Laid, ...],
    keep: str | None = None,
    stop: Callable[[], bool] | None = None,
    on_better: "Callable[[Calendar], None] | None" = None,
) -> DaysLaid | Refused:
    """
    Return the days of several pieces, at least one, that share a workshop.

    Parameters
    ----------
    laid
        The pieces.
    keep
        Path of days laid earlier that these keep to; None = they are laid anew.
    stop
        Asked now and then whether to end the search with the best there is.
    on_better
        Told of each better calendar while it is sought.

    Returns
    -------
    DaysLaid or Refused
        The days; or what is wrong with the earlier ones.

    Raises
    ------
    WrongCall
        If the file of earlier days cannot be opened.
    """
    from refettle.files.earlier_days import read_earlier_days  # noqa: PLC0415 - heavy
    from refettle.services.agenda import Agenda  # noqa: PLC0415 - heavy
    from refettle.services.kept import kept_days  # noqa: PLC0415 - heavy
    from refettle.services.searched import searched  # noqa: PLC0415 - heavy
    from refettle.services.these_days import riskier  # noqa: PLC0415 - heavy
    from refettle.services.turns import best_turns  # noqa: PLC0415 - heavy
    from refettle.services.what_if import what_if  # noqa: PLC0415 - heavy

    know, workshop = laid[0].know, laid[0].workshop
    earlier: Agenda | None = None
    agenda: Agenda | None
    if keep is not None:
        text = opened(keep)
        read = read_earlier_days(text, keep, workshop.begins) if isinstance(text, str) else text
        if not isinstance(read, Agenda):
            return Refused(findings=(read,), knowledge_version=know.version)
        earlier = read
    plans = tuple(zip(piece_names(laid), (plan(one) for one in laid), strict=True))
    kept = search = None
    if earlier is not None:
        made, agenda, kept = kept_days(know, workshop, plans, earlier)
        turns = plans
    else:
        made, turns = best_turns(know, workshop, plans)
        made, agenda, search = searched(know, made, turns, stop, on_better)
    risen = [
        finding
        for one, (name, its_plan) in zip(laid, plans, strict=True)
        for finding in riskier(one.know, name, one.piece, its_plan, made)
    ]
    around = what_if(know, made, turns, agenda)
    sure = tuple(sorted(around.sure, key=lambda one: [name for name, _ in plans].index(one.piece)))
    return DaysLaid(
        calendar=replace(made, findings=(*made.findings, *risen)),
        around=replace(around, sure=sure),
        search=search,
        kept=kept,
    )
