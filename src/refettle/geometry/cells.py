"""
Solid parts as sets of convex cells.

A part is made of convex cells that lie side by side. Every face of a cell names the surface of
the piece that it belongs to and the zone of that surface; a face between two cells of one part
names none. Lengths are mm; x runs to the right, y from the front to the back, z upwards.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

Point = tuple[float, float, float]
Span = tuple[float, float]
Index = tuple[int, int, int]
Side = Literal["left", "right", "front", "back", "bottom", "top"]
Role = Literal["show", "lining", "back"]

_CORNER_DIGITS = 6  # box corners are kept to the nanometre, so that faces meant to touch do touch
_FACETS = 24
_LOOPS: tuple[tuple[Side, tuple[int, ...]], ...] = (
    ("left", (3, 0, 4, 7)),
    ("right", (1, 2, 6, 5)),
    ("front", (0, 1, 5, 4)),
    ("back", (2, 3, 7, 6)),
    ("bottom", (0, 3, 2, 1)),
    ("top", (4, 5, 6, 7)),
)
_NEXT: dict[Side, Index] = {
    "left": (-1, 0, 0),
    "right": (1, 0, 0),
    "front": (0, -1, 0),
    "back": (0, 1, 0),
    "bottom": (0, 0, -1),
    "top": (0, 0, 1),
}


@dataclass(frozen=True, slots=True)
class Skin:
    """
    What a face of a cell belongs to.

    Attributes
    ----------
    surface
        Surface of the piece.
    zone
        Zone of that surface: ``flat``, ``edge`` or ``recess``.
    """

    surface: str
    zone: str = "flat"


@dataclass(frozen=True, slots=True, kw_only=True)
class CellFace:
    """
    One plane face of a cell.

    Attributes
    ----------
    loop
        Corners as numbers into the cell's vertices, counter-clockwise seen from outside; convex.
    surface
        Surface of the piece; None between two cells of one part.
    zone
        Zone of that surface.
    curved_mm2
        Area of the strip of a round surface that this facet stands for [mm²]; None = the face is
        plane and its own area counts. A round surface touches nothing.
    """

    loop: tuple[int, ...]
    surface: str | None
    zone: str = "flat"
    curved_mm2: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """
    A convex cell.

    Attributes
    ----------
    vertices
        Corners [mm].
    faces
        Faces that close it.
    """

    vertices: tuple[Point, ...]
    faces: tuple[CellFace, ...]

    def points(self, face: CellFace) -> tuple[Point, ...]:
        """Return the corners of a face of this cell, in the face's order."""
        return tuple(self.vertices[number] for number in face.loop)


@dataclass(frozen=True, slots=True, kw_only=True)
class PartBody:
    """
    A solid part.

    Attributes
    ----------
    name
        Name of the member, e.g. ``drawer.1 side left``.
    cells
        Convex cells that make it up.
    role
        Which wood it is made of: ``show`` (the wood one sees), ``lining`` (drawer sides, runners,
        bottoms) or ``back`` (thin back board).
    """

    name: str
    cells: tuple[Cell, ...]
    role: Role = "show"


def cut_box(
    xs: tuple[float, ...],
    ys: tuple[float, ...],
    zs: tuple[float, ...],
    skin: Callable[[Side, Index], Skin],
    keep: Callable[[Index], bool] | None = None,
) -> tuple[Cell, ...]:
    """
    Return the cells of a box cut along planes, some left out if wished.

    Parameters
    ----------
    xs, ys, zs
        Places of the cuts with both ends [mm], rising.
    skin
        Gives the surface of an outer face from its side and the number of its cell (x, y, z).
    keep
        Says whether a cell is there; None = all are.

    Returns
    -------
    tuple of Cell
        Cells; faces between two of them carry no surface.

    Raises
    ------
    ValueError
        If the places do not rise.
    """
    for cuts in (xs, ys, zs):
        if any(b - a <= 0.0 for a, b in pairwise(cuts)):
            msg = f"cuts {cuts} do not rise"
            raise ValueError(msg)
    numbers = [(i, j, k) for i in range(len(xs) - 1) for j in range(len(ys) - 1) for k in range(len(zs) - 1)]
    kept = {number for number in numbers if keep is None or keep(number)}
    cells = []
    for i, j, k in sorted(kept):
        faces = []
        for side, loop in _LOOPS:
            di, dj, dk = _NEXT[side]
            inner = (i + di, j + dj, k + dk) in kept
            on = None if inner else skin(side, (i, j, k))
            faces.append(_face(loop, on))
        corners = box_corners((xs[i], xs[i + 1]), (ys[j], ys[j + 1]), (zs[k], zs[k + 1]))
        cells.append(Cell(vertices=corners, faces=tuple(faces)))
    return tuple(cells)


def box(x: Span, y: Span, z: Span, rest: str | Skin, sides: Mapping[Side, str | Skin] | None = None) -> Cell:
    """
    Return a box.

    Parameters
    ----------
    x, y, z
        Low and high end along each axis [mm].
    rest
        Surface of every side that `sides` does not name.
    sides
        Surface by side.

    Returns
    -------
    Cell
        The box.
    """
    named = {side: as_skin(value) for side, value in (sides or {}).items()}
    other = as_skin(rest)
    return cut_box(x, y, z, lambda side, _: named.get(side, other))[0]


def panel_box(x: Span, y: Span, z: Span, outside: str, inside: str, border_mm: float) -> Cell:
    """
    Return a panel whose front and back have a border that tools reach badly.

    Parameters
    ----------
    x, y, z
        Low and high end along each axis [mm]; y is the thickness.
    outside, inside
        Surfaces of front and back; the four edges count to `outside`.
    border_mm
        Width of the border [mm], zone ``recess``; less than half the smaller side.

    Returns
    -------
    Cell
        The panel.
    """
    (x0, x1), (z0, z1), b = x, z, border_mm
    inner = [
        *(
            (px, y[0], pz)
            for px, pz in ((x0 + b, z0 + b), (x1 - b, z0 + b), (x1 - b, z1 - b), (x0 + b, z1 - b))
        ),
        *(
            (px, y[1], pz)
            for px, pz in ((x1 - b, z0 + b), (x0 + b, z0 + b), (x0 + b, z1 - b), (x1 - b, z1 - b))
        ),
    ]
    field_out, quirk_out = Skin(outside), Skin(outside, "recess")
    field_in, quirk_in = Skin(inside), Skin(inside, "recess")
    faces = [_face(loop, field_out) for side, loop in _LOOPS if side not in {"front", "back"}]
    faces += [_face((8, 9, 10, 11), field_out), _face((12, 13, 14, 15), field_in)]
    faces += [_face(loop, quirk_out) for loop in ((0, 1, 9, 8), (1, 5, 10, 9), (5, 4, 11, 10), (4, 0, 8, 11))]
    faces += [
        _face(loop, quirk_in) for loop in ((2, 3, 13, 12), (3, 7, 14, 13), (7, 6, 15, 14), (6, 2, 12, 15))
    ]
    return Cell(vertices=(*box_corners(x, y, z), *(_kept(p) for p in inner)), faces=tuple(faces))


def hexahedron(
    corners: tuple[Point, ...], rest: str | Skin, sides: Mapping[Side, str | Skin] | None = None
) -> Cell:
    """
    Return a cell with six plane faces, e.g. a tapered leg.

    Parameters
    ----------
    corners
        Eight corners [mm]: the lower four counter-clockwise seen from above, beginning at the
        front left, then the four above them.
    rest
        Surface of every side that `sides` does not name.
    sides
        Surface by side.

    Returns
    -------
    Cell
        The cell.
    """
    named = sides or {}
    faces = tuple(_face(loop, as_skin(named.get(side, rest))) for side, loop in _LOOPS)
    return Cell(vertices=tuple(_kept(point) for point in corners), faces=faces)


@dataclass(frozen=True, slots=True)
class Ring:
    """
    A level of a turned profile.

    Attributes
    ----------
    z_mm
        Height [mm].
    radius_mm
        Radius there [mm], above 0.
    zone
        Zone of the round face from here up to the next ring.
    """

    z_mm: float
    radius_mm: float
    zone: str = "edge"


def turned(
    axis: tuple[float, float],
    profile: tuple[Ring, ...],
    surface: str,
    *,
    foot: str | None,
    head: str | None,
    facets: int = _FACETS,
) -> tuple[Cell, ...]:
    """
    Return a turned member as frusta stacked along an upright axis.

    Parameters
    ----------
    axis
        Place of the axis (x, y) [mm].
    profile
        Rings from the foot upwards; heights rise, radii change along the way.
    surface
        Surface of the round faces.
    foot, head
        Surfaces of the two ends; None where the end lies inside the part.
    facets
        Number of facets round the axis [1].

    Returns
    -------
    tuple of Cell
        One cell per frustum. The cross-section is the regular polygon of the same area as the
        circle, so that ends, volume and centre are those of the round body; the round face takes
        its area from the frustum formula, pi (r0 + r1) sqrt(h² + (r1 - r0)²).

    Raises
    ------
    ValueError
        If a ring does not lie above the one before, or has no radius.
    """
    grow = math.sqrt(2.0 * math.pi / (facets * math.sin(2.0 * math.pi / facets)))
    unit = [
        (grow * math.cos(2.0 * math.pi * n / facets), grow * math.sin(2.0 * math.pi * n / facets))
        for n in range(facets)
    ]
    cells = []
    last = len(profile) - 2
    for number, (low, high) in enumerate(pairwise(profile)):
        if high.z_mm <= low.z_mm or min(low.radius_mm, high.radius_mm) <= 0.0:
            msg = f"rings {low} and {high} make no frustum"
            raise ValueError(msg)
        corners = tuple(
            (axis[0] + ring.radius_mm * u, axis[1] + ring.radius_mm * v, round(ring.z_mm, _CORNER_DIGITS))
            for ring in (low, high)
            for u, v in unit
        )
        slant = math.hypot(high.z_mm - low.z_mm, high.radius_mm - low.radius_mm)
        strip = math.pi * (low.radius_mm + high.radius_mm) * slant / facets
        faces = [
            CellFace(
                loop=(n, (n + 1) % facets, facets + (n + 1) % facets, facets + n),
                surface=surface,
                zone=low.zone,
                curved_mm2=strip,
            )
            for n in range(facets)
        ]
        faces.append(CellFace(loop=tuple(range(facets))[::-1], surface=foot if number == 0 else None))
        faces.append(
            CellFace(loop=tuple(range(facets, 2 * facets)), surface=head if number == last else None)
        )
        cells.append(Cell(vertices=corners, faces=tuple(faces)))
    return tuple(cells)


def moved(body: PartBody, move: Callable[[Point], Point]) -> PartBody:
    """
    Return a part turned or shifted.

    Parameters
    ----------
    body
        The part.
    move
        Gives the new place [mm] of a point; must be a turn or a shift, never a mirror.

    Returns
    -------
    PartBody
        The part at its new place.
    """
    cells = tuple(
        Cell(vertices=tuple(_kept(move(point)) for point in cell.vertices), faces=cell.faces)
        for cell in body.cells
    )
    return PartBody(name=body.name, cells=cells, role=body.role)


def as_skin(value: str | Skin) -> Skin:
    """Return a surface name as a skin on its flat zone; a skin as it is."""
    return value if isinstance(value, Skin) else Skin(value)


def box_corners(x: Span, y: Span, z: Span) -> tuple[Point, ...]:
    """Return the eight corners [mm] of a box in the order that `hexahedron` takes."""
    plan = ((x[0], y[0]), (x[1], y[0]), (x[1], y[1]), (x[0], y[1]))
    return tuple(_kept((px, py, pz)) for pz in z for px, py in plan)


def _kept(point: Point) -> Point:
    return (
        round(point[0], _CORNER_DIGITS),
        round(point[1], _CORNER_DIGITS),
        round(point[2], _CORNER_DIGITS),
    )


def _face(loop: tuple[int, ...], skin: Skin | None) -> CellFace:
    if skin is None:
        return CellFace(loop=loop, surface=None)
    return CellFace(loop=loop, surface=skin.surface, zone=skin.zone)
