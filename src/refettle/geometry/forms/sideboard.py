"""Sideboard: bays beside each other, some with drawers, the others with a door and shelves."""

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import CASE_PARAMETERS, case_bodies, case_problems, opening
from refettle.geometry.forms.casework import (
    LEAST_SHELF_MM,
    bays,
    inside_skeletons,
    shelf_levels,
    shelf_problems,
    upright_bodies,
    upright_skeletons,
)
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

_LEAST_BAY_MM = 100.0


def _tall_mm(sizes: Sizes) -> float:
    return opening(sizes).z[1] - opening(sizes).z[0]


def _bays(sizes: Sizes) -> tuple[Span, ...]:
    return bays(opening(sizes).x, sizes.count("bays"), sizes.mm("board"))


def _door_mm(sizes: Sizes) -> tuple[float, float]:
    return leaf_mm(_bays(sizes)[0], opening(sizes).z, 1, sizes.mm("play"))


PARAMETERS = (
    *size_parameters((500.0, 200.0, 350.0), (3500.0, 900.0, 1600.0)),
    *CASE_PARAMETERS,
    count(
        "bays",
        "number of bays side by side",
        lambda sizes: max(2, min(6, round(sizes.mm("width") / 500.0))),
        "one for about 500 mm of width, at least two",
        1,
        8,
    ),
    count(
        "drawer_bays", "number of bays with drawers; the others have a door", 1, "one bay of drawers", 0, 8
    ),
    choice(
        "drawers_at",
        "where the bays with drawers are",
        ("middle", "left", "right"),
        "in the middle unless said",
    ),
    count(
        "drawers",
        "number of drawers in a bay, one above the other",
        lambda sizes: max(1, min(5, round(_tall_mm(sizes) / 180.0))),
        "one for about 180 mm of height",
        1,
        10,
    ),
    PLAY_PARAMETER,
    RAIL_PARAMETER,
    *BOX_PARAMETERS,
    *door_parameters(_door_mm),
    count(
        "shelves",
        "number of shelves behind a door",
        lambda sizes: max(0, min(4, round(_tall_mm(sizes) / 350.0) - 1)),
        "one for about 350 mm of height",
        0,
        10,
    ),
    length("shelf", "thickness of a shelf", 18.0, 4.0, 60.0),
)


def _drawer_bays(sizes: Sizes) -> tuple[int, ...]:
    """Return the numbers of the bays with drawers [1], counted from 0."""
    whole, some = sizes.count("bays"), min(sizes.count("drawer_bays"), sizes.count("bays"))
    first = {"left": 0, "middle": (whole - some) // 2, "right": whole - some}[sizes.choice("drawers_at")]
    return tuple(range(first, first + some))


def _stacks(sizes: Sizes) -> tuple[Stack, ...]:
    free, openings, number = opening(sizes), _bays(sizes), sizes.count("drawers")
    return tuple(
        Stack(
            place=f"bay {bay + 1}",
            x=openings[bay],
            y=free.y,
            z=free.z,
            drawers=number,
            rail_mm=sizes.mm("rail_thickness"),
            first=1 + n * number,
        )
        for n, bay in enumerate(_drawer_bays(sizes))
    )


def _door_bays(sizes: Sizes) -> tuple[Span, ...]:
    taken = _drawer_bays(sizes)
    return tuple(x for n, x in enumerate(_bays(sizes)) if n not in taken)


def _doors(sizes: Sizes) -> tuple[Front, ...]:
    free = opening(sizes)
    return tuple(
        door
        for n, x in enumerate(_door_bays(sizes), start=1)
        for door in hinged(sizes, (f"door.{n}",), x, free.y[0], free.z)
    )


def _behind(sizes: Sizes) -> Span:
    """Return the depth behind the doors as a span [mm]."""
    free = opening(sizes)
    return free.y[0] + sizes.mm("door") + sizes.mm("play"), free.y[1]


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
    first, behind = _bays(sizes)[0], _behind(sizes)
    if sizes.count("drawer_bays") > sizes.count("bays"):
        what = f"{sizes.count('drawer_bays')} bays with drawers are more than {sizes.count('bays')} bays"
        found.append(Problem(param="drawer_bays", what=what, do="give fewer, or more bays"))
    if first[1] - first[0] < _LEAST_BAY_MM:
        what = f"{sizes.count('bays')} bays are {max(first[1] - first[0], 0.0):.3g} mm wide each"
        do = f"leave at least {_LEAST_BAY_MM:.0f} mm: fewer bays, or check the width"
        return (*found, Problem(param="bays", what=what, do=do))
    if behind[1] - behind[0] < LEAST_SHELF_MM:
        what = f"doors of {sizes.mm('door'):.6g} mm leave no room for shelves behind them"
        found.append(Problem(param="door", what=what, do="check the depth and the thickness of the doors"))
    for stack in _stacks(sizes)[:1]:
        found += stack_problems(sizes, stack, ("bays", "depth", "drawers"))
    found += shelf_problems(opening(sizes).z, sizes.count("shelves"), sizes.mm("shelf"))
    return (*found, *door_problems(_doors(sizes)[:1], ("bays", "height")))


def build(sizes: Sizes) -> Built:
    """
    Return the sideboard built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Drawers and doors are numbered from the left and, in a bay, from the top.
    """
    free, openings, stacks = opening(sizes), _bays(sizes), _stacks(sizes)
    bodies = [*case_bodies(sizes, "rails"), *upright_bodies(openings, free.y, free.z)]
    skeletons = [
        *inside_skeletons(running=bool(stacks)),
        *RAIL_SKELETONS,
        *upright_skeletons(openings),
    ]
    for stack in stacks:
        bodies += stack_bodies(sizes, stack)
        skeletons += stack_skeletons(stack)
    for door in _doors(sizes):
        bodies += front_bodies(door)
        skeletons += front_skeletons(door)
    levels = shelf_levels(free.z, sizes.count("shelves"), sizes.mm("shelf"))
    places = [(x, z) for x in _door_bays(sizes) for z in levels]
    for number, (x, z) in enumerate(places, start=1):
        name = f"shelf.{number}"
        bodies.append(PartBody(name=name, cells=(box(x, _behind(sizes), z, name),)))
        skeletons.append(Skeleton(name=name, part=name, orientation="inside"))
    return measured(tuple(bodies), tuple(skeletons))


FORM = Form(
    id="sideboard",
    name="sideboard",
    aliases=("buffet", "credenza", "dresser base", "kitchen dresser", "linen cupboard"),
    meaning="Drawers and doors beside each other; sliding doors are in the cupboard.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
