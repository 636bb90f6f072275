"""Whose turn it is, days asked for, spraying hours, drying places; a workshop file that names its pieces."""

import json
from dataclasses import replace
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest

from plan_pieces import facts, made, old, one_surface, planned
from refettle.cli import main
from refettle.domain.piece import Look
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.workshop import Workshop
from refettle.services.calendar import Calendar, lay_pieces
from refettle.services.check_calendar import check_calendar
from refettle.services.free_time import spray_h
from refettle.services.turns import best_turns, calendar_value

EXAMPLES = Path(__file__).parents[2] / "examples"
SHOP = Workshop(begins="2026-10-05", free=((0, 18.0, 20.0), (2, 18.0, 20.0)))
TOP = one_surface(
    "top", wood="pine", layers=(old("alkyd-varnish"),), look=Look(kind="opaque", colour="white")
)
LOOSE = replace(TOP, name="door.left/outside", part="door.left", area_m2=1.0)
LARGE = replace(TOP, area_m2=9.0)
WHITE = planned(made(LARGE), SHOP, brief=True)
DOOR = planned(made(LOOSE), SHOP, brief=True)
OILED = planned(
    made(one_surface("top", wood="oak", layers=(old("alkyd-varnish"),), look=Look(kind="oiled"))),
    SHOP,
    brief=True,
)


def late(plan: PiecePlan, due_day: int) -> PiecePlan:
    return replace(plan, due_day=due_day)


def days_of(calendar: Calendar, piece: str) -> int:
    return next(one.wrap_day for one in calendar.ready if one.piece == piece)


def test_a_piece_that_is_asked_for_gets_its_turn_and_is_in_time():
    first = lay_pieces(facts(), SHOP, (("One", WHITE), ("Two", WHITE)))
    due = days_of(first, "One")
    assert days_of(first, "Two") > due
    plans = (("One", WHITE), ("Two", late(WHITE, due)))
    assert calendar_value(lay_pieces(facts(), SHOP, plans))[1] > 0
    best, turns = best_turns(facts(), SHOP, plans)
    assert [name for name, _ in turns] == ["Two", "One"]
    assert [one.piece for one in best.ready] == ["One", "Two"]
    assert [one.late_days for one in best.ready] == [0, 0]


def test_of_three_pieces_no_order_is_better():
    plans = (("One", OILED), ("Two", late(WHITE, 10)), ("Three", DOOR))
    best, _ = best_turns(facts(), SHOP, plans)
    assert calendar_value(best) == min(
        calendar_value(lay_pieces(facts(), SHOP, order, piece_first=first))
        for order in permutations(plans)
        for first in (False, True)
    )


def test_of_many_pieces_the_days_are_no_worse_than_as_given_and_the_same_each_time():
    plans = tuple((f"Piece {n}", late(WHITE, 40 - 5 * n)) for n in range(5))
    given = calendar_value(lay_pieces(facts(), SHOP, plans))
    best, turns = best_turns(facts(), SHOP, plans)
    assert calendar_value(best) < given
    assert sorted(turns, key=lambda one: one[0]) == sorted(plans, key=lambda one: one[0])
    assert best_turns(facts(), SHOP, plans) == (best, turns)


def test_spraying_waits_for_its_hours():
    saturday = replace(SHOP, spraying=((5, 9.0, 12.0),))
    assert spray_h(saturday, 18.0) == 5 * 24 + 9.0
    assert spray_h(saturday, 5 * 24 + 10.5) == 5 * 24 + 10.5
    assert spray_h(saturday, 5 * 24 + 12.0) == 12 * 24 + 9.0
    assert spray_h(SHOP, 18.0) == 18.0


def sprayed(plan: PiecePlan) -> PiecePlan:
    """Return a plan whose coats are all sprayed."""
    group = plan.groups[0]
    assert group.route is not None
    steps = tuple(
        replace(cost, step=replace(cost.step, method="spray")) if cost.step.is_coat else cost
        for cost in group.route.steps
    )
    return replace(plan, groups=(replace(group, route=replace(group.route, steps=steps)),))


def test_what_is_sprayed_is_sprayed_in_the_hours_for_it_and_the_checker_knows():
    plan = sprayed(WHITE)
    free = replace(SHOP, free=(*SHOP.free, (5, 9.0, 15.0)))
    saturday = replace(free, spraying=((5, 9.0, 12.0),))
    groups = tuple(replace(g, name=f"One: {g.name}") for g in plan.groups)
    laid = lay_pieces(facts(), saturday, (("One", plan),))
    assert check_calendar(facts(), saturday, groups, laid) == ()
    assert laid.ready[0].finished
    at_any_time = lay_pieces(facts(), free, (("One", plan),))
    assert "not-sprayed-then" in {one.code for one in check_calendar(facts(), saturday, groups, at_any_time)}
    assert days_of(laid, "One") > days_of(at_any_time, "One")


def test_loose_parts_wait_for_a_place_to_dry_and_the_checker_knows():
    plans = (("One", DOOR), ("Two", DOOR))
    narrow = replace(SHOP, places_m2=1.5)
    groups = tuple(replace(g, name=f"{name}: {g.name}") for name, plan in plans for g in plan.groups)
    wide = lay_pieces(facts(), SHOP, plans)
    assert "no-place" in {one.code for one in check_calendar(facts(), narrow, groups, wide)}
    laid = lay_pieces(facts(), narrow, plans)
    assert check_calendar(facts(), narrow, groups, laid) == ()
    assert all(one.finished for one in laid.ready)
    assert not laid.findings
    small = lay_pieces(facts(), replace(SHOP, places_m2=0.5), plans)
    assert {one.code for one in small.findings} == {"places-too-small"}


def test_what_stands_in_its_place_needs_none():
    plans = (("One", WHITE), ("Two", WHITE))
    assert (
        lay_pieces(facts(), replace(SHOP, places_m2=0.1), plans).days == lay_pieces(facts(), SHOP, plans).days
    )


COLD = "workshop: Shed\nair: {temperature: 9 C, humidity: 70 %}\n"
CUPBOARD = """\
piece: Cupboard {n}
form: wardrobe
width: 60 cm
depth: 40 cm
height: 150 cm
wood: birch
old finish: bare
look: opaque white satin
"""


@pytest.fixture
def shed(tmp_path: Path) -> Path:
    for n in (1, 2):
        (tmp_path / f"cupboard-{n}.yaml").write_text(CUPBOARD.format(n=n), encoding="utf-8")
    path = tmp_path / "shed.yaml"
    path.write_text(f"{COLD}pieces: [cupboard-1.yaml, cupboard-2.yaml]\n", encoding="utf-8")
    return path


def answer(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    code = main([*words, "--json"])
    found: dict[str, Any] = {**json.loads(capsys.readouterr().out), "code": code}
    return found


def test_a_workshop_file_alone_means_the_pieces_that_stand_in_it(
    shed: Path, capsys: pytest.CaptureFixture[str]
):
    beside = [str(shed.parent / f"cupboard-{n}.yaml") for n in (1, 2)]
    for command in ("days", "buy"):
        alone = answer(capsys, command, str(shed))
        assert alone == answer(capsys, command, *beside, "--workshop", str(shed))
        assert alone["code"] == 0


def test_a_cold_room_is_made_warm_once_for_all(shed: Path, capsys: pytest.CaptureFixture[str]):
    found = answer(capsys, "days", str(shed))
    made_warm = [
        t for day in found["days"] for t in day["tasks"] if t["text"].startswith("Make the room warmer")
    ]
    assert len(made_warm) > 1
    assert [t["minutes"] > 0 for t in made_warm] == [True, *(False for _ in made_warm[1:])]
    assert main(["days", str(shed)]) == 0
    assert capsys.readouterr().out.count("Make the room warmer") == 1


def test_a_workshop_in_which_no_piece_stands_says_so(shed: Path, capsys: pytest.CaptureFixture[str]):
    shed.write_text(COLD, encoding="utf-8")
    found = answer(capsys, "days", str(shed))
    assert found["code"] == 1
    assert [one["code"] for one in found["findings"]] == ["no-pieces"]


def test_a_piece_that_cannot_be_opened_is_named(shed: Path, capsys: pytest.CaptureFixture[str]):
    (shed.parent / "cupboard-2.yaml").unlink()
    assert main(["days", str(shed)]) == 2
    said = capsys.readouterr().err.replace("\n  ", "")  # long paths are folded
    assert "cupboard-2.yaml" in said


def test_workshop_and_piece_taken_for_each_other_are_told_apart(
    shed: Path, capsys: pytest.CaptureFixture[str]
):
    cupboard = str(shed.parent / "cupboard-1.yaml")
    assert [one["code"] for one in answer(capsys, "plan", str(shed))["findings"]] == ["no-piece"]
    codes = [one["code"] for one in answer(capsys, "plan", cupboard, "--workshop", cupboard)["findings"]]
    assert codes == ["no-workshop"]


def test_the_page_says_whether_the_day_is_kept(shed: Path, capsys: pytest.CaptureFixture[str]):
    cupboard = shed.parent / "cupboard-2.yaml"
    cupboard.write_text(f"{cupboard.read_text(encoding='utf-8')}ready in: 3 days\n", encoding="utf-8")
    found = answer(capsys, "days", str(shed))
    one, two = found["ready"]
    assert (one["due_day"], one["late_days"]) == (None, 0)
    assert two["due_day"] == 4
    assert two["late_days"] == two["wrap_day"] - 4 > 0
    assert [sure["in_time"] for sure in found["sure"]] == [None, 0]
    assert main(["days", str(shed)]) == 0
    page = " ".join(capsys.readouterr().out.split())
    assert f"asked for by day 4: {two['late_days']} days late" in page
    assert "in time in 0 of 25" in page
