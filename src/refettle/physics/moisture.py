"""Moisture of wood in a room's air, and how far it moves with it."""

import math

from refettle.physics.limits import need_range

_PERCENT = "a percentage slipped in"
_CELSIUS = {  # c0, c1 per °C, c2 per °C²
    "w": (349.0, 1.29, 0.0135),
    "k": (0.805, 0.000736, -0.00000273),
    "k1": (6.27, -0.00938, -0.000303),
    "k2": (1.91, 0.0407, -0.000293),
}
_FIBRE_SATURATION_PCT = 30.0
_TABLE_DRY_PCT = 10.0


def emc_pct(temp_c: float, rh: float) -> float:
    """
    Return the moisture that wood settles to in a room's air.

    Parameters
    ----------
    temp_c
        Temperature [°C], −20 to 130; below −1 it is carried on past the table.
    rh
        Relative humidity [1], 0–1; above 0.95 it is carried on past the table.

    Returns
    -------
    float
        Equilibrium moisture, water over oven-dry wood by mass [%].

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or the temperature is outside the range.

    Notes
    -----
    Woods differ by a point or so either way; the Handbook calls the tenth illustrative.
    Source: *Wood Handbook* (FPL-GTR-282, 2021) ch. 4, Eq. (4-5) with the constants for °C.

    Examples
    --------
    >>> round(emc_pct(21.1, 0.50), 1)
    9.2
    """
    need_range("temp_c", temp_c, -20.0, 130.0, "°C", "°F or kelvin taken for °C")
    need_range("rh", rh, 0.0, 1.0, "1", _PERCENT)
    w, k, k1, k2 = (c0 + c1 * temp_c + c2 * temp_c**2 for c0, c1, c2 in _CELSIUS.values())
    kh = k * rh
    bound = (k1 * kh + 2.0 * k1 * k2 * kh**2) / (1.0 + k1 * kh + k1 * k2 * kh**2)
    return 1800.0 / w * (kh / (1.0 - kh) + bound)


def settling_days(thickness_mm: float, share: float, diffusivity_m2_s: float) -> float:
    """
    Return how long a board with both faces open takes to come nearer to the moisture of its room.

    Parameters
    ----------
    thickness_mm
        Thickness [mm], 0.3–200.
    share
        Share of the way [1], 0.5–0.999.
    diffusivity_m2_s
        How fast water moves through the wood across the grain [m²/s], 1e-12 to 1e-8.

    Returns
    -------
    float
        Days [d]; four times as long for a board twice as thick.

    Raises
    ------
    OutOfRange
        If a number lies outside its range (a percentage, metres or cm²/s slipped in).

    Notes
    -----
    Slab with both faces at once at the new moisture: the first term of the series for the mean,
    ``1 − share = 8/π²·exp(−π²·D·t/L²)``; at half the way 1 % off. Ends, films and the air at the face are left out: a film
    makes it longer. Source: Crank, *The Mathematics of Diffusion*, plane sheet (from memory).

    Examples
    --------
    >>> round(settling_days(20.0, 0.90, 1e-10), 1)
    9.8
    """
    need_range("thickness_mm", thickness_mm, 0.3, 200.0, "mm", "m taken for mm")
    need_range("share", share, 0.5, 0.999, "1", _PERCENT)
    need_range("diffusivity_m2_s", diffusivity_m2_s, 1e-12, 1e-8, "m²/s", "cm²/s taken for m²/s")
    fourier = -math.log((1.0 - share) * math.pi**2 / 8.0) / math.pi**2
    return fourier * (thickness_mm / 1000.0) ** 2 / diffusivity_m2_s / 86_400.0


def movement_mm(size_mm: float, change_per_pct: float, from_pct: float, to_pct: float) -> float:
    """
    Return how much a board grows across the grain when its moisture changes.

    Parameters
    ----------
    size_mm
        Width or thickness now [mm], 0 or more.
    change_per_pct
        Dimensional change coefficient of that direction [1/%], 0–0.01.
    from_pct, to_pct
        Moisture now and then [%], 0–30; the coefficient is stated for 6–14.

    Returns
    -------
    float
        Growth [mm]; negative when it shrinks.

    Raises
    ------
    OutOfRange
        If a moisture lies beyond fibre saturation (30 %) or a coefficient in percent slipped in.

    Notes
    -----
    ``ΔD = D·C·(M₂ − M₁)``. Source: *Wood Handbook* (FPL-GTR-190, 2010) ch. 13, equation and
    Table 13-5.

    Examples
    --------
    A flat-sawn red oak top, 600 mm wide, from a dry room to a damp one:

    >>> round(movement_mm(600.0, 0.00369, 6.0, 11.0), 1)
    11.1
    """
    need_range("size_mm", size_mm, 0.0, 10000.0, "mm", "µm taken for mm")
    need_range(
        "change_per_pct", change_per_pct, 0.0, 0.01, "1/%", "a total shrinkage taken for a coefficient"
    )
    need_range("from_pct", from_pct, 0.0, _FIBRE_SATURATION_PCT, "%", "wetter wood no longer moves")
    need_range("to_pct", to_pct, 0.0, _FIBRE_SATURATION_PCT, "%", "wetter wood no longer moves")
    return size_mm * change_per_pct * (to_pct - from_pct)


def change_per_pct(shrinkage_pct: float) -> float:
    """
    Return the dimensional change coefficient that a wood's total shrinkage implies.

    Parameters
    ----------
    shrinkage_pct
        Shrinkage from green to oven-dry in that direction [%], 0–20.

    Returns
    -------
    float
        Dimensional change coefficient [1/%].

    Raises
    ------
    OutOfRange
        If the shrinkage is outside 0–20 % (a volumetric figure slipped in).

    Notes
    -----
    ``C = S/(3000 − 20·S)``: straight from 30 % fibre saturation, size taken at 10 %.
    Source: the relation links Table 4-3 to Table 13-5 of the *Wood Handbook* (FPL-GTR-190, 2010) for
    every wood that stands in both under its own name.

    Examples
    --------
    >>> round(change_per_pct(7.1), 5)
    0.00248
    """
    need_range("shrinkage_pct", shrinkage_pct, 0.0, 20.0, "%", "a volumetric shrinkage slipped in")
    at_table_size = 100.0 * _FIBRE_SATURATION_PCT - shrinkage_pct * (_FIBRE_SATURATION_PCT - _TABLE_DRY_PCT)
    return shrinkage_pct / at_table_size
