"""What to buy: what all steps use of each material, set against the shelf, in whole tins and sheets."""

from refettle.domain.piece_plan import GroupPlan, Purchase
from refettle.domain.plan import Range, StepCost
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.needs import needs_of, to_cover
from refettle.services.ware import packs_for, ware_of
from refettle.solver.choice import Key

_FREE = frozenset({"water-rinse", "vacuum", "dry-cloth", "damp-cloth"})
_BLEACHES = {
    "oxalic-acid": "oxalic acid",
    "chlorine": "chlorine bleach",
    "peroxide-alkali": "two-part bleach",
}
ZERO = Range(low=0.0, likely=0.0, high=0.0)
KINDS = ("film", "remover", "cleaner", "bleach", "repair", "abrasive", "gear")
"""Kinds of purchase in the order of a list."""


def place_on_list(item: Purchase) -> tuple[int, str, int]:
    """Return where a purchase stands in a list: by kind, abrasives by what they are and by grit."""
    supply, _, grit = item.cls.partition(".P") if item.kind == "abrasive" else ("", "", "")
    return KINDS.index(item.kind), supply, int(grit or 0)


def to_buy(know: Knowledge, workshop: Workshop, plans: tuple[GroupPlan, ...]) -> tuple[Purchase, ...]:
    """
    Return the materials of a plan with what to buy.

    Notes
    -----
    Films, removers and cleaners by the litre, abrasives by the piece: what all groups need, against the shelf,
    whole tins, sheets and packs to cover half-way between the likely and the high need. Of a film 0.05 L more
    stay in brush and can (coatings notes §1.1, common practice). Bleaches, and soap and the like, are priced by
    area, repairs by the piece.
    """
    need: dict[Key, Range] = {}
    other: dict[Key, Range] = {}
    for plan in plans:
        for cost in plan.route.steps if plan.route is not None else ():
            whole = needs_of(know, plan.area_m2, cost)
            for key, amount in whole.items():
                need[key] = need.get(key, ZERO) + amount
            loose = _by_area(know, cost)
            if loose is not None and not whole:
                other[loose] = other.get(loose, ZERO) + cost.money
    bought = [
        whole_purchase(know, workshop, key, _with_extra(amount, ware_of(know, workshop, key).extra))
        for key, amount in need.items()
    ]
    bought += [_loose_purchase(know, key, money) for key, money in other.items()]
    return tuple(sorted(bought, key=place_on_list))


def whole_purchase(know: Knowledge, workshop: Workshop, key: Key, need: Range) -> Purchase:
    """
    Return the purchase of something that is bought whole.

    Parameters
    ----------
    know, workshop
        Facts; shelf, sizes and prices.
    key
        Kind and id.
    need
        What is needed, what stays in brush and can included [L] or [1].

    Returns
    -------
    Purchase
        With tins or pieces in words; no words and no money where the shelf is enough.
    """
    kind, id_ = key
    ware = ware_of(know, workshop, key)
    bought = packs_for(ware, to_cover(need) - ware.have)
    money = sum(bought) * ware.price
    counted = kind == "abrasive"
    return Purchase(
        cls=id_, kind=kind, name=whole_name(know, key), buy=_words(kind, bought),
        money=Range(low=0.8 * money, likely=money, high=1.3 * money), because=ware.because,
        need_l=ZERO if counted else need, need_count=need if counted else ZERO,
        have_l=0.0 if counted else ware.have, have_count=ware.have if counted else 0.0,
        bought_l=0.0 if counted else sum(bought), bought_count=sum(bought) if counted else 0.0,
    )  # fmt: skip


def _with_extra(need: Range, extra: float) -> Range:
    """Return what is used with what stays in brush and can added [L]."""
    return Range(low=need.low + extra, likely=need.likely + extra, high=need.high + extra)


def whole_name(know: Knowledge, key: Key) -> str:
    """Return how a thing bought whole stands on the list."""
    kind, id_ = key
    if kind != "abrasive":
        return know.name(kind, id_)
    supply, _, grit = id_.partition(".P")
    return f"{know.name('supply', supply)} P{grit}" if grit else know.name("supply", supply)


def _words(kind: str, bought: tuple[float, ...]) -> str:
    """Return tins or pieces in words, largest first; empty where none is bought."""
    sizes = [(size, bought.count(size)) for size in sorted(set(bought), reverse=True)]
    if kind != "abrasive":
        return " + ".join(f"{n} × {s:g} L" if n > 1 else f"{s:g} L" for s, n in sizes)
    return " + ".join(pack_words(round(s), n) for s, n in sizes)


def pack_words(pack: int, count: int) -> str:
    """Return so many packs in words: ``3``, or ``2 packs of 5``."""
    return f"{count}" if pack == 1 else f"{count} pack{'s' if count > 1 else ''} of {pack}"


def _by_area(know: Knowledge, cost: StepCost) -> Key | None:
    """Return the kind and id of what a working step uses up, whatever it is sold by; None where it costs nothing."""
    step: Step = cost.step
    if step.verb in {"clean", "rinse", "neutralise"}:
        return None if step.what in _FREE else ("cleaner", step.what)
    if step.verb == "strip":
        return "remover", step.what
    if step.verb == "repair" and know.has("repair", step.what) and know.repair(step.what).price > 0:
        return "repair", step.what
    return ("bleach", step.what) if step.verb == "bleach" else None


def _loose_purchase(know: Knowledge, key: Key, money: Range) -> Purchase:
    """Return the purchase of something priced by area or by the piece of work."""
    kind, what = key
    name: str
    because: tuple[str, ...]
    if kind == "bleach":
        name, because = _BLEACHES.get(what, f"{what} bleach"), ("verb:bleach",)
    elif kind == "repair":
        name, because = f"for: {know.name(kind, what)}", know.because(f"repair:{what}", "price")
    else:
        name, because = know.name(kind, what), know.because(f"{kind}:{what}", "price_m2")
    return Purchase(
        cls=what, kind=kind, name=name, need_l=ZERO, have_l=0.0, buy=name, money=money, because=because
    )
