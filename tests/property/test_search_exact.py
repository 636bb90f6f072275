"""The search finds what trying every offered route finds, and never believes a route dearer than it is."""

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from planning_groups import WORKSHOP, PlainAccount, bench_of, know, menu_of, surfaces
from refettle.domain.piece import Surface
from refettle.planning.cost import AIMS, BALANCED, Aim
from refettle.planning.engine import Engine, Memory, play
from refettle.planning.offers import STAGES
from refettle.planning.search import Bench, Search

FEW = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
SOME = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
SMALL = frozenset({
    "shellac-dewaxed", "shellac-primer", "waterborne-polyurethane", "alkyd-enamel", "chalk-paint", "water-dye",
    "gel-stain", "hardwax-oil", "paste-wax",
})  # fmt: skip


def weights(bench: Bench) -> tuple[float, ...]:
    return tuple(world.weight for world in bench.begin.worlds)


def small_menu_bans(data: st.DataObject) -> frozenset[str]:
    """All films but a few, and all removers and cleaners but two of each."""
    kept = data.draw(st.sets(st.sampled_from(sorted(SMALL)), min_size=3, max_size=5))
    kept |= set(data.draw(st.permutations(("strong-solvent", "mild-remover", "alcohol", "heat-gun")))[:1])
    kept |= {"mineral-spirits", "water-rinse", "thinner-wipe", "alkaline-degreaser"}
    known = (*know().ids("film"), *know().ids("remover"), *know().ids("cleaner"))
    return frozenset(known) - kept


@FEW
@given(one=surfaces(), aim=st.sampled_from(AIMS), data=st.data())
def test_the_route_found_costs_what_the_cheapest_of_all_offered_routes_costs(
    one: Surface, aim: Aim, data: st.DataObject
):
    menu = menu_of(one, small_menu_bans(data))
    bench = bench_of(one)
    found = Search(bench, menu, weights(bench), aim).run()
    tried = PlainAccount(one, menu, aim).cheapest()
    assert found.exact
    assert found.cost == pytest.approx(tried, rel=1e-9)


@FEW
@given(one=surfaces(), aim=st.sampled_from(AIMS))
def test_a_plain_account_of_the_steps_found_gives_the_cost_that_was_minimised(one: Surface, aim: Aim):
    menu, bench = menu_of(one), bench_of(one)
    found = Search(bench, menu, weights(bench), aim).run()
    assume(found.steps)
    account = PlainAccount(one, menu, aim)
    place = account.first()
    for step in found.steps:
        place = account.after(place, step)
    assert account.end(place) == pytest.approx(found.cost, rel=1e-9)


@SOME
@given(one=surfaces(), aim=st.sampled_from(AIMS), data=st.data())
def test_no_bound_on_the_way_lies_above_what_the_way_costs_in_the_end(
    one: Surface, aim: Aim, data: st.DataObject
):
    bench, menu = bench_of(one), menu_of(one)
    Search(bench, menu, weights(bench)).run(
        most=data.draw(st.integers(0, 30))
    )  # so that there is much to remember
    search = Search(bench, menu, weights(bench), aim)
    node = search._root()
    ahead = search._ahead(node)
    believed: list[tuple[str, float]] = []
    while node.stage < len(STAGES):
        stage = STAGES[node.stage]
        offer = data.draw(st.sampled_from(search._offers(node.stage, node.slots)))
        least = node.cost + search._at_least(node, offer)
        believed.append((stage, least + search._after(ahead, node, offer, node.charged, judged=False)))
        judged = 0
        while True:
            made = search._judge(ahead, node, offer, judged)
            if made is None:
                return
            least, then, pending, judged = made
            believed.append((stage, least))
            if pending is None:
                node = then
                break
    for stage, least in believed:
        assert least <= node.cost + 1e-7, stage


@pytest.fixture(scope="module")
def memory() -> Memory:
    """One memory for all examples: the more it holds, the more there is to be wrong about."""
    return Memory(know())


@SOME
@given(one=surfaces(), data=st.data())
def test_remembered_answers_are_those_that_the_rules_give(one: Surface, data: st.DataObject, memory: Memory):
    bench = bench_of(one)
    menu = menu_of(one)
    zones = tuple(ground.zone for ground in bench.begin.grounds)
    zone = data.draw(st.integers(0, len(zones) - 1))
    ground = bench.begin.grounds[zone]
    engine = Engine(know=know(), ground=ground, air=WORKSHOP.air_likely, memory=memory)
    states = list(bench.begin.worlds[0].states)
    for stage in STAGES:
        for step in data.draw(st.sampled_from(menu.offers(stage, states, zones))):
            expected = play(know(), ground, states[zone], step, WORKSHOP.air_likely)
            number, hits = engine.play(engine.state_id(states[zone]), step)
            assert (engine.state(number), hits) == expected
            states = [
                play(know(), g, s, step, WORKSHOP.air_likely)[0]
                for g, s in zip(bench.begin.grounds, states, strict=True)
            ]


@SOME
@given(one=surfaces(), data=st.data())
def test_a_route_under_its_own_weighting_is_no_dearer_than_the_balanced_one(
    one: Surface, data: st.DataObject
):
    bench, menu = bench_of(one), menu_of(one)
    balanced = Search(bench, menu, weights(bench), BALANCED).run()
    assume(balanced.steps)
    aim = data.draw(st.sampled_from(AIMS[1:]))
    search = Search(bench, menu, weights(bench), aim)
    assert search.run().cost <= search.cost_of(balanced.steps) + 1e-7
