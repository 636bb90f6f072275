"""What is done with each group once the whole piece is looked at: parts agree, and a date is heard."""

from dataclasses import replace

from refettle.domain.piece import Piece, Workshop
from refettle.domain.piece_plan import GroupPlan, MendJob
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import BALANCED, Aim
from refettle.planning.engine import Memory
from refettle.planning.reasons import make_route
from refettle.planning.search import Found, Search
from refettle.services.agree import agree_on_body, agree_on_ground
from refettle.services.cases import Case, first_try, share_of
from refettle.services.days import around, lay_days
from refettle.services.grouping import Group
from refettle.services.mending import jobs_of

_LATE_DAY = 5.0
"""What a day past the date costs, as so many days of waiting [1]; judgement, see docs/why/cost.md."""
_BY_THE_DATE = Aim(name="by the date", days=1.0 + _LATE_DAY)
Tried = list[tuple[Case, Found]]


def settle(know: Knowledge, piece: Piece, workshop: Workshop, groups: tuple[Group, ...]) -> Tried:
    """
    Return every group on its bench with the route it takes in the plan of the whole piece.

    Parameters
    ----------
    know, piece, workshop
        Facts, piece, place.
    groups
        Groups of the piece.

    Returns
    -------
    list of tuple
        In the order of the groups; a route without steps where no way leads to the look. Costs are in
        money as weighed without hurry.

    Notes
    -----
    Where the plan would not be safe to wrap by the date asked for, all groups are searched again with
    days weighing more. Of the two ways the one is taken that costs less, days past the date included.
    """
    memory = Memory(know)
    tries = [
        first_try(know, piece, workshop, g, setup_share=share_of(g, groups), memory=memory) for g in groups
    ]
    agreed = agree_on_body(agree_on_ground(tries))
    if piece.deadline_h is None:
        return agreed
    asked = days_asked(piece.deadline_h)
    mending = jobs_of(know, piece, workshop)
    if _ready_day(know, workshop, agreed, mending) <= asked:
        return agreed
    hasty = agree_on_body(agree_on_ground([_in_haste(case, found) for case, found in tries]))
    hasty = [(case, weighed(case, found)) for case, found in hasty]
    return min((agreed, hasty), key=lambda way: _cost_with_lateness(know, workshop, way, mending, asked))


def _cost_with_lateness(
    know: Knowledge, workshop: Workshop, way: Tried, mending: tuple[MendJob, ...], asked: float
) -> float:
    """Return what a way costs, days past the date included [money]."""
    late = max(0.0, _ready_day(know, workshop, way, mending) - asked)
    return sum(found.cost for _, found in way if found.steps) + late * _LATE_DAY * workshop.day_worth


def days_asked(deadline_h: float) -> float:
    """Return the last day, counted from 1, on which a piece may be ready [d]."""
    return deadline_h / 24.0 + 1.0


def weighed(case: Case, found: Found) -> Found:
    """Return a route with its cost, and the bound on it, as weighed without hurry [money]."""
    if case.aim is BALANCED or not found.steps:
        return found
    cost = Search(case.bench, case.menu, case.weights).cost_of(found.steps)
    bound = cost if found.exact else cost * found.bound / max(found.cost, 1e-9)
    return replace(found, cost=cost, bound=bound)


def _in_haste(case: Case, found: Found) -> tuple[Case, Found]:
    """Return a group searched again with days weighing more."""
    if not found.steps:
        return case, found
    hasty = replace(case, aim=_BY_THE_DATE)
    fast = hasty.search()
    return (hasty, fast) if fast.steps else (case, found)


def _ready_day(know: Knowledge, workshop: Workshop, agreed: Tried, mending: tuple[MendJob, ...]) -> int:
    """Return the day on which the last group is safe to wrap."""
    plans = tuple(_bare_plan(case, found) for case, found in agreed)
    _, ready, _ = lay_days(know, workshop, plans, *around(know, plans), mending)
    return ready


def _bare_plan(case: Case, found: Found) -> GroupPlan:
    """Return what the evenings want to know of a group."""
    group = case.group
    route = (
        make_route(case.bench, case.menu, found, BALANCED.name, with_reasons=False) if found.steps else None
    )
    return GroupPlan(
        name=group.name, members=group.members, area_m2=group.surface.area_m2, relief=group.surface.relief,
        look=case.menu.look, asked=case.asked, worlds=(), route=route, exact=found.exact, gap=0.0,
    )  # fmt: skip
