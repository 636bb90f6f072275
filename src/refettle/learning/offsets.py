"""Offsets learnt for rules: how much likelier, in log-odds, a cause shows with this person than it is foreseen."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Final

from refettle.rules.card import shifted

WIDTH: Final = 0.6
"""Width of the prior of every rule's offset [1, log-odds]; judgement: odds wrong by up to a half or double are usual."""
_STEPS: Final = 60
_ENOUGH: Final = 1e-10
_SURE: Final = 0.005


@dataclass(frozen=True, slots=True, kw_only=True)
class Offset:
    """
    What is learnt of one rule.

    Attributes
    ----------
    offset
        Added to the log-odds of its chance [1].
    width
        Standard deviation [1].
    entries
        Entries [1].
    foreseen, seen
        Number that was foreseen in sum, and number that came [1].
    """

    offset: float
    width: float
    entries: int
    foreseen: float
    seen: float


def learn_offset(entries: Sequence[tuple[float, float]], width: float = WIDTH) -> Offset:
    """
    Return the offset of one rule.

    Parameters
    ----------
    entries
        Chance foreseen [1] and what came: 1, 0, or a share where several rules may have been at work.
    width
        Width of the prior [1].

    Returns
    -------
    Offset
        The likeliest value under a normal prior, with the width of its normal neighbourhood. The rule's shape is
        not touched: all its chances move by the same log-odds.

    Notes
    -----
    The log-posterior is concave, so Newton's steps find its one top; the order of entries does not matter.
    """
    kept = [(min(1.0 - _SURE, max(_SURE, chance)), came) for chance, came in entries]
    at, precision = 0.0, 1.0 / width**2
    for _ in range(_STEPS):
        now = [shifted(chance, at) for chance, _ in kept]
        slope = sum(came - p for (_, came), p in zip(kept, now, strict=True)) - at / width**2
        precision = 1.0 / width**2 + sum(p * (1.0 - p) for p in now)
        at += slope / precision
        if abs(slope) < _ENOUGH:
            break
    return Offset(
        offset=at, width=1.0 / sqrt(precision), entries=len(kept),
        foreseen=sum(chance for chance, _ in entries), seen=sum(came for _, came in entries),
    )  # fmt: skip


def learn_offsets(
    entries: Mapping[str, Sequence[tuple[float, float]]], width: float = WIDTH
) -> Mapping[str, Offset]:
    """Return the offset of every rule with entries, all under the same prior; see `learn_offset`."""
    return {rule: learn_offset(seen, width) for rule, seen in entries.items() if seen}
