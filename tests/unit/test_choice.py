"""One way per group: what is shared once, bought whole and agreed on, with and without the solver."""

import subprocess
import sys
from itertools import product

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from refettle.solver.choice import (
    Curve,
    Problem,
    Way,
    WholeWay,
    choose,
    cost_of,
    in_whole_numbers,
    total,
)

TINS = Curve(steps=((0.2, 0.0), (0.7, 10.0), (1.2, 18.0), (2.2, 30.0)))
PAINT, OIL = ("film", "paint"), ("film", "oil")
BRUSH = ("paint", "paint")


def way(own: float, paint: float = 0.0, brush: float = 0.0, body: str = "") -> Way:
    return Way(
        own=own,
        sums=((PAINT, paint),) if paint else (),
        once=((BRUSH, brush),) if brush else (),
        agrees=(("body", body),) if body else (),
    )


def test_what_is_shared_is_paid_once_by_its_dearest_user():
    problem = Problem(pools=((way(1.0, brush=3.0),), (way(2.0, brush=5.0),)))
    assert cost_of(problem, (0, 0)) == (8.0, 0)


def test_two_halves_of_a_tin_cost_one_tin():
    problem = Problem(pools=((way(0.0, paint=0.3),), (way(0.0, paint=0.35),)), curves=((PAINT, TINS),))
    assert choose(problem).cost == 10.0


def test_what_is_on_the_shelf_costs_nothing():
    problem = Problem(
        pools=((way(0.0, paint=0.1), way(9.0)), (way(0.0, paint=0.1), way(9.0))), curves=((PAINT, TINS),)
    )
    assert choose(problem).picks == (0, 0)
    assert choose(problem).cost == 0.0


def test_a_group_takes_the_dearer_way_where_that_saves_a_tin():
    alone = (way(5.0, paint=0.6), way(8.0))
    problem = Problem(pools=(alone, (way(0.0, paint=0.6),)), curves=((PAINT, TINS),))
    chosen = choose(problem)
    assert chosen.picks == (1, 0)
    assert chosen.cost == 18.0


def test_parts_of_a_look_agree_though_it_costs_more():
    pools = ((way(1.0, body="a"), way(50.0, body="b")), (way(90.0, body="a"), way(2.0, body="b")))
    chosen = choose(Problem(pools=pools))
    assert (chosen.picks, chosen.splits) == ((1, 1), 0)


def test_where_parts_cannot_agree_they_split_as_little_as_they_can():
    pools = ((way(1.0, body="a"),), (way(1.0, body="b"),), (way(1.0, body="c"), way(9.0, body="b")))
    chosen = choose(Problem(pools=pools))
    assert (chosen.picks, chosen.splits) == ((0, 0, 1), 1)


def test_a_way_without_an_answer_agrees_with_all():
    pools = ((way(4.0), way(9.0, body="a")), (way(1.0, body="b"),))
    for steps in (0, 1000):
        assert choose(Problem(pools=pools), steps).picks == (0, 0)


@pytest.mark.parametrize(
    "steps", [(), ((0.0, 1.0),), ((1.0, 0.0), (0.5, 2.0)), ((1.0, 0.0), (2.0, 3.0), (3.0, 2.0))]
)
def test_a_curve_that_falls_or_begins_dear_is_refused(steps: tuple[tuple[float, float], ...]):
    with pytest.raises(ValueError, match="begins at no cost and rises"):
        Curve(steps=steps)


def test_nothing_to_choose_from_costs_nothing():
    assert choose(Problem(pools=())).picks == ()


money = st.integers(0, 4000).map(lambda n: n / 100.0)
litres = st.integers(0, 90).map(lambda n: n / 100.0)


@st.composite
def ways(draw: st.DrawFn) -> Way:
    sums = [(key, draw(litres)) for key in (PAINT, OIL) if draw(st.booleans())]
    once = [(("coat", name), draw(money)) for name in "xyz" if draw(st.booleans())]
    agrees = [(q, draw(st.sampled_from("ab"))) for q in ("body", "ground") if draw(st.booleans())]
    return Way(own=draw(money), sums=tuple(sums), once=tuple(once), agrees=tuple(agrees))


@st.composite
def curves(draw: st.DrawFn) -> Curve:
    steps = [(draw(litres), 0.0)]
    for _ in range(draw(st.integers(1, 4))):
        steps.append((steps[-1][0] + draw(litres) + 0.05, steps[-1][1] + draw(money)))
    return Curve(steps=(*steps, (99.0, steps[-1][1] + draw(money))))


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    pools = draw(st.lists(st.lists(ways(), min_size=1, max_size=4).map(tuple), min_size=1, max_size=4))
    return Problem(pools=tuple(pools), curves=((PAINT, draw(curves())), (OIL, draw(curves()))))


def _place(pool: tuple[WholeWay, ...], number: int) -> int:
    """Return the place of a way among those that no other beats."""
    return next(place for place, way in enumerate(pool) if way.number == number)


TWO_TIES = Problem(
    pools=(
        (way(0.01, paint=0.01), way(0.0, paint=0.42), way(0.01)),
        (way(0.01, paint=0.01), way(0.0, paint=0.02)),
    ),
    curves=((PAINT, Curve(steps=((0.0, 0.0), (0.43, 0.0), (99.0, 0.01)))), (OIL, TINS)),
)
"""Two choices cost the same and lie as early in their pools."""


@example(TWO_TIES)
@settings(max_examples=150, deadline=None)
@given(problems())
def test_the_choice_equals_brute_force_one_by_one_and_solved(problem: Problem):
    every = product(*(range(len(pool)) for pool in problem.pools))
    splits, cost = min((cost_of(problem, picks)[::-1] for picks in every), key=lambda row: (row[0], row[1]))
    both = [choose(problem, steps) for steps in (0, 10**6)]
    whole = in_whole_numbers(problem)
    counted, solved = (
        total(whole, tuple(_place(pool, pick) for pool, pick in zip(whole.pools, chosen.picks, strict=True)))
        for chosen in both
    )
    assert counted == solved  # ties included: the places of both add up to the same
    for chosen in both:
        assert chosen.proved
        assert (chosen.splits, chosen.cost) == (splits, pytest.approx(cost, abs=0.02))
        assert cost_of(problem, chosen.picks) == (chosen.cost, chosen.splits)


@settings(max_examples=60, deadline=None)
@given(problems(), st.integers(1, 100))
def test_more_on_the_shelf_never_raises_the_cost(problem: Problem, more: int):
    (key, curve), other = problem.curves
    fuller = Curve(steps=tuple((upto + more / 100.0, cost) for upto, cost in curve.steps))
    before = choose(problem)
    after = choose(Problem(pools=problem.pools, curves=((key, fuller), other)))
    assert (after.splits, round(after.cost, 6)) <= (before.splits, round(before.cost, 6) + 0.02)


def cheap_or_shared(group: int, number: int) -> Way:
    """Return a way that uses one of five materials."""
    name = f"c{(group + number) % 5}"
    own = 3.0 + (7 * group + 5 * number) % 11
    return Way(own=own, sums=((("film", name), 0.11),), once=((("coat", name), 4.0),))


def test_a_large_choice_repeats_itself_and_is_proved():
    pools = tuple(tuple(cheap_or_shared(g, w) for w in range(8)) for g in range(12))
    problem = Problem(pools=pools, curves=tuple((("film", f"c{n}"), TINS) for n in range(5)))
    first = choose(problem)
    assert first.choices == 8**12
    assert first.proved
    assert choose(problem) == first


def test_the_solver_is_not_loaded_for_a_small_choice():
    code = (
        "import sys; from refettle.solver.choice import *; choose(Problem(pools=((Way(own=1.0),), (Way(own=2.0),))));"
        "sys.exit('ortools' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
