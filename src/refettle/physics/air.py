"""Damp air: saturation pressure, dew point, and how far a surface is from dew."""

import math

from refettle.physics.limits import need_above, need_range

KELVIN_AT_0_C = 273.15
"""Absolute temperature of 0 °C [K]."""

_MAGNUS_A = 17.62
_MAGNUS_B_C = 243.12
_MAGNUS_PA = 611.2
_LOW_C, _HIGH_C = -30.0, 60.0
_KELVIN_SLIP = "°F or kelvin taken for °C"


def saturation_pa(temp_c: float) -> float:
    """
    Return the vapour pressure of water at which air is saturated.

    Parameters
    ----------
    temp_c
        Temperature [°C], −30 to 60.

    Returns
    -------
    float
        Saturation pressure over liquid water [Pa].

    Raises
    ------
    OutOfRange
        If the temperature is outside the range (°F or kelvin slipped in).

    Notes
    -----
    Magnus form ``611.2·exp(17.62·t/(243.12 + t))``; over liquid water also below 0 °C, as humidity
    is reported. Within 0.35 % of the printed table at 5–40 °C.
    Source: "Recommended unified model", p_sat; checked against *ASHRAE Handbook: Fundamentals*
    (2017) ch. 1, Table 3.

    Examples
    --------
    >>> round(saturation_pa(20.0))
    2333
    """
    need_range("temp_c", temp_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    return _MAGNUS_PA * math.exp(_MAGNUS_A * temp_c / (_MAGNUS_B_C + temp_c))


def saturation_slope_pa_k(temp_c: float) -> float:
    """
    Return how fast the saturation pressure rises with temperature.

    Parameters
    ----------
    temp_c
        Temperature [°C], −30 to 60.

    Returns
    -------
    float
        Slope of the saturation pressure [Pa/K].

    Raises
    ------
    OutOfRange
        If the temperature is outside the range (°F or kelvin slipped in).

    Notes
    -----
    Derivative of `saturation_pa`; same validity and source.

    Examples
    --------
    >>> round(saturation_slope_pa_k(20.0), 1)
    144.3
    """
    return saturation_pa(temp_c) * _MAGNUS_A * _MAGNUS_B_C / (_MAGNUS_B_C + temp_c) ** 2


def dew_point_c(temp_c: float, rh: float) -> float:
    """
    Return the temperature at which dew falls out of the air.

    Parameters
    ----------
    temp_c
        Air temperature [°C], −30 to 60.
    rh
        Relative humidity [1], above 0, at most 1.

    Returns
    -------
    float
        Dew point [°C].

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or the temperature is outside the range.

    Notes
    -----
    Inverse of the Magnus form; within 0.02 K of a psychrometric library at 10–35 °C, 40–85 %.
    Source: "Recommended unified model", dew point.

    Examples
    --------
    >>> round(dew_point_c(20.0, 0.50), 1)
    9.3
    """
    need_range("temp_c", temp_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    need_above("rh", rh, 0.0, 1.0, "1", "a percentage slipped in")
    a = math.log(rh) + _MAGNUS_A * temp_c / (_MAGNUS_B_C + temp_c)
    return _MAGNUS_B_C * a / (_MAGNUS_A - a)


def dew_margin_k(surface_c: float, temp_c: float, rh: float) -> float:
    """
    Return how far a surface is above the dew point of the air round it.

    Parameters
    ----------
    surface_c
        Temperature of the surface [°C], −30 to 60.
    temp_c
        Air temperature [°C], −30 to 60.
    rh
        Relative humidity [1], above 0, at most 1.

    Returns
    -------
    float
        Margin [K]; below 3 a coat should not go on, below 0 dew lies on it.

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or a temperature is outside the range.

    Notes
    -----
    The 3 K rule was written for steel and is widely used for other things; ISO 8502-4 as quoted in
    coating-practice texts, which adds that no simple rule covers every case.

    Examples
    --------
    >>> round(dew_margin_k(10.0, 20.0, 0.50), 1)
    0.7
    """
    need_range("surface_c", surface_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    return surface_c - dew_point_c(temp_c, rh)
