"""Run a sequence through all worlds and zones and gather its risks."""

from collections.abc import Sequence
from typing import NamedTuple

from refettle.domain.air import Air
from refettle.domain.plan import Hit, Risk
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.engine import play
from refettle.planning.start import Start

_SMALL_SHARE = 0.1

Traced = dict[tuple[str, str], tuple[Hit, int]]
"""Per fault and cause: the strongest hit and the number of its step, from 1."""


class Weighed(NamedTuple):
    """Chance of a cause over all worlds [1], the most that one world adds [1], the hit that does and its step."""

    chance: float
    most: float
    hit: Hit
    step: int


def trace(know: Knowledge, begin: Start, steps: Sequence[Step], air: Air) -> list[list[tuple[Traced, State]]]:
    """
    Return, per world and zone, what a sequence meets and where it ends.

    Parameters
    ----------
    know
        All facts.
    begin
        Worlds and zones of the surface.
    steps
        The sequence, the closing use included.
    air
        Air where a step names none.

    Returns
    -------
    list
        Per world a list per zone of the hits and the final state.
    """
    memory: dict[tuple[int, State], tuple[Traced, State]] = {}
    result = []
    for world in begin.worlds:
        row = []
        for zone, state in enumerate(world.states):
            key = (zone, state)
            if key not in memory:
                memory[key] = _run(know, begin, zone, state, steps, air)
            row.append(memory[key])
        result.append(row)
    return result


def _run(
    know: Knowledge, begin: Start, zone: int, state: State, steps: Sequence[Step], air: Air
) -> tuple[Traced, State]:
    """Return the hits and the final state of one zone in one world."""
    met: Traced = {}
    for number, step in enumerate(steps, start=1):
        state, hits = play(know, begin.grounds[zone], state, step, air)
        for hit in hits:
            key = (hit.fault, hit.cause)
            if key not in met or hit.chance > met[key][0].chance:
                met[key] = (hit, number)
    return met, state


def causes_of(begin: Start, traced: list[list[tuple[Traced, State]]]) -> dict[tuple[str, str], Weighed]:
    """
    Return every cause of every fault with its chance over all worlds.

    Returns
    -------
    dict
        Per fault and cause: its chance [1], the worst zone of each world weighed by belief; the hit that adds
        most to it and the number of its step.
    """
    found: dict[tuple[str, str], Weighed] = {}
    for world, row in zip(begin.worlds, traced, strict=True):
        worst: dict[tuple[str, str], Weighed] = {}
        for (met, _), part in zip(row, begin.shares, strict=True):
            for key, (hit, number) in met.items():
                shown = world.weight * hit.chance * min(1.0, part / _SMALL_SHARE)
                if key not in worst or shown > worst[key].chance:
                    worst[key] = Weighed(shown, shown, hit, number)
        for key, new in worst.items():
            old = found.get(key)
            if old is None:
                found[key] = new
                continue
            top = new if new.most > old.most else old
            found[key] = Weighed(old.chance + new.chance, top.most, top.hit, top.step)
    return found


def risks_of(know: Knowledge, begin: Start, traced: list[list[tuple[Traced, State]]]) -> tuple[Risk, ...]:
    """
    Return the risks of a sequence, likeliest first.

    Notes
    -----
    Independent causes of one fault combine by noisy-or within a world and zone; the chance that a
    fault shows on the surface is that of its worst zone, one of less than a tenth of the area counting
    by its share; worlds are weighed by belief.
    """
    chances: dict[str, dict[str, float]] = {}
    strongest: dict[str, Weighed] = {}
    for (fault, _), cause in causes_of(begin, traced).items():
        if fault not in strongest or cause.chance > strongest[fault].chance:
            strongest[fault] = cause
    rules: dict[str, dict[str, float]] = {}
    reads: dict[str, dict[tuple[str, str], None]] = {}
    for world, row in zip(begin.worlds, traced, strict=True):
        for (met, _), part in zip(row, begin.shares, strict=True):
            missed: dict[str, float] = {}
            for (fault, _), (hit, _) in met.items():
                missed[fault] = missed.get(fault, 1.0) * (1.0 - hit.chance)
                rules.setdefault(fault, {})[hit.rule] = max(
                    hit.chance, rules.get(fault, {}).get(hit.rule, 0.0)
                )
                reads.setdefault(fault, {}).update(dict.fromkeys(hit.reads))
            for fault, share in missed.items():
                per = chances.setdefault(fault, {})
                shown = (1.0 - share) * min(1.0, part / _SMALL_SHARE)
                per[world.label] = max(per.get(world.label, 0.0), shown)
    found = []
    for fault, per in chances.items():
        chance = sum(w.weight * per.get(w.label, 0.0) for w in begin.worlds)
        most = strongest[fault]
        ordered = sorted(rules[fault], key=lambda r: -rules[fault][r])
        found.append(
            Risk(
                fault=fault,
                chance=chance,
                step=most.step,
                why=most.hit.why,
                rules=tuple(ordered),
                because=tuple(dict.fromkeys(i for s, p in reads[fault] for i in know.because(s, p))),
                worlds=tuple(sorted(per.items(), key=lambda pair: -pair[1])),
            )
        )
    return tuple(sorted(found, key=lambda risk: (-risk.chance, risk.fault)))


def foresee(know: Knowledge, begin: Start, steps: Sequence[Step], air: Air) -> tuple[Risk, ...]:
    """Return the risks of a sequence on a surface, likeliest first."""
    return risks_of(know, begin, trace(know, begin, steps, air))
