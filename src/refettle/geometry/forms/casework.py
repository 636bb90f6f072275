"""What stands in a case beside drawers and doors: uprights between bays, and shelves."""

from dataclasses import replace
from itertools import pairwise

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Skeleton
from refettle.geometry.forms.carcase import case_skeletons
from refettle.geometry.parameters import Problem

LEAST_SHELF_MM = 40.0


def bays(span: Span, number: int, wall_mm: float) -> tuple[Span, ...]:
    """
    Return equal openings with walls between them.

    Parameters
    ----------
    span
        All of them together [mm].
    number
        Number of openings [1].
    wall_mm
        Thickness of a wall [mm].

    Returns
    -------
    tuple of tuple
        Span of every opening [mm].
    """
    wide = (span[1] - span[0] - (number - 1) * wall_mm) / number
    starts = [span[0] + n * (wide + wall_mm) for n in range(number)]
    return tuple((start, start + wide) for start in starts)


def upright_bodies(openings: tuple[Span, ...], y: Span, z: Span) -> list[PartBody]:
    """
    Return the uprights between bays.

    Parameters
    ----------
    openings
        The bays from the left [mm].
    y, z
        Depth and height of the uprights as spans [mm].

    Returns
    -------
    list of PartBody
        Boards ``upright.1`` and so on; their front edges count to ``rails``.
    """
    places = pairwise(openings)
    return [
        PartBody(
            name=f"upright.{n}",
            cells=(box((left[1], right[0]), y, z, f"upright.{n}", {"front": "rails"}),),
        )
        for n, (left, right) in enumerate(places, start=1)
    ]


def upright_skeletons(openings: tuple[Span, ...]) -> list[Skeleton]:
    """
    Return the surfaces of the uprights between bays.

    Parameters
    ----------
    openings
        The bays from the left [mm].

    Returns
    -------
    list of Skeleton
        One for each upright, both its sides together.
    """
    return [
        Skeleton(name=f"upright.{n}", part=f"upright.{n}", orientation="inside")
        for n in range(1, len(openings))
    ]


def shelf_levels(z: Span, number: int, thick_mm: float) -> tuple[Span, ...]:
    """
    Return where shelves lie so that all gaps are equal, the lowest first.

    Parameters
    ----------
    z
        The opening [mm].
    number
        Number of shelves [1].
    thick_mm
        Thickness of a shelf [mm].

    Returns
    -------
    tuple of tuple
        Span of every shelf [mm].
    """
    gap = (z[1] - z[0] - number * thick_mm) / (number + 1)
    starts = [z[0] + gap + n * (thick_mm + gap) for n in range(number)]
    return tuple((start, start + thick_mm) for start in starts)


def shelf_problems(z: Span, number: int, thick_mm: float) -> tuple[Problem, ...]:
    """
    Return why shelves do not fit.

    Parameters
    ----------
    z
        The opening [mm].
    number
        Number of shelves [1].
    thick_mm
        Thickness of a shelf [mm].

    Returns
    -------
    tuple of Problem
        One problem, or none.
    """
    if not number or (z[1] - z[0] - number * thick_mm) / (number + 1) >= LEAST_SHELF_MM:
        return ()
    what = f"{number} shelves leave less than {LEAST_SHELF_MM:.0f} mm between them"
    return (Problem(param="shelves", what=what, do="give fewer shelves, or check the height"),)


def inside_skeletons(*, running: bool) -> tuple[Skeleton, ...]:
    """
    Return the surfaces of a case that doors, drawers and shelves share.

    Parameters
    ----------
    running
        Whether drawers run on its bottom.

    Returns
    -------
    tuple of Skeleton
        As `case_skeletons` gives them.
    """
    return tuple(
        replace(one, running=True) if running and one.name == "bottom/inside" else one
        for one in case_skeletons(drawers=False)
    )
