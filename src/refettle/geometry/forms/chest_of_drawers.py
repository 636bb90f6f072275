"""Chest of drawers: a case with drawers one above the other, two or three short ones on top if wished."""

from itertools import pairwise

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import (
    CASE_PARAMETERS,
    Opening,
    case_bodies,
    case_problems,
    case_skeletons,
    opening,
)
from refettle.geometry.forms.drawers import (
    BEHIND_MM,
    BOX_PARAMETERS,
    RAIL_SKELETONS,
    RUNNER_MM,
    drawer_bodies,
    drawer_skeletons,
    least_row_mm,
    rail_end,
)
from refettle.geometry.forms.swelled import (
    SWELL_PARAMETERS,
    Swell,
    swell_of,
    swell_problems,
    swelled_case,
    swelled_opening,
    swelled_rail,
)
from refettle.geometry.forms.swelled_drawer import swelled_drawer
from refettle.geometry.parameters import Problem, Sizes, count, length, size_parameters

_LEAST_DRAWER_MM = 80.0
_USUAL_ROW_MM = 220.0


def _usual_drawers(sizes: Sizes) -> float:
    span = opening(sizes).z
    return max(1, min(5, round((span[1] - span[0]) / _USUAL_ROW_MM)))


PARAMETERS = (
    *size_parameters((250.0, 200.0, 200.0), (3000.0, 1000.0, 2400.0)),
    *CASE_PARAMETERS,
    count("drawers", "number of full-width drawers", _usual_drawers, "one for about 220 mm of height", 1, 12),
    count("short_drawers", "drawers side by side in a row of their own on top", 0, "none unless said", 0, 4),
    length("rail", "thickness of the rails between drawers", 18.0, 6.0, 60.0),
    *BOX_PARAMETERS,
    length("play", "play round a drawer", 2.0, 0.5, 8.0),
    *SWELL_PARAMETERS,
)


def _rows(sizes: Sizes) -> int:
    return sizes.count("drawers") + (1 if sizes.count("short_drawers") else 0)


def _levels(sizes: Sizes) -> tuple[Span, ...]:
    """Return the openings of the rows from the top down [mm]."""
    free, rows, rail = opening(sizes).z, _rows(sizes), sizes.mm("rail")
    tall = (free[1] - free[0] - (rows - 1) * rail) / rows
    floors = [free[0] + n * (tall + rail) for n in range(rows)][::-1]
    return tuple((floor, floor + tall) for floor in floors)


def _bays(sizes: Sizes) -> tuple[Span, ...]:
    """Return the openings side by side in the row of short drawers [mm]."""
    free, number, board = opening(sizes).x, max(1, sizes.count("short_drawers")), sizes.mm("board")
    wide = (free[1] - free[0] - (number - 1) * board) / number
    return tuple((free[0] + n * (wide + board), free[0] + n * (wide + board) + wide) for n in range(number))


def _swell(sizes: Sizes) -> Swell | None:
    """Return the curve of the front, cut where the sides of drawers meet their fronts; None where it is straight."""
    swell, play, side = swell_of(sizes), sizes.mm("play"), sizes.mm("drawer_side")
    if swell is None:
        return None
    ends = [
        end for bay in (opening(sizes).x, *_bays(sizes)) for end in ((bay[0] + play, 1), (bay[1] - play, -1))
    ]
    return swell.cut_at(place for end, inwards in ends for place in (end, end + inwards * side))


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
    found = [*case_problems(sizes), *swell_problems(sizes)]
    free = swelled_opening(sizes)
    row, bay = _levels(sizes)[0], _bays(sizes)[0]
    least = least_row_mm(sizes)
    if row[1] - row[0] < least and free.z[1] - free.z[0] >= least:
        what = f"{_rows(sizes)} rows of drawers leave {max(row[1] - row[0], 0.0):.3g} mm for each"
        do = f"leave at least {least:.3g} mm: fewer drawers, or check the height"
        found.append(Problem(param="drawers", what=what, do=do))
    if bay[1] - bay[0] < _LEAST_DRAWER_MM:
        what = (
            f"{sizes.count('short_drawers')} short drawers leave {max(bay[1] - bay[0], 0.0):.3g} mm for each"
        )
        do = f"leave at least {_LEAST_DRAWER_MM:.0f} mm: fewer short drawers, or check the width"
        found.append(Problem(param="short_drawers", what=what, do=do))
    if free.y[1] - free.y[0] - sizes.mm("drawer_front") - BEHIND_MM < _LEAST_DRAWER_MM / 2:
        what = f"a drawer front of {sizes.mm('drawer_front'):.6g} mm leaves no room for the drawer"
        found.append(Problem(param="depth", what=what, do="check the depth and the thicknesses"))
    return tuple(found)


def build(sizes: Sizes) -> Built:
    """
    Return the chest of drawers built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Drawers stand in their openings with play all round, so that they touch nothing: work is
        done with the drawers out.
    """
    return measured(*chest_members(sizes))


def chest_members(sizes: Sizes) -> tuple[tuple[PartBody, ...], tuple[Skeleton, ...]]:
    """
    Return the parts and the surfaces of a chest of drawers.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    tuple
        Parts; surfaces in the order in which they are to come out.
    """
    free, levels, swell = swelled_opening(sizes), _levels(sizes), _swell(sizes)
    case = case_bodies(sizes, "rails") if swell is None else swelled_case(sizes, swell, "rails")
    bodies = [*case, *_rails(sizes, free, levels)]
    skeletons = [*case_skeletons(drawers=True)]
    short = sizes.count("short_drawers")
    if short > 1:
        bodies += _dividers(sizes, free, levels[0])
    number = 0
    for row, level in enumerate(levels):
        for bay in _bays(sizes) if short and row == 0 else (free.x,):
            number += 1
            name = f"drawer.{number}"
            if swell is None:
                bodies += drawer_bodies(sizes, name, bay, free.y, level)
            else:
                bodies += swelled_drawer(sizes, swell, name, bay, level, free.y[1])
            skeletons += drawer_skeletons(f"drawer.{number}")
    skeletons += [
        *RAIL_SKELETONS,
        Skeleton(name="dividers", part="carcase", orientation="inside", hidden=True),
    ]
    return tuple(bodies), tuple(skeletons)


def _rails(sizes: Sizes, free: Opening, levels: tuple[Span, ...]) -> list[PartBody]:
    """Return the rails between rows with the runners behind them."""
    behind, swell = (rail_end(free.y), free.y[1]), _swell(sizes)
    ends = [
        ("left", (free.x[0], free.x[0] + RUNNER_MM)),
        ("right", (free.x[1] - RUNNER_MM, free.x[1])),
    ]
    bodies = []
    for number, (upper, lower) in enumerate(pairwise(levels)):
        z = (lower[1], upper[0])
        rail = (
            (box(free.x, (free.y[0], behind[0]), z, "runners", {"front": "rails"}),)
            if swell is None
            else swelled_rail(swell, free.x, behind[0], z)
        )
        bodies.append(PartBody(name=f"rail {number + 1}", cells=rail))
        centre = [
            (f"centre {n + 1}", (left[1] - RUNNER_MM, right[0] + RUNNER_MM))
            for n, (left, right) in enumerate(pairwise(_bays(sizes)))
            if number == 0
        ]
        bodies += [
            PartBody(name=f"runner {number + 1} {name}", cells=(box(x, behind, z, "runners"),), role="lining")
            for name, x in (*ends, *centre)
        ]
    return bodies


def _dividers(sizes: Sizes, free: Opening, level: Span) -> list[PartBody]:
    swell, found = _swell(sizes), []
    for number, (left, right) in enumerate(pairwise(_bays(sizes)), start=1):
        x = (left[1], right[0])
        cells = (
            (box(x, free.y, level, "dividers", {"front": "rails"}),)
            if swell is None
            else swelled_rail(swell, x, free.y[1], level, "dividers")
        )
        found.append(PartBody(name=f"divider {number}", cells=cells))
    return found


FORM = Form(
    id="chest_of_drawers",
    name="chest of drawers",
    aliases=("drawers", "dresser", "bureau", "commode"),
    meaning="A case filled with drawers.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
