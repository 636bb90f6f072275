"""
Conversions between the units people write and the units used inside: nothing else.

Inside, a length is in millimetres, an area in square metres, a volume in litres, a film in
micrometres, a time in hours, a temperature in degrees Celsius, a share between 0 and 1. This is the
only place where such a factor stands.

Source: the inch (25.4 mm), the foot (12 in), the mil (0.001 in), the US gallon (231 in³) with its
quart (1/4), pint (1/8) and fluid ounce (1/128), and the Fahrenheit scale are exact by definition:
NIST Special Publication 811 (2008), appendix B; read from memory. Quarts, pints, gallons and fluid
ounces are the US liquid ones; the imperial ones are about a fifth larger and must be written in
litres.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

_INCH_MM: Final = 25.4
_FOOT_MM: Final = 12 * _INCH_MM
_GALLON_L: Final = 231 * _INCH_MM**3 / 1e6
_FREEZING_F: Final = 32.0
_F_PER_C: Final = 1.8

MM_PER: Final[Mapping[str, float]] = MappingProxyType(
    {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": _INCH_MM, "ft": _FOOT_MM}
)
"""Millimetres in one of each unit of length [mm]."""

M2_PER: Final[Mapping[str, float]] = MappingProxyType(
    {"m2": 1.0, "cm2": 1e-4, "in2": _INCH_MM**2 / 1e6, "ft2": _FOOT_MM**2 / 1e6}
)
"""Square metres in one of each unit of area [m²]."""

L_PER: Final[Mapping[str, float]] = MappingProxyType(
    {
        "L": 1.0,
        "ml": 1e-3,
        "gal": _GALLON_L,
        "qt": _GALLON_L / 4,
        "pt": _GALLON_L / 8,
        "fl oz": _GALLON_L / 128,
    }
)
"""Litres in one of each unit of volume [L]."""

UM_PER: Final[Mapping[str, float]] = MappingProxyType({"um": 1.0, "mil": _INCH_MM, "mm": 1000.0})
"""Micrometres in one of each unit of film or veneer [µm]."""

H_PER: Final[Mapping[str, float]] = MappingProxyType({"min": 1 / 60, "h": 1.0, "day": 24.0, "week": 168.0})
"""Hours in one of each unit of time [h]."""


def celsius(temp_f: float) -> float:
    """
    Return a temperature in degrees Celsius.

    Parameters
    ----------
    temp_f
        Temperature [°F].

    Returns
    -------
    float
        Temperature [°C].

    Notes
    -----
    Exact by definition. Source: NIST Special Publication 811 (2008), appendix B.

    Examples
    --------
    >>> celsius(212.0)
    100.0
    """
    return (temp_f - _FREEZING_F) / _F_PER_C


def fahrenheit(temp_c: float) -> float:
    """
    Return a temperature in degrees Fahrenheit.

    Parameters
    ----------
    temp_c
        Temperature [°C].

    Returns
    -------
    float
        Temperature [°F].

    Notes
    -----
    Exact by definition. Source: NIST Special Publication 811 (2008), appendix B.

    Examples
    --------
    >>> fahrenheit(20.0)
    68.0
    """
    return temp_c * _F_PER_C + _FREEZING_F
