"""Forms: a kind of furniture, its surfaces, and how it is built to size."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches

from refettle.domain.piece import Assumed, Zone
from refettle.geometry.cells import PartBody
from refettle.geometry.measure import exposed_zones
from refettle.geometry.parameters import Parameter, Problem, Sizes, Value, listed, plain, wrong
from refettle.geometry.zones import usual_zones

ZONES = ("flat", "edge", "recess")


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """
    A surface of the piece as the form gives it.

    Attributes
    ----------
    name, part
        Surface and the part it belongs to.
    area_m2
        Exposed area [m²].
    relief, orientation
        One of ``domain.piece.RELIEFS`` and of ``ORIENTATIONS``.
    zones
        Zones with their shares [1], which add up to 1.
    both_sides_of
        Name of the surface on the other side of the same board; None = there is none.
    running
        Whether it slides on another part in use: a film there makes it stick.
    hidden
        Whether nobody sees it in use: backs, undersides, the carcase behind drawers.
    """

    name: str
    part: str
    area_m2: float
    relief: str = "flat"
    orientation: str = "upright"
    zones: tuple[Zone, ...] = (Zone(name="flat", share=1.0),)
    both_sides_of: str | None = None
    running: bool = False
    hidden: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """
    A form built to size.

    Attributes
    ----------
    bodies
        Solid parts; none for a free list.
    faces
        Surfaces with their exposed areas, in the order of the form.
    assumed
        Values that were not given.
    taken_out
        Parts that are not wood and are out while the piece is worked on: glass, mirrors, seat pads.
        They have no surfaces and take no area off those of others.
    """

    bodies: tuple[PartBody, ...]
    faces: tuple[Face, ...]
    assumed: tuple[Assumed, ...] = ()
    taken_out: tuple[PartBody, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """
    A kind of furniture that can be built from sizes.

    Attributes
    ----------
    id, name, aliases
        Permanent id, trade name, other words for it.
    meaning
        What it stands for, in a sentence.
    parameters
        Parameters in the order in which their usual values are worked out.
    problems
        Gives what is wrong with sizes that are each fine on their own.
    build
        Gives the form in sizes that have no problems.
    """

    id: str
    name: str
    aliases: tuple[str, ...] = ()
    meaning: str = ""
    parameters: tuple[Parameter, ...] = ()
    problems: Callable[[Sizes], tuple[Problem, ...]]
    build: Callable[[Sizes], Built]


@dataclass(frozen=True, slots=True, kw_only=True)
class Skeleton:
    """
    A surface before it is measured: all of `Face` but the area.

    Attributes
    ----------
    name, part, relief, orientation, running, hidden
        As in `Face`.
    other_side
        Surface on the other side of the same board; empty = none.
    """

    name: str
    part: str
    relief: str = "flat"
    orientation: str = "upright"
    other_side: str = ""
    running: bool = False
    hidden: bool = False


def measured(
    bodies: tuple[PartBody, ...],
    skeletons: tuple[Skeleton, ...],
    taken_out: tuple[PartBody, ...] = (),
) -> Built:
    """
    Return parts with their surfaces measured.

    Parameters
    ----------
    bodies
        Parts that do not overlap.
    skeletons
        Surfaces in the order in which they are to come out; those covered all over drop out.
    taken_out
        Parts that are not wood; they are not measured.

    Returns
    -------
    Built
        Parts and surfaces. Zones are what the faces of the parts say, but for carved work, whose
        hollows no body shows.

    Raises
    ------
    ValueError
        If a face of a part names a surface that is not among `skeletons`.
    """
    shown = exposed_zones(bodies)
    unknown = sorted(set(shown) - {skeleton.name for skeleton in skeletons})
    if unknown:
        msg = f"surfaces without a description: {unknown}"
        raise ValueError(msg)
    faces, assumed = [], []
    for skeleton in skeletons:
        if skeleton.name not in shown:
            continue
        zones = _shares(shown[skeleton.name])
        if skeleton.relief == "carved":
            usual = usual_zones("carved")
            zones = usual.zones
            assumed.append(Assumed(path=f"surfaces/{skeleton.name}/zones", value=usual.text(), why=usual.why))
        faces.append(
            Face(
                name=skeleton.name,
                part=skeleton.part,
                area_m2=math.fsum(shown[skeleton.name].values()),
                relief=skeleton.relief,
                orientation=skeleton.orientation,
                zones=zones,
                both_sides_of=skeleton.other_side if skeleton.other_side in shown else None,
                running=skeleton.running,
                hidden=skeleton.hidden,
            )
        )
    return Built(bodies=bodies, faces=tuple(faces), assumed=tuple(assumed), taken_out=taken_out)


def build_to_size(form: Form, params: Mapping[str, Value]) -> Built | tuple[Problem, ...]:
    """
    Return a form in the sizes given, or everything that is wrong with them.

    Parameters
    ----------
    form
        The form.
    params
        Values given: lengths in mm, counts, words of choices.

    Returns
    -------
    Built or tuple of Problem
        The form with every usual value that was taken, or all problems at once.
    """
    sizes, assumed, problems = _resolved(form, params)
    if sizes is not None:
        blamed = {problem.param for problem in problems}
        problems += tuple(problem for problem in form.problems(sizes) if problem.param not in blamed)
    if sizes is None or problems:
        return problems
    built = form.build(sizes)
    return replace(built, assumed=assumed + built.assumed)


def _resolved(
    form: Form, params: Mapping[str, Value]
) -> tuple[Sizes | None, tuple[Assumed, ...], tuple[Problem, ...]]:
    """Return all values, those assumed, and what is wrong; no values where a needed one is missing."""
    known = {parameter.name: parameter for parameter in form.parameters}
    problems = [_unknown(form, name) for name in params if name not in known]
    values: dict[str, Value] = {}
    assumed = []
    missing = False
    for name, parameter in known.items():
        applies = _applies(parameter, values)
        given = params.get(name)
        fault = None if given is None else wrong(parameter, given)
        if given is not None and not applies and parameter.only_with:
            other = parameter.only_with[0]
            fault = Problem(
                param=name,
                what=f"{name} has no meaning where {other} is {plain(values[other])}",
                do=f"take {name} out, or change {other} to {listed(parameter.only_with[1])}",
            )
        if fault is not None:
            problems.append(fault)
        if given is not None and fault is None:
            values[name] = given
        elif missing or parameter.usual is None:
            missing = True
            if given is None and parameter.usual is None:
                problems.append(
                    Problem(param=name, what=f"{name} is missing", do=f"give the {parameter.meaning}")
                )
        else:
            usual = parameter.usual
            values[name] = usual(Sizes(values)) if callable(usual) else usual
            if applies and given is None:
                text = parameter.text(values[name])
                assumed.append(Assumed(path=f"form/{name}", value=text, why=parameter.why))
    return (None if missing else Sizes(values)), tuple(assumed), tuple(problems)


def _applies(parameter: Parameter, values: Mapping[str, Value]) -> bool:
    if parameter.only_with is None or parameter.only_with[0] not in values:
        return True
    other, wanted = parameter.only_with
    return values[other] in wanted


def _unknown(form: Form, name: str) -> Problem:
    names = [parameter.name for parameter in form.parameters]
    near = get_close_matches(name, names, n=1)
    do = f"write {near[0]}" if near else f"a {form.name} takes {', '.join(names)}"
    return Problem(param=name, what=f"a {form.name} has no {name}", do=do)


def _shares(areas: Mapping[str, float]) -> tuple[Zone, ...]:
    whole = math.fsum(areas.values())
    return tuple(Zone(name=zone, share=areas[zone] / whole) for zone in ZONES if zone in areas)
