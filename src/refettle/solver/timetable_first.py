"""
A first timetable, found without the solver: knots of greatest lags are placed alone, then laid like single works.

Works that greatest lags tie to each other form knots (strongly connected parts of the graph of lags). A knot placed by
itself keeps its inner lags wherever it goes; between knots there are least lags only. So knots can be laid one after the
other at the first slots that have room, and a timetable comes out whenever every knot has one (the decomposition of
Neumann and Zhan for least and greatest lags; from memory).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from refettle.solver.timetable import Lag, Problem, tails

Knot = tuple[int, ...]
"""Places of works that are tied to each other."""


@dataclass(frozen=True, slots=True)
class _Block:
    """A knot with the start of each of its works from the block's own start [slots], and the means it holds slot by slot."""

    works: Knot
    offsets: tuple[int, ...]
    held: tuple[tuple[int, tuple[tuple[int, int], ...]], ...]


def knots(problem: Problem) -> list[Knot]:
    """Return the strongly connected parts of the graph of lags, each before those that its works must precede."""
    after: list[list[int]] = [[] for _ in problem.works]
    before: list[list[int]] = [[] for _ in problem.works]
    for lag in problem.lags:
        after[lag.first].append(lag.then)
        before[lag.then].append(lag.first)
    order: list[int] = []
    seen = [False] * len(problem.works)
    for root in range(len(problem.works)):
        stack = [(root, 0)]
        while stack:
            node, turn = stack.pop()
            if turn == 0:
                if seen[node]:
                    continue
                seen[node] = True
            if turn < len(after[node]):
                stack.append((node, turn + 1))
                if not seen[after[node][turn]]:
                    stack.append((after[node][turn], 0))
            else:
                order.append(node)
    found: list[Knot] = []
    placed = [False] * len(problem.works)
    for root in reversed(order):
        part: list[int] = []
        todo = [root] if not placed[root] else []
        while todo:
            node = todo.pop()
            if not placed[node]:
                placed[node] = True
                part.append(node)
                todo += [other for other in before[node] if not placed[other]]
        if part:
            found.append(tuple(sorted(part)))
    return found


def first_starts(
    problem: Problem, alone: Callable[[Problem], Sequence[int]], tries: int = 24
) -> tuple[int, ...]:
    """
    Return the starts of a timetable.

    Parameters
    ----------
    problem
        What is to be placed; its lags must not contradict each other.
    alone
        Places a knot by itself: starts, or none.
    tries
        Orders that are tried [1]; the one that ends first is kept.

    Returns
    -------
    tuple
        Starts [slots]; empty where some knot found none.
    """
    parts = knots(problem)
    blocks: list[_Block] = []
    for part in parts:
        offsets = (0,) if len(part) == 1 else tuple(alone(_part_of(problem, part)))
        if not offsets:
            return ()
        blocks.append(_block(problem, part, offsets))
    left = tails(problem)
    best: tuple[int, ...] = ()
    best_end = 0
    for turn in range(tries):
        starts = _laid(problem, blocks, left, turn)
        end = max(start + work.length for start, work in zip(starts, problem.works, strict=True))
        if not best or end < best_end:
            best, best_end = starts, end
    return best


def _part_of(problem: Problem, part: Knot) -> Problem:
    """Return a knot as a problem of its own."""
    place = {work: number for number, work in enumerate(part)}
    lags = tuple(
        Lag(place[lag.first], place[lag.then], lag.least)
        for lag in problem.lags if lag.first in place and lag.then in place
    )  # fmt: skip
    return Problem(tuple(problem.works[work] for work in part), lags, problem.means)


def _block(problem: Problem, part: Knot, offsets: tuple[int, ...]) -> _Block:
    """Return a knot as a block that begins at slot 0."""
    begin = min(offsets)
    offsets = tuple(offset - begin for offset in offsets)
    held: dict[int, dict[int, int]] = {}
    for work, offset in zip(part, offsets, strict=True):
        for slot in range(offset, offset + problem.works[work].length):
            row = held.setdefault(slot, {})
            for means, amount in problem.works[work].takes:
                row[means] = row.get(means, 0) + amount
    return _Block(part, offsets, tuple((slot, tuple(row.items())) for slot, row in sorted(held.items())))


def _laid(problem: Problem, blocks: list[_Block], left: Sequence[int], turn: int) -> tuple[int, ...]:
    """Return starts with blocks laid one after the other, those with most to come first; `turn` shuffles that a little."""
    block_of = {work: number for number, block in enumerate(blocks) for work in block.works}
    inner = {
        work: offset for block in blocks for work, offset in zip(block.works, block.offsets, strict=True)
    }
    waits = [0] * len(blocks)
    follow: list[list[tuple[int, Lag]]] = [[] for _ in blocks]
    for lag in problem.lags:
        one, other = block_of[lag.first], block_of[lag.then]
        if one != other:
            follow[one].append((other, lag))
            waits[other] += 1
    plain = [max(left[work] - inner[work] for work in block.works) for block in blocks]
    weight = [value + _shake(number, turn) * max(plain) for number, value in enumerate(plain)]
    soonest = [0] * len(blocks)
    ready = [number for number, count in enumerate(waits) if not count]
    used: list[list[int]] = []
    starts = [0] * len(problem.works)
    while ready:
        number = max(ready, key=lambda one: (weight[one], -one))
        ready.remove(number)
        block = blocks[number]
        at = _room(problem, block, used, soonest[number])
        for slot, row in block.held:
            while len(used) <= at + slot:
                used.append([0] * len(problem.means))
            for means, amount in row:
                used[at + slot][means] += amount
        for work, offset in zip(block.works, block.offsets, strict=True):
            starts[work] = at + offset
        for other, lag in follow[number]:
            soonest[other] = max(soonest[other], starts[lag.first] + lag.least - inner[lag.then])
            waits[other] -= 1
            if not waits[other]:
                ready.append(other)
    return tuple(starts)


def _shake(number: int, turn: int) -> float:
    """Return a small number that differs by block and turn and is always the same [1]; 0 in the first turn."""
    return 0.0 if not turn else 0.35 * ((number * 7919 + turn * 104_729) % 1009) / 1009.0


def _room(problem: Problem, block: _Block, used: list[list[int]], at: int) -> int:
    """Return the first slot from one on at which a block has room."""
    while True:
        clash = -1
        for slot, row in block.held:
            there = used[at + slot] if at + slot < len(used) else None
            if there is not None and any(
                there[means] + amount > problem.means[means] for means, amount in row
            ):
                clash = slot
        if clash < 0:
            return at
        at += 1
