"""On what parts of one look should agree: on keeping the old film or not, and on the coat that makes the look."""

from refettle.domain.piece import Look
from refettle.domain.step import Step
from refettle.planning.bench import Bench

_CLEAR = frozenset({"natural", "stained", "waxed", "oiled"})
_COATED = frozenset({"natural", "stained", "oiled", "opaque"})


def body_class(steps: tuple[Step, ...]) -> str:
    """Return the class that makes the look of a route; empty where none does."""
    bodies = [s.what for s in steps if s.verb in {"paint", "topcoat"}]
    paints = [s.what for s in steps if s.verb == "paint"]
    return paints[-1] if paints else (bodies[-1] if bodies else "")


def bares(steps: tuple[Step, ...]) -> bool:
    """Return whether a route takes the old film off."""
    return any(step.verb == "strip" or "to bare" in step.how for step in steps)


def look_key(look: Look) -> str:
    """Return what is one look to the eye, in a word."""
    return f"{look.kind}|{look.colour}|{look.depth}|{look.sheen}"


def asks_ground(bench: Bench, look: Look) -> bool:
    """
    Return whether the old film of a surface must be kept on all parts of its look or on none.

    Notes
    -----
    Under a clear finish a stripped part beside an unstripped one shows; under paint each part may be
    treated as it needs.
    """
    return look.base in _CLEAR and not bench.begin.worlds[0].states[0].bare


def answers(bench: Bench, look: Look, steps: tuple[Step, ...]) -> tuple[tuple[str, str], ...]:
    """
    Return the questions on which the parts of a look should agree, with the answers of a route.

    Parameters
    ----------
    bench
        The surface.
    look
        Look that it is planned for.
    steps
        The route.

    Returns
    -------
    tuple
        ``ground`` and ``body`` of the look, where they are asked: one look, one tin, one set of brushes.
    """
    said = []
    key = look_key(look)
    if steps and asks_ground(bench, look):
        said.append((f"ground|{key}", "off" if bares(steps) else "kept"))
    body = body_class(steps)
    if body and look.base in _COATED:
        said.append((f"body|{key}", body))
    return tuple(said)
