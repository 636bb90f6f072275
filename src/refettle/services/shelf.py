"""What on the shelf can be counted on: frozen, old and long opened tins are told and left out."""

from dataclasses import replace

from refettle.domain.finding import Finding
from refettle.domain.piece import Product
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge

_TEST = "put a drop on glass: hard overnight, and it is good"
_AWAY = "a collection point takes it; buy anew"
_YEAR = 12.0
_FROM_YEARS = 24.0


def sort_shelf(know: Knowledge, workshop: Workshop) -> tuple[Workshop, tuple[Finding, ...]]:
    """
    Return the workshop without what is past use, and what was found.

    Parameters
    ----------
    know
        All facts, how long classes keep among them.
    workshop
        The shelf as the file says.

    Returns
    -------
    tuple
        The workshop: what cannot be counted on has nothing left in it. Notes on each such tin, and on those
        that are old enough to be tested before they are used.

    Notes
    -----
    Past the long end of what its class keeps a tin is not counted; past the short end it is, with a test. Water-borne
    coats that have been frozen are not counted: most have curdled. A tin without an age is taken as good.
    """
    kept: list[Product] = []
    told: list[Finding] = []
    for product in workshop.products:
        why, spoilt = _doubt(know, product)
        kept.append(replace(product, have_l=0.0) if spoilt else product)
        if not why:
            continue
        what = f"{product.name}: {why}" + ("; not counted" if spoilt else "; counted")
        code = "stock-not-counted" if spoilt else "stock-to-test"
        do = f"{_TEST}; else {_AWAY}" if not spoilt or not product.frozen else _AWAY
        told.append(Finding(code=code, level="note", where=product.where, what=what, do=do))
    return replace(workshop, products=tuple(kept)), tuple(told)


def _doubt(know: Knowledge, product: Product) -> tuple[str, bool]:
    """Return what speaks against a tin in words, and whether it is past use; no words where nothing does."""
    if product.kind != "film" or product.have_l <= 0:
        return "", False
    if product.frozen and know.film(product.cls).carrier == "water":
        return "it has been frozen, and a water-borne coat curdles then", True
    if product.age_months is None:
        return "", False
    prop = "keeps_opened_months" if product.opened else "keeps_months"
    low, _, high = know.range_of(f"film:{product.cls}", prop)
    if product.age_months <= low:
        return "", False
    state = "opened, it keeps" if product.opened else "closed, it keeps"
    keeps = age_words(low) if low == high else f"{age_words(low)} to {age_words(high)}"
    return f"{age_words(product.age_months)} old; {state} {keeps}", product.age_months > high


def age_words(months: float) -> str:
    """Return an age in words [month]: ``8 months``, ``3 years``."""
    if months >= _FROM_YEARS:
        return f"{months / _YEAR:.2g} years"
    return "1 month" if round(months) == 1 else f"{months:.0f} months"
