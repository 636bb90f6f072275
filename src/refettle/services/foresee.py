"""Foresee: what will go wrong along the person's own sequence."""

from dataclasses import replace

from refettle.domain.journal import StepDone, done_entries, standing
from refettle.domain.piece import Own, Piece, Surface
from refettle.domain.plan import Risk
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.replay import foresee
from refettle.planning.start import start

CLOSING_USE = Step(verb="use", what="ordinary use", wait_after_h=0.0)


def own_steps(own: tuple[Own, ...], surface: Surface) -> tuple[Step, ...]:
    """Return the steps that the person means for one surface; steps for all leave out what stays bare."""
    named = [o for o in own if o.surface == surface.name]
    stays_bare = surface.look is not None and surface.look.kind == "bare"
    common = [o for o in own if not o.surface and not stays_bare]
    return tuple(step for o in (*common, *named) for step in o.steps)


def until_bare(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Return steps in which stripping goes on until bare, up to three passes, unless they say how many."""
    return tuple(
        replace(s, coats=3) if s.verb == "strip" and s.coats == 1 and "one pass" not in s.how else s
        for s in steps
    )


def as_done(piece: Piece, surface: Surface) -> Surface:
    """Return a surface with what has been done to it; steps for all leave out what stays bare."""
    stays_bare = surface.look is not None and surface.look.kind == "bare"
    entries = [e for e in standing(done_entries(piece, piece.name)) if isinstance(e, StepDone)]
    steps = [e.step for e in entries if (surface.name in e.surfaces if e.surfaces else not stays_bare)]
    return replace(surface, done=until_bare(tuple(steps)))


def closed(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """
    Return a sequence made whole: stripping goes on until bare, and use closes it.

    Notes
    -----
    A person who writes "strip" means "until it is off", see `until_bare`.
    Before the closing use the last film is given the time to cure, in the air that was made for it if any.
    """
    whole = until_bare(steps)
    if whole and whole[-1].verb == "use":
        return whole
    if whole and whole[-1].verb == "expose":
        return (*whole, CLOSING_USE)
    air = next((step.air for step in reversed(whole) if step.air is not None), None)
    return (*whole, Step(verb="wait", what="cure", wait_after_h=24.0 * 21, air=air), CLOSING_USE)


def foresee_own(piece: Piece, workshop: Workshop, know: Knowledge) -> dict[str, tuple[Risk, ...]]:
    """
    Return the risks of the intended sequence, per surface, likeliest first.

    Parameters
    ----------
    piece
        Piece with `intend`.
    workshop
        For its planning air.
    know
        All facts.

    Returns
    -------
    dict
        Surface name → risks; surfaces with no intended steps are left out.
    """
    result = {}
    for surface in piece.surfaces:
        steps = own_steps(piece.intend, surface)
        if steps:
            begin = start(know, piece, surface)
            result[surface.name] = foresee(know, begin, closed(steps), workshop.air_likely)
    return result
