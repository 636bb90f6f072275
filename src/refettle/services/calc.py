"""Small sums of the bench, each with its formula and where that is from."""

from dataclasses import dataclass

from refettle.domain.air import Air
from refettle.physics.abrasives import GRAIN_UM, can_follow, removed_um
from refettle.physics.air import dew_margin_k, dew_point_c
from refettle.physics.film import dry_film_um, litres_to_buy, spread_m2_per_l
from refettle.physics.moisture import emc_pct, settling_days

DEW_K = 3.0
_SETTLED = 0.9
_DIFFUSIVITY_M2_S = (2e-10, 3e-11)
"""Water through wood across the grain in a room, light and heavy woods [m²/s]: memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sum:
    """
    One answer.

    Attributes
    ----------
    values
        Names that end in their unit, with their numbers.
    lines
        The answer in words.
    formula
        By which it was worked out.
    source
        Where that is from.
    """

    values: tuple[tuple[str, float], ...]
    lines: tuple[str, ...]
    formula: str
    source: str


def wood_moisture(air: Air) -> Sum:
    """Return the moisture that wood settles to in an air."""
    pct = emc_pct(air.temp_c, air.rh)
    return Sum(
        values=(("moisture_pct", pct),),
        lines=(
            f"Wood settles to about {pct:.1f} % of its dry weight, woods differing by a point either way.",
            'A board from a damp shed takes weeks to get there: calc settle "20 mm".',
        ),
        formula="Hailwood–Horrobin with the constants for °C, Eq. (4-5)",
        source="Wood Handbook (FPL-GTR-282, 2021), ch. 4",
    )


def settle(thickness_mm: float) -> Sum:
    """Return how long a board [mm] takes to come to the moisture of a room it was brought into."""
    quick, slow = (settling_days(thickness_mm, _SETTLED, one) for one in _DIFFUSIVITY_M2_S)
    return Sum(
        values=(("days_low_d", quick), ("days_high_d", slow)),
        lines=(
            (
                f"A board of {thickness_mm:g} mm comes nine tenths of the way in about {_time_words(quick)} to "
                f"{_time_words(slow)}, light woods sooner, both faces open to the air."
            ),
            "A film on it, or one face shut away, makes that several times as long. Glue, fit and coat it after.",
        ),
        formula="1 − share = 8/π² · exp(−π²·D·t/L²), D 3e-11 to 2e-10 m²/s",
        source="slab with both faces open (Crank, The Mathematics of Diffusion: memory); D across the grain: memory",
    )


def _time_words(days: float) -> str:
    """Return a time in days or weeks."""
    if days < 1.0:
        return f"{24 * days:.0f} h"
    return f"{days:.0f} days" if days < 14 else f"{days / 7:.0f} weeks"


def dew(air: Air) -> Sum:
    """Return the dew point of an air, and how far a piece as warm as it is from dew."""
    point = dew_point_c(air.temp_c, air.rh)
    margin = dew_margin_k(air.temp_c, air.temp_c, air.rh)
    fit = "coats may be laid" if margin >= DEW_K else "no coat: under 3 K, water comes down on it as it dries"
    return Sum(
        values=(("dew_point_c", point), ("margin_k", margin)),
        lines=(
            f"Dew falls at {point:.1f} °C.",
            f"A piece as warm as the air is {margin:.1f} K above it: {fit}.",
            f"A piece brought in from the cold must be warmer than {point + DEW_K:.1f} °C first.",
        ),
        formula="the temperature at which air with that much water is saturated",
        source="ASHRAE Fundamentals (2017), ch. 1, Eq. 5 and 6, by a psychrometric library; below 0 °C the Magnus form "
        "over water; 3 K: coatings notes §2.2 (R48)",
    )


def film_build(wet_um: float, solids: float) -> Sum:
    """Return the dry film that a wet one [µm] leaves at a share of solids by volume [1], and how far a litre goes."""
    dry = dry_film_um(wet_um, solids)
    spread = spread_m2_per_l(dry, solids)
    return Sum(
        values=(("dry_um", dry), ("spread_m2_l", spread)),
        lines=(
            f"{wet_um:g} µm wet at {100 * solids:g} % solids leave {dry:.0f} µm dry.",
            f"A litre goes {spread:.1f} m² before losses.",
        ),
        formula="dry = wet · solids by volume; spread = 1000 · solids / dry",
        source="identities; coatings notes, Film build, coverage, quantity",
    )


def coverage(area_m2: float, coats: int, wet_um: float, solids: float) -> Sum:
    """Return the litres that some coats take on an area [m²], brushed."""
    litres = litres_to_buy(area_m2, dry_film_um(wet_um, solids), solids, coats=coats, dead_volume_l=0.05)
    return Sum(
        values=(("litres_l", litres),),
        lines=(
            f"{coats} coat{'s' if coats > 1 else ''} on {area_m2:g} m² take about {litres:.2f} L,",
            "laid by brush, 0.05 L of it left in brush and can.",
        ),
        formula="V = A · wet / (1000 · 0.95) · coats + 0.05",
        source="coatings notes, Film build, coverage, quantity; 0.95 and 0.05: common practice",
    )


def grits(first_p: int, last_p: int) -> Sum:
    """
    Return the shortest sequence of P grits between two.

    Raises
    ------
    ValueError
        If no sequence leads there.
    """
    known = sorted(grit for grit in GRAIN_UM if first_p <= grit <= last_p)
    ways: dict[int, tuple[int, ...]] = {first_p: (first_p,)} if first_p in known else {}
    for grit in known:
        before = [way for last, way in ways.items() if last < grit and can_follow(last, grit)]
        if before:
            ways[grit] = (*min(before, key=len), grit)
    if last_p not in ways:
        message = f"no sequence of P grits leads from P{first_p} to P{last_p}"
        raise ValueError(message)
    way = ways[last_p]
    taken = removed_um(way)
    return Sum(
        values=(("removed_um", taken),),
        lines=(
            " → ".join(f"P{grit}" for grit in way),
            f"It takes about {taken:.0f} µm of wood at the least, levelling counted: mind thin veneer.",
        ),
        formula="each grit may follow where it can take out the scratches of the one before",
        source="FEPA P grades (ISO 6344); stock figures from trade text on sanding, an upper bound by hand",
    )
