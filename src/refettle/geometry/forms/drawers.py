"""Drawers: one box, and stacks of them with the rails and runners that carry them."""

from dataclasses import dataclass
from itertools import pairwise

from refettle.geometry.cells import Index, PartBody, Side, Skin, Span, box, cut_box
from refettle.geometry.form import Skeleton
from refettle.geometry.parameters import Problem, Sizes, length

BEHIND_MM = 10.0  # free space behind a drawer
RUNNER_MM = 25.0
_RAIL_DEEP_MM = 50.0
SLOT_MM = 10.0  # from the lower edge of a drawer side up to its bottom
LOW_MM = 10.0  # how far drawer sides stay below the front
_LEAST_ROW_MM = 60.0
_LEAST_DRAWER_MM = 80.0

BOX_PARAMETERS = (
    length("drawer_front", "thickness of a drawer front", 20.0, 6.0, 60.0),
    length("drawer_side", "thickness of drawer sides and back", 12.0, 4.0, 30.0),
    length("drawer_bottom", "thickness of a drawer bottom", 6.0, 2.0, 20.0),
)
RAIL_PARAMETER = length("rail_thickness", "thickness of the rails between drawers", 18.0, 6.0, 60.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """
    Drawers one above the other in an opening.

    Attributes
    ----------
    place
        Name of the opening, for its rails.
    x, y, z
        Opening as spans [mm]; y runs from the front edge to the back board.
    drawers
        Number of drawers [1].
    rail_mm
        Thickness of the rails between them [mm].
    first
        Number of the uppermost drawer [1].
    """

    place: str
    x: Span
    y: Span
    z: Span
    drawers: int
    rail_mm: float
    first: int = 1

    @property
    def levels(self) -> tuple[Span, ...]:
        """Return the openings of single drawers from the top down [mm]."""
        tall = (self.z[1] - self.z[0] - (self.drawers - 1) * self.rail_mm) / self.drawers
        floors = [self.z[0] + n * (tall + self.rail_mm) for n in range(self.drawers)][::-1]
        return tuple((floor, floor + tall) for floor in floors)


def least_row_mm(sizes: Sizes) -> float:
    """
    Return the least opening of a drawer.

    Parameters
    ----------
    sizes
        Parameters with `BOX_PARAMETERS` and ``play``.

    Returns
    -------
    float
        Height [mm].
    """
    return max(_LEAST_ROW_MM, 2 * sizes.mm("play") + SLOT_MM + LOW_MM + sizes.mm("drawer_bottom") + 10.0)


def stack_problems(sizes: Sizes, stack: Stack, blamed: tuple[str, str, str]) -> tuple[Problem, ...]:
    """
    Return why drawers do not fit into an opening.

    Parameters
    ----------
    sizes
        Parameters with `BOX_PARAMETERS` and ``play``.
    stack
        The drawers.
    blamed
        Parameters that say how wide, how deep and how high the opening is.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    if not stack.drawers:
        return ()
    high, least = stack.levels[0][1] - stack.levels[0][0], least_row_mm(sizes)
    side = 2 * (sizes.mm("drawer_side") + sizes.mm("play"))
    wide = stack.x[1] - stack.x[0]
    deep = stack.y[1] - stack.y[0] - sizes.mm("drawer_front") - BEHIND_MM - sizes.mm("drawer_side")
    rows = (
        (blamed[0], wide < max(_LEAST_DRAWER_MM, side + 20.0), f"an opening {max(wide, 0.0):.3g} mm wide"),
        (blamed[1], deep < _LEAST_DRAWER_MM / 2, f"a depth of {sizes.mm('depth'):.6g} mm"),
        (blamed[2], high < least, f"a row {max(high, 0.0):.3g} mm high"),
    )
    return tuple(
        Problem(
            param=name, what=f"{what} leaves no room for drawers", do="give fewer drawers, or check the sizes"
        )
        for name, wrong, what in rows
        if wrong
    )


def stack_bodies(sizes: Sizes, stack: Stack) -> list[PartBody]:
    """
    Return the drawers of a stack with the rails and runners between them.

    Parameters
    ----------
    sizes
        Parameters with `BOX_PARAMETERS` and ``play``.
    stack
        Drawers that fit.

    Returns
    -------
    list of PartBody
        Drawers touch nothing; rails and runners touch the walls.
    """
    bodies: list[PartBody] = []
    for number, level in enumerate(stack.levels):
        bodies += drawer_bodies(sizes, f"drawer.{stack.first + number}", stack.x, stack.y, level)
    behind = (rail_end(stack.y), stack.y[1])
    ends = (
        ("left", (stack.x[0], stack.x[0] + RUNNER_MM)),
        ("right", (stack.x[1] - RUNNER_MM, stack.x[1])),
    )
    for number, (upper, lower) in enumerate(pairwise(stack.levels), start=1):
        z, name = (lower[1], upper[0]), f"{stack.place} {number}"
        rail = box(stack.x, (stack.y[0], behind[0]), z, "runners", {"front": "rails"})
        bodies.append(PartBody(name=f"rail {name}", cells=(rail,)))
        bodies += [
            PartBody(name=f"runner {name} {which}", cells=(box(x, behind, z, "runners"),), role="lining")
            for which, x in ends
        ]
    return bodies


def stack_skeletons(stack: Stack) -> list[Skeleton]:
    """
    Return the surfaces of the drawers of a stack.

    Parameters
    ----------
    stack
        The drawers.

    Returns
    -------
    list of Skeleton
        Five for each drawer; those of the rails are in `RAIL_SKELETONS`.
    """
    return [one for n in range(stack.drawers) for one in drawer_skeletons(f"drawer.{stack.first + n}")]


RAIL_SKELETONS = (
    Skeleton(name="rails", part="carcase"),
    Skeleton(name="runners", part="carcase", orientation="inside", running=True, hidden=True),
)


def rail_end(y: Span) -> float:
    """
    Return where the rails between drawers end.

    Parameters
    ----------
    y
        From the front edge to the back board [mm].

    Returns
    -------
    float
        Rear of the rails [mm].
    """
    return y[0] + min(_RAIL_DEEP_MM, (y[1] - y[0]) / 3.0)


def drawer_bodies(sizes: Sizes, name: str, bay: Span, y: Span, level: Span) -> list[PartBody]:
    """
    Return the parts of a drawer; what shows from above is its inside.

    Parameters
    ----------
    sizes
        Parameters with `BOX_PARAMETERS` and ``play``.
    name
        Name of the drawer.
    bay, y, level
        Opening as spans [mm]: across, from the front edge to the back board, upwards.

    Returns
    -------
    list of PartBody
        Front, sides, bottom, back.
    """
    play = sizes.mm("play")
    side_mm, bottom_mm = sizes.mm("drawer_side"), sizes.mm("drawer_bottom")
    x0, x1, z0, z1 = bay[0] + play, bay[1] - play, level[0] + play, level[1] - play
    start = y[0] + sizes.mm("drawer_front")
    end, slot, rim = y[1] - BEHIND_MM, z0 + SLOT_MM, z1 - LOW_MM
    inner = (x0 + side_mm, x1 - side_mm)

    def front_skin(side: Side, index: Index) -> Skin:
        if side == "back":
            return Skin(f"{name}/underside" if index[2] == 0 else f"{name}/inside")
        return Skin(f"{name}/front")

    def side_skin(inwards: Side) -> tuple[PartBody, ...]:
        def skin(side: Side, index: Index) -> Skin:
            if side == inwards:
                return Skin(f"{name}/underside" if index[2] == 0 else f"{name}/inside")
            return Skin({"top": f"{name}/inside", "back": f"{name}/back"}.get(side, f"{name}/sides"))

        x = (x0, inner[0]) if inwards == "right" else (inner[1], x1)
        cells = cut_box(x, (start, end), (z0, slot, rim), skin)
        which = "left" if inwards == "right" else "right"
        return (PartBody(name=f"{name} side {which}", cells=cells, role="lining"),)

    floor = (slot, slot + bottom_mm)
    bottom = box(
        inner, (start, end), floor, f"{name}/inside", {"bottom": f"{name}/underside", "back": f"{name}/back"}
    )
    rear = box(inner, (end - side_mm, end), (floor[1], rim), f"{name}/inside", {"back": f"{name}/back"})
    return [
        PartBody(name=f"{name} front", cells=cut_box((x0, x1), (y[0], start), (z0, slot, z1), front_skin)),
        *side_skin("right"),
        *side_skin("left"),
        PartBody(name=f"{name} bottom", cells=(bottom,), role="lining"),
        PartBody(name=f"{name} back", cells=(rear,), role="lining"),
    ]


def drawer_skeletons(name: str) -> list[Skeleton]:
    """
    Return the surfaces of a drawer.

    Parameters
    ----------
    name
        Name of the drawer.

    Returns
    -------
    list of Skeleton
        Front first.
    """
    return [
        Skeleton(name=f"{name}/front", part=name),
        Skeleton(name=f"{name}/inside", part=name, orientation="inside"),
        Skeleton(name=f"{name}/sides", part=name, running=True),
        Skeleton(name=f"{name}/underside", part=name, orientation="down", hidden=True),
        Skeleton(name=f"{name}/back", part=name, hidden=True),
    ]
