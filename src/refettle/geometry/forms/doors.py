"""Hinged doors side by side in an opening, with play all round."""

from collections.abc import Callable

from refettle.geometry.cells import Span
from refettle.geometry.forms.framing import FRAMED, KINDS, framing, front_parameters
from refettle.geometry.forms.fronts import Front, front_problems
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, length

LEAST_DOOR_MM = 80.0
TALL_DOOR_MM = 900.0
PLAY_PARAMETER = length("play", "play round doors and drawers", 2.0, 0.5, 8.0)
SizeMm = Callable[[Sizes], tuple[float, float]]


def door_parameters(door_mm: SizeMm) -> tuple[Parameter, ...]:
    """
    Return the parameters of doors; ``play`` is in `PLAY_PARAMETER`, to be put before them.

    Parameters
    ----------
    door_mm
        Gives width and height of a door [mm].

    Returns
    -------
    tuple of Parameter
        Kind, thickness, panels and what stands in the frame.
    """
    return (
        choice("door_kind", "kind of door", KINDS, "a plain door unless said"),
        length("door", "thickness of a door", 20.0, 8.0, 60.0),
        Parameter(
            name="panels",
            kind="count",
            meaning="number of panels in a door, one above the other",
            usual=lambda sizes: 1 if door_mm(sizes)[1] <= TALL_DOOR_MM else 2,
            why="one in a door up to 900 mm high, else two",
            low=1,
            high=8,
            only_with=("door_kind", FRAMED),
        ),
        *front_parameters("door_kind", KINDS, "door", lambda sizes: sizes.mm("door"), door_mm),
    )


def leaf_mm(x: Span, z: Span, number: int, play_mm: float) -> tuple[float, float]:
    """
    Return the size of doors side by side in an opening.

    Parameters
    ----------
    x, z
        The opening as spans [mm].
    number
        Number of doors [1].
    play_mm
        Play all round [mm].

    Returns
    -------
    tuple of float
        Width and height of a door [mm].
    """
    return (x[1] - x[0] - (number + 1) * play_mm) / number, z[1] - z[0] - 2 * play_mm


def hinged(sizes: Sizes, names: tuple[str, ...], x: Span, front_mm: float, z: Span) -> tuple[Front, ...]:
    """
    Return doors side by side in an opening.

    Parameters
    ----------
    sizes
        Parameters with `door_parameters` and ``play``.
    names
        One name for each door, from the left.
    x, z
        The opening as spans [mm].
    front_mm
        Front edge of the opening [mm].

    Returns
    -------
    tuple of Front
        The doors, flush with the front edge.
    """
    play = sizes.mm("play")
    wide, tall = leaf_mm(x, z, len(names), play)
    starts = [x[0] + play + n * (wide + play) for n in range(len(names))]
    return tuple(
        Front(
            name=name,
            outside=f"{name}/outside",
            inside=f"{name}/inside",
            below=f"{name}/outside",
            x=(start, start + wide),
            y=(front_mm, front_mm + sizes.mm("door")),
            z=(z[0] + play, z[0] + play + tall),
            kind=sizes.choice("door_kind"),
            rows=sizes.count("panels"),
            framing=framing(sizes),
        )
        for name, start in zip(names, starts, strict=True)
    )


def door_problems(doors: tuple[Front, ...], blamed: tuple[str, str]) -> tuple[Problem, ...]:
    """
    Return why doors of one size cannot be made.

    Parameters
    ----------
    doors
        The doors.
    blamed
        Parameters that say how wide and how high they are.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    if not doors:
        return ()
    first = doors[0]
    size = (first.x[1] - first.x[0], first.z[1] - first.z[0])
    found = tuple(
        Problem(
            param=name,
            what=f"{len(doors)} doors are {max(mm, 0.0):.3g} mm {word} each",
            do=f"leave at least {LEAST_DOOR_MM:.0f} mm: fewer doors, or check the sizes",
        )
        for name, mm, word in zip(blamed, size, ("wide", "high"), strict=True)
        if mm < LEAST_DOOR_MM
    )
    return found or front_problems(first, "door")
