"""The back of a chair between its posts: spindles, slats like a ladder's rungs, or a splat."""

from refettle.geometry.cells import PartBody, Ring, Span, box, turned
from refettle.geometry.form import Skeleton
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice

_LEAST_OPEN_MM = 15.0
_LEAST_TALL_MM = 40.0
_SPINDLE_FACETS = 12
_Check = tuple[str, bool, str, str]  # parameter, whether it is wrong, what, what to do
_RAILED = ("back_kind", ("spindles", "splat"))

BACK_PARAMETERS = (
    choice("back_kind", "kind of back", ("spindles", "ladder", "splat"), "spindles unless said"),
    Parameter(
        name="crest",
        kind="length",
        meaning="height of the rail at the top of the back, and of the slats of a ladder back",
        usual=lambda sizes: float(
            round(min(60.0, max(10.0, (sizes.mm("height") - sizes.mm("seat_height")) / 7.0)))
        ),
        why="a seventh of the back, 10 to 60 mm",
        low=10.0,
        high=300.0,
    ),
    Parameter(
        name="back_thickness",
        kind="length",
        meaning="thickness of the rails, slats or splat of the back",
        usual=lambda sizes: min(18.0, float(round(sizes.mm("leg") / 2.0))),
        why="half a leg, at most 18 mm",
        low=5.0,
        high=60.0,
    ),
    Parameter(
        name="back_lift",
        kind="length",
        meaning="height of the lower rail of the back over the seat",
        usual=lambda sizes: float(round((sizes.mm("height") - sizes.mm("seat_height")) / 7.0)),
        why="a seventh of the back",
        low=10.0,
        high=600.0,
        only_with=_RAILED,
    ),
    Parameter(
        name="back_rail",
        kind="length",
        meaning="height of the lower rail of the back",
        usual=lambda sizes: float(round(max(10.0, sizes.mm("crest") * 0.6))),
        why="three fifths of the rail at the top",
        low=10.0,
        high=200.0,
        only_with=_RAILED,
    ),
    Parameter(
        name="spindles",
        kind="count",
        meaning="number of spindles in the back",
        usual=5,
        why="five unless said",
        low=1,
        high=15,
        only_with=("back_kind", ("spindles",)),
    ),
    Parameter(
        name="spindle",
        kind="length",
        meaning="greatest diameter of a spindle",
        usual=lambda sizes: min(16.0, sizes.mm("back_thickness")),
        why="16 mm, at most the thickness of the rails",
        low=5.0,
        high=60.0,
        only_with=("back_kind", ("spindles",)),
    ),
    Parameter(
        name="back_slats",
        kind="count",
        meaning="number of slats of a ladder back, the one at the top too",
        usual=4,
        why="four unless said",
        low=1,
        high=10,
        only_with=("back_kind", ("ladder",)),
    ),
    Parameter(
        name="splat",
        kind="length",
        meaning="width of the splat",
        usual=lambda sizes: float(round((sizes.mm("width") - 2 * sizes.mm("leg")) / 3.0)),
        why="a third of the back",
        low=20.0,
        high=800.0,
        only_with=("back_kind", ("splat",)),
    ),
)


def _between(sizes: Sizes) -> Span:
    """Return the height between lower rail and crest as a span [mm]."""
    low = sizes.mm("seat_height") + sizes.mm("back_lift") + sizes.mm("back_rail")
    return low, sizes.mm("height") - sizes.mm("crest")


def _slat_gap(sizes: Sizes) -> float:
    number = sizes.count("back_slats")
    free = sizes.mm("height") - sizes.mm("seat_height") - number * sizes.mm("crest")
    return free / number


def back_problems(sizes: Sizes, left: Span, right: Span, front: Span, rear: Span) -> tuple[Problem, ...]:
    """
    Return why a back cannot be made.

    Parameters
    ----------
    sizes
        Parameters with `BACK_PARAMETERS`.
    left, right, front, rear
        Where the legs stand as spans [mm].

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    kind, wide, thick = sizes.choice("back_kind"), right[0] - left[1], sizes.mm("back_thickness")
    low, high = _between(sizes)
    railed = kind != "ladder"
    rows: tuple[_Check, ...] = (
        (
            "back_thickness",
            thick > rear[1] - rear[0] or rear[0] < front[1],
            f"a back of {thick:.6g} mm is thicker than its posts",
            "give at most the thickness of a leg",
        ),
        (
            "seat_height",
            railed and high - low < _LEAST_TALL_MM,
            f"a seat at {sizes.mm('seat_height'):.6g} mm leaves {max(high - low, 0.0):.3g} mm between the back's rails",
            "check it, the rails of the back and the height",
        ),
        *_member_rows(sizes, wide),
    )
    return tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)


def _member_rows(sizes: Sizes, wide: float) -> tuple[_Check, ...]:
    """Return what may be wrong with slats, spindles and splat between posts so far apart."""
    kind, thick = sizes.choice("back_kind"), sizes.mm("back_thickness")
    gap = (wide - sizes.count("spindles") * sizes.mm("spindle")) / (sizes.count("spindles") + 1)
    return (
        (
            "back_slats",
            kind == "ladder" and _slat_gap(sizes) < _LEAST_OPEN_MM,
            f"{sizes.count('back_slats')} slats leave {max(_slat_gap(sizes), 0.0):.3g} mm between them",
            "give fewer or narrower slats, or check the height",
        ),
        (
            "spindle",
            kind == "spindles" and sizes.mm("spindle") > thick,
            f"spindles of {sizes.mm('spindle'):.6g} mm are thicker than the rails of {thick:.6g} mm",
            "give at most the thickness of the rails",
        ),
        (
            "spindles",
            kind == "spindles" and gap < _LEAST_OPEN_MM,
            f"{sizes.count('spindles')} spindles leave {max(gap, 0.0):.3g} mm between them",
            "give fewer or thinner spindles",
        ),
        (
            "splat",
            kind == "splat" and sizes.mm("splat") > wide - 2.0,
            f"a splat of {sizes.mm('splat'):.6g} mm does not fit between posts {max(wide, 0.0):.4g} mm apart",
            "give a narrower splat",
        ),
    )


def back_bodies(sizes: Sizes, left: Span, right: Span, _front: Span, rear: Span) -> list[PartBody]:
    """
    Return the parts of the back.

    Parameters
    ----------
    sizes
        Parameters with `BACK_PARAMETERS`.
    left, right, _front, rear
        Where the legs stand as spans [mm].

    Returns
    -------
    list of PartBody
        They stand in the middle of the posts.
    """
    thick, middle, crest = sizes.mm("back_thickness"), (rear[0] + rear[1]) / 2.0, sizes.mm("crest")
    x, y, height = (left[1], right[0]), (middle - thick / 2.0, middle + thick / 2.0), sizes.mm("height")
    kind = sizes.choice("back_kind")
    if kind == "ladder":
        step = crest + _slat_gap(sizes)
        tops = [height - n * step for n in range(sizes.count("back_slats"))]
        return [
            PartBody(name=f"back slat {n}", cells=(box(x, y, (top - crest, top), "back slats"),))
            for n, top in enumerate(tops, start=1)
        ]
    low, high = _between(sizes)
    rails = (("crest", (high, height)), ("back rail", (low - sizes.mm("back_rail"), low)))
    bodies = [PartBody(name=name, cells=(box(x, y, z, "back rails"),)) for name, z in rails]
    if kind == "splat":
        centre, half = (x[0] + x[1]) / 2.0, sizes.mm("splat") / 2.0
        cell = box((centre - half, centre + half), y, (low, high), "splat")
        return [*bodies, PartBody(name="splat", cells=(cell,))]
    return [*bodies, *_spindles(sizes, x, middle, (low, high))]


def _spindles(sizes: Sizes, x: Span, middle: float, z: Span) -> list[PartBody]:
    """Return spindles, thickest half-way up, with equal gaps."""
    number, radius = sizes.count("spindles"), sizes.mm("spindle") / 2.0
    gap = (x[1] - x[0] - 2 * radius * number) / (number + 1)
    rings = (Ring(z[0], 0.7 * radius), Ring((z[0] + z[1]) / 2.0, radius), Ring(z[1], 0.7 * radius))
    bodies = []
    for n in range(number):
        place = (x[0] + gap + radius + n * (gap + 2 * radius), middle)
        cells = turned(place, rings, "spindles", foot="spindles", head="spindles", facets=_SPINDLE_FACETS)
        bodies.append(PartBody(name=f"spindle {n + 1}", cells=cells))
    return bodies


def back_skeletons(sizes: Sizes) -> tuple[Skeleton, ...]:
    """
    Return the surfaces of the back.

    Parameters
    ----------
    sizes
        Parameters with `BACK_PARAMETERS`.

    Returns
    -------
    tuple of Skeleton
        Those of its kind; both faces and the edges of a member are one surface.
    """
    if sizes.choice("back_kind") == "ladder":
        return (Skeleton(name="back slats", part="back"),)
    return (
        Skeleton(name="back rails", part="back"),
        Skeleton(name="spindles", part="back", relief="turned"),
        Skeleton(name="splat", part="back"),
    )
