"""Bed: head and foot end joined by side rails; and a bed end on its own."""

from refettle.geometry.cells import PartBody, Side, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.bed_ends import (
    End,
    end_bodies,
    end_parameters,
    end_problems,
    end_skeletons,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, length, size_parameters

_LEAST_LONG_MM = 400.0
_FEET = Skeleton(name="feet", part="posts", orientation="down", hidden=True)

END_PARAMETERS = (
    *size_parameters((250.0, 15.0, 250.0), (2500.0, 200.0, 2000.0)),
    *end_parameters(lambda sizes: sizes.mm("height"), lambda sizes: sizes.mm("depth")),
)


def _one_end(sizes: Sizes) -> End:
    return End(
        name="end", width_mm=sizes.mm("width"), height_mm=sizes.mm("height"), y=(0.0, sizes.mm("depth"))
    )


def bed_end_problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return what is wrong with the sizes of a bed end together.

    Parameters
    ----------
    sizes
        All parameters.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    return end_problems(sizes, _one_end(sizes), "height")


def build_bed_end(sizes: Sizes) -> Built:
    """
    Return the bed end built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Its outside looks to the front.
    """
    end = _one_end(sizes)
    return measured(tuple(end_bodies(sizes, end)), (*end_skeletons(sizes, end), _FEET))


PARAMETERS = (
    *size_parameters((500.0, 800.0, 400.0), (2500.0, 2600.0, 2000.0)),
    Parameter(
        name="foot_height",
        kind="length",
        meaning="height of the foot end",
        usual=lambda sizes: float(round(sizes.mm("height") * 0.65)),
        why="two thirds of the head end",
        low=200.0,
        high=2000.0,
    ),
    length("post_thickness", "thickness of a post, along the bed", 45.0, 15.0, 200.0),
    *end_parameters(lambda sizes: sizes.mm("foot_height"), lambda sizes: sizes.mm("post_thickness")),
    Parameter(
        name="side_rail",
        kind="length",
        meaning="height of a side rail",
        usual=lambda sizes: float(round(min(140.0, sizes.mm("foot_height") / 3.0))),
        why="a third of the foot end, at most 140 mm",
        low=40.0,
        high=400.0,
    ),
    Parameter(
        name="side_rail_thickness",
        kind="length",
        meaning="thickness of a side rail",
        usual=lambda sizes: min(25.0, float(round(sizes.mm("post") * 0.6))),
        why="three fifths of a post, at most 25 mm",
        low=10.0,
        high=80.0,
    ),
    Parameter(
        name="side_rail_height",
        kind="length",
        meaning="height of the lower edge of the side rails over the floor",
        usual=lambda sizes: float(round(min(220.0, sizes.mm("foot_height") / 3.0))),
        why="a third of the foot end, at most 220 mm",
        low=0.0,
        high=800.0,
    ),
)


def _ends(sizes: Sizes) -> tuple[End, End]:
    """Return foot end, which looks to the front, and head end, which looks to the rear."""
    width, thick, depth = sizes.mm("width"), sizes.mm("post_thickness"), sizes.mm("depth")
    return (
        End(name="foot", width_mm=width, height_mm=sizes.mm("foot_height"), y=(0.0, thick)),
        End(
            name="head",
            width_mm=width,
            height_mm=sizes.mm("height"),
            y=(depth - thick, depth),
            seen_from_front=False,
        ),
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
    foot, head = _ends(sizes)
    top = sizes.mm("side_rail_height") + sizes.mm("side_rail")
    rows = (
        (
            "foot_height",
            foot.height_mm > head.height_mm,
            f"a foot end of {foot.height_mm:.6g} mm is higher than the head end",
            "the height is that of the head end",
        ),
        (
            "post_thickness",
            head.y[0] - foot.y[1] < _LEAST_LONG_MM,
            "the posts leave no length for the side rails",
            "check the depth, which is the length of the bed",
        ),
        (
            "side_rail_height",
            top > foot.height_mm,
            f"side rails up to {top:.6g} mm reach over the foot end",
            "check it and the height of the foot end",
        ),
        (
            "side_rail_thickness",
            sizes.mm("side_rail_thickness") > sizes.mm("post"),
            f"side rails of {sizes.mm('side_rail_thickness'):.6g} mm are thicker than the posts are wide",
            "give at most the width of a post",
        ),
    )
    found = tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)
    return (*found, *end_problems(sizes, foot, "foot_height"))


def build(sizes: Sizes) -> Built:
    """
    Return the bed built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Slats and mattress are out. The head end stands at the rear, its outside to the wall.
    """
    foot, head = _ends(sizes)
    bodies = [*end_bodies(sizes, foot), *end_bodies(sizes, head)]
    thick, post, low = sizes.mm("side_rail_thickness"), sizes.mm("post"), sizes.mm("side_rail_height")
    inset, z = (post - thick) / 2.0, (low, low + sizes.mm("side_rail"))
    places: tuple[tuple[str, Span, Side], ...] = (
        ("left", (inset, inset + thick), "right"),
        ("right", (sizes.mm("width") - inset - thick, sizes.mm("width") - inset), "left"),
    )
    skeletons: list[Skeleton] = []
    for which, x, inwards in places:
        name = f"side rail.{which}"
        cell = box(x, (foot.y[1], head.y[0]), z, f"{name}/outside", {inwards: f"{name}/inside"})
        bodies.append(PartBody(name=name, cells=(cell,)))
        outside = Skeleton(name=f"{name}/outside", part=name, other_side=f"{name}/inside")
        inside = Skeleton(name=f"{name}/inside", part=name, other_side=f"{name}/outside", hidden=True)
        skeletons += [outside, inside]
    ends = (*end_skeletons(sizes, foot), *end_skeletons(sizes, head))
    return measured(tuple(bodies), (*ends, *skeletons, _FEET))


FORM = Form(
    id="bed",
    name="bed",
    aliases=("bedstead", "single bed", "double bed"),
    meaning="Head and foot end joined by side rails; its depth is its length; slats are out.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)

END_FORM = Form(
    id="bed_end",
    name="bed end",
    aliases=("headboard", "footboard", "head end", "foot end"),
    meaning="One end of a bed on its own; its depth is the thickness of its posts.",
    parameters=END_PARAMETERS,
    problems=bed_end_problems,
    build=build_bed_end,
)
