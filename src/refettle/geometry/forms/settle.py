"""Settle: a bench with a high back between two ends."""

from refettle.geometry.cells import Index, PartBody, Side, Skin, Span, box, cut_box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.framing import KINDS, framing, front_parameters
from refettle.geometry.forms.fronts import (
    Front,
    front_bodies,
    front_problems,
    front_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, length, size_parameters

_SET_BACK_MM = 10.0  # the apron lies behind the front edge of the seat
_LEAST_BACK_MM = 100.0
_LEAST_INNER_MM = 200.0


def _back_mm(sizes: Sizes) -> tuple[float, float]:
    return sizes.mm("width") - 2 * sizes.mm("board"), sizes.mm("height") - sizes.mm("seat_height")


PARAMETERS = (
    *size_parameters((400.0, 250.0, 500.0), (3000.0, 900.0, 2200.0)),
    length("board", "thickness of the ends", 25.0, 10.0, 80.0),
    Parameter(
        name="seat_height",
        kind="length",
        meaning="height of the seat over the floor",
        usual=lambda sizes: float(round(min(450.0, sizes.mm("height") * 0.45))),
        why="450 mm, at most 45 % of the height",
        low=150.0,
        high=700.0,
    ),
    length("seat", "thickness of the seat", 22.0, 8.0, 60.0),
    length("apron", "height of the apron below the seat; 0 = none", 90.0, 0.0, 600.0),
    Parameter(
        name="arm_height",
        kind="length",
        meaning="height of the ends in front, over the floor",
        usual=lambda sizes: float(
            round(min(sizes.mm("seat_height") + 220.0, (sizes.mm("height") + sizes.mm("seat_height")) / 2.0))
        ),
        why="220 mm over the seat, at most half-way to the top",
        low=160.0,
        high=2200.0,
    ),
    Parameter(
        name="wing",
        kind="length",
        meaning="depth of the ends above the arms",
        usual=lambda sizes: float(round(sizes.mm("depth") / 4.0)),
        why="a quarter of the depth",
        low=10.0,
        high=900.0,
    ),
    choice("back_kind", "kind of back", KINDS, "a plain back unless said"),
    length("back", "thickness of the back", 22.0, 8.0, 60.0),
    Parameter(
        name="panels",
        kind="count",
        meaning="number of panels of the back, side by side",
        usual=lambda sizes: max(1, min(8, round(_back_mm(sizes)[0] / 400.0))),
        why="one for about 400 mm of width",
        low=1,
        high=12,
        only_with=("back_kind", ("frame-and-panel",)),
    ),
    *front_parameters("back_kind", KINDS, "back", lambda sizes: sizes.mm("back"), _back_mm),
)


def _back(sizes: Sizes) -> Front:
    depth, board = sizes.mm("depth"), sizes.mm("board")
    return Front(
        name="back",
        outside="back/front",
        inside="back/outside",
        below="back/front",
        x=(board, sizes.mm("width") - board),
        y=(depth - sizes.mm("back"), depth),
        z=(sizes.mm("seat_height"), sizes.mm("height")),
        kind=sizes.choice("back_kind"),
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
    wide, tall = _back_mm(sizes)
    height, depth, seat = sizes.mm("height"), sizes.mm("depth"), sizes.mm("seat_height")
    check = "check it and the height over all"
    rows = (
        (
            "width",
            wide < _LEAST_INNER_MM,
            f"two ends leave {max(wide, 0.0):.3g} mm for the seat",
            "check the width",
        ),
        ("seat_height", tall < _LEAST_BACK_MM, f"a seat at {seat:.6g} mm leaves no back", check),
        (
            "apron",
            sizes.mm("apron") > seat - sizes.mm("seat"),
            f"an apron of {sizes.mm('apron'):.6g} mm reaches through the floor",
            "give less than the height of the seat",
        ),
        (
            "arm_height",
            not seat <= sizes.mm("arm_height") < height,
            f"ends of {sizes.mm('arm_height'):.6g} mm in front lie below the seat or above the back",
            check,
        ),
        (
            "wing",
            not sizes.mm("back") <= sizes.mm("wing") < depth,
            f"ends of {sizes.mm('wing'):.6g} mm above the arms are thinner than the back or too deep",
            "check it and the depth",
        ),
    )
    found = tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)
    return found or front_problems(_back(sizes), "back")


def build(sizes: Sizes) -> Built:
    """
    Return the settle built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        The back stands on the seat; seat, apron and back lie between the ends.
    """
    back = _back(sizes)
    level = (sizes.mm("seat_height") - sizes.mm("seat"), sizes.mm("seat_height"))
    seat = box(back.x, (0.0, sizes.mm("depth")), level, "seat", {"bottom": "seat/underside"})
    bodies = [PartBody(name="seat", cells=(seat,)), *_ends(sizes), *front_bodies(back)]
    if sizes.mm("apron") > 0.0:
        y = (_SET_BACK_MM, _SET_BACK_MM + sizes.mm("seat"))
        cell = box(back.x, y, (level[0] - sizes.mm("apron"), level[0]), "apron", {"back": "seat/underside"})
        bodies.append(PartBody(name="apron", cells=(cell,)))
    sides = ("side.left", "side.right")
    front, rear = front_skeletons(back, hidden=True)
    skeletons = (
        Skeleton(name="seat", part="seat", orientation="up", other_side="seat/underside"),
        front,
        Skeleton(name="apron", part="apron"),
        *(Skeleton(name=f"{name}/inside", part=name, other_side=f"{name}/outside") for name in sides),
        *(Skeleton(name=f"{name}/outside", part=name, other_side=f"{name}/inside") for name in sides),
        Skeleton(name="seat/underside", part="seat", orientation="down", other_side="seat", hidden=True),
        rear,
        Skeleton(name="feet", part="side.left", orientation="down", hidden=True),
    )
    return measured(tuple(bodies), skeletons)


def _ends(sizes: Sizes) -> list[PartBody]:
    """Return the two ends: deep up to the arms, narrow above."""
    board, depth = sizes.mm("board"), sizes.mm("depth")
    ys = (0.0, depth - sizes.mm("wing"), depth)
    zs = (0.0, sizes.mm("arm_height"), sizes.mm("height"))

    def end(name: str, x: Span, inwards: Side) -> PartBody:
        def skin(side: Side, index: Index) -> Skin:
            if side == "bottom" and index[2] == 0:
                return Skin("feet")
            return Skin(f"{name}/inside" if side == inwards else f"{name}/outside")

        return PartBody(name=name, cells=cut_box(x, ys, zs, skin, lambda index: index != (0, 0, 1)))

    return [
        end("side.left", (0.0, board), "right"),
        end("side.right", (sizes.mm("width") - board, sizes.mm("width")), "left"),
    ]


FORM = Form(
    id="settle",
    name="settle",
    aliases=("hall bench", "pew", "high-backed bench"),
    meaning="A bench with a high back; the rear of the back is taken to stand against a wall.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
