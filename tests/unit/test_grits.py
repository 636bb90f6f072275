"""Which grit may follow which, and where to stop before the next coat."""

import pytest

from refettle.physics.abrasives import (
    NEXT_COATS,
    between_coats_grit_p,
    can_follow,
    finest_grit_p,
    is_valid_sequence,
    removed_um,
    usual_grit_p,
)


def test_a_coarser_or_equal_grit_never_follows() -> None:
    assert not can_follow(150, 120)
    assert not can_follow(150, 150)


def test_skipping_one_usual_grit_is_allowed_and_two_are_not() -> None:
    assert can_follow(120, 180)
    assert not can_follow(120, 220)


def test_a_single_grit_is_a_sequence_and_takes_its_levelling_only() -> None:
    assert is_valid_sequence((180,))
    assert removed_um((180,), 20.0) == 20.0


def test_starting_coarser_costs_more_wood() -> None:
    assert removed_um((80, 120, 180)) > removed_um((120, 180)) > removed_um((150, 180))


@pytest.mark.parametrize("next_coat", NEXT_COATS)
def test_the_usual_grit_is_never_finer_than_the_finest(next_coat: str) -> None:
    assert usual_grit_p(next_coat) <= finest_grit_p(next_coat)


def test_tight_wood_wants_a_finer_grit_before_a_pigment_stain_and_only_there() -> None:
    assert usual_grit_p("pigment stain") == 150
    assert usual_grit_p("pigment stain", tight=True) == 180
    assert usual_grit_p("paint", tight=True) == usual_grit_p("paint")


def test_between_coats_the_grit_goes_by_how_the_film_hardens() -> None:
    assert between_coats_grit_p("oxidative") == 240
    assert between_coats_grit_p("waterborne") == 320
    assert between_coats_grit_p("evaporative") == 400
