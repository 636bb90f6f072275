"""One shopping list for several pieces, as a page."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.plan_text import write_findings
from refettle.cli.words import litres_words, money_words
from refettle.domain.finding import Finding
from refettle.domain.piece import Workshop
from refettle.domain.plan import Range
from refettle.services.buy_many import Bought, Share, ShoppingList

_LITTLE_L: Final = 0.02
_HEADS: Final = {
    "film": "Coats and colours",
    "remover": "Removers",
    "cleaner": "For cleaning",
    "abrasive": "Abrasives",
}


def buy_text(
    pieces: tuple[str, ...],
    shopping: ShoppingList,
    workshop: Workshop,
    findings: tuple[Finding, ...],
    page: Page,
) -> str:
    """
    Return the page of a shopping list.

    Parameters
    ----------
    pieces
        Names of the pieces.
    shopping
        The list.
    workshop
        Its name and currency.
    findings
        Problems in the files.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Kind by kind: what to buy and for how much, which piece needs how much, what will be left.
    """
    currency = workshop.currency
    page.heading(f"To buy for {', '.join(pieces)}")
    page.write(f"Workshop: {workshop.name}{'; invented, for demonstration' if workshop.invented else ''}")
    if not shopping.items:
        page.gap()
        page.write("Nothing is needed.", indent=2)
    for kind, head in _HEADS.items():
        items = [item for item in shopping.items if item.purchase.kind == kind]
        if items:
            page.heading(head)
            room = max(len(money_words(item.purchase.money, currency)) for item in items)
        for item in items:
            _item(page, item, currency, room, several=len(pieces) > 1)
    _sums(page, pieces, shopping, currency)
    _left_over(page, shopping)
    _left_out(page, shopping)
    write_findings(page, findings)
    return page.text()


def _item(page: Page, item: Bought, currency: str, room: int, *, several: bool) -> None:
    """Write one material: tins and money, which piece needs how much."""
    purchase = item.purchase
    litres = purchase.need_l.high > 0
    if litres and not purchase.buy:
        page.write(f"{purchase.name}: the shelf is enough", indent=2, hang=2)
    else:
        tins = f": {purchase.buy}" if litres else ""
        page.ended(
            f"{purchase.name}{tins}", money_words(purchase.money, currency), indent=2, hang=2, keep=room
        )
    if litres:
        on_shelf = f"; {litres_words(_about(purchase.have_l))} on the shelf" if purchase.have_l > 0 else ""
        page.write(f"needs {litres_words(purchase.need_l)}{on_shelf}", indent=4, hang=2)
    if several:
        for share in item.shares:
            page.write(f"{share.piece}: {_share(share, currency)}", indent=6, hang=2)


def _share(share: Share, currency: str) -> str:
    """Return what one piece needs."""
    return litres_words(share.need_l) or money_words(share.money, currency)


def _about(litres: float) -> Range:
    """Return an amount that is known as a range [L]."""
    return Range(low=litres, likely=litres, high=litres)


def _sums(page: Page, pieces: tuple[str, ...], shopping: ShoppingList, currency: str) -> None:
    """Write what it costs in all, and what buying together saves."""
    if not shopping.items:
        return
    page.heading("In all")
    page.write(money_words(shopping.money, currency), indent=2)
    saved = shopping.apart.likely - shopping.money.likely
    if len(pieces) > 1 and round(abs(saved)) > 0:
        apart = money_words(shopping.apart, currency)
        if saved > 0:
            page.write(f"Bought for each piece alone: {apart}", indent=2, hang=2)
        else:
            why = "the shelf, counted for each alone, does not go round"
            page.write(f"More than the plans say one by one ({apart}): {why}", indent=2, hang=2)


def _left_over(page: Page, shopping: ShoppingList) -> None:
    """Write what will be left in the tins, and what to do with it and with the rags."""
    if not shopping.disposal:
        return
    page.heading("Left over")
    for item in shopping.items:
        if item.left_l.high >= _LITTLE_L:
            page.write(f"{item.purchase.name}: {litres_words(item.left_l)}", indent=2, hang=2)
    page.write(shopping.disposal, indent=2, hang=2)
    page.write("Follow the label, its safety data sheet and local rules.", indent=2, hang=2)


def _left_out(page: Page, shopping: ShoppingList) -> None:
    """Write for what nothing is counted."""
    if not shopping.left_out:
        return
    page.heading("Not in this list: there is no way to the look asked for")
    for piece, group in shopping.left_out:
        page.write(f"{piece}: {group}", indent=2, hang=2)
