"""
Areas, volumes and centres of solid parts.

Everything is plain arithmetic on convex cells. Cells must not overlap; they may touch. Where two
plane faces lie against each other, the exact overlap of the two polygons is taken off both.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise

from refettle.geometry.cells import Cell, CellFace, PartBody, Point

M2_PER_MM2 = 1e-6
M3_PER_MM3 = 1e-9
_TOUCH_MM = 1e-5  # faces nearer than this touch
_OPPOSITE = -1.0 + 1e-10  # cosine between the normals of touching faces
_NOISE = 1e-9  # share of a face below which what is left of it is rounding

Flat = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Contact:
    """
    Two faces that lie against each other.

    Attributes
    ----------
    part, other_part
        Names of the two parts.
    face, other_face
        Numbers of the two faces among all faces of all parts [1], counted from 0.
    area_mm2
        Overlap [mm²].
    """

    part: str
    other_part: str
    face: int
    other_face: int
    area_mm2: float


@dataclass(frozen=True, slots=True)
class _Plane:
    """A plane face ready for comparison: where it lies, how far it reaches, whether it fills its box."""

    number: int
    cell: int
    part: str
    points: tuple[Point, ...]
    normal: Point
    offset: float
    low: Point
    high: Point
    rectangle: bool


def face_vector(points: tuple[Point, ...]) -> Point:
    """
    Return the area vector of a plane polygon.

    Parameters
    ----------
    points
        Corners [mm], counter-clockwise seen from outside.

    Returns
    -------
    tuple of float
        Vector along the outer normal; its length is the area [mm²].
    """
    ox, oy, oz = points[0]
    sx = sy = sz = 0.0
    for (ax, ay, az), (bx, by, bz) in pairwise(points[1:]):
        ux, uy, uz, vx, vy, vz = ax - ox, ay - oy, az - oz, bx - ox, by - oy, bz - oz
        sx += uy * vz - uz * vy
        sy += uz * vx - ux * vz
        sz += ux * vy - uy * vx
    return (sx / 2.0, sy / 2.0, sz / 2.0)


def face_area_mm2(cell: Cell, face: CellFace) -> float:
    """
    Return the area of one face, that of the round surface where the face is a facet of one.

    Parameters
    ----------
    cell
        The cell.
    face
        One of its faces.

    Returns
    -------
    float
        Area [mm²].
    """
    if face.curved_mm2 is not None:
        return face.curved_mm2
    return math.hypot(*face_vector(cell.points(face)))


def area_mm2(body: PartBody) -> float:
    """
    Return the area of a part on its own, as if it touched nothing.

    Parameters
    ----------
    body
        The part.

    Returns
    -------
    float
        Area of all faces that carry a surface [mm²].
    """
    return math.fsum(
        face_area_mm2(cell, face) for cell in body.cells for face in cell.faces if face.surface is not None
    )


def volume_mm3(body: PartBody) -> float:
    """
    Return the volume of a part.

    Parameters
    ----------
    body
        The part.

    Returns
    -------
    float
        Volume [mm³].
    """
    return math.fsum(_volume_and_moment(cell)[0] for cell in body.cells)


def centre_mm(body: PartBody) -> Point:
    """
    Return the centre of volume of a part.

    Parameters
    ----------
    body
        The part.

    Returns
    -------
    tuple of float
        x, y, z [mm].
    """
    terms = [_volume_and_moment(cell) for cell in body.cells]
    volume = math.fsum(term[0] for term in terms)
    return (
        math.fsum(term[1][0] for term in terms) / volume,
        math.fsum(term[1][1] for term in terms) / volume,
        math.fsum(term[1][2] for term in terms) / volume,
    )


def mass_kg(bodies: Iterable[PartBody], density_kg_m3: Callable[[PartBody], float]) -> float:
    """
    Return the mass of the parts.

    Parameters
    ----------
    bodies
        Parts.
    density_kg_m3
        Gives the density of a part [kg/m³].

    Returns
    -------
    float
        Mass [kg].
    """
    return math.fsum(volume_mm3(body) * M3_PER_MM3 * density_kg_m3(body) for body in bodies)


def centre_of_gravity_mm(bodies: Iterable[PartBody], density_kg_m3: Callable[[PartBody], float]) -> Point:
    """
    Return the centre of gravity of the parts.

    Parameters
    ----------
    bodies
        Parts, at least one.
    density_kg_m3
        Gives the density of a part [kg/m³].

    Returns
    -------
    tuple of float
        x, y, z [mm].
    """
    weighed = [(volume_mm3(body) * density_kg_m3(body), centre_mm(body)) for body in bodies]
    whole = math.fsum(weight for weight, _ in weighed)
    return (
        math.fsum(weight * centre[0] for weight, centre in weighed) / whole,
        math.fsum(weight * centre[1] for weight, centre in weighed) / whole,
        math.fsum(weight * centre[2] for weight, centre in weighed) / whole,
    )


def exposed_areas(bodies: Iterable[PartBody]) -> dict[str, float]:
    """
    Return what is open to the air of every surface.

    Parameters
    ----------
    bodies
        Parts that may touch but not overlap; their order does not matter.

    Returns
    -------
    dict
        Exposed area [m²] by surface; surfaces covered all over are left out.
    """
    return {surface: math.fsum(zones.values()) for surface, zones in exposed_zones(bodies).items()}


def exposed_zones(bodies: Iterable[PartBody]) -> dict[str, dict[str, float]]:
    """
    Return what is open to the air of every zone of every surface.

    Parameters
    ----------
    bodies
        Parts that may touch but not overlap; their order does not matter.

    Returns
    -------
    dict
        Exposed area [m²] by surface and zone; nothing that is covered all over.
    """
    parts = tuple(bodies)
    covered: dict[int, list[float]] = {}
    for contact in contacts(parts):
        covered.setdefault(contact.face, []).append(contact.area_mm2)
        covered.setdefault(contact.other_face, []).append(contact.area_mm2)
    shown: dict[str, dict[str, list[float]]] = {}
    number = -1
    for body in parts:
        for cell in body.cells:
            for face in cell.faces:
                number += 1
                if face.surface is None:
                    continue
                whole = face_area_mm2(cell, face)
                left = whole - math.fsum(covered.get(number, ()))
                if left > _NOISE * whole:
                    shown.setdefault(face.surface, {}).setdefault(face.zone, []).append(left)
    return {
        surface: {zone: math.fsum(areas) * M2_PER_MM2 for zone, areas in zones.items()}
        for surface, zones in shown.items()
    }


def contacts(bodies: Iterable[PartBody]) -> tuple[Contact, ...]:
    """
    Return all pairs of plane faces that lie against each other.

    Parameters
    ----------
    bodies
        Parts that do not overlap. Cells of one part are compared too, where their faces carry a
        surface: a square block on a round leg leaves its corners open.

    Returns
    -------
    tuple of Contact
        Pairs with an overlap above zero.
    """
    planes = sorted(_planes(bodies), key=lambda plane: abs(plane.offset))
    found = []
    first = 0
    for here, plane in enumerate(planes):
        while abs(planes[first].offset) < abs(plane.offset) - _TOUCH_MM:
            first += 1
        for other in planes[first:here]:
            if other.cell != plane.cell and _against(plane, other):
                area = _overlap_mm2(plane, other)
                if area > 0.0:
                    found.append(Contact(plane.part, other.part, plane.number, other.number, area))
    return tuple(found)


def _volume_and_moment(cell: Cell) -> tuple[float, Point]:
    """Return volume [mm³] and first moment [mm⁴] of a cell: tetrahedra from its first corner."""
    ox, oy, oz = cell.vertices[0]
    volume = mx = my = mz = 0.0
    for face in cell.faces:
        loop = [(x - ox, y - oy, z - oz) for x, y, z in cell.points(face)]
        ax, ay, az = loop[0]
        for (bx, by, bz), (cx, cy, cz) in pairwise(loop[1:]):
            six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
            volume += six / 6.0
            mx += six * (ax + bx + cx) / 24.0
            my += six * (ay + by + cy) / 24.0
            mz += six * (az + bz + cz) / 24.0
    return volume, (mx + volume * ox, my + volume * oy, mz + volume * oz)


def _planes(bodies: Iterable[PartBody]) -> list[_Plane]:
    planes = []
    number = cell_number = -1
    for body in bodies:
        for cell in body.cells:
            cell_number += 1
            for face in cell.faces:
                number += 1
                if face.surface is not None and face.curved_mm2 is None:
                    planes.append(_plane(number, cell_number, body.name, cell.points(face)))
    return planes


def _plane(number: int, cell: int, part: str, points: tuple[Point, ...]) -> _Plane:
    vector = face_vector(points)
    area = math.hypot(*vector)
    normal = (vector[0] / area, vector[1] / area, vector[2] / area)
    xs, ys, zs = zip(*points, strict=True)
    low, high = (min(xs), min(ys), min(zs)), (max(xs), max(ys), max(zs))
    extents = [b - a for a, b in zip(low, high, strict=True)]
    axis = max(range(3), key=lambda n: abs(normal[n]))
    u, v = (extents[n] for n in range(3) if n != axis)
    rectangle = extents[axis] == 0.0 and abs(u * v - area) <= 1e-12 * area
    offset = _dot(normal, points[0])
    return _Plane(number, cell, part, points, normal, offset, low, high, rectangle)


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _against(a: _Plane, b: _Plane) -> bool:
    """Return whether two faces look at each other in one plane and their boxes meet."""
    if abs(a.offset + b.offset) > _TOUCH_MM or _dot(a.normal, b.normal) > _OPPOSITE:
        return False
    return all(a.low[n] <= b.high[n] + _TOUCH_MM and b.low[n] <= a.high[n] + _TOUCH_MM for n in range(3))


def _overlap_mm2(a: _Plane, b: _Plane) -> float:
    """Return the area that two faces in one plane share."""
    axis = max(range(3), key=lambda n: abs(a.normal[n]))
    u, v = (n for n in range(3) if n != axis)
    if a.rectangle and b.rectangle:
        wide = min(a.high[u], b.high[u]) - max(a.low[u], b.low[u])
        tall = min(a.high[v], b.high[v]) - max(a.low[v], b.low[v])
        return wide * tall if wide > 0.0 and tall > 0.0 else 0.0
    mine = _counter_clockwise([(p[u], p[v]) for p in a.points])
    other = _counter_clockwise([(p[u], p[v]) for p in b.points])
    return _signed_area(_clipped(mine, other)) / abs(a.normal[axis])


def _signed_area(points: list[Flat]) -> float:
    if len(points) < 3:
        return 0.0
    ox, oy = points[0]
    twice = 0.0
    for (ax, ay), (bx, by) in pairwise(points[1:]):
        twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy)
    return twice / 2.0


def _counter_clockwise(points: list[Flat]) -> list[Flat]:
    return points if _signed_area(points) > 0.0 else points[::-1]


def _clipped(points: list[Flat], window: list[Flat]) -> list[Flat]:
    """Return the part of a convex polygon inside a convex window, both counter-clockwise."""
    left = points
    for (ax, ay), (bx, by) in zip(window, (*window[1:], window[0]), strict=True):
        sides = [(bx - ax) * (py - ay) - (by - ay) * (px - ax) for px, py in left]
        kept: list[Flat] = []
        for n, (px, py) in enumerate(left):
            qx, qy = left[n - 1]
            here, before = sides[n], sides[n - 1]
            if (here >= 0.0) != (before >= 0.0):
                share = before / (before - here)
                kept.append((qx + share * (px - qx), qy + share * (py - qy)))
            if here >= 0.0:
                kept.append((px, py))
        left = kept
    return left
