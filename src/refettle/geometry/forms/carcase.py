"""
The case that chests of drawers and cupboards share: plinth, sides, bottom, back, top.

The top overhangs the front and both ends; its back is flush. The back stands between the sides.
"""

from dataclasses import dataclass

from refettle.geometry.cells import Cell, Index, PartBody, Side, Skin, Span, box, cut_box
from refettle.geometry.form import Skeleton
from refettle.geometry.parameters import Parameter, Problem, Sizes, length

_LEAST_INNER_MM = 80.0


@dataclass(frozen=True, slots=True)
class Opening:
    """
    Free space inside a case.

    Attributes
    ----------
    x, y, z
        Spans [mm]: between the sides, from the front edge to the back board, from bottom to top.
    """

    x: Span
    y: Span
    z: Span


CASE_PARAMETERS = (
    length("board", "thickness of sides and bottom", 20.0, 6.0, 60.0),
    length("top", "thickness of the top", 20.0, 6.0, 80.0),
    length("overhang", "how far the top stands out over the front and the ends", 10.0, 0.0, 100.0),
    Parameter(
        name="plinth",
        kind="length",
        meaning="height of the plinth",
        usual=lambda sizes: 60.0 if sizes.mm("height") >= 400.0 else 0.0,
        why="60 mm under a case 400 mm high or more, else none",
        low=0.0,
        high=400.0,
    ),
    length("back", "thickness of the back", 6.0, 2.0, 40.0),
)


def opening(sizes: Sizes) -> Opening:
    """
    Return the free space inside a case.

    Parameters
    ----------
    sizes
        Parameters of `size_parameters` and `CASE_PARAMETERS`.

    Returns
    -------
    Opening
        Spans; may be empty where the sizes make no sense.
    """
    board, over = sizes.mm("board"), sizes.mm("overhang")
    return Opening(
        (over + board, sizes.mm("width") - over - board),
        (over, sizes.mm("depth") - sizes.mm("back")),
        (sizes.mm("plinth") + board, sizes.mm("height") - sizes.mm("top")),
    )


def case_problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return why a case cannot be made.

    Parameters
    ----------
    sizes
        Parameters of `size_parameters` and `CASE_PARAMETERS`.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    free = opening(sizes)
    rows = (
        ("width", free.x, "two sides and the overhang"),
        ("depth", free.y, "the overhang and the back"),
        ("height", free.z, "plinth, bottom and top"),
    )
    return tuple(
        Problem(
            param=name,
            what=f"{what} leave {max(span[1] - span[0], 0.0):.3g} mm of a {name} of {sizes.mm(name):.6g} mm",
            do=f"leave at least {_LEAST_INNER_MM:.0f} mm: check the {name} and the thicknesses",
        )
        for name, span, what in rows
        if span[1] - span[0] < _LEAST_INNER_MM
    )


def case_bodies(sizes: Sizes, edge: str) -> tuple[PartBody, ...]:
    """
    Return the parts of a case.

    Parameters
    ----------
    sizes
        Parameters of `size_parameters` and `CASE_PARAMETERS` without problems.
    edge
        Surface of the front edge of the bottom.

    Returns
    -------
    tuple of PartBody
        Top, sides, bottom, back, plinth.
    """
    free = opening(sizes)
    board, over, foot = sizes.mm("board"), sizes.mm("overhang"), sizes.mm("plinth")
    depth, under = sizes.mm("depth"), free.z[1]
    z = (foot, under)
    left, right = (over, free.x[0]), (free.x[1], free.x[1] + board)
    inner_back = (free.y[1], depth)
    bodies = [PartBody(name="top", cells=_top(sizes, free))]
    ends: tuple[tuple[str, Span, Side], ...] = (("left", left, "right"), ("right", right, "left"))
    for name, x, inner in ends:
        sides = {inner: f"side.{name}/inside", "bottom": "underside"}
        cell = box(x, (over, depth), z, f"side.{name}/outside", sides)
        bodies.append(PartBody(name=f"side.{name}", cells=(cell,)))
    floor = box(free.x, free.y, (foot, free.z[0]), "bottom/inside", {"front": edge, "bottom": "underside"})
    rear = box(free.x, inner_back, z, "back/outside", {"front": "back/inside", "bottom": "underside"})
    bodies += [
        PartBody(name="bottom", cells=(floor,), role="lining"),
        PartBody(name="back", cells=(rear,), role="back"),
    ]
    return (*bodies, *plinth_bodies((over, sizes.mm("width") - over), (over, depth), board, foot))


def case_skeletons(*, drawers: bool) -> tuple[Skeleton, ...]:
    """
    Return the surfaces of a case.

    Parameters
    ----------
    drawers
        Whether drawers fill it: nobody sees its inside in use, and the lowest run on its bottom.

    Returns
    -------
    tuple of Skeleton
        Outside first.
    """
    hidden = drawers
    outside = [Skeleton(name="top", part="top", orientation="up", other_side="top/inside")]
    inside = [_inner("top/inside", "top", hidden=hidden)]
    for name in ("side.left", "side.right"):
        outside.append(Skeleton(name=f"{name}/outside", part=name, other_side=f"{name}/inside"))
        inside.append(_inner(f"{name}/inside", f"{name}/outside", hidden=hidden))
    return (
        *outside,
        Skeleton(name="plinth", part="plinth"),
        *inside,
        _inner("bottom/inside", "", hidden=hidden, running=drawers),
        _inner("back/inside", "back/outside", hidden=hidden),
        Skeleton(name="back/outside", part="back", other_side="back/inside", hidden=True),
        Skeleton(name="underside", part="carcase", orientation="down", hidden=True),
    )


def _inner(name: str, other_side: str, *, hidden: bool, running: bool = False) -> Skeleton:
    return Skeleton(
        name=name,
        part=name.split("/", 1)[0],
        orientation="inside",
        other_side=other_side,
        hidden=hidden,
        running=running,
    )


def _top(sizes: Sizes, free: Opening) -> tuple[Cell, ...]:
    """Return the top, cut so that the underside of its overhang counts to the top."""
    width, depth, height, over = (sizes.mm(name) for name in ("width", "depth", "height", "overhang"))
    xs = (0.0, over, width - over, width) if over > 0.0 else (0.0, width)
    ys = (0.0, over, depth) if over > 0.0 else (0.0, depth)
    middle = (1, 1) if over > 0.0 else (0, 0)

    def skin(side: Side, index: Index) -> Skin:
        return Skin("top/inside" if side == "bottom" and index[:2] == middle else "top")

    return cut_box(xs, ys, (free.z[1], height), skin)


def plinth_bodies(x: Span, y: Span, board_mm: float, height_mm: float) -> tuple[PartBody, ...]:
    """
    Return front and ends of a plinth; it is open to the rear.

    Parameters
    ----------
    x, y
        Spans that it covers [mm].
    board_mm
        Thickness [mm].
    height_mm
        Height [mm]; 0 = no plinth.

    Returns
    -------
    tuple of PartBody
        Three boards, or none.
    """
    if height_mm <= 0.0:
        return ()
    z, behind = (0.0, height_mm), (y[0] + board_mm, y[1])
    hidden: dict[Side, str | Skin] = {"bottom": "underside", "top": "underside"}
    boards = (
        ("front", x, (y[0], behind[0]), {**hidden, "back": "underside"}),
        ("left", (x[0], x[0] + board_mm), behind, {**hidden, "right": "underside"}),
        ("right", (x[1] - board_mm, x[1]), behind, {**hidden, "left": "underside"}),
    )
    return tuple(
        PartBody(name=f"plinth {name}", cells=(box(across, along, z, "plinth", sides),))
        for name, across, along, sides in boards
    )
