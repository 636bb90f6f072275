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
from refettle.geometry.forms.drawers import BEHIND_MM, LOW_MM, SLOT_MM
from refettle.geometry.forms.strips import Facet, bowed, serpentine, strip_cells
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice

STRAIGHT = "straight"
_SWELLS = {"bowed": bowed, "serpentine": serpentine}
_RIMS = {"bowed": 1.0, "serpentine": 2.0 / 3.0}  # where the curve ends at the sides, as a share of the bow
_HAIR_MM = 1e-6
_FACETS = 8  # of a whole front; areas are those of the arcs all the same
_BACK_FACE = 3  # of a strip, in the order of its sides
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


def swelled_drawer(
    sizes: Sizes, swell: Swell, name: str, bay: Span, level: Span, back_mm: float
) -> list[PartBody]:
    """
    Return the parts of a drawer behind a curved front; surfaces as those of a straight one.

    Parameters
    ----------
    sizes
        Parameters of a chest of drawers.
    swell
        Curve of its front.
    name
        Name of the drawer.
    bay, level
        Opening as spans [mm].
    back_mm
        Where the back board begins [mm].

    Returns
    -------
    list of PartBody
        Front, sides, bottom, back.
    """
    play, side_mm, thick = sizes.mm("play"), sizes.mm("drawer_side"), sizes.mm("drawer_front")
    x, z = (bay[0] + play, bay[1] - play), (level[0] + play, level[1] - play)
    end, slot, rim = back_mm - BEHIND_MM, z[0] + SLOT_MM, z[1] - LOW_MM
    inner, floor = (
        (x[0] + side_mm, x[1] - side_mm),
        (z[0] + SLOT_MM, z[0] + SLOT_MM + sizes.mm("drawer_bottom")),
    )
    below, within = f"{name}/underside", f"{name}/inside"
    bottom: dict[Side, str | None] = {
        "front": within, "back": f"{name}/back", "left": within, "bottom": below,
    }  # fmt: skip
    board = strip_cells(plain(swell.between(inner, thick)), end, floor, bottom, parallel=False)
    rear = box(inner, (end - side_mm, end), (floor[1], rim), within, {"back": f"{name}/back"})
    return [
        PartBody(name=f"{name} front", cells=_drawer_front(swell, name, x, (z[0], slot, z[1]), thick)),
        *(
            PartBody(
                name=f"{name} side {which}",
                cells=_drawer_side(swell, name, span, which, cuts, thick, end),
                role="lining",
            )
            for which, span, cuts in (
                ("left", (x[0], inner[0]), (z[0], slot, rim)),
                ("right", (inner[1], x[1]), (z[0], slot, rim)),
            )
        ),
        PartBody(name=f"{name} bottom", cells=board, role="lining"),
        PartBody(name=f"{name} back", cells=(rear,), role="lining"),
    ]


def _drawer_front(
    swell: Swell, name: str, x: Span, cuts: tuple[float, float, float], thick_mm: float
) -> tuple[Cell, ...]:
    """Return a front of even thickness; what shows of its back below the bottom counts to the underside."""
    cells = []
    for number, z in enumerate(pairwise(cuts)):
        back = f"{name}/inside" if number else f"{name}/underside"
        skins: dict[Side, str | None] = {"front": f"{name}/front", "back": back, "left": f"{name}/front"}
        skins |= {"bottom": None} if number else {"top": None}
        strips = strip_cells(swell.between(x), thick_mm, z, skins, parallel=True)
        cells += [_plane_back(cell) for cell in strips]
    return tuple(cells)


def _plane_back(cell: Cell) -> Cell:
    """Return a strip whose back counts with its own area: the box of a drawer lies against it."""
    faces = tuple(
        replace(face, curved_mm2=None) if number == _BACK_FACE else face
        for number, face in enumerate(cell.faces)
    )
    return replace(cell, faces=faces)


def _drawer_side(
    swell: Swell,
    name: str,
    x: Span,
    which: str,
    cuts: tuple[float, float, float],
    thick_mm: float,
    end_mm: float,
) -> tuple[Cell, ...]:
    """Return a side that reaches up to the curved front; below the bottom its inner face counts to the underside."""
    cells: list[Cell] = []
    inwards: Side = "right" if which == "left" else "left"
    outwards: Side = "left" if which == "left" else "right"
    for number, z in enumerate(pairwise(cuts)):
        skins: dict[Side, str | None] = {
            "front": f"{name}/sides", "back": f"{name}/back", "bottom": f"{name}/sides", "top": f"{name}/inside",
            outwards: f"{name}/sides", inwards: f"{name}/inside" if number else f"{name}/underside",
        }  # fmt: skip
        skins["bottom" if number else "top"] = None
        cells += strip_cells(plain(swell.between(x, thick_mm)), end_mm, z, skins, parallel=False)
    return tuple(cells)
