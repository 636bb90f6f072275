"""The line of working slots: nights vanish, ends of waits are rounded up to it and closings of windows down."""

from collections.abc import Sequence
from functools import lru_cache
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from refettle.solver.evenings import Evenings, Link, Wait, kit_slots

Slots: TypeAlias = NDArray[np.int64]

_TINY = 1e-9


class Axis:
    """
    Tables of a problem on the line of working slots.

    Attributes
    ----------
    size
        Working slots there are [1]; also stands for "never".
    spans
        First working slot and the one past the last of each session [1].
    cap
        Hands in each working slot [1].
    starts
        Working slots at which a task of each length may begin within a session, by length.
    into, out
        Links that lead to and from each task.
    """

    def __init__(self, problem: Evenings) -> None:
        self.problem = problem
        spans: list[tuple[int, int]] = []
        real: list[int] = []
        for one in problem.sessions:
            spans.append((len(real), len(real) + one.end - one.begin))
            real.extend(range(one.begin, one.end))
        self.spans = tuple(spans)
        self.size = len(real)
        self._real: Slots = np.array(real, dtype=np.int64)
        self.real = real
        self.cap = [0] * self.size
        for begin, end, count in problem.hands:
            for slot in range(self.up(begin), self.up(end)):
                self.cap[slot] = count
        self.session_of = [n for n, (a, b) in enumerate(spans) for _ in range(a, b)]
        self.into: list[list[Link]] = [[] for _ in problem.tasks]
        self.out: list[list[Link]] = [[] for _ in problem.tasks]
        for link in problem.links:
            self.into[link.then].append(link)
            self.out[link.first].append(link)
        self.kit_slots = [kit_slots(problem, kit) for kit in range(len(problem.kits))]
        self.ready_after = lru_cache(maxsize=None)(self._ready_after)
        self.open_until = lru_cache(maxsize=None)(self._open_until)
        self.ready_list = lru_cache(maxsize=None)(lambda wait: self.ready_after(wait).tolist())
        self.open_list = lru_cache(maxsize=None)(lambda wait: self.open_until(wait).tolist())
        self.starts = lru_cache(maxsize=None)(self._starts)

    def up(self, slot: int) -> int:
        """Return the first working slot at or after a real one [1]."""
        return int(np.searchsorted(self._real, slot, "left"))

    def ups(self, slots: Sequence[int | None]) -> list[int | None]:
        """Return the working slots of real starts [1]."""
        return [None if slot is None else self.up(slot) for slot in slots]

    def over(self, wait: Wait) -> Slots:
        """Return for each working slot the real slot at which a wait is over that begins right after it [1]."""
        ends = self._real + 1
        if wait.curve < 0:
            return ends + round(wait.need)
        curve = np.asarray(self.problem.curves[wait.curve])
        within = np.minimum(ends, len(curve) - 1)
        done = np.searchsorted(curve, curve[within] + wait.need - _TINY, "left")
        never = (done >= len(curve)) | ((ends >= len(curve)) & (wait.need > 0))
        found: Slots = np.where(never, np.iinfo(np.int64).max, np.maximum(done, ends))
        return found

    def _ready_after(self, wait: Wait) -> Slots:
        """Return the first working slot after a wait, by the last slot of the work before it [1]."""
        return np.searchsorted(self._real, self.over(wait), "left")

    def _open_until(self, wait: Wait) -> Slots:
        """Return the last working slot within a greatest wait, by the last slot of the work before it [1]."""
        return np.searchsorted(self._real, self.over(wait), "right") - 1

    def _starts(self, length: int, permit: int) -> Slots:
        """Return the working slots at which a task may begin [1]."""
        fits = [np.arange(a, b - length + 1) for a, b in self.spans if b - a >= length]
        found: Slots = np.concatenate(fits) if fits else np.zeros(0, dtype=np.int64)
        if permit < 0:
            return found
        real, allowed = self._real[found], np.zeros(len(found), dtype=bool)
        for begin, end in self.problem.permits[permit]:
            allowed |= (real >= begin) & (real < end)
        return found[allowed]

    def follows(self, link: Link) -> bool:
        """Return whether a link ties its second task closely to its first."""
        return link.together or (link.most is not None and link.scuff < 0)

    def tied(self, task: int) -> list[int]:
        """Return a task and all that must follow it closely, in order."""
        found = [task]
        for one in found:
            found += [link.then for link in self.out[one] if self.follows(link) and link.then not in found]
        return found
