"""Underframe: four legs joined by aprons, as under bedside tables, benches and chairs."""

from dataclasses import dataclass

from refettle.geometry.cells import PartBody, Side, Skin, Span, box
from refettle.geometry.form import Skeleton
from refettle.geometry.forms.legs import BLOCK_MM, LEG_SHAPES, Leg, leg_cells
from refettle.geometry.forms.stretchers import stretcher_bodies, stretcher_problems, stretcher_square
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice

_LEAST_BETWEEN_MM = 60.0
_LEAST_BELOW_MM = 50.0
_Check = tuple[str, bool, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """
    Where the four legs stand and how high they reach.

    Attributes
    ----------
    x, y
        Spans over the legs [mm].
    head_mm
        Upper end of the legs and of the aprons [mm].
    """

    x: Span
    y: Span
    head_mm: float


def leg_parameters(shapes: tuple[str, ...] = LEG_SHAPES) -> tuple[Parameter, ...]:
    """
    Return the parameters of legs and aprons.

    Parameters
    ----------
    shapes
        Shapes that the legs may have; the first is the usual one.

    Returns
    -------
    tuple of Parameter
        Shape, thickness, foot, apron and its thickness.
    """
    return (
        choice("leg_shape", "shape of the legs", shapes, f"{shapes[0]} legs unless said"),
        Parameter(
            name="leg",
            kind="length",
            meaning="thickness of a leg at the apron",
            usual=lambda sizes: float(
                round(max(18.0, min(50.0, min(sizes.mm("width"), sizes.mm("depth")) / 10.0)))
            ),
            why="a tenth of the shorter side, 18 to 50 mm",
            low=15.0,
            high=200.0,
        ),
        Parameter(
            name="foot",
            kind="length",
            meaning="thickness of a tapered leg at the floor",
            usual=lambda sizes: float(round(sizes.mm("leg") * 0.6)),
            why="three fifths of the leg",
            low=8.0,
            high=200.0,
            only_with=("leg_shape", ("tapered",)),
        ),
        *_apron_parameters(),
    )


def _apron_parameters() -> tuple[Parameter, ...]:
    return (
        Parameter(
            name="apron",
            kind="length",
            meaning="height of the aprons",
            usual=lambda sizes: float(round(max(15.0, min(90.0, sizes.mm("height") / 7.0)))),
            why="a seventh of the height, 15 to 90 mm",
            low=15.0,
            high=400.0,
        ),
        Parameter(
            name="apron_thickness",
            kind="length",
            meaning="thickness of an apron",
            usual=lambda sizes: min(22.0, float(round(sizes.mm("leg") / 2.0))),
            why="half a leg, at most 22 mm",
            low=6.0,
            high=80.0,
        ),
    )


def corners(sizes: Sizes, stand: Stand) -> tuple[Span, Span, Span, Span]:
    """
    Return where the legs stand.

    Parameters
    ----------
    sizes
        Parameters with `leg_parameters`.
    stand
        Where the underframe stands.

    Returns
    -------
    tuple of tuple
        Left, right, front, rear spans [mm].
    """
    leg, x, y = sizes.mm("leg"), stand.x, stand.y
    return (x[0], x[0] + leg), (x[1] - leg, x[1]), (y[0], y[0] + leg), (y[1] - leg, y[1])


def underframe_problems(sizes: Sizes, stand: Stand, height: str) -> tuple[Problem, ...]:
    """
    Return why an underframe cannot be made.

    Parameters
    ----------
    sizes
        Parameters with `leg_parameters`.
    stand
        Where it stands.
    height
        Parameter that says how high it is.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    left, right, front, rear = corners(sizes, stand)
    leg, apron, head = sizes.mm("leg"), sizes.mm("apron"), stand.head_mm
    thick, foot = sizes.mm("apron_thickness"), sizes.mm("foot")
    thin = "check the size and the thickness of the legs"
    rows: tuple[_Check, ...] = (
        ("width", right[0] - left[1] < _LEAST_BETWEEN_MM, "legs leave no width between them", thin),
        ("depth", rear[0] - front[1] < _LEAST_BETWEEN_MM, "legs leave no depth between them", thin),
        (
            "apron",
            apron + BLOCK_MM > head - _LEAST_BELOW_MM,
            f"an apron of {apron:.6g} mm leaves nothing of the legs below it",
            f"check it and the {height}",
        ),
        (
            "apron_thickness",
            thick > leg,
            f"an apron of {thick:.6g} mm is thicker than a leg of {leg:.6g} mm",
            "give at most the thickness of a leg",
        ),
        (
            "foot",
            sizes.choice("leg_shape") == "tapered" and foot > leg,
            f"a foot of {foot:.6g} mm is thicker than the leg of {leg:.6g} mm",
            "give at most the thickness of the leg",
        ),
    )
    found = tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)
    return (*found, *(stretcher_problems(sizes, head - apron) if "stretcher" in sizes.values else ()))


def leg_body(sizes: Sizes, stand: Stand, number: int) -> PartBody:
    """
    Return one of the four legs.

    Parameters
    ----------
    sizes
        Parameters with `leg_parameters`.
    stand
        Where the underframe stands.
    number
        1 front left, 2 front right, 3 rear left, 4 rear right.

    Returns
    -------
    PartBody
        The leg.
    """
    left, right, front, rear = corners(sizes, stand)
    leg = Leg(
        x=right if number in {2, 4} else left,
        y=front if number in {1, 2} else rear,
        head_mm=stand.head_mm,
        neck_mm=stand.head_mm - sizes.mm("apron") - BLOCK_MM,
        shape=sizes.choice("leg_shape"),
        foot_mm=sizes.mm("foot"),
        low=stretcher_square(sizes) if "stretcher" in sizes.values else None,
    )
    return PartBody(name=f"leg.{number}", cells=leg_cells(leg, f"leg.{number}"))


def apron_bodies(
    sizes: Sizes, stand: Stand, sides: tuple[Side, ...] = ("front", "back", "left", "right")
) -> list[PartBody]:
    """
    Return aprons, half-way between the faces of the legs and their middle where there is room.

    Parameters
    ----------
    sizes
        Parameters with `leg_parameters`.
    stand
        Where the underframe stands.
    sides
        Sides that have an apron.

    Returns
    -------
    list of PartBody
        The aprons; stretchers too where the form has them.
    """
    left, right, front, rear = corners(sizes, stand)
    thick = sizes.mm("apron_thickness")
    back = min(5.0, sizes.mm("leg") - thick)
    z = (stand.head_mm - sizes.mm("apron"), stand.head_mm)
    across, along = (left[1], right[0]), (front[1], rear[0])
    places: dict[Side, tuple[Span, Span, Side]] = {
        "front": (across, (front[0] + back, front[0] + back + thick), "back"),
        "back": (across, (rear[1] - back - thick, rear[1] - back), "front"),
        "left": ((left[0] + back, left[0] + back + thick), along, "right"),
        "right": ((right[1] - back - thick, right[1] - back), along, "left"),
    }
    bodies = []
    for side in sides:
        x, y, inwards = places[side]
        inner: dict[Side, str | Skin] = {inwards: "aprons/inside"}
        cell = box(x, y, z, "aprons/outside", inner)
        bodies.append(PartBody(name=f"apron {side}", cells=(cell,)))
    return bodies + (stretcher_bodies(sizes, left, right, front, rear) if "stretcher" in sizes.values else [])


def underframe_skeletons(sizes: Sizes) -> tuple[Skeleton, ...]:
    """
    Return the surfaces of an underframe.

    Parameters
    ----------
    sizes
        Parameters with `leg_parameters`.

    Returns
    -------
    tuple of Skeleton
        Aprons, legs, stretchers, feet.
    """
    relief = "turned" if sizes.choice("leg_shape") == "turned" else "flat"
    return (
        Skeleton(name="aprons/outside", part="aprons", other_side="aprons/inside"),
        *(Skeleton(name=f"leg.{n}", part=f"leg.{n}", relief=relief) for n in range(1, 5)),
        Skeleton(name="stretchers", part="stretchers"),
        Skeleton(
            name="aprons/inside",
            part="aprons",
            orientation="inside",
            other_side="aprons/outside",
            hidden=True,
        ),
        Skeleton(name="feet", part="legs", orientation="down", hidden=True),
    )
