"""Board: one loose board, panel or door, lying or standing as its sizes say."""

from refettle.geometry.cells import PartBody, Point, box, moved
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.framing import KINDS, framing, front_parameters
from refettle.geometry.forms.fronts import (
    Front,
    front_bodies,
    front_problems,
    front_skeletons,
)
from refettle.geometry.parameters import Problem, Sizes, choice, count, size_parameters

_MOST_THICK_MM = 120.0
_NAMES = {
    "height": ("top", "underside", "up", "down"),
    "depth": ("front", "back", "upright", "upright"),
    "width": ("left", "right", "upright", "upright"),
}


def _thickness_name(sizes: Sizes) -> str:
    """Return which of the three sizes is the thickness: the least; a lying board where two are."""
    return min(("height", "depth", "width"), key=sizes.mm)


def _thickness(sizes: Sizes) -> float:
    return sizes.mm(_thickness_name(sizes))


def _face_mm(sizes: Sizes) -> tuple[float, float]:
    """Return width and height [mm] of the face, as it would stand before one."""
    thin = _thickness_name(sizes)
    across = sizes.mm("depth" if thin == "width" else "width")
    return across, sizes.mm("depth" if thin == "height" else "height")


PARAMETERS = (
    *size_parameters((5.0, 5.0, 3.0), (6000.0, 3000.0, 6000.0)),
    choice("kind", "kind of board", KINDS, "a plain board unless said"),
    count("panels", "number of panels, one above the other", 1, "one panel", 1, 8),
    count("panels_across", "number of panels side by side", 1, "one panel", 1, 8),
    *front_parameters("kind", KINDS, "board", _thickness, _face_mm),
)


def _front(sizes: Sizes) -> Front:
    outside, inside = _NAMES[_thickness_name(sizes)][:2]
    across, tall = _face_mm(sizes)
    return Front(
        name="board",
        outside=outside,
        inside=inside,
        below=outside,
        x=(0.0, across),
        y=(0.0, _thickness(sizes)),
        z=(0.0, tall),
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
    thick = _thickness(sizes)
    found = front_problems(_front(sizes), "board")
    if thick > _MOST_THICK_MM:
        name = _thickness_name(sizes)
        what = f"the least size, the {name}, is {thick:.6g} mm: too thick for a board"
        do = f"give a {name} of at most {_MOST_THICK_MM:.0f} mm, or choose another form"
        return (Problem(param=name, what=what, do=do), *found)
    return found


def build(sizes: Sizes) -> Built:
    """
    Return the board built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Two faces and, on a plain board, its edges.
    """
    front, thin = _front(sizes), _thickness_name(sizes)
    outside, inside, facing, rear_facing = _NAMES[thin]
    bodies = front_bodies(front)
    if sizes.choice("kind") in {"flat", "carved"}:
        cell = box(front.x, front.y, front.z, "edges", {"front": outside, "back": inside})
        bodies = (PartBody(name="board", cells=(cell,)),)
    outer, inner = front_skeletons(front)
    skeletons = (
        Skeleton(name=outside, part="board", relief=outer.relief, orientation=facing, other_side=inside),
        Skeleton(name=inside, part="board", relief=inner.relief, orientation=rear_facing, other_side=outside),
        Skeleton(name="edges", part="board"),
    )
    thick = _thickness(sizes)

    def lay(point: Point) -> Point:
        """Turn the front of the board to where it faces: up, or to the left."""
        x, y, z = point
        if thin == "height":
            return (x, z, thick - y)
        return (y, front.x[1] - x, z) if thin == "width" else point

    return measured(tuple(moved(body, lay) for body in bodies), skeletons)


FORM = Form(
    id="board",
    name="board",
    aliases=("shelf", "worktop", "plank"),
    meaning="One loose board, lying or standing, plain or framed; its least size is its thickness.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
