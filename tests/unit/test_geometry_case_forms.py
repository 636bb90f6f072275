"""Cases with doors, drawers and shelves beside each other, in sizes that one can work out by hand."""

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
