"""Days that are sought, and earlier days that are kept to when something has changed."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from refettle import bootstrap
from refettle.bootstrap.days import DaysLaid, days_of
from refettle.cli import main
from refettle.domain.finding import Finding
from refettle.files.earlier_days import read_earlier_days
from refettle.services.agenda import Agenda, agenda_of
from refettle.services.calendar import Calendar, gathered_work, lay_pieces
from refettle.services.check_calendar import check_calendar
from refettle.services.kept import kept_days
from refettle.services.searched import _posed, searched
from refettle.services.turns import Plans, best_turns, calendar_value
from refettle.solver.evenings_check import violations
from refettle.solver.evenings_sweep import sweep

Shop = tuple[bootstrap.Laid, Plans]
Turned = tuple[Calendar, Plans]
EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def shop() -> tuple[bootstrap.Laid, Plans]:
    """The demo workshop in October with two of its pieces."""
    laid = bootstrap.lay_out_many(
        [str(EXAMPLES / "blanket-chest.yaml"), str(EXAMPLES / "settle.yaml")],
        str(EXAMPLES / "workshop-october.yaml"),
    )
    assert not isinstance(laid, bootstrap.Refused)
    return laid[0], tuple(
        zip(bootstrap.piece_names(laid), (bootstrap.plan(one) for one in laid), strict=True)
    )


@pytest.fixture(scope="module")
def turned(shop: tuple[bootstrap.Laid, Plans]) -> tuple[Calendar, Plans]:
    laid, plans = shop
    return best_turns(laid.know, laid.workshop, plans)


def test_days_laid_after_their_own_agenda_are_the_same(shop: Shop, turned: Turned):
    laid, _ = shop
    calendar, turns = turned
    again = lay_pieces(laid.know, laid.workshop, turns, agenda=agenda_of(calendar.days))
    assert again.days == calendar.days
    assert again.ready == calendar.ready


def test_days_that_are_sought_are_better_and_hold_for_the_checker(shop: Shop, turned: Turned):
    laid, _ = shop
    calendar, turns = turned
    best, agenda, search = searched(laid.know, calendar, turns)
    assert calendar_value(best) < calendar_value(calendar)
    assert len(best.days) <= len(calendar.days)
    assert agenda is not None
    assert search is not None
    assert search.better > 0
    assert check_calendar(laid.know, laid.workshop, gathered_work(laid.know, turns)[0], best) == ()
    assert searched(laid.know, calendar, turns)[0] == best


def test_a_search_that_is_stopped_at_once_gives_the_days_it_had(shop: Shop, turned: Turned):
    laid, _ = shop
    calendar, turns = turned
    best, agenda, _ = searched(laid.know, calendar, turns, stop=lambda: True)
    assert best == calendar
    assert agenda is None


def test_the_work_put_as_plain_data_has_an_order_that_its_own_checker_bears(shop: Shop, turned: Turned):
    laid, _ = shop
    work = _posed(laid.know, turned[0], turned[1])
    plan, left = sweep(work.evenings)
    assert not left
    assert violations(work.evenings, plan) == []
    assert len(work.meant) <= len(work.evenings.tasks)


def test_nothing_moves_where_nothing_has_changed(shop: Shop, turned: Turned):
    laid, plans = shop
    calendar, _ = turned
    again, _, kept = kept_days(laid.know, laid.workshop, plans, agenda_of(calendar.days))
    assert kept.moved == ()
    assert kept.new == 0
    assert kept.stays > 20
    assert [day.day for day in again.days] == [day.day for day in calendar.days]


def test_of_a_lost_evening_only_what_must_moves(shop: Shop, turned: Turned):
    laid, plans = shop
    calendar, _ = turned
    lost = calendar.days[len(calendar.days) // 2]
    iso = f"2026-10-{4 + lost.day:02d}" if lost.day <= 27 else f"2026-11-{lost.day - 27:02d}"
    short = replace(laid.workshop, not_on=(*laid.workshop.not_on, iso))
    agenda = agenda_of(calendar.days)
    again, _, kept = kept_days(laid.know, short, plans, agenda)
    assert all(day.day != lost.day for day in again.days)
    assert kept.moved
    assert all(was >= lost.day for _, was, _ in kept.moved)
    assert all(now > was for _, was, now in kept.moved)
    before = [task for day in calendar.days for task in day.tasks if day.day < lost.day]
    assert [task for day in again.days for task in day.tasks if day.day < lost.day] == before
    assert check_calendar(laid.know, short, gathered_work(laid.know, plans)[0], again) == ()


def test_earlier_days_are_read_from_what_was_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    words = [
        "days",
        str(EXAMPLES / "blanket-chest.yaml"),
        "--workshop",
        str(EXAMPLES / "workshop-october.yaml"),
    ]
    assert main([*words, "--json"]) == 0
    earlier = tmp_path / "days.json"
    earlier.write_text(capsys.readouterr().out, encoding="utf-8")
    assert main([*words, "--keep", str(earlier)]) == 0
    shown = " ".join(capsys.readouterr().out.split())
    assert "tasks stay." in shown
    assert "moved from" not in shown
    assert main([*words, "--keep", str(earlier), "--json"]) == 0
    kept = json.loads(capsys.readouterr().out)["kept"]
    assert kept["moved"] == []
    assert kept["stays"] > 5


def test_the_hours_of_earlier_days_are_counted_from_the_day_that_is_the_first_now():
    days = {"begins": "2026-10-05", "days": [{"tasks": [{"group": "a", "left": 1, "begin_h": 66.5}]}]}
    read = read_earlier_days(json.dumps(days), "days.json", "2026-10-07")
    assert isinstance(read, Agenda)
    assert read.begins == {("a", 1): (18.5,)}


@pytest.mark.parametrize(
    ("text", "begins", "said"),
    [
        ("no", "", "these are no days as Refettle writes them"),
        ("[]", "", "these are no days as Refettle writes them"),
        ('{"begins": "", "days": []}', "", "no work stands in these days"),
        ('{"begins": "2026-10-05", "days": []}', "", "only one of the two"),
    ],
)
def test_what_are_no_earlier_days_is_refused(text: str, begins: str, said: str):
    read = read_earlier_days(text, "days.json", begins)
    assert isinstance(read, Finding)
    assert said in read.what
    assert read.do


def test_a_task_is_held_for_its_evening_and_let_go_where_that_is_lost():
    agenda = Agenda(begins={("a", 2): (43.0, 66.0), ("a", 1): (67.0,)})
    evenings = ((18.0, 20.0), (42.0, 44.0), (66.0, 68.0))
    assert agenda.held_h("a", 2, evenings) == 42.0
    assert agenda.held_h("a", 2, (evenings[0], evenings[2])) == 43.0
    assert agenda.held_h("b", 2, evenings) == 0.0
    assert replace(agenda, hold=False).held_h("a", 2, evenings) == 0.0
    assert agenda.turn("a", 2, 42.0, begun=False) < agenda.turn("a", 1, 42.0, begun=False)
    assert agenda.turn("a", 2, 66.0, begun=True) == (False, 66.0)
    late = replace(agenda, moved_last=True)
    assert late.turn("a", 2, 66.0, begun=False) > late.turn("a", 1, 66.0, begun=False)
    assert agenda.turn("a", -1, 66.0, begun=False) == agenda.turn("a", 1, 66.0, begun=False)


def test_the_days_of_a_call_say_what_the_search_came_to():
    laid = bootstrap.lay_out_many(
        [str(EXAMPLES / "blanket-chest.yaml")], str(EXAMPLES / "workshop-october.yaml")
    )
    assert not isinstance(laid, bootstrap.Refused)
    seen: list[int] = []
    found = days_of(laid, on_better=lambda calendar: seen.append(len(calendar.days)))
    assert isinstance(found, DaysLaid)
    assert found.search is not None
    assert 0 < found.search.bound <= found.search.value
    assert len(seen) == found.search.better


def test_days_can_be_planned_for_the_safe_side_of_the_air(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    chest, shop = tmp_path / "chest.yaml", tmp_path / "shop.yaml"
    chest.write_text((EXAMPLES / "blanket-chest.yaml").read_text(encoding="utf-8"), encoding="utf-8")
    wrap = {}
    for side in ("likely", "safe"):
        shop.write_text(
            f"workshop: Shed\nplanning air: {side}\nair: {{temperature: 18 C, humidity: 60 %}}\n", "utf-8"
        )
        assert main(["days", str(chest), "--workshop", str(shop)]) == 0
        shown = capsys.readouterr().out
        assert ("Planned for the safe side of the air: 14 °C, 70 %" in shown) == (side == "safe")
        assert main(["days", str(chest), "--workshop", str(shop), "--json"]) == 0
        wrap[side] = json.loads(capsys.readouterr().out)["ready"][0]["wrap_day"]
    assert wrap["safe"] > wrap["likely"]
    shop.write_text("workshop: Shed\nplanning air: sunny\n", "utf-8")
    assert main(["days", str(chest), "--workshop", str(shop)]) == 1
    assert "planning air" in capsys.readouterr().err
