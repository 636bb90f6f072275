"""Several pieces laid into evenings: plans hold, the checker sees what breaks, the same input gives the same plan."""

import sys
from dataclasses import replace
from pathlib import Path

import pytest

from refettle.solver.evenings import Evenings, Link, Piece, Plan, Session, Task, Wait, Wet, kit_slots, value
from refettle.solver.evenings_better import improve
from refettle.solver.evenings_check import violations
from refettle.solver.evenings_keep import keep
from refettle.solver.evenings_sweep import sweep
from refettle.solver.evenings_whole import Limits, whole

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))
from evenings import mended

DAY = 96
"""Slots of a quarter of an hour in a day."""
COAT, SAND = Wet(Wait(0, 2), Wait(0, 6), 4, face=0), Task(0, 2, 30, dusty=True, means=(0,))


def bench(days: int = 6, due: int | None = 4) -> Evenings:
    """Return a piece with two faces, each sanded and coated twice, in evenings of three hours."""
    sessions = tuple(Session(d * DAY + 72, d * DAY + 84, d + 1) for d in range(days))
    coat = Task(0, 1, 15, kit=0, wet=COAT)
    scuff = Task(0, 1, 10, dusty=True, means=(0,), optional=True)
    end = Task(0, 2, 30)
    tasks = (SAND, coat, coat, scuff, SAND, coat, coat, scuff, end)
    links = []
    for at in (0, 4):
        links += [
            Link(at, at + 1, Wait(-1, 0)),
            Link(at + 1, at + 2, Wait(0, 6), most=Wait(-1, 30), scuff=at + 3),
            Link(at + 2, 8, Wait(0, 6)),
        ]
    return Evenings(
        slot_min=15,
        sessions=sessions,
        hands=tuple((one.begin, one.end, 1) for one in sessions),
        curves=(tuple(slot * 0.25 for slot in range((days + 3) * DAY)),),
        permits=(),
        kits=(20,),
        places=10,
        means=1,
        tasks=tasks,
        links=tuple(links),
        pieces=(Piece(8, due),),
    )


def test_a_sweep_lays_all_and_the_checker_agrees() -> None:
    plan, left = sweep(bench())
    assert not left
    assert violations(bench(), plan) == []
    assert plan.value == value(bench(), plan.starts).total


def test_what_has_no_room_is_told() -> None:
    plan, left = sweep(bench(days=2))
    assert left
    assert all(plan.starts[n] is None for n in left)


def test_a_wait_past_the_end_of_the_air_never_ends() -> None:
    still = replace(bench(), curves=((0.0,) * 900,))
    assert sweep(still)[1]


def test_the_proof_bounds_every_plan() -> None:
    first, _ = sweep(bench())
    best = whole(bench(), first, Limits(effort=20))
    assert best.proved
    assert best.bound == best.value <= first.value
    assert violations(bench(), best) == []
    assert improve(bench(), first, Limits(effort=0.5)).value >= best.bound


def test_the_same_input_gives_the_same_plan() -> None:
    first, _ = sweep(bench())
    limits = Limits(effort=0.5)
    assert improve(bench(), first, limits) == improve(bench(), first, limits)


def test_a_set_up_takes_whole_slots() -> None:
    assert kit_slots(bench(), 0) == 2


def test_seconds_want_a_clock() -> None:
    with pytest.raises(ValueError, match="pass clock="):
        Limits(seconds=1.0)


def test_an_unbroken_plan_is_kept_as_it_is() -> None:
    plan, _ = sweep(bench())
    kept, left = keep(bench(), plan, 100, Limits(effort=0.5))
    assert not left
    assert kept.starts == plan.starts


def test_a_lost_evening_is_mended_and_the_past_stays() -> None:
    problem = bench()
    plan, _ = sweep(problem)
    lost = problem.sessions[1]
    changed = replace(
        problem,
        sessions=tuple(one for one in problem.sessions if one != lost),
        hands=tuple(one for one in problem.hands if one[0] != lost.begin),
    )
    kept, left = keep(changed, plan, lost.begin, Limits(effort=0.5))
    assert not left
    assert violations(changed, kept) == []
    past = [n for n, at in enumerate(plan.starts) if at is not None and at < lost.begin]
    assert past
    assert all(kept.starts[n] == plan.starts[n] for n in past)


def broken(**moved: int) -> list[str]:
    """Return what is broken when tasks are moved, each `tN` to a slot."""
    plan, _ = sweep(bench())
    starts = list(plan.starts)
    for name, at in moved.items():
        starts[int(name[1:])] = at
    return violations(bench(), replace(plan, starts=tuple(starts)))


def test_the_checker_sees_each_kind_of_fault() -> None:
    plan, _ = sweep(bench())
    assert any("does not lie within" in one for one in broken(t8=5))
    assert any("hands are busy" in one for one in broken(t4=plan.starts[0] or 0))
    assert any("thing 0 is held" in one for one in broken(t4=plan.starts[0] or 0))
    assert any("lets it from" in one for one in broken(t2=(plan.starts[1] or 0) + 1))
    assert any("wet on two faces" in one for one in broken(t5=(plan.starts[1] or 0) + 1))
    assert any("raises dust" in one for one in broken(t4=(plan.starts[1] or 0) + 1))
    assert any("not set up" in one for one in violations(bench(), replace(plan, kits_at=())))
    few = replace(bench(), places=3)
    assert any("drying places are taken" in one for one in violations(few, plan))
    none = Plan(starts=(None,) * 9, kits_at=(), value=0)
    assert "task 0 is left out" in violations(bench(), none)


def test_a_late_recoat_wants_a_scuff() -> None:
    plan, _ = sweep(bench(days=9, due=None))
    starts = list(plan.starts)
    starts[2] = bench(days=9).sessions[6].begin + 2
    starts[3] = None
    assert any(
        "too late after" in one for one in violations(bench(days=9), replace(plan, starts=tuple(starts)))
    )


@pytest.mark.parametrize("seed", range(12))
def test_made_up_workshops_hold_before_and_after_something_went_wrong(seed: int):
    """Invented pieces; an evening is lost or two days are cold."""
    row = mended(seed, 1 + seed % 4, cold=bool(seed // 2 % 2))
    assert row["violations"] == 0
    assert row["no_room"] == 0
