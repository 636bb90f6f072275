"""
Which share of a relief a tool touches, from its cross-section.

A tool is a convex body with a working part. Where its body may be without cutting the wood is found exactly: for
convex solids the forbidden places are the hulls of vertex sums; the place must hang together with the open front.
Movement is by shifting in a fixed turn; a stick that must be twisted in is read too low.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Any, Final

import numpy as np
import shapely
from numpy.typing import NDArray

from refettle.geometry.section import Section, Solid

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]

_STEP_MM: Final = 0.25
_FLUSH_DEG: Final = 6.0
_TURN_DEG: Final = 10
_FRONT_COS: Final = 0.7
_GRAZING_DEG: Final = 12.0
_DOSE_STEP_DEG: Final = 3.0
_SIGHT_STEP_DEG: Final = 15
KINDS: Final = ("ball", "pad", "blade", "bristles", "mist")


@dataclass(frozen=True, slots=True)
class Shape:
    """
    A tool as geometry.

    Attributes
    ----------
    kind
        ``ball`` a round front (finger, roller); ``pad`` a flat sole of some width on a body; ``blade`` a thin edge
        on a shank; ``bristles``; ``mist`` spray.
    size_mm
        Radius of a ball; width of a sole or edge; length of bristles [mm].
    thick_mm
        Thickness of a pad, of a blade's plate, of a bundle of bristles [mm].
    soft_mm
        How far it gives way or spreads: contact counts within it [mm].
    cone_deg
        For bristles and mist: how far from straight on it works [°].
    """

    kind: str
    size_mm: float
    thick_mm: float = 0.0
    soft_mm: float = 0.25
    cone_deg: float = 60.0


@dataclass(frozen=True, slots=True)
class Reach:
    """
    What a tool touches.

    Attributes
    ----------
    share
        Of all that is to be worked [1]; for mist what it sees at all.
    faces
        Face → share touched of it [1]: ``front``, ``side``, ``floor``, ``back``.
    dose
        Face → film it gets against an open face [1]; for mist alone.
    """

    share: float
    faces: tuple[tuple[str, float], ...]
    dose: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """
    Points on the open outline of the middle period.

    Attributes
    ----------
    points, normals
        Shape (n, 2) [mm], unit vectors out of the wood.
    weights
        Shape (n,): length that a point stands for [mm].
    faces
        Shape (n,): ``front``, ``side``, ``floor`` or ``back``.
    """

    points: Floats
    normals: Floats
    weights: Floats
    faces: NDArray[np.str_]


def _corners(solid: Solid) -> Floats:
    """Return the corners of a solid, shape (n, 2) [mm]."""
    return np.array(solid.points, dtype=float)


@lru_cache(maxsize=64)
def outline_of(section: Section) -> Outline:
    """
    Return the outline that is worked, as points a quarter of a millimetre apart.

    Parameters
    ----------
    section
        The cut.

    Returns
    -------
    Outline
        Of the middle period; the back of the whole is left out, the backs of slats only where they are open.
    """
    bodies = [shapely.Polygon(s.points) for s in section.solids]
    whole = shapely.union_all([body.buffer(1e-4, join_style="mitre") for body in bodies])
    points, normals, weights = [], [], []
    for part in shapely.get_parts(whole):
        for ring in [shapely.geometry.polygon.orient(part).exterior, *part.interiors]:
            corners = np.asarray(ring.coords)
            for start, end in pairwise(corners):
                run = end - start
                length = float(np.hypot(*run))
                if length < 1e-3:
                    continue
                count = max(1, round(length / _STEP_MM))
                share = (np.arange(count) + 0.5) / count
                points.append(start + share[:, None] * run)
                normals.append(np.tile([run[1] / length, -run[0] / length], (count, 1)))
                weights.append(np.full(count, length / count))
    where, out, run_mm = np.concatenate(points), np.concatenate(normals), np.concatenate(weights)
    bottom = whole.bounds[1]
    kept = (np.abs(where[:, 0]) < section.period_mm / 2) & (where[:, 1] > bottom + 0.01)
    where, out, run_mm = where[kept], out[kept], run_mm[kept]
    labels = np.array([s.label for s in section.solids])[
        shapely.STRtree(bodies).nearest(shapely.points(where))
    ]
    faces = np.where(out[:, 1] > _FRONT_COS, "front", np.where(out[:, 1] < -_FRONT_COS, "back", "side"))
    faces = np.where((labels == "board") & (faces == "front"), "floor", faces)
    shown = ~((labels == "board") & (faces == "back"))
    return Outline(where[shown], out[shown], run_mm[shown], faces[shown])


@lru_cache(maxsize=1024)
def reach_of(section: Section, shape: Shape) -> Reach:
    """
    Return what a tool touches of a section.

    Parameters
    ----------
    section
        The cut.
    shape
        The tool.

    Returns
    -------
    Reach
        Shares over the whole and per face.
    """
    outline = outline_of(section)
    dose: tuple[tuple[str, float], ...] = ()
    if shape.kind == "mist":
        hit, got = _seen(section, outline, shape)
        dose = _mean(outline, got)
    else:
        hit = touched(section, shape)
    return Reach(float(_share(outline.weights, hit)), _mean(outline, hit.astype(float)), dose)


def touched(section: Section, shape: Shape) -> Bools:
    """Return, per point of the outline, whether a tool touches it."""
    outline = outline_of(section)
    match shape.kind:
        case "ball":
            return _ball(section, outline, shape)
        case "bristles":
            return _bristles(section, outline, shape)
        case "mist":
            return _seen(section, outline, shape)[0]
        case _:
            return _flat(section, outline, shape)


def _share(weights: Floats, hit: Bools) -> float:
    """Return the share of length that is hit [1]."""
    return float(weights[hit].sum() / weights.sum())


def _mean(outline: Outline, values: Floats) -> tuple[tuple[str, float], ...]:
    """Return the mean of a value per face, faces in their order of depth."""
    made = []
    for face in ("front", "side", "floor", "back"):
        here = outline.faces == face
        if here.any():
            made.append((face, float(np.average(values[here], weights=outline.weights[here]))))
    return tuple(made)


def _largest(region: Any, above: float) -> Any:  # noqa: ANN401 - shapely's geometries carry no types
    """Return the part of a region that reaches above a height: the one that hangs together with the open front."""
    parts = [part for part in shapely.get_parts(region) if part.bounds[3] > above]
    return max(parts, key=lambda part: part.area, default=shapely.Polygon())


def _ball(section: Section, outline: Outline, shape: Shape) -> Bools:
    """Return what a round front touches: its centre keeps its radius from the wood and comes from the front."""
    radius = shape.size_mm
    whole = shapely.union_all([shapely.Polygon(s.points) for s in section.solids])
    u0, v0, u1, v1 = whole.bounds
    frame = shapely.box(u0 + radius, v0 - 6 * radius, u1 - radius, v1 + 6 * radius + 20)
    free = frame.difference(whole.buffer(radius, quad_segs=16))
    near: Bools = shapely.dwithin(
        _largest(free, v1 + 5 * radius), shapely.points(outline.points), radius + shape.soft_mm
    )
    return near


def _turned(points: Floats, degrees: float) -> Floats:
    """Return points turned about the origin."""
    angle = math.radians(degrees)
    cos, sin = math.cos(angle), math.sin(angle)
    turned: Floats = points @ np.array([[cos, sin], [-sin, cos]])
    return turned


def _free(section: Section, body: Floats, squeeze: float) -> Any:  # noqa: ANN401 - as above
    """Return where a tool's sole may be: clear of every solid, hanging together with the open front."""
    hulls = [
        shapely.MultiPoint((_corners(s)[:, None] - body[None]).reshape(-1, 2)).convex_hull.buffer(-squeeze)
        for s in section.solids
    ]
    barred = shapely.union_all(hulls)
    u0, v0, u1, v1 = barred.bounds
    room = shapely.box(u0 + 1, v0 - 5, u1 - 1, v1 + 80).difference(barred.buffer(-1e-3))
    return _largest(room, v1 + 70)


def _turns(facing: list[int]) -> list[int]:
    """Return the turns [°] of a tool by which every facing is within reach of one: exact on straight faces."""
    turns: list[int] = []
    for degrees in facing:
        if not turns or degrees - turns[-1] > _TURN_DEG:
            turns.append(degrees)
    return turns


def _flat(section: Section, outline: Outline, shape: Shape) -> Bools:
    """Return what a flat sole or an edge touches, lying within a few degrees on the face."""
    half, long = shape.size_mm / 2, 60.0 if shape.kind == "blade" else shape.thick_mm
    body = np.array([[-half, 0.0], [half, 0.0], [half, long], [-half, long]])
    sole = np.array([[-half, 0.0], [half, 0.0]])
    lean = 60 if shape.kind == "blade" else 180
    facing = np.degrees(np.arctan2(outline.normals[:, 0], outline.normals[:, 1]))
    hit = np.zeros(len(outline.points), dtype=bool)
    for turn in _turns(sorted({round(float(t)) for t in facing if abs(t) <= lean})):
        lying = ~hit & (np.abs((facing - turn + 180) % 360 - 180) <= _FLUSH_DEG)
        at = np.nonzero(lying)[0]
        if not len(at):
            continue
        room = _free(section, _turned(body, -turn), 0.0)
        if room.is_empty:
            continue
        room = room.buffer(shape.soft_mm)
        shapely.prepare(room)
        lines = shapely.linestrings(outline.points[at, None, :] - _turned(sole, -turn)[None])
        hit[at] |= shapely.intersects(room, lines)
    return hit


def _sight(section: Section, frame: Any, cone_deg: float) -> Any:  # noqa: ANN401 - as above
    """Return the free space that is seen from the front within a cone, by sweeping the solids away from the eye."""
    seen = []
    turns = np.radians(np.arange(-cone_deg, cone_deg + 1, _SIGHT_STEP_DEG))
    for turn in turns:
        away = np.array([math.sin(turn), math.cos(turn)]) * -400
        shadows = [
            shapely.MultiPoint(np.vstack([_corners(s), _corners(s) + away])).convex_hull
            for s in section.solids
        ]
        seen.append(frame.difference(shapely.union_all(shadows)))
    return shapely.union_all(seen)


def _bristles(section: Section, outline: Outline, shape: Shape) -> Bools:
    """
    Return what bristles touch.

    Notes
    -----
    The ferrule stays outside within a bristle's length; the way is seen within the cone, or bends a little round a
    corner; a bundle must pass the gap, and its tips fan out into corners. A guess that wants data from the bench.
    """
    length, bundle = shape.size_mm, shape.thick_mm
    ferrule, flex = 0.3 * length, 0.18 * length
    whole = shapely.union_all([shapely.Polygon(s.points) for s in section.solids])
    u0, v0, u1, v1 = whole.bounds
    frame = shapely.box(u0, v0, u1, v1 + 2 * length)
    free = frame.difference(whole)
    passed = free.buffer(-bundle / 2, quad_segs=4).buffer(bundle / 2 + 1e-3, quad_segs=4).intersection(free)
    held = _largest(frame.difference(whole.buffer(ferrule / 2)), v1 + length)
    near = held.buffer(length + ferrule / 2, quad_segs=8)
    way = _sight(section, frame, shape.cone_deg).intersection(passed).intersection(near)
    way = way.buffer(flex, quad_segs=4).intersection(passed).intersection(near)
    tips = _largest(way, v1).buffer(0.75 * bundle, quad_segs=4).intersection(free)
    hit: Bools = shapely.dwithin(tips, shapely.points(outline.points), max(0.1, shape.soft_mm))
    return hit


def _seen(section: Section, outline: Outline, shape: Shape) -> tuple[Bools, Floats]:
    """Return, per point, whether mist reaches it, and the film it gets against an open face [1]."""
    rings = [np.vstack([_corners(s), _corners(s)[:1]]) for s in section.solids]
    start = np.concatenate([ring[:-1] for ring in rings])
    edge = np.concatenate([ring[1:] for ring in rings]) - start
    turns = np.radians(np.arange(-shape.cone_deg, shape.cone_deg + 0.1, _DOSE_STEP_DEG))
    ways = np.c_[np.sin(turns), np.cos(turns)]
    eye = outline.points + outline.normals * 0.02
    slope = outline.normals @ ways.T
    seen = np.zeros(slope.shape, dtype=bool)
    for k, way in enumerate(ways):
        cross = way[0] * edge[:, 1] - way[1] * edge[:, 0]
        met = np.abs(cross) > 1e-9
        off = start[None, met] - eye[:, None]
        along = (off[..., 0] * edge[met, 1] - off[..., 1] * edge[met, 0]) / cross[met]
        across = (off[..., 0] * way[1] - off[..., 1] * way[0]) / cross[met]
        seen[:, k] = ~((along > 0) & (across >= 0) & (across <= 1)).any(axis=1)
    seen &= slope > math.sin(math.radians(_GRAZING_DEG))
    dose: Floats = (np.clip(slope, 0, 1) * seen).sum(axis=1) / np.clip(ways[:, 1], 0, 1).sum()
    any_way: Bools = np.asarray(seen.any(axis=1), dtype=bool)
    return any_way, dose


_BLOCK: Final = Shape("pad", 75.0, 25.0)
_FINGER: Final = Shape("ball", 9.0, 0.0, 0.5)
_SLIVER: Final = 0.005


def zones_by_reach(section: Section) -> tuple[tuple[str, float], ...]:
    """
    Return the zones of a section by what gets there.

    Parameters
    ----------
    section
        The cut.

    Returns
    -------
    tuple
        Zone → share [1]: ``flat`` a block touches it, ``edge`` a fingertip does besides, ``recess`` neither;
        they add up to 1.
    """
    weights = outline_of(section).weights
    block = touched(section, _BLOCK)
    finger = touched(section, _FINGER) & ~block
    shares = {"flat": _share(weights, block), "edge": _share(weights, finger)}
    shares["recess"] = max(0.0, 1.0 - shares["flat"] - shares["edge"])
    kept = {name: share for name, share in shares.items() if share > _SLIVER}
    total = sum(kept.values())
    return tuple((name, share / total) for name, share in kept.items())


def class_of_points(section: Section) -> NDArray[np.str_]:
    """Return, per point of the outline, its zone: ``flat``, ``edge`` or ``recess``."""
    block, finger = touched(section, _BLOCK), touched(section, _FINGER)
    made: NDArray[np.str_] = np.where(block, "flat", np.where(finger, "edge", "recess"))
    return made
