"""Chest: a box with a lid, for blankets."""

from refettle.geometry.cells import PartBody, Side, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import plinth_bodies
from refettle.geometry.forms.framing import framing, front_parameters
from refettle.geometry.forms.fronts import (
    Front,
    front_bodies,
    front_problems,
    front_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, length, size_parameters

_KINDS = ("flat", "frame-and-panel", "carved")
_LEAST_INNER_MM = 80.0
_LID_PLAY_MM = 2.0  # the lid is measured lifted: its underside lies open


def _walls(sizes: Sizes) -> tuple[Span, Span, Span]:
    """Return the spans of the box [mm]: over the ends, over front and back, plinth to rim."""
    over, depth = sizes.mm("overhang"), sizes.mm("depth")
    rim = sizes.mm("height") - sizes.mm("lid") - _LID_PLAY_MM
    return (over, sizes.mm("width") - over), (over, depth), (sizes.mm("plinth"), rim)


def _front_mm(sizes: Sizes) -> tuple[float, float]:
    x, _, z = _walls(sizes)
    return x[1] - x[0], z[1] - z[0]


PARAMETERS = (
    *size_parameters((250.0, 150.0, 150.0), (2400.0, 1000.0, 1200.0)),
    length("board", "thickness of front, back and ends", 20.0, 6.0, 60.0),
    length("lid", "thickness of the lid", 20.0, 6.0, 60.0),
    length("overhang", "how far the lid stands out over the front and the ends", 12.0, 0.0, 80.0),
    length("bottom", "thickness of the bottom", 12.0, 3.0, 40.0),
    Parameter(
        name="plinth",
        kind="length",
        meaning="height of the plinth",
        usual=lambda sizes: 60.0 if sizes.mm("height") >= 400.0 else 0.0,
        why="60 mm under a chest 400 mm high or more, else none",
        low=0.0,
        high=300.0,
    ),
    choice("front_kind", "kind of front", _KINDS, "a plain front unless said"),
    Parameter(
        name="panels",
        kind="count",
        meaning="number of panels of the front, side by side",
        usual=lambda sizes: max(1, min(4, round(_front_mm(sizes)[0] / 400.0))),
        why="one for about 400 mm of width",
        low=1,
        high=8,
        only_with=("front_kind", ("frame-and-panel",)),
    ),
    *front_parameters("front_kind", _KINDS, "front", lambda sizes: sizes.mm("board"), _front_mm),
)


def _front(sizes: Sizes) -> Front:
    x, y, z = _walls(sizes)
    return Front(
        name="front",
        outside="front/outside",
        inside="front/inside",
        below="underside",
        x=x,
        y=(y[0], y[0] + sizes.mm("board")),
        z=z,
        kind=sizes.choice("front_kind"),
        columns=sizes.count("panels"),
        framing=framing(sizes),
    )


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
    x, y, z = _walls(sizes)
    board = sizes.mm("board")
    rows = (
        ("width", x[1] - x[0] - 2 * board, "two ends and the overhang"),
        ("depth", y[1] - y[0] - 2 * board, "front, back and the overhang"),
        ("height", z[1] - z[0] - sizes.mm("bottom"), "plinth, bottom and lid"),
    )
    found = tuple(
        Problem(
            param=name,
            what=f"{what} leave {max(left, 0.0):.3g} mm of a {name} of {sizes.mm(name):.6g} mm",
            do=f"leave at least {_LEAST_INNER_MM:.0f} mm: check the {name} and the thicknesses",
        )
        for name, left, what in rows
        if left < _LEAST_INNER_MM
    )
    return found or front_problems(_front(sizes), "front")


def build(sizes: Sizes) -> Built:
    """
    Return the chest built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Front and back run over the ends; the bottom lies between them.
    """
    x, y, z = _walls(sizes)
    board, front = sizes.mm("board"), _front(sizes)
    inner_x, inner_y = (x[0] + board, x[1] - board), (y[0] + board, y[1] - board)
    lid = (z[1] + _LID_PLAY_MM, sizes.mm("height"))
    floor = (z[0], z[0] + sizes.mm("bottom"))
    under = "underside"
    bodies = [
        PartBody(
            name="lid",
            cells=(box((0.0, sizes.mm("width")), (0.0, y[1]), lid, "lid/outside", {"bottom": "lid/inside"}),),
        ),
        *front_bodies(front),
        PartBody(
            name="back",
            cells=(box(x, (inner_y[1], y[1]), z, "back/outside", {"front": "back/inside", "bottom": under}),),
        ),
        PartBody(
            name="bottom",
            cells=(box(inner_x, inner_y, floor, "bottom/inside", {"bottom": under}),),
            role="lining",
        ),
    ]
    ends: tuple[tuple[str, Span, Side], ...] = (
        ("side.left", (x[0], inner_x[0]), "right"),
        ("side.right", (inner_x[1], x[1]), "left"),
    )
    for name, across, inwards in ends:
        cell = box(across, inner_y, z, f"{name}/outside", {inwards: f"{name}/inside", "bottom": under})
        bodies.append(PartBody(name=name, cells=(cell,)))
    bodies += plinth_bodies(x, y, board, sizes.mm("plinth"))
    return measured(tuple(bodies), _skeletons(front))


def _skeletons(front: Front) -> tuple[Skeleton, ...]:
    walls = ("side.left", "side.right", "back")
    outer, inner = front_skeletons(front, "inside")
    return (
        Skeleton(name="lid/outside", part="lid", orientation="up", other_side="lid/inside"),
        outer,
        *(Skeleton(name=f"{name}/outside", part=name, other_side=f"{name}/inside") for name in walls),
        Skeleton(name="plinth", part="plinth"),
        Skeleton(name="lid/inside", part="lid", orientation="inside", other_side="lid/outside"),
        inner,
        *(
            Skeleton(name=f"{name}/inside", part=name, orientation="inside", other_side=f"{name}/outside")
            for name in walls
        ),
        Skeleton(name="bottom/inside", part="bottom", orientation="inside", other_side="underside"),
        Skeleton(name="underside", part="bottom", orientation="down", hidden=True),
    )


FORM = Form(
    id="chest",
    name="chest",
    aliases=("blanket chest", "coffer", "trunk", "hope chest"),
    meaning="A box with a lid; its back is taken to be seen.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
