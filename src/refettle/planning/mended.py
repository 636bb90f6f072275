"""The piece as its faces are worked on: what is mended before colour is mended, and leaves what it leaves."""

from dataclasses import replace
from typing import Final

from refettle.domain.piece import Piece, Surface
from refettle.domain.wrong import Wrong
from refettle.knowledge.knowledge import Knowledge

_FILLED: Final = 60
_SMELL_LEFT: Final = 35
_MANY_PARTS: Final = 2
_SMELLS: Final = {
    "smells-smoke": "smoke", "smells-musty": "musty", "smells-mothball": "musty", "smells-mouse": "rodent",
}  # fmt: skip
_PATCHED: Final = frozenset({"patch-veneer", "remake-moulding"})


def is_job(know: Knowledge, damage: str) -> bool:
    """Return whether a damage is mended as a job of its own, not as a step of the face."""
    return bool(know.damage(damage).stage)


def all_wrong(know: Knowledge, piece: Piece) -> tuple[Wrong, ...]:
    """
    Return what is wrong with parts: as said of them, and structural damage said of their surfaces.

    Notes
    -----
    Structural damage said of more than two parts in one breath is one thing of the whole piece: nobody means that
    each of forty surfaces has a loose joint.
    """
    found = {(w.part, w.damage): w for w in piece.wrong}
    parts: dict[str, list[str]] = {}
    for surface in piece.surfaces:
        for damage in surface.damage:
            if is_job(know, damage) and surface.part not in parts.setdefault(damage, []):
                parts[damage].append(surface.part)
    for damage, names in parts.items():
        if any(w.damage == damage for w in piece.wrong):
            continue
        for part in [""] if len(names) > _MANY_PARTS else names:
            found.setdefault((part, damage), Wrong(part=part, damage=damage))
    return tuple(found.values())


def as_mended(know: Knowledge, piece: Piece) -> Piece:
    """
    Return a piece as its faces are found once the mending before colour is done.

    Parameters
    ----------
    know
        Facts.
    piece
        The piece as described.

    Returns
    -------
    Piece
        With its structural damage under `wrong` alone; patches and filler stay as a cause that colour meets, and of
        a smell what washing and airing leave inside.
    """
    smells = {_SMELLS[w.damage] for w in piece.wrong if w.damage in _SMELLS} & set(know.ids("latent"))
    surfaces = tuple(_mended(know, surface, smells) for surface in piece.surfaces)
    return replace(piece, surfaces=surfaces, wrong=all_wrong(know, piece))


def _mended(know: Knowledge, surface: Surface, smells: set[str]) -> Surface:
    """Return a surface once the jobs are done."""
    jobs = [name for name in surface.damage if is_job(know, name)]
    left = {"filled": _FILLED} if any(know.damage(name).mend in _PATCHED for name in jobs) else {}
    if surface.orientation == "inside":
        left |= dict.fromkeys(sorted(smells), _SMELL_LEFT)
    if not jobs and not left:
        return surface
    stains = dict(surface.old_stain)
    for name, percent in left.items():
        stains[name] = max(percent, stains.get(name, 0))
    damage = tuple(name for name in surface.damage if name not in jobs)
    return replace(surface, damage=damage, old_stain=tuple(sorted(stains.items())))
