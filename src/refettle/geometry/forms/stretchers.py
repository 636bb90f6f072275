"""Stretchers: rails that join legs low down, all round or in the shape of an H."""

from dataclasses import replace

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.forms.legs import BLOCK_MM
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, length

_LEAST_TURNED_MM = 60.0
_WITH = ("stretcher", ("box", "h-shaped"))

STRETCHER_PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "stretcher", "stretchers between the legs", ("none", "box", "h-shaped"), "no stretchers unless said"
    ),
    Parameter(
        name="stretcher_height",
        kind="length",
        meaning="height of the lower edge of the stretchers over the floor",
        usual=lambda sizes: float(round(sizes.mm("height") / 6.0)),
        why="a sixth of the height",
        low=10.0,
        high=700.0,
        only_with=_WITH,
    ),
    Parameter(
        name="stretcher_width",
        kind="length",
        meaning="width of a stretcher, upright",
        usual=lambda sizes: float(round(min(40.0, max(15.0, sizes.mm("leg") * 0.7)))),
        why="seven tenths of a leg, 15 to 40 mm",
        low=8.0,
        high=150.0,
        only_with=_WITH,
    ),
    replace(
        length("stretcher_thickness", "thickness of a stretcher", 20.0, 6.0, 80.0),
        usual=lambda sizes: float(round(min(22.0, sizes.mm("leg") / 2.0))),
        why="half a leg, at most 22 mm",
        only_with=_WITH,
    ),
)


def _level(sizes: Sizes) -> Span:
    low = sizes.mm("stretcher_height")
    return low, low + sizes.mm("stretcher_width")


def stretcher_square(sizes: Sizes) -> Span | None:
    """
    Return the lower square of a turned leg, where a stretcher joins.

    Parameters
    ----------
    sizes
        Parameters with `STRETCHER_PARAMETERS`.

    Returns
    -------
    tuple of float or None
        Span [mm]; None where there are no stretchers.
    """
    if sizes.choice("stretcher") == "none":
        return None
    low, high = _level(sizes)
    return low - BLOCK_MM / 2.0, high + BLOCK_MM


def stretcher_problems(sizes: Sizes, under_mm: float) -> tuple[Problem, ...]:
    """
    Return why stretchers cannot be made.

    Parameters
    ----------
    sizes
        Parameters with `STRETCHER_PARAMETERS`, ``leg`` and ``leg_shape``.
    under_mm
        Height of the lower edge of the aprons [mm].

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    square = stretcher_square(sizes)
    if square is None:
        return ()
    thick, leg = sizes.mm("stretcher_thickness"), sizes.mm("leg")
    rows = (
        (
            "stretcher",
            sizes.choice("leg_shape") == "tapered",
            "stretchers join square or turned legs here, not tapered ones",
            "write leg_shape: square, or take stretcher out",
        ),
        (
            "stretcher_height",
            square[1] > under_mm - BLOCK_MM - _LEAST_TURNED_MM,
            f"stretchers up to {_level(sizes)[1]:.6g} mm leave nothing of the legs below the aprons",
            "give less, or check the height",
        ),
        (
            "stretcher_thickness",
            thick > leg,
            f"a stretcher of {thick:.6g} mm is thicker than a leg of {leg:.6g} mm",
            "give at most the thickness of a leg",
        ),
    )
    return tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)


def stretcher_bodies(sizes: Sizes, left: Span, right: Span, front: Span, rear: Span) -> list[PartBody]:
    """
    Return the stretchers between four legs.

    Parameters
    ----------
    sizes
        Parameters with `STRETCHER_PARAMETERS`.
    left, right, front, rear
        Where the legs stand as spans [mm].

    Returns
    -------
    list of PartBody
        Boards in the middle of the legs; none where there are none. All count to ``stretchers``.
    """
    if sizes.choice("stretcher") == "none":
        return []
    z, thick = _level(sizes), sizes.mm("stretcher_thickness")

    def middle(leg: Span) -> Span:
        return (leg[0] + leg[1] - thick) / 2.0, (leg[0] + leg[1] + thick) / 2.0

    across, along = (left[1], right[0]), (front[1], rear[0])
    rows = [("left", middle(left), along), ("right", middle(right), along)]
    if sizes.choice("stretcher") == "box":
        rows += [("front", across, middle(front)), ("back", across, middle(rear))]
    else:
        between = (middle(left)[1], middle(right)[0])
        rows += [("middle", between, middle((front[0], rear[1])))]
    return [PartBody(name=f"stretcher {name}", cells=(box(x, y, z, "stretchers"),)) for name, x, y in rows]
