"""Dressing chest: a chest of drawers with a mirror that swings between two posts on its top."""

from dataclasses import replace

from refettle.geometry.cells import PartBody, Point, Span, box, moved
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms import chest_of_drawers
from refettle.geometry.forms.mitred import PROFILES, Moulding, frame_bodies, frame_skeletons
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, length, size_parameters

_PIVOT_MM = 6.0  # between frame and posts
_PANE_MM = 3.0
_LEAST_PANE_MM = 60.0
_PREFIX = "mirror frame/"


def _chest(sizes: Sizes) -> Sizes:
    """Return the sizes of the chest below the mirror."""
    return Sizes({**sizes.values, "height": sizes.mm("chest_height")})


def _below(parameter: Parameter) -> Parameter:
    """Return a parameter of the chest whose usual value goes by the height of the chest alone."""
    usual = parameter.usual
    return replace(parameter, usual=lambda sizes: usual(_chest(sizes))) if callable(usual) else parameter


PARAMETERS = (
    *size_parameters((350.0, 250.0, 700.0), (2400.0, 900.0, 2400.0)),
    Parameter(
        name="chest_height",
        kind="length",
        meaning="height of the chest up to its top",
        usual=lambda sizes: float(round(sizes.mm("height") * 0.52)),
        why="about half of the height over all",
        low=250.0,
        high=1600.0,
    ),
    *(_below(parameter) for parameter in chest_of_drawers.PARAMETERS[3:]),
    Parameter(
        name="mirror_width",
        kind="length",
        meaning="width of the frame of the mirror",
        usual=lambda sizes: float(round(sizes.mm("width") * 0.55)),
        why="eleven twentieths of the width",
        low=100.0,
        high=2200.0,
    ),
    Parameter(
        name="mirror_height",
        kind="length",
        meaning="height of the frame of the mirror",
        usual=lambda sizes: float(round((sizes.mm("height") - sizes.mm("chest_height")) * 0.85)),
        why="about six sevenths of the space over the chest",
        low=100.0,
        high=1500.0,
    ),
    Parameter(
        name="moulding",
        kind="length",
        meaning="width of the members of the mirror's frame",
        usual=lambda sizes: float(round(max(8.0, min(40.0, sizes.mm("mirror_width") / 10.0)))),
        why="a tenth of the frame, 8 to 40 mm",
        low=8.0,
        high=200.0,
    ),
    choice("profile", "profile of the mirror's frame", tuple(PROFILES), "flat unless said"),
    length("mirror_thickness", "thickness of the mirror's frame", 20.0, 8.0, 60.0),
    length("mirror_post", "width of the posts that carry the mirror", 30.0, 12.0, 120.0),
)


def _post_y(sizes: Sizes) -> Span:
    """Return the depth of the posts as a span [mm]: as thick as wide, at the rear of the top."""
    end = sizes.mm("depth") - min(20.0, sizes.mm("depth") / 10.0)
    return end - sizes.mm("mirror_post"), end


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
    over = sizes.mm("height") - sizes.mm("chest_height")
    wide = sizes.mm("mirror_width") + 2 * (_PIVOT_MM + sizes.mm("mirror_post"))
    pane = min(sizes.mm("mirror_width"), sizes.mm("mirror_height")) - 2 * sizes.mm("moulding")
    rows = (
        (
            "mirror_height",
            sizes.mm("mirror_height") > over - 2.0,
            f"a mirror of {sizes.mm('mirror_height'):.6g} mm does not fit over the chest: {max(over, 0.0):.4g} mm",
            "give less, or check the height over all",
        ),
        (
            "mirror_width",
            wide > sizes.mm("width"),
            f"mirror and posts are {wide:.6g} mm wide, wider than the top",
            "give less",
        ),
        (
            "moulding",
            pane < _LEAST_PANE_MM,
            f"members of {sizes.mm('moulding'):.6g} mm leave {max(pane, 0.0):.3g} mm of mirror",
            "give narrower members",
        ),
    )
    found = tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)
    chest = tuple(
        replace(problem, param="chest_height") if problem.param == "height" else problem
        for problem in chest_of_drawers.problems(_chest(sizes))
    )
    return (*found, *chest)


def build(sizes: Sizes) -> Built:
    """
    Return the dressing chest built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        The frame hangs on pivots and touches nothing; the mirror is out for the work.
    """
    bodies, skeletons = chest_of_drawers.chest_members(_chest(sizes))
    post, low, high = sizes.mm("mirror_post"), sizes.mm("chest_height"), sizes.mm("height")
    wide, middle, y = sizes.mm("mirror_width"), sizes.mm("width") / 2.0, _post_y(sizes)
    inner = (middle - wide / 2.0 - _PIVOT_MM, middle + wide / 2.0 + _PIVOT_MM)
    posts = tuple(
        PartBody(name=f"mirror post {which}", cells=(box(x, y, (low, high), "mirror posts"),))
        for which, x in (("left", (inner[0] - post, inner[0])), ("right", (inner[1], inner[1] + post)))
    )
    shape = Moulding(
        width_mm=wide,
        depth_mm=sizes.mm("mirror_thickness"),
        height_mm=sizes.mm("mirror_height"),
        member_mm=sizes.mm("moulding"),
        profile=sizes.choice("profile"),
        name=_PREFIX,
    )
    start = ((y[0] + y[1] - shape.depth_mm) / 2.0, high - shape.height_mm)

    def hang(point: Point) -> Point:
        """Shift the frame to where it hangs."""
        return (point[0] + middle - wide / 2.0, point[1] + start[0], point[2] + start[1])

    frame = tuple(moved(body, hang) for body in frame_bodies(shape))
    x = (shape.member_mm, wide - shape.member_mm)
    z = (shape.member_mm, shape.height_mm - shape.member_mm)
    pane = box(x, (shape.depth_mm - _PANE_MM, shape.depth_mm), z, "mirror")
    own = (*frame_skeletons(shape), Skeleton(name="mirror posts", part="mirror posts"))
    mirror = moved(PartBody(name="mirror", cells=(pane,)), hang)
    return measured((*bodies, *posts, *frame), (*skeletons, *own), (mirror,))


FORM = Form(
    id="dressing_chest",
    name="dressing chest",
    aliases=("dressing table with mirror", "toilet chest", "vanity chest"),
    meaning="A chest of drawers with a mirror that swings between two posts on its top.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
