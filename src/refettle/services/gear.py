"""Brushes, cloths and protection that the steps of a plan ask for, against what is there."""

from collections.abc import Iterator
from math import ceil

from refettle.domain.piece_plan import Caution, GroupPlan, Purchase
from refettle.domain.plan import Range
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.buying import ZERO, pack_words
from refettle.services.ware import counted

_GLOVES = ("vapour-", "remover-", "bleach-", "trade-", "oily-rags", "caustic", "wash-solvent", "lead-wet")
_CARTRIDGES = ("vapour-", "spray-mist", "remover-solvent", "trade-")
_DUST = ("dust", "spray-mist")
_WIPED = frozenset({"wipe", "pad"})
_CLOTHS_OF_WASH = 0.5


def gear_of(
    know: Knowledge, workshop: Workshop, plans: tuple[GroupPlan, ...], cautions: tuple[Caution, ...]
) -> tuple[Purchase, ...]:
    """
    Return the gear of a plan.

    Parameters
    ----------
    know, workshop
        Facts; what is there.
    plans
        Plans of the groups.
    cautions
        Care that they ask for.

    Returns
    -------
    tuple of Purchase
        Of kind ``gear``, what there is enough of included; in the order of `know`.

    Notes
    -----
    One brush for water-borne coats and one for the others: residue of one spoils the other [common practice].
    Cloths by the area that is wiped; gloves, mask and cartridges once for the piece where its cautions ask for
    them. What a caution asks for is never left out because it costs.
    """
    need: dict[str, float] = {}
    for plan in plans:
        for cost in plan.route.steps if plan.route is not None else ():
            for supply, count in _of_step(know, plan.area_m2, cost.step):
                lasts = know.supply(supply).serves_m2 <= 0
                need[supply] = max(need.get(supply, 0.0), count) if lasts else need.get(supply, 0.0) + count
    for supply, starts in (("gloves", _GLOVES), ("dust-mask", _DUST), ("vapour-cartridges", _CARTRIDGES)):
        if any(caution.id.startswith(starts) for caution in cautions):
            need[supply] = 1.0
    return tuple(gear_purchase(know, workshop, s, need[s]) for s in know.ids("supply") if s in need)


def _of_step(know: Knowledge, area_m2: float, step: Step) -> Iterator[tuple[str, float]]:
    """Yield what one step asks for and how many."""
    if step.is_coat:
        facts = know.film(step.what)
        if step.method == "brush":
            yield ("water-brush" if facts.carrier == "water" else "solvent-brush"), 1.0
        if step.method == "roller":
            yield "roller-sleeve", 1.0
        if step.method in _WIPED or facts.wiped_off:
            yield "cloth", max(1, step.coats) * area_m2 / know.supply("cloth").serves_m2
    elif step.verb in {"clean", "rinse", "neutralise", "revive"} and step.what not in {
        "vacuum",
        "tack-cloth",
    }:
        yield "cloth", _CLOTHS_OF_WASH * area_m2 / know.supply("cloth").serves_m2


def gear_purchase(know: Knowledge, workshop: Workshop, supply: str, need: float) -> Purchase:
    """Return the purchase of so many pieces of a supply [1], in whole packs, against what is there."""
    facts = know.supply(supply)
    have = counted(workshop, supply)
    whole = float(ceil(need - 1e-9))
    packs = max(0, ceil((whole - have) / facts.pack))
    money = packs * facts.price
    return Purchase(
        cls=supply, kind="gear", name=facts.name, buy=pack_words(round(facts.pack), packs) if packs else "",
        money=Range(low=0.8 * money, likely=money, high=1.3 * money) if packs else ZERO,
        because=know.because(f"supply:{supply}", "price"),
        need_count=Range(low=whole, likely=whole, high=whole), have_count=have, bought_count=packs * facts.pack,
    )  # fmt: skip
