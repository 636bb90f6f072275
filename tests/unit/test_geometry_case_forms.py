"""Cases with doors, drawers and shelves beside each other, in sizes that one can work out by hand."""

import math
from typing import Any

import pytest

from geometry_forms import USUAL_SIZES
from refettle.geometry import Built, Face, Problem, build_form


def faces(form: str, **params: Any) -> dict[str, Face]:  # noqa: ANN401 – lengths, counts and words alike
    answer = build_form(form, {**USUAL_SIZES[form], **params})
    assert isinstance(answer, Built), answer
    return {face.name: face for face in answer.faces}


def problems(form: str, **params: Any) -> dict[str, Problem]:  # noqa: ANN401
    answer = build_form(form, {**USUAL_SIZES[form], **params})
    assert isinstance(answer, tuple)
    return {problem.param: problem for problem in answer}


def test_a_wardrobe_hangs_clothes_from_a_round_rail_below_its_shelf():
    found = faces("wardrobe", doors=2, board=20, overhang=10, back=6, door=20, play=2, shelf=18)
    # opening 1000 - 2·30 = 940 wide, 1900 - 60 - 20 - 20 = 1800 high; doors (940 - 3·2)/2 = 467 by 1796
    assert found["door.left/inside"].area_m2 == pytest.approx(0.467 * 1.796)
    # the shelf begins behind the doors: 10 + 20 + 2 = 32 to 560 - 6 = 554; rear and ends are covered
    assert found["shelf.1"].area_m2 == pytest.approx(0.94 * (2 * 0.522 + 0.018))
    assert found["hanging rail"].area_m2 == pytest.approx(3.141592653589793 * 0.030 * 0.940)
    assert found["hanging rail"].relief == "turned"


def test_drawers_below_a_wardrobe_carry_its_floor():
    found = faces(
        "wardrobe", doors=2, drawers=1, drawer_height=180, rail_thickness=18, play=2, drawer_front=20
    )
    assert found["drawer.1/front"].area_m2 == pytest.approx(0.936 * 0.176 + 2 * (0.936 + 0.176) * 0.02)
    # doors lose the drawer's opening and the floor over it: 1800 - 180 - 18 - 4 = 1598 high
    assert found["door.left/inside"].area_m2 == pytest.approx(0.467 * 1.598)
    assert found["floor"].area_m2 == pytest.approx(0.94 * 0.544)
    assert found["rails"].area_m2 == pytest.approx(0.94 * (0.020 + 0.018))
    assert found["bottom/inside"].running
    assert not faces("wardrobe")["bottom/inside"].running


def test_a_wardrobe_says_what_leaves_no_room_to_hang_anything():
    found = problems("wardrobe", drawers=4, drawer_height=400)
    assert found["drawers"].what == "shelves and drawers leave 0 mm of hanging space"
    assert problems("wardrobe", width=300, doors=6)["doors"].what == "6 doors are 37.7 mm wide each"
    assert problems("wardrobe", drawer_height=200)["drawer_height"].what == (
        "drawer_height has no meaning where drawers is 0"
    )


def test_both_sides_of_every_shelf_of_a_bookcase_are_seen():
    found = faces("bookcase", bays=1, shelves=4, shelf=18, board=20, overhang=10, back=6)
    # 900 - 2·30 = 840 between the sides, 10 to 300 - 6 deep: 284; the front edge counts to the upper side
    assert found["shelf.1"].area_m2 == pytest.approx(0.84 * (0.284 + 0.018))
    assert found["shelf.4/underside"].area_m2 == pytest.approx(0.84 * 0.284)
    assert found["shelf.1"].orientation == "up"
    # the back between plinth, bottom and top: 1900 less the shelves that lie against it
    assert found["back/inside"].area_m2 == pytest.approx(0.84 * (1.7 - 4 * 0.018))


def test_uprights_part_a_wide_bookcase_into_bays():
    found = faces("bookcase", width=1840, bays=2, shelves=1)
    # one upright of 1700 by 284 with a shelf against either side
    assert found["upright.1"].area_m2 == pytest.approx(2 * 0.284 * (1.7 - 0.018))
    assert {"shelf.1", "shelf.2"} <= set(found)
    assert problems("bookcase", width=400, bays=6)["bays"].what == "6 bays are 40 mm wide each"
    assert problems("bookcase", height=500, shelves=12)["shelves"].what == (
        "12 shelves leave less than 40 mm between them"
    )


def test_a_sideboard_has_drawers_beside_its_doors():
    found = faces("sideboard", bays=3, drawers=4, board=20, overhang=10, play=2, shelves=1, shelf=18)
    # opening 1600 - 2·30 = 1540, bays (1540 - 2·20)/3 = 500; 850 - 60 - 20 - 20 = 750 high
    assert found["door.1/inside"].area_m2 == pytest.approx(0.496 * 0.746)
    # drawers (750 - 3·18)/4 = 174 less the play
    wide, tall = 0.496, 0.170
    assert found["drawer.1/front"].area_m2 == pytest.approx(wide * tall + 2 * (wide + tall) * 0.02)
    # edges in front: the bottom, two uprights of 750 mm, three rails
    assert found["rails"].area_m2 == pytest.approx(1.54 * 0.02 + 2 * 0.75 * 0.02 + 3 * 0.5 * 0.018)
    assert {"door.2/outside", "drawer.4/front", "shelf.2"} <= set(found)
    assert "door.3/outside" not in found
    assert "drawer.5/front" not in found


def test_bays_with_drawers_stand_where_they_are_wanted():
    left = build_form("sideboard", {**USUAL_SIZES["sideboard"], "bays": 3, "drawers_at": "left"})
    assert isinstance(left, Built)
    front = next(body for body in left.bodies if body.name == "drawer.1 front")
    assert min(point[0] for cell in front.cells for point in cell.vertices) == pytest.approx(32.0)


def test_a_sideboard_says_what_does_not_fit():
    assert (
        problems("sideboard", drawer_bays=5)["drawer_bays"].what == "5 bays with drawers are more than 3 bays"
    )
    assert problems("sideboard", drawers=10)["drawers"].what == (
        "a row 58.8 mm high leaves no room for drawers"
    )
    assert problems("sideboard", width=600, bays=8)["bays"].what == "8 bays are 50 mm wide each"


def test_a_desk_stands_on_pedestals_with_a_knee_space_between_them():
    found = faces("desk", top=25, board=20, overhang=10, pedestal=400, back=12, drawers=3, foot_space=50)
    # 1400 - 20 - 800 = 580 for knees; the board behind them from 50 to 735
    assert found["knee back"].area_m2 == pytest.approx(0.58 * 0.685 + 0.58 * 0.012)
    assert found["top"].area_m2 == pytest.approx(1.4 * 0.7 + 2 * (1.4 + 0.7) * 0.025)
    # the top's underside less four sides, two backs and the knee back
    covered = 4 * 0.02 * 0.69 + 2 * 0.36 * 0.012 + 0.58 * 0.012
    assert found["top/underside"].area_m2 == pytest.approx(1.4 * 0.7 - covered)
    # drawers between sides of 360 mm: 735 - 70 = 665 less two rails of 18: 209.67 each
    wide, tall = 0.356, (0.665 - 0.036) / 3 - 0.004
    assert found["drawer.6/front"].area_m2 == pytest.approx(wide * tall + 2 * (wide + tall) * 0.02)


def test_a_desk_with_one_pedestal_has_an_end_on_the_left_and_may_have_a_drawer_over_the_knees():
    found = faces("desk", pedestals=1, knee_drawer="yes", drawers=3)
    assert {"end", "drawer.4/front"} <= set(found)
    assert "pedestal.left/outside" not in found
    assert "drawer.5/front" not in found
    assert problems("desk", pedestal=700)["pedestal"].what == "pedestals of 700 mm leave 0 mm for knees"


def test_stretchers_join_the_legs_of_a_table_low_down():
    found = faces(
        "table",
        leg=60,
        overhang=40,
        stretcher="box",
        stretcher_width=40,
        stretcher_thickness=20,
        stretcher_height=120,
    )
    # 1400 - 200 = 1200 and 800 - 200 = 600 mm between the legs; ends are covered
    assert found["stretchers"].area_m2 == pytest.approx(2 * (1.2 + 0.6) * 2 * (0.04 + 0.02))
    # a leg of 725 mm less two apron ends of 100 by 22 and two stretcher ends
    assert found["leg.1"].area_m2 == pytest.approx(4 * 0.06 * 0.725 - 2 * 0.1 * 0.022 - 2 * 0.04 * 0.02)
    answer = problems("table", stretcher="box", leg_shape="tapered")
    assert answer["stretcher"].what == "stretchers join square or turned legs here, not tapered ones"


def test_a_bedside_cabinet_has_a_drawer_over_its_door():
    found = faces("bedside", board=20, overhang=10, play=2, drawer_height=120, rail_thickness=18, plinth=60)
    # opening 450 - 2·30 = 390 wide, 600 - 60 - 20 - 20 = 500 high, below the drawer 500 - 120 - 18 = 362
    assert found["door/inside"].area_m2 == pytest.approx(0.386 * 0.358)
    wide, tall = 0.386, 0.116
    assert found["drawer.1/front"].area_m2 == pytest.approx(wide * tall + 2 * (wide + tall) * 0.02)
    # the board that carries the drawer: 10 to 400 - 6
    assert found["drawer board"].area_m2 == pytest.approx(0.39 * 0.384)
    assert found["drawer board"].running
    assert "door/inside" not in faces("bedside", below="open")


def test_a_bedside_table_has_a_drawer_between_its_front_legs():
    found = faces("bedside", kind="table", top=20, overhang=10, leg=40, apron=110, rail_thickness=18, play=2)
    # 450 - 20 - 80 = 350 between the legs, the drawer's opening 110 - 18 = 92 high
    wide, tall = 0.346, 0.088
    assert found["drawer.1/front"].area_m2 == pytest.approx(wide * tall + 2 * (wide + tall) * 0.02)
    # the rail below it, as deep as the legs: front and lower side
    assert found["rails"].area_m2 == pytest.approx(0.35 * (0.018 + 0.04))
    assert "side.left/outside" not in found
    assert problems("bedside", kind="table", doors=1)["doors"].what == "a bedside has no doors"
    assert problems("bedside", kind="table", plinth=50)["plinth"].what == (
        "plinth has no meaning where kind is table"
    )


def test_a_bedside_says_what_leaves_no_room():
    assert problems("bedside", drawers=4)["drawers"].what == "the drawers leave 0 mm below them"
    assert problems("bedside", kind="table", apron=60)["apron"].what == (
        "a row 42 mm high leaves no room for drawers"
    )


def test_a_mirror_swings_between_posts_on_a_dressing_chest():
    answer = build_form(
        "dressing_chest",
        {
            **USUAL_SIZES["dressing_chest"],
            "chest_height": 800,
            "mirror_width": 500,
            "mirror_height": 600,
            "moulding": 40,
            "mirror_thickness": 20,
            "mirror_post": 30,
        },
    )
    assert isinstance(answer, Built)
    found = {face.name: face for face in answer.faces}
    # posts of 700 mm over the chest, their feet on its top
    assert found["mirror posts"].area_m2 == pytest.approx(2 * (4 * 0.03 * 0.7 + 0.03**2))
    assert found["mirror frame/front"].area_m2 == pytest.approx(0.5 * 0.6 - 0.42 * 0.52)
    chest = {face.name: face for face in chest_alone().faces}
    assert found["top"].area_m2 == pytest.approx(chest["top"].area_m2 - 2 * 0.03**2)
    assert found["drawer.1/front"].area_m2 == pytest.approx(chest["drawer.1/front"].area_m2)
    assert [body.name for body in answer.taken_out] == ["mirror"]


def chest_alone() -> Built:
    chest = build_form("chest_of_drawers", {**USUAL_SIZES["dressing_chest"], "height": 800})
    assert isinstance(chest, Built)
    return chest


def test_a_dressing_chest_says_what_does_not_fit():
    assert problems("dressing_chest", mirror_width=980)["mirror_width"].what == (
        "mirror and posts are 1052 mm wide, wider than the top"
    )
    assert problems("dressing_chest", chest_height=1400, mirror_height=300)["mirror_height"].what == (
        "a mirror of 300 mm does not fit over the chest: 100 mm"
    )
    assert "drawers" in problems("dressing_chest", drawers=12)


def test_a_blanket_box_has_a_lid_over_drawers():
    found = faces(
        "blanket_box", board=20, lid=20, overhang=12, bottom=12, plinth=60, drawers=2, drawer_height=150, play=2
    )  # fmt: skip
    # ends 12 mm in: 1150 - 24 - 40 = 1086 between them; bays (1086 - 20)/2 = 533
    wide, tall = 0.529, 0.146
    assert found["drawer.1/front"].area_m2 == pytest.approx(wide * tall + 2 * (wide + tall) * 0.02)
    assert found["lid/inside"].area_m2 == pytest.approx(1.15 * 0.48)
    # box from 60 + 12 + 150 = 222 to 700 - 22 = 678; its bottom covers 12 mm of the front inside
    assert found["front/outside"].area_m2 == pytest.approx(1.086 * (0.456 + 0.020))
    assert found["front/inside"].area_m2 == pytest.approx(1.086 * (0.456 - 0.012))
    # 480 - 12 - 40 = 428 deep
    assert found["bottom/inside"].area_m2 == pytest.approx(1.086 * 0.428)
    assert found["drawer floor"].running
    # 678 - (60 + 12 + 400) - 12 = 194 mm are enough; under a height of 550 mm 44 mm are not
    assert problems("blanket_box", height=550, drawer_height=400)["drawer_height"].what == (
        "plinth, drawers and lid leave 44 mm for the box"
    )


SWELLED = {"width": 1000, "depth": 500, "height": 850, "drawers": 3, "overhang": 10, "board": 20}


def test_a_bowed_front_counts_the_length_of_its_arc():
    curved = faces("chest_of_drawers", **SWELLED, front_shape="bowed", bow=60)
    straight = faces("chest_of_drawers", **SWELLED)
    # the arc over 940 mm between the sides that rises 60 mm; a drawer front covers 936 mm of its chord
    radius = (940.0**2 / 4.0 + 60.0**2) / (2.0 * 60.0)
    arc = 2.0 * radius * math.asin(470.0 / radius) / 940.0
    flat, thick = straight["drawer.2/front"].area_m2 * 1e6, 20.0
    high = (flat - 2.0 * thick * 936.0) / (936.0 + 2.0 * thick)
    # edges of even thickness are measured across, not along the slope: as wide as before
    ends = 2.0 * thick * high
    wanted = 936.0 * arc * high + 2.0 * thick * 936.0 + ends
    assert curved["drawer.2/front"].area_m2 * 1e6 == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize("shape", ["bowed", "serpentine"])
def test_behind_a_swelled_front_everything_has_the_surfaces_of_a_straight_chest(shape: str):
    curved = faces("chest_of_drawers", **SWELLED, front_shape=shape, short_drawers=2)
    straight = faces("chest_of_drawers", **SWELLED, short_drawers=2)
    assert list(curved) == list(straight)
    for smaller in ("side.left/outside", "top", "top/inside"):
        assert curved[smaller].area_m2 < straight[smaller].area_m2
    assert curved["drawer.3/front"].area_m2 > straight["drawer.3/front"].area_m2


def test_a_chest_says_when_its_front_swells_too_much():
    found = problems("chest_of_drawers", **{**SWELLED, "depth": 250}, front_shape="bowed", bow=150)
    assert set(found) == {"bow"}
