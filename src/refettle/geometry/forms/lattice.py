"""Lattice: upright and level slats in one plane with holes between them; fretwork cut on a grid too."""

from collections.abc import Iterator, Mapping

from refettle.geometry.cells import Cell, Side, Skin, Span, box

Spans = tuple[Span, ...]


def lattice_cells(
    x: Span,
    y: Span,
    z: Span,
    rows: tuple[Spans, Spans],
    wall: Skin,
    faces: Mapping[Side, str | Skin],
) -> Iterator[tuple[str, tuple[Cell, ...]]]:
    """
    Return the members of a lattice in an opening.

    Parameters
    ----------
    x, y, z
        Width of the opening, thickness of the slats, height of the opening as spans [mm].
    rows
        Places of the upright slats across, of the level ones upwards [mm].
    wall
        Surface and zone of the walls of the holes.
    faces
        Surfaces of front and back.

    Yields
    ------
    tuple
        Name and cells of a slat; upright ones run through, level ones fill in between them.
    """
    uprights, levels = rows
    for number, upright in enumerate(uprights, start=1):
        yield f"upright {number}", (box(upright, y, z, wall, faces),)
    ends = [x[0], *(place for upright in uprights for place in upright), x[1]]
    gaps = tuple(zip(ends[::2], ends[1::2], strict=True))
    for number, level in enumerate(levels, start=1):
        yield f"level {number}", tuple(box(gap, y, level, wall, faces) for gap in gaps)
