"""Benches, chairs and beds, in sizes that one can work out by hand."""

from typing import Any

import pytest

from geometry_forms import USUAL_SIZES
from refettle.geometry import Built, Face, Problem, build_form


def built(form: str, **params: Any) -> Built:  # noqa: ANN401 – lengths, counts and words alike
    answer = build_form(form, {**USUAL_SIZES[form], **params})
    assert isinstance(answer, Built), answer
    return answer


def faces(form: str, **params: Any) -> dict[str, Face]:  # noqa: ANN401
    return {face.name: face for face in built(form, **params).faces}


def problems(form: str, **params: Any) -> dict[str, Problem]:  # noqa: ANN401
    answer = build_form(form, {**USUAL_SIZES[form], **params})
    assert isinstance(answer, tuple)
    return {problem.param: problem for problem in answer}


def test_a_bench_on_legs_has_a_seat_of_one_board():
    found = faces("bench", seat=25, overhang=20, leg=40, apron=80, apron_thickness=20)
    assert found["seat"].area_m2 == pytest.approx(1.2 * 0.35 + 2 * (1.2 + 0.35) * 0.025)
    # aprons 1200 - 40 - 80 = 1080 and 350 - 40 - 80 = 230 long
    covered = 4 * 0.04**2 + 2 * (1.08 + 0.23) * 0.02
    assert found["seat/underside"].area_m2 == pytest.approx(1.2 * 0.35 - covered)
    assert found["aprons/outside"].area_m2 == pytest.approx(2 * (1.08 + 0.23) * (0.08 + 0.02))


def test_boards_of_a_seat_show_their_edges_in_the_gaps():
    found = faces("bench", seat=25, seat_boards=3, seat_gap=10)
    # (350 - 20)/3 = 110 mm wide
    assert found["seat"].area_m2 == pytest.approx(3 * (1.2 * 0.11 + 2 * (1.2 + 0.11) * 0.025))


def test_a_bench_on_board_ends_has_a_rail_between_them():
    found = faces("bench", support="ends", seat=25, board=25, overhang=20, end_rail=100)
    # between the ends 1200 - 40 - 50 = 1110
    assert found["end rail"].area_m2 == pytest.approx(1.11 * (2 * 0.1 + 0.025))
    # an end of 310 by 425 with the rail's end against it
    assert found["end.left"].area_m2 == pytest.approx(2 * 0.31 * 0.425 + 2 * 0.025 * 0.425 - 0.1 * 0.025)
    assert problems("bench", support="ends", end_rail=400)["end_rail"].what == (
        "the height below the rail is 25 mm"
    )
    assert problems("bench", seat_boards=12, seat_gap=20)["seat_boards"].what == (
        "12 boards of the seat are 10.8 mm wide"
    )


def test_the_seat_of_a_chair_is_notched_round_the_back_posts():
    found = faces("chair", leg=40, seat=20, seat_height=450, apron=60, apron_thickness=20)
    # 450 by 480 less two posts of 40 by 40; edges all round but where the posts stand
    edges = 0.02 * (0.45 + 2 * 0.44 + 0.37)
    assert found["seat"].area_m2 == pytest.approx(0.45 * 0.48 - 2 * 0.04**2 + edges)
    # aprons 370 and 400 mm long between the legs lie under it, and the two front legs
    covered = 2 * (0.37 + 0.40) * 0.02 + 2 * 0.04**2
    assert found["seat/underside"].area_m2 == pytest.approx(0.45 * 0.48 - 2 * 0.04**2 - covered)
    assert found["seat"].orientation == "up"


def test_spindles_stand_between_two_rails():
    found = faces(
        "chair", leg=40, seat_height=450, crest=60, back_lift=60, back_rail=30, back_thickness=18, spindles=5, spindle=16
    )  # fmt: skip
    # between 540 and 840 mm: 300 mm, swelling from 11.2 to 16 mm and back
    slant = (150.0**2 + 2.4**2) ** 0.5
    round_mm2 = 2 * 3.141592653589793 * (5.6 + 8.0) * slant
    assert found["spindles"].area_m2 == pytest.approx(5 * round_mm2 * 1e-6)
    assert found["spindles"].relief == "turned"
    # both rails 370 mm long, 18 mm thick, less ten spindle ends
    ends = 10 * 3.141592653589793 * 0.0056**2
    assert found["back rails"].area_m2 == pytest.approx(0.37 * 2 * (0.06 + 0.03 + 2 * 0.018) - ends)


def test_a_ladder_back_has_slats_and_a_splat_back_one_board():
    ladder = faces("chair", leg=40, back_kind="ladder", back_slats=4, crest=50, back_thickness=15)
    assert ladder["back slats"].area_m2 == pytest.approx(4 * 0.37 * 2 * (0.05 + 0.015))
    splat = faces(
        "chair", leg=40, back_kind="splat", splat=120, back_thickness=18, crest=60, back_lift=60, back_rail=30
    )
    assert splat["splat"].area_m2 == pytest.approx(2 * 0.3 * (0.12 + 0.018))
    assert "spindles" not in splat


def test_a_drop_in_seat_is_out_for_the_work():
    chair = built("chair", seat_kind="drop-in")
    assert [body.name for body in chair.taken_out] == ["seat pad"]
    assert not {"seat", "seat pad", "seat/underside"} & {face.name for face in chair.faces}
    assert built("chair").taken_out == ()


def test_a_chair_says_what_does_not_fit():
    assert problems("chair", spindles=15, spindle=18)["spindles"].what == (
        "15 spindles leave 5.62 mm between them"
    )
    assert problems("chair", back_kind="ladder", back_slats=10)["back_slats"].what == (
        "10 slats leave 0 mm between them"
    )
    assert problems("chair", seat_height=850)["seat_height"].what == (
        "a seat at 850 mm leaves 23 mm between the back's rails"
    )
    assert problems("chair", back_kind="splat", splat=500)["splat"].what == (
        "a splat of 500 mm does not fit between posts 360 mm apart"
    )


def test_a_bed_end_has_two_posts_and_a_board_between_them():
    found = faces("bed_end", post=60, lift=200, end_thickness=22)
    # board 1000 - 120 = 880 by 900 - 200 = 700; upper and lower edge count to its outside
    assert found["end/outside"].area_m2 == pytest.approx(0.88 * (0.7 + 2 * 0.022))
    assert found["end/inside"].area_m2 == pytest.approx(0.88 * 0.7)
    assert found["end/posts"].area_m2 == pytest.approx(
        2 * (2 * (0.06 + 0.045) * 0.9 + 0.06 * 0.045) - 2 * 0.7 * 0.022
    )
    assert found["feet"].hidden


def test_slats_of_a_bed_end_stand_upright_and_open():
    found = faces("bed_end", end_kind="slatted")
    assert found["end/outside"].relief == found["end/inside"].relief == "slats open"
    assert faces("bed", end_kind="frame-and-panel")["head/inside"].relief == "panel"


def test_side_rails_join_the_ends_of_a_bed():
    found = faces(
        "bed", post=60, post_thickness=45, side_rail=140, side_rail_thickness=25, side_rail_height=220, foot_height=650
    )  # fmt: skip
    # 2050 - 90 = 1960 between the posts; edges count to the outside
    assert found["side rail.left/inside"].area_m2 == pytest.approx(1.96 * 0.14)
    assert found["side rail.left/outside"].area_m2 == pytest.approx(1.96 * (0.14 + 2 * 0.025))
    # the head end is boarded from 162 to 1000 mm, the foot end to 650
    assert found["head/inside"].area_m2 == pytest.approx(0.88 * (0.838 + 2 * 0.022))
    assert found["foot/inside"].area_m2 == pytest.approx(0.88 * 0.488)


def test_a_bed_says_what_does_not_fit():
    assert problems("bed", foot_height=1200)["foot_height"].what == (
        "a foot end of 1200 mm is higher than the head end"
    )
    assert problems("bed", side_rail_height=600)["side_rail_height"].what == (
        "side rails up to 740 mm reach over the foot end"
    )
    assert problems("bed_end", end_thickness=60)["end_thickness"].what == (
        "a filling of 60 mm is thicker than posts of 45 mm"
    )
    assert problems("bed_end", width=500, post=200)["post"].what == (
        "posts of 200 mm leave 100 mm between them"
    )


def test_a_cot_has_bars_on_both_sides_between_its_posts():
    found = faces("cot", post=40, post_thickness=40, end_kind="flat", end_thickness=20, lift=200)
    # end: 640 - 80 = 560 by 900 - 200 = 700; the head looks to the rear, its edges count inside
    assert found["foot/inside"].area_m2 == pytest.approx(0.56 * 0.7)
    assert found["head/outside"].area_m2 == pytest.approx(0.56 * 0.7)
    # four posts of 900 mm; an end and a side, 700 by 20 mm, lie against each
    posts = found["foot/posts"].area_m2 + found["head/posts"].area_m2
    assert posts == pytest.approx(4 * (4 * 0.04 * 0.9 + 0.04**2 - 2 * 0.7 * 0.02))
    assert found["side.left/outside"].relief == "slats open"
    assert found["side.left/outside"].area_m2 == pytest.approx(found["side.right/outside"].area_m2)
