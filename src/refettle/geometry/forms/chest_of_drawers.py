"""Chest of drawers: a case with drawers one above the other, two or three short ones on top if wished."""

from itertools import pairwise

from refettle.geometry.cells import Index, PartBody, Side, Skin, Span, box, cut_box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import (
    CASE_PARAMETERS,
    Opening,
    case_bodies,
    case_problems,
    case_skeletons,
    opening,
)
from refettle.geometry.parameters import Problem, Sizes, count, length, size_parameters

_RAIL_DEEP_MM = 50.0
_RUNNER_MM = 25.0
_BEHIND_MM = 10.0  # free space behind a drawer
_SLOT_MM = 10.0  # from the lower edge of a drawer side up to its bottom
_LOW_MM = 10.0  # how far drawer sides stay below the front
_LEAST_ROW_MM = 60.0
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
    length("drawer_front", "thickness of a drawer front", 20.0, 6.0, 60.0),
    length("drawer_side", "thickness of drawer sides and back", 12.0, 4.0, 30.0),
    length("drawer_bottom", "thickness of a drawer bottom", 6.0, 2.0, 20.0),
    length("play", "play round a drawer", 2.0, 0.5, 8.0),
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
    found = list(case_problems(sizes))
    free = opening(sizes)
    row, bay = _levels(sizes)[0], _bays(sizes)[0]
    least = max(_LEAST_ROW_MM, 2 * sizes.mm("play") + _SLOT_MM + _LOW_MM + sizes.mm("drawer_bottom") + 10.0)
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
    if free.y[1] - free.y[0] - sizes.mm("drawer_front") - _BEHIND_MM < _LEAST_DRAWER_MM / 2:
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
    free, levels = opening(sizes), _levels(sizes)
    bodies = [*case_bodies(sizes, "rails"), *_rails(sizes, free, levels)]
    skeletons = [*case_skeletons(drawers=True)]
    short = sizes.count("short_drawers")
    if short > 1:
        bodies += _dividers(sizes, free, levels[0])
    number = 0
    for row, level in enumerate(levels):
        for bay in _bays(sizes) if short and row == 0 else (free.x,):
            number += 1
            bodies += _drawer(sizes, f"drawer.{number}", bay, level)
            skeletons += _drawer_skeletons(f"drawer.{number}")
    skeletons += [
        Skeleton(name="rails", part="carcase"),
        Skeleton(name="runners", part="carcase", orientation="inside", running=True, hidden=True),
        Skeleton(name="dividers", part="carcase", orientation="inside", hidden=True),
    ]
    return measured(tuple(bodies), tuple(skeletons))


def _rail_end(free: Opening) -> float:
    return free.y[0] + min(_RAIL_DEEP_MM, (free.y[1] - free.y[0]) / 3.0)


def _rails(sizes: Sizes, free: Opening, levels: tuple[Span, ...]) -> list[PartBody]:
    """Return the rails between rows with the runners behind them."""
    behind = (_rail_end(free), free.y[1])
    ends = [
        ("left", (free.x[0], free.x[0] + _RUNNER_MM)),
        ("right", (free.x[1] - _RUNNER_MM, free.x[1])),
    ]
    bodies = []
    for number, (upper, lower) in enumerate(pairwise(levels)):
        z = (lower[1], upper[0])
        rail = box(free.x, (free.y[0], behind[0]), z, "runners", {"front": "rails"})
        bodies.append(PartBody(name=f"rail {number + 1}", cells=(rail,)))
        centre = [
            (f"centre {n + 1}", (left[1] - _RUNNER_MM, right[0] + _RUNNER_MM))
            for n, (left, right) in enumerate(pairwise(_bays(sizes)))
            if number == 0
        ]
        bodies += [
            PartBody(name=f"runner {number + 1} {name}", cells=(box(x, behind, z, "runners"),), role="lining")
            for name, x in (*ends, *centre)
        ]
    return bodies


def _dividers(sizes: Sizes, free: Opening, level: Span) -> list[PartBody]:
    bays = _bays(sizes)
    return [
        PartBody(
            name=f"divider {n + 1}",
            cells=(box((left[1], right[0]), free.y, level, "dividers", {"front": "rails"}),),
        )
        for n, (left, right) in enumerate(pairwise(bays))
    ]


def _drawer(sizes: Sizes, name: str, bay: Span, level: Span) -> list[PartBody]:
    """Return the parts of a drawer; what shows from above is its inside."""
    free, play = opening(sizes), sizes.mm("play")
    side_mm, bottom_mm = sizes.mm("drawer_side"), sizes.mm("drawer_bottom")
    x0, x1, z0, z1 = bay[0] + play, bay[1] - play, level[0] + play, level[1] - play
    start = free.y[0] + sizes.mm("drawer_front")
    end, slot, rim = free.y[1] - _BEHIND_MM, z0 + _SLOT_MM, z1 - _LOW_MM
    inner = (x0 + side_mm, x1 - side_mm)

    def front_skin(side: Side, index: Index) -> Skin:
        if side == "back":
            return Skin(f"{name}/underside" if index[2] == 0 else f"{name}/inside")
        return Skin(f"{name}/front")

    def side_skin(inwards: Side) -> tuple[PartBody, ...]:
        def skin(side: Side, index: Index) -> Skin:
            if side == inwards:
                return Skin(f"{name}/underside" if index[2] == 0 else f"{name}/inside")
            return Skin({"top": f"{name}/inside", "back": f"{name}/back"}.get(side, f"{name}/sides"))

        x = (x0, inner[0]) if inwards == "right" else (inner[1], x1)
        cells = cut_box(x, (start, end), (z0, slot, rim), skin)
        which = "left" if inwards == "right" else "right"
        return (PartBody(name=f"{name} side {which}", cells=cells, role="lining"),)

    floor = (slot, slot + bottom_mm)
    bottom = box(
        inner, (start, end), floor, f"{name}/inside", {"bottom": f"{name}/underside", "back": f"{name}/back"}
    )
    rear = box(inner, (end - side_mm, end), (floor[1], rim), f"{name}/inside", {"back": f"{name}/back"})
    return [
        PartBody(
            name=f"{name} front", cells=cut_box((x0, x1), (free.y[0], start), (z0, slot, z1), front_skin)
        ),
        *side_skin("right"),
        *side_skin("left"),
        PartBody(name=f"{name} bottom", cells=(bottom,), role="lining"),
        PartBody(name=f"{name} back", cells=(rear,), role="lining"),
    ]


def _drawer_skeletons(name: str) -> list[Skeleton]:
    return [
        Skeleton(name=f"{name}/front", part=name),
        Skeleton(name=f"{name}/inside", part=name, orientation="inside"),
        Skeleton(name=f"{name}/sides", part=name, running=True),
        Skeleton(name=f"{name}/underside", part=name, orientation="down", hidden=True),
        Skeleton(name=f"{name}/back", part=name, hidden=True),
    ]


FORM = Form(
    id="chest_of_drawers",
    name="chest of drawers",
    aliases=("drawers", "dresser", "bureau", "commode", "bedside", "nightstand"),
    meaning="A case filled with drawers.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
