"""Cot: two ends and two sides with upright bars, of one height."""

from dataclasses import replace

from refettle.geometry.cells import PartBody, Point, moved
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.bed_ends import (
    End,
    end_bodies,
    end_front,
    end_parameters,
    end_problems,
    end_skeletons,
)
from refettle.geometry.forms.fronts import Front, front_bodies, front_problems, front_skeletons
from refettle.geometry.parameters import Problem, Sizes, length, size_parameters

_LEAST_LONG_MM = 300.0

PARAMETERS = (
    *size_parameters((350.0, 500.0, 400.0), (1000.0, 1800.0, 1400.0)),
    length("post_thickness", "thickness of a post, along the cot", 40.0, 15.0, 120.0),
    *end_parameters(
        lambda sizes: sizes.mm("height"),
        lambda sizes: sizes.mm("post_thickness"),
        ("slatted", "flat", "frame-and-panel"),
    ),
)


def _ends(sizes: Sizes) -> tuple[End, End]:
    thick, depth = sizes.mm("post_thickness"), sizes.mm("depth")
    foot = End(name="foot", width_mm=sizes.mm("width"), height_mm=sizes.mm("height"), y=(0.0, thick))
    return foot, replace(foot, name="head", y=(depth - thick, depth), seen_from_front=False)


def _side(sizes: Sizes, name: str) -> Front:
    """Return a side as it would stand before one, barred, from foot to head along x."""
    end = end_front(sizes, _ends(sizes)[0])
    post, thick = sizes.mm("post_thickness"), end.y[1] - end.y[0]
    return replace(
        end,
        name=name,
        outside=f"{name}/outside",
        inside=f"{name}/inside",
        below=f"{name}/outside",
        x=(post, sizes.mm("depth") - post),
        y=(0.0, thick),
        kind="slatted",
        columns=1,
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
    side, found = _side(sizes, "side.left"), list(end_problems(sizes, _ends(sizes)[0], "height"))
    if side.x[1] - side.x[0] < _LEAST_LONG_MM:
        what = "the posts leave no length for the sides"
        do = "check the depth, which is the length of the cot"
        found.append(Problem(param="post_thickness", what=what, do=do))
    if side.y[1] - side.y[0] > sizes.mm("post"):
        what = f"sides of {side.y[1] - side.y[0]:.6g} mm are thicker than the posts are wide"
        found.append(Problem(param="post", what=what, do="give at least the thickness of the filling"))
    return tuple(found) or front_problems(side, "cot side")


def build(sizes: Sizes) -> Built:
    """
    Return the cot built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Base and mattress are out; sides are fast to the posts.
    """
    bodies: list[PartBody] = []
    skeletons: list[Skeleton] = []
    for end in _ends(sizes):
        bodies += end_bodies(sizes, end)
        skeletons += end_skeletons(sizes, end)
    width, depth = sizes.mm("width"), sizes.mm("depth")
    inset = (sizes.mm("post") - sizes.mm("end_thickness")) / 2.0

    def left(point: Point) -> Point:
        """Turn a side so that its outside looks to the left."""
        return (inset + point[1], depth - point[0], point[2])

    def right(point: Point) -> Point:
        """Turn a side so that its outside looks to the right."""
        return (width - inset - point[1], point[0], point[2])

    for name, turn in (("side.left", left), ("side.right", right)):
        side = _side(sizes, name)
        bodies += [moved(body, turn) for body in front_bodies(side)]
        skeletons += front_skeletons(side)
    feet = Skeleton(name="feet", part="posts", orientation="down", hidden=True)
    return measured(tuple(bodies), (*skeletons, feet))


FORM = Form(
    id="cot",
    name="cot",
    aliases=("crib", "baby bed"),
    meaning="Two ends and two barred sides of one height; its depth is its length; the base is out.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
