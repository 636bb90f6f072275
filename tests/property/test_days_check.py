"""Days of random workshops pass the checker that replays them hour by hour; damaged days do not."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plan_pieces import facts, made, old, one_surface, pieces, planned
from refettle.domain.airhours import AirHours
from refettle.domain.piece import Look, Piece
from refettle.domain.piece_plan import GroupPlan
from refettle.domain.workshop import Workshop
from refettle.services.calendar import Calendar, lay_pieces
from refettle.services.check_calendar import check_calendar
from refettle.services.free_time import planning_air

PAINTED = made(
    one_surface("top", wood="pine", layers=(old("alkyd-varnish"),), look=Look(kind="opaque", colour="white"))
)


@st.composite
def workshops(draw: st.DrawFn) -> Workshop:
    """Draw free hours and air: cold snaps, damp spells, evenings that fall out."""
    free = []
    for day in sorted(draw(st.sets(st.integers(0, 6), min_size=1, max_size=5))):
        begin = draw(st.sampled_from((8.0, 9.5, 17.0, 18.5)))
        free.append((day, begin, begin + draw(st.sampled_from((1.5, 2.0, 3.0)))))
    days = draw(st.integers(1, 9))
    base = draw(st.floats(9.0, 24.0))
    swing = draw(st.lists(st.floats(-9.0, 6.0), min_size=days, max_size=days))
    damp = draw(st.lists(st.floats(0.35, 0.92), min_size=days, max_size=days))
    temps = tuple(base + one + (3.0 if 9 <= hour < 18 else -3.0) for one in swing for hour in range(24))
    hours = AirHours(temps_c=temps, rhs=tuple(one for one in damp for _ in range(24)))
    shop = Workshop(
        begins="2026-10-05", free=tuple(free), hours=hours,
        not_on=frozenset(draw(st.sampled_from(((), ("2026-10-08",), ("wednesday",))))),
        places_m2=draw(st.sampled_from((None, 0.2, 1.0, 3.0))),
    )  # fmt: skip
    if draw(st.booleans()):
        likely, safe = planning_air(shop)
        shop = replace(shop, air_likely=likely, air_safe=safe)
    return shop


def laid(piece: Piece, shop: Workshop) -> tuple[Calendar, tuple[GroupPlan, ...]]:
    plan = planned(piece, replace(shop, hours=None), brief=True)
    calendar = lay_pieces(facts(), shop, (("One", plan), ("Two", plan)))
    groups = tuple(replace(g, name=f"{name}: {g.name}") for name in ("One", "Two") for g in plan.groups)
    return calendar, groups


@settings(max_examples=30, deadline=None)
@given(piece=pieces(), shop=workshops())
def test_days_pass_the_checker_in_any_workshop(piece: Piece, shop: Workshop) -> None:
    calendar, groups = laid(piece, shop)
    assert check_calendar(facts(), shop, groups, calendar) == ()


WARM = Workshop(
    begins="2026-10-05", free=((0, 18.0, 21.0), (2, 18.0, 21.0), (5, 9.0, 15.0)),
    hours=AirHours(temps_c=(14.0,) * 9 + (20.0,) * 15, rhs=(0.6,) * 24),
)  # fmt: skip


def damaged(calendar: Calendar, change: str) -> Calendar:
    days = list(calendar.days)
    at = next(i for i, day in enumerate(days) if any(task.wait_h > 5 and task.number for task in day.tasks))
    tasks = list(days[at + 1].tasks)
    if change == "early":
        begin = days[at].tasks[-1].begin_h + days[at].tasks[-1].minutes / 60
        tasks = [replace(task, begin_h=begin + 0.01 * n) for n, task in enumerate(tasks)]
    if change == "at night":
        tasks = [
            replace(task, begin_h=24.0 * (days[at + 1].day - 1) + 3.0 + n) for n, task in enumerate(tasks)
        ]
    if change == "at once":
        tasks = [replace(task, begin_h=tasks[0].begin_h) for task in tasks]
    days[at + 1] = replace(days[at + 1], tasks=tuple(tasks))
    return replace(calendar, days=tuple(days))


@pytest.mark.parametrize(
    ("change", "code"), [("early", "too-early"), ("at night", "not-free"), ("at once", "two-at-once")]
)
def test_damaged_days_do_not_pass(change: str, code: str) -> None:
    calendar, groups = laid(PAINTED, WARM)
    assert check_calendar(facts(), WARM, groups, calendar) == ()
    found = check_calendar(facts(), WARM, groups, damaged(calendar, change))
    assert code in {finding.code for finding in found}


def test_a_coat_in_the_cold_does_not_pass() -> None:
    calendar, groups = laid(PAINTED, WARM)
    cold = replace(WARM, hours=AirHours(temps_c=(2.0,) * 24, rhs=(0.6,) * 24))
    assert "wrong-air" in {finding.code for finding in check_calendar(facts(), cold, groups, calendar)}
