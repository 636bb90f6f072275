"""What would gain days, how sure they are; dates without a clock."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plan_pieces import facts, made, old, one_surface, planned
from refettle.domain.air import Air
from refettle.domain.airhours import AirHours, steady
from refettle.domain.dates import day_number, iso_of, weekday
from refettle.domain.piece import Look, Piece
from refettle.domain.plan import Route
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.planning.bench import Bench
from refettle.planning.offers import CLOSING_USE, CURE, Menu
from refettle.planning.reasons import make_route
from refettle.planning.search import Found
from refettle.planning.start import start
from refettle.services.calendar import Calendar, lay_pieces
from refettle.services.day_queues import KEYED, Scale
from refettle.services.these_days import riskier
from refettle.services.what_if import what_if

SAND = Step(verb="sand", method="hand-block", grit=180, how=frozenset({"sequence", "clean dust"}))


def route_of(piece: Piece, shop: Workshop, steps: tuple[Step, ...]) -> Route:
    """Return steps as a route on the piece's first surface, closed as plans are."""
    surface = piece.surfaces[0]
    bench = Bench(facts(), shop, surface, start(facts(), piece, surface))
    menu = Menu(know=facts(), workshop=shop, surface=surface, look=surface.look or Look(kind="natural"))
    whole = Found(steps=(*steps, CURE, CLOSING_USE), cost=0.0, expanded=0, exact=True, bound=0.0)
    return make_route(bench, menu, whole, "own", with_reasons=False)


PAINTED = made(
    one_surface("top", wood="pine", layers=(old("alkyd-varnish"),), look=Look(kind="opaque", colour="white"))
)
COOL = AirHours(temps_c=(13.0,) * 9 + (16.0,) * 15, rhs=(0.6,) * 24)
SHOP = Workshop(begins="2026-10-05", free=((0, 18.0, 20.0),), hours=COOL)


@given(st.integers(-200_000, 200_000))
def test_days_are_those_of_the_standard_library(number: int) -> None:
    there = date(1970, 1, 1) + timedelta(days=number)
    assert iso_of(number) == there.isoformat()
    assert day_number(there.isoformat()) == number
    assert weekday(number) == there.weekday()


def test_what_gains_days_gains_them_when_it_is_done() -> None:
    plans = (("Box", planned(PAINTED, replace(SHOP, hours=None), brief=True)),)
    calendar = lay_pieces(facts(), SHOP, plans)
    found = what_if(facts(), calendar, plans)
    assert found.gains
    best = found.gains[0]
    assert best.days >= 1
    more = next(gain for gain in found.gains if "evening as well" in gain.words)
    on = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday").index(
        more.words.split()[0].lower()
    )
    again = lay_pieces(facts(), replace(SHOP, free=(*SHOP.free, (on, 18.0, 20.0))), plans)
    assert calendar.ready[0].wrap_day - again.ready[0].wrap_day == more.days


def test_quicker_coats_that_the_plan_knows_of_are_told_with_days_and_money() -> None:
    plan = planned(PAINTED, replace(SHOP, hours=None), brief=True)
    group = plan.groups[0]
    assert group.route is not None
    steps = tuple(cost.step for cost in group.route.steps if cost.step.verb != "wait")
    quick = route_of(PAINTED, SHOP, steps[:-1])
    known = replace(plan, groups=(replace(group, alternatives=(replace(quick, aim="sooner"),)),))
    calendar = lay_pieces(facts(), SHOP, (("Box", known),))
    gain = next(g for g in what_if(facts(), calendar, (("Box", known),)).gains if "quicker coats" in g.words)
    taken = replace(plan, groups=(replace(group, route=quick),))
    there = lay_pieces(facts(), SHOP, (("Box", taken),))
    assert gain.days == calendar.ready[0].wrap_day - there.ready[0].wrap_day
    assert gain.money == quick.money.likely - group.route.money.likely
    assert not [g for g in what_if(facts(), calendar, (("Box", plan),)).gains if "quicker coats" in g.words]


def test_slow_cases_come_later_and_the_likely_one_lies_between() -> None:
    plans = (("Box", planned(PAINTED, replace(SHOP, hours=None), brief=True)),)
    calendar = lay_pieces(facts(), SHOP, plans)
    found = what_if(facts(), calendar, plans)
    slow = lay_pieces(facts(), SHOP, plans, Scale(minutes=1.5, waits=1.35)).ready[0].wrap_day
    quick = lay_pieces(facts(), SHOP, plans, Scale(minutes=0.72, waits=0.75)).ready[0].wrap_day
    assert quick <= found.sure[0].half_day <= found.sure[0].most_day <= slow
    assert what_if(facts(), calendar, plans) == found


def test_the_last_day_hangs_on_a_group_that_is_there() -> None:
    plans = (("Box", planned(PAINTED, replace(SHOP, hours=None), brief=True)),)
    calendar = lay_pieces(facts(), SHOP, plans)
    group, text = what_if(facts(), calendar, plans).decides
    assert group == "Box: top"
    assert any(task.text == text for day in calendar.days for task in day.tasks)


@pytest.mark.parametrize("free", [(), ((0, 18.0, 20.0), (0, 20.5, 22.0))])
def test_any_workshop_can_be_asked(free: tuple[tuple[int, float, float], ...]) -> None:
    shop = Workshop(free=free)
    plans = (("Box", planned(PAINTED, shop, brief=True)),)
    found = what_if(facts(), lay_pieces(facts(), shop, plans), plans)
    assert all(gain.days > 0 for gain in found.gains)


def test_a_window_to_recoat_that_the_days_let_close_is_told() -> None:
    """Days with one evening a fortnight: a scuff is put in; left out, the next coat finds no key."""
    piece = made(one_surface("top", wood="oak", look=Look(kind="natural", sheen="satin")))
    shop = Workshop(begins="2026-10-05", free=((0, 18.0, 21.0),), hours=steady(Air(temp_c=20.0, rh=0.5)))
    plan = planned(piece, replace(shop, hours=None), brief=True)
    group = plan.groups[0]
    assert group.route is not None
    coat = Step(verb="topcoat", what="oil-polyurethane", method="brush", wait_after_h=24.0)
    bench_plan = replace(plan, groups=(replace(group, route=route_of(piece, shop, (SAND, coat, coat))),))
    calendar = lay_pieces(facts(), shop, (("Box", bench_plan),))
    assert KEYED in {task.text for day in calendar.days for task in day.tasks}
    found = list(riskier(facts(), "Box", piece, bench_plan, calendar))
    assert not any("peeling" in finding.what for finding in found), found
    unkeyed = without(calendar, KEYED)
    found = list(riskier(facts(), "Box", piece, bench_plan, unkeyed))
    assert any("peeling" in finding.what and "scuff" in finding.do for finding in found), found
    often = replace(shop, free=tuple((day, 18.0, 21.0) for day in range(7)))
    near = lay_pieces(facts(), often, (("Box", bench_plan),))
    assert KEYED not in {task.text for day in near.days for task in day.tasks}
    assert not any("peeling" in finding.what for finding in riskier(facts(), "Box", piece, bench_plan, near))


def without(calendar: Calendar, text: str) -> Calendar:
    """Return days without some work."""
    days = tuple(
        replace(day, tasks=tuple(task for task in day.tasks if task.text != text)) for day in calendar.days
    )
    return replace(calendar, days=days)


def test_no_order_is_quicker_than_the_slowest_group_alone() -> None:
    plans = (("Box", planned(PAINTED, replace(SHOP, hours=None), brief=True)),)
    one = lay_pieces(facts(), SHOP, plans)
    found = what_if(facts(), one, plans).sure[0]
    assert 1 <= found.least_day <= one.ready[0].wrap_day
    two = (*plans, ("Other", plans[0][1]))
    crowded = lay_pieces(facts(), SHOP, two)
    again = what_if(facts(), crowded, two)
    assert [one.least_day for one in again.sure] == [found.least_day] * 2
    assert all(ready.wrap_day >= found.least_day for ready in crowded.ready)
