"""
Upright boards with a curved front: fluted, beaded, bowed or serpentine.

The board is cut into upright strips along the facets of its curve. The area of a curved face is that
of the arc; volume and centre are those of the facets.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from refettle.geometry.cells import Cell, Side, Skin, Span, hexahedron

_SIDES: tuple[Side, ...] = ("left", "right", "front", "back", "bottom", "top")
_ARC_FACETS = 4
_BOW_FACETS = 24
_FILLET = 1.0 / 6.0  # share of a flute's width that stays plane on either side of it
_DEPTH = 0.25  # of flutes and beads, as a share of the width of their arc


@dataclass(frozen=True, slots=True)
class Facet:
    """
    One step of a curved front.

    Attributes
    ----------
    x, y
        Places of its two ends, from the left [mm].
    zone
        Zone of the front there.
    arc_mm
        Length of the arc that it stands for [mm]; None = it is plane.
    """

    x: Span
    y: Span
    zone: str = "flat"
    arc_mm: float | None = None


def arc_facets(
    x: Span, rim_mm: float, sagitta_mm: float, facets: int, zones: tuple[str, str]
) -> tuple[Facet, ...]:
    """
    Return the facets of one arc.

    Parameters
    ----------
    x
        Chord as a span [mm].
    rim_mm
        Where both ends of the arc lie [mm], counted backwards.
    sagitta_mm
        How far its middle stands out to the front [mm]; below 0 for a hollow. At most half the chord.
    facets
        Number of facets [1], even.
    zones
        Zones of the outermost facets and of the others.

    Returns
    -------
    tuple of Facet
        From the left.
    """
    chord, rise = x[1] - x[0], abs(sagitta_mm)
    radius = (chord**2 / 4.0 + rise**2) / (2.0 * rise)
    half = math.asin(min(1.0, chord / (2.0 * radius)))
    angles = [half * (2.0 * n / facets - 1.0) for n in range(facets + 1)]
    sign = math.copysign(1.0, sagitta_mm)
    points = [
        (
            (x[0] + x[1]) / 2.0 + radius * math.sin(angle),
            rim_mm - sign * (radius * math.cos(angle) - (radius - rise)),
        )
        for angle in angles
    ]
    points[0], points[-1] = (x[0], rim_mm), (x[1], rim_mm)
    return tuple(
        Facet(
            (left[0], right[0]),
            (left[1], right[1]),
            zones[0] if n in {0, facets - 1} else zones[1],
            2.0 * half * radius / facets,
        )
        for n, (left, right) in enumerate(pairwise(points))
    )


def reeds(width_mm: float, reed_mm: float) -> tuple[Span, ...]:
    """
    Return the places of flutes or beads of equal width.

    Parameters
    ----------
    width_mm
        Width of the board [mm].
    reed_mm
        Width wished of one of them [mm]; evened out so that whole ones fit.

    Returns
    -------
    tuple of tuple
        Spans from the left [mm].
    """
    number = max(1, round(width_mm / reed_mm))
    return tuple((n * width_mm / number, (n + 1) * width_mm / number) for n in range(number))


def fluted(width_mm: float, reed_mm: float) -> tuple[Facet, ...]:
    """
    Return the front of a board with hollows side by side and plane fillets between them.

    Parameters
    ----------
    width_mm, reed_mm
        Width of the board, width of a flute with its fillets [mm].

    Returns
    -------
    tuple of Facet
        From the left; fillets lie in the plane y = 0.
    """
    steps: list[Facet] = []
    for low, high in reeds(width_mm, reed_mm):
        fillet = _FILLET * (high - low)
        steps.append(Facet((low, low + fillet), (0.0, 0.0)))
        hollow = (low + fillet, high - fillet)
        depth = _DEPTH * (hollow[1] - hollow[0])
        steps += arc_facets(hollow, 0.0, -depth, _ARC_FACETS, ("recess", "recess"))
        steps.append(Facet((high - fillet, high), (0.0, 0.0)))
    return tuple(steps)


def beaded(width_mm: float, reed_mm: float) -> tuple[Facet, ...]:
    """
    Return the front of a board with rounds side by side.

    Parameters
    ----------
    width_mm, reed_mm
        Width of the board, width of a bead [mm].

    Returns
    -------
    tuple of Facet
        From the left; beads reach the plane y = 0. Where two meet lies a recess.
    """
    steps: list[Facet] = []
    for bead in reeds(width_mm, reed_mm):
        depth = _DEPTH * (bead[1] - bead[0])
        steps += arc_facets(bead, depth, depth, _ARC_FACETS, ("recess", "edge"))
    return tuple(steps)


def bowed(width_mm: float, bow_mm: float, facets: int = _BOW_FACETS) -> tuple[Facet, ...]:
    """
    Return the front of a board that swells in the middle.

    Parameters
    ----------
    width_mm, bow_mm
        Width of the board, how far its middle stands out [mm].
    facets
        Number of facets [1], even.

    Returns
    -------
    tuple of Facet
        From the left; the middle lies in the plane y = 0.
    """
    return arc_facets((0.0, width_mm), bow_mm, bow_mm, facets, ("flat", "flat"))


def serpentine(width_mm: float, bow_mm: float, facets: int = 2 * _BOW_FACETS) -> tuple[Facet, ...]:
    """
    Return the front of a board that swells in the middle and is hollow on both sides.

    Parameters
    ----------
    width_mm, bow_mm
        Width of the board, how far its middle stands out before the deepest place [mm].
    facets
        Number of facets [1], a multiple of eight.

    Returns
    -------
    tuple of Facet
        From the left: arcs over a quarter, a half and a quarter of the width that turn by the same angle, so that
        they meet without a ridge. The middle lies in the plane y = 0.
    """
    swell = 2.0 / 3.0 * bow_mm
    quarter, plain = width_mm / 4.0, ("flat", "flat")
    return (
        *arc_facets((0.0, quarter), swell, -swell / 2.0, facets // 4, plain),
        *arc_facets((quarter, 3.0 * quarter), swell, swell, facets // 2, plain),
        *arc_facets((3.0 * quarter, width_mm), swell, -swell / 2.0, facets // 4, plain),
    )


def relief_depth_mm(width_mm: float, reed_mm: float, kind: str) -> float:
    """
    Return how deep flutes or beads go.

    Parameters
    ----------
    width_mm, reed_mm
        Width of the board, width wished of one of them [mm].
    kind
        ``fluted`` or ``beaded``.

    Returns
    -------
    float
        Depth [mm].
    """
    first = reeds(width_mm, reed_mm)[0]
    return _DEPTH * (first[1] - first[0]) * (1.0 - 2.0 * _FILLET if kind == "fluted" else 1.0)


def strip_cells(
    facets: tuple[Facet, ...], back_mm: float, z: Span, skins: Mapping[Side, str | None], *, parallel: bool
) -> tuple[Cell, ...]:
    """
    Return a board behind a curved front.

    Parameters
    ----------
    facets
        The front, from the left.
    back_mm
        Where the back lies [mm]; with `parallel`, how far behind the front.
    z
        Height as a span [mm].
    skins
        Surfaces of ``front`` and ``back``, and of the edges under ``left``; an edge of another surface has its own
        entry. None = it lies inside the part.
    parallel
        Whether the back follows the front.

    Returns
    -------
    tuple of Cell
        One strip for each facet; edges are those to the left and right, above and below.
    """
    cells, last = [], len(facets) - 1
    for number, facet in enumerate(facets):
        rear = tuple(y + back_mm for y in facet.y) if parallel else (back_mm, back_mm)
        plan = (
            (facet.x[0], facet.y[0]),
            (facet.x[1], facet.y[1]),
            (facet.x[1], rear[1]),
            (facet.x[0], rear[0]),
        )
        strip = hexahedron(
            tuple((px, py, pz) for pz in z for px, py in plan), "edge", {"front": Skin("edge", facet.zone)}
        )
        curved = None if facet.arc_mm is None else facet.arc_mm * (z[1] - z[0])
        areas = {"front": curved, "back": curved if parallel else None}
        faces = []
        for side, face in zip(_SIDES, strip.faces, strict=True):
            inner = (side == "left" and number > 0) or (side == "right" and number < last)
            surface = None if inner else skins.get(side, skins["left"])
            faces.append(replace(face, surface=surface, curved_mm2=areas.get(side)))
        cells.append(Cell(vertices=strip.vertices, faces=tuple(faces)))
    return tuple(cells)
