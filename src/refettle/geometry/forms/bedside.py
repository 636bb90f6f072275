"""Bedside: a small cabinet with a drawer over a door, or a small table with a drawer."""

from dataclasses import replace

from refettle.geometry.cells import PartBody, Span, box
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
    RUNNER_MM,
    Stack,
    drawer_bodies,
    drawer_skeletons,
    stack_bodies,
    stack_problems,
    stack_skeletons,
)
from refettle.geometry.forms.fronts import Front, front_bodies, front_skeletons
from refettle.geometry.forms.underframe import (
    Stand,
    apron_bodies,
    corners,
    leg_body,
    leg_parameters,
    underframe_problems,
    underframe_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, count, length, size_parameters

_CABINET = ("kind", ("cabinet",))
_TABLE = ("kind", ("table",))
_LEAST_BELOW_MM = 80.0


def _only(rows: tuple[Parameter, ...], kind: tuple[str, tuple[str, ...]]) -> tuple[Parameter, ...]:
    """Return parameters that have a meaning for one kind only."""
    return tuple(one if one.only_with else replace(one, only_with=kind) for one in rows)


def _below(sizes: Sizes) -> Span:
    """Return the height of the opening below the drawers as a span [mm]."""
    free, number = opening(sizes).z, sizes.count("drawers")
    return free[0], free[1] - number * (sizes.mm("drawer_height") + sizes.mm("rail_thickness"))


def _door_mm(sizes: Sizes) -> tuple[float, float]:
    return leaf_mm(opening(sizes).x, _below(sizes), 1, sizes.mm("play"))


_CASE = tuple(one for one in CASE_PARAMETERS if one.name not in {"top", "overhang"})

PARAMETERS = (
    *size_parameters((250.0, 200.0, 300.0), (900.0, 800.0, 1000.0)),
    choice("kind", "kind of bedside", ("cabinet", "table"), "a cabinet unless said"),
    length("top", "thickness of the top", 20.0, 6.0, 80.0),
    length(
        "overhang", "how far the top stands out over front and ends (all round, over legs)", 10.0, 0.0, 100.0
    ),
    *_only(_CASE, _CABINET),
    PLAY_PARAMETER,
    *_only((count("drawers", "number of drawers over the door", 1, "one drawer", 0, 4),), _CABINET),
    Parameter(
        name="drawer_height",
        kind="length",
        meaning="height of the opening of a drawer",
        usual=lambda sizes: float(round(min(140.0, max(70.0, sizes.mm("height") / 5.0)))),
        why="a fifth of the height, 70 to 140 mm",
        low=60.0,
        high=400.0,
        only_with=_CABINET,
    ),
    RAIL_PARAMETER,
    *BOX_PARAMETERS,
    *_only((choice("below", "what is below the drawers", ("door", "open"), "a door unless said"),), _CABINET),
    *_only(door_parameters(_door_mm), _CABINET),
    *(
        replace(
            one,
            usual=lambda sizes: float(round(min(130.0, max(85.0, sizes.mm("height") / 6.0)))),
            why="a sixth of the height, 85 to 130 mm",
        )
        if one.name == "apron"
        else one
        for one in _only(leg_parameters(), _TABLE)
    ),
)


def _stack(sizes: Sizes) -> Stack:
    free, low = opening(sizes), _below(sizes)[1]
    rail = sizes.mm("rail_thickness")
    z = (low + rail, free.z[1])
    return Stack(place="case", x=free.x, y=free.y, z=z, drawers=sizes.count("drawers"), rail_mm=rail)


def _stand(sizes: Sizes) -> Stand:
    over = sizes.mm("overhang")
    return Stand(
        x=(over, sizes.mm("width") - over),
        y=(over, sizes.mm("depth") - over),
        head_mm=sizes.mm("height") - sizes.mm("top"),
    )


def _table_drawer(sizes: Sizes) -> Stack:
    """Return the drawer between the front legs of a table, over the rail that carries it."""
    left, right, front, rear = corners(sizes, _stand(sizes))
    head, rail = _stand(sizes).head_mm, sizes.mm("rail_thickness")
    return Stack(
        place="table",
        x=(left[1], right[0]),
        y=(
            front[0],
            rear[1] - min(5.0, sizes.mm("leg") - sizes.mm("apron_thickness")) - sizes.mm("apron_thickness"),
        ),
        z=(head - sizes.mm("apron") + rail, head),
        drawers=1,
        rail_mm=rail,
    )


def _door(sizes: Sizes) -> tuple[Front, ...]:
    free = opening(sizes)
    if sizes.choice("below") == "open":
        return ()
    return hinged(sizes, ("door",), free.x, free.y[0], _below(sizes))


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
    if sizes.choice("kind") == "table":
        found = underframe_problems(sizes, _stand(sizes), "height")
        return found or stack_problems(sizes, _table_drawer(sizes), ("width", "depth", "apron"))
    listed = list(case_problems(sizes))
    low, high = _below(sizes)
    if high - low < _LEAST_BELOW_MM:
        what = f"the drawers leave {max(high - low, 0.0):.3g} mm below them"
        do = f"leave at least {_LEAST_BELOW_MM:.0f} mm: fewer or lower drawers"
        listed.append(Problem(param="drawers", what=what, do=do))
        return tuple(listed)
    listed += stack_problems(sizes, _stack(sizes), ("width", "depth", "drawer_height"))
    free = opening(sizes)
    if free.y[1] - free.y[0] < sizes.mm("door") + sizes.mm("play"):
        what = f"a door of {sizes.mm('door'):.6g} mm leaves no room behind it"
        listed.append(Problem(param="door", what=what, do="check the depth and the thickness of the door"))
    return (*listed, *door_problems(_door(sizes), ("width", "height")))


def build(sizes: Sizes) -> Built:
    """
    Return the bedside built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Drawers and door stand in their openings with play all round: work is done with them out.
    """
    return _table(sizes) if sizes.choice("kind") == "table" else _cabinet(sizes)


def _cabinet(sizes: Sizes) -> Built:
    free, number = opening(sizes), sizes.count("drawers")
    bodies = [*case_bodies(sizes, "rails")]
    skeletons = [*inside_skeletons(running=False), *RAIL_SKELETONS]
    if number:
        z = (_below(sizes)[1], _below(sizes)[1] + sizes.mm("rail_thickness"))
        board = box(free.x, free.y, z, "drawer board", {"front": "rails", "bottom": "drawer board/underside"})
        bodies += [PartBody(name="drawer board", cells=(board,)), *stack_bodies(sizes, _stack(sizes))]
        skeletons += [
            *stack_skeletons(_stack(sizes)),
            Skeleton(
                name="drawer board", part="drawer board", orientation="inside", running=True, hidden=True
            ),
            Skeleton(name="drawer board/underside", part="drawer board", orientation="inside"),
        ]
    for door in _door(sizes):
        bodies += front_bodies(door)
        skeletons += front_skeletons(door)
    return measured(tuple(bodies), tuple(skeletons))


def _table(sizes: Sizes) -> Built:
    stand, stack = _stand(sizes), _table_drawer(sizes)
    level = (stand.head_mm, sizes.mm("height"))
    whole = (0.0, sizes.mm("width")), (0.0, sizes.mm("depth"))
    bodies = [
        PartBody(name="top", cells=(box(*whole, level, "top", {"bottom": "top/underside"}),)),
        *(leg_body(sizes, stand, n) for n in range(1, 5)),
        *apron_bodies(sizes, stand, ("back", "left", "right")),
        *_carriers(sizes, stack),
        *drawer_bodies(sizes, "drawer.1", stack.x, stack.y, stack.z),
    ]
    skeletons = (
        Skeleton(name="top", part="top", orientation="up", other_side="top/underside"),
        *drawer_skeletons("drawer.1"),
        *RAIL_SKELETONS,
        *underframe_skeletons(sizes),
        Skeleton(name="top/underside", part="top", orientation="down", other_side="top", hidden=True),
    )
    return measured(tuple(bodies), skeletons)


def _carriers(sizes: Sizes, stack: Stack) -> list[PartBody]:
    """Return the rail below the drawer and the runners behind it, against the side aprons."""
    left, right, front, rear = corners(sizes, _stand(sizes))
    back, thick = min(5.0, sizes.mm("leg") - sizes.mm("apron_thickness")), sizes.mm("apron_thickness")
    z = (stack.z[0] - stack.rail_mm, stack.z[0])
    rail = box(stack.x, front, z, "runners", {"front": "rails", "bottom": "rails"})
    y = (front[1], rear[0])
    sides = (
        ("left", (left[0] + back + thick, max(left[1], left[0] + back + thick) + RUNNER_MM)),
        ("right", (min(right[0], right[1] - back - thick) - RUNNER_MM, right[1] - back - thick)),
    )
    return [
        PartBody(name="rail front", cells=(rail,)),
        *(PartBody(name=f"runner {name}", cells=(box(x, y, z, "runners"),)) for name, x in sides),
    ]


FORM = Form(
    id="bedside",
    name="bedside",
    aliases=("nightstand", "bedside table", "bedside cabinet", "night table", "pot cupboard"),
    meaning="A small cabinet with a drawer over a door, or a small table with a drawer.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
