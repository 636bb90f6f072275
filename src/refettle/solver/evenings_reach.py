"""The starts that free tasks still have while all others stay where they are."""

from collections.abc import Mapping

import numpy as np

from refettle.solver.evenings import Link, Wet
from refettle.solver.evenings_axis import Axis, Slots
from refettle.solver.evenings_bench import Bench


def ends_at(axis: Axis, number: int, starts: Slots) -> Slots:
    """Return the last working slot of a task for each of its starts [1]."""
    return starts + (axis.problem.tasks[number].length - 1)


def _clear(bits: int, size: int) -> Slots:
    """Return how many bits are set below each slot [1]."""
    raw = bits.to_bytes(size // 8 + 1, "little")
    flags = np.unpackbits(np.frombuffer(raw, dtype=np.uint8), bitorder="little")[:size]
    return np.concatenate([[0], np.cumsum(flags, dtype=np.int64)])


class Reach:
    """
    Starts left to each free task.

    Attributes
    ----------
    starts
        Working slots at which each free task may begin; empty where none is left.
    """

    def __init__(self, bench: Bench, free: set[int], spans: Mapping[int, tuple[int, int]]) -> None:
        self.bench, self.axis, self.problem = bench, bench.axis, bench.problem
        size = self.axis.size
        self._dust = _clear(bench.bits["dust"] & ((1 << size) - 1), size)
        self._tacky = _clear(bench.bits["tacky"] & ((1 << size) - 1), size)
        self._things = [_clear(bits & ((1 << size) - 1), size) for bits in bench.things]
        self._busy = np.array(bench.used, dtype=np.int64)
        self._cap = np.array(self.axis.cap, dtype=np.int64)
        self._load = np.array(bench.load, dtype=np.int64)
        self.starts: dict[int, Slots] = {}
        for n in free:
            low, high = spans.get(n, (0, size))
            self.starts[n] = self._alone(n, max(low, bench.now), high)
        self._linked(free)

    def _alone(self, n: int, low: int, high: int) -> Slots:
        """Return the starts of a task beside all that is laid."""
        task = self.problem.tasks[n]
        every = self.axis.starts(task.length, task.permit)
        found = every[(every >= low) & (every <= high)]
        over = found + task.length
        crowded = np.concatenate([[0], np.cumsum(self._busy + task.hands > self._cap)])
        keep = crowded[over] == crowded[found]
        if task.dusty:
            keep &= self._tacky[over] == self._tacky[found]
        for thing in task.means:
            keep &= self._things[thing][over] == self._things[thing][found]
        if task.kit >= 0:
            for (kit, session), at in self.bench.kits.items():
                if kit == task.kit:
                    begin = self.axis.spans[session][0]
                    keep &= (found < begin) | (found >= at + self.axis.kit_slots[kit])
        if task.wet is not None:
            keep &= self._dries(task.wet, found, over - 1)
        left: Slots = found[keep]
        return left

    def _dries(self, wet: Wet, found: Slots, last: Slots) -> np.ndarray[tuple[int, ...], np.dtype[np.bool_]]:
        """Return for which starts a coat can dry beside all that is laid."""
        dry = self.axis.ready_after(wet.dry)[last]
        full = np.concatenate([[0], np.cumsum(self._load + wet.area > self.problem.places)])
        keep = full[dry] == full[found]
        if wet.tacky is not None:
            tacky = self.axis.ready_after(wet.tacky)[last]
            keep &= self._dust[tacky] == self._dust[found]
        for begin, end in self.bench.faces.get(wet.face, []):
            until = self.axis.ready_after(wet.face_until or wet.dry)[last]
            keep &= (until <= begin) | (found >= end)
        return np.asarray(keep, dtype=bool)

    def _linked(self, free: set[int]) -> None:
        """Take away the starts that links rule out, until nothing changes."""
        links = [link for link in self.problem.links if link.first in free or link.then in free]
        for _ in range(8):
            before = sum(len(starts) for starts in self.starts.values())
            for link in (*links, *reversed(links)):
                self._one(link.first, link.then, self.axis.ready_after(link.wait), least=True)
                if link.most is not None and link.scuff < 0:
                    self._one(link.first, link.then, self.axis.open_until(link.most), least=False)
                if link.scuff in free:
                    self._scuff(link)
            if sum(len(starts) for starts in self.starts.values()) == before:
                break

    def _scuff(self, link: Link) -> None:
        """Take away a scuff's starts before its coat is ready for it; the coat may do without a scuff."""
        first, starts = self.range(link.first), self.starts[link.scuff]
        if len(first):
            ready = self.axis.ready_after(link.wait)[ends_at(self.axis, link.first, first)]
            self.starts[link.scuff] = starts[starts >= ready[0]]

    def range(self, n: int) -> Slots:
        """Return the starts of a free or laid task."""
        if n in self.starts:
            return self.starts[n]
        at = self.bench.at[n]
        return np.array([] if at is None else [at], dtype=np.int64)

    def _one(self, first: int, then: int, table: Slots, *, least: bool) -> None:
        """Take away the starts of two tasks that cannot go with any start of the other."""
        a, b = self.range(first), self.range(then)
        if not len(a) or not len(b):
            return
        reach = table[ends_at(self.axis, first, a)]
        if then in self.starts:
            self.starts[then] = b[b >= reach[0]] if least else b[b <= reach[-1]]
        if first in self.starts:
            self.starts[first] = a[reach <= b[-1]] if least else a[reach >= b[0]]
