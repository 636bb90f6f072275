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
