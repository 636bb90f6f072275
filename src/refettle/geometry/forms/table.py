"""Table: a top on four legs with aprons; drop leaves on gate legs if wished."""

from refettle.geometry.cells import Cell, PartBody, Skin, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.legs import BLOCK_MM, LEG_SHAPES, Leg, leg_cells
from refettle.geometry.forms.stretchers import (
    STRETCHER_PARAMETERS,
    stretcher_bodies,
    stretcher_problems,
    stretcher_square,
)
from refettle.geometry.parameters import Parameter, Problem, Sizes, choice, count, length, size_parameters

_GATE_RAIL_MM = 40.0
_GATE_LOW_MM = 120.0
_PLAY_MM = 2.0
_LEAST_BETWEEN_MM = 60.0
_SIDES = ("left", "right")
_Check = tuple[str, bool, str, str]  # parameter, whether it is wrong, what, what to do


def _leg_usual(sizes: Sizes) -> float:
    return float(round(min(60.0, min(sizes.mm("width"), sizes.mm("depth")) / 8.0)))


def _over_usual(sizes: Sizes) -> float:
    return float(round(min(40.0, min(sizes.mm("width"), sizes.mm("depth")) / 20.0)))


PARAMETERS = (
    *size_parameters((200.0, 200.0, 150.0), (5000.0, 2000.0, 1400.0)),
    length("top", "thickness of the top", 25.0, 8.0, 80.0),
    Parameter(
        name="overhang",
        kind="length",
        meaning="how far the top stands out over the legs",
        usual=_over_usual,
        why="a twentieth of the shorter side, at most 40 mm",
        low=0.0,
        high=500.0,
    ),
    choice("leg_shape", "shape of the legs", LEG_SHAPES, "square legs unless said"),
    Parameter(
        name="leg",
        kind="length",
        meaning="thickness of a leg at the apron",
        usual=_leg_usual,
        why="an eighth of the shorter side, at most 60 mm",
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
    Parameter(
        name="apron",
        kind="length",
        meaning="height of the aprons",
        usual=lambda sizes: float(round(min(100.0, sizes.mm("height") / 6.0))),
        why="a sixth of the height, at most 100 mm",
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
    *STRETCHER_PARAMETERS,
    count("leaves", "number of drop leaves, at the left and right end", 0, "none unless said", 0, 2),
    Parameter(
        name="leaf",
        kind="length",
        meaning="width of a leaf, lifted, from the top outwards",
        usual=lambda sizes: float(round(min(sizes.mm("height") - 80.0, max(100.0, sizes.mm("width") * 0.6)))),
        why="three fifths of the top's width, short enough to hang",
        low=60.0,
        high=1500.0,
        only_with=("leaves", (1, 2)),
    ),
    Parameter(
        name="gates",
        kind="choice",
        meaning="whether a gate leg swings out under each leaf",
        usual=lambda sizes: "yes" if sizes.mm("leaf") >= 250.0 else "no",
        why="leaves of 250 mm or more need one",
        choices=("yes", "no"),
        only_with=("leaves", (1, 2)),
    ),
)


def _under(sizes: Sizes) -> float:
    """Return the height of the underside of the top [mm]."""
    return sizes.mm("height") - sizes.mm("top")


def _corners(sizes: Sizes) -> tuple[Span, Span, Span, Span]:
    """Return where legs stand [mm]: left, right, front, rear spans."""
    over, leg, width, depth = (sizes.mm(name) for name in ("overhang", "leg", "width", "depth"))
    return (
        (over, over + leg),
        (width - over - leg, width - over),
        (over, over + leg),
        (depth - over - leg, depth - over),
    )


def _gate_post(sizes: Sizes) -> float:
    """Return how far the far edge of a gate's post stands out from the end of the top [mm]."""
    return sizes.mm("leaf") * 0.7


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
    rows = (*_leg_checks(sizes), *(_leaf_checks(sizes) if sizes.count("leaves") else ()))
    found = tuple(Problem(param=name, what=what, do=do) for name, wrong, what, do in rows if wrong)
    return (*found, *stretcher_problems(sizes, _under(sizes) - sizes.mm("apron")))


def _leg_checks(sizes: Sizes) -> tuple[_Check, ...]:
    left, right, front, rear = _corners(sizes)
    leg, apron = sizes.mm("leg"), sizes.mm("apron")
    thick, foot = sizes.mm("apron_thickness"), sizes.mm("foot")
    tapered = sizes.choice("leg_shape") == "tapered"
    thin = "check the size and the thickness of the legs"
    return (
        (
            "width",
            right[0] - left[1] < _LEAST_BETWEEN_MM,
            "legs and overhang leave no width between the legs",
            thin,
        ),
        (
            "depth",
            rear[0] - front[1] < _LEAST_BETWEEN_MM,
            "legs and overhang leave no depth between the legs",
            thin,
        ),
        (
            "apron",
            apron + BLOCK_MM > _under(sizes) - 50.0,
            f"an apron of {apron:.6g} mm leaves nothing of the legs below it",
            "check it and the height",
        ),
        (
            "apron_thickness",
            thick > leg,
            f"an apron of {thick:.6g} mm is thicker than a leg of {leg:.6g} mm",
            "give at most the thickness of a leg",
        ),
        (
            "foot",
            tapered and foot > leg,
            f"a foot of {foot:.6g} mm is thicker than the leg of {leg:.6g} mm",
            "give at most the thickness of the leg",
        ),
    )


def _leaf_checks(sizes: Sizes) -> tuple[_Check, ...]:
    under, leaf = _under(sizes), sizes.mm("leaf")
    low = under - sizes.mm("apron") < _GATE_LOW_MM + 2 * _GATE_RAIL_MM
    tight = _gate_post(sizes) < sizes.mm("leg") + _PLAY_MM
    return (
        (
            "leaf",
            leaf > under,
            f"a leaf of {leaf:.6g} mm reaches the floor when it hangs",
            "give less than the height of the table",
        ),
        (
            "gates",
            sizes.choice("gates") == "yes" and (low or tight),
            "there is no room for gate legs under the leaves",
            "write gates: no, or check the sizes of the leaves",
        ),
    )


def build(sizes: Sizes) -> Built:
    """
    Return the table built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Leaves are lifted and gates swung out, a hair's breadth from the top: every face lies open.
    """
    width, depth, under = sizes.mm("width"), sizes.mm("depth"), _under(sizes)
    level = (under, sizes.mm("height"))
    top = box((0.0, width), (0.0, depth), level, "top", {"bottom": "top/underside"})
    bodies = [PartBody(name="top", cells=(top,)), *_legs(sizes), *_aprons(sizes)]
    bodies += stretcher_bodies(sizes, *_corners(sizes))
    for name in _SIDES[: sizes.count("leaves")]:
        far = _PLAY_MM + sizes.mm("leaf")
        x = _mirrored((-far, -_PLAY_MM), width, name)
        leaf = box(x, (0.0, depth), level, f"leaf.{name}", {"bottom": f"leaf.{name}/underside"})
        bodies.append(PartBody(name=f"leaf.{name}", cells=(leaf,)))
        if sizes.choice("gates") == "yes":
            bodies += _gate(sizes, name)
    return measured(tuple(bodies), _skeletons(sizes))


def _skeletons(sizes: Sizes) -> tuple[Skeleton, ...]:
    relief = "turned" if sizes.choice("leg_shape") == "turned" else "flat"
    leaves = [f"leaf.{name}" for name in _SIDES]
    return (
        Skeleton(name="top", part="top", orientation="up", other_side="top/underside"),
        *(
            Skeleton(name=leaf, part=leaf, orientation="up", other_side=f"{leaf}/underside")
            for leaf in leaves
        ),
        Skeleton(name="aprons/outside", part="aprons", other_side="aprons/inside"),
        *(Skeleton(name=f"leg.{n}", part=f"leg.{n}", relief=relief) for n in range(1, 5)),
        Skeleton(name="stretchers", part="stretchers"),
        *(Skeleton(name=f"gate.{name}", part=f"gate.{name}") for name in _SIDES),
        Skeleton(name="top/underside", part="top", orientation="down", other_side="top", hidden=True),
        *(
            Skeleton(name=f"{leaf}/underside", part=leaf, orientation="down", other_side=leaf, hidden=True)
            for leaf in leaves
        ),
        Skeleton(
            name="aprons/inside",
            part="aprons",
            orientation="inside",
            other_side="aprons/outside",
            hidden=True,
        ),
        Skeleton(name="feet", part="legs", orientation="down", hidden=True),
    )


def _legs(sizes: Sizes) -> list[PartBody]:
    """Return the legs: front left, front right, rear left, rear right."""
    left, right, front, rear = _corners(sizes)
    places = ((left, front), (right, front), (left, rear), (right, rear))
    return [
        PartBody(name=f"leg.{n}", cells=_leg(sizes, x, y, f"leg.{n}"))
        for n, (x, y) in enumerate(places, start=1)
    ]


def _leg(sizes: Sizes, x: Span, y: Span, name: str) -> tuple[Cell, ...]:
    head = _under(sizes)
    leg = Leg(
        x=x,
        y=y,
        head_mm=head,
        neck_mm=head - sizes.mm("apron") - BLOCK_MM,
        shape=sizes.choice("leg_shape"),
        foot_mm=sizes.mm("foot"),
        low=stretcher_square(sizes),
    )
    return leg_cells(leg, name)


def _aprons(sizes: Sizes) -> list[PartBody]:
    """Return the aprons, half-way between the faces of the legs and their middle where there is room."""
    left, right, front, rear = _corners(sizes)
    thick, leg = sizes.mm("apron_thickness"), sizes.mm("leg")
    back = min(5.0, leg - thick)
    z = (_under(sizes) - sizes.mm("apron"), _under(sizes))
    outer, inner = "aprons/outside", "aprons/inside"
    across, along = (left[1], right[0]), (front[1], rear[0])
    cells = (
        ("front", box(across, (front[0] + back, front[0] + back + thick), z, outer, {"back": inner})),
        ("back", box(across, (rear[1] - back - thick, rear[1] - back), z, outer, {"front": inner})),
        ("left", box((left[0] + back, left[0] + back + thick), along, z, outer, {"right": inner})),
        ("right", box((right[1] - back - thick, right[1] - back), along, z, outer, {"left": inner})),
    )
    return [PartBody(name=f"apron {name}", cells=(cell,)) for name, cell in cells]


def _gate(sizes: Sizes, name: str) -> list[PartBody]:
    """Return a gate leg swung out under a leaf: post, upper and lower rail."""
    width, depth, leg, under = sizes.mm("width"), sizes.mm("depth"), sizes.mm("leg"), _under(sizes)
    far = _gate_post(sizes)
    thick = min(22.0, leg)
    post = (-far, leg - far)
    rail = (post[1], sizes.mm("overhang") - _PLAY_MM)
    middle = ((depth - leg) / 2.0, (depth + leg) / 2.0)
    slim = ((depth - thick) / 2.0, (depth + thick) / 2.0)
    upper = under - sizes.mm("apron") - BLOCK_MM
    skin = Skin(f"gate.{name}")
    post_cell = box(_mirrored(post, width, name), middle, (0.0, under - _PLAY_MM), skin, {"bottom": "feet"})
    x = _mirrored(rail, width, name)
    return [
        PartBody(name=f"gate.{name} post", cells=(post_cell,)),
        PartBody(name=f"gate.{name} upper rail", cells=(box(x, slim, (upper - _GATE_RAIL_MM, upper), skin),)),
        PartBody(
            name=f"gate.{name} lower rail",
            cells=(box(x, slim, (_GATE_LOW_MM - _GATE_RAIL_MM, _GATE_LOW_MM), skin),),
        ),
    ]


def _mirrored(span: Span, width: float, name: str) -> Span:
    """Return a span at the left end, or its mirror at the right end."""
    return span if name == "left" else (width - span[1], width - span[0])


FORM = Form(
    id="table",
    name="table",
    aliases=(
        "dining table",
        "writing table",
        "coffee table",
        "side table",
        "gate-leg table",
        "drop-leaf table",
    ),
    meaning="A top on four legs with aprons; drop leaves on gate legs if wished.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
