"""Rates learnt from own work: how many times the handbook's amount it took."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import exp, log, sqrt
from typing import Final

ODDEST: Final = 3.0
"""Most that one entry may say [1]: what took more than three times the time, or under a third, counts as that."""
_NEAR: Final = 1.2815515655446004
"""10 % and 90 % points of a normal distribution, in standard deviations."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RatePrior:
    """
    What is believed of rates before any entry: logarithms of factors, normal.

    Attributes
    ----------
    own
        Width of the person's own factor, shared by all kinds [1].
    kind
        Width of a kind about it [1].
    noise
        Width of single entries about their kind [1].
    """

    own: float
    kind: float
    noise: float


HOURS: Final = RatePrior(own=0.30, kind=0.25, noise=0.45)
"""Hands-on time; judgement: workers differ by about a third, kinds of work by a quarter, single jobs by a half."""
LITRES: Final = RatePrior(own=0.12, kind=0.15, noise=0.25)
"""Material laid; judgement."""
DRYING: Final = RatePrior(own=0.15, kind=0.25, noise=0.30)
"""Time until it may be recoated, in the same air; judgement."""
COATS: Final = RatePrior(own=0.12, kind=0.15, noise=0.25)
"""Coats until it covers, as a share of those foreseen; judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """
    A factor on the handbook's amount.

    Attributes
    ----------
    factor
        Likely value [1].
    low, high
        10 % and 90 % values [1].
    entries
        Entries of this kind [1]; 0 = from other kinds alone.
    """

    factor: float
    low: float
    high: float
    entries: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Rates:
    """
    Factors by kind.

    Attributes
    ----------
    kinds
        Kind → its factor.
    others
        Factor of every kind without an entry.
    """

    kinds: Mapping[str, Rate]
    others: Rate


def learn_rates(ratios: Mapping[str, Sequence[float]], prior: RatePrior) -> Rates:
    """
    Return the factors that some entries speak for.

    Parameters
    ----------
    ratios
        Kind → amounts taken as shares of the handbook's [1], each above 0.
    prior
        What is believed before.

    Returns
    -------
    Rates
        Posterior of a normal two-level model, in closed form: a kind with few entries leans on the person's
        other work, and that on the handbook.

    Raises
    ------
    ValueError
        If a ratio is not above 0.
    """
    means, widths = {}, {}
    for kind, seen in ratios.items():
        if seen:
            means[kind] = sum(_log_of(ratio) for ratio in seen) / len(seen)
            widths[kind] = prior.kind**2 + prior.noise**2 / len(seen)
    precision = 1.0 / prior.own**2 + sum(1.0 / width for width in widths.values())
    own = sum(means[kind] / widths[kind] for kind in means) / precision
    own_var = 1.0 / precision
    kinds = {}
    for kind, mean in means.items():
        entries = len(ratios[kind])
        weight = prior.kind**2 / (prior.kind**2 + prior.noise**2 / entries)
        variance = prior.kind**2 * (1.0 - weight) + (1.0 - weight) ** 2 * own_var
        kinds[kind] = _rate(weight * mean + (1.0 - weight) * own, variance, entries)
    return Rates(kinds=kinds, others=_rate(own, own_var + prior.kind**2, 0))


def _log_of(ratio: float) -> float:
    """Return the logarithm of a ratio, an odd one taken back to the oddest."""
    if ratio <= 0:
        message = f"a ratio of {ratio:g} is no share of an amount"
        raise ValueError(message)
    return max(-log(ODDEST), min(log(ODDEST), log(ratio)))


def _rate(mean: float, variance: float, entries: int) -> Rate:
    """Return a factor with its width."""
    half = _NEAR * sqrt(variance)
    return Rate(factor=exp(mean), low=exp(mean - half), high=exp(mean + half), entries=entries)
