"""Reach from cross-sections against three dimensions: rays, a field of distances, and what was measured before."""

import math

import numpy as np
import pytest
import trimesh
from numpy.typing import NDArray
from scipy import ndimage

from refettle.geometry.reach import Shape, outline_of, reach_of, touched
from refettle.geometry.section import Section, section_of

FINGER = Shape("ball", 9.0, 0.0, 0.06)
PAD, STICK_8, STICK_15 = (
    Shape("pad", 75.0, 25.0, 0.05),
    Shape("pad", 8.0, 3.0, 0.05),
    Shape("pad", 15.0, 4.0, 0.05),
)
SCRAPER_50, SCRAPER_8 = Shape("blade", 50.0, 0.0, 0.05), Shape("blade", 8.0, 0.0, 0.05)
SPRAY = Shape("mist", 0.0, 0.0, 0.0, 45.0)
WIDTH = 10.0

# The project's own feasibility study, measured before this was written: slats 10 mm wide; finger, pad 75 x 25, stick 8 x 3,
# stick 15 x 4, scraper 50, scraper 8, spray seen at all [%].
MEASURED = {
    (8, 0, 6): (31, 31, 81, 81, 31, 31, 100), (8, 0, 10): (28, 28, 100, 72, 28, 56, 100),
    (8, 0, 20): (33, 22, 100, 100, 22, 65, 100), (15, 0, 6): (22, 22, 87, 87, 22, 22, 100),
    (15, 0, 10): (20, 20, 100, 80, 20, 40, 100), (15, 0, 20): (47, 17, 100, 100, 17, 50, 100),
    (10, 8, 6): (18, 18, 54, 54, 18, 18, 79), (10, 8, 10): (17, 17, 100, 50, 17, 33, 83),
    (10, 8, 20): (49, 14, 100, 100, 14, 43, 86), (10, 15, 6): (18, 18, 54, 54, 18, 18, 82),
}  # fmt: skip
TOOLS = (FINGER, PAD, STICK_8, STICK_15, SCRAPER_50, SCRAPER_8, SPRAY)


def slats(deep: float, behind: float, gap: float) -> Section:
    made = section_of("slats", {"width": WIDTH, "gap": gap, "depth": deep, "behind": behind})
    assert made is not None
    return made


@pytest.mark.parametrize("case", MEASURED, ids=str)
def test_slats_read_as_they_were_measured(case: tuple[float, float, float]) -> None:
    deep, behind, gap = case
    shares = [100.0 * reach_of(slats(deep, behind, gap), tool).share for tool in TOOLS]
    assert shares == pytest.approx(MEASURED[case], abs=1.5)


def boxes(deep: float, behind: float, gap: float, long: float = 300.0) -> trimesh.Trimesh:
    """Return slats, stiles, rails and board as one mesh: across x, depth y, along z [mm]."""
    period, half = WIDTH + gap, long / 2
    edge, depth = 4 * period + WIDTH / 2 + gap, deep + behind
    bounds = [
        ((i - 4) * period - WIDTH / 2, -deep, -half, (i - 4) * period + WIDTH / 2, 0.0, half)
        for i in range(9)
    ]
    bounds += [
        (-edge - 40, -depth - 6, -half, -edge, 0.0, half),
        (edge, -depth - 6, -half, edge + 40, 0.0, half),
    ]
    bounds += [
        (-edge - 40, -depth - 6, half, edge + 40, 0.0, half + 60),
        (-edge - 40, -depth - 6, -half - 60, edge + 40, 0.0, -half),
    ]
    bounds.append((-edge - 40, -depth - 6, -half, edge + 40, -depth, half))
    return trimesh.util.concatenate([trimesh.creation.box(bounds=[b[:3], b[3:]]) for b in bounds])


@pytest.mark.parametrize("case", [(8, 0, 6), (15, 0, 10), (10, 8, 6), (10, 8, 20)], ids=str)
def test_what_spray_sees_agrees_with_rays_in_three_dimensions(case: tuple[float, float, float]) -> None:
    deep, behind, gap = case
    section = slats(deep, behind, gap)
    outline = outline_of(section)
    eye = np.c_[outline.points + 0.02 * outline.normals, np.zeros(len(outline.points))]
    normal = np.c_[outline.normals, np.zeros(len(outline.points))]
    mesh = boxes(deep, behind, gap)
    seen = np.zeros(len(eye), dtype=bool)
    for off in np.radians(np.arange(0.0, 45.1, 5.0)):
        for turn in np.radians(np.arange(0.0, 360.0, 30.0 if off else 360.0)):
            way = np.array([math.sin(off) * math.cos(turn), math.cos(off), math.sin(off) * math.sin(turn)])
            at = np.nonzero(~seen & (normal @ way > math.sin(math.radians(12.0))))[0]
            if len(at):
                seen[at] = ~mesh.ray.intersects_any(eye[at], np.tile(way, (len(at), 1)))
    by_rays = float(outline.weights[seen].sum() / outline.weights.sum())
    assert 100.0 * reach_of(section, SPRAY).share == pytest.approx(100.0 * by_rays, abs=2.0)


def field(deep: float, behind: float, gap: float, radius: float, cell: float = 0.5) -> float:
    """Return the share of faces that a ball touches by a field of distances flooded from the front [1]."""
    period, front, depth, long = WIDTH + gap, 2 * radius + 4, deep + behind + 3, 30.0
    shape = (round(3 * period / cell), round((front + depth) / cell), round((long + 12) / cell))
    u = (np.arange(shape[0]) + 0.5) * cell - 1.5 * period
    v = front - (np.arange(shape[1]) + 0.5) * cell
    w = (np.arange(shape[2]) + 0.5) * cell - shape[2] * cell / 2
    slat = (np.abs((u + period / 2) % period - period / 2) < WIDTH / 2)[:, None] & ((v < 0) & (v > -deep))[
        None
    ]
    solid: NDArray[np.bool_] = np.repeat(slat[:, :, None], shape[2], 2)
    solid |= (v < -deep - behind)[None, :, None]
    rail = np.broadcast_to((v < 0)[None, :, None] & (np.abs(w) > long / 2)[None, None, :], shape)
    frame = rail.copy()
    frame[[0, -1]] |= (v < 0)[None, :, None]
    solid |= frame
    room, _ = ndimage.label(ndimage.distance_transform_edt(~solid, sampling=cell) >= radius + 0.15 * cell)
    free = room == room[shape[0] // 2, 1, shape[2] // 2]
    near = ndimage.distance_transform_edt(~free, sampling=cell) <= radius + 0.6 * cell
    middle = (np.abs(u) < period / 2)[:, None, None] & (np.abs(w) < 3)[None, None, :]
    hit = total = 0
    for axis, way in ((0, 1), (0, -1), (1, 1), (1, -1)):
        faces = solid & np.roll(~solid, -way, axis) & middle & ~frame
        faces[:, [0, -1]] = False
        total += int(faces.sum())
        hit += int((faces & np.roll(near, -way, axis)).sum())
    return hit / total


@pytest.mark.parametrize("case", [(8, 0, 10), (15, 0, 20), (10, 8, 10), (10, 8, 20)], ids=str)
@pytest.mark.parametrize("radius", [4.0, 9.0])
def test_what_a_round_tool_touches_agrees_with_a_field_of_distances(
    case: tuple[float, float, float], radius: float
) -> None:
    section = slats(*case)
    flat = reach_of(section, Shape("ball", radius, 0.0, 0.3)).share
    assert 100.0 * flat == pytest.approx(100.0 * field(*case, radius), abs=8.0)


@pytest.mark.parametrize("deep", [8.0, 15.0])
def test_a_wider_gap_never_keeps_a_finger_out(deep: float) -> None:
    touched_mm = []
    for gap in (6.0, 10.0, 20.0, 40.0, 80.0):
        section = slats(deep, 0.0, gap)
        outline = outline_of(section)
        floor = outline.faces != "front"
        touched_mm.append(float(outline.weights[touched(section, FINGER) & floor].sum()))
    assert touched_mm == sorted(touched_mm)


@pytest.mark.parametrize(
    "relief", ["slats", "slats open", "flutes", "beads", "carved", "spindles", "louvres", "panel"]
)
def test_a_thinner_stick_reaches_no_less(relief: str) -> None:
    section = section_of(relief)
    assert section is not None
    shares = [reach_of(section, Shape("pad", 8.0, thick, 0.25)).share for thick in (8.0, 4.0, 2.0)]
    assert shares == sorted(shares)


@pytest.mark.parametrize("relief", ["slats", "beads", "louvres"])
def test_everything_twice_as_large_keeps_its_shares(relief: str) -> None:
    small = section_of(relief)
    assert small is not None
    large = section_of(relief, {name: value if name == "tilt" else 2 * value for name, value in small.sizes})
    assert large is not None
    one = reach_of(small, Shape("ball", 6.0, 0.0, 0.2)).share
    two = reach_of(large, Shape("ball", 12.0, 0.0, 0.4)).share
    assert one == pytest.approx(two, abs=0.03)


def test_everything_reaches_all_of_a_plain_face() -> None:
    section = section_of("flat")
    assert section is not None
    assert [reach_of(section, tool).share for tool in TOOLS] == pytest.approx([1.0] * len(TOOLS))
