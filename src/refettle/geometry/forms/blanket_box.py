"""Blanket box: a box with a lid over a row of drawers."""

from refettle.geometry.cells import PartBody, Side, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import plinth_bodies
from refettle.geometry.forms.casework import bays, upright_bodies, upright_skeletons
from refettle.geometry.forms.doors import PLAY_PARAMETER
from refettle.geometry.forms.drawers import (
    BOX_PARAMETERS,
    Stack,
    drawer_bodies,
    drawer_skeletons,
    stack_problems,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, count, length, size_parameters

_LEAST_INNER_MM = 80.0
_LID_PLAY_MM = 2.0  # the lid is measured lifted: its underside lies open
_UNDER = "underside"

PARAMETERS = (
    *size_parameters((350.0, 250.0, 350.0), (2400.0, 1000.0, 1400.0)),
    length("board", "thickness of front, back and ends", 20.0, 6.0, 60.0),
    length("lid", "thickness of the lid", 20.0, 6.0, 60.0),
    length("overhang", "how far the lid stands out over the front and the ends", 12.0, 0.0, 80.0),
    length("bottom", "thickness of the two bottoms, of the box and below the drawers", 12.0, 3.0, 40.0),
    Parameter(
        name="plinth",
        kind="length",
        meaning="height of the plinth",
        usual=lambda sizes: 60.0 if sizes.mm("height") >= 500.0 else 0.0,
        why="60 mm under a box 500 mm high or more, else none",
        low=0.0,
        high=300.0,
    ),
    count(
        "drawers",
        "number of drawers side by side below the box",
        lambda sizes: max(1, min(3, round(sizes.mm("width") / 550.0))),
        "one for about 550 mm of width",
        1,
        4,
    ),
    Parameter(
        name="drawer_height",
        kind="length",
        meaning="height of the opening of a drawer",
        usual=lambda sizes: float(round(min(180.0, max(70.0, sizes.mm("height") / 4.5)))),
        why="two ninths of the height, 70 to 180 mm",
        low=60.0,
        high=400.0,
    ),
    PLAY_PARAMETER,
    *BOX_PARAMETERS,
)


def _walls(sizes: Sizes) -> tuple[Span, Span, Span]:
    """Return the spans of the case [mm]: over the ends, front to back, plinth to rim."""
    over, depth = sizes.mm("overhang"), sizes.mm("depth")
    rim = sizes.mm("height") - sizes.mm("lid") - _LID_PLAY_MM
    return (over, sizes.mm("width") - over), (over, depth), (sizes.mm("plinth"), rim)


def _inner_x(sizes: Sizes) -> Span:
    x, board = _walls(sizes)[0], sizes.mm("board")
    return x[0] + board, x[1] - board


def _drawer_space(sizes: Sizes) -> tuple[Span, Span]:
    """Return depth and height of the space of the drawers as spans [mm]."""
    _, y, z = _walls(sizes)
    low = z[0] + sizes.mm("bottom")
    return (y[0], y[1] - sizes.mm("board")), (low, low + sizes.mm("drawer_height"))


def _bays(sizes: Sizes) -> tuple[Span, ...]:
    return bays(_inner_x(sizes), sizes.count("drawers"), sizes.mm("board"))


def problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return what is wrong with the sizes together.

    Parameters
    ----------
    sizes
        All parameters.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    _, y, z = _walls(sizes)
    inner, (space_y, space_z) = _inner_x(sizes), _drawer_space(sizes)
    rows = (
        ("width", inner[1] - inner[0], "two ends and the overhang"),
        ("depth", y[1] - y[0] - 2 * sizes.mm("board"), "front, back and the overhang"),
        ("drawer_height", z[1] - space_z[1] - sizes.mm("bottom"), "plinth, drawers and lid"),
    )
    found = tuple(
        Problem(
            param=name,
            what=f"{what} leave {max(left, 0.0):.3g} mm for the box",
            do=f"leave at least {_LEAST_INNER_MM:.0f} mm: check the sizes and the thicknesses",
        )
        for name, left, what in rows
        if left < _LEAST_INNER_MM
    )
    stack = Stack(place="low", x=_bays(sizes)[0], y=space_y, z=space_z, drawers=1, rail_mm=0.0)
    return found or stack_problems(sizes, stack, ("drawers", "depth", "drawer_height"))


def build(sizes: Sizes) -> Built:
    """
    Return the blanket box built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Ends run through; front, back and bottoms lie between them. Drawers and lid touch nothing.
    """
    x, y, _ = _walls(sizes)
    space_y, space_z = _drawer_space(sizes)
    openings = _bays(sizes)
    bodies = [*_box(sizes), *upright_bodies(openings, space_y, space_z)]
    bodies += plinth_bodies(x, y, sizes.mm("board"), sizes.mm("plinth"))
    skeletons = [*_skeletons()]
    for number, bay in enumerate(openings, start=1):
        bodies += drawer_bodies(sizes, f"drawer.{number}", bay, space_y, space_z)
        skeletons += drawer_skeletons(f"drawer.{number}")
    return measured(tuple(bodies), (*skeletons, *upright_skeletons(openings)))


def _box(sizes: Sizes) -> list[PartBody]:
    """Return lid, ends, front, back and the two bottoms."""
    _, y, z = _walls(sizes)
    inner, board, split = _inner_x(sizes), sizes.mm("board"), _drawer_space(sizes)[1][1]
    lid_z = (z[1] + _LID_PLAY_MM, sizes.mm("height"))
    lid = box((0.0, sizes.mm("width")), (0.0, y[1]), lid_z, "lid/outside", {"bottom": "lid/inside"})
    front_y, back_y = (y[0], y[0] + board), (y[1] - board, y[1])
    front = box(
        inner, front_y, (split, z[1]), "front/outside", {"back": "front/inside", "bottom": "drawer space"}
    )
    back = box(inner, back_y, z, "back/outside", {"front": "back/inside", "bottom": _UNDER})
    floor = box(
        inner,
        (front_y[1], back_y[0]),
        (split, split + sizes.mm("bottom")),
        "bottom/inside",
        {"bottom": "drawer space"},
    )
    low = box(
        inner,
        (y[0], back_y[0]),
        (z[0], z[0] + sizes.mm("bottom")),
        "drawer floor",
        {"front": "rails", "bottom": _UNDER},
    )
    return [
        PartBody(name="lid", cells=(lid,)),
        *_ends(sizes),
        PartBody(name="front", cells=(front,)),
        PartBody(name="back", cells=(back,)),
        PartBody(name="bottom", cells=(floor,), role="lining"),
        PartBody(name="drawer floor", cells=(low,), role="lining"),
    ]


def _ends(sizes: Sizes) -> list[PartBody]:
    """Return the two ends, from plinth to rim."""
    x, y, z = _walls(sizes)
    inner = _inner_x(sizes)
    ends: tuple[tuple[str, Span, Side], ...] = (
        ("side.left", (x[0], inner[0]), "right"),
        ("side.right", (inner[1], x[1]), "left"),
    )
    return [
        PartBody(
            name=name,
            cells=(box(across, y, z, f"{name}/outside", {inwards: f"{name}/inside", "bottom": _UNDER}),),
        )
        for name, across, inwards in ends
    ]


def _skeletons() -> tuple[Skeleton, ...]:
    walls = ("front", "side.left", "side.right", "back")
    return (
        Skeleton(name="lid/outside", part="lid", orientation="up", other_side="lid/inside"),
        *(Skeleton(name=f"{name}/outside", part=name, other_side=f"{name}/inside") for name in walls),
        Skeleton(name="rails", part="carcase"),
        Skeleton(name="plinth", part="plinth"),
        Skeleton(name="lid/inside", part="lid", orientation="inside", other_side="lid/outside"),
        *(
            Skeleton(name=f"{name}/inside", part=name, orientation="inside", other_side=f"{name}/outside")
            for name in walls
        ),
        Skeleton(name="bottom/inside", part="bottom", orientation="inside", other_side="drawer space"),
        Skeleton(name="drawer space", part="bottom", orientation="down", hidden=True),
        Skeleton(name="drawer floor", part="drawer floor", orientation="inside", running=True, hidden=True),
        Skeleton(name=_UNDER, part="carcase", orientation="down", hidden=True),
    )


FORM = Form(
    id="blanket_box",
    name="blanket box",
    aliases=("mule chest", "chest with drawers", "lidded chest with drawers"),
    meaning="A box with a lid over a row of drawers; without drawers it is a chest.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
