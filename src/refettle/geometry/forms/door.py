"""Door on its own: a board, or a frame with panels, slats or glass."""

from dataclasses import replace

from refettle.geometry.form import Built, Form, measured
from refettle.geometry.forms.framing import FRAMED, KINDS, framing, front_parameters
from refettle.geometry.forms.fronts import Front, front_bodies, front_problems, front_skeletons
from refettle.geometry.parameters import (
    Parameter,
    Problem,
    Sizes,
    choice,
    count,
    size_parameters,
)

_PANELLED = ("kind", ("frame-and-panel",))


def _door_mm(sizes: Sizes) -> tuple[float, float]:
    return sizes.mm("width"), sizes.mm("height")


PARAMETERS = (
    *size_parameters((120.0, 8.0, 120.0), (2000.0, 100.0, 3000.0)),
    choice("kind", "kind of door", KINDS, "a plain door unless said"),
    Parameter(
        name="panels",
        kind="count",
        meaning="number of panels, one above the other",
        usual=lambda sizes: max(1, min(4, round(sizes.mm("height") / 900.0))),
        why="one for about 900 mm of height",
        low=1,
        high=8,
        only_with=("kind", FRAMED),
    ),
    replace(
        count("panels_across", "number of panels side by side", 1, "one panel", 1, 8), only_with=_PANELLED
    ),
    replace(
        count("glass_rows", "number of rows, from the top, that hold glass", 0, "no glass unless said", 0, 8),
        only_with=_PANELLED,
    ),
    *front_parameters("kind", KINDS, "door", lambda sizes: sizes.mm("depth"), _door_mm),
)


def _front(sizes: Sizes) -> Front:
    return Front(
        name="door",
        outside="front",
        inside="back",
        below="front",
        x=(0.0, sizes.mm("width")),
        y=(0.0, sizes.mm("depth")),
        z=(0.0, sizes.mm("height")),
        kind=sizes.choice("kind"),
        columns=sizes.count("panels_across"),
        rows=sizes.count("panels"),
        framing=framing(sizes),
    )


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
    found = front_problems(_front(sizes), "door")
    glass, rows = sizes.count("glass_rows"), sizes.count("panels")
    if sizes.choice("kind") == "frame-and-panel" and glass > rows:
        what = f"{glass} rows with glass are more than {rows} rows of panels"
        return (Problem(param="glass_rows", what=what, do="give fewer, or more panels"), *found)
    return found


def build(sizes: Sizes) -> Built:
    """
    Return the door built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Edges count to the front; glass is out for the work.
    """
    front = _front(sizes)
    top, rows = sizes.count("panels"), sizes.count("glass_rows")
    panes = {
        f"door {row + 1}.{column + 1} panel"
        for row in range(top - rows, top)
        for column in range(sizes.count("panels_across"))
        if front.kind == "frame-and-panel"
    }
    bodies = front_bodies(front)
    return measured(
        tuple(body for body in bodies if body.name not in panes),
        front_skeletons(front),
        tuple(
            replace(body, name=body.name.replace("panel", "glass")) for body in bodies if body.name in panes
        ),
    )


FORM = Form(
    id="door",
    name="door",
    aliases=("loose door", "cupboard door", "glazed door", "room door", "shutter"),
    meaning="A door on its own, upright: a board, or a frame with panels, slats or glass.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
