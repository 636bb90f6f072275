"""Frames of doors and panelling: what they are made of and which parameters say so."""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from refettle.geometry.parameters import Parameter, Sizes, choice, length

KINDS = ("flat", "frame-and-panel", "slatted", "louvred", "lattice", "glazed", "caned", "carved")
FRAMED = ("frame-and-panel", "slatted", "louvred", "lattice", "glazed", "caned")
OPEN = ("glazed", "caned")
"""Fronts whose filling is no wood: it comes out or is covered, and counts to no surface."""
TILT = math.radians(45.0)  # of the slats of a louvred front


@dataclass(frozen=True, slots=True, kw_only=True)
class Framing:
    """
    A frame and what stands in it.

    Attributes
    ----------
    stile_mm, rail_mm, panel_mm
        Width of stiles (muntins too), width of rails, thickness of panels [mm].
    slat_mm, slat_thick_mm, gap_mm
        Width and thickness of slats, gap between them before it is evened out [mm].
    upright
        Whether slats stand upright.
    behind_mm
        Distance from the slats to the board behind them [mm]; None = open.
    """

    stile_mm: float = 60.0
    rail_mm: float = 60.0
    panel_mm: float = 8.0
    slat_mm: float = 30.0
    slat_thick_mm: float = 10.0
    gap_mm: float = 10.0
    upright: bool = False
    behind_mm: float | None = None


def front_parameters(
    kind: str,
    kinds: tuple[str, ...],
    word: str,
    thick_mm: Callable[[Sizes], float],
    size_mm: Callable[[Sizes], tuple[float, float]],
) -> tuple[Parameter, ...]:
    """
    Return the parameters of what stands in the frame of a front.

    Parameters
    ----------
    kind
        Parameter that says which kind of front it is.
    kinds
        Kinds that it may be.
    word
        Words for what the front is, e.g. ``door``.
    thick_mm
        Gives its thickness [mm].
    size_mm
        Gives its width and height [mm].

    Returns
    -------
    tuple of Parameter
        Stiles, rails, panels and, where it may be slatted, slats.
    """
    framed = (kind, tuple(choice for choice in kinds if choice in FRAMED))

    def width(name: str, meaning: str, part: int) -> Parameter:
        return Parameter(
            name=name,
            kind="length",
            meaning=f"width of the {meaning} of a {word}",
            usual=lambda sizes: float(round(min(60.0, max(12.0, size_mm(sizes)[part] / 6.0)))),
            why=f"a sixth of the {word}, 12 to 60 mm",
            low=8.0,
            high=250.0,
            only_with=framed,
        )

    panel = Parameter(
        name="panel",
        kind="length",
        meaning=f"thickness of a panel of a {word}",
        usual=lambda sizes: float(min(8, max(3, round(thick_mm(sizes) * 0.4)))),
        why="two fifths of the frame's thickness, 3 to 8 mm",
        low=2.0,
        high=60.0,
        only_with=framed,
    )
    slats = _slat_parameters(kind, thick_mm, kinds) if "slatted" in kinds else ()
    return (width("stile", "stiles", 0), width("rail", "rails", 1), panel, *slats)


def framing(sizes: Sizes) -> Framing:
    """
    Return what stands in a frame, from the parameters of `front_parameters`.

    Parameters
    ----------
    sizes
        All parameters of a form.

    Returns
    -------
    Framing
        Widths and thicknesses; usual ones for slats where the form has none.
    """
    plain = Framing(stile_mm=sizes.mm("stile"), rail_mm=sizes.mm("rail"), panel_mm=sizes.mm("panel"))
    if "slat_run" not in sizes.values:
        return plain
    return replace(
        plain,
        slat_mm=sizes.mm("slat_width"),
        slat_thick_mm=sizes.mm("slat_thickness"),
        gap_mm=sizes.mm("slat_gap"),
        upright=sizes.choice("slat_run") == "upright",
        behind_mm=sizes.mm("slat_behind") if sizes.choice("slat_back") == "board" else None,
    )


def _slat_parameters(
    kind: str, thick_mm: Callable[[Sizes], float], kinds: tuple[str, ...]
) -> tuple[Parameter, ...]:
    def thickness(sizes: Sizes) -> float:
        share = 0.25 if sizes.choice(kind) == "louvred" else 0.4
        return float(min(10, max(2, round(thick_mm(sizes) * share))))

    def width(sizes: Sizes) -> float:
        """Return what lets slats tilted by half a right angle stay a millimetre inside the frame."""
        if sizes.choice(kind) != "louvred":
            return 30.0
        fits = (thick_mm(sizes) - 2.0) / math.cos(TILT) - sizes.mm("slat_thickness")
        return float(max(5, math.floor(fits)))

    ways, backs = ("level", "upright"), ("open", "board")
    slim = length("slat_thickness", "thickness of a slat", 10.0, 2.0, 60.0)
    behind = length("slat_behind", "distance from the slats to the board behind them", 0.0, 0.0, 60.0)
    rows = (
        choice("slat_run", "way the slats run", ways, "slats mostly lie level between the stiles"),
        replace(
            slim,
            usual=thickness,
            why="two fifths of the frame's thickness (a quarter where louvred), at most 10 mm",
        ),
        replace(
            length("slat_width", "width of a slat", 30.0, 5.0, 200.0),
            usual=width,
            why="30 mm; on a louvred front what fits into the frame",
        ),
        length("slat_gap", "gap between slats, evened out so that whole slats fit", 10.0, 1.0, 200.0),
        choice("slat_back", "what is behind the slats", backs, "slats are there to let air through"),
    )
    either = {"slat_thickness", "slat_width", "slat_gap"}
    slats = tuple(one for one in ("slatted", "louvred", "lattice") if one in kinds)
    return (
        *(replace(row, only_with=(kind, slats if row.name in either else ("slatted",))) for row in rows),
        replace(behind, why="slats lie on the board", only_with=("slat_back", ("board",))),
    )
