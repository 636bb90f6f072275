"""
Cases with a bowed or serpentine front: the front edges of all that lies between the sides follow one curve.

The sides end where the curve begins. Top and plinth run over them and follow the curve too. A drawer has a front
of even thickness and sides that reach up to it.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from refettle.geometry.cells import Cell, PartBody, Side, Span, box
from refettle.geometry.forms.carcase import Opening, opening
from refettle.geometry.forms.strips import Facet, bowed, serpentine, strip_cells
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice

STRAIGHT = "straight"
_SWELLS = {"bowed": bowed, "serpentine": serpentine}
_RIMS = {"bowed": 1.0, "serpentine": 2.0 / 3.0}  # where the curve ends at the sides, as a share of the bow
_HAIR_MM = 1e-6
_FACETS = 8  # of a whole front; areas are those of the arcs all the same
_LEAST_DEPTH_MM = 120.0

SWELL_PARAMETERS = (
    choice(
        "front_shape",
        "how the front runs across: straight, swelling in the middle, or in and out",
        (STRAIGHT, *_SWELLS),
        "straight unless said",
    ),
    Parameter(
        name="bow",
        kind="length",
        meaning="how far the front stands out in its middle before its deepest place, counted into the depth",
        usual=lambda sizes: float(round(min(80.0, sizes.mm("width") / 16.0, sizes.mm("depth") / 5.0))),
        why="a sixteenth of the width, at most a fifth of the depth and 80 mm",
        low=5.0,
        high=200.0,
        only_with=("front_shape", tuple(_SWELLS)),
    ),
)


@dataclass(frozen=True, slots=True)
class Swell:
    """
    The curve of a front.

    Attributes
    ----------
    facets
        Its steps between the outer faces of the sides, from the left; straight before the sides themselves.
    rim_mm, deep_mm
        Where it ends at the sides; its deepest place [mm], counted backwards.
    """

    facets: tuple[Facet, ...]
    rim_mm: float
    deep_mm: float

    def between(self, x: Span, behind_mm: float = 0.0) -> tuple[Facet, ...]:
        """Return the part of the curve over a span [mm], moved backwards [mm]."""
        return cut_facets(self.facets, x, behind_mm)

    def cut_at(self, places: Iterable[float]) -> "Swell":
        """Return the same curve with its facets cut at places [mm] too, so that what meets there has equal faces."""
        low, high = self.facets[0].x[0], self.facets[-1].x[1]
        cuts = [low, *sorted({place for place in places if low < place < high}), high]
        return replace(self, facets=tuple(f for x in pairwise(cuts) for f in cut_facets(self.facets, x, 0.0)))


def swell_of(sizes: Sizes) -> Swell | None:
    """
    Return the curve of the front of a case.

    Parameters
    ----------
    sizes
        Parameters of a case with `SWELL_PARAMETERS`.

    Returns
    -------
    Swell
        None where the front is straight.
    """
    shape = sizes.choice("front_shape")
    if shape == STRAIGHT:
        return None
    bow, over, board = sizes.mm("bow"), sizes.mm("overhang"), sizes.mm("board")
    low, high = over + board, sizes.mm("width") - over - board
    rim = over + _RIMS[shape] * bow
    curve = tuple(
        replace(facet, x=(low + facet.x[0], low + facet.x[1]), y=(over + facet.y[0], over + facet.y[1]))
        for facet in _SWELLS[shape](high - low, bow, _FACETS)
    )
    ends = (Facet((over, low), (rim, rim)), Facet((high, high + board), (rim, rim)))
    return Swell((ends[0], *curve, ends[1]), rim, over + bow)


def swelled_opening(sizes: Sizes) -> Opening:
    """
    Return the free space inside a case, from the deepest place of its front.

    Parameters
    ----------
    sizes
        Parameters of a case with `SWELL_PARAMETERS`.

    Returns
    -------
    Opening
        Spans [mm].
    """
    free, swell = opening(sizes), swell_of(sizes)
    return free if swell is None else Opening(free.x, (swell.deep_mm, free.y[1]), free.z)


def swell_problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return why a front cannot swell as wished.

    Parameters
    ----------
    sizes
        All parameters.

    Returns
    -------
    tuple of Problem
        None or one.
    """
    if sizes.choice("front_shape") == STRAIGHT:
        return ()
    bow, free = sizes.mm("bow"), opening(sizes)
    wide, deep = free.x[1] - free.x[0], free.y[1] - free.y[0]
    if bow <= wide / 4.0 and deep - bow >= _LEAST_DEPTH_MM:
        return ()
    what = f"a bow of {bow:.6g} mm is too much for a front {max(wide, 0.0):.4g} mm wide and {max(deep, 0.0):.4g} mm deep"
    return (Problem(param="bow", what=what, do="give less, or count the bow into the depth"),)


def cut_facets(facets: tuple[Facet, ...], x: Span, behind_mm: float) -> tuple[Facet, ...]:
    """
    Return the part of a curve over a span.

    Parameters
    ----------
    facets
        The curve, from the left.
    x
        Span [mm].
    behind_mm
        How far it is moved backwards [mm].

    Returns
    -------
    tuple of Facet
        Facets within the span; those at its ends cut, their arcs in proportion.
    """
    found = []
    for facet in facets:
        low, high = max(facet.x[0], x[0]), min(facet.x[1], x[1])
        if high - low <= _HAIR_MM:
            continue
        wide = facet.x[1] - facet.x[0]
        slope = (facet.y[1] - facet.y[0]) / wide
        y = tuple(facet.y[0] + slope * (at - facet.x[0]) + behind_mm for at in (low, high))
        arc = None if facet.arc_mm is None else facet.arc_mm * (high - low) / wide
        found.append(Facet((low, high), (y[0], y[1]), facet.zone, arc))
    return tuple(found)


def plain(facets: tuple[Facet, ...]) -> tuple[Facet, ...]:
    """Return facets that stand for no arc: faces that others lie against."""
    return tuple(replace(facet, arc_mm=None) for facet in facets)


def swelled_case(sizes: Sizes, swell: Swell, edge: str) -> tuple[PartBody, ...]:
    """
    Return the parts of a case.

    Parameters
    ----------
    sizes
        Parameters of a case, without problems.
    swell
        Curve of its front.
    edge
        Surface of the front edge of the bottom.

    Returns
    -------
    tuple of PartBody
        Top, sides, bottom, back, plinth; surfaces as those of a straight case.
    """
    free = opening(sizes)
    board, over, foot = sizes.mm("board"), sizes.mm("overhang"), sizes.mm("plinth")
    depth = sizes.mm("depth")
    z = (foot, free.z[1])
    bodies = [PartBody(name="top", cells=_top(sizes, swell, (free.z[1], sizes.mm("height"))))]
    ends: tuple[tuple[str, Span, Side], ...] = (
        ("left", (over, free.x[0]), "right"),
        ("right", (free.x[1], free.x[1] + board), "left"),
    )
    for name, x, inner in ends:
        sides = {inner: f"side.{name}/inside", "bottom": "underside"}
        cell = box(x, (swell.rim_mm, depth), z, f"side.{name}/outside", sides)
        bodies.append(PartBody(name=f"side.{name}", cells=(cell,)))
    skins: dict[Side, str | None] = {
        "front": edge, "back": "bottom/inside", "left": "bottom/inside", "bottom": "underside",
    }  # fmt: skip
    floor = strip_cells(swell.between(free.x), free.y[1], (foot, free.z[0]), skins, parallel=False)
    rear = box(free.x, (free.y[1], depth), z, "back/outside", {"front": "back/inside", "bottom": "underside"})
    bodies += [
        PartBody(name="bottom", cells=floor, role="lining"),
        PartBody(name="back", cells=(rear,), role="back"),
    ]
    return (*bodies, *_plinth(sizes, swell))


def _top(sizes: Sizes, swell: Swell, z: Span) -> tuple[Cell, ...]:
    """Return the top, cut so that the underside of its overhang counts to the top."""
    width, depth, over = (sizes.mm(name) for name in ("width", "depth", "overhang"))
    inside: dict[Side, str | None] = {"front": "top", "back": "top", "left": "top", "bottom": "top/inside"}
    if over <= 0.0:
        return strip_cells(swell.facets, depth, z, inside, parallel=False)
    x = (over, width - over)
    inside |= {"front": None, "left": None, "right": None, "top": "top"}
    band: dict[Side, str | None] = {
        "front": "top", "back": None, "left": None, "right": None, "top": "top", "bottom": "top",
    }  # fmt: skip
    start = swell.rim_mm - over
    corner: dict[Side, str | None] = {"front": "top", "back": "top", "left": "top", "right": None}
    far: dict[Side, str | None] = {**corner, "left": None, "right": "top", "top": "top", "bottom": "top"}
    ends = ((0.0, over), (width - over, width))
    left, right = (Facet(span, (start, start)) for span in ends)
    return (
        *strip_cells((left,), depth, z, corner, parallel=False),
        *strip_cells(swell.between(x, -over), over, z, band, parallel=True),
        *strip_cells(plain(swell.facets), depth, z, inside, parallel=False),
        *strip_cells((right,), depth, z, far, parallel=False),
    )


def _plinth(sizes: Sizes, swell: Swell) -> tuple[PartBody, ...]:
    """Return front and ends of a plinth; it is open to the rear."""
    board, over, foot = sizes.mm("board"), sizes.mm("overhang"), sizes.mm("plinth")
    if foot <= 0.0:
        return ()
    z, behind, right = (0.0, foot), (swell.rim_mm + board, sizes.mm("depth")), sizes.mm("width") - over
    hidden: dict[Side, str | None] = {
        "front": "plinth", "back": "underside", "left": "plinth", "top": "underside", "bottom": "underside",
    }  # fmt: skip
    front = strip_cells(swell.facets, board, z, hidden, parallel=True)
    ends: tuple[tuple[str, Span, Side], ...] = (
        ("left", (over, over + board), "right"),
        ("right", (right - board, right), "left"),
    )
    return (
        PartBody(name="plinth front", cells=front),
        *(
            PartBody(
                name=f"plinth {name}",
                cells=(
                    box(
                        x,
                        behind,
                        z,
                        "plinth",
                        {"bottom": "underside", "top": "underside", inner: "underside"},
                    ),
                ),
            )
            for name, x, inner in ends
        ),
    )


def swelled_rail(swell: Swell, x: Span, behind_mm: float, z: Span, rest: str = "runners") -> tuple[Cell, ...]:
    """
    Return a rail between drawers, or a divider between two.

    Parameters
    ----------
    swell
        Curve of the front.
    x, z
        Spans [mm].
    behind_mm
        Where it ends [mm].
    rest
        Surface of all but its front.

    Returns
    -------
    tuple of Cell
        Its front counts to the rails.
    """
    skins: dict[Side, str | None] = {"front": "rails", "back": rest, "left": rest}
    return strip_cells(swell.between(x), behind_mm, z, skins, parallel=False)
