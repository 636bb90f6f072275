"""The smallest changes of the person's own sequences, so that parts of one look still agree after them."""

from refettle.domain.piece import Piece
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.search import Bench
from refettle.planning.start import start
from refettle.services.agree import body_class, look_key
from refettle.services.foresee import closed, own_steps
from refettle.services.mend_own import Change, change_sequence, score

Own = dict[str, tuple[Bench, tuple[Step, ...]]]


def smallest_change(piece: Piece, workshop: Workshop, know: Knowledge) -> dict[str, Change | None]:
    """
    Return, per surface, the smallest change that makes the intended sequence sound.

    Parameters
    ----------
    piece
        Piece with `intend`.
    workshop, know
        Place and facts.

    Returns
    -------
    dict
        Surface → change; None where the sequence is sound as it is. Where no one or two edits bring
        every risk below `SOUND_BELOW`, the pair that lowers the expected harm most is returned; its
        `risks_after` says what is left.

    Notes
    -----
    One edit is tried before two; among equals the one with the least expected harm left wins. Surfaces of one
    look that the person means to coat alike are coated alike after the changes: of the classes that some of them
    would get, the one with the least sum of changes and harm left is taken by all that can.
    """
    own: Own = {}
    for surface in piece.surfaces:
        steps = own_steps(piece.intend, surface)
        if steps:
            begin = start(know, piece, surface)
            own[surface.name] = Bench(know, workshop, surface, begin), closed(steps)
    found = {name: change_sequence(bench, steps) for name, (bench, steps) in own.items()}
    for members in _alike(own):
        found.update(_agreed(own, members, found))
    return found


def _alike(own: Own) -> list[list[str]]:
    """Return the surfaces of each look that are meant to get the same class of coat."""
    looks: dict[tuple[str, str], list[str]] = {}
    for name, (bench, steps) in own.items():
        look, body = bench.surface.look, body_class(steps)
        if look is not None and body:
            looks.setdefault((look_key(look), body), []).append(name)
    return [members for members in looks.values() if len(members) > 1]


def _body_after(own: Own, name: str, change: Change | None) -> str:
    """Return the class that makes the look of a surface once it is changed."""
    return body_class(own[name][1] if change is None else change.steps)


def _agreed(own: Own, members: list[str], found: dict[str, Change | None]) -> dict[str, Change | None]:
    """Return the changes of some surfaces with one class of coat, where all can have one; else as they are."""
    classes = [
        body for body in dict.fromkeys(_body_after(own, name, found[name]) for name in members) if body
    ]
    best: tuple[tuple[int, float], dict[str, Change | None]] | None = None
    for body in classes if len(classes) > 1 else ():
        made: dict[str, Change | None] = {}
        for name in members:
            kept = found[name]
            made[name] = kept if _body_after(own, name, kept) == body else change_sequence(*own[name], body)
        if any(_body_after(own, name, made[name]) != body for name in members):
            continue
        scores = [score(own[name][0], change) for name, change in made.items() if change is not None]
        total = (sum(unsound for unsound, _ in scores), sum(size for _, size in scores))
        if best is None or total < best[0]:
            best = (total, made)
    return best[1] if best is not None else {}
