"""Care that a surface, a look or a use asks for, whatever the step: one line each."""

from collections.abc import Iterator

from refettle.domain.piece import Piece
from refettle.domain.piece_plan import GroupPlan
from refettle.knowledge.facts import WoodFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.services.grouping import Group

Line = tuple[str, str, str]
"""Id, sentence, source."""
_THIN_UM = 1000
_SLICK = 0.3
"""Slickness [1] from which a face is foil or laminate rather than veneer."""
_TANNIN = 0.4
_VAPOUR = 0.3
_WETS = frozenset({"bleach", "rinse", "neutralise"})
_ABRADES = frozenset({"sand", "scuff", "scrape", "rub_out"})
_LIDDED = ("blanket chest", "blanket box", "toy chest", "toy box", "toybox", "trunk", "coffer", "hope chest")
_LID_FORMS = frozenset({"chest", "blanket_box"})
_PALE = frozenset({"limed", "whitewashed", "bleached"})
_HARD_USE = frozenset({"table", "kitchen", "wet", "child", "food", "outdoors"})


def _face(wood: WoodFacts) -> str:
    """Return what a thin face is called."""
    return f"{wood.name[:1].upper()}{wood.name[1:]}" if wood.slick > _SLICK else "Veneer"


def lines_of_surface(know: Knowledge, plan: GroupPlan, group: Group) -> Iterator[Line]:
    """
    Yield the care that one group asks for.

    Parameters
    ----------
    know
        Facts.
    plan, group
        Its plan and its surface.

    Yields
    ------
    tuple
        Id, sentence, source key.
    """
    surface, steps = group.surface, tuple(cost.step for cost in plan.route.steps) if plan.route else ()
    wood = know.wood(surface.wood)
    if 0 < surface.veneer_um <= _THIN_UM and any(s.verb in _ABRADES for s in steps):
        yield (
            "veneer",
            (
                f"{_face(wood)} of about {surface.veneer_um / 1000:.1f} mm: no coarse grit, no machine near edges; stop "
                "where the tone changes: there it is nearly through."
            ),
            "coatings-R42b",
        )
    wet = any(s.verb in _WETS or (s.verb == "clean" and not surface.layers) for s in steps)
    if wood.tannin >= _TANNIN and wet:
        yield (
            "iron-tannin",
            f"{wood.name} holds tannin: no steel wool, iron tools or rusty water while it is wet, or it turns blue-black.",
            "common-practice",
        )
    if wood.vapour_softens >= _VAPOUR:
        yield (
            "cedar-vapour",
            (
                f"{wood.name}: its vapour softens films shut in with it, and makes them sticky. Leave it bare, let films "
                "near it cure with the lid open; a light sanding by hand brings the scent back."
            ),
            "common-practice",
        )
    if plan.look.kind in _PALE and steps:
        yield (
            "white-yellows",
            "White and bleached wood go yellow under anything oil-based, more in the dark: only water-clear coats on it.",
            "common-practice",
        )
    yield from _of_coats(know, plan, surface.use)


def _of_coats(know: Knowledge, plan: GroupPlan, use: str) -> Iterator[Line]:
    """Yield the care that the coats ask for in use."""
    laid = [cost.step for cost in plan.route.steps if cost.step.is_coat] if plan.route else []
    if not laid:
        return
    last = know.film(laid[-1].what)
    if any(know.film(s.what).colour_kind == "dye" for s in laid):
        yield ("fades", "Dye fades in sunlight: not for a place in the window.", "common-practice")
    if (last.needs_bare or last.family == "wax") and use in _HARD_USE:
        yield (
            "upkeep",
            f"{last.name} wants renewing where it wears, about once a year on a table that is used.",
            "common-practice",
        )
    if use == "food":
        yield (
            "food",
            "For food: only what its label allows for that, fully cured; no film where knives cut, it chips into the food.",
            "common-practice",
        )


def lines_of_piece(piece: Piece) -> Iterator[Line]:
    """Yield the care that the whole piece asks for."""
    lidded = piece.form in _LID_FORMS or any(word in piece.name.lower() for word in _LIDDED)
    if lidded:
        yield (
            "lid-traps",
            (
                "A lid that falls or latches can trap a child: a lid support that holds it open anywhere, gaps for air, and "
                "no latch that catches by itself."
            ),
            "memory",
        )
    if piece.form == "cot":
        yield (
            "old-cot",
            (
                "An old cot seldom meets today's rules on gaps between slats, fixed sides and hardware, and may not be sold "
                "or lent for sleeping in many places: look the rules up before any work; as a daybed or for show it is "
                "another matter."
            ),
            "memory",
        )
