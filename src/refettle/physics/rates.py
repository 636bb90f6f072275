"""
Rates: how fast a carrier evaporates and a film's chemistry runs, relative to the label's air.

The two share nothing but the air; `refettle.physics.drying` mixes them for each stage of a coat.
"""

import math

from refettle.physics.air import KELVIN_AT_0_C, saturation_pa, saturation_slope_pa_k
from refettle.physics.limits import need_above, need_choice, need_range

LABEL_C = (20.0, 23.0)
"""Air temperature that a label's hours are stated for [°C]: anywhere between these."""
LABEL_RH = 0.50
"""Relative humidity that a label's hours are stated for [1]."""
STILL_AIR_M_S = 0.1
"""Air speed of a closed room [m/s]."""

CARRIERS = ("water", "alcohol", "spirits", "strong", "none")
"""What a wet coat may be thinned with; ``strong`` = lacquer-thinner type, ``none`` = nothing to leave."""

_GAS_J_MOL_K = 8.314462618
_CHEMISTRY_J_MOL = 50_000.0
_PSYCHROMETRIC_PA_K = 66.0
_FILM_HEAT_RATIO = 2.5  # heat reaching a drying film over convection alone: it cools less than a wet bulb
_VAPOUR_HEAT_J_MOL = {"alcohol": 43_000.0, "strong": 43_000.0, "spirits": 50_000.0}
_FREE_CONVECTION_M_S = 0.1
_FASTEST_AIR_M_S = 3.0
_OXIDATION_RH = 0.65
_BUTYL_ACETATE_G_MOL = 116.16
_RELATIVE_RATE = 0.84


def evaporation_rate(
    carrier: str,
    temp_c: float,
    rh: float,
    air_m_s: float = STILL_AIR_M_S,
    *,
    label_c: tuple[float, float] = LABEL_C,
) -> float:
    """
    Return how fast the carrier leaves a wet film, relative to the label's air.

    Parameters
    ----------
    carrier
        One of `CARRIERS`; ``none`` gives 1.
    temp_c
        Air temperature [°C], −10 to 60.
    rh
        Relative humidity [1], 0–1; holds back water alone.
    air_m_s
        Air speed over the piece [m/s], 0–40; no further credit above 3.
    label_c
        Temperatures between which the hours of the label hold [°C].

    Returns
    -------
    float
        Rate [1]; 0 for water in saturated air.

    Raises
    ------
    OutOfRange
        If the carrier is not known, `rh` is a percentage or the temperature is in °F or kelvin.

    Notes
    -----
    Solvents: Clausius–Clapeyron with 43 kJ/mol (alcohol, lacquer thinner) or 50 (mineral spirits),
    room air free of vapour. Water: Penman's drive ``(1 − RH)·p_sat·γ/(Δ + γ)`` with γ 2.5 times 66 Pa/K,
    since the film cools less than a wet bulb. Air: ``√((v + 0.1)/0.2)``; studies disagree on its weight.
    Source: "Recommended unified model".

    Examples
    --------
    >>> round(evaporation_rate("water", 10.0, 0.50, label_c=(23.0, 23.0)), 2)
    0.59
    """
    need_choice("carrier", carrier, CARRIERS)
    need_air(temp_c, rh)
    need_range("air_m_s", air_m_s, 0.0, 40.0, "m/s", "km/h taken for m/s")
    if carrier == "none":
        return 1.0
    stirred = (min(air_m_s, _FASTEST_AIR_M_S) + _FREE_CONVECTION_M_S) / (STILL_AIR_M_S + _FREE_CONVECTION_M_S)
    if carrier == "water":
        warmth = _water_drive_pa(temp_c, rh) / _water_drive_pa(_label_temp_c(temp_c, label_c), LABEL_RH)
    else:
        warmth = _speed_up(_VAPOUR_HEAT_J_MOL[carrier], temp_c, label_c)
    return warmth * math.sqrt(stirred)


def chemistry_rate(temp_c: float, *, label_c: tuple[float, float] = LABEL_C) -> float:
    """
    Return how fast a film's chemistry runs, relative to the label's air.

    Parameters
    ----------
    temp_c
        Air temperature [°C], −10 to 60.
    label_c
        Temperatures between which the hours of the label hold [°C].

    Returns
    -------
    float
        Rate [1]; about double per 10 °C.

    Raises
    ------
    OutOfRange
        If the temperature is outside the range (°F or kelvin slipped in) or the label's pair is reversed.

    Notes
    -----
    Arrhenius with 50 kJ/mol for every family: 1.96 from 21 to 31 °C, where the two-pack guide
    specification says 2. Measured on one tin-catalysed two-pack: 29–36 kJ/mol, so cold costs less there.
    Source: "Recommended unified model".

    Examples
    --------
    >>> round(chemistry_rate(31.0, label_c=(21.0, 21.0)), 2)
    1.96
    """
    need_air(temp_c, LABEL_RH)
    return _speed_up(_CHEMISTRY_J_MOL, temp_c, label_c)


def damp_oxidation_rate(rh: float) -> float:
    """
    Return how far damp air slows the hardening of drying oils.

    Parameters
    ----------
    rh
        Relative humidity [1], 0–1.

    Returns
    -------
    float
        Rate [1]; 1 up to 65 %, 0.5 in saturated air.

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in).

    Notes
    -----
    Weak: the direction depends on the drier metal (Gardner, *Paint Technology and Tests*, 1911).
    Source: "Recommended unified model", judgement.

    Examples
    --------
    >>> damp_oxidation_rate(0.50), damp_oxidation_rate(1.0)
    (1.0, 0.5)
    """
    need_air(LABEL_C[0], rh)
    return 1.0 / (1.0 + max(0.0, (rh - _OXIDATION_RH) / (1.0 - _OXIDATION_RH)))


def relative_evaporation(
    vapour_pressure_pa: float, molar_mass_g_mol: float, butyl_acetate_pa: float
) -> float:
    """
    Return how fast a neat liquid evaporates relative to n-butyl acetate.

    Parameters
    ----------
    vapour_pressure_pa
        Vapour pressure of the liquid [Pa], 0–200 000.
    molar_mass_g_mol
        Its molar mass [g/mol], 10–500.
    butyl_acetate_pa
        Vapour pressure of n-butyl acetate at the same temperature [Pa], above 0.

    Returns
    -------
    float
        Relative rate by mass [1]; n-butyl acetate is near 1.

    Raises
    ------
    OutOfRange
        If a pressure or mass lies outside its range (kPa or mmHg slipped in).

    Notes
    -----
    ``0.84·p·M/(p·M)_BuAc``; off by a factor of 1.2 in two cases out of three. Against published relative
    rates of seven liquids; "What the evidence says".

    Examples
    --------
    Ethanol at 20 °C, published 1.4:

    >>> round(relative_evaporation(5870.0, 46.07, 1333.0), 1)
    1.5
    """
    need_range("vapour_pressure_pa", vapour_pressure_pa, 0.0, 200_000.0, "Pa", "another unit taken for Pa")
    need_range("molar_mass_g_mol", molar_mass_g_mol, 10.0, 500.0, "g/mol", "kg/mol taken for g/mol")
    need_above("butyl_acetate_pa", butyl_acetate_pa, 0.0, 50_000.0, "Pa", "another unit taken for Pa")
    product = vapour_pressure_pa * molar_mass_g_mol
    return _RELATIVE_RATE * product / (butyl_acetate_pa * _BUTYL_ACETATE_G_MOL)


def need_air(temp_c: float, rh: float) -> None:
    """
    Refuse air that the drying model was not made for.

    Parameters
    ----------
    temp_c
        Air temperature [°C], −10 to 60.
    rh
        Relative humidity [1], 0–1.

    Raises
    ------
    OutOfRange
        If `rh` is a percentage or the temperature is in °F or kelvin.

    Examples
    --------
    >>> need_air(68.0, 0.50)
    Traceback (most recent call last):
    refettle.physics.limits.OutOfRange: temp_c is 68.0, must be -10 to 60 °C; °F or kelvin taken for °C
    """
    need_range("temp_c", temp_c, -10.0, 60.0, "°C", "°F or kelvin taken for °C")
    need_range("rh", rh, 0.0, 1.0, "1", "a percentage slipped in")


def _label_temp_c(temp_c: float, label_c: tuple[float, float]) -> float:
    """Return the label temperature nearest to `temp_c` [°C]: the label's hours hold all over its band."""
    low_c, high_c = label_c
    need_range("label_c", low_c, -10.0, high_c, "°C", "a reversed pair")
    return min(max(temp_c, low_c), high_c)


def _speed_up(energy_j_mol: float, temp_c: float, label_c: tuple[float, float]) -> float:
    """Return the Arrhenius factor [1] between `temp_c` and the label's nearest temperature."""
    label_k = _label_temp_c(temp_c, label_c) + KELVIN_AT_0_C
    return math.exp(energy_j_mol / _GAS_J_MOL_K * (1.0 / label_k - 1.0 / (temp_c + KELVIN_AT_0_C)))


def _water_drive_pa(temp_c: float, rh: float) -> float:
    """Return what drives water out of a film that cools as it dries [Pa], after Penman."""
    gamma = _FILM_HEAT_RATIO * _PSYCHROMETRIC_PA_K
    return (1.0 - rh) * saturation_pa(temp_c) * gamma / (saturation_slope_pa_k(temp_c) + gamma)
