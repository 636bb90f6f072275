"""How a thing is sold: sizes, price and what is there of it; what is bought for any amount, and what that costs."""

from dataclasses import dataclass
from math import ceil

from refettle.domain.piece import Product
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import ABRASIVE_M2, price_per_litre
from refettle.solver.choice import Curve, Key

DEAD_L = 0.05
"""What stays in brush and can, per film [L]; coatings notes §1.1, common practice."""
_TINS_L = (0.1, 0.25, 0.5, 0.75, 1.0, 2.5)
_MOST_TINS = 3
_TIN_L = 0.2
_MORE = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Ware:
    """
    A thing as it is sold.

    Attributes
    ----------
    sizes
        Contents of a tin [L] or pack [1], smallest first.
    price
        Price of a litre or piece [money].
    have
        What is there and can be used: litres [L] or pieces [1].
    extra
        What is used beyond the need, once [L].
    step_price
        Price at which steps count a litre or piece, at the most [money]; 0 where that is `price` itself.
    because
        Fact rows behind need and price.
    """

    sizes: tuple[float, ...]
    price: float
    have: float
    extra: float = 0.0
    step_price: float = 0.0
    because: tuple[str, ...] = ()


def ware_of(know: Knowledge, workshop: Workshop, key: Key) -> Ware:
    """Return how a film, remover, cleaner (by the litre) or abrasive (by the piece) is sold and what there is of it."""
    kind, id_ = key
    own = [p for p in workshop.products if p.cls == id_ and p.kind == kind]
    if kind == "film":
        sizes = sorted({p.size_l for p in own if p.size_l > 0}) or list(_TINS_L)
        rows = (*know.because(f"film:{id_}", "wet_um"), *know.because(f"film:{id_}", "price_l"))
        price = price_per_litre(know, workshop, id_)
        return Ware(sizes=tuple(sizes), price=price, have=_have(own), extra=DEAD_L, because=rows)
    if kind == "abrasive":
        return _abrasive(know, workshop, id_)
    agent = know.remover(id_) if kind == "remover" else know.cleaner(id_)
    sizes = sorted({p.size_l for p in own if p.size_l > 0}) or [agent.tin_l]
    prices = [p.price / p.size_l for p in own if p.price is not None and p.size_l > 0]
    rows = tuple(i for prop in ("price_m2", "l_m2", "tin_l") for i in know.because(f"{kind}:{id_}", prop))
    counted_at = agent.price_m2 / agent.l_m2
    price = min(prices) if prices else counted_at
    return Ware(sizes=tuple(sizes), price=price, have=_have(own), step_price=counted_at, because=rows)


def _have(own: list[Product]) -> float:
    """Return the litres of some tins [L]."""
    return sum(p.have_l for p in own)


def _abrasive(know: Knowledge, workshop: Workshop, id_: str) -> Ware:
    """Return how a sheet, disc or pad is sold."""
    supply, _, grit = id_.partition(".P")
    facts = know.supply(supply)
    have = counted(workshop, supply, int(grit) if grit else 0)
    rows = tuple(
        i for prop in ("price", "serves_m2", "clogged_m2") for i in know.because(f"supply:{supply}", prop)
    )
    return Ware(
        sizes=(facts.pack,), price=facts.price / facts.pack, have=have, step_price=ABRASIVE_M2 * facts.serves_m2,
        because=rows,
    )  # fmt: skip


def counted(workshop: Workshop, supply: str, grit: int = 0) -> float:
    """Return how many of a supply there are [1], of one grit where it has any."""
    return sum(
        p.have_count for p in workshop.products if p.kind == "supply" and p.cls == supply and p.grit == grit
    )


def packs_for(ware: Ware, short: float) -> tuple[float, ...]:
    """
    Return the tins or packs that hold what is short with least left over: at most two sizes mixed.

    Parameters
    ----------
    ware
        How it is sold.
    short
        What is short [L] or [1].

    Returns
    -------
    tuple of float
        Contents, largest first; none where nothing is short.
    """
    if short <= 0:
        return ()
    sizes = ware.sizes
    best = [sizes[-1]] * ceil(short / sizes[-1])
    for large in sizes:
        for count in range(ceil(short / large) + 1):
            left = short - count * large
            rest = [s for s in sizes if s >= left - 1e-9]
            if left > 0 and not rest:
                continue
            tins = [large] * count + ([rest[0]] if left > 0 else [])
            if len(tins) <= _MOST_TINS and tins and _weight(tins) < _weight(best):
                best = tins
    return tuple(sorted(best, reverse=True))


def _weight(tins: list[float]) -> float:
    """Return what tins cost relative to a litre: the contents, and a fifth of a litre for each tin [L]."""
    return sum(tins) + _TIN_L * len(tins)


def curve_of(ware: Ware, most: float) -> Curve:
    """
    Return what amounts of a thing cost, bought whole against what is there.

    Parameters
    ----------
    ware
        How it is sold.
    most
        Amount up to which it must hold: litres [L] or pieces [1].

    Returns
    -------
    Curve
        Of amounts needed; what stays in brush and can is added here, once.
    """
    there = ware.have - ware.extra
    upto = max(0.0, there)
    steps = [(upto, 0.0)]
    while upto < most:
        bought = packs_for(ware, upto - there + _MORE)
        upto = there + sum(bought)
        steps.append((upto, sum(bought) * ware.price))
    return Curve(steps=tuple(steps))
