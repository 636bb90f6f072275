"""Door on its own: a board, a frame with panels, slats or glass; and a fielded panel on its own."""

from dataclasses import replace

from refettle.geometry.cells import Cell, CellFace, PartBody, box, box_corners
from refettle.geometry.form import Built, Form, Skeleton, measured
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

_LEAST_FIELD_MM = 10.0
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


PANEL_PARAMETERS = (
    *size_parameters((30.0, 3.0, 30.0), (3000.0, 60.0, 3000.0)),
    choice("kind", "kind of panel", ("flat", "fielded"), "a plain panel unless said"),
    Parameter(
        name="bevel",
        kind="length",
        meaning="width of the bevel round the field",
        usual=lambda sizes: float(round(min(45.0, min(sizes.mm("width"), sizes.mm("height")) / 5.0))),
        why="a fifth of the shorter side, at most 45 mm",
        low=3.0,
        high=200.0,
        only_with=("kind", ("fielded",)),
    ),
    Parameter(
        name="edge",
        kind="length",
        meaning="thickness of the edge beyond the bevel",
        usual=lambda sizes: sizes.mm("depth") / 2.0,
        why="half the thickness",
        low=1.0,
        high=60.0,
        only_with=("kind", ("fielded",)),
    ),
)


def panel_problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return what is wrong with the sizes of a panel together.

    Parameters
    ----------
    sizes
        All parameters.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    if sizes.choice("kind") == "flat":
        return ()
    field = min(sizes.mm("width"), sizes.mm("height")) - 2 * sizes.mm("bevel")
    edge, thick = sizes.mm("edge"), sizes.mm("depth")
    rows = (
        (
            "bevel",
            field < _LEAST_FIELD_MM,
            f"a bevel of {sizes.mm('bevel'):.6g} mm leaves a field of {max(field, 0.0):.3g} mm",
            "give a narrower bevel",
        ),
        (
            "edge",
            edge >= thick,
            f"an edge of {edge:.6g} mm is as thick as the panel of {thick:.6g} mm",
            "give less than the depth, or write kind: flat",
        ),
    )
    return tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)


def build_panel(sizes: Sizes) -> Built:
    """
    Return the panel built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        The bevel counts to the front, as its edge: work goes along it, not across.
    """
    fielded = sizes.choice("kind") == "fielded"
    x, y, z = (0.0, sizes.mm("width")), (0.0, sizes.mm("depth")), (0.0, sizes.mm("height"))
    cell = _fielded(sizes) if fielded else box(x, y, z, "edges", {"front": "front", "back": "back"})
    skeletons = (
        Skeleton(name="front", part="panel", relief="panel" if fielded else "flat", other_side="back"),
        Skeleton(name="back", part="panel", other_side="front"),
        Skeleton(name="edges", part="panel"),
    )
    return measured((PartBody(name="panel", cells=(cell,)),), skeletons)


def _fielded(sizes: Sizes) -> Cell:
    """Return a panel with a bevel on all four sides of its front: one convex body."""
    width, depth, height, bevel = (sizes.mm(name) for name in ("width", "depth", "height", "bevel"))
    shoulder = depth - sizes.mm("edge")
    rim = box_corners((0.0, width), (shoulder, depth), (0.0, height))
    field = box_corners((bevel, width - bevel), (0.0, shoulder), (bevel, height - bevel))
    front = tuple(field[n] for n in (0, 1, 5, 4))
    loops: tuple[tuple[tuple[int, ...], str, str], ...] = (
        ((3, 0, 4, 7), "edges", "flat"),
        ((1, 2, 6, 5), "edges", "flat"),
        ((2, 3, 7, 6), "back", "flat"),
        ((0, 3, 2, 1), "edges", "flat"),
        ((4, 5, 6, 7), "edges", "flat"),
        ((8, 9, 10, 11), "front", "flat"),
        *(
            ((a, b, d, c), "front", "edge")
            for a, b, c, d in ((0, 1, 8, 9), (1, 5, 9, 10), (5, 4, 10, 11), (4, 0, 11, 8))
        ),
    )
    faces = tuple(CellFace(loop=loop, surface=surface, zone=zone) for loop, surface, zone in loops)
    return Cell(vertices=(*rim, *front), faces=faces)


PANEL_FORM = Form(
    id="panel",
    name="panel",
    aliases=("fielded panel", "raised panel", "loose panel"),
    meaning="A panel on its own, upright, plain or fielded: with a bevel round its front.",
    parameters=PANEL_PARAMETERS,
    problems=panel_problems,
    build=build_panel,
)
