"""What a step uses up of things that are bought whole: litres of films and agents, sheets of abrasive."""

from refettle.domain.plan import Range, StepCost
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.solver.choice import Key

_COARSE_TO_BARE = (80, 120)
_THROUGH = (120, 150, 180, 220)
_BY_METHOD = {
    "random-orbit": "abrasive-disc",
    "synthetic-pad": "abrasive-pad",
    "steel-wool": "fine-steel-wool",
}
_GRITLESS = frozenset({"abrasive-pad", "fine-steel-wool"})
_WASHES = frozenset({"clean", "rinse", "neutralise"})
_ABRADES = frozenset({"sand", "scuff", "rub_out"})


def needs_of(know: Knowledge, area_m2: float, cost: StepCost) -> dict[Key, Range]:
    """
    Return what a step uses of things bought whole.

    Parameters
    ----------
    know
        All facts.
    area_m2
        Area of the group [m²].
    cost
        The step with its amounts.

    Returns
    -------
    dict
        Kind and id → amount: litres [L] of a ``film``, ``remover`` or ``cleaner``; pieces [1] of an ``abrasive``,
        whose id ends in its grit. Empty for what is not bought, or so cheap that it is counted by area.
    """
    step = cost.step
    if step.is_coat:
        return {("film", step.what): cost.litres}
    if step.verb in _WASHES and know.has("cleaner", step.what):
        agent = know.cleaner(step.what)
        kind, _, id_ = (agent.bought_as or f"cleaner:{step.what}").partition(":")
        return {(kind, id_): _about(area_m2 * agent.l_m2)} if agent.l_m2 > 0 else {}
    if step.verb == "strip" and know.has("remover", step.what):
        litres = area_m2 * know.remover(step.what).l_m2 * max(1, step.coats)
        return {("remover", step.what): _about(litres)} if litres > 0 else {}
    return _abrasives(know, area_m2, step) if step.verb in _ABRADES else {}


def _about(amount: float) -> Range:
    """Return an amount with the usual width of material."""
    return Range(low=0.8 * amount, likely=amount, high=1.4 * amount)


def _abrasives(know: Knowledge, area_m2: float, step: Step) -> dict[Key, Range]:
    """Return the sheets, discs or pads that abrading takes [1], by grit."""
    supply = "fine-steel-wool" if "steel wool" in step.how else _BY_METHOD.get(step.method, "abrasive-sheet")
    facts = know.supply(supply)
    if supply in _GRITLESS or not step.grit:
        return {("abrasive", supply): _about(area_m2 / facts.serves_m2)} if supply in _GRITLESS else {}
    needs = {}
    for turn, grit in enumerate(grits_of(step)):
        clogs = turn == 0 and "to bare" in step.how and facts.clogged_m2 > 0
        serves = facts.clogged_m2 if clogs else facts.serves_m2
        needs["abrasive", f"{supply}.P{grit}"] = _about(area_m2 / serves)
    return needs


def grits_of(step: Step) -> tuple[int, ...]:
    """Return the P grits that a step goes through, its own last [1]; coarse first to take a film off."""
    before: tuple[int, ...] = ()
    if "sequence" in step.how:
        before = _THROUGH
    if "to bare" in step.how:
        before = (*_COARSE_TO_BARE, *(g for g in before if g > _COARSE_TO_BARE[-1]))
    return (*(g for g in before if g < step.grit), step.grit)


def to_cover(amount: Range) -> float:
    """Return the amount that purchases must cover: half-way between the likely and the high one."""
    return 0.5 * (amount.likely + amount.high)
