"""Frame of a picture or mirror: four members mitred at the corners, plain or moulded."""

from refettle.geometry.cells import PartBody, box
from refettle.geometry.form import Built, Form, measured
from refettle.geometry.forms.mitred import PROFILES, Moulding, frame_bodies, frame_skeletons
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, size_parameters

_LEAST_OPENING_MM = 20.0
_PANE_MM = 3.0

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
    choice("profile", "profile of the front", tuple(PROFILES), "flat unless said"),
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
    moulding = Moulding(
        width_mm=sizes.mm("width"),
        depth_mm=sizes.mm("depth"),
        height_mm=sizes.mm("height"),
        member_mm=sizes.mm("moulding"),
        profile=sizes.choice("profile"),
    )
    bodies, skeletons = frame_bodies(moulding), frame_skeletons(moulding)
    pane, wide = sizes.choice("pane"), sizes.mm("moulding")
    panes: tuple[PartBody, ...] = ()
    if pane != "none":
        x, z = (wide, sizes.mm("width") - wide), (wide, sizes.mm("height") - wide)
        cell = box(x, (sizes.mm("depth") - _PANE_MM, sizes.mm("depth")), z, pane)
        panes = (PartBody(name=pane, cells=(cell,)),)
    return measured(bodies, skeletons, panes)


FORM = Form(
    id="frame",
    name="frame",
    aliases=("picture frame", "mirror frame", "mirror"),
    meaning="Four members mitred at the corners; glass or mirror is out for the work.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
