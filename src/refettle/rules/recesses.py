"""Residues in recesses: what the tool did not reach."""

from refettle.rules.card import Card, Cause, colour_is_patchy, film_stays_soft
from refettle.rules.situation import Situation, film_key, ramp


def old_film_left(sit: Situation) -> Cause | None:
    """Judge old film left where bare wood is to be seen."""
    new = sit.new
    if sit.ground.wish not in {"natural", "stained", "oiled", "waxed", "bare"}:
        return None
    if sit.step.is_coat and (new is None or new.opaque or sit.coat_no != 1):
        return None
    left = [f for f in sit.before.stack if f.old and f.um > 0]
    opaque = [f for f in left if sit.know.film(f.cls).opaque]
    if opaque:
        return Cause(
            chance=0.9,
            why=f"{sit.know.film(opaque[0].cls).name} is left in hollows and pores",
            reads=((film_key(opaque[0].cls), "opaque"),),
        )
    return None


def paint_in_pores(sit: Situation) -> Cause | None:
    """Judge paint once laid on bare open-pored wood: stripping leaves it in the pores."""
    new = sit.new
    paint = sit.before.strength("paint-in-pores")
    if (
        paint <= 0
        or not sit.before.bare
        or sit.ground.wish not in {"natural", "stained", "oiled", "waxed", "bare"}
    ):
        return None
    if sit.step.is_coat and (new is None or new.opaque or sit.coat_no != 1):
        return None
    return Cause(
        chance=0.85 * paint * ramp(sit.wood.open_pores, 0.1, 0.7),
        why=f"paint stays in the open pores of {sit.wood.name}",
        reads=((f"wood:{sit.wood.id}", "open_pores"),),
    )


def remover_in_hollows(sit: Situation) -> Cause | None:
    """Judge remover left in hollows and joints that no cloth reached."""
    new = sit.new
    if new is None or sit.coat_no != 1 or sit.ground.zone != "recess":
        return None
    left = sit.before.soiled("remover-residue") + sit.before.soiled("remover-wax")
    if left <= 0.03:
        return None
    return Cause(
        chance=min(0.6, 0.65 * left),
        why="remover left in hollows softens the coat from below",
        reads=(("contaminant:remover-residue", "slows_cure"),),
    )


CARDS = (
    Card(
        id="old-film-left", fault="incomplete-removal", mechanism="recesses", levels=("coat", "use"),
        effect=colour_is_patchy, layer="below", onset=("immediate", "immediate"),
        signs=("old paint shows in hollows",), sources=("common-practice",), judge=old_film_left,
    ),
    Card(
        id="paint-left-in-pores", fault="incomplete-removal", mechanism="recesses", levels=("coat", "use"),
        effect=colour_is_patchy, layer="wood", onset=("immediate", "immediate"),
        signs=("pale flecks in every pore",), sources=("common-practice",), judge=paint_in_pores,
    ),
    Card(
        id="remover-left-in-hollows", fault="soft-film", mechanism="recesses", levels=("coat",),
        effect=film_stays_soft, layer="between", onset=("hours", "days"), signs=("soft along mouldings and joints",),
        sources=("common-practice",), judge=remover_in_hollows,
    ),
)  # fmt: skip
