"""Smallest changes of the person's own sequence: parts of one look still get one kind of coat."""

from dataclasses import replace

from plan_pieces import facts, made, one_surface
from refettle.domain.finding import Where
from refettle.domain.piece import Look, Own, Piece
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.planning.search import Bench
from refettle.planning.start import start
from refettle.services.agree import body_class
from refettle.services.foresee import closed, own_steps
from refettle.services.mend_alike import smallest_change
from refettle.services.mend_own import SOUND_BELOW, change_sequence

SAND = Step(verb="sand", grit=180, method="hand-block", how=frozenset({"sequence", "clean dust"}))
OIL = Step(
    verb="topcoat", what="oil-varnish-blend", method="brush", coats=2, wait_between_h=24.0, wait_after_h=24.0
)


def oiled(*woods: str, looks: tuple[str, ...] = ("satin", "satin")) -> Piece:
    """Return a bare piece of two woods that its owner means to oil with a brush, without wiping."""
    names = ("top", "side")
    surfaces = [
        one_surface(name, look=Look(kind="natural", sheen=sheen), wood=wood)
        for name, wood, sheen in zip(names, woods, looks, strict=True)
    ]
    place = Where(file="")
    return replace(made(*surfaces), intend=(Own(surface="", steps=(SAND, OIL), where=(place, place)),))


def apart(piece: Piece) -> dict[str, str]:
    """Return the class that makes the look of each surface where each is changed by itself."""
    bodies = {}
    for surface in piece.surfaces:
        steps = closed(own_steps(piece.intend, surface))
        change = change_sequence(Bench(facts(), Workshop(), surface, start(facts(), piece, surface)), steps)
        bodies[surface.name] = body_class(steps if change is None else change.steps)
    return bodies


def together(piece: Piece) -> dict[str, str]:
    """Return the same where the changes are made for the piece."""
    bodies = {}
    for name, change in smallest_change(piece, Workshop(), facts()).items():
        surface = next(s for s in piece.surfaces if s.name == name)
        steps = closed(own_steps(piece.intend, surface)) if change is None else change.steps
        bodies[name] = body_class(steps)
    return bodies


def test_two_woods_of_one_look_get_one_coat_though_each_alone_would_not():
    piece = oiled("pine", "rosewood")
    assert len(set(apart(piece).values())) == 2
    assert len(set(together(piece).values())) == 1
    for change in smallest_change(piece, Workshop(), facts()).values():
        assert change is not None
        assert max(risk.chance for risk in change.risks_after) < SOUND_BELOW


def test_two_looks_need_not_agree():
    piece = oiled("pine", "rosewood", looks=("satin", "matt"))
    assert together(piece) == apart(piece)


def test_what_agrees_by_itself_is_left_as_it_is():
    piece = oiled("oak", "rosewood")
    assert len(set(apart(piece).values())) == 1
    assert together(piece) == apart(piece)
