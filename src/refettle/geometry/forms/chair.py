"""Chair: front legs, rear legs that run up as back posts, a seat, and a back between the posts."""

from dataclasses import replace

from refettle.geometry.cells import Index, PartBody, Side, Skin, box, cut_box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.chair_back import (
    BACK_PARAMETERS,
    back_bodies,
    back_problems,
    back_skeletons,
)
from refettle.geometry.forms.stretchers import STRETCHER_PARAMETERS
from refettle.geometry.forms.underframe import (
    Stand,
    apron_bodies,
    corners,
    leg_body,
    leg_parameters,
    underframe_problems,
    underframe_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, length, size_parameters

_PAD_BELOW_MM = 10.0  # how deep a drop-in seat lies between its rails
_PAD_ABOVE_MM = 25.0
_PAD_PLAY_MM = 3.0

PARAMETERS = (
    *size_parameters((280.0, 280.0, 550.0), (1000.0, 1000.0, 1600.0)),
    Parameter(
        name="seat_height",
        kind="length",
        meaning="height of the seat over the floor; of its rails where the seat drops in",
        usual=lambda sizes: float(round(min(450.0, sizes.mm("height") * 0.55))),
        why="450 mm, at most 55 % of the height",
        low=150.0,
        high=900.0,
    ),
    choice("seat_kind", "kind of seat", ("solid", "drop-in"), "a solid seat unless said"),
    replace(
        length("seat", "thickness of a solid seat", 20.0, 8.0, 60.0), only_with=("seat_kind", ("solid",))
    ),
    *leg_parameters(),
    *STRETCHER_PARAMETERS,
    *BACK_PARAMETERS,
)


def _stand(sizes: Sizes) -> Stand:
    solid = sizes.choice("seat_kind") == "solid"
    head = sizes.mm("seat_height") - (sizes.mm("seat") if solid else 0.0)
    return Stand(x=(0.0, sizes.mm("width")), y=(0.0, sizes.mm("depth")), head_mm=head)


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
    stand = _stand(sizes)
    return (*underframe_problems(sizes, stand, "seat_height"), *back_problems(sizes, *corners(sizes, stand)))


def build(sizes: Sizes) -> Built:
    """
    Return the chair built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Rear leg and back post are one piece of wood; a drop-in seat is out for the work.
    """
    stand = _stand(sizes)
    places = corners(sizes, stand)
    left, right, _, rear = places
    rise = (0.0, sizes.mm("height"))
    bodies = [
        leg_body(sizes, stand, 1),
        leg_body(sizes, stand, 2),
        *(
            PartBody(name=name, cells=(box(x, rear, rise, name, {"bottom": "feet"}),))
            for name, x in (("leg.3", left), ("leg.4", right))
        ),
        *apron_bodies(sizes, stand),
        *back_bodies(sizes, *places),
    ]
    pads: tuple[PartBody, ...] = ()
    if sizes.choice("seat_kind") == "solid":
        bodies.append(_solid_seat(sizes))
    else:
        pads = (_pad(sizes),)
    skeletons = (
        Skeleton(name="seat", part="seat", orientation="up", other_side="seat/underside"),
        *back_skeletons(sizes),
        *(
            replace(one, relief="flat") if one.name in {"leg.3", "leg.4"} else one
            for one in underframe_skeletons(sizes)
        ),
        Skeleton(name="seat/underside", part="seat", orientation="down", other_side="seat", hidden=True),
    )
    return measured(tuple(bodies), skeletons, pads)


def _solid_seat(sizes: Sizes) -> PartBody:
    """Return the seat, notched round the back posts."""
    leg, width, depth = sizes.mm("leg"), sizes.mm("width"), sizes.mm("depth")
    z = (_stand(sizes).head_mm, sizes.mm("seat_height"))

    def skin(side: Side, _: Index) -> Skin:
        return Skin("seat/underside" if side == "bottom" else "seat")

    cells = cut_box(
        (0.0, leg, width - leg, width),
        (0.0, depth - leg, depth),
        z,
        skin,
        lambda index: index[1] == 0 or index[0] == 1,
    )
    return PartBody(name="seat", cells=cells)


def _pad(sizes: Sizes) -> PartBody:
    """Return the drop-in seat: a pad on a frame of its own, between the rails."""
    left, right, front, rear = corners(sizes, _stand(sizes))
    x = (left[1] + _PAD_PLAY_MM, right[0] - _PAD_PLAY_MM)
    y = (front[1] + _PAD_PLAY_MM, rear[0] - _PAD_PLAY_MM)
    level = sizes.mm("seat_height")
    cell = box(x, y, (level - _PAD_BELOW_MM, level + _PAD_ABOVE_MM), "seat pad")
    return PartBody(name="seat pad", cells=(cell,))


FORM = Form(
    id="chair",
    name="chair",
    aliases=("dining chair", "kitchen chair", "ladder-back chair", "spindle-back chair", "side chair"),
    meaning="Front legs, rear legs that run up as back posts, a seat, a back between the posts; no arms.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
