"""A pool of routes for one surface: what each would cost in each world, and which test then pays."""

from dataclasses import dataclass

from refettle.domain.plan import TestAdvice
from refettle.domain.step import Step
from refettle.planning.cost import step_amounts
from refettle.planning.offers import Menu
from refettle.planning.search import Bench, Found, Search
from refettle.planning.start import answer_chance

_FEW = 4
_WORTH_SAYING = 1.0
_WORTH_ITS_PRICE = 0.5
"""Gain, as a share of a test's own price [1], below which it is not asked for; judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pool:
    """
    Routes and their cost per world.

    Attributes
    ----------
    routes
        Step sequences, the first being the one for the worlds as believed.
    costs
        Per route the cost in each world [money].
    weights
        Belief per world [1].
    """

    routes: tuple[tuple[Step, ...], ...]
    costs: tuple[tuple[float, ...], ...]
    weights: tuple[float, ...]

    def value(self, weights: tuple[float, ...]) -> float:
        """Return the least expected cost under a belief [money]."""
        return min(sum(w * c for w, c in zip(weights, row, strict=True)) for row in self.costs)

    def best(self, weights: tuple[float, ...]) -> tuple[Step, ...]:
        """Return the route of least expected cost under a belief."""
        sums = [sum(w * c for w, c in zip(weights, row, strict=True)) for row in self.costs]
        return self.routes[sums.index(min(sums))]


def cost_in_worlds(bench: Bench, menu: Menu, steps: tuple[Step, ...]) -> tuple[float, ...]:
    """Return the cost of a route in each world, taken as certain [money]."""
    count = len(bench.begin.worlds)
    costs = []
    for world in range(count):
        weights = tuple(1.0 if i == world else 0.0 for i in range(count))
        search = Search(bench, menu, weights)
        cost = search.cost_of(steps)
        costs.append(cost)
    return tuple(costs)


def build_pool(bench: Bench, menu: Menu, found: Found) -> Pool:
    """
    Return the pool of a surface: the route found, and the best route of each likely world.

    Notes
    -----
    The least expected cost over a fixed pool is concave in the belief, so that a test, averaged over
    its answers, can never cost more than its price.
    """
    weights = tuple(w.weight for w in bench.begin.worlds)
    routes = [found.steps] if found.steps else []
    if len(weights) > 1:
        heavy = sorted(range(len(weights)), key=lambda i: -weights[i])[:_FEW]
        for i in heavy:
            if weights[i] < 0.05:
                continue
            alone = tuple(1.0 if j == i else 0.0 for j in range(len(weights)))
            other = Search(bench, menu, alone).run(most=300)
            if other.steps and other.steps not in routes:
                routes.append(other.steps)
    costs = tuple(cost_in_worlds(bench, menu, steps) for steps in routes)
    return Pool(routes=tuple(routes), costs=costs, weights=weights)


def price_of_test(bench: Bench, test: str) -> float:
    """Return what a test costs in time and material [money]."""
    facts = bench.know.test(test)
    amounts = step_amounts(
        bench.know,
        bench.workshop,
        bench.surface,
        Step(verb="test", what=test),
        on_bare=False,
        recess_share=0.0,
    )
    delay = facts.wait_h / 24.0 * bench.workshop.day_worth
    return amounts.minutes.likely / 60.0 * bench.workshop.hour_worth + amounts.money.likely + delay


def paying_tests(bench: Bench, pool: Pool, *, skip: frozenset[str] = frozenset()) -> tuple[TestAdvice, ...]:
    """
    Return the spot tests that save at least one unit of money more than they cost, best first; at most two.

    Notes
    -----
    Value = price + Σ p(answer) · least expected cost after it. A second test is weighed on top of the
    first: each answer of the first gives a belief, under which the second is tried.
    """
    if len(pool.routes) < 2 or len(pool.weights) < 2:
        return ()
    now = pool.value(pool.weights)
    perfect = sum(
        w * min(row[i] for row in pool.costs) for i, w in enumerate(pool.weights)
    )  # fmt: skip
    answered = {test for test, _ in bench.surface.tested}
    names = [t for t in bench.know.ids("test") if t not in skip | answered and _divides(bench, t)]
    singles = []
    for test in names:
        price = price_of_test(bench, test)
        if now - perfect <= price:
            continue
        after, answers = _after(bench, pool, test, pool.weights)
        singles.append((now - after - price, test, price, answers))
    singles.sort(key=lambda row: (-row[0], row[1]))
    if not singles or not _pays(singles[0][0], singles[0][2]):
        return ()
    gain, first, price, answers = singles[0]
    advice = [_advice(bench, first, gain, price, answers)]
    second = _second(bench, pool, first, names)
    if second is not None and _pays(second.gain, second.price):
        advice.append(second)
    return tuple(advice)


def _pays(gain: float, price: float) -> bool:
    """Return whether a test gains enough over its price to be asked for."""
    return gain > max(_WORTH_SAYING, _WORTH_ITS_PRICE * price)


def _divides(bench: Bench, test: str) -> bool:
    """Return whether a test speaks for some readings of the surface and not for others."""
    detects = bench.know.test(test).detects
    spoken = {any(mark in world.marks for mark in detects) for world in bench.begin.worlds}
    return len(spoken) > 1


def _second(bench: Bench, pool: Pool, first: str, names: list[str]) -> TestAdvice | None:
    """Return the best second test after a first, or None."""
    best: TestAdvice | None = None
    for test in names:
        if test == first:
            continue
        price = price_of_test(bench, test)
        gain = -price
        branches = []
        for yes in (True, False):
            chance, belief = posterior(bench, first, pool.weights, yes=yes)
            if chance <= 0:
                continue
            after, found = _after(bench, pool, test, belief)
            gain += chance * (pool.value(belief) - after)
            branches.append((chance, found))
        if best is None or gain > best.gain:
            best = _advice(bench, test, gain, price, _over_both(branches))
    return best


def _over_both(
    branches: list[tuple[float, tuple[tuple[str, float, str], ...]]],
) -> tuple[tuple[str, float, str], ...]:
    """Return the answers of a second test over both answers of the first, alike ones together."""
    both: dict[tuple[str, str], float] = {}
    for before, answers in branches:
        for answer, chance, words in answers:
            both[answer, words] = both.get((answer, words), 0.0) + before * chance
    order = sorted(both, key=lambda key: (key[0] != "yes", -both[key]))
    return tuple((answer, both[answer, words], words) for answer, words in order)


def posterior(
    bench: Bench, test: str, weights: tuple[float, ...], *, yes: bool
) -> tuple[float, tuple[float, ...]]:
    """Return the chance of an answer [1] and the belief after it."""
    likely = [
        w * answer_chance(bench.know, test, yes, world.marks)
        for w, world in zip(weights, bench.begin.worlds, strict=True)
    ]
    total = sum(likely)
    if total <= 0:
        return 0.0, weights
    return total, tuple(v / total for v in likely)


def _after(
    bench: Bench, pool: Pool, test: str, weights: tuple[float, ...]
) -> tuple[float, tuple[tuple[str, float, str], ...]]:
    """Return the expected cost after a test and, per answer, its chance and what would then be done."""
    total = 0.0
    branches = []
    for yes in (True, False):
        chance, belief = posterior(bench, test, weights, yes=yes)
        if chance <= 0:
            continue
        total += chance * pool.value(belief)
        branches.append(("yes" if yes else "no", chance, pool.best(belief)))
    close = len({route_words(bench, steps) for _, _, steps in branches}) < len(branches)
    answers = ((answer, chance, route_words(bench, steps, close=close)) for answer, chance, steps in branches)
    return total, tuple(answers)


def _advice(
    bench: Bench, test: str, gain: float, price: float, answers: tuple[tuple[str, float, str], ...]
) -> TestAdvice:
    """Return the advice for a test."""
    name = bench.know.test(test).name
    same = len({words for _, _, words in answers}) < 2
    why = f"{name}: its answer decides what to do" if not same else f"{name}: saves a wrong start"
    return TestAdvice(test=test, gain=gain, price=price, answers=answers, why=why)


_SHORT = {
    "clean": "wash", "strip": "strip", "sand": "sand", "scuff": "scuff", "prime": "prime", "seal": "seal",
    "stain": "stain", "paint": "paint", "topcoat": "coat", "wax": "wax", "revive": "revive", "repair": "mend",
    "bleach": "bleach", "scrape": "scrape", "condition": "condition", "tone": "tone", "fill_pores": "fill pores",
}  # fmt: skip


def _closer(bench: Bench, step: Step, short: str) -> str:
    """Return a step in a few words with what it is done with, for routes that differ in that alone."""
    if step.verb == "clean":
        return f"{short} with {bench.know.cleaner(step.what).name}"
    if step.verb == "repair":
        return bench.know.repair(step.what).name
    return f"{short} P{step.grit}" if step.grit else short


def route_words(bench: Bench, steps: tuple[Step, ...], *, close: bool = False) -> str:
    """Return a route in a few words: wash → scuff → prime (dewaxed shellac) → paint; looked at closely, with what."""
    words: list[str] = []
    for step in steps:
        short = _SHORT.get(step.verb)
        if short is None:
            continue
        if step.is_coat:
            coats = f"{step.coats} × " if step.coats > 1 else ""
            short = f"{coats}{bench.know.film(step.what).name}"
        elif step.verb == "strip":
            short = f"strip with {bench.know.remover(step.what).name}"
        elif close:
            short = _closer(bench, step, short)
        if not words or words[-1] != short:
            words.append(short)
    return " → ".join(words)
