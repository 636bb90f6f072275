"""
Cross-sections of reliefs: what a cut through a shaped face shows, as convex solids.

``u`` runs across the relief, ``v`` is depth: the front plane lies at 0, the wood below it, the worker above.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType
from typing import Final

Point = tuple[float, float]
_REPEATS: Final = 9
_STILE_MM: Final = 40.0
_OPEN_MM: Final = 60.0
_BOARD_MM: Final = 6.0
_ARC_STRIPS: Final = 12
_NEIGHBOURS: Final = 3
"""Hollows and beads that are cut: beyond them the frame stands as high, so that more would change nothing."""

USUAL_MM: Final[Mapping[str, Mapping[str, float]]] = MappingProxyType({
    "panel": {"width": 400.0, "depth": 8.0},
    "moulded": {"width": 10.0, "depth": 6.0},
    "turned": {"width": 40.0, "depth": 10.0},
    "carved": {"width": 8.0, "gap": 6.0, "depth": 5.0},
    "slats": {"width": 30.0, "gap": 10.0, "depth": 8.0, "behind": 0.0},
    "slats open": {"width": 30.0, "gap": 10.0, "depth": 8.0},
    "spindles": {"width": 22.0, "gap": 20.0},
    "louvres": {"width": 34.0, "gap": 30.0, "depth": 7.0, "tilt": 55.0},
    "flutes": {"width": 8.0, "gap": 6.0, "depth": 4.0},
    "beads": {"width": 12.0, "depth": 4.0},
})  # fmt: skip
"""Sizes of a relief that nobody measured [mm], tilt [°]; common practice, those of slats and panels as in `zones`."""


@dataclass(frozen=True, slots=True)
class Solid:
    """
    One convex body of a section.

    Attributes
    ----------
    label
        ``slat``, ``board``, ``frame`` or ``wood``.
    points
        Corners, in order round it [mm].
    """

    label: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """
    A cut through a relief.

    Attributes
    ----------
    relief
        Word for the relief.
    solids
        What is cut, frames at both ends so that no tool slips in round them.
    period_mm
        Width of what repeats [mm]; the middle one is judged.
    sizes
        Sizes that it was made from, sorted.
    """

    relief: str
    solids: tuple[Solid, ...]
    period_mm: float
    sizes: tuple[tuple[str, float], ...]


def section_of(relief: str, sizes: Mapping[str, float] | None = None) -> Section | None:
    """
    Return the cross-section of a relief.

    Parameters
    ----------
    relief
        A key of `USUAL_MM`, or ``flat``.
    sizes
        Sizes that are known [mm]; the others as usual.

    Returns
    -------
    Section or None
        None for a relief that has no section of its own.

    Notes
    -----
    Carving is cut as a row of ridges and rounded hollows: a stylised section that stands for many.
    """
    if relief == "flat":
        return Section("flat", (Solid("wood", _rect(-200.0, -20.0, 200.0, 0.0)),), 100.0, ())
    if relief not in USUAL_MM:
        return None
    known = {**USUAL_MM[relief], **(sizes or {})}
    solids, period = _BUILD[relief](known)
    return Section(relief, tuple(solids), period, tuple(sorted(known.items())))


def _rect(u0: float, v0: float, u1: float, v1: float) -> tuple[Point, ...]:
    """Return a rectangle."""
    return ((u0, v0), (u1, v0), (u1, v1), (u0, v1))


def _frame(edge: float, depth: float) -> list[Solid]:
    """Return the stiles at both ends of a row."""
    return [
        Solid("frame", _rect(-edge - _STILE_MM, -depth - _BOARD_MM, -edge, 0.0)),
        Solid("frame", _rect(edge, -depth - _BOARD_MM, edge + _STILE_MM, 0.0)),
    ]


def _backed(solids: list[Solid], edge: float, depth: float, *, board: bool) -> list[Solid]:
    """Return a row with its frame and, if it has one, the board behind it."""
    made = [*solids, *_frame(edge, depth)]
    if board:
        low, high = -depth - _BOARD_MM, -depth
        made.append(Solid("board", _rect(-edge - _STILE_MM, low, edge + _STILE_MM, high)))
    return made


def _slats(sizes: Mapping[str, float]) -> tuple[list[Solid], float]:
    """Return slats on a board, or some way in front of one, or open at the back where nothing is said of it."""
    width, gap, thick = sizes["width"], sizes["gap"], sizes["depth"]
    period, behind = width + gap, sizes.get("behind")
    centres = [(i - _REPEATS // 2) * period for i in range(_REPEATS)]
    row = [Solid("slat", _rect(c - width / 2, -thick, c + width / 2, 0.0)) for c in centres]
    depth = thick + (_OPEN_MM if behind is None else behind)
    edge = (_REPEATS // 2) * period + width / 2 + gap
    return _backed(row, edge, depth, board=behind is not None), period


def _spindles(sizes: Mapping[str, float]) -> tuple[list[Solid], float]:
    """Return a row of round bars, open at the back."""
    radius, gap = sizes["width"] / 2, sizes["gap"]
    period = 2 * radius + gap
    turns = [2 * math.pi * n / 32 for n in range(32)]
    centres = [(i - _REPEATS // 2) * period for i in range(_REPEATS)]
    row = [
        Solid("slat", tuple((c + radius * math.cos(t), -radius + radius * math.sin(t)) for t in turns))
        for c in centres
    ]
    edge = (_REPEATS // 2) * period + radius + gap
    return _backed(row, edge, 2 * radius + _OPEN_MM, board=False), period


def _louvres(sizes: Mapping[str, float]) -> tuple[list[Solid], float]:
    """Return tilted slats, open at the back."""
    width, pitch, thick = sizes["width"], sizes["gap"], sizes["depth"]
    tilt = math.radians(sizes["tilt"])
    cos, sin = math.cos(tilt), math.sin(tilt)
    corners = [
        (-thick / 2, -width / 2),
        (thick / 2, -width / 2),
        (thick / 2, width / 2),
        (-thick / 2, width / 2),
    ]
    turned = [(x * cos - y * sin, x * sin + y * cos) for x, y in corners]
    top = max(y for _, y in turned)
    row = [
        Solid("slat", tuple((x + (i - _REPEATS // 2) * pitch, y - top) for x, y in turned))
        for i in range(_REPEATS)
    ]
    edge = (_REPEATS // 2) * pitch + max(x for x, _ in turned) + pitch / 2
    return _backed(row, edge, 2 * top + _OPEN_MM, board=False), pitch


def _hollows(sizes: Mapping[str, float]) -> tuple[list[Solid], float]:
    """Return round-bottomed hollows between flat lands, cut into thin convex strips."""
    width, land, depth = sizes["width"], sizes["gap"], sizes["depth"]
    period, floor = width + land, -depth - _BOARD_MM
    steps = [-width / 2 + width * n / _ARC_STRIPS for n in range(_ARC_STRIPS + 1)]
    heights = [-depth * math.sqrt(max(0.0, 1.0 - (2.0 * u / width) ** 2)) for u in steps]
    made: list[Solid] = []
    for i in range(_NEIGHBOURS):
        at = (i - _NEIGHBOURS // 2) * period
        for (u0, v0), (u1, v1) in pairwise(zip(steps, heights, strict=True)):
            made.append(Solid("wood", ((at + u0, floor), (at + u1, floor), (at + u1, v1), (at + u0, v0))))
        made.append(Solid("wood", _rect(at + width / 2, floor, at + width / 2 + land, 0.0)))
    edge = (_NEIGHBOURS // 2) * period + width / 2 + land
    return [*made, *_frame(edge, depth)], period


def _rounds(sizes: Mapping[str, float]) -> tuple[list[Solid], float]:
    """Return half-round beads side by side, the quirks between them reaching down to their feet."""
    width, depth = sizes["width"], sizes["depth"]
    floor = -depth - _BOARD_MM
    steps = [-width / 2 + width * n / (2 * _ARC_STRIPS) for n in range(2 * _ARC_STRIPS + 1)]
    heights = [-depth + depth * math.sqrt(max(0.0, 1.0 - (2.0 * u / width) ** 2)) for u in steps]
    made: list[Solid] = []
    for i in range(_NEIGHBOURS):
        at = (i - _NEIGHBOURS // 2) * width
        arc = tuple((at + u, v) for u, v in zip(reversed(steps), reversed(heights), strict=True))
        made.append(Solid("wood", ((at - width / 2, floor), (at + width / 2, floor), *arc)))
    edge = (_NEIGHBOURS // 2) * width + width / 2
    return [*made, *_frame(edge, depth)], width


def _panel(sizes: Mapping[str, float]) -> tuple[list[Solid], float]:
    """Return a panel set back in its frame."""
    width, depth = sizes["width"], sizes["depth"]
    edge = width / 2
    return _backed([], edge, depth, board=True), width + _STILE_MM


_BUILD: Final = {
    "panel": _panel, "moulded": _rounds, "turned": _rounds, "carved": _hollows, "slats": _slats, "slats open": _slats,
    "spindles": _spindles, "louvres": _louvres, "flutes": _hollows, "beads": _rounds,
}  # fmt: skip
