"""Desk: a top on one or two pedestals with drawers, a knee space between them."""

from refettle.geometry.cells import PartBody, Side, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.doors import PLAY_PARAMETER
from refettle.geometry.forms.drawers import (
    BOX_PARAMETERS,
    RAIL_PARAMETER,
    RAIL_SKELETONS,
    Stack,
    drawer_bodies,
    drawer_skeletons,
    stack_bodies,
    stack_problems,
    stack_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, count, length, size_parameters

_LEAST_KNEE_MM = 200.0
_LEAST_UNDER_MM = 250.0
_BRACKET_MM = 20.0  # boards on either side of the knee drawer, on which it runs
_SIDES = ("left", "right")


def _under(sizes: Sizes) -> float:
    return sizes.mm("height") - sizes.mm("top")


PARAMETERS = (
    *size_parameters((600.0, 350.0, 450.0), (3000.0, 1200.0, 1200.0)),
    length("board", "thickness of sides and bottoms", 20.0, 6.0, 60.0),
    length("top", "thickness of the top", 25.0, 8.0, 80.0),
    length("overhang", "how far the top stands out over the front and the ends", 10.0, 0.0, 100.0),
    length("back", "thickness of the backs of pedestals and knee space", 12.0, 3.0, 40.0),
    count(
        "pedestals", "number of pedestals with drawers; one stands on the right", 2, "two unless said", 1, 2
    ),
    Parameter(
        name="pedestal",
        kind="length",
        meaning="width of a pedestal",
        usual=lambda sizes: float(round(min(420.0, max(180.0, sizes.mm("width") / 3.5)))),
        why="two sevenths of the width, 180 to 420 mm",
        low=120.0,
        high=1000.0,
    ),
    length("foot_space", "height of the bottoms of the pedestals over the floor", 50.0, 0.0, 300.0),
    count(
        "drawers",
        "number of drawers in a pedestal",
        lambda sizes: max(1, min(5, round((_under(sizes) - sizes.mm("foot_space")) / 200.0))),
        "one for about 200 mm of height",
        1,
        8,
    ),
    choice(
        "knee_drawer",
        "whether a drawer hangs under the top over the knees",
        ("no", "yes"),
        "none unless said",
    ),
    choice("knee_back", "whether a board closes the knee space behind", ("yes", "no"), "closed unless said"),
    PLAY_PARAMETER,
    RAIL_PARAMETER,
    *BOX_PARAMETERS,
)


def _blocks(sizes: Sizes) -> tuple[tuple[str, Span], ...]:
    """Return the pedestals with their widths as spans [mm]."""
    over, width, wide = sizes.mm("overhang"), sizes.mm("width"), sizes.mm("pedestal")
    right = ("right", (width - over - wide, width - over))
    return (("left", (over, over + wide)), right) if sizes.count("pedestals") == 2 else (right,)


def _knee(sizes: Sizes) -> Span:
    """Return the knee space as a span [mm]."""
    blocks = dict(_blocks(sizes))
    left = blocks["left"][1] if "left" in blocks else sizes.mm("overhang") + sizes.mm("board")
    return left, blocks["right"][0]


def _y(sizes: Sizes) -> Span:
    """Return the depth from the front of the pedestals to their backs [mm]."""
    return sizes.mm("overhang"), sizes.mm("depth") - sizes.mm("back")


def _stacks(sizes: Sizes) -> tuple[Stack, ...]:
    board, number = sizes.mm("board"), sizes.count("drawers")
    return tuple(
        Stack(
            place=name,
            x=(x[0] + board, x[1] - board),
            y=_y(sizes),
            z=(sizes.mm("foot_space") + board, _under(sizes)),
            drawers=number,
            rail_mm=sizes.mm("rail_thickness"),
            first=1 + n * number,
        )
        for n, (name, x) in enumerate(_blocks(sizes))
    )


def _knee_drawer(sizes: Sizes) -> tuple[Span, Span]:
    """Return width and height of the opening of the knee drawer as spans [mm]."""
    knee, under = _knee(sizes), _under(sizes)
    return (knee[0] + _BRACKET_MM, knee[1] - _BRACKET_MM), (under - 90.0, under)


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
    found = []
    knee, under = _knee(sizes), _under(sizes)
    if knee[1] - knee[0] < _LEAST_KNEE_MM:
        what = (
            f"pedestals of {sizes.mm('pedestal'):.6g} mm leave {max(knee[1] - knee[0], 0.0):.3g} mm for knees"
        )
        do = f"leave at least {_LEAST_KNEE_MM:.0f} mm: narrower pedestals, or check the width"
        found.append(Problem(param="pedestal", what=what, do=do))
    if under - sizes.mm("foot_space") < _LEAST_UNDER_MM:
        what = f"pedestals {max(under - sizes.mm('foot_space'), 0.0):.3g} mm high hold nothing"
        do = "check the height and the foot_space"
        found.append(Problem(param="foot_space", what=what, do=do))
    if not found:
        found += stack_problems(sizes, _stacks(sizes)[0], ("pedestal", "depth", "drawers"))
    return tuple(found)


def build(sizes: Sizes) -> Built:
    """
    Return the desk built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Drawers stand in their openings with play all round: work is done with them out.
    """
    level = (_under(sizes), sizes.mm("height"))
    top = box((0.0, sizes.mm("width")), (0.0, sizes.mm("depth")), level, "top", {"bottom": "top/underside"})
    bodies = [PartBody(name="top", cells=(top,))]
    skeletons = [Skeleton(name="top", part="top", orientation="up", other_side="top/underside")]
    stacks = _stacks(sizes)
    for (name, x), stack in zip(_blocks(sizes), stacks, strict=True):
        bodies += [*_pedestal(sizes, f"pedestal.{name}", x), *stack_bodies(sizes, stack)]
        skeletons += stack_skeletons(stack)
    if len(stacks) == 1:
        over, board = sizes.mm("overhang"), sizes.mm("board")
        end = box((over, over + board), (over, sizes.mm("depth")), (0.0, level[0]), "end", {"bottom": "feet"})
        bodies.append(PartBody(name="end", cells=(end,)))
    if sizes.choice("knee_back") == "yes":
        y, z = (_y(sizes)[1], sizes.mm("depth")), (sizes.mm("foot_space"), level[0])
        cell = box(_knee(sizes), y, z, "knee back", {"front": "knee back/inside"})
        bodies.append(PartBody(name="knee back", cells=(cell,)))
    if sizes.choice("knee_drawer") == "yes":
        name = f"drawer.{sum(stack.drawers for stack in stacks) + 1}"
        bodies += _hung_drawer(sizes, name)
        skeletons += drawer_skeletons(name)
    return measured(tuple(bodies), (*skeletons, *_skeletons()))


def _pedestal(sizes: Sizes, name: str, x: Span) -> list[PartBody]:
    """Return sides, bottom and back of a pedestal; the top closes it."""
    board, y, depth = sizes.mm("board"), _y(sizes), sizes.mm("depth")
    low, under = sizes.mm("foot_space"), _under(sizes)
    inner = (x[0] + board, x[1] - board)
    inside, outside = f"{name}/inside", f"{name}/outside"
    walls: tuple[tuple[str, Span, Side], ...] = (
        ("left", (x[0], inner[0]), "right"),
        ("right", (inner[1], x[1]), "left"),
    )
    bodies = [
        PartBody(
            name=f"{name} side {which}",
            cells=(
                box(
                    across,
                    (y[0], depth),
                    (0.0, under),
                    outside,
                    {inwards: inside, "bottom": "feet", "front": "rails"},
                ),
            ),
        )
        for which, across, inwards in walls
    ]
    floor = box(inner, y, (low, low + board), f"{name}/bottom", {"front": "rails", "bottom": "underside"})
    rear = box(inner, (y[1], depth), (low, under), outside, {"front": inside, "bottom": "underside"})
    return [
        *bodies,
        PartBody(name=f"{name} bottom", cells=(floor,), role="lining"),
        PartBody(name=f"{name} back", cells=(rear,)),
    ]


def _hung_drawer(sizes: Sizes, name: str) -> list[PartBody]:
    """Return the drawer over the knees and the boards on either side on which it runs."""
    x, z = _knee_drawer(sizes)
    knee, y = _knee(sizes), _y(sizes)
    rows = (("left", (knee[0], x[0])), ("right", (x[1], knee[1])))
    return [
        *drawer_bodies(sizes, name, x, y, z),
        *(
            PartBody(name=f"knee runner {which}", cells=(box(across, y, z, "runners", {"front": "rails"}),))
            for which, across in rows
        ),
    ]


def _skeletons() -> tuple[Skeleton, ...]:
    names = tuple(f"pedestal.{side}" for side in _SIDES)
    return (
        *(Skeleton(name=f"{name}/outside", part=name, other_side=f"{name}/inside") for name in names),
        Skeleton(name="end", part="end"),
        Skeleton(name="knee back", part="knee back", other_side="knee back/inside"),
        Skeleton(name="knee back/inside", part="knee back", other_side="knee back"),
        *RAIL_SKELETONS,
        Skeleton(name="top/underside", part="top", orientation="down", other_side="top", hidden=True),
        *(
            Skeleton(
                name=f"{name}/inside",
                part=name,
                orientation="inside",
                other_side=f"{name}/outside",
                hidden=True,
            )
            for name in names
        ),
        *(
            Skeleton(name=f"{name}/bottom", part=name, orientation="inside", running=True, hidden=True)
            for name in names
        ),
        Skeleton(name="underside", part="pedestals", orientation="down", hidden=True),
        Skeleton(name="feet", part="pedestals", orientation="down", hidden=True),
    )


FORM = Form(
    id="desk",
    name="desk",
    aliases=("pedestal desk", "writing desk", "kneehole desk", "partners desk", "dressing table"),
    meaning="A top on one or two pedestals with drawers; a table with legs only is a table.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
