"""Legs: square, tapered or turned, with a square where aprons and stretchers join."""

from dataclasses import dataclass

from refettle.geometry.cells import Cell, Point, Ring, Span, box, box_corners, hexahedron, turned

LEG_SHAPES = ("square", "tapered", "turned")
BLOCK_MM = 10.0  # the square part of a leg reaches this far beyond apron and stretcher
# A plain turned leg: height and radius as shares of the turned length and of half the square.
_PROFILE = (
    (0.00, 0.55, "edge"),
    (0.05, 0.78, "edge"),
    (0.09, 0.78, "recess"),
    (0.11, 0.50, "recess"),
    (0.15, 0.50, "edge"),
    (0.50, 0.74, "edge"),
    (0.76, 0.96, "edge"),
    (0.81, 0.90, "recess"),
    (0.83, 0.60, "recess"),
    (0.87, 0.60, "edge"),
    (0.89, 0.84, "edge"),
    (0.93, 0.84, "recess"),
    (0.95, 0.62, "recess"),
    (1.00, 0.62, "edge"),
)
# The foot below the square of a stretcher.
_FOOT_PROFILE = ((0.00, 0.55, "edge"), (0.45, 0.90, "edge"), (0.85, 0.60, "recess"), (1.00, 0.62, "edge"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Leg:
    """
    An upright leg.

    Attributes
    ----------
    x, y
        Its square as spans [mm].
    head_mm
        Height of its upper end [mm].
    neck_mm
        Height at which its upper square begins [mm].
    shape
        One of `LEG_SHAPES`.
    foot_mm
        Thickness of a tapered leg at the floor [mm].
    low
        Lower square of a turned leg, where a stretcher joins, as a span [mm]; None = there is none.
    """

    x: Span
    y: Span
    head_mm: float
    neck_mm: float
    shape: str
    foot_mm: float = 0.0
    low: Span | None = None


def leg_cells(leg: Leg, surface: str, feet: str = "feet") -> tuple[Cell, ...]:
    """
    Return a leg.

    Parameters
    ----------
    leg
        The leg; its sizes go together.
    surface
        Surface of the leg.
    feet
        Surface of its lower end.

    Returns
    -------
    tuple of Cell
        One cell for a square leg, square and taper or square and turnings otherwise.
    """
    x, y = leg.x, leg.y
    if leg.shape == "square":
        return (box(x, y, (0.0, leg.head_mm), surface, {"bottom": feet}),)
    block = box(x, y, (leg.neck_mm, leg.head_mm), surface)
    if leg.shape == "tapered":
        inset = (x[1] - x[0] - leg.foot_mm) / 2.0
        foot = box_corners((x[0] + inset, x[1] - inset), (y[0] + inset, y[1] - inset), (0.0, 0.0))[:4]
        knee: tuple[Point, ...] = box_corners(x, y, (leg.neck_mm, leg.neck_mm))[:4]
        return (block, hexahedron((*foot, *knee), surface, {"bottom": feet}))
    if leg.low is None:
        return (block, *_turnings(leg, (0.0, leg.neck_mm), _PROFILE, surface, feet))
    low, high = leg.low
    return (
        block,
        *_turnings(leg, (high, leg.neck_mm), _PROFILE, surface, surface),
        box(x, y, (low, high), surface),
        *_turnings(leg, (0.0, low), _FOOT_PROFILE, surface, feet),
    )


def _turnings(
    leg: Leg, z: Span, profile: tuple[tuple[float, float, str], ...], surface: str, foot: str
) -> tuple[Cell, ...]:
    centre, half = ((leg.x[0] + leg.x[1]) / 2.0, (leg.y[0] + leg.y[1]) / 2.0), (leg.x[1] - leg.x[0]) / 2.0
    rings = tuple(Ring(z[0] + share * (z[1] - z[0]), radius * half, zone) for share, radius, zone in profile)
    return turned(centre, rings, surface, foot=foot, head=surface)
