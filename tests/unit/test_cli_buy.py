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
from refettle.cli.buy_text import _HEADS, buy_text
from refettle.cli.page import Page
from refettle.domain.piece import Product
from refettle.domain.piece_plan import Caution, GroupPlan, PiecePlan
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.services.buy_many import ShoppingList, buy_many
from refettle.services.buying import KINDS, ZERO, to_buy
from refettle.services.gear import gear_of
from refettle.services.needs import needs_of

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
    return replace(piece_plan(*groups), buy=buy, gear=(), money=sum((item.money for item in buy), start=ZERO))


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
    def told(plan: PiecePlan) -> dict[str, str]:
        return {waste.id: waste.text for waste in listed(plan).disposal}

    assert "Rags with oil" in told(plan_of(coat("drying-oil", 0.2)))["oily-rags"]
    paint = told(plan_of(coat("acrylic-paint", 0.2)))
    assert "oily-rags" not in paint
    assert "down the drain" in paint["waterborne"]
    dry = replace(painted(), route=route(cost(Step(verb="sand", grit=180, method="hand-block"), money=1.0)))
    assert set(told(plan_of(dry))) == {"lead-scrapings"}
    assert told(replace(plan_of(dry), cautions=())) == {}


@pytest.mark.parametrize(
    ("step", "waste"),
    [
        (Step(verb="strip", what="strong-solvent"), "remover-sludge"),
        (Step(verb="strip", what="caustic"), "caustic"),
        (Step(verb="clean", what="naphtha"), "solvent"),
        (Step(verb="topcoat", what="nitro-lacquer", method="brush"), "solvent"),
        (Step(verb="paint", what="acrylic-paint", method="brush"), "waterborne"),
    ],
)
def test_each_kind_of_waste_has_its_line_with_a_source(step: Step, waste: str):
    group = replace(painted(), route=route(cost(step, litres=0.1, money=1.0)))
    found = {w.id: w for w in listed(replace(plan_of(group), cautions=())).disposal}
    assert waste in found
    assert all(w.source in KNOW.sources for w in found.values())


def test_every_kind_of_purchase_has_its_place_on_the_page():
    bleach = cost(Step(verb="bleach", what="oxalic-acid"), money=3.0)
    mend = cost(Step(verb="repair", what="rub-fine"), money=4.0)
    group = replace(painted(), route=route(bleach, mend))
    shopping = listed(plan_of(group))
    assert {item.purchase.kind for item in shopping.items} == {"bleach", "repair"}
    assert set(_HEADS) == set(KINDS)
    text = buy_text(("Desk",), shopping, SHELF, (), Page(width=80))
    assert "Bleaches\n  oxalic acid" in text
    assert "For mending\n  for: " in text
    jsonschema.validate(json.loads(buy_json(("Desk",), shopping, SHELF, KNOW, ())), schema())


def test_abrasives_are_bought_by_the_sheet_grit_by_grit_against_the_shelf():
    sand = Step(verb="sand", grit=180, method="hand-block", how=frozenset({"sequence", "clean dust"}))
    plan = plan_of(replace(painted(), area_m2=2.1, route=route(cost(sand, money=2.0))))
    found = {item.cls: item for item in plan.buy}
    assert list(found) == [f"abrasive-sheet.P{grit}" for grit in (120, 150, 180)]
    assert found["abrasive-sheet.P120"].bought_count == 3.0
    shelf = Workshop(
        products=(Product(name="paper", kind="supply", cls="abrasive-sheet", grit=120, have_count=2.0),)
    )
    less = {item.cls: item for item in to_buy(KNOW, shelf, plan.groups)}
    assert less["abrasive-sheet.P120"].bought_count == 1.0
    assert less["abrasive-sheet.P150"].bought_count == 3.0
    assert less["abrasive-sheet.P120"].left.likely == pytest.approx(0.9)


def test_an_old_film_clogs_its_first_paper():
    bare = Step(verb="sand", grit=180, method="random-orbit", how=frozenset({"to bare", "sequence"}))
    needs = needs_of(KNOW, 1.0, cost(bare))
    coarse, next_ = needs["abrasive", "abrasive-disc.P80"], needs["abrasive", "abrasive-disc.P120"]
    assert coarse.likely > 2.0 * next_.likely


def test_agents_are_bought_by_the_tin_and_two_names_of_one_liquid_are_one():
    strip, wipe = Step(verb="strip", what="alcohol"), Step(verb="clean", what="alcohol-wipe")
    group = replace(painted(), area_m2=1.0, route=route(cost(strip, money=3.0), cost(wipe, money=0.5)))
    (alcohol,) = [item for item in plan_of(group).buy if item.kind in {"remover", "cleaner"}]
    assert (alcohol.cls, alcohol.buy, alcohol.bought_l) == ("alcohol", "1 L", 1.0)
    assert alcohol.need_l.likely == pytest.approx(0.41)
    assert alcohol.left.likely == pytest.approx(0.59)


def test_gear_is_what_steps_and_cautions_ask_for_once_for_all_pieces():
    oil = replace(
        painted(), area_m2=1.5, route=route(cost(Step(verb="topcoat", what="drying-oil", method="wipe")))
    )
    care = (Caution(id="oily-rags", steps=(), text="", source="common-practice"),
            Caution(id="dust", steps=(), text="", source="common-practice"))  # fmt: skip
    gear = gear_of(KNOW, Workshop(), (oil, painted()), care)
    assert {item.cls for item in gear} == {"water-brush", "cloth", "gloves", "dust-mask"}
    assert next(item for item in gear if item.cls == "cloth").need_count.likely == 3.0
    there = Workshop(products=(Product(name="b", kind="supply", cls="water-brush", have_count=1.0),))
    (brush,) = [item for item in gear_of(KNOW, there, (painted(),), ()) if item.cls == "water-brush"]
    assert (brush.buy, brush.money.likely) == ("", 0.0)
    plan = replace(plan_of(painted()), gear=gear)
    both = [item for item in listed(plan, plan).items if item.purchase.kind == "gear"]
    counts = {item.purchase.cls: item.purchase.need_count.likely for item in both}
    assert counts["water-brush"] == 1.0
    assert counts["cloth"] == 6.0


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
    assert "abrasive sheet P240" in abrasives


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
