"""Waits by the real hours: drying summed over the air that comes, and when a coat may be laid at all."""

from dataclasses import dataclass, field
from itertools import accumulate
from math import inf

from refettle.domain.air import Air
from refettle.domain.airhours import AirHours
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.physics.air import dew_margin_k
from refettle.planning.effects import drying_out_pct_h, drying_rate

LONGEST_H = 24 * 420
"""Hours looked ahead [h]: a wait that is not over by then is endless."""
DEW_K = 3.0
"""Least distance from dew at which a coat is laid [K] (coatings notes §2.2, R48)."""
_SLOW = 1e-4
_WET_WORK = frozenset({"clean", "rinse", "neutralise", "bleach", "raise_grain", "strip"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """
    A coat that had to wait for other air.

    Attributes
    ----------
    group
        Piece and group.
    step
        The coat.
    from_h, until_h
        Hour from which it was due, and hour at which it may be laid, from midnight of the first day [h].
    reason
        What was wrong with the air, in a few words.
    """

    group: str
    step: Step
    from_h: float
    until_h: float
    reason: str


@dataclass(slots=True)
class DryClock:
    """
    How waits pass in the air of the hours ahead.

    Attributes
    ----------
    know
        Facts.
    hours
        Air hour by hour.
    planned
        Air that the waits of the steps were worked out for.
    blocks
        Coats that had to wait for other air, by group and place in it.
    """

    know: Knowledge
    hours: AirHours
    planned: Air
    blocks: dict[tuple[str, int], Block] = field(default_factory=dict)
    _sums: dict[str, list[float]] = field(default_factory=dict)
    _free: dict[str, list[int]] = field(default_factory=dict)

    def over_h(self, step: Step, begin_h: float, wait_h: float) -> float:
        """
        Return when a wait is over.

        Parameters
        ----------
        step
            The step it follows; one with an air of its own waits as planned.
        begin_h
            Hour at which it begins, from midnight of the first day [h].
        wait_h
            Wait in the planning air [h].

        Returns
        -------
        float
            Hour at which it is over [h]; past `LONGEST_H` where nothing dries by then.
        """
        if wait_h <= 0:
            return begin_h
        key = self.key(step)
        if not key and not self.hours.lengths:
            return begin_h + wait_h
        sums = self._summed(key)
        need = self._gone(sums, begin_h) + wait_h * self.planned_rate(key)
        return self._when(sums, need)

    def key(self, step: Step) -> str:
        """Return what dries after a step: a film class, the wood, or nothing that the air would change."""
        if step.air is not None:
            return ""
        if step.is_coat:
            return step.what
        return "wood" if step.verb in _WET_WORK else ""

    def _rate(self, key: str, air: Air) -> float:
        """Return how fast something dries in an air [1 or %/h]; what the air does not touch just takes its time."""
        if not key:
            return 1.0
        return drying_out_pct_h(air) if key == "wood" else drying_rate(self.know.film(key), air)

    def _summed(self, key: str) -> list[float]:
        """Return what has dried by the end of each hour ahead, from zero."""
        known = self._sums.get(key)
        if known is None:
            rates: dict[int, float] = {}
            lengths = dict(self.hours.lengths)
            each = []
            for hour in range(LONGEST_H):
                place = self.hours.place(hour)
                if place not in rates:
                    rates[place] = self._rate(key, self.hours.at(hour))
                each.append(rates[place] * lengths.get(hour, 1.0))
            known = self._sums[key] = [0.0, *accumulate(each)]
        return known

    @staticmethod
    def _gone(sums: list[float], at_h: float) -> float:
        """Return what has dried by a moment."""
        hour = min(int(at_h), len(sums) - 2)
        return sums[hour] + (at_h - hour) * (sums[hour + 1] - sums[hour])

    @staticmethod
    def _when(sums: list[float], need: float) -> float:
        """Return the moment by which so much has dried [h]."""
        if need >= sums[-1]:
            return float(LONGEST_H + 1)
        low, high = 0, len(sums) - 1
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if sums[middle] <= need else (low, middle)
        step = sums[high] - sums[low]
        return low + ((need - sums[low]) / step if step > 0 else 0.0)

    def dried(self, key: str, count: int, step_h: float) -> tuple[float, ...]:
        """Return what has dried of a `key` by each of so many moments [h at rate 1, or %], a step [h] apart, from zero."""
        sums = self._summed(key)
        return tuple(self._gone(sums, min(place * step_h, float(LONGEST_H))) for place in range(count))

    def planned_rate(self, key: str) -> float:
        """Return how fast a `key` dries in the planning air [1 or %/h]."""
        return max(_SLOW, self._rate(key, self.planned))

    def planned_window_h(self, step: Step) -> float:
        """Return how long the window to recoat a coat without a key stays open in the air planned for it [h]."""
        facts = self.know.film(step.what)
        return facts.recoat_until_h / max(_SLOW, drying_rate(facts, step.air or self.planned))

    def window_h(self, step: Step, end_h: float) -> float:
        """Return when the window to recoat a coat without a key closes [h]; infinite where it has none."""
        facts = self.know.film(step.what)
        if not 0 < facts.recoat_until_h < LONGEST_H:
            return inf
        return self.over_h(step, end_h, self.planned_window_h(step))

    def block(self, step: Step, at_h: float) -> str:
        """
        Return why a coat may not be laid at an hour, or nothing where it may.

        Parameters
        ----------
        step
            The step; only coats in the air as it comes are asked for.
        at_h
            Hour from midnight of the first day [h].

        Returns
        -------
        str
            The reason in a few words.
        """
        if not step.is_coat or step.air is not None:
            return ""
        facts, air = self.know.film(step.what), self.hours.at(int(at_h))
        if air.temp_c < facts.min_c:
            return f"{air.temp_c:.0f} °C, {facts.name} needs {facts.min_c:g}"
        if air.temp_c > facts.max_c:
            return f"{air.temp_c:.0f} °C, too warm for {facts.name} ({facts.max_c:g} at the most)"
        if air.rh > facts.rh_max:
            return f"{100 * air.rh:.0f} % humidity, {facts.name} bears {100 * facts.rh_max:.0f}"
        margin = dew_margin_k(air.temp_c, air.temp_c, air.rh)
        if margin < DEW_K:
            return f"{margin:.1f} K from dew, {DEW_K:g} are needed"
        return ""

    def due_h(self, group: str, place: int, step: Step, from_h: float) -> float:
        """Return when a task may begin by the air [h]; a coat that has to wait is noted, from its first due hour on."""
        until = self.free_h(step, from_h)
        if until > from_h:
            known = self.blocks.get((group, place))
            begin = known.from_h if known else from_h
            reason = known.reason if known else self.block(step, from_h)
            self.blocks[group, place] = Block(
                group=group, step=step, from_h=begin, until_h=until, reason=reason
            )
        return until

    def free_h(self, step: Step, from_h: float) -> float:
        """Return the first moment from one on at which a coat may be laid [h]; past `LONGEST_H` if never."""
        if not step.is_coat or step.air is not None:
            return from_h
        free = self._frees(step)
        hour = min(int(from_h), LONGEST_H - 1)
        return from_h if free[hour] == hour else float(free[hour])

    def _frees(self, step: Step) -> list[int]:
        """Return, for each hour ahead, the first from it on at which a class may be laid."""
        known = self._free.get(step.what)
        if known is None:
            bare = Step(verb=step.verb, what=step.what)
            fits: dict[int, bool] = {}
            known = [LONGEST_H + 1] * LONGEST_H
            after = LONGEST_H + 1
            for hour in range(LONGEST_H - 1, -1, -1):
                place = self.hours.place(hour)
                if place not in fits:
                    fits[place] = not self.block(bare, hour)
                after = hour if fits[place] else after
                known[hour] = after
            self._free[step.what] = known
        return known
