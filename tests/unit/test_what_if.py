"""What would gain days, how sure they are; dates without a clock."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plan_pieces import facts, made, old, one_surface, planned
from refettle.domain.airhours import AirHours
from refettle.domain.dates import day_number, iso_of, weekday
from refettle.domain.piece import Look, Workshop
from refettle.services.calendar import lay_pieces
from refettle.services.day_queues import Scale
from refettle.services.what_if import what_if

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
