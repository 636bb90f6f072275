"""One end of a bed: two posts and what stands between them."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Skeleton
from refettle.geometry.forms.framing import KINDS, framing, front_parameters
from refettle.geometry.forms.fronts import Front, front_bodies, front_problems, front_skeletons
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, count, length

_LEAST_TALL_MM = 60.0
_LEAST_WIDE_MM = 150.0


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """
    One end of a bed.

    Attributes
    ----------
    name
        Its name, before those of its surfaces.
    width_mm, height_mm
        Size over the posts [mm].
    y
        Thickness of the posts as a span [mm].
    seen_from_front
        Whether its outside looks to the front.
    """

    name: str
    width_mm: float
    height_mm: float
    y: Span
    seen_from_front: bool = True


def filling_mm(sizes: Sizes, height_mm: float) -> tuple[float, float]:
    """
    Return the size of what stands between the posts.

    Parameters
    ----------
    sizes
        Parameters with `end_parameters`.
    height_mm
        Height of the end [mm].

    Returns
    -------
    tuple of float
        Width and height [mm].
    """
    return sizes.mm("width") - 2 * sizes.mm("post"), height_mm - sizes.mm("drop") - sizes.mm("lift")


def end_parameters(
    height_mm: Callable[[Sizes], float], post_mm: Callable[[Sizes], float], kinds: tuple[str, ...] = KINDS
) -> tuple[Parameter, ...]:
    """
    Return the parameters of bed ends.

    Parameters
    ----------
    height_mm
        Gives the height of the lowest end [mm].
    post_mm
        Gives the most that a post may measure by its usual value [mm].
    kinds
        Kinds of filling; the first is the usual one.

    Returns
    -------
    tuple of Parameter
        Posts and filling.
    """

    def size(sizes: Sizes) -> tuple[float, float]:
        return filling_mm(sizes, height_mm(sizes))

    return (
        Parameter(
            name="post",
            kind="length",
            meaning="width of a post",
            usual=lambda sizes: float(round(max(20.0, min(60.0, sizes.mm("width") / 15.0, post_mm(sizes))))),
            why="a fifteenth of the width, 20 to 60 mm",
            low=15.0,
            high=200.0,
        ),
        Parameter(
            name="lift",
            kind="length",
            meaning="height of the lower edge of the filling over the floor",
            usual=lambda sizes: float(round(height_mm(sizes) / 4.0)),
            why="a quarter of the height of the end",
            low=0.0,
            high=1200.0,
        ),
        length("drop", "how far the filling ends below the tops of the posts", 0.0, 0.0, 600.0, "flush"),
        choice("end_kind", "kind of filling between the posts", kinds, f"{kinds[0]} unless said"),
        Parameter(
            name="end_thickness",
            kind="length",
            meaning="thickness of the filling between the posts",
            usual=lambda sizes: min(22.0, float(round(post_mm(sizes) * 0.6))),
            why="three fifths of a post, at most 22 mm",
            low=6.0,
            high=100.0,
        ),
        *_panels(size, kinds),
        *_slats_upright(
            front_parameters("end_kind", kinds, "bed end", lambda sizes: sizes.mm("end_thickness"), size)
        ),
    )


def _panels(size: Callable[[Sizes], tuple[float, float]], kinds: tuple[str, ...]) -> tuple[Parameter, ...]:
    if "frame-and-panel" not in kinds:
        return ()
    panels = count(
        "panels",
        "number of panels side by side",
        lambda sizes: max(1, min(6, round(size(sizes)[0] / 400.0))),
        "one for about 400 mm of width",
        1,
        12,
    )
    return (replace(panels, only_with=("end_kind", ("frame-and-panel",))),)


def _slats_upright(rows: tuple[Parameter, ...]) -> tuple[Parameter, ...]:
    """Return the parameters with slats that stand upright and 40 mm apart, as in a bed."""
    changes = {
        "slat_run": {
            "choices": ("upright", "level"),
            "usual": "upright",
            "why": "slats of a bed mostly stand",
        },
        "slat_gap": {"usual": 40.0},
    }
    return tuple(replace(row, **changes.get(row.name, {})) for row in rows)  # type: ignore[arg-type]


def end_front(sizes: Sizes, end: End) -> Front:
    """
    Return what stands between the posts of an end.

    Parameters
    ----------
    sizes
        Parameters with `end_parameters`.
    end
        The end.

    Returns
    -------
    Front
        In the middle of the posts.
    """
    post, thick = sizes.mm("post"), sizes.mm("end_thickness")
    start = (end.y[0] + end.y[1] - thick) / 2.0
    faces = (f"{end.name}/outside", f"{end.name}/inside")
    fore, rear = faces if end.seen_from_front else faces[::-1]
    return Front(
        name=end.name,
        outside=fore,
        inside=rear,
        below=fore,
        x=(post, end.width_mm - post),
        y=(start, start + thick),
        z=(sizes.mm("lift"), end.height_mm - sizes.mm("drop")),
        kind=sizes.choice("end_kind"),
        columns=sizes.count("panels") if "panels" in sizes.values else 1,
        framing=framing(sizes),
    )


def end_problems(sizes: Sizes, end: End, blamed: str) -> tuple[Problem, ...]:
    """
    Return why an end cannot be made.

    Parameters
    ----------
    sizes
        Parameters with `end_parameters`.
    end
        The end.
    blamed
        Parameter that says how high it is.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    wide, tall = filling_mm(sizes, end.height_mm)
    thick = sizes.mm("end_thickness")
    rows = (
        (
            "post",
            wide < _LEAST_WIDE_MM,
            f"posts of {sizes.mm('post'):.6g} mm leave {max(wide, 0.0):.3g} mm between them",
            "give narrower posts, or check the width",
        ),
        (
            blamed,
            tall < _LEAST_TALL_MM,
            f"an end {end.height_mm:.6g} mm high leaves {max(tall, 0.0):.3g} mm between lift and drop",
            "check it and what lies below and above the filling",
        ),
        (
            "end_thickness",
            thick > end.y[1] - end.y[0],
            f"a filling of {thick:.6g} mm is thicker than posts of {end.y[1] - end.y[0]:.6g} mm",
            "give at most the thickness of a post",
        ),
    )
    found = tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)
    return found or front_problems(end_front(sizes, end), "bed end")


def end_bodies(sizes: Sizes, end: End) -> list[PartBody]:
    """
    Return posts and filling of an end.

    Parameters
    ----------
    sizes
        Parameters with `end_parameters`.
    end
        An end without problems.

    Returns
    -------
    list of PartBody
        Two posts and what stands between them.
    """
    post = sizes.mm("post")
    z, faces = (0.0, end.height_mm), f"{end.name}/posts"
    places = (("left", (0.0, post)), ("right", (end.width_mm - post, end.width_mm)))
    return [
        *(
            PartBody(name=f"{end.name} post {which}", cells=(box(x, end.y, z, faces, {"bottom": "feet"}),))
            for which, x in places
        ),
        *front_bodies(end_front(sizes, end)),
    ]


def end_skeletons(sizes: Sizes, end: End) -> tuple[Skeleton, ...]:
    """
    Return the surfaces of an end.

    Parameters
    ----------
    sizes
        Parameters with `end_parameters`.
    end
        The end.

    Returns
    -------
    tuple of Skeleton
        Outside, inside, posts; the feet are the bed's.
    """
    fore, rear = front_skeletons(end_front(sizes, end))
    outer, inner = (fore, rear) if end.seen_from_front else (rear, fore)
    return (outer, inner, Skeleton(name=f"{end.name}/posts", part=end.name))
