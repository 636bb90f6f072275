"""Drawers behind a bowed or serpentine front: a front of even thickness, and sides that reach up to it."""

from dataclasses import replace
from itertools import pairwise

from refettle.geometry.cells import Cell, PartBody, Side, Span, box
from refettle.geometry.forms.drawers import BEHIND_MM, LOW_MM, SLOT_MM
from refettle.geometry.forms.strips import strip_cells
from refettle.geometry.forms.swelled import Swell, plain
from refettle.geometry.parameters import Sizes

_BACK_FACE = 3  # of a strip, in the order of its sides


def swelled_drawer(
    sizes: Sizes, swell: Swell, name: str, bay: Span, level: Span, back_mm: float
) -> list[PartBody]:
    """
    Return the parts of a drawer behind a curved front; surfaces as those of a straight one.

    Parameters
    ----------
    sizes
        Parameters of a chest of drawers.
    swell
        Curve of its front.
    name
        Name of the drawer.
    bay, level
        Opening as spans [mm].
    back_mm
        Where the back board begins [mm].

    Returns
    -------
    list of PartBody
        Front, sides, bottom, back.
    """
    play, side_mm, thick = sizes.mm("play"), sizes.mm("drawer_side"), sizes.mm("drawer_front")
    x, z = (bay[0] + play, bay[1] - play), (level[0] + play, level[1] - play)
    end, slot, rim = back_mm - BEHIND_MM, z[0] + SLOT_MM, z[1] - LOW_MM
    inner, floor = (
        (x[0] + side_mm, x[1] - side_mm),
        (z[0] + SLOT_MM, z[0] + SLOT_MM + sizes.mm("drawer_bottom")),
    )
    below, within = f"{name}/underside", f"{name}/inside"
    bottom: dict[Side, str | None] = {
        "front": within, "back": f"{name}/back", "left": within, "bottom": below,
    }  # fmt: skip
    board = strip_cells(plain(swell.between(inner, thick)), end, floor, bottom, parallel=False)
    rear = box(inner, (end - side_mm, end), (floor[1], rim), within, {"back": f"{name}/back"})
    return [
        PartBody(name=f"{name} front", cells=_drawer_front(swell, name, x, (z[0], slot, z[1]), thick)),
        *(
            PartBody(
                name=f"{name} side {which}",
                cells=_drawer_side(swell, name, span, which, cuts, thick, end),
                role="lining",
            )
            for which, span, cuts in (
                ("left", (x[0], inner[0]), (z[0], slot, rim)),
                ("right", (inner[1], x[1]), (z[0], slot, rim)),
            )
        ),
        PartBody(name=f"{name} bottom", cells=board, role="lining"),
        PartBody(name=f"{name} back", cells=(rear,), role="lining"),
    ]


def _drawer_front(
    swell: Swell, name: str, x: Span, cuts: tuple[float, float, float], thick_mm: float
) -> tuple[Cell, ...]:
    """Return a front of even thickness; what shows of its back below the bottom counts to the underside."""
    cells = []
    for number, z in enumerate(pairwise(cuts)):
        back = f"{name}/inside" if number else f"{name}/underside"
        skins: dict[Side, str | None] = {"front": f"{name}/front", "back": back, "left": f"{name}/front"}
        skins |= {"bottom": None} if number else {"top": None}
        strips = strip_cells(swell.between(x), thick_mm, z, skins, parallel=True)
        cells += [_plane_back(cell) for cell in strips]
    return tuple(cells)


def _plane_back(cell: Cell) -> Cell:
    """Return a strip whose back counts with its own area: the box of a drawer lies against it."""
    faces = tuple(
        replace(face, curved_mm2=None) if number == _BACK_FACE else face
        for number, face in enumerate(cell.faces)
    )
    return replace(cell, faces=faces)


def _drawer_side(
    swell: Swell,
    name: str,
    x: Span,
    which: str,
    cuts: tuple[float, float, float],
    thick_mm: float,
    end_mm: float,
) -> tuple[Cell, ...]:
    """Return a side that reaches up to the curved front; below the bottom its inner face counts to the underside."""
    cells: list[Cell] = []
    inwards: Side = "right" if which == "left" else "left"
    outwards: Side = "left" if which == "left" else "right"
    for number, z in enumerate(pairwise(cuts)):
        skins: dict[Side, str | None] = {
            "front": f"{name}/sides", "back": f"{name}/back", "bottom": f"{name}/sides", "top": f"{name}/inside",
            outwards: f"{name}/sides", inwards: f"{name}/inside" if number else f"{name}/underside",
        }  # fmt: skip
        skins["bottom" if number else "top"] = None
        cells += strip_cells(plain(swell.between(x, thick_mm)), end_mm, z, skins, parallel=False)
    return tuple(cells)
