"""One shopping list for several pieces: litres are added first, then set against the shelf once."""

from dataclasses import dataclass, replace

from refettle.domain.piece_plan import PiecePlan, Purchase
from refettle.domain.plan import Range
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.buying import ZERO, place_on_list, whole_purchase
from refettle.services.disposal import Waste, wastes_of
from refettle.services.gear import gear_purchase


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
    need_count
        Pieces [1]; zeros where it is not sold by the piece.
    """

    piece: str
    need_l: Range
    money: Range
    need_count: Range = ZERO


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
    """

    purchase: Purchase
    shares: tuple[Share, ...]

    @property
    def left_l(self) -> Range:
        """Return what will be left, shelf and tins together [L]; zeros where it is not sold by the litre."""
        return self.purchase.left if self.purchase.need_l.high > 0 else ZERO

    @property
    def left_count(self) -> Range:
        """Return the pieces that will be left [1]; zeros where it is not sold by the piece."""
        return self.purchase.left if self.purchase.need_count.high > 0 else ZERO


@dataclass(frozen=True, slots=True, kw_only=True)
class ShoppingList:
    """
    Everything to buy for some pieces.

    Attributes
    ----------
    items
        Films first, then removers, cleaners, bleaches, repairs, abrasives, gear; each in the order it is first met,
        abrasives by grit.
    money
        What it costs, gear apart [money].
    gear_money
        What the gear costs that is not there [money].
    apart
        What it would cost if each piece were bought for alone, the shelf offered to each [money].
    left_out
        Groups with no way to their look, so that nothing is counted for them: piece and group.
    disposal
        What to do with what is left, one line per kind; empty where nothing is coated or washed.
    """

    items: tuple[Bought, ...]
    money: Range
    gear_money: Range
    apart: Range
    left_out: tuple[tuple[str, str], ...]
    disposal: tuple[Waste, ...]


_LEAD = frozenset({"lead", "lead-wet"})


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
        for item in (*plan.buy, *plan.gear):
            wanted.setdefault((item.kind, item.cls), []).append((name, item))
    items = [_together(know, workshop, rows) for rows in wanted.values()]
    items.sort(key=lambda item: place_on_list(item.purchase))
    return ShoppingList(
        items=tuple(items),
        money=sum((item.purchase.money for item in items if item.purchase.kind != "gear"), start=ZERO),
        gear_money=sum((item.purchase.money for item in items if item.purchase.kind == "gear"), start=ZERO),
        apart=sum((plan.money for _, plan in plans), start=ZERO),
        left_out=tuple((name, g.name) for name, plan in plans for g in plan.groups if g.route is None),
        disposal=wastes_of(
            know,
            (item.purchase for item in items),
            lead=any(caution.id in _LEAD for _, plan in plans for caution in plan.cautions),
        ),
    )


def _together(know: Knowledge, workshop: Workshop, rows: list[tuple[str, Purchase]]) -> Bought:
    """Return one material over all pieces; gear that serves many pieces is needed once for all of them."""
    first = rows[0][1]
    shares = tuple(
        Share(piece=name, need_l=item.need_l, money=item.money, need_count=item.need_count)
        for name, item in rows
    )
    if first.kind == "gear":
        counts = [share.need_count.likely for share in shares]
        need = max(counts) if know.supply(first.cls).lasts else sum(counts)
        return Bought(purchase=gear_purchase(know, workshop, first.cls, need), shares=shares)
    litres = sum((share.need_l for share in shares), start=ZERO)
    pieces = sum((share.need_count for share in shares), start=ZERO)
    if litres.high > 0 or pieces.high > 0:
        key = (first.kind, first.cls)
        return Bought(purchase=whole_purchase(know, workshop, key, litres + pieces), shares=shares)
    money = sum((share.money for share in shares), start=ZERO)
    return Bought(purchase=replace(first, money=money), shares=shares)
