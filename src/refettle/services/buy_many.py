"""One shopping list for several pieces: litres are added first, then set against the shelf once."""

from dataclasses import dataclass

from refettle.domain.piece import Workshop
from refettle.domain.piece_plan import PiecePlan, Purchase
from refettle.domain.plan import Range
from refettle.knowledge.knowledge import Knowledge
from refettle.services.buying import ZERO, film_purchase, tins_to_buy

_RAGS = (
    "Rags with oil in them can catch fire by themselves: spread them flat outdoors to dry the same night, or keep "
    "them under water in a lidded can."
)
_LEFTOVERS = (
    "Nothing goes down the drain: close tins well and keep them from frost, or take what is left, with dirty "
    "thinner and scrapings, to a collection point for paint and solvent."
)
DISPOSAL_SOURCE = "common-practice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """
    What one piece needs of a material.

    Attributes
    ----------
    piece
        Name of the piece.
    need_l
        Litres, what stays in brush and can included [L]; zeros where it is not sold by the litre.
    money
        What it would cost bought for that piece alone [money].
    """

    piece: str
    need_l: Range
    money: Range


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """
    One material for all pieces.

    Attributes
    ----------
    purchase
        What is needed, what there is, what to buy.
    shares
        Which piece needs how much, in the order of the pieces.
    left_l
        What will be left, shelf and tins together [L]; zeros where it is not sold by the litre.
    """

    purchase: Purchase
    shares: tuple[Share, ...]
    left_l: Range


@dataclass(frozen=True, slots=True, kw_only=True)
class ShoppingList:
    """
    Everything to buy for some pieces.

    Attributes
    ----------
    items
        Films first, then removers, cleaners, bleaches, repairs, abrasives; each in the order it is first met,
        abrasives by grit.
    money
        What it costs [money].
    apart
        What it would cost if each piece were bought for alone, the shelf offered to each [money].
    left_out
        Groups with no way to their look, so that nothing is counted for them: piece and group.
    disposal
        One line on rags and leftovers; empty where nothing is coated or washed.
    """

    items: tuple[Bought, ...]
    money: Range
    apart: Range
    left_out: tuple[tuple[str, str], ...]
    disposal: str


_ORDER = ("film", "remover", "cleaner", "bleach", "repair", "abrasive")


def buy_many(know: Knowledge, workshop: Workshop, plans: tuple[tuple[str, PiecePlan], ...]) -> ShoppingList:
    """
    Return the shopping list of several pieces.

    Parameters
    ----------
    know, workshop
        Facts; shelf, tin sizes and prices.
    plans
        Names of the pieces, each once, with their plans.

    Returns
    -------
    ShoppingList
        For one piece alone the same tins as its plan says.

    Notes
    -----
    What stays in brush and can is counted once per piece and material, as each piece has its own evenings.
    """
    wanted: dict[tuple[str, str], list[tuple[str, Purchase]]] = {}
    for name, plan in plans:
        for item in plan.buy:
            wanted.setdefault((item.kind, item.cls), []).append((name, item))
    items = [_together(know, workshop, rows) for rows in wanted.values()]
    items.sort(key=_place)
    return ShoppingList(
        items=tuple(items),
        money=sum((item.purchase.money for item in items), start=ZERO),
        apart=sum((plan.money for _, plan in plans), start=ZERO),
        left_out=tuple((name, g.name) for name, plan in plans for g in plan.groups if g.route is None),
        disposal=_disposal(know, items),
    )


def _place(item: Bought) -> tuple[int, int]:
    """Return where an item stands in the list: by kind, abrasives by grit."""
    kind = item.purchase.kind
    return _ORDER.index(kind), int(item.purchase.cls) if kind == "abrasive" else 0


def _together(know: Knowledge, workshop: Workshop, rows: list[tuple[str, Purchase]]) -> Bought:
    """Return one material over all pieces."""
    first = rows[0][1]
    shares = tuple(Share(piece=name, need_l=item.need_l, money=item.money) for name, item in rows)
    if first.kind == "film":
        need = sum((share.need_l for share in shares), start=ZERO)
        purchase = film_purchase(know, workshop, first.cls, need)
        there = purchase.have_l + sum(tins_to_buy(workshop, first.cls, need))
        left = Range(
            low=max(0.0, there - need.high),
            likely=max(0.0, there - need.likely),
            high=max(0.0, there - need.low),
        )
        return Bought(purchase=purchase, shares=shares, left_l=left)
    purchase = Purchase(
        cls=first.cls,
        kind=first.kind,
        name=first.name,
        need_l=ZERO,
        have_l=0.0,
        buy=first.buy,
        money=sum((share.money for share in shares), start=ZERO),
        because=first.because,
    )
    return Bought(purchase=purchase, shares=shares, left_l=ZERO)


def _disposal(know: Knowledge, items: list[Bought]) -> str:
    """Return the line on rags and leftovers [common practice]."""
    wet = [item.purchase for item in items if item.purchase.kind != "abrasive"]
    oily = any(item.kind == "film" and know.film(item.cls).self_heats for item in wet)
    return " ".join(line for line, needed in ((_RAGS, oily), (_LEFTOVERS, bool(wet))) if needed)
