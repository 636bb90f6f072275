"""Mitred frames: four members of one moulding round an opening."""

from dataclasses import dataclass, replace
from itertools import pairwise

from refettle.geometry.cells import Cell, PartBody, Point, Side, Skin, hexahedron
from refettle.geometry.form import Skeleton

# Mouldings: share of the width from the outer edge, share of the thickness there, zone up to the next.
PROFILES: dict[str, tuple[tuple[float, float, str], ...]] = {
    "flat": ((0.0, 1.0, "flat"), (1.0, 1.0, "flat")),
    "bevelled": ((0.0, 1.0, "flat"), (0.3, 1.0, "flat"), (1.0, 0.45, "flat")),
    "moulded": (
        (0.00, 0.70, "edge"),
        (0.12, 0.95, "edge"),
        (0.28, 1.00, "edge"),
        (0.40, 0.80, "recess"),
        (0.50, 0.62, "recess"),
        (0.70, 0.55, "edge"),
        (0.85, 0.52, "edge"),
        (1.00, 0.40, "edge"),
    ),
}
_JOINT = "joint"  # between two strips of one member
_FACES = ("front", "back", "outer edges", "inner edges")
_SIDES = ("bottom", "right", "top", "left")


@dataclass(frozen=True, slots=True, kw_only=True)
class Moulding:
    """
    A frame of one moulding, its front in the plane y = 0.

    Attributes
    ----------
    width_mm, depth_mm, height_mm
        Size over all [mm].
    member_mm
        Width of a member [mm].
    profile
        One of `PROFILES`.
    name
        What stands before the names of its parts and surfaces, e.g. ``mirror frame/``.
    """

    width_mm: float
    depth_mm: float
    height_mm: float
    member_mm: float
    profile: str
    name: str = ""


def frame_bodies(shape: Moulding) -> tuple[PartBody, ...]:
    """
    Return the four members of a frame.

    Parameters
    ----------
    shape
        The frame; its members leave an opening.

    Returns
    -------
    tuple of PartBody
        Mitred at the corners; the rebate is left out.
    """
    return tuple(PartBody(name=f"{shape.name}{side}", cells=_member(shape, side)) for side in _SIDES)


def frame_skeletons(shape: Moulding) -> tuple[Skeleton, ...]:
    """
    Return the surfaces of a frame.

    Parameters
    ----------
    shape
        The frame.

    Returns
    -------
    tuple of Skeleton
        Front, edges, back.
    """
    part = shape.name.rstrip("/") or "frame"
    front, back, outer, inner = (f"{shape.name}{word}" for word in _FACES)
    relief = "flat" if shape.profile == "flat" else "moulded"
    return (
        Skeleton(name=front, part=part, relief=relief, other_side=back),
        Skeleton(name=outer, part=part),
        Skeleton(name=inner, part=part),
        Skeleton(name=back, part=part, other_side=front, hidden=True),
    )


def _member(shape: Moulding, side: str) -> tuple[Cell, ...]:
    """Return one member as strips of its profile, mitred at both ends, from the outer edge inwards."""
    width, depth, height = shape.width_mm, shape.depth_mm, shape.height_mm
    profile, wide = PROFILES[shape.profile], shape.member_mm
    front, back, outer, inner = (f"{shape.name}{word}" for word in _FACES)
    long = width if side in {"bottom", "top"} else height

    def place(along: float, across: float, y: float) -> Point:
        """Turn a member that lies at the bottom to its side."""
        return {
            "bottom": (along, y, across),
            "right": (width - across, y, along),
            "top": (width - along, y, height - across),
            "left": (across, y, height - along),
        }[side]

    cells = []
    for number, ((o0, t0, zone), (o1, t1, _)) in enumerate(pairwise(profile)):
        low, high = o0 * wide, o1 * wide
        fronts = (depth * (1.0 - t0), depth * (1.0 - t1))
        corners = tuple(
            place(along, across, y)
            for across, fore in ((low, fronts[0]), (high, fronts[1]))
            for along, y in (
                (across, fore),
                (long - across, fore),
                (long - across, depth),
                (across, depth),
            )
        )
        skins: dict[Side, str | Skin] = {"front": Skin(front, zone), "back": back}
        skins["bottom"] = outer if number == 0 else _JOINT
        skins["top"] = inner if number == len(profile) - 2 else _JOINT
        strip = hexahedron(corners, front, skins)  # mitres are covered by the next member
        faces = tuple(replace(face, surface=None) if face.surface == _JOINT else face for face in strip.faces)
        cells.append(Cell(vertices=strip.vertices, faces=faces))
    return tuple(cells)
