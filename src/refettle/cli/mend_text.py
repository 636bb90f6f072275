"""Ways to put trouble right, as a page."""

from typing import Final

from refettle.bootstrap import Laid, Mended
from refettle.cli.group_text import totals_words, write_risks, write_steps
from refettle.cli.page import Page
from refettle.cli.plan_text import need_words, write_care, write_findings
from refettle.cli.trouble_words import COLUMN, fault_words, start, write_understood
from refettle.cli.words import chance_words
from refettle.domain.piece_plan import Purchase
from refettle.knowledge.knowledge import Knowledge
from refettle.services.mend_ways import Mend
from refettle.services.step_words import step_words

_SHOWN_RISK: Final = 0.05
_MOST_OTHER: Final = 3
_MOST_NAMES: Final = 8


def mend_text(laid: Laid, mended: Mended, page: Page) -> str:
    """
    Return the page of ways to put trouble right.

    Parameters
    ----------
    laid
        Piece, names, money.
    mended
        The ways.
    page
        Empty page of the right width.

    Returns
    -------
    str
        What it is taken for; the way that costs least, all counted; other ways; other surfaces; the shelf.
    """
    know, right = laid.names, mended.right
    page.heading(f"{laid.piece.name}, {mended.looked.surface.name}: how to put it right")
    write_understood(page, mended.looked)
    if not right.mends:
        page.heading("Not known here")
        page.write(
            "Something else is likelier than all that is known: no way can be named.", indent=2, hang=2
        )
        return page.text()
    _taken_as(page, mended, know)
    first, *others = right.mends
    page.heading(f"Do it like this: {first.name[:1].lower()}{first.name[1:]}")
    _way(page, first, know, laid.workshop.currency)
    _others(page, others, know, laid.workshop.currency)
    _elsewhere(page, mended, know)
    _shelf(page, mended.around.shelf)
    write_care(page, mended.around.care)
    write_findings(page, laid.findings)
    return page.text()


def _taken_as(page: Page, mended: Mended, know: Knowledge) -> None:
    """Write what the ways are made for, and whether a second cause would change them."""
    right = mended.right
    page.heading("Taken for")
    shares: dict[str, float] = {}
    for cause, share in right.causes:
        shares[cause.suspect.fault] = shares.get(cause.suspect.fault, 0.0) + share
    for fault, share in shares.items():
        page.marked(chance_words(share), start(fault_words(know, fault)), indent=2, column=COLUMN)
    other = next((chance for fault, chance in mended.looked.found.faults if not fault), 0.0)
    page.marked(chance_words(other), "something else, that no way below is made for", indent=2, column=COLUMN)
    if len(shares) > 1:
        same = "Whichever of the first two it is, the mend goes equally deep."
        unlike = "The first two would be mended differently: find out which it is with diagnose, or settle it with --fault."
        page.write(same if right.same else unlike, indent=2, hang=2)


def _way(page: Page, mend: Mend, know: Knowledge, currency: str) -> None:
    """Write the way to take."""
    if mend.route is None:
        page.write(
            "Nothing is done: every mend costs more than what is spoilt. It does not mend itself.",
            indent=2,
            hang=2,
        )
        return
    write_steps(page, mend.route, know, currency)
    page.gap()
    page.write(f"In all {totals_words(mend.route, currency)}", indent=2, hang=2)
    write_risks(page, mend.route.risks, know, len(mend.route.steps), everything=False, floor=_SHOWN_RISK)


def _others(page: Page, others: list[Mend], know: Knowledge, currency: str) -> None:
    """Write other ways, each with what it takes and its steps."""
    ways = [mend for mend in others if mend.route is not None][:_MOST_OTHER]
    left = next((mend for mend in others if mend.route is None), None)
    if not ways and left is None:
        return
    page.heading("Other ways, cheapest first with all that may go wrong counted")
    for mend in ways:
        if mend.route is not None:
            page.write(f"{mend.name}: {totals_words(mend.route, currency)}", indent=2, hang=2)
            page.write("; ".join(step_words(know, cost.step) for cost in mend.route.steps), indent=4, hang=2)
    if left is not None:
        page.write(
            f"{left.name}: no work; what is spoilt counts about {left.cost:.0f} {currency}", indent=2, hang=2
        )


def _named(names: tuple[str, ...]) -> str:
    """Return names in a row, the long tail counted."""
    more = len(names) - _MOST_NAMES
    return ", ".join(names[:_MOST_NAMES]) + (f" and {more} more" if more > 0 else "")


def _elsewhere(page: Page, mended: Mended, know: Knowledge) -> None:
    """Write what it means for other surfaces."""
    near = mended.around
    if not near.same_steps and not near.unlike:
        return
    page.heading("Other surfaces")
    if near.same_steps:
        page.write(f"Had the same steps, so look there too: {_named(near.same_steps)}.", indent=2, hang=2)
    if near.unlike:
        kept = know.name("film", near.kept)
        page.write(
            f"Keep {kept}, and may differ in tone and sheen from here on: {_named(near.unlike)}.",
            indent=2,
            hang=2,
        )


def _shelf(page: Page, shelf: tuple[Purchase, ...]) -> None:
    """Write what the mend uses up, and what is to be bought for it."""
    if not shelf:
        return
    page.heading("From the shelf, and to buy")
    for item in shelf:
        bought = f"{item.name}: buy {item.buy}" if item.buy else f"{item.name}: the shelf is enough"
        page.write(f"{bought}; {need_words(item)}", indent=2, hang=2)
