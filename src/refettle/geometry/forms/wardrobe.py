"""Wardrobe: a hanging space behind doors, with a shelf over it and drawers below if wished."""

from dataclasses import replace

from refettle.geometry.cells import PartBody, Point, Ring, Span, box, moved, turned
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import CASE_PARAMETERS, case_bodies, case_problems, opening
from refettle.geometry.forms.casework import inside_skeletons
from refettle.geometry.forms.doors import (
    PLAY_PARAMETER,
    door_parameters,
    door_problems,
    hinged,
    leaf_mm,
)
from refettle.geometry.forms.drawers import (
    BOX_PARAMETERS,
    RAIL_PARAMETER,
    RAIL_SKELETONS,
    Stack,
    stack_bodies,
    stack_problems,
    stack_skeletons,
)
from refettle.geometry.forms.fronts import Front, front_bodies, front_skeletons
from refettle.geometry.parameters import Problem, Sizes, choice, count, length, size_parameters

_SHELF_GAP_MM = 250.0
_ROD_BELOW_MM = 60.0  # from the shelf down to the axis of the hanging rail
_ROD_RADIUS_MM = 15.0
_LEAST_HANGING_MM = 300.0
_LEAST_BEHIND_MM = 60.0
_HAND = {1: ("door",), 2: ("door.left", "door.right")}
_WITH_DRAWERS = ("drawers", (1, 2, 3, 4))


def _floor(sizes: Sizes) -> float:
    """Return the height of the floor of the hanging space [mm]."""
    number, low = sizes.count("drawers"), opening(sizes).z[0]
    return low + number * (sizes.mm("drawer_height") + sizes.mm("rail_thickness")) if number else low


def _door_span(sizes: Sizes) -> Span:
    return _floor(sizes), opening(sizes).z[1]


def _door_mm(sizes: Sizes) -> tuple[float, float]:
    return leaf_mm(opening(sizes).x, _door_span(sizes), sizes.count("doors"), sizes.mm("play"))


PARAMETERS = (
    *size_parameters((300.0, 250.0, 800.0), (4000.0, 1000.0, 2800.0)),
    *CASE_PARAMETERS,
    count(
        "doors",
        "number of doors",
        lambda sizes: max(1, min(6, round(sizes.mm("width") / 500.0))),
        "one for about 500 mm of width",
        1,
        6,
    ),
    PLAY_PARAMETER,
    count("drawers", "number of full-width drawers below the doors", 0, "none unless said", 0, 4),
    replace(
        length("drawer_height", "height of the opening of a drawer", 180.0, 60.0, 400.0),
        only_with=_WITH_DRAWERS,
    ),
    *(replace(one, only_with=_WITH_DRAWERS) for one in (RAIL_PARAMETER, *BOX_PARAMETERS)),
    *door_parameters(_door_mm),
    count("shelves", "number of shelves over the hanging space, 250 mm apart", 1, "one for hats", 0, 4),
    length("shelf", "thickness of a shelf", 18.0, 4.0, 60.0),
    choice("hanging_rail", "whether there is a rail to hang clothes on", ("yes", "no"), "a wardrobe has one"),
)


def _doors(sizes: Sizes) -> tuple[Front, ...]:
    free, number = opening(sizes), sizes.count("doors")
    names = _HAND.get(number, tuple(f"door.{n + 1}" for n in range(number)))
    return hinged(sizes, names, free.x, free.y[0], _door_span(sizes))


def _stack(sizes: Sizes) -> Stack:
    free, rail = opening(sizes), sizes.mm("rail_thickness")
    z = (free.z[0], _floor(sizes) - rail)
    return Stack(place="low", x=free.x, y=free.y, z=z, drawers=sizes.count("drawers"), rail_mm=rail)


def _behind(sizes: Sizes) -> Span:
    """Return the depth behind the doors as a span [mm]."""
    free = opening(sizes)
    return free.y[0] + sizes.mm("door") + sizes.mm("play"), free.y[1]


def _shelves(sizes: Sizes) -> tuple[Span, ...]:
    """Return the shelves from the top down [mm]."""
    head, thick = opening(sizes).z[1], sizes.mm("shelf")
    tops = [head - _SHELF_GAP_MM - n * (_SHELF_GAP_MM + thick) for n in range(sizes.count("shelves"))]
    return tuple((top - thick, top) for top in tops)


def _hanging(sizes: Sizes) -> Span:
    """Return the height of the hanging space as a span [mm]."""
    shelves = _shelves(sizes)
    return _floor(sizes), shelves[-1][0] if shelves else opening(sizes).z[1]


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
    low, high = _hanging(sizes)
    if high - low < _LEAST_HANGING_MM:
        what = f"shelves and drawers leave {max(high - low, 0.0):.3g} mm of hanging space"
        blamed = "drawers" if sizes.count("drawers") else "height"
        do = f"leave at least {_LEAST_HANGING_MM:.0f} mm: fewer shelves or drawers, or check the height"
        found.append(Problem(param=blamed, what=what, do=do))
    behind = _behind(sizes)
    if behind[1] - behind[0] < _LEAST_BEHIND_MM:
        what = f"doors of {sizes.mm('door'):.6g} mm leave no room behind them"
        found.append(Problem(param="door", what=what, do="check the depth and the thickness of the doors"))
    found += stack_problems(sizes, _stack(sizes), ("width", "depth", "drawer_height"))
    return (*found, *door_problems(_doors(sizes), ("doors", "height")))


def build(sizes: Sizes) -> Built:
    """
    Return the wardrobe built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Doors and drawers stand in their openings with play all round: work is done with them out.
    """
    free, behind, drawers = opening(sizes), _behind(sizes), sizes.count("drawers")
    bodies = [*case_bodies(sizes, "rails")]
    skeletons = [*inside_skeletons(running=drawers > 0), *RAIL_SKELETONS]
    for door in _doors(sizes):
        bodies += front_bodies(door)
        skeletons += front_skeletons(door)
    for number, z in enumerate(_shelves(sizes), start=1):
        name = f"shelf.{number}"
        bodies.append(PartBody(name=name, cells=(box(free.x, behind, z, name),)))
        skeletons.append(Skeleton(name=name, part=name, orientation="inside"))
    if drawers:
        z = (_floor(sizes) - sizes.mm("rail_thickness"), _floor(sizes))
        floor = box(free.x, free.y, z, "floor", {"front": "rails", "bottom": "floor/underside"})
        bodies += [PartBody(name="floor", cells=(floor,)), *stack_bodies(sizes, _stack(sizes))]
        skeletons += [
            Skeleton(name="floor", part="floor", orientation="inside", other_side="floor/underside"),
            Skeleton(name="floor/underside", part="floor", orientation="down", hidden=True),
            *stack_skeletons(_stack(sizes)),
        ]
    if sizes.choice("hanging_rail") == "yes":
        bodies.append(_rod(sizes))
        skeletons.append(
            Skeleton(name="hanging rail", part="hanging rail", relief="turned", orientation="inside")
        )
    return measured(tuple(bodies), tuple(skeletons))


def _rod(sizes: Sizes) -> PartBody:
    """Return the hanging rail: a round rod from side to side."""
    free, behind = opening(sizes), _behind(sizes)
    y, z = (behind[0] + behind[1]) / 2.0, _hanging(sizes)[1] - _ROD_BELOW_MM
    rings = (Ring(free.x[0], _ROD_RADIUS_MM), Ring(free.x[1], _ROD_RADIUS_MM))
    name = "hanging rail"
    upright = PartBody(name=name, cells=turned((0.0, 0.0), rings, name, foot=name, head=name), role="lining")

    def lay(point: Point) -> Point:
        """Turn the upright rod so that it lies level from left to right."""
        return (point[2], y + point[1], z - point[0])

    return moved(upright, lay)


FORM = Form(
    id="wardrobe",
    name="wardrobe",
    aliases=("armoire", "clothes cupboard", "clothes press", "closet"),
    meaning="A hanging space behind doors, a shelf over it, drawers below if wished.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
