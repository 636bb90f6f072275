"""One shopping list for several pieces, as a page."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.plan_text import need_words, write_findings
from refettle.cli.words import litres_words, money_words, pieces_words
from refettle.domain.finding import Finding
from refettle.domain.workshop import Workshop
from refettle.services.buy_many import Bought, Share, ShoppingList
from refettle.services.disposal import LOCAL

_HEADS: Final = {
    "film": "Coats and colours",
    "remover": "Removers",
    "cleaner": "For cleaning",
    "bleach": "Bleaches",
    "repair": "For mending",
    "abrasive": "Abrasives",
    "gear": "To work with; serves other pieces too",
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
    whole = purchase.need_l.high > 0 or purchase.need_count.high > 0
    if whole and not purchase.buy:
        page.write(f"{purchase.name}: the shelf is enough", indent=2, hang=2)
    else:
        tins = f": {purchase.buy}" if whole else ""
        page.ended(
            f"{purchase.name}{tins}", money_words(purchase.money, currency), indent=2, hang=2, keep=room
        )
    page.write(need_words(purchase), indent=4, hang=2)
    if several:
        for share in item.shares:
            page.write(f"{share.piece}: {_share(share, currency)}", indent=6, hang=2)


def _share(share: Share, currency: str) -> str:
    """Return what one piece needs."""
    return litres_words(share.need_l) or pieces_words(share.need_count) or money_words(share.money, currency)


def _sums(page: Page, pieces: tuple[str, ...], shopping: ShoppingList, currency: str) -> None:
    """Write what it costs in all, and what buying together saves."""
    if not shopping.items:
        return
    page.heading("In all")
    page.write(money_words(shopping.money, currency), indent=2)
    if shopping.gear_money.likely > 0:
        page.write(
            f"and to work with, not on the shelf: {money_words(shopping.gear_money, currency)}", indent=2
        )
    saved = shopping.apart.likely - shopping.money.likely
    if len(pieces) > 1 and round(abs(saved)) > 0:
        apart = money_words(shopping.apart, currency)
        if saved > 0:
            page.write(f"Bought for each piece alone: {apart}", indent=2, hang=2)
        else:
            why = "the shelf, counted for each alone, does not go round"
            page.write(f"More than the plans say one by one ({apart}): {why}", indent=2, hang=2)


def _left_over(page: Page, shopping: ShoppingList) -> None:
    """Write what to do with what is left, with rags and with scrapings."""
    if not shopping.disposal:
        return
    page.heading("Left over")
    for waste in shopping.disposal:
        page.write(waste.text, indent=2, hang=2)
    page.write(f"Follow the label and its safety data sheet. {LOCAL}", indent=2, hang=2)


def _left_out(page: Page, shopping: ShoppingList) -> None:
    """Write for what nothing is counted."""
    if not shopping.left_out:
        return
    page.heading("Not in this list: there is no way to the look asked for")
    for piece, group in shopping.left_out:
        page.write(f"{piece}: {group}", indent=2, hang=2)
