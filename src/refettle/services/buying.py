"""What to buy: litres per material against the shelf, in tins."""

from math import ceil

from refettle.domain.piece import Workshop
from refettle.domain.piece_plan import GroupPlan, Purchase
from refettle.domain.plan import Range
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import price_per_litre

_TINS_L = (0.1, 0.25, 0.5, 0.75, 1.0, 2.5)
DEAD_L = 0.05
"""What stays in brush and can, per material [L]; coatings notes §1.1, common practice."""
_MOST_TINS = 3
_FREE = frozenset({"water-rinse", "vacuum", "dry-cloth", "damp-cloth"})
_BLEACHES = {"oxalic-acid": "oxalic acid", "chlorine": "chlorine bleach", "two-part": "two-part bleach"}
_ABRASIVE = ("formula:abrasive-by-area",)
ZERO = Range(low=0.0, likely=0.0, high=0.0)


def to_buy(know: Knowledge, workshop: Workshop, plans: tuple[GroupPlan, ...]) -> tuple[Purchase, ...]:
    """
    Return the materials of a plan with what to buy.

    Notes
    -----
    Films: litres of all groups, 0.05 L left in brush and can per material (coatings notes §1.1,
    common practice), against the shelf; tins rounded up to cover the high estimate's likely half.
    Cleaners, removers, bleaches and abrasives are priced by area, repairs by the piece.
    """
    need: dict[str, Range] = {}
    other: dict[tuple[str, str], Range] = {}
    for plan in plans:
        if plan.route is None:
            continue
        for cost in plan.route.steps:
            step = cost.step
            if step.is_coat:
                need[step.what] = need.get(step.what, ZERO) + cost.litres
                continue
            kind, what = _kind(know, step)
            if kind:
                other[kind, what] = other.get((kind, what), ZERO) + cost.money
    bought = [film_purchase(know, workshop, cls, _with_dead(amount)) for cls, amount in need.items()]
    for (kind, what), money in other.items():
        name, because = _named(know, kind, what)
        bought.append(
            Purchase(
                cls=what,
                kind=kind,
                name=name,
                need_l=ZERO,
                have_l=0.0,
                buy=name,
                money=money,
                because=because,
            )
        )
    return tuple(bought)


def _with_dead(amount: Range) -> Range:
    """Return what is used with what stays in brush and can added [L]."""
    return Range(low=amount.low + DEAD_L, likely=amount.likely + DEAD_L, high=amount.high + DEAD_L)


def _kind(know: Knowledge, step: Step) -> tuple[str, str]:
    """Return the kind of material a working step uses up."""
    if step.verb in {"clean", "rinse", "neutralise"}:
        return ("", "") if step.what in _FREE else ("cleaner", step.what)
    if step.verb == "strip":
        return "remover", step.what
    if step.verb in {"sand", "scuff", "rub_out"} and step.grit:
        return "abrasive", str(step.grit)
    if step.verb == "repair" and know.has("repair", step.what) and know.repair(step.what).price > 0:
        return "repair", step.what
    if step.verb == "bleach":
        return "bleach", step.what
    return "", ""


def _named(know: Knowledge, kind: str, what: str) -> tuple[str, tuple[str, ...]]:
    """Return how a material stands on the list and what its price rests on."""
    if kind == "abrasive":
        return f"abrasive P{what}", _ABRASIVE
    if kind == "bleach":
        return _BLEACHES.get(what, f"{what} bleach"), ("verb:bleach",)
    if kind == "repair":
        return f"for: {know.name(kind, what)}", know.because(f"repair:{what}", "price")
    return know.name(kind, what), know.because(f"{kind}:{what}", "price_m2")


def _tins(sizes: list[float], short_l: float) -> list[float]:
    """Return the tins that hold at least what is short with least left over: at most two sizes mixed [L]."""
    best = [sizes[-1]] * ceil(short_l / sizes[-1])
    for large in sizes:
        for count in range(ceil(short_l / large) + 1):
            left = short_l - count * large
            rest = [s for s in sizes if s >= left - 1e-9]
            if left > 0 and not rest:
                continue
            tins = [large] * count + ([rest[0]] if left > 0 else [])
            if len(tins) <= _MOST_TINS and tins and _weight(tins) < _weight(best):
                best = tins
    return best


def _weight(tins: list[float]) -> float:
    """Return what tins cost relative to a litre: the contents, and a fifth of a litre for each tin [L]."""
    return sum(tins) + 0.2 * len(tins)


def _counted(tins: tuple[float, ...]) -> list[tuple[float, int]]:
    """Return tin sizes with their count, largest first."""
    return [(size, tins.count(size)) for size in sorted(set(tins), reverse=True)]


def tins_to_buy(workshop: Workshop, cls: str, need: Range) -> tuple[float, ...]:
    """
    Return the tins that cover what the shelf is short of.

    Parameters
    ----------
    workshop
        Shelf and tin sizes.
    cls
        Film class.
    need
        What is needed, what stays in brush and can included [L].

    Returns
    -------
    tuple of float
        Contents [L], largest first; none where the shelf is enough.
    """
    short = 0.5 * (need.likely + need.high) - on_shelf(workshop, cls)
    return tins_for(workshop, cls, short) if short > 0 else ()


def tins_for(workshop: Workshop, cls: str, short_l: float) -> tuple[float, ...]:
    """Return the tins of a film class that hold what is short [L], above 0; contents [L], largest first."""
    sizes = sorted({p.size_l for p in workshop.products if p.cls == cls and p.size_l > 0}) or list(_TINS_L)
    return tuple(sorted(_tins(sizes, short_l), reverse=True))


def on_shelf(workshop: Workshop, cls: str) -> float:
    """Return what the shelf holds of a film class [L]."""
    return sum(p.have_l for p in workshop.products if p.cls == cls)


def film_purchase(know: Knowledge, workshop: Workshop, cls: str, need: Range) -> Purchase:
    """
    Return the purchase of one film class.

    Parameters
    ----------
    know, workshop
        Facts; shelf, tin sizes and prices.
    cls
        Film class.
    need
        What is needed, what stays in brush and can included [L].

    Returns
    -------
    Purchase
        With tins in words; no tins and no money where the shelf is enough.
    """
    bought = tins_to_buy(workshop, cls, need)
    money = sum(bought) * price_per_litre(know, workshop, cls)
    return Purchase(
        cls=cls,
        kind="film",
        name=know.film(cls).name,
        need_l=need,
        have_l=on_shelf(workshop, cls),
        buy=" + ".join(f"{n} × {s:g} L" if n > 1 else f"{s:g} L" for s, n in _counted(bought)),
        money=Range(low=0.8 * money, likely=money, high=1.3 * money),
        because=(*know.because(f"film:{cls}", "wet_um"), *know.because(f"film:{cls}", "price_l")),
    )
