"""Works placed on one line of time: capacities, least and greatest lags, least end. Plain data in and out."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Work:
    """
    Something that takes time and means.

    Attributes
    ----------
    length
        Slots it takes [1]; 0 for a mere moment.
    takes
        Pairs of the place of a means in `Problem.means` and the amount held all along [1].
    """

    length: int
    takes: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Lag:
    """
    One work begins so long after another, at the least.

    Attributes
    ----------
    first, then
        Places of the two in `Problem.works`.
    least
        Slots from start to start [1]; negative: `first` begins at the most so long after `then`.
    """

    first: int
    then: int
    least: int


@dataclass(frozen=True, slots=True)
class Problem:
    """
    What is to be placed.

    Attributes
    ----------
    works
        Works.
    lags
        Lags between starts.
    means
        Amount there is of each means [1].
    """

    works: tuple[Work, ...]
    lags: tuple[Lag, ...]
    means: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Timetable:
    """
    What was found.

    Attributes
    ----------
    starts
        Start of each work [slots]; empty where none was found.
    end
        Slot at which all is over [1]; 0 where none was found.
    bound
        Slot before which nothing can be over [1].
    proved
        Whether nothing shorter exists, or nothing at all.
    """

    starts: tuple[int, ...]
    end: int
    bound: int
    proved: bool


def earliest(problem: Problem) -> tuple[int, ...] | None:
    """
    Return the earliest start of every work by the lags alone.

    Parameters
    ----------
    problem
        What is to be placed.

    Returns
    -------
    tuple or None
        Starts [slots]; None where the lags contradict each other.
    """
    starts = [0] * len(problem.works)
    for _ in range(len(starts) + 1):
        moved = False
        for lag in problem.lags:
            due = starts[lag.first] + lag.least
            if due > starts[lag.then]:
                starts[lag.then] = due
                moved = True
        if not moved:
            return tuple(starts)
    return None


def tails(problem: Problem) -> tuple[int, ...]:
    """Return the slots from each work's start to the end of all by the lags alone [1]; lags must not contradict."""
    left = [work.length for work in problem.works]
    for _ in range(len(left) + 1):
        moved = False
        for lag in problem.lags:
            due = lag.least + left[lag.then]
            if due > left[lag.first]:
                left[lag.first] = due
                moved = True
        if not moved:
            break
    return tuple(left)


def longest(problem: Problem) -> int:
    """Return a slot by which some timetable is over, if there is any [1]."""
    reach = [work.length for work in problem.works]
    for lag in problem.lags:
        if lag.least > 0:
            reach[lag.first] = max(reach[lag.first], lag.least)
    return sum(reach)


def violations(problem: Problem, starts: Sequence[int]) -> list[str]:
    """
    Return what a timetable breaks, found without the solver.

    Parameters
    ----------
    problem
        What was to be placed.
    starts
        Start of each work [slots].

    Returns
    -------
    list of str
        Empty where it holds.
    """
    broken = [f"work {n} starts at {start}" for n, start in enumerate(starts) if start < 0]
    broken += [
        f"work {lag.then} starts less than {lag.least} after work {lag.first}"
        for lag in problem.lags
        if starts[lag.then] - starts[lag.first] < lag.least
    ]
    for place, there in enumerate(problem.means):
        moves: list[tuple[int, int]] = []
        for start, work in zip(starts, problem.works, strict=True):
            amount = sum(take for means, take in work.takes if means == place)
            if amount and work.length:
                moves += [(start, amount), (start + work.length, -amount)]
        held = 0
        for at, change in sorted(moves, key=lambda move: (move[0], move[1])):
            held += change
            if held > there:
                broken.append(f"means {place} is held {held} times at {at}, there are {there}")
                break
    return broken
