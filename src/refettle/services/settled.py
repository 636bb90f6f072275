"""What is done with each group once the whole piece is looked at: one choice for all, and a date is heard."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from refettle.domain.piece import Piece
from refettle.domain.piece_plan import Choice, GroupPlan, MendJob
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import BALANCED, Aim
from refettle.planning.engine import Memory
from refettle.planning.reasons import make_route
from refettle.planning.search import Found
from refettle.services.around import around
from refettle.services.cases import Case, first_try, share_of
from refettle.services.days import lay_days
from refettle.services.grouping import Group
from refettle.services.mending import jobs_of
from refettle.services.pools import Option, Pool, below_steps, pools_of, problem_of
from refettle.solver.choice import Chosen, choose, cost_of

_LATE_DAY = 15.0
"""What a day past the date costs, as so many days of waiting [1]; judgement, see docs/why/cost.md."""
_BY_THE_DATE = Aim(name="by the date", days=1.0 + _LATE_DAY)
Tried = list[tuple[Case, Found]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """
    The groups of a piece with their routes.

    Attributes
    ----------
    tries
        Every group on its bench with its route, in the order of the groups; without steps where there is none.
    choice
        How the routes were chosen together.
    """

    tries: Tried
    choice: Choice


def settle(know: Knowledge, piece: Piece, workshop: Workshop, groups: tuple[Group, ...]) -> Settled:
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
    Settled
        Costs are in money as weighed without hurry.

    Notes
    -----
    Where the plan would not be safe to wrap by the date asked for, all groups are searched again with
    days weighing more. Of the ways chosen with days weighing as usual and more, the one is taken that costs
    less, days past the date included.
    """
    memory = Memory(know)
    tries = [
        first_try(know, piece, workshop, g, setup_share=share_of(g, groups), memory=memory) for g in groups
    ]
    routed = [tried for tried in tries if tried[1].steps]
    pools = pools_of(routed)
    plain = problem_of(know, workshop, pools)
    way = _settled(tries, pools, choose(plain), below_steps(know, workshop, plain))
    if piece.deadline_h is None or not routed:
        return way
    asked = days_asked(piece.deadline_h)
    mending = jobs_of(know, piece, workshop)
    if _ready_day(know, workshop, way.tries, mending) <= asked:
        return way
    pools = pools_of(routed, _BY_THE_DATE)
    plain = problem_of(know, workshop, pools)
    below = below_steps(know, workshop, plain)
    hasty = choose(problem_of(know, workshop, pools, _LATE_DAY))
    cost, splits = cost_of(plain, hasty.picks)
    ways = (
        _settled(tries, pools, choose(plain), below),
        _settled(tries, pools, replace(hasty, cost=cost, splits=splits), below, hurried=True),
    )
    return min(
        ways, key=lambda one: (one.choice.splits, _cost_with_lateness(know, workshop, one, mending, asked))
    )


def _settled(
    tries: Tried, pools: Sequence[Pool], chosen: Chosen, below: float, *, hurried: bool = False
) -> Settled:
    """Return a choice as groups with their routes."""
    picks = iter(zip(pools, chosen.picks, strict=True))
    taken: Tried = []
    for tried in tries:
        if not tried[1].steps:
            taken.append(tried)
            continue
        pool, pick = next(picks)
        taken.append(_taken(tried, pool.options[pick], own=pick == 0))
    bound = sum(pool.bound for pool in pools) - below
    choice = Choice(
        ways=chosen.choices, cost=chosen.cost, splits=chosen.splits, proved=chosen.proved, hurried=hurried,
        gap=min(1.0, max(0.0, 1.0 - bound / chosen.cost)) if chosen.cost > 0 else 0.0,
    )  # fmt: skip
    return Settled(tries=taken, choice=choice)


def _taken(tried: tuple[Case, Found], option: Option, *, own: bool) -> tuple[Case, Found]:
    """Return the group with the route that was chosen; how near it is to its best stands as its own search said."""
    if own:
        return tried
    best, found = tried[1], option.found
    return option.case, replace(found, exact=best.exact, bound=min(found.cost, best.bound))


def _cost_with_lateness(
    know: Knowledge, workshop: Workshop, way: Settled, mending: tuple[MendJob, ...], asked: float
) -> float:
    """Return what a way costs, days past the date included [money]."""
    late = max(0.0, _ready_day(know, workshop, way.tries, mending) - asked)
    return way.choice.cost + late * _LATE_DAY * workshop.day_worth


def days_asked(deadline_h: float) -> float:
    """Return the last day, counted from 1, on which a piece may be ready [d]."""
    return deadline_h / 24.0 + 1.0


def _ready_day(know: Knowledge, workshop: Workshop, agreed: Tried, mending: tuple[MendJob, ...]) -> int:
    """Return the day on which the last group is safe to wrap."""
    plans = tuple(_bare_plan(case, found) for case, found in agreed)
    _, ready, _ = lay_days(know, workshop, plans, around(know, plans), mending)
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
