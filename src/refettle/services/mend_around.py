"""What a mend on one surface means for the others, and for the shelf."""

from dataclasses import dataclass

from refettle.domain.piece import Look, Piece, Surface
from refettle.domain.piece_plan import Caution, GroupPlan, Purchase
from refettle.domain.plan import Range, Route
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.agree import body_class
from refettle.services.buying import place_on_list, whole_purchase
from refettle.services.cautions import cautions_of
from refettle.services.foresee import own_steps
from refettle.services.grouping import Group
from refettle.services.needs import needs_of
from refettle.services.put_right import PutRight
from refettle.solver.choice import Key


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """
    What stands around a mend.

    Attributes
    ----------
    same_steps
        Other surfaces that had the same steps, and may show the same before long.
    unlike
        Other surfaces of the same look that would keep another finish than the mended one.
    kept
        Class that those keep; empty where there are none.
    shelf
        What the mend uses up, set against the shelf.
    care
        What to take care of in it.
    """

    same_steps: tuple[str, ...]
    unlike: tuple[str, ...]
    kept: str
    shelf: tuple[Purchase, ...]
    care: tuple[Caution, ...]


def around(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, done: tuple[Step, ...], right: PutRight
) -> Around:  # fmt: skip
    """
    Return what a mend means beyond its surface.

    Parameters
    ----------
    know, piece, workshop, surface
        As for the mend.
    done
        What was done to the surface.
    right
        The ways; the first one is looked at.

    Returns
    -------
    Around
        Other surfaces and the shelf.
    """
    route = right.mends[0].route if right.mends else None
    own = piece.done or piece.intend
    mine = own_steps(own, surface)
    others = [one for one in piece.surfaces if one.name != surface.name]
    same = tuple(
        one.name for one in others if mine and own_steps(own, one) == mine and one.wood == surface.wood
    )
    after = body_class(tuple(cost.step for cost in route.steps)) if route is not None else ""
    kept = body_class(done)
    alike = tuple(
        one.name
        for one in others
        if one.look == surface.look and kept and body_class(own_steps(own, one)) == kept
    )
    unlike = alike if after and after != kept else ()
    return Around(
        same_steps=same, unlike=unlike, kept=kept if unlike else "",
        shelf=_shelf(know, workshop, surface, route), care=_care(know, piece, workshop, surface, route, right.lead),
    )  # fmt: skip


def _care(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, route: Route | None, lead: float
) -> tuple[Caution, ...]:  # fmt: skip
    """Return the cautions of a mend."""
    if route is None:
        return ()
    group = Group(name=surface.name, members=(surface.name,), surface=surface)
    plan = GroupPlan(
        name=surface.name, members=group.members, area_m2=surface.area_m2, relief=surface.relief,
        look=surface.look or Look(kind="natural"), asked=True, worlds=(), route=route,
    )  # fmt: skip
    return cautions_of(know, piece, workshop, (plan,), (group,), {surface.name: lead})


def _shelf(
    know: Knowledge, workshop: Workshop, surface: Surface, route: Route | None
) -> tuple[Purchase, ...]:
    """Return what a route uses up, against the shelf."""
    need: dict[Key, Range] = {}
    for cost in route.steps if route is not None else ():
        for key, amount in needs_of(know, surface.area_m2, cost).items():
            need[key] = need[key] + amount if key in need else amount
    bought = [whole_purchase(know, workshop, key, amount) for key, amount in need.items()]
    return tuple(sorted(bought, key=place_on_list))
