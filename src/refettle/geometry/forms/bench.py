"""Bench: a seat without a back, on legs with aprons or on two board ends."""

from dataclasses import replace

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.stretchers import STRETCHER_PARAMETERS
from refettle.geometry.forms.underframe import (
    Stand,
    apron_bodies,
    leg_body,
    leg_parameters,
    underframe_problems,
    underframe_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, count, length, size_parameters

_LEAST_BETWEEN_MM = 100.0
_LEAST_BOARD_MM = 20.0
_ENDS = ("support", ("ends",))
_LEGS = ("support", ("legs",))


def _overhang(sizes: Sizes) -> float:
    return float(round(min(25.0, sizes.mm("depth") / 15.0)))


PARAMETERS = (
    *size_parameters((250.0, 150.0, 200.0), (4000.0, 900.0, 900.0)),
    length("seat", "thickness of the seat", 25.0, 8.0, 80.0),
    count("seat_boards", "number of boards in the seat, side by side", 1, "one board unless said", 1, 12),
    length("seat_gap", "gap between the boards of the seat", 8.0, 1.0, 60.0),
    Parameter(
        name="overhang",
        kind="length",
        meaning="how far the seat stands out over what carries it, all round",
        usual=_overhang,
        why="a fifteenth of the depth, at most 25 mm",
        low=0.0,
        high=500.0,
    ),
    choice("support", "what carries the seat", ("legs", "ends"), "legs unless said"),
    *(one if one.only_with else replace(one, only_with=_LEGS) for one in leg_parameters()),
    *(one if one.only_with else replace(one, only_with=_LEGS) for one in STRETCHER_PARAMETERS),
    replace(
        length("board", "thickness of the ends and the rail between them", 25.0, 10.0, 80.0), only_with=_ENDS
    ),
    Parameter(
        name="end_rail",
        kind="length",
        meaning="height of the rail under the seat between the ends; 0 = none",
        usual=lambda sizes: float(round(min(100.0, sizes.mm("height") / 4.0))),
        why="a quarter of the height, at most 100 mm",
        low=0.0,
        high=800.0,
        only_with=_ENDS,
    ),
)


def _stand(sizes: Sizes) -> Stand:
    over = sizes.mm("overhang")
    return Stand(
        x=(over, sizes.mm("width") - over),
        y=(over, sizes.mm("depth") - over),
        head_mm=sizes.mm("height") - sizes.mm("seat"),
    )


def _boards(sizes: Sizes) -> tuple[Span, ...]:
    """Return the boards of the seat from the front [mm]."""
    number, gap = sizes.count("seat_boards"), sizes.mm("seat_gap")
    wide = (sizes.mm("depth") - (number - 1) * gap) / number
    return tuple((n * (wide + gap), n * (wide + gap) + wide) for n in range(number))


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
    stand, board, first = _stand(sizes), sizes.mm("board"), _boards(sizes)[0]
    found = []
    if first[1] - first[0] < _LEAST_BOARD_MM:
        what = (
            f"{sizes.count('seat_boards')} boards of the seat are {max(first[1] - first[0], 0.0):.3g} mm wide"
        )
        do = f"leave at least {_LEAST_BOARD_MM:.0f} mm: fewer boards or smaller gaps"
        found.append(Problem(param="seat_boards", what=what, do=do))
    if sizes.choice("support") == "legs":
        return (*found, *underframe_problems(sizes, stand, "height"))
    rows = (
        ("overhang", stand.x[1] - stand.x[0] - 2 * board, "width between the ends"),
        ("overhang", stand.y[1] - stand.y[0], "depth of the ends"),
        ("end_rail", stand.head_mm - sizes.mm("end_rail"), "height below the rail"),
    )
    for name, left, what in rows:
        if left < _LEAST_BETWEEN_MM and name not in {problem.param for problem in found}:
            do = f"leave at least {_LEAST_BETWEEN_MM:.0f} mm: check the sizes"
            found.append(Problem(param=name, what=f"the {what} is {max(left, 0.0):.3g} mm", do=do))
    return tuple(found)


def build(sizes: Sizes) -> Built:
    """
    Return the bench built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        The boards of the seat run from left to right and count as one surface.
    """
    level = (sizes.mm("height") - sizes.mm("seat"), sizes.mm("height"))
    across = (0.0, sizes.mm("width"))
    bodies = [
        PartBody(name=f"seat board {n}", cells=(box(across, y, level, "seat", {"bottom": "seat/underside"}),))
        for n, y in enumerate(_boards(sizes), start=1)
    ]
    seat = Skeleton(name="seat", part="seat", orientation="up", other_side="seat/underside")
    under = Skeleton(name="seat/underside", part="seat", orientation="down", other_side="seat", hidden=True)
    if sizes.choice("support") == "legs":
        stand = _stand(sizes)
        bodies += [*(leg_body(sizes, stand, n) for n in range(1, 5)), *apron_bodies(sizes, stand)]
        return measured(tuple(bodies), (seat, *underframe_skeletons(sizes), under))
    bodies += _ends(sizes)
    ends = tuple(Skeleton(name=f"end.{side}", part=f"end.{side}") for side in ("left", "right"))
    rest = (
        Skeleton(name="end rail", part="end rail"),
        under,
        Skeleton(name="feet", part="ends", orientation="down", hidden=True),
    )
    return measured(tuple(bodies), (seat, *ends, *rest))


def _ends(sizes: Sizes) -> list[PartBody]:
    """Return two board ends and the rail between them, upright in the middle of the depth."""
    stand, board, rail = _stand(sizes), sizes.mm("board"), sizes.mm("end_rail")
    left, right = (stand.x[0], stand.x[0] + board), (stand.x[1] - board, stand.x[1])
    z = (0.0, stand.head_mm)
    bodies = [
        PartBody(name=f"end.{side}", cells=(box(x, stand.y, z, f"end.{side}", {"bottom": "feet"}),))
        for side, x in (("left", left), ("right", right))
    ]
    if rail > 0.0:
        middle = sizes.mm("depth") / 2.0
        y = (middle - board / 2.0, middle + board / 2.0)
        cell = box((left[1], right[0]), y, (stand.head_mm - rail, stand.head_mm), "end rail")
        bodies.append(PartBody(name="end rail", cells=(cell,)))
    return bodies


FORM = Form(
    id="bench",
    name="bench",
    aliases=("stool", "form bench", "footstool", "window bench", "garden bench"),
    meaning="A seat without a back, on legs with aprons or on two board ends.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
