"""Damp air: saturation pressure, dew point, wet bulb, water in the air, and how far a surface is from dew."""

import math
from functools import lru_cache

import psychrolib

from refettle.physics.limits import need_above, need_range

psychrolib.SetUnitSystem(psychrolib.SI)

KELVIN_AT_0_C = 273.15
"""Absolute temperature of 0 °C [K]."""

_MAGNUS_A = 17.62
_MAGNUS_B_C = 243.12
_MAGNUS_PA = 611.2
_LOW_C, _HIGH_C = -40.0, 60.0
_KELVIN_SLIP = "°F or kelvin taken for °C"
_PERCENT_SLIP = "a percentage slipped in"
_SEA_LEVEL_PA = 101_325.0
_LEAST_PA = 1.0
_REMEMBERED = 32_768  # a year of hours, a few rooms over


def saturation_pa(temp_c: float) -> float:
    """
    Return the vapour pressure of water at which air is saturated.

    Parameters
    ----------
    temp_c
        Temperature [°C], −40 to 60.

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
    Source: *ASHRAE Handbook: Fundamentals* (2017) ch. 1, Eq. 6, by PsychroLib, from 0 °C on. Below it, where that
    handbook turns to ice, the Magnus form ``611.2·exp(17.62·t/(243.12 + t))`` over liquid water: humidity is commonly
    reported over water in frost too (common practice). At 0 °C the two meet within 0.01 %.

    Examples
    --------
    >>> round(saturation_pa(20.0))
    2339
    """
    need_range("temp_c", temp_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    return _saturation_pa(temp_c)


@lru_cache(maxsize=_REMEMBERED)
def _saturation_pa(temp_c: float) -> float:
    """Return the saturation pressure over water [Pa], remembered: the same hours are asked for by every coat."""
    if temp_c > psychrolib.TRIPLE_POINT_WATER_SI:
        return float(psychrolib.GetSatVapPres(temp_c))
    return _MAGNUS_PA * math.exp(_MAGNUS_A * temp_c / (_MAGNUS_B_C + temp_c))


def saturation_slope_pa_k(temp_c: float) -> float:
    """
    Return how fast the saturation pressure rises with temperature.

    Parameters
    ----------
    temp_c
        Temperature [°C], −40 to 60.

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
    `saturation_pa` times the relative slope of the Magnus form; within 0.5 % of the derivative.
    Source: "Recommended unified model", Δ.

    Examples
    --------
    >>> round(saturation_slope_pa_k(20.0), 1)
    144.7
    """
    return saturation_pa(temp_c) * _MAGNUS_A * _MAGNUS_B_C / (_MAGNUS_B_C + temp_c) ** 2


def dew_point_c(temp_c: float, rh: float) -> float:
    """
    Return the temperature at which dew falls out of the air.

    Parameters
    ----------
    temp_c
        Air temperature [°C], −40 to 60.
    rh
        Relative humidity [1], above 0, at most 1.

    Returns
    -------
    float
        Dew point [°C]; below 0 °C the point at which frost falls, never above the air's own temperature.

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or the temperature is outside the range.

    Notes
    -----
    The temperature at which the vapour in the air saturates it, over ice in frost.
    Source: *ASHRAE Handbook: Fundamentals* (2017) ch. 1, Eq. 5 and 6, solved by PsychroLib to 0.001 K.

    Examples
    --------
    >>> round(dew_point_c(20.0, 0.50), 1)
    9.3
    """
    need_range("temp_c", temp_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    need_above("rh", rh, 0.0, 1.0, "1", _PERCENT_SLIP)
    return _dew_point_c(temp_c, rh)


@lru_cache(maxsize=_REMEMBERED)
def _dew_point_c(temp_c: float, rh: float) -> float:
    """Return the dew point [°C], remembered: it is found by trying, and asked for hour by hour."""
    return float(psychrolib.GetTDewPointFromVapPres(temp_c, max(_LEAST_PA, rh * _saturation_pa(temp_c))))


def wet_bulb_c(temp_c: float, rh: float) -> float:
    """
    Return the temperature down to which water cools as it dries in the air.

    Parameters
    ----------
    temp_c
        Air temperature [°C], −40 to 60.
    rh
        Relative humidity [1], above 0, at most 1.

    Returns
    -------
    float
        Wet bulb at sea level [°C]; a wet water-borne film lies between it and the air.

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or the temperature is outside the range.

    Notes
    -----
    Source: *ASHRAE Handbook: Fundamentals* (2017) ch. 1, Eq. 33 and 35 solved by PsychroLib.

    Examples
    --------
    >>> round(wet_bulb_c(20.0, 0.50), 1)
    13.8
    """
    need_range("temp_c", temp_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    need_above("rh", rh, 0.0, 1.0, "1", _PERCENT_SLIP)
    return float(psychrolib.GetTWetBulbFromRelHum(temp_c, rh, _SEA_LEVEL_PA))


def water_g_kg(temp_c: float, rh: float) -> float:
    """
    Return how much water the air carries.

    Parameters
    ----------
    temp_c
        Air temperature [°C], −40 to 60.
    rh
        Relative humidity [1], 0–1.

    Returns
    -------
    float
        Water per kilogram of dry air at sea level [g/kg]; it stays the same when the air is only warmed.

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or the temperature is outside the range.

    Notes
    -----
    Source: *ASHRAE Handbook: Fundamentals* (2017) ch. 1, Eq. 20, by PsychroLib.

    Examples
    --------
    >>> round(water_g_kg(20.0, 0.50), 2)
    7.26
    """
    need_range("rh", rh, 0.0, 1.0, "1", _PERCENT_SLIP)
    vapour_pa = rh * saturation_pa(temp_c)
    return 1000.0 * float(psychrolib.GetHumRatioFromVapPres(vapour_pa, _SEA_LEVEL_PA))


def warmed(temp_c: float, rh: float, to_c: float) -> tuple[float, float]:
    """
    Return air that a heater has brought up to a temperature, its water left as it was.

    Parameters
    ----------
    temp_c
        Air temperature before [°C], −40 to 60.
    rh
        Relative humidity before [1], 0–1.
    to_c
        Temperature that the heater holds [°C], −40 to 60; air that is warmer stays as it is.

    Returns
    -------
    tuple of float
        Temperature [°C] and relative humidity [1].

    Raises
    ------
    OutOfRange
        If `rh` is not a fraction (a percentage slipped in) or a temperature is outside the range.

    Notes
    -----
    The vapour pressure is kept; a flame without a flue adds water that is not counted here.
    Source: *ASHRAE Handbook: Fundamentals* (2017) ch. 1, Eq. 12 and 22.

    Examples
    --------
    >>> warmed(8.0, 0.80, 18.0)[0], round(warmed(8.0, 0.80, 18.0)[1], 2)
    (18.0, 0.42)
    """
    need_range("rh", rh, 0.0, 1.0, "1", _PERCENT_SLIP)
    need_range("to_c", to_c, _LOW_C, _HIGH_C, "°C", _KELVIN_SLIP)
    before_pa = rh * saturation_pa(temp_c)
    if temp_c >= to_c:
        return temp_c, rh
    return to_c, before_pa / saturation_pa(to_c)


def dew_margin_k(surface_c: float, temp_c: float, rh: float) -> float:
    """
    Return how far a surface is above the dew point of the air round it.

    Parameters
    ----------
    surface_c
        Temperature of the surface [°C], −40 to 60.
    temp_c
        Air temperature [°C], −40 to 60.
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
