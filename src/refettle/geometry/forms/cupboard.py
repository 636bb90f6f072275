"""Cupboard: a case with shelves behind doors."""

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import (
    CASE_PARAMETERS,
    case_bodies,
    case_problems,
    case_skeletons,
    opening,
)
from refettle.geometry.forms.framing import FRAMED, KINDS, framing, front_parameters
from refettle.geometry.forms.fronts import (
    Front,
    front_bodies,
    front_problems,
    front_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, count, length, size_parameters

_LEAST_DOOR_MM = 80.0
_LEAST_SHELF_MM = 40.0
_TALL_DOOR_MM = 900.0
_HAND = {1: ("door",), 2: ("door.left", "door.right")}


def _door_mm(sizes: Sizes) -> tuple[float, float]:
    """Return width and height of a door [mm]."""
    free, play, number = opening(sizes), sizes.mm("play"), sizes.count("doors")
    wide = free.x[1] - free.x[0]
    tall = free.z[1] - free.z[0] - 2 * play
    if sizes.choice("door_motion") == "sliding":
        return (wide - 2 * play + (number - 1) * sizes.mm("overlap")) / number, tall
    return (wide - (number + 1) * play) / number, tall


PARAMETERS = (
    *size_parameters((250.0, 150.0, 250.0), (3000.0, 1000.0, 2600.0)),
    *CASE_PARAMETERS,
    count(
        "doors",
        "number of doors",
        lambda sizes: 1 if sizes.mm("width") < 600.0 else 2,
        "one under 600 mm of width, else two",
        1,
        4,
    ),
    choice("door_kind", "kind of door", KINDS, "a plain door unless said"),
    choice("door_motion", "how the doors open", ("hinged", "sliding"), "hinged unless said"),
    length("door", "thickness of a door", 20.0, 8.0, 60.0),
    length("play", "play round a door", 2.0, 0.5, 8.0),
    Parameter(
        name="overlap",
        kind="length",
        meaning="how far sliding doors overlap when shut",
        usual=30.0,
        why="common practice",
        low=0.0,
        high=200.0,
        only_with=("door_motion", ("sliding",)),
    ),
    Parameter(
        name="panels",
        kind="count",
        meaning="number of panels in a door, one above the other",
        usual=lambda sizes: 1 if _door_mm(sizes)[1] <= _TALL_DOOR_MM else 2,
        why="one in a door up to 900 mm high, else two",
        low=1,
        high=8,
        only_with=("door_kind", FRAMED),
    ),
    *front_parameters("door_kind", KINDS, "door", lambda sizes: sizes.mm("door"), _door_mm),
    count(
        "shelves",
        "number of shelves",
        lambda sizes: max(0, min(8, round((opening(sizes).z[1] - opening(sizes).z[0]) / 350.0) - 1)),
        "one for about 350 mm of height",
        0,
        20,
    ),
    length("shelf", "thickness of a shelf", 18.0, 4.0, 60.0),
)


def _doors(sizes: Sizes) -> tuple[Front, ...]:
    free, play, number = opening(sizes), sizes.mm("play"), sizes.count("doors")
    wide, _ = _door_mm(sizes)
    sliding = sizes.choice("door_motion") == "sliding"
    step = wide - sizes.mm("overlap") if sliding else wide + play
    names = _HAND.get(number, tuple(f"door.{n + 1}" for n in range(number)))
    doors = []
    for n, name in enumerate(names):
        x = free.x[0] + play + n * step
        y = free.y[0] + (n % 2 if sliding else 0) * (sizes.mm("door") + play)
        doors.append(
            Front(
                name=name,
                outside=f"{name}/outside",
                inside=f"{name}/inside",
                below=f"{name}/outside",
                x=(x, x + wide),
                y=(y, y + sizes.mm("door")),
                z=(free.z[0] + play, free.z[1] - play),
                kind=sizes.choice("door_kind"),
                rows=sizes.count("panels"),
                framing=framing(sizes),
            )
        )
    return tuple(doors)


def _shelf_front(sizes: Sizes) -> float:
    """Return where the shelves begin behind the doors [mm]."""
    tracks = 2 if sizes.choice("door_motion") == "sliding" else 1
    return opening(sizes).y[0] + tracks * (sizes.mm("door") + sizes.mm("play"))


def _shelves(sizes: Sizes) -> tuple[Span, ...]:
    free, number, thick = opening(sizes).z, sizes.count("shelves"), sizes.mm("shelf")
    gap = (free[1] - free[0] - number * thick) / (number + 1)
    starts = [free[0] + gap + n * (thick + gap) for n in range(number)]
    return tuple((start, start + thick) for start in starts)


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
    free, number = opening(sizes), sizes.count("doors")
    wide, _ = _door_mm(sizes)
    sliding = sizes.choice("door_motion") == "sliding"
    if sliding and number == 1:
        do = "write doors: 2, or door_motion: hinged"
        found.append(Problem(param="doors", what="one sliding door can open nothing", do=do))
    if wide < _LEAST_DOOR_MM:
        what = f"{number} doors are {max(wide, 0.0):.3g} mm wide each"
        do = f"leave at least {_LEAST_DOOR_MM:.0f} mm: fewer doors, or check the width"
        found.append(Problem(param="doors", what=what, do=do))
    elif sliding and number > 1 and sizes.mm("overlap") > wide / 2.0 - sizes.mm("play"):
        what = f"an overlap of {sizes.mm('overlap'):.6g} mm is too much for doors of {wide:.4g} mm"
        found.append(Problem(param="overlap", what=what, do="give less than half the width of a door"))
    if free.y[1] - _shelf_front(sizes) < _LEAST_SHELF_MM:
        what = f"doors of {sizes.mm('door'):.6g} mm leave no room for shelves behind them"
        found.append(Problem(param="door", what=what, do="check the depth and the thickness of the doors"))
    shelves, thick = sizes.count("shelves"), sizes.mm("shelf")
    if shelves and (free.z[1] - free.z[0] - shelves * thick) / (shelves + 1) < _LEAST_SHELF_MM:
        what = f"{shelves} shelves leave less than {_LEAST_SHELF_MM:.0f} mm between them"
        found.append(Problem(param="shelves", what=what, do="give fewer shelves, or check the height"))
    return (*found, *(front_problems(_doors(sizes)[0], "door") if wide >= _LEAST_DOOR_MM else ()))


def build(sizes: Sizes) -> Built:
    """
    Return the cupboard built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Doors stand inside the case with play all round, so that they touch nothing: work is done
        with the doors off.
    """
    free = opening(sizes)
    bodies = [*case_bodies(sizes, "bottom/inside")]
    skeletons = [*case_skeletons(drawers=False)]
    for door in _doors(sizes):
        bodies += front_bodies(door)
        skeletons += front_skeletons(door)
    for number, z in enumerate(_shelves(sizes)):
        name = f"shelf.{number + 1}"
        cell = box(free.x, (_shelf_front(sizes), free.y[1]), z, name)
        bodies.append(PartBody(name=name, cells=(cell,)))
        skeletons.append(Skeleton(name=name, part=name, orientation="inside"))
    return measured(tuple(bodies), tuple(skeletons))


FORM = Form(
    id="cupboard",
    name="cupboard",
    aliases=("cabinet", "press", "bookcase with doors"),
    meaning="A case with shelves behind hinged or sliding doors.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
