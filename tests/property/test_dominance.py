"""
A surface in a better state never has the higher chance of a fault.

The search does not prune on these orders: a cause below 5 % is charged anew by each coat that meets it, so that
of two unequal states the worse one can by accident end a little cheaper. Rules must keep the orders all the same.
"""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planning_groups import WORKSHOP, begin, know, menu_of, surfaces
from refettle.domain.ground import Ground
from refettle.domain.piece import Surface
from refettle.domain.state import State, changed
from refettle.domain.step import Step
from refettle.planning.engine import play
from refettle.planning.offers import STAGES

SOME = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


def chances(ground: Ground, state: State, step: Step) -> dict[tuple[str, str], float]:
    _, hits = play(know(), ground, state, step, WORKSHOP.air_likely)
    return {(hit.fault, hit.cause): hit.chance for hit in hits}


def states_on_the_way(one: Surface, data: st.DataObject) -> list[tuple[Ground, State, Step]]:
    """States of the first zone with the steps that meet them, along a route drawn by lot."""
    start, menu = begin(one), menu_of(one)
    zones = tuple(ground.zone for ground in start.grounds)
    states = list(start.worlds[0].states)
    met = []
    for stage in STAGES:
        for step in data.draw(st.sampled_from(menu.offers(stage, states, zones))):
            met.append((start.grounds[0], states[0], step))
            states = [
                play(know(), ground, state, step, WORKSHOP.air_likely)[0]
                for ground, state in zip(start.grounds, states, strict=True)
            ]
    return met


@SOME
@given(one=surfaces(), data=st.data())
def test_a_cleaner_surface_never_has_the_higher_chance(one: Surface, data: st.DataObject):
    for ground, state, step in states_on_the_way(one, data):
        for dirt, percent in state.on_top:
            cleaner = state.with_soil(dirt, data.draw(st.integers(0, percent)))
            worse = chances(ground, state, step)
            for cause, chance in chances(ground, cleaner, step).items():
                assert chance <= worse.get(cause, 0.0) + 1e-9, (cause, dirt, step)


@SOME
@given(one=surfaces(), data=st.data())
def test_more_wood_left_never_has_the_higher_chance(one: Surface, data: st.DataObject):
    for ground, state, step in states_on_the_way(one, data):
        thicker = changed(state, wood_um=state.wood_um + data.draw(st.integers(1, 2000)))
        worse = chances(ground, state, step)
        for cause, chance in chances(ground, thicker, step).items():
            assert chance <= worse.get(cause, 0.0) + 1e-9, (cause, step)
