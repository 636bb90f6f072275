"""One shopping list for several pieces: litres first, tins once, and every share told."""

import json
from dataclasses import replace
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fakes_plan import cost, leaks, painted, piece_plan, refused, route
from refettle import bootstrap
from refettle.cli import main
from refettle.cli.buy_json import buy_json
from refettle.cli.buy_text import buy_text
from refettle.cli.page import Page
from refettle.domain.piece import Product, Workshop
from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.step import Step
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.services.buy_many import ShoppingList, buy_many
from refettle.services.buying import ZERO, to_buy

KNOW = load_knowledge()
SHELF = Workshop(
    products=(
        Product(name="paint", cls="acrylic-paint", have_l=0.2, size_l=0.75),
        Product(name="oil", cls="drying-oil", have_l=5.0, size_l=1.0),
    )
)


def coat(cls: str, litres: float) -> GroupPlan:
    """Return a group that takes one coat."""
    step = cost(Step(verb="paint", what=cls, method="brush"), litres=litres, money=5.0)
    return replace(painted(), name=f"{cls} {litres}", route=route(step))


def plan_of(*groups: GroupPlan, workshop: Workshop = SHELF, know: Knowledge = KNOW) -> PiecePlan:
    """Return a plan with the purchases of its groups."""
    buy = to_buy(know, workshop, groups)
    return replace(piece_plan(*groups), buy=buy, money=sum((item.money for item in buy), start=ZERO))


def listed(*plans: PiecePlan, workshop: Workshop = SHELF) -> ShoppingList:
    return buy_many(KNOW, workshop, tuple((f"Piece {n}", plan) for n, plan in enumerate(plans, start=1)))


def tins_l(words: str) -> float:
    """Return the litres of tins written as ``2 × 0.75 L + 0.5 L``."""
    total = 0.0
    for part in words.split(" + ") if words else ():
        count, _, size = part.removesuffix(" L").rpartition(" × ")
        total += int(count or 1) * float(size)
    return total


def test_one_piece_alone_buys_what_its_plan_says():
    plan = plan_of(coat("acrylic-paint", 0.4), painted())
    alone = listed(plan)
    assert {item.purchase.cls: item.purchase for item in alone.items} == {item.cls: item for item in plan.buy}
    assert alone.money.likely == pytest.approx(alone.apart.likely)


def test_litres_are_added_before_they_are_set_against_the_shelf():
    small = plan_of(coat("acrylic-paint", 0.1))
    assert small.buy[0].buy == ""  # 0.2 L on the shelf do for one
    both = listed(small, small, small)
    paint = both.items[0]
    assert paint.purchase.need_l.likely == pytest.approx(0.45)
    assert paint.purchase.have_l == pytest.approx(0.2)
    assert paint.purchase.buy == "0.75 L"
    assert both.money.likely > both.apart.likely == 0.0


def test_a_tin_shared_costs_less_than_two_tins_half_used():
    piece = plan_of(coat("alkyd-enamel", 0.2), workshop=Workshop())
    both = buy_many(KNOW, Workshop(), (("A", piece), ("B", piece)))
    assert piece.buy[0].buy == "0.5 L"
    assert both.items[0].purchase.buy == "0.75 L"
    assert both.money.likely == pytest.approx(0.75 * both.apart.likely)


def test_what_is_left_is_the_shelf_and_the_tins_less_the_need():
    oil, paint = coat("drying-oil", 0.5), coat("acrylic-paint", 0.4)
    for item in listed(plan_of(oil), plan_of(paint)).items:
        there = item.purchase.have_l + tins_l(item.purchase.buy)
        assert item.left_l.likely == pytest.approx(max(0.0, there - item.purchase.need_l.likely))
        assert item.left_l.low <= item.left_l.likely <= item.left_l.high


@settings(max_examples=40, deadline=None)
@given(
    st.lists(
        st.lists(
            st.tuples(st.sampled_from(("acrylic-paint", "drying-oil", "alkyd-enamel")), st.floats(0.01, 3.0)),
            min_size=1,
            max_size=3,
        ),
        min_size=1,
        max_size=4,
    )
)
def test_shares_add_up_and_the_tins_cover_the_likely_need(pieces: list[list[tuple[str, float]]]):
    plans = [plan_of(*(coat(cls, litres) for cls, litres in piece)) for piece in pieces]
    shopping = listed(*plans)
    for item in shopping.items:
        need = item.purchase.need_l
        assert sum(share.need_l.likely for share in item.shares) == pytest.approx(need.likely)
        assert item.purchase.have_l + tins_l(item.purchase.buy) >= need.likely - 1e-9
    backwards = listed(*reversed(plans))
    assert backwards.money.likely == pytest.approx(shopping.money.likely)


def test_oily_rags_are_spoken_of_where_there_is_oil_and_the_drain_wherever_something_is_wet():
    assert "Rags with oil" in listed(plan_of(coat("drying-oil", 0.2))).disposal
    paint = listed(plan_of(coat("acrylic-paint", 0.2))).disposal
    assert "Rags with oil" not in paint
    assert "down the drain" in paint
    dry = replace(painted(), route=route(cost(Step(verb="sand", grit=180, method="hand-block"), money=1.0)))
    assert listed(plan_of(dry)).disposal == ""


def test_the_page_says_which_piece_needs_how_much_and_what_is_left_out():
    first, second = (
        plan_of(coat("acrylic-paint", 0.4), painted()),
        plan_of(coat("acrylic-paint", 0.2), refused()),
    )
    shopping = buy_many(KNOW, SHELF, (("Desk", first), ("Chest", second)))
    for width in (80, 50):
        text = buy_text(("Desk", "Chest"), shopping, SHELF, (), Page(width=width))
        assert max(map(len, text.splitlines())) <= width
        assert not leaks(KNOW, text)
    text = buy_text(("Desk", "Chest"), shopping, SHELF, (), Page(width=80))
    assert "  waterborne acrylic furniture paint: 2 × 0.75 L" in text
    assert "      Desk: 0.5–1.1 L\n      Chest: 0.2–0.4 L\n" in text
    assert "Not in this list" in text
    assert f"  Chest: {refused().name}\n" in text
    abrasives = text.partition("Abrasives")[2]
    assert "abrasive P240" in abrasives


def schema() -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads(files("refettle.cli").joinpath("buy.schema.json").read_text("utf-8"))
    return loaded


def test_the_json_follows_its_schema():
    shopping = buy_many(KNOW, SHELF, (("Desk", plan_of(coat("drying-oil", 0.4), refused())),))
    document = json.loads(buy_json(("Desk",), shopping, SHELF, KNOW, piece_plan().findings))
    jsonschema.validate(document, schema())
    assert document["left_out"]
    del document["items"][0]["left_l"]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, schema())


@pytest.fixture
def desk(tmp_path: Path) -> str:
    path = tmp_path / "desk.yaml"
    path.write_text(
        "piece: Desk\nform: list\nwood: oak\nold finish: bare\nlook: oiled\nsurfaces:\n  top: {area: 0.8 m2}\n",
        encoding="utf-8",
    )
    return str(path)


def test_the_same_file_twice_is_two_pieces(desk: str, capsys: pytest.CaptureFixture[str]):
    documents = []
    for given_files in ([desk], [desk, desk]):
        assert main(["buy", *given_files, "--json"]) == 0
        documents.append(json.loads(capsys.readouterr().out))
        jsonschema.validate(documents[-1], schema())
    one, two = documents
    assert two["pieces"] == ["Desk", "Desk (2)"]
    for alone, both in zip(one["items"], two["items"], strict=True):
        assert both["need_l"]["likely"] == pytest.approx(2 * alone["need_l"]["likely"], abs=2e-4)
    assert main(["buy", desk, desk]) == 0
    text = capsys.readouterr().out
    assert text.startswith("To buy for Desk, Desk (2)\n")
    assert max(map(len, text.splitlines())) <= 80


def test_a_look_that_cannot_be_had_is_1(desk: str, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(bootstrap, "plan", lambda _laid: plan_of(refused()))
    assert main(["buy", desk]) == 1
    monkeypatch.setattr(bootstrap, "plan", lambda _laid: plan_of(painted()))
    assert main(["buy", desk]) == 0


def test_errors_of_all_files_are_told_at_once(tmp_path: Path, desk: str, capsys: pytest.CaptureFixture[str]):
    bad = []
    for name, wood in (("a", "oka"), ("b", "pinne")):
        path = tmp_path / f"{name}.yaml"
        path.write_text(
            f"piece: {name}\nform: board\nwidth: 60 cm\ndepth: 30 cm\nheight: 2 cm\nwood: {wood}\n"
        )
        bad.append(str(path))
    assert main(["buy", bad[0], desk, bad[1]]) == 1
    shown = capsys.readouterr()
    assert '"oka"' in shown.err
    assert '"pinne"' in shown.err
    assert shown.out == ""
    assert main(["buy", *bad, "--json"]) == 1
    document = json.loads(capsys.readouterr().out)
    jsonschema.validate(document, schema())
    assert len(document["findings"]) == 2
    assert main(["buy", str(tmp_path / "none.yaml")]) == 2
    assert main(["buy"]) == 2


def test_nothing_to_buy_is_said_in_so_many_words():
    text = buy_text(("Desk",), listed(plan_of()), SHELF, (), Page(width=80))
    assert "Nothing is needed." in text
    assert "Left over" not in text
