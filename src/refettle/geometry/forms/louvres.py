"""Louvres: slats tilted between stiles, so that water runs off to the front."""

import math

from refettle.geometry.cells import Cell, Point, Skin, Span, hexahedron
from refettle.geometry.forms.framing import TILT, Framing


def louvre_size_mm(made: Framing) -> tuple[float, float]:
    """
    Return how deep and how high a tilted slat is.

    Parameters
    ----------
    made
        Width and thickness of a slat.

    Returns
    -------
    tuple of float
        Depth and height [mm].
    """
    wide, thick = made.slat_mm, made.slat_thick_mm
    return (
        wide * math.cos(TILT) + thick * math.sin(TILT),
        wide * math.sin(TILT) + thick * math.cos(TILT),
    )


def louvre_starts(run: Span, height_mm: float, pitch_mm: float) -> tuple[float, ...]:
    """
    Return where tilted slats begin so that the space at both ends is equal.

    Parameters
    ----------
    run
        Opening, upwards [mm].
    height_mm, pitch_mm
        Height of a tilted slat, distance from one to the next [mm].

    Returns
    -------
    tuple of float
        Lower end of every slat [mm]; as many as fit.
    """
    number = int((run[1] - run[0] - height_mm - 1.0) / pitch_mm) + 1
    first = run[0] + (run[1] - run[0] - height_mm - (number - 1) * pitch_mm) / 2.0
    return tuple(first + n * pitch_mm for n in range(number))


def louvre_cells(made: Framing, x: Span, y: Span, z: Span, outer: Skin, inner: Skin) -> tuple[Cell, ...]:
    """
    Return tilted slats in an opening; they overlap as seen from the front.

    Parameters
    ----------
    made
        Width and thickness of a slat, gap between two of them, upright.
    x, y, z
        Width of the opening, depth of the slats, height of the opening as spans [mm].
    outer, inner
        Surfaces of the faces to the front and of those to the rear.

    Returns
    -------
    tuple of Cell
        One cell for each slat, from below.
    """
    fore, up = made.slat_thick_mm * math.sin(TILT), made.slat_thick_mm * math.cos(TILT)
    pitch = made.slat_thick_mm / math.cos(TILT) + made.gap_mm
    rise, height = made.slat_mm * math.sin(TILT), louvre_size_mm(made)[1]
    (start, end), cells = y, []
    for low in louvre_starts(z, height, pitch):
        lower = ((start + fore, low), (end, low + rise))
        upper = ((start, low + up), (end - fore, low + rise + up))
        corners: tuple[Point, ...] = tuple(
            (px, py, pz)
            for front, rear in (lower, upper)
            for px, (py, pz) in ((x[0], front), (x[1], front), (x[1], rear), (x[0], rear))
        )
        cells.append(hexahedron(corners, outer, {"bottom": inner, "back": inner}))
    return tuple(cells)
