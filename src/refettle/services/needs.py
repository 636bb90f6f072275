"""What a step uses up of things that are bought whole, and what any amount of one costs at the till."""

from refettle.domain.piece import Workshop
from refettle.domain.plan import Range, StepCost
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import price_per_litre
from refettle.services.buying import DEAD_L, on_shelf, tins_for
from refettle.solver.choice import Curve, Key

_MORE_L = 1e-6


def needs_of(cost: StepCost) -> dict[Key, Range]:
    """Return what a step uses of things bought whole: kind and id → amount, litres for films [L]."""
    return {("film", cost.step.what): cost.litres} if cost.step.is_coat else {}


def to_cover(amount: Range) -> float:
    """Return the amount that purchases must cover: half-way between the likely and the high one."""
    return 0.5 * (amount.likely + amount.high)


def curve_of(know: Knowledge, workshop: Workshop, key: Key, most: float) -> Curve:
    """
    Return what amounts of a thing cost, bought whole against the shelf.

    Parameters
    ----------
    know, workshop
        Facts; shelf, tin sizes and prices.
    key
        Kind and id.
    most
        Amount up to which it must hold; litres for films [L].

    Returns
    -------
    Curve
        Of amounts used; what stays in brush and can is added here, once.
    """
    _, cls = key
    there = on_shelf(workshop, cls) - DEAD_L
    price = price_per_litre(know, workshop, cls)
    upto = max(0.0, there)
    steps = [(upto, 0.0)]
    while upto < most:
        tins = tins_for(workshop, cls, upto - there + _MORE_L)
        upto = there + sum(tins)
        steps.append((upto, sum(tins) * price))
    return Curve(steps=tuple(steps))
