"""The choice for a whole piece on small drawn pieces: never dearer than look by look, never a look split in two."""

from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from greedy_choice import greedy
from plan_pieces import LOOKS, facts, made, surfaces, workshops
from refettle.domain.piece import Piece, Product
from refettle.domain.workshop import Workshop
from refettle.planning.engine import Memory
from refettle.services.cases import first_try, share_of
from refettle.services.grouping import group_surfaces
from refettle.services.pools import option_of, pools_of, problem_of
from refettle.services.settled import settle
from refettle.solver.choice import choose, cost_of

BOUGHT = ("oil-polyurethane", "shellac-dewaxed", "acrylic-paint", "waterborne-polyurethane")


@st.composite
def alike(draw: st.DrawFn) -> Piece:
    """Draw a piece of two or three surfaces that are to look the same."""
    look = draw(st.sampled_from([look for look in LOOKS if look is not None]))
    names = ("top", "side", "back")[: draw(st.integers(2, 3))]
    return made(*(replace(draw(surfaces(name)), look=look) for name in names))


@settings(max_examples=8, deadline=None)
@given(alike(), workshops)
def test_it_never_costs_more_than_look_by_look(piece: Piece, workshop: Workshop):
    know, groups = facts(), group_surfaces(piece.surfaces)
    memory = Memory(know)
    tries = [
        first_try(know, piece, workshop, g, setup_share=share_of(g, groups), memory=memory) for g in groups
    ]
    routed = [tried for tried in tries if tried[1].steps]
    assume(routed)
    pools = pools_of(routed)
    before = tuple((option_of(case, found).way,) for case, found in greedy(routed))
    plain = problem_of(know, workshop, pools)
    cost, splits = cost_of(replace(plain, pools=before), (0,) * len(before))
    chosen = choose(plain)
    assert (chosen.splits, chosen.cost) <= (splits, cost + 0.02)
    assert sum(pool.bound for pool in pools) <= chosen.cost + 0.02


@settings(max_examples=8, deadline=None)
@given(alike(), workshops)
def test_parts_of_a_look_are_one_where_each_can_be_done_alike(piece: Piece, workshop: Workshop):
    settled = settle(facts(), piece, workshop, group_surfaces(piece.surfaces))
    answers: dict[str, set[str]] = {}
    for case, found in settled.tries:
        if found.steps:
            for question, answer in option_of(case, found).way.agrees:
                answers.setdefault(question, set()).add(answer)
    assert settled.choice.splits == sum(len(said) - 1 for said in answers.values())
    assert 0.0 <= settled.choice.gap < 1.0


@settings(max_examples=8, deadline=None)
@given(alike(), st.sampled_from(BOUGHT))
def test_a_tin_more_on_the_shelf_never_raises_the_cost(piece: Piece, cls: str):
    groups = group_surfaces(piece.surfaces)
    empty = Workshop(products=(Product(name="tin", cls=cls, size_l=0.75),))
    full = Workshop(products=(Product(name="tin", cls=cls, size_l=0.75, have_l=0.75),))
    before, after = (settle(facts(), piece, shop, groups).choice for shop in (empty, full))
    assert after.splits <= before.splits
    assert after.splits < before.splits or after.cost <= before.cost + 0.02


def test_the_same_piece_is_chosen_the_same_way_twice():
    piece = made(*(replace(s, look=LOOKS[1]) for s in made_surfaces()))
    groups = group_surfaces(piece.surfaces)
    first, second = (settle(facts(), piece, Workshop(), groups) for _ in range(2))
    assert first.choice == second.choice
    assert [found.steps for _, found in first.tries] == [found.steps for _, found in second.tries]
    assert first.choice.cost == pytest.approx(second.choice.cost)


def made_surfaces():
    from plan_pieces import OLD_FINISHES, one_surface  # noqa: PLC0415

    return [
        one_surface("top", look=None, layers=OLD_FINISHES[1]),
        one_surface("side", look=None, layers=OLD_FINISHES[5], wood="pine"),
        one_surface("back", look=None, layers=OLD_FINISHES[0], wood="beech"),
    ]
