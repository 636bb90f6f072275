"""Film build against the definitions of the units, abrasives against the P scale."""

import csv
from pathlib import Path

import pytest

from refettle.physics.abrasives import GRAIN_UM, can_follow, grain_um, is_valid_sequence, removed_um
from refettle.physics.film import (
    cut_solids_vol,
    cut_voc_g_l,
    litres_to_buy,
    solids_vol_from_voc,
    spread_m2_per_l,
)

DATA = Path(__file__).parent / "data"
GALLON_L = 3.785411784  # by definition 231 in³
FT2_M2 = 0.09290304  # by definition
MIL_UM = 25.4  # by definition


def grades() -> list[dict[str, str]]:
    with (DATA / "abrasive_grain.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_a_gallon_of_solids_covers_1604_square_feet_one_mil_thick() -> None:
    # 231 in³ spread 0.001 in thick, 144 in² to the square foot: 231000/144 = 1604.17 ft²·mil/gal.
    ft2_per_gallon = spread_m2_per_l(MIL_UM, 1.0) * GALLON_L / FT2_M2
    assert ft2_per_gallon == pytest.approx(231_000 / 144, rel=1e-9)
    assert ft2_per_gallon == pytest.approx(1604.17, abs=0.01)


def test_a_first_coat_on_bare_pine_takes_what_gardner_weighed() -> None:
    # Gardner, Paint Technology and Tests (1911): 591 ft²/gal first, 906 second coat, mean of 38 paints.
    first, second = (GALLON_L / (ft2 * FT2_M2) for ft2 in (591.0, 906.0))
    dry_um = second * 1000.0 * 0.5
    got = litres_to_buy(1.0, dry_um, 0.5, coats=2, transfer_efficiency=1.0, first_coat_factor=first / second)
    assert got == pytest.approx(first + second)
    assert first / second == pytest.approx(1.55, abs=0.03)


# "Film build, coverage, quantity", shellac cut: VS %, VOC g/L (rounded).
@pytest.mark.parametrize(("cut", "solids_pct", "voc"), [(1, 9.1, 718), (2, 16.7, 658), (3, 23.1, 608)])
def test_a_pound_cut_has_the_tabled_solids_and_solvent(cut: int, solids_pct: float, voc: float) -> None:
    assert 100 * cut_solids_vol(cut) == pytest.approx(solids_pct, abs=0.05)
    assert cut_voc_g_l(cut) == pytest.approx(voc, abs=0.6)


# US national ceilings and the solids they leave ("Film build, coverage, quantity").
@pytest.mark.parametrize(("voc", "solvent", "solids"), [(680, 860, 0.21), (450, 780, 0.42)])
def test_a_solvent_ceiling_leaves_the_tabled_solids(voc: float, solvent: float, solids: float) -> None:
    assert solids_vol_from_voc(voc, solvent) == pytest.approx(solids, abs=0.005)


@pytest.mark.parametrize("row", grades(), ids=lambda row: str(row["grade"]))
def test_every_p_grade_has_the_grain_of_iso_6344(row: dict[str, str]) -> None:
    assert grain_um(int(row["grade"].removeprefix("P"))) == pytest.approx(float(row["average_particle_um"]))


def test_a_finer_p_grade_never_has_a_coarser_grain() -> None:
    grains = [GRAIN_UM[grade] for grade in sorted(GRAIN_UM)]
    assert grains == sorted(grains, reverse=True)
    assert len(set(grains)) == len(grains)


def test_p100_to_p180_by_way_of_p150_takes_a_quarter_millimetre() -> None:
    # "Sanding": start P100 (0.05 mm levelling) → 150 → 180 removes at least 0.05 + 0.15 + 0.05 mm.
    assert is_valid_sequence((100, 150, 180))
    assert removed_um((100, 150, 180), 50.0) == pytest.approx(250.0)


def test_a_finer_grit_must_be_able_to_take_out_the_scratch_before_it() -> None:
    # "Sanding" table: P180 may take 0.10 mm, P100 scratches need 0.15 mm.
    assert can_follow(120, 180)
    assert not can_follow(100, 180)
    assert not can_follow(60, 100)
