"""Frame of a picture or mirror: four members mitred at the corners, plain or moulded."""

from dataclasses import replace
from itertools import pairwise

from refettle.geometry.cells import Cell, PartBody, Point, Side, Skin, box, hexahedron
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, size_parameters

_LEAST_OPENING_MM = 20.0
_PANE_MM = 3.0
_JOINT = "joint"  # between two strips of one member
# Mouldings: share of the width from the outer edge, share of the thickness there, zone up to the next.
_PROFILES: dict[str, tuple[tuple[float, float, str], ...]] = {
    "flat": ((0.0, 1.0, "flat"), (1.0, 1.0, "flat")),
    "bevelled": ((0.0, 1.0, "flat"), (0.3, 1.0, "flat"), (1.0, 0.45, "flat")),
    "moulded": (
        (0.00, 0.70, "edge"),
        (0.12, 0.95, "edge"),
        (0.28, 1.00, "edge"),
        (0.40, 0.80, "recess"),
        (0.50, 0.62, "recess"),
        (0.70, 0.55, "edge"),
        (0.85, 0.52, "edge"),
        (1.00, 0.40, "edge"),
    ),
}
_RELIEF = {"flat": "flat", "bevelled": "moulded", "moulded": "moulded"}

PARAMETERS = (
    *size_parameters((60.0, 6.0, 60.0), (3000.0, 150.0, 3000.0)),
    Parameter(
        name="moulding",
        kind="length",
        meaning="width of the members",
        usual=lambda sizes: float(round(min(40.0, min(sizes.mm("width"), sizes.mm("height")) / 5.0))),
        why="a fifth of the shorter side, at most 40 mm",
        low=8.0,
        high=400.0,
    ),
    choice("profile", "profile of the front", tuple(_PROFILES), "flat unless said"),
    choice("pane", "what the frame holds", ("glass", "mirror", "none"), "glass unless said"),
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
    wide = sizes.mm("moulding")
    left = min(sizes.mm("width"), sizes.mm("height")) - 2 * wide
    if left >= _LEAST_OPENING_MM:
        return ()
    what = f"members of {wide:.6g} mm leave an opening of {max(left, 0.0):.3g} mm"
    do = f"leave at least {_LEAST_OPENING_MM:.0f} mm: narrower members, or check the size"
    return (Problem(param="moulding", what=what, do=do),)


def build(sizes: Sizes) -> Built:
    """
    Return the frame built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        The rebate is left out; glass or mirror is out for the work.
    """
    bodies = tuple(
        PartBody(name=side, cells=_member(sizes, side)) for side in ("bottom", "right", "top", "left")
    )
    relief = _RELIEF[sizes.choice("profile")]
    skeletons = (
        Skeleton(name="front", part="frame", relief=relief, other_side="back"),
        Skeleton(name="outer edges", part="frame"),
        Skeleton(name="inner edges", part="frame"),
        Skeleton(name="back", part="frame", other_side="front", hidden=True),
    )
    pane, wide = sizes.choice("pane"), sizes.mm("moulding")
    panes: tuple[PartBody, ...] = ()
    if pane != "none":
        x, z = (wide, sizes.mm("width") - wide), (wide, sizes.mm("height") - wide)
        cell = box(x, (sizes.mm("depth") - _PANE_MM, sizes.mm("depth")), z, pane)
        panes = (PartBody(name=pane, cells=(cell,)),)
    return measured(bodies, skeletons, panes)


def _member(sizes: Sizes, side: str) -> tuple[Cell, ...]:
    """Return one member as strips of its profile, mitred at both ends, from the outer edge inwards."""
    width, depth, height = sizes.mm("width"), sizes.mm("depth"), sizes.mm("height")
    profile, wide = _PROFILES[sizes.choice("profile")], sizes.mm("moulding")
    long = width if side in {"bottom", "top"} else height

    def place(along: float, across: float, y: float) -> Point:
        """Turn a member that lies at the bottom to its side."""
        return {
            "bottom": (along, y, across),
            "right": (width - across, y, along),
            "top": (width - along, y, height - across),
            "left": (across, y, height - along),
        }[side]

    cells = []
    for number, ((o0, t0, zone), (o1, t1, _)) in enumerate(pairwise(profile)):
        low, high = o0 * wide, o1 * wide
        fronts = (depth * (1.0 - t0), depth * (1.0 - t1))
        corners = tuple(
            place(along, across, y)
            for across, front in ((low, fronts[0]), (high, fronts[1]))
            for along, y in (
                (across, front),
                (long - across, front),
                (long - across, depth),
                (across, depth),
            )
        )
        skins: dict[Side, str | Skin] = {"front": Skin("front", zone), "back": "back"}
        skins["bottom"] = "outer edges" if number == 0 else _JOINT
        skins["top"] = "inner edges" if number == len(profile) - 2 else _JOINT
        strip = hexahedron(corners, "front", skins)  # mitres are covered by the next member
        faces = tuple(replace(face, surface=None) if face.surface == _JOINT else face for face in strip.faces)
        cells.append(Cell(vertices=strip.vertices, faces=faces))
    return tuple(cells)


FORM = Form(
    id="frame",
    name="frame",
    aliases=("picture frame", "mirror frame", "mirror"),
    meaning="Four members mitred at the corners; glass or mirror is out for the work.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
