"""One way per group for a whole piece: own costs, what is shared once, what is bought whole, what must agree."""

from dataclasses import dataclass
from itertools import pairwise
from math import prod

Key = tuple[str, str]
"""What is shared or bought: kind and name."""
STEPS = 20_000
"""Steps of our own count before a solver is asked, as many as take about as long as loading it [1]."""
_ROUNDS = 4
MILLI = 1000
_MICRO = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """
    One way of one group.

    Attributes
    ----------
    own
        Cost without what is shared or bought whole [money], 0 or more.
    sums
        Amounts of what is bought whole; those of all groups are added.
    once
        Cost of what is paid once for all groups that need it [money], the dearest of them.
    agrees
        Questions on which groups should agree, with this way's answer.
    """

    own: float
    sums: tuple[tuple[Key, float], ...] = ()
    once: tuple[tuple[Key, float], ...] = ()
    agrees: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """
    What an amount costs where it is bought whole against what is there.

    Attributes
    ----------
    steps
        Amount up to which a price holds, and that price [money]; the first is free, both rise. The last
        price holds for all beyond.
    """

    steps: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        """Refuse a curve that falls, or that does not begin with what is there."""
        falls = any(b[0] < a[0] or b[1] < a[1] for a, b in pairwise(self.steps))
        if falls or not self.steps or self.steps[0][1] != 0:
            msg = "a curve begins at no cost and rises"
            raise ValueError(msg)

    def cost(self, amount: float) -> float:
        """Return what an amount costs [money]."""
        wanted = round(amount * _MICRO)
        return next((c for upto, c in self.steps if wanted <= round(upto * _MICRO)), self.steps[-1][1])


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """
    What may be chosen.

    Attributes
    ----------
    pools
        Ways of each group, at least one each.
    curves
        What is bought whole.
    """

    pools: tuple[tuple[Way, ...], ...]
    curves: tuple[tuple[Key, Curve], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """
    A choice.

    Attributes
    ----------
    picks
        Number of the way taken, per group.
    cost
        What it costs [money].
    splits
        Further answers to questions on which the groups could not agree [1].
    choices
        Choices there were [1].
    proved
        Whether no other of them has fewer splits, or as many and a lower cost.
    """

    picks: tuple[int, ...]
    cost: float
    splits: int
    choices: int
    proved: bool


@dataclass(frozen=True, slots=True)
class WholeWay:
    """A way in whole numbers: its number in the pool, thousandths of money, millionths of amounts."""

    number: int
    own: int
    sums: tuple[tuple[int, int], ...]
    once: tuple[tuple[Key, int], ...]
    agrees: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class WholeProblem:
    """
    A problem in whole numbers, beaten ways left out, so that two solvers mean the same sum.

    Attributes
    ----------
    pools
        Ways per group.
    curves
        Steps of what is bought, in millionths and thousandths.
    split
        Price of a further answer [money/1000]: more than any choice costs.
    """

    pools: tuple[tuple[WholeWay, ...], ...]
    curves: tuple[tuple[tuple[int, int], ...], ...]
    split: int


def cost_of(problem: Problem, picks: tuple[int, ...]) -> tuple[float, int]:
    """
    Return what a choice costs, and how often groups differ where they should agree.

    Parameters
    ----------
    problem
        What may be chosen.
    picks
        Number of the way per group.

    Returns
    -------
    tuple
        Cost [money], further answers to questions [1].
    """
    ways = [pool[pick] for pool, pick in zip(problem.pools, picks, strict=True)]
    sums: dict[Key, float] = {}
    once: dict[Key, float] = {}
    answers: dict[str, set[str]] = {}
    for way in ways:
        for key, amount in way.sums:
            sums[key] = sums.get(key, 0.0) + amount
        for key, cost in way.once:
            once[key] = max(once.get(key, 0.0), cost)
        for question, answer in way.agrees:
            answers.setdefault(question, set()).add(answer)
    bought = sum(curve.cost(sums[key]) for key, curve in problem.curves if key in sums)
    own = sum(way.own for way in ways)
    return own + sum(once.values()) + bought, sum(len(said) - 1 for said in answers.values())


def choose(problem: Problem, steps: int = STEPS) -> Chosen:
    """
    Return the choice with the fewest splits, and among those the one that costs least.

    Parameters
    ----------
    problem
        What may be chosen.
    steps
        Steps that going through them one by one may take [1]; CP-SAT is asked where that is not enough.

    Returns
    -------
    Chosen
        The same for the same problem and steps; of choices that cost the same, one whose ways come first in
        their pools, all places added up.
    """
    whole = in_whole_numbers(problem)
    first = settled(whole)
    counted = one_by_one(whole, first, steps)
    if counted is not None:
        numbers, proved = counted, True
    else:
        from refettle.solver.cpsat import solve  # noqa: PLC0415 - loading it costs more than most plans

        numbers, proved = solve(whole, first)
    picks = tuple(pool[n].number for pool, n in zip(whole.pools, numbers, strict=True))
    cost, splits = cost_of(problem, picks)
    choices = prod(len(pool) for pool in problem.pools)
    return Chosen(picks=picks, cost=cost, splits=splits, choices=choices, proved=proved)


def in_whole_numbers(problem: Problem) -> WholeProblem:
    """Return a problem in whole numbers, without ways that another way of their group beats in all respects."""
    place = {key: i for i, (key, _) in enumerate(problem.curves)}
    pools = tuple(
        _unbeaten(tuple(_whole_way(place, number, way) for number, way in enumerate(pool)))
        for pool in problem.pools
    )
    curves = tuple(
        tuple((round(upto * _MICRO), round(cost * MILLI)) for upto, cost in curve.steps)
        for _, curve in problem.curves
    )
    most = sum(max(way.own + sum(cost for _, cost in way.once) for way in pool) for pool in pools)
    return WholeProblem(pools, curves, most + sum(steps[-1][1] for steps in curves) + 1)


def _whole_way(place: dict[Key, int], number: int, way: Way) -> WholeWay:
    """Return a way in whole numbers."""
    sums: dict[int, int] = {}
    for key, amount in way.sums:
        if key in place:
            sums[place[key]] = sums.get(place[key], 0) + round(amount * _MICRO)
    once: dict[Key, int] = {}
    for key, cost in way.once:
        once[key] = max(once.get(key, 0), round(cost * MILLI))
    return WholeWay(
        number, round(way.own * MILLI), tuple(sorted(sums.items())), tuple(sorted(once.items())),
        tuple(sorted(set(way.agrees))),
    )  # fmt: skip


def _unbeaten(pool: tuple[WholeWay, ...]) -> tuple[WholeWay, ...]:
    """Return the ways of a pool that no other beats or equals; of equals the first stays."""
    kept: list[WholeWay] = []
    for way in sorted(pool, key=lambda w: (w.own, w.number)):
        if not any(_beats(other, way) for other in kept):
            kept.append(way)
    return tuple(sorted(kept, key=lambda w: w.number))


def _beats(one: WholeWay, other: WholeWay) -> bool:
    """Return whether one way is nowhere dearer than another with the same answers."""
    sums, once = dict(other.sums), dict(other.once)
    return (
        one.own <= other.own
        and one.agrees == other.agrees
        and all(amount <= sums.get(key, -1) for key, amount in one.sums)
        and all(cost <= once.get(key, 0) for key, cost in one.once)
    )


@dataclass(slots=True)
class _Tally:
    """What the groups so far cost: amounts per curve, dearest per shared thing, answers with their count."""

    problem: WholeProblem
    amounts: list[int]
    once: dict[Key, int]
    answers: dict[str, set[str]]
    cost: int = 0

    def with_way(self, way: WholeWay) -> "_Tally":
        """Return the tally with one more way."""
        amounts, once, answers = list(self.amounts), dict(self.once), dict(self.answers)
        cost = self.cost + way.own
        for place, amount in way.sums:
            steps = self.problem.curves[place]
            before = price(steps, amounts[place])
            amounts[place] += amount
            cost += price(steps, amounts[place]) - before
        for key, paid in way.once:
            cost += max(0, paid - once.get(key, 0))
            once[key] = max(once.get(key, 0), paid)
        for question, answer in way.agrees:
            said = answers.get(question, set())
            if said and answer not in said:
                cost += self.problem.split
            answers[question] = said | {answer}
        return _Tally(self.problem, amounts, once, answers, cost)


def price(steps: tuple[tuple[int, int], ...], amount: int) -> int:
    """Return the price of an amount on a curve, in whole numbers [money/1000]."""
    return next((cost for upto, cost in steps if amount <= upto), steps[-1][1])


def total(problem: WholeProblem, places: tuple[int, ...]) -> int:
    """Return what a choice costs in whole numbers [money/1000], ties told apart by the places, see `ties`."""
    tally = _Tally(problem, [0] * len(problem.curves), {}, {})
    for pool, place in zip(problem.pools, places, strict=True):
        tally = tally.with_way(pool[place])
    return ties(problem) * tally.cost + sum(places)


def ties(problem: WholeProblem) -> int:
    """Return the factor on costs by which the places of a choice never outweigh a thousandth of money [1]."""
    return 1 + sum(len(pool) - 1 for pool in problem.pools)


def settled(problem: WholeProblem) -> tuple[int, ...]:
    """Return the places of a good choice: each group's cheapest, then group by group what is better beside the others."""
    places = [min(range(len(pool)), key=lambda n: (pool[n].own, n)) for pool in problem.pools]
    best = total(problem, tuple(places))
    for _ in range(_ROUNDS):
        before = best
        for group, pool in enumerate(problem.pools):
            for place in range(len(pool)):
                tried = (*places[:group], place, *places[group + 1 :])
                cost = total(problem, tried)
                if cost < best:
                    best, places = cost, list(tried)
        if best == before:
            break
    return tuple(places)


def one_by_one(problem: WholeProblem, first: tuple[int, ...], most: int) -> tuple[int, ...] | None:
    """
    Return the places of the ways of the cheapest choice, found by going through all that can still win.

    Parameters
    ----------
    problem
        In whole numbers.
    first
        Places of a good choice to begin with.
    most
        Steps it may take [1].

    Returns
    -------
    tuple of int or None
        Place in its pool, per group; None where the steps do not suffice.
    """
    rest = [0]
    for pool in reversed(problem.pools):
        rest.append(rest[-1] + min(way.own for way in pool))
    rest.reverse()
    by_cost = [sorted(range(len(pool)), key=lambda n: (pool[n].own, n)) for pool in problem.pools]
    factor = ties(problem)
    best, found = total(problem, first), first
    left = most

    def go(group: int, tally: _Tally, picks: tuple[int, ...]) -> None:
        nonlocal best, found, left
        left -= 1
        cost = factor * (tally.cost + rest[group]) + sum(picks)
        if left < 0 or cost >= best:
            return
        if group == len(problem.pools):
            best, found = cost, picks
            return
        for place in by_cost[group]:
            go(group + 1, tally.with_way(problem.pools[group][place]), (*picks, place))

    go(0, _Tally(problem, [0] * len(problem.curves), {}, {}), ())
    return found if left >= 0 else None
