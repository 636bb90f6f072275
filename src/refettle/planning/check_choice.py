"""Checks of the choice for the whole piece: its cost by own count, and one answer per look."""

from collections.abc import Iterator

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import GroupPlan, PiecePlan, Purchase
from refettle.domain.plan import Route
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_sums import setup_h
from refettle.planning.start import start

_LEAST_SETUP = 0.12
_NEAR = 0.02
_BODY = ("paint", "topcoat")


def choice(know: Knowledge, piece: Piece, workshop: Workshop, plan: PiecePlan) -> Iterator[Finding]:
    """Yield what is wrong with the choice of a plan."""
    said = plan.choice
    if said is None:
        return
    where = Where(file=piece.name, path="choice")
    if not 0.0 <= said.gap < 1.0 or said.ways < 1:
        what = f"{said.ways} ways and a gap of {said.gap:g} cannot be"
        yield Finding(code="choice-odd", level="error", where=where, what=what, do="count again")
    own = _cost(know, piece, workshop, plan)
    if abs(own - said.cost) > _NEAR + 1e-3 * abs(own):
        what = f"the choice says {said.cost:.2f}, its routes, set-ups and tins make {own:.2f}"
        yield Finding(
            code="cost-differs", level="error", where=where, what=what, do="add up the choice again"
        )
    split = _splits(know, piece, plan)
    if split != said.splits:
        what = f"parts of one look differ {split} times, the choice says {said.splits}"
        yield Finding(
            code="look-split", level="error", where=where, what=what, do="let the parts of a look agree"
        )


def _cost(know: Knowledge, piece: Piece, workshop: Workshop, plan: PiecePlan) -> float:
    """Return what the routes of a plan cost together [money]: work and risk, set-ups once, what is bought whole."""
    whole = sum(s.area_m2 for s in piece.surfaces) or 1.0
    cost = sum(item.money.likely for item in plan.buy if _whole(item))
    longest: dict[tuple[str, str], float] = {}
    for group in plan.groups:
        if group.route is None:
            continue
        share = max(_LEAST_SETUP, group.area_m2 / whole)
        hours = _setups(know, group.route)
        cost += group.route.cost - share * workshop.hour_worth * sum(hours.values())
        cost -= sum(c.money.likely for c in group.route.steps if _sold_whole(know, c.step))
        for key, own in hours.items():
            longest[key] = max(own, longest.get(key, 0.0))
    return cost + workshop.hour_worth * sum(longest.values())


def _whole(item: Purchase) -> bool:
    """Return whether something on the list is bought by the tin or piece."""
    return item.need_l.high > 0 or item.need_count.high > 0


def _sold_whole(know: Knowledge, step: Step) -> bool:
    """Return whether what a step uses is bought by the tin or piece, so that the list has its price."""
    if step.verb in {"clean", "rinse", "neutralise"} and know.has("cleaner", step.what):
        return know.cleaner(step.what).l_m2 > 0
    if step.verb == "strip" and know.has("remover", step.what):
        return know.remover(step.what).l_m2 > 0
    abrades = step.verb in {"sand", "scuff", "rub_out"}
    padded = step.method in {"synthetic-pad", "steel-wool"} or "steel wool" in step.how
    return step.is_coat or (abrades and (step.grit > 0 or padded))


def _setups(know: Knowledge, route: Route) -> dict[tuple[str, str], float]:
    """Return set-up and clean-up of a route, by work and material [h]."""
    hours: dict[tuple[str, str], float] = {}
    for step in (c.step for c in route.steps):
        hours[step.verb, step.what] = hours.get((step.verb, step.what), 0.0) + setup_h(know, step)
    return hours


def _splits(know: Knowledge, piece: Piece, plan: PiecePlan) -> int:
    """Return how many answers too many the parts of the looks give: body class, old film kept or off."""
    bodies: dict[tuple[object, ...], set[str]] = {}
    grounds: dict[tuple[object, ...], set[bool]] = {}
    for group in plan.groups:
        look, route = group.look, group.route
        if route is None or not route.steps:
            continue
        key = (look.kind, look.colour, look.depth, look.sheen)
        body = _body(route)
        if body and look.kind in {"natural", "stained", "oiled", "opaque"}:
            bodies.setdefault(key, set()).add(body)
        if look.kind in {"natural", "stained"} and not _began_bare(know, piece, group):
            off = any(c.step.verb == "strip" or "to bare" in c.step.how for c in route.steps)
            grounds.setdefault(key, set()).add(off)
    return sum(len(said) - 1 for said in bodies.values()) + sum(len(said) - 1 for said in grounds.values())


def _began_bare(know: Knowledge, piece: Piece, group: GroupPlan) -> bool:
    """Return whether a group has no film on it in its likeliest reading, what has been done counted in."""
    surface = next((s for s in piece.surfaces if s.name in group.members), None)
    return surface is not None and start(know, piece, surface).worlds[0].states[0].bare


def _body(route: Route) -> str:
    """Return the class that makes the look of a route: its last paint, else its last clear coat."""
    for verb in _BODY:
        made = [c.step.what for c in route.steps if c.step.verb == verb]
        if made:
            return made[-1]
    return ""
