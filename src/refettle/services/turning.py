"""Faces that cannot be wet at once: what comes off or is turned over stands on one of them."""

from collections.abc import Iterable
from typing import Final

TURNED: Final = frozenset({"door", "lid", "leaf", "shelf", "top", "seat"})
"""Parts that lie on one face while the other is coated: they come off, or the piece is turned over for them."""
LOOSE: Final = frozenset({"door", "drawer", "lid", "leaf", "shelf", "seat"})
"""Parts that come off or out for coating and dry on racks, trestles or a free board."""
_UNDER: Final = frozenset({"inside", "underside"})


def _faces(members: Iterable[str]) -> dict[str, set[str]]:
    """Return the faces of the parts that are turned, by part; the face on top has no name of its own."""
    found: dict[str, set[str]] = {}
    for name in members:
        part, _, face = name.partition("/")
        if part.partition(".")[0] in TURNED:
            found.setdefault(part, set()).add("under" if face in _UNDER else "over")
    return found


def opposite(some: Iterable[str], others: Iterable[str]) -> bool:
    """
    Return whether two groups of surfaces hold the two faces of one part that is turned.

    Examples
    --------
    >>> opposite(["door.1/inside"], ["door.1/outside"])
    True
    >>> opposite(["door.1/inside"], ["door.2/outside"])
    False
    """
    one, two = _faces(some), _faces(others)
    return any(one[part] != two[part] or len(one[part]) > 1 for part in one.keys() & two.keys())


def loose_share(members: tuple[str, ...]) -> float:
    """
    Return the share of surfaces in a group whose parts come off or out, and need a place to dry [1].

    Examples
    --------
    >>> loose_share(("door.1/outside", "drawer.1/front", "side.left/outside", "side.right/outside"))
    0.5
    """
    loose = sum(1 for name in members if name.partition("/")[0].partition(".")[0] in LOOSE)
    return loose / len(members) if members else 0.0


def turned_share(members: tuple[str, ...]) -> float:
    """
    Return the share of surfaces in a group that wait for their part to be turned over [1].

    Examples
    --------
    >>> turned_share(("door.1/inside", "door.1/outside", "side.left/outside", "side.right/outside"))
    0.25
    """
    both = sum(1 for faces in _faces(members).values() if len(faces) > 1)
    return both / len(members) if members else 0.0
