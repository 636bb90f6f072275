"""Plans pass the checker; damaged plans do not; neither order in the file nor repetition changes a route."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plan_pieces import facts, made, old, one_surface, pieces, planned, workshops
from refettle.domain.air import Air
from refettle.domain.finding import Finding
from refettle.domain.piece import Look, Piece
from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.plan import Range, Route, StepCost
from refettle.domain.workshop import Workshop
from refettle.planning.check import check_plan
from refettle.services.plan import plan_piece

FEW = settings(max_examples=25, deadline=None)

Damage = Callable[[PiecePlan, int], PiecePlan | None]
"""A way to damage a plan at a place; None where there is nothing of that kind to damage."""


def routed(plan: PiecePlan) -> GroupPlan | None:
    """Return the first group with a route of some steps."""
    return next((g for g in plan.groups if g.route is not None and g.route.steps), None)


def with_route(plan: PiecePlan, change: Callable[[Route], Route | None]) -> PiecePlan | None:
    """Return the plan with the first route changed."""
    group = routed(plan)
    if group is None or group.route is None:
        return None
    route = change(group.route)
    if route is None:
        return None
    made = replace(group, route=route)
    return replace(plan, groups=tuple(made if g is group else g for g in plan.groups))


def with_step(plan: PiecePlan, at: int, change: Callable[[StepCost], StepCost]) -> PiecePlan | None:
    """Return the plan with one step of the first route changed."""

    def changed(route: Route) -> Route:
        steps = list(route.steps)
        steps[at % len(steps)] = change(steps[at % len(steps)])
        return replace(route, steps=tuple(steps))

    return with_route(plan, changed)


def a_step_removed(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(route: Route) -> Route:
        gone = at % len(route.steps)
        return replace(route, steps=route.steps[:gone] + route.steps[gone + 1 :])

    return with_route(plan, changed)


def a_step_doubled(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(route: Route) -> Route:
        twice = at % len(route.steps)
        return replace(route, steps=route.steps[: twice + 1] + route.steps[twice:])

    return with_route(plan, changed)


def steps_swapped(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(route: Route) -> Route | None:
        if len(route.steps) < 2:
            return None
        first = at % (len(route.steps) - 1)
        steps = list(route.steps)
        one, other = steps[first].step, steps[first + 1].step
        dry = not one.is_coat and not other.is_coat
        if one == other or (dry and "climate" in {one.verb, other.verb}):
            return None  # the room may be warmed earlier or later, as long as no coat goes on before
        steps[first], steps[first + 1] = steps[first + 1], steps[first]
        return replace(route, steps=tuple(steps))

    return with_route(plan, changed)


def a_wait_halved(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(route: Route) -> Route | None:
        waits = [i for i, c in enumerate(route.steps) if c.step.wait_after_h > 0]
        if not waits:
            return None
        steps = list(route.steps)
        cost = steps[waits[at % len(waits)]]
        step = replace(cost.step, wait_after_h=cost.step.wait_after_h / 2)
        steps[waits[at % len(waits)]] = replace(cost, step=step)
        return replace(route, steps=tuple(steps))

    return with_route(plan, changed)


def a_coat_more(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(route: Route) -> Route | None:
        coats = [i for i, c in enumerate(route.steps) if c.step.is_coat]
        if not coats:
            return None
        steps = list(route.steps)
        cost = steps[coats[at % len(coats)]]
        steps[coats[at % len(coats)]] = replace(cost, step=replace(cost.step, coats=cost.step.coats * 2))
        return replace(route, steps=tuple(steps))

    return with_route(plan, changed)


def a_sum_changed(plan: PiecePlan, at: int) -> PiecePlan | None:
    more = Range(low=0.1, likely=0.1, high=0.1)

    def changed(route: Route) -> Route:
        match at % 5:
            case 0:
                return replace(route, minutes=route.minutes + more)
            case 1:
                return replace(route, money=route.money + more)
            case 2:
                return replace(route, elapsed_h=route.elapsed_h + more)
            case 3:
                return replace(route, value_lost=route.value_lost + 0.1)
            case _:
                return replace(route, expected_cost=route.expected_cost - 0.1)

    return with_route(plan, changed)


def a_total_changed(plan: PiecePlan, at: int) -> PiecePlan | None:
    more = Range(low=0.1, likely=0.1, high=0.1)
    if at % 2:
        return replace(plan, money=plan.money + more)
    return replace(plan, minutes=plan.minutes + more)


def a_chance_lowered(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(route: Route) -> Route | None:
        if not route.risks:
            return None
        risks = list(route.risks)
        risks[at % len(risks)] = replace(
            risks[at % len(risks)], chance=risks[at % len(risks)].chance * 0.99 - 2e-6
        )
        return replace(route, risks=tuple(risks))

    return with_route(plan, changed)


def a_source_lost(plan: PiecePlan, at: int) -> PiecePlan | None:
    return with_step(plan, at, lambda cost: replace(cost, because=("f-0",) if at % 2 else ()))


def a_range_reversed(plan: PiecePlan, at: int) -> PiecePlan | None:
    def changed(cost: StepCost) -> StepCost:
        range_ = Range(low=cost.minutes.high + 1, likely=cost.minutes.likely, high=cost.minutes.low)
        return replace(cost, minutes=range_)

    return with_step(plan, at, changed)


def an_evening_brought_forward(plan: PiecePlan, at: int) -> PiecePlan | None:
    waited = [i for i, day in enumerate(plan.days[:-1]) if any(t.wait_h > 12 for t in day.tasks)]
    if not waited or len(plan.groups) > 1:
        return None
    first = plan.days[waited[at % len(waited)]]
    rest = plan.days[waited[at % len(waited)] + 1]
    joined = replace(first, tasks=first.tasks + rest.tasks, minutes=first.minutes + rest.minutes)
    return replace(plan, days=tuple(joined if d is first else d for d in plan.days if d is not rest))


def a_tin_forgotten(plan: PiecePlan, at: int) -> PiecePlan | None:
    films = [item for item in plan.buy if item.kind == "film"]
    if not films:
        return None
    gone = films[at % len(films)]
    left = tuple(item for item in plan.buy if item is not gone)
    rest = [item.money for item in left]
    zero = Range(low=0.0, likely=0.0, high=0.0)
    return replace(plan, buy=left, money=sum(rest, start=zero))


def a_surface_forgotten(plan: PiecePlan, at: int) -> PiecePlan | None:
    del at
    return replace(plan, groups=plan.groups[1:])


DAMAGES: tuple[Damage, ...] = (
    a_step_removed, a_step_doubled, steps_swapped, a_wait_halved, a_coat_more, a_sum_changed, a_total_changed,
    a_chance_lowered, a_source_lost, a_range_reversed, an_evening_brought_forward, a_tin_forgotten,
    a_surface_forgotten,
)  # fmt: skip


def closed(found: tuple[Finding, ...]) -> list[str]:
    """Return the findings as text."""
    return [f.text() for f in found]


@FEW
@given(piece=pieces(), workshop=workshops)
def test_plans_pass_the_checker(piece: Piece, workshop: Workshop) -> None:
    assert closed(check_plan(facts(), piece, workshop, planned(piece, workshop))) == []


PAINTED = (old("alkyd-enamel", kind="paint"),)
WANTED = {
    "a conditioner may be sanded when it is scuffed": (
        made(one_surface("top", wood="beech", look=Look(kind="stained", depth=65)), year=1995),
        Workshop(air_likely=Air(temp_c=17.0, rh=0.6)),
    ),
    "flakes that may hold lead come off wet": (
        made(one_surface("top", layers=PAINTED, look=Look(kind="keep"), soundness="flaking"), year=1938),
        Workshop(),
    ),
    "bare wood has no original surface to lose": (
        made(one_surface("top", value="good", look=Look(kind="opaque", colour="white"))),
        Workshop(),
    ),
    "each class gets air within its limits": (
        made(one_surface("top", look=Look(kind="natural"))),
        Workshop(air_likely=Air(temp_c=13.0, rh=0.74)),
    ),
    "no upkeep means no oil on top": (
        made(
            one_surface("top", look=Look(kind="stained", depth=65), layers=(old(),)),
            demands=frozenset({"no upkeep"}),
        ),
        Workshop(air_likely=Air(temp_c=16.0, rh=0.68)),
    ),
    "no spraying means no spray can either": (
        made(one_surface("top", look=Look(kind="natural")), demands=frozenset({"no spraying"})),
        Workshop(methods=frozenset({"aerosol"})),
    ),
}
"""Pieces that the planner once got wrong, by what it should do."""


@pytest.mark.parametrize("wanted", WANTED)
def test_what_the_checker_once_found_stays_mended(wanted: str) -> None:
    piece, workshop = WANTED[wanted]
    assert check_plan(facts(), piece, workshop, planned(piece, workshop)) == ()


@settings(max_examples=15, deadline=None)
@given(piece=pieces(), workshop=workshops, at=st.integers(0, 11))
def test_damaged_plans_do_not_pass(piece: Piece, workshop: Workshop, at: int) -> None:
    plan = planned(piece, workshop, brief=True)
    sound = set(check_plan(facts(), piece, workshop, plan))
    for damage in DAMAGES:
        damaged = damage(plan, at)
        if damaged is not None and damaged != plan:
            found = set(check_plan(facts(), piece, workshop, damaged))
            assert found - sound, f"{damage.__name__.replace('_', ' ')} passes"


def test_every_damage_can_be_done() -> None:
    paint = (old("latex-paint", kind="paint"),)
    piece = made(one_surface("top", wood="pine", layers=paint, look=Look(kind="natural")))
    plan = planned(piece, Workshop(), brief=True)
    assert [damage.__name__ for damage in DAMAGES if damage(plan, 0) in {None, plan}] == []


def by_members(plan: PiecePlan) -> dict[frozenset[str], GroupPlan]:
    """Return the groups by the surfaces in them."""
    return {frozenset(g.members): g for g in plan.groups}


@settings(max_examples=10, deadline=None)
@given(piece=pieces(least=2), workshop=workshops)
def test_the_order_of_surfaces_in_the_file_changes_no_route(piece: Piece, workshop: Workshop) -> None:
    there = by_members(planned(piece, workshop, brief=True))
    back = by_members(planned(replace(piece, surfaces=piece.surfaces[::-1]), workshop, brief=True))
    assert there.keys() == back.keys()
    for members, group in there.items():
        route, other = group.route, back[members].route
        assert group.look == back[members].look
        assert (route is None) == (other is None)
        if route is not None and other is not None:
            assert [c.step for c in route.steps] == [c.step for c in other.steps]
            assert route.cost == pytest.approx(other.cost)


@settings(max_examples=5, deadline=None)
@given(piece=pieces(), workshop=workshops)
def test_the_same_input_gives_the_same_plan(piece: Piece, workshop: Workshop) -> None:
    assert plan_piece(piece, workshop, facts()) == plan_piece(piece, workshop, facts())
