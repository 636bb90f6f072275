"""Every fault card is whole, every fault has a card, and no rule knows a material by name."""

import ast
import re
from pathlib import Path
from typing import get_args

import pytest

from refettle.domain.state import Film, State
from refettle.files.tables import load_knowledge
from refettle.rules import RULES
from refettle.rules.card import Card, Level, Onset

SRC = Path(__file__).parents[2] / "src/refettle/rules"
KNOW = load_knowledge()
ONSETS = get_args(Onset)
LAYERS = {"wood", "below", "between", "film", "on top"}
MATERIALS = ("film", "wood", "remover", "cleaner")
CARRIERS = {"alcohol"}
"""Ids of materials that are also values of a property: a rule may compare what a coat is thinned with."""
SAMPLES = (
    State(stack=(Film(cls=KNOW.ids("film")[0], um=40, coats=2, ripe=300),), wood_um=500),
    State(),
)


@pytest.fixture(params=RULES, ids=lambda card: card.id)
def card(request: pytest.FixtureRequest) -> Card:
    found = request.param
    assert isinstance(found, Card)
    return found


def test_no_two_cards_share_an_id() -> None:
    ids = [card.id for card in RULES]
    assert len(set(ids)) == len(ids)


def test_an_id_is_made_of_words(card: Card) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)+", card.id)


def test_a_card_says_all_that_is_asked_of_it(card: Card) -> None:
    assert KNOW.has("fault", card.fault)
    assert card.mechanism.strip()
    assert card.layer in LAYERS
    assert card.signs
    assert all(len(sign.split()) > 1 for sign in card.signs)
    assert card.levels
    assert len(set(card.levels)) == len(card.levels)
    assert set(card.levels) <= set(get_args(Level))
    assert card.judge.__doc__


def test_what_shows_first_comes_before_what_shows_last(card: Card) -> None:
    earliest, latest = card.onset
    assert ONSETS.index(earliest) <= ONSETS.index(latest)


def test_its_sources_are_on_the_list(card: Card) -> None:
    assert card.sources
    assert set(card.sources) <= set(KNOW.sources)


@pytest.mark.parametrize("state", SAMPLES, ids=["coated", "bare"])
def test_its_effect_leaves_a_surface_that_can_be_worked_on(card: Card, state: State) -> None:
    after = card.effect(state)
    assert isinstance(after, State)
    assert len(after.stack) == len(state.stack)
    assert all(0 <= film.hold <= 100 and film.ripe >= 0 and film.um >= 0 for film in after.stack)
    assert 0 <= after.wood_um <= state.wood_um
    assert all(KNOW.has("damage", damage) for damage in after.damage)
    assert hash(after) is not None


def test_every_fault_that_is_known_has_a_card() -> None:
    assert set(KNOW.ids("fault")) == {card.fault for card in RULES}


@pytest.mark.parametrize("path", sorted(SRC.glob("*.py")), ids=lambda path: path.stem)
def test_rules_read_properties_and_name_no_material(path: Path) -> None:
    names = {id_ for kind in MATERIALS for id_ in KNOW.ids(kind)} - CARRIERS
    found = {
        f"{path.name}:{node.lineno}: {node.value}"
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and node.value in names
    }
    assert not found
