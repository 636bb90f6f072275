"""Areas, volumes and centres worked by hand."""

import math

import pytest

from refettle.geometry.cells import (
    Index,
    PartBody,
    Ring,
    Side,
    Skin,
    box,
    box_corners,
    cut_box,
    hexahedron,
    turned,
)
from refettle.geometry.measure import (
    area_mm2,
    centre_mm,
    centre_of_gravity_mm,
    contacts,
    exposed_areas,
    exposed_zones,
    mass_kg,
    volume_mm3,
)


def block(name: str, x: tuple[float, float], y: tuple[float, float], z: tuple[float, float]) -> PartBody:
    return PartBody(name=name, cells=(box(x, y, z, name),))


BOARD = block("board", (0, 100), (0, 200), (0, 20))


def test_a_board_of_100_by_200_by_20_has_52000_mm2_and_400_cm3():
    # 2 (100·200 + 100·20 + 200·20) = 52 000 mm²; 100·200·20 = 400 000 mm³
    assert area_mm2(BOARD) == 52_000.0
    assert volume_mm3(BOARD) == pytest.approx(400_000.0, rel=1e-14)
    assert centre_mm(BOARD) == pytest.approx((50.0, 100.0, 10.0), rel=1e-14)


def test_a_leg_standing_on_a_board_hides_its_foot_twice():
    leg = block("leg", (10, 40), (10, 40), (20, 120))
    # 30·30 = 900 mm² are lost on both; leg 2·900 + 4·30·100 = 13 800 mm²
    assert exposed_areas((BOARD, leg)) == {
        "board": pytest.approx(51_100e-6),
        "leg": pytest.approx(12_900e-6),
    }


def test_boards_that_meet_at_a_corner_or_an_edge_hide_nothing():
    edge = block("edge", (100, 150), (0, 200), (20, 40))
    assert exposed_areas((BOARD, edge))["board"] == pytest.approx(52_000e-6, rel=1e-15)
    assert contacts((BOARD, edge)) == ()


def test_a_gap_of_a_tenth_of_a_millimetre_hides_nothing():
    leg = block("leg", (10, 40), (10, 40), (20.1, 120))
    assert contacts((BOARD, leg)) == ()


def test_faces_that_look_the_same_way_do_not_cover_each_other():
    beside = block("beside", (0, 100), (200, 300), (0, 20))
    # only the joint of 100·20 mm counts; tops lie in one plane and stay open
    assert [contact.area_mm2 for contact in contacts((BOARD, beside))] == [2_000.0]


def test_a_surface_covered_all_over_is_left_out():
    cells = (box((0, 10), (0, 10), (20, 30), "rest", {"bottom": "sole"}),)
    assert "sole" not in exposed_areas((BOARD, PartBody(name="cube", cells=cells)))


def test_a_tapered_leg_has_the_volume_of_a_truncated_pyramid():
    foot = box_corners((10.0, 30.0), (10.0, 30.0), (0.0, 0.0))[:4]
    head = box_corners((0.0, 40.0), (0.0, 40.0), (300.0, 300.0))[:4]
    leg = PartBody(name="leg", cells=(hexahedron((*foot, *head), "leg"),))
    # h/3 (a² + ab + b²) = 100 (400 + 800 + 1600); sides 4 · (20+40)/2 · hypot(300, 10)
    assert volume_mm3(leg) == pytest.approx(280_000.0, rel=1e-14)
    assert area_mm2(leg) == pytest.approx(400 + 1600 + 120 * math.hypot(300, 10), rel=1e-14)
    # centre of a frustum over its larger end: h/4 (a² + 2ab + 3b²)/(a² + ab + b²), b the small end
    assert centre_mm(leg)[2] == pytest.approx(300 - 75 * (1600 + 2 * 800 + 3 * 400) / 2800, rel=1e-14)


def test_slanted_faces_that_meet_hide_each_other():
    wedge = (
        (0, 0, 0),
        (60, 0, 0),
        (60, 50, 0),
        (0, 50, 0),
        (0, 0, 30),
        (20, 0, 30),
        (20, 50, 30),
        (0, 50, 30),
    )
    mirror = (
        (60, 10, 0),
        (90, 10, 0),
        (90, 30, 0),
        (60, 30, 0),
        (20, 10, 30),
        (90, 10, 30),
        (90, 30, 30),
        (20, 30, 30),
    )
    parts = tuple(
        PartBody(
            name=name, cells=(hexahedron(tuple((float(x), float(y), float(z)) for x, y, z in points), name),)
        )
        for name, points in (("wedge", wedge), ("mirror", mirror))
    )
    # the slope is hypot(40, 30) = 50 long; the mirror wedge covers 20 mm of its width
    assert [contact.area_mm2 for contact in contacts(parts)] == [pytest.approx(1_000.0, rel=1e-12)]


def test_a_turned_leg_takes_its_area_from_the_frustum_formula():
    rings = (Ring(0.0, 10.0), Ring(40.0, 40.0, "recess"), Ring(80.0, 40.0))
    leg = PartBody(name="leg", cells=turned((0.0, 0.0), rings, "leg", foot="feet", head="head"))
    zones = exposed_zones((leg,))
    # frustum: pi (10 + 40) hypot(40, 30) = 2500 pi; cylinder 2 pi 40·40 = 3200 pi
    assert zones["leg"] == {
        "edge": pytest.approx(2500 * math.pi * 1e-6, rel=1e-12),
        "recess": pytest.approx(3200 * math.pi * 1e-6, rel=1e-12),
    }
    assert zones["feet"]["flat"] == pytest.approx(100 * math.pi * 1e-6, rel=1e-12)
    # pi h/3 (r0² + r0 r1 + r1²) = 28 000 pi, and pi 40² 40 = 64 000 pi
    assert volume_mm3(leg) == pytest.approx(92_000 * math.pi, rel=1e-12)


def test_a_round_leg_under_a_square_block_leaves_the_corners_open():
    leg = turned((20.0, 20.0), (Ring(0.0, 10.0), Ring(50.0, 15.0)), "leg", foot="feet", head="leg")
    body = PartBody(name="leg", cells=(box((0, 40), (0, 40), (50, 90), "block"), *leg))
    # six sides of 40·40, the lower less pi 15²
    assert exposed_areas((body,))["block"] == pytest.approx(
        (2 * 1600 + 4 * 1600 - 225 * math.pi) * 1e-6, rel=1e-12
    )


def test_a_box_cut_in_cells_shows_no_face_between_them():
    def skin(side: Side, index: Index) -> Skin:
        return Skin("low" if index[2] == 0 and side != "bottom" else "high")

    cells = cut_box((0.0, 10.0, 30.0), (0.0, 10.0), (0.0, 5.0, 10.0), skin, lambda index: index != (0, 0, 1))
    body = PartBody(name="step", cells=cells)
    # a step 10 deep: 30·5 below, 20·5 on top of its right end; two profiles and the way round them
    assert volume_mm3(body) == pytest.approx(2_500.0)
    assert area_mm2(body) == pytest.approx(2 * 250 + (30 + 10 + 20 + 5 + 10 + 5) * 10)


def test_cuts_that_do_not_rise_are_refused():
    with pytest.raises(ValueError, match="do not rise"):
        box((0, 10), (5, 5), (0, 10), "board")


def test_the_centre_of_gravity_lies_nearer_the_heavier_part():
    heavy = block("heavy", (0, 100), (0, 100), (0, 100))
    light = block("light", (100, 200), (0, 100), (0, 100))
    weights = {"heavy": 900.0, "light": 300.0}
    # 0.9 kg at 50 mm and 0.3 kg at 150 mm
    assert mass_kg((heavy, light), lambda body: weights[body.name]) == pytest.approx(1.2)
    centre = centre_of_gravity_mm((heavy, light), lambda body: weights[body.name])
    assert centre == (pytest.approx(75.0), pytest.approx(50.0), pytest.approx(50.0))
