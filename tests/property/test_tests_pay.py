"""Spot tests: averaged over its answers a test never costs more than its price, and a better one never gains less."""

from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from plan_pieces import facts, made, old, one_surface
from refettle.domain.piece import Look
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.pool import Pool, paying_tests, posterior, price_of_test
from refettle.planning.search import Bench
from refettle.planning.start import start

ROUTES = tuple((Step(verb="clean", what=what),) for what in ("soap-water", "naphtha", "mineral-spirits"))
NEAR = 1e-9
WORTH_SAYING = 1.0
MANY = settings(deadline=None)


def unsure_bench(know: Knowledge) -> Bench:
    """Return a table top of which nobody knows the finish, nor whether there is silicone."""
    surface = one_surface(
        "top",
        layers=(old(coats=2),),
        look=Look(kind="natural"),
        contamination=(("silicone", 0.4), ("wax", 0.8)),
    )
    return Bench(know, Workshop(), surface, start(know, made(surface), surface))


BENCH = unsure_bench(facts())
WORLDS = len(BENCH.begin.worlds)
TESTS = facts().ids("test")

costs = st.lists(st.floats(0.0, 500.0), min_size=WORLDS, max_size=WORLDS).map(tuple)


def shares(parts: list[float]) -> tuple[float, ...]:
    """Return weights that add up to 1."""
    return tuple(part / sum(parts) for part in parts)


beliefs = st.lists(st.floats(0.01, 1.0), min_size=WORLDS, max_size=WORLDS).map(shares)


@st.composite
def pools(draw: st.DrawFn) -> Pool:
    """Draw a pool: some routes, what each costs in each world, and a belief."""
    rows = draw(st.lists(costs, min_size=2, max_size=3))
    return Pool(routes=ROUTES[: len(rows)], costs=tuple(rows), weights=draw(beliefs))


def after(bench: Bench, pool: Pool, test: str) -> float:
    """Return the least expected cost after a test, averaged over its answers."""
    asked = [posterior(bench, test, pool.weights, yes=yes) for yes in (True, False)]
    return sum(chance * pool.value(belief) for chance, belief in asked)


def test_there_is_something_to_find_out() -> None:
    assert WORLDS >= 3
    marks = {mark for world in BENCH.begin.worlds for mark in world.marks}
    assert marks & set(facts().test("alcohol-drop").detects)


@MANY
@given(belief=beliefs, test=st.sampled_from(TESTS))
def test_beliefs_after_a_test_average_back_to_the_belief_before(belief: tuple[float, ...], test: str) -> None:
    asked = [posterior(BENCH, test, belief, yes=yes) for yes in (True, False)]
    assert sum(chance for chance, _ in asked) == pytest.approx(1.0)
    for world, before in enumerate(belief):
        assert sum(chance * then[world] for chance, then in asked) == pytest.approx(before)


@MANY
@given(pool=pools(), one=beliefs, other=beliefs, share=st.floats(0.0, 1.0))
def test_the_value_of_a_pool_is_concave_in_the_belief(
    pool: Pool, one: tuple[float, ...], other: tuple[float, ...], share: float
) -> None:
    mixed = tuple(share * a + (1.0 - share) * b for a, b in zip(one, other, strict=True))
    apart = share * pool.value(one) + (1.0 - share) * pool.value(other)
    assert pool.value(mixed) >= apart - NEAR * (1.0 + apart)


@MANY
@given(pool=pools(), test=st.sampled_from(TESTS))
def test_a_test_never_costs_more_than_its_price(pool: Pool, test: str) -> None:
    now = pool.value(pool.weights)
    assert after(BENCH, pool, test) <= now + NEAR * (1.0 + now)


@MANY
@given(pool=pools(), test=st.sampled_from(TESTS))
def test_a_test_never_saves_more_than_knowing_everything(pool: Pool, test: str) -> None:
    perfect = sum(w * min(row[i] for row in pool.costs) for i, w in enumerate(pool.weights))
    assert after(BENCH, pool, test) >= perfect - NEAR * (1.0 + perfect)


@MANY
@given(pool=pools(), test=st.sampled_from(TESTS), surer=st.floats(0.0, 1.0), rarer=st.floats(0.0, 1.0))
def test_better_error_rates_never_lower_the_gain(pool: Pool, test: str, surer: float, rarer: float) -> None:
    was = facts().test(test)
    assert was.yes_if_true >= was.yes_if_false
    better = replace(
        was,
        yes_if_true=was.yes_if_true + surer * (1.0 - was.yes_if_true),
        yes_if_false=was.yes_if_false * (1.0 - rarer),
    )
    know = replace(facts(), tests={**facts().tests, test: better})
    improved = Bench(know, BENCH.workshop, BENCH.surface, BENCH.begin)
    before = after(BENCH, pool, test)
    assert after(improved, pool, test) <= before + NEAR * (1.0 + before)


@MANY
@given(pool=pools())
def test_advice_gains_what_its_answers_save_less_its_price(pool: Pool) -> None:
    advice = paying_tests(BENCH, pool)
    assert len(advice) <= 2
    assert all(a.gain > WORTH_SAYING for a in advice)
    assert all(sum(chance for _, chance, _ in a.answers) == pytest.approx(1.0) for a in advice)
    if advice:
        first = advice[0]
        saved = pool.value(pool.weights) - after(BENCH, pool, first.test)
        assert first.gain == pytest.approx(saved - price_of_test(BENCH, first.test), abs=1e-6)
        assert first.price == pytest.approx(price_of_test(BENCH, first.test))


@MANY
@given(pool=pools())
def test_the_first_test_advised_gains_most_and_more_than_one_unit_of_money(pool: Pool) -> None:
    gains = {t: pool.value(pool.weights) - after(BENCH, pool, t) - price_of_test(BENCH, t) for t in TESTS}
    advice = paying_tests(BENCH, pool)
    best = max(gains.values())
    assume(abs(best - WORTH_SAYING) > NEAR)
    if best > WORTH_SAYING:
        assert advice[0].gain == pytest.approx(best, abs=1e-6)
    else:
        assert advice == ()
