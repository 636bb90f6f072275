"""Free list: surfaces with areas that somebody measured; no shape."""

import math
from collections.abc import Mapping

from refettle.domain.piece import ORIENTATIONS, RELIEFS, Assumed
from refettle.geometry.form import Built, Face, Form
from refettle.geometry.parameters import Problem, Sizes, Value, listed
from refettle.geometry.zones import usual_zones

_MOST_M2 = 100.0
_KEYS: dict[str, tuple[str, ...]] = {"relief": RELIEFS, "orientation": ORIENTATIONS, "part": ()}


def build_list(params: Mapping[str, Value]) -> Built | tuple[Problem, ...]:
    """
    Return surfaces as listed.

    Parameters
    ----------
    params
        ``area_m2:NAME`` gives the area of the surface NAME [m²], ``relief:NAME``,
        ``orientation:NAME`` and ``part:NAME`` the rest; order is kept.

    Returns
    -------
    Built or tuple of Problem
        Surfaces without bodies, or all problems at once.
    """
    names = [key.split(":", 1)[1] for key in params if key.startswith("area_m2:")]
    problems = (
        [] if names else [Problem(param="surfaces", what="no surface is listed", do="list at least one")]
    )
    for key, value in params.items():
        problems += _problems(key, value, names)
    if problems:
        return tuple(problems)
    faces, assumed = [], []
    for name in names:
        relief = str(params.get(f"relief:{name}", "flat"))
        usual = usual_zones(relief)
        if relief != "flat":
            assumed.append(Assumed(path=f"surfaces/{name}/zones", value=usual.text(), why=usual.why))
        faces.append(
            Face(
                name=name,
                part=str(params.get(f"part:{name}", name.split("/")[0])),
                area_m2=float(params[f"area_m2:{name}"]),
                relief=relief,
                orientation=str(params.get(f"orientation:{name}", "upright")),
                zones=usual.zones,
            )
        )
    return Built(bodies=(), faces=tuple(faces), assumed=tuple(assumed))


def _problems(key: str, value: Value, names: list[str]) -> list[Problem]:
    kind, _, name = key.partition(":")
    if kind == "area_m2" and name:
        if isinstance(value, str) or not math.isfinite(value) or not 0.0 < value <= _MOST_M2:
            what = f"the area of {name} is {value}, not between 0 and {_MOST_M2:.0f} m²"
            return [Problem(param=key, what=what, do="give its area and unit, e.g. 0.8 m2")]
        return []
    if kind not in _KEYS or not name:
        return [Problem(param=key, what=f"a free list has no {key}", do=f"give area, {listed(tuple(_KEYS))}")]
    if name not in names:
        return [Problem(param=key, what=f"{name} has no area", do=f"give the area of {name}")]
    if _KEYS[kind] and value not in _KEYS[kind]:
        return [
            Problem(
                param=key, what=f'"{value}" is no {kind} that is known', do=f"write {listed(_KEYS[kind])}"
            )
        ]
    return []


def problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return what is wrong with a list.

    Parameters
    ----------
    sizes
        Values as `build_list` takes them.

    Returns
    -------
    tuple of Problem
        Everything that is wrong.
    """
    built = build_list(sizes.values)
    return () if isinstance(built, Built) else built


def build(sizes: Sizes) -> Built:
    """
    Return surfaces as listed.

    Parameters
    ----------
    sizes
        Values as `build_list` takes them, without problems.

    Returns
    -------
    Built
        Surfaces without bodies.

    Raises
    ------
    ValueError
        If something is wrong with the list.
    """
    match build_list(sizes.values):
        case Built() as built:
            return built
        case faults:
            msg = f"a list with problems: {faults}"
            raise ValueError(msg)


FORM = Form(
    id="list",
    name="free list",
    aliases=("other", "surfaces"),
    meaning="Surfaces with areas that you measured, where no form fits (arm chairs, shaped work).",
    parameters=(),
    problems=problems,
    build=build,
)
