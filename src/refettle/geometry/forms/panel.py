"""Panel on its own: plain, fielded, fluted, beaded, of tambour slats, bowed or serpentine."""

from refettle.geometry.cells import Cell, CellFace, PartBody, Side, box, box_corners
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.strips import beaded, bowed, fluted, relief_depth_mm, serpentine, strip_cells
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, size_parameters

_KINDS = ("flat", "fielded", "fluted", "beaded", "tambour", "bowed", "serpentine")
_SWELLS = {"bowed": bowed, "serpentine": serpentine}
_RELIEF = {"fielded": "panel", "fluted": "moulded", "beaded": "moulded", "tambour": "moulded"}
_LEAST_FIELD_MM = 10.0
_LEAST_BEHIND_MM = 1.0

PARAMETERS = (
    *size_parameters((30.0, 3.0, 30.0), (3000.0, 60.0, 3000.0)),
    choice("kind", "kind of panel", _KINDS, "a plain panel unless said"),
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
    Parameter(
        name="reed",
        kind="length",
        meaning="width of a flute, bead or tambour slat, evened out so that whole ones fit",
        usual=lambda sizes: max(6.0, min(20.0, 2.0 * sizes.mm("depth"))),
        why="twice the thickness, 6 to 20 mm",
        low=6.0,
        high=150.0,
        only_with=("kind", ("fluted", "beaded", "tambour")),
    ),
    Parameter(
        name="bow",
        kind="length",
        meaning="how far the middle stands out; the depth over all counts it in",
        usual=lambda sizes: sizes.mm("depth") / 2.0,
        why="half the depth over all",
        low=1.0,
        high=200.0,
        only_with=("kind", tuple(_SWELLS)),
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
    kind = sizes.choice("kind")
    if kind != "fielded":
        return _curve_problems(sizes, kind)
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


def build(sizes: Sizes) -> Built:
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
    kind = sizes.choice("kind")
    skeletons = (
        Skeleton(name="front", part="panel", relief=_RELIEF.get(kind, "flat"), other_side="back"),
        Skeleton(name="back", part="panel", other_side="front"),
        Skeleton(name="edges", part="panel"),
    )
    return measured((PartBody(name="panel", cells=_cells(sizes, kind)),), skeletons)


def _curve_problems(sizes: Sizes, kind: str) -> tuple[Problem, ...]:
    """Return why flutes, beads or a bow do not fit into the thickness."""
    depth, width = sizes.mm("depth"), sizes.mm("width")
    if kind == "flat":
        return ()
    if kind in _SWELLS:
        bow = sizes.mm("bow")
        if bow <= min(depth - _LEAST_BEHIND_MM, width / 2.0):
            return ()
        what = f"a bow of {bow:.6g} mm leaves no wood in a depth of {depth:.6g} mm over all, or is too round"
        return (Problem(param="bow", what=what, do="give less, or count the bow into the depth"),)
    deep = relief_depth_mm(width, sizes.mm("reed"), kind)
    if deep <= depth - _LEAST_BEHIND_MM:
        return ()
    what = f"flutes or beads go {deep:.3g} mm deep into {depth:.6g} mm"
    return (Problem(param="reed", what=what, do="give narrower ones, or check the depth"),)


def _cells(sizes: Sizes, kind: str) -> tuple[Cell, ...]:
    width, depth, z = sizes.mm("width"), sizes.mm("depth"), (0.0, sizes.mm("height"))
    if kind == "flat":
        return (box((0.0, width), (0.0, depth), z, "edges", {"front": "front", "back": "back"}),)
    if kind == "fielded":
        return (_fielded(sizes),)
    skins: dict[Side, str] = {"front": "front", "back": "back", "left": "edges"}
    if kind in _SWELLS:
        bow = sizes.mm("bow")
        return strip_cells(_SWELLS[kind](width, bow), depth - bow, z, skins, parallel=True)
    facets = (fluted if kind == "fluted" else beaded)(width, sizes.mm("reed"))
    return strip_cells(facets, depth, z, skins, parallel=False)


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


FORM = Form(
    id="panel",
    name="panel",
    aliases=(
        "fielded panel",
        "raised panel",
        "bow front",
        "serpentine front",
        "beaded panel",
        "fluted panel",
    ),
    meaning="A panel or front on its own, upright: plain, fielded, fluted, beaded, of tambour slats, bowed or "
    "serpentine.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
