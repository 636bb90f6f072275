"""What a person may rely on when a way is searched for."""

from dataclasses import replace

import pytest

from planning_groups import HOLLOWS, WORKSHOP, begin, bench_of, know, menu_of, surface
from refettle.domain.piece import Look, OldLayer, Surface
from refettle.planning.cost import AIMS
from refettle.planning.engine import Memory, play
from refettle.planning.goal import reached
from refettle.planning.search import Bench, Found, Search, find

SHELLAC = (OldLayer(guesses=(("shellac-waxed", 1.0),), coats=3),)
UNKNOWN_CLEAR = (OldLayer(kind="clear"),)


def search(one: Surface, banned: frozenset[str] = frozenset(), most: int = 2500) -> Found:
    bench = bench_of(one, 1935)
    return Search(bench, menu_of(one, banned), tuple(w.weight for w in bench.begin.worlds)).run(most)


LOOKS = ("natural", "stained", "opaque", "keep", "oiled", "waxed", "bare")


@pytest.mark.parametrize("kind", LOOKS)
def test_the_way_found_ends_in_the_look_that_was_asked_for(kind: str):
    one = surface(layers=SHELLAC, contamination=(("wax", 0.8),), look=Look(kind=kind, colour="white"))
    found = search(one)
    start = begin(one, 1935)
    state = start.worlds[0].states[0]
    for step in found.steps:
        state, _ = play(know(), start.grounds[0], state, step, WORKSHOP.air_likely)
    assert found.steps
    assert reached(know(), start.grounds[0], one.look or Look(kind=kind), state)


def test_every_way_ends_in_use():
    one = surface(layers=SHELLAC, look=Look(kind="natural"))
    assert search(one).steps[-1].verb == "use"


def test_a_banned_class_remover_or_verb_is_not_used_and_the_way_is_no_cheaper():
    one = surface(layers=UNKNOWN_CLEAR, look=Look(kind="natural"))
    free = search(one)
    for step in free.steps:
        for word in {step.what, step.verb} & {*know().ids("film"), *know().ids("remover"), "sand"}:
            found = search(one, frozenset({word}))
            assert all(word not in {s.what, s.verb} for s in found.steps)
            assert found.cost >= free.cost


def test_a_clean_bare_surface_is_not_washed_nor_stripped():
    found = search(surface(look=Look(kind="natural")))
    assert not [step for step in found.steps if step.verb in {"clean", "strip", "scrape", "rinse"}]


def test_a_look_that_no_material_left_can_make_has_no_way_and_says_so_exactly():
    one = surface(layers=SHELLAC, look=Look(kind="opaque", colour="white"))
    paints = frozenset(cls for cls in know().ids("film") if know().film(cls).opaque)
    found = search(one, paints)
    assert found.steps == ()
    assert found.cost == float("inf")
    assert found.exact


def test_a_search_cut_short_says_so_and_its_bound_lies_below_the_best_cost():
    one = surface(
        layers=UNKNOWN_CLEAR, contamination=(("wax", 0.8),), look=Look(kind="opaque", colour="white")
    )
    cut, whole = search(one, most=8), search(one)
    assert not cut.exact
    assert whole.exact
    assert 0.0 < cut.bound <= whole.cost <= cut.cost


def test_the_same_surface_gives_the_same_plan_however_much_is_remembered():
    one = surface(layers=UNKNOWN_CLEAR, zones=HOLLOWS, relief="carved", look=Look(kind="stained"))
    other = surface(wood="maple", layers=SHELLAC, look=Look(kind="opaque", colour="white"))
    alone = search(one)
    memory = Memory(know())
    for before in (other, one):
        bench = Bench(know(), WORKSHOP, before, begin(before, 1935), memory=memory)
        weights = tuple(w.weight for w in bench.begin.worlds)
        for aim in AIMS:
            Search(bench, menu_of(before), weights, aim).run()
    bench = Bench(know(), WORKSHOP, one, begin(one, 1935), memory=memory)
    again = Search(bench, menu_of(one), tuple(w.weight for w in bench.begin.worlds)).run()
    assert again.steps == alone.steps
    assert again.cost == alone.cost


def test_the_order_in_which_surfaces_are_planned_does_not_matter():
    tops = (
        surface(layers=SHELLAC, contamination=(("grime", 0.8),), look=Look(kind="natural")),
        surface(
            wood="pine-knotty",
            layers=(OldLayer(kind="paint"),),
            soundness="flaking",
            look=Look(kind="opaque"),
        ),
        surface(wood="teak", zones=HOLLOWS, relief="turned", layers=UNKNOWN_CLEAR, look=Look(kind="oiled")),
    )

    def plans(order: tuple[Surface, ...]) -> dict[str, tuple[object, ...]]:
        memory = Memory(know())
        made = {}
        for one in order:
            bench = Bench(know(), WORKSHOP, one, begin(one, 1935), memory=memory)
            found = Search(bench, menu_of(one), tuple(w.weight for w in bench.begin.worlds)).run()
            made[one.wood] = (found.steps, found.cost)
        return made

    assert plans(tops) == plans(tops[::-1])


def test_a_route_found_costs_the_same_when_it_is_priced_by_itself():
    one = surface(layers=UNKNOWN_CLEAR, value="good", look=Look(kind="opaque", colour="white"))
    bench = bench_of(one, 1935)
    asked = Search(bench, menu_of(one), tuple(w.weight for w in bench.begin.worlds))
    found = asked.run()
    assert asked.cost_of(found.steps) == pytest.approx(found.cost)


def test_losing_an_original_worth_keeping_makes_a_painted_look_dearer_by_that_worth():
    plain = surface(layers=SHELLAC, look=Look(kind="opaque", colour="white"))
    prized = replace(plain, value="good")
    assert search(prized).cost - search(plain).cost == pytest.approx(40.0 * plain.area_m2)


def test_find_is_a_search_on_a_bench_of_its_own():
    one = surface(layers=SHELLAC, look=Look(kind="waxed"))
    found = find(know(), WORKSHOP, one, begin(one, 1935), Look(kind="waxed"))
    assert found == search(one)
