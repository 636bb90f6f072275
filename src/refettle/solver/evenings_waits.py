"""Waits that depend on their start, put to CP-SAT as a few exact pieces a session."""

from collections.abc import Sequence

import numpy as np
from ortools.sat.python import cp_model

from refettle.solver.evenings_axis import Slots

Var = cp_model.IntVar | int


class Steps:
    """
    A model with starts that have holes, and the literals made over them.

    Attributes
    ----------
    model
        CP-SAT model.
    hints
        Hinted values by variable index; a start is hinted before what hangs on it.
    """

    def __init__(self) -> None:
        self.model = cp_model.CpModel()
        self.hints: dict[int, int] = {}
        self._since: dict[tuple[int, int], cp_model.IntVar] = {}

    def hint(self, var: Var, number: int | bool) -> None:
        """Hint a value unless it is fixed or hinted."""
        if not isinstance(var, int) and var.index not in self.hints:
            self.hints[var.index] = int(number)
            self.model.add_hint(var, int(number))

    def hinted(self, var: Var) -> int | None:
        """Return a hinted or fixed value; None where there is none."""
        return var if isinstance(var, int) else self.hints.get(var.index)

    def since(self, start: cp_model.IntVar, slot: int) -> cp_model.IntVar:
        """Return the literal of a start at or after a slot."""
        key = (start.index, slot)
        if key not in self._since:
            literal = self.model.new_bool_var("")
            self.model.add(start >= slot).only_enforce_if(literal)
            self.model.add(start <= slot - 1).only_enforce_if(~literal)
            at = self.hinted(start)
            if at is not None:
                self.hint(literal, at >= slot)
            self._since[key] = literal
        return self._since[key]

    def at_least(
        self, target: Var, start: Var, starts: Slots, ends: Slots, when: Sequence[cp_model.LiteralT] = ()
    ) -> None:
        """Let `target` be no less than `ends` at the place of `start` in `starts`; both never fall."""
        model = self.model
        if isinstance(start, int):
            model.add(target >= int(ends[0])).only_enforce_if(*when)
            return
        gaps = ends - starts
        least, shift = int(ends[0]), int(gaps.min())
        model.add(target >= least).only_enforce_if(*when)
        model.add(target >= start + shift).only_enforce_if(*when)
        todo = [(0, len(starts))]
        while todo:
            a, b = todo.pop()
            part, gap = ends[a:b], gaps[a:b]
            if (np.maximum(least, starts[a:b] + shift) >= part).all():
                continue
            flat, slope = int(part[-1] - part[0]), int(gap.max() - gap.min())
            if min(flat, slope) > 0:
                jumps = np.diff(part) if flat <= slope else np.abs(np.diff(gap))
                if b - a > 24:
                    jumps = np.diff(starts[a:b]) if np.diff(starts[a:b]).max() > 1 else jumps
                cut = a + 1 + int(np.argmax(jumps))
                todo += [(a, cut), (cut, b)]
                continue
            on = list(when) + ([self.since(start, int(starts[a]))] if a else [])
            if not flat:
                model.add(target >= int(part[0])).only_enforce_if(*on)
                continue
            if b < len(starts):
                on.append(~self.since(start, int(starts[b])))
            model.add(target >= start + int(gap[0])).only_enforce_if(*on)

    def at_most(
        self, target: Var, start: Var, starts: Slots, ends: Slots, when: Sequence[cp_model.LiteralT] = ()
    ) -> None:
        """Let `target` be no more than `ends` at the place of `start` in `starts`; both never fall."""
        model = self.model
        if isinstance(start, int):
            model.add(target <= int(ends[0])).only_enforce_if(*when)
            return
        gaps = ends - starts
        most, shift = int(ends[-1]), int(gaps.max())
        model.add(target <= most).only_enforce_if(*when)
        model.add(target <= start + shift).only_enforce_if(*when)
        reach = np.maximum.accumulate(gaps)
        for k in range(len(starts) - 2, -1, -1):
            if min(int(starts[k]) + shift, most) <= ends[k]:
                continue
            on = [*when, ~self.since(start, int(starts[k + 1]))]
            if reach[k] <= gaps[k]:
                shift = int(gaps[k])
                model.add(target <= start + shift).only_enforce_if(*on)
            else:
                most = int(ends[k])
                model.add(target <= most).only_enforce_if(*on)

    def end_of(self, start: Var, starts: Slots, ends: Slots) -> Var:
        """Return when something that begins at a start is over; no sooner than `ends` says."""
        if isinstance(start, int):
            return int(ends[0])
        end = self.model.new_int_var(int(ends[0]), int(ends[-1]), "")
        at = self.hinted(start)
        if at is not None:
            self.hint(end, int(ends[int(np.searchsorted(starts, at))]))
        self.at_least(end, start, starts, ends)
        return end

    def span(self, start: Var, end: Var) -> cp_model.IntervalVar:
        """Return the interval from a start to an end."""
        if isinstance(start, int) and isinstance(end, int):
            return self.model.new_fixed_size_interval_var(start, end - start, "")
        size = self.model.new_int_var(0, 10**6, "")
        a, b = self.hinted(start), self.hinted(end)
        if a is not None and b is not None:
            self.hint(size, b - a)
        return self.model.new_interval_var(start, size, end, "")
