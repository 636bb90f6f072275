"""
Drying: how fast a coat gets on in the air it has, relative to the air its label speaks of.

A stage (dry to touch, to recoat, to sand ...) is partly a matter of evaporation and partly of
chemistry. Its rate relative to the label's air is

``f_evap^w · f_chem^(1−w) · f_rh^(1−w) · (wet film / usual wet film)^−n``

and the stage is reached when the rate, summed over time, makes up the label's hours. The shares
``w`` and exponents ``n`` per family and stage are judgement; see `stage_spread` for how far off
the whole may be.
"""

import math

from refettle.physics.limits import need_above, need_choice, need_range
from refettle.physics.rates import (
    CARRIERS,
    LABEL_C,
    STILL_AIR_M_S,
    chemistry_rate,
    damp_oxidation_rate,
    evaporation_rate,
    need_air,
)

STAGES = ("touch", "recoat_from", "recoat_until", "sand", "wrap", "cured")
FAMILIES = ("evaporative", "waterborne", "oxidative", "crosslinked", "wax", "stain", "dye", "filler")

_WINDOW_SHRINKS_C = 35.0

_Shares = dict[str, tuple[float, float]]  # stage -> share of evaporation, thickness exponent
_EVAPORATIVE: _Shares = {
    "touch": (1.0, 1.0), "recoat_from": (0.9, 1.5), "recoat_until": (0.0, 1.5),
    "sand": (0.8, 1.5), "wrap": (0.5, 2.0), "cured": (0.5, 2.0),
}  # fmt: skip
_WATERBORNE: _Shares = {
    "touch": (1.0, 1.0), "recoat_from": (0.6, 1.2), "recoat_until": (0.0, 1.2),
    "sand": (0.5, 1.2), "wrap": (0.2, 1.5), "cured": (0.2, 1.5),
}  # fmt: skip
_OXIDATIVE: _Shares = {
    "touch": (0.3, 1.0), "recoat_from": (0.1, 1.5), "recoat_until": (0.0, 1.5),
    "sand": (0.1, 1.5), "wrap": (0.0, 2.0), "cured": (0.0, 2.0),
}  # fmt: skip
_CROSSLINKED: _Shares = {
    "touch": (0.5, 1.0), "recoat_from": (0.2, 1.0), "recoat_until": (0.0, 1.0),
    "sand": (0.2, 1.0), "wrap": (0.0, 1.0), "cured": (0.0, 1.0),
}  # fmt: skip
_BY_FAMILY = {
    "evaporative": _EVAPORATIVE,
    "waterborne": _WATERBORNE,
    "oxidative": _OXIDATIVE,
    "crosslinked": _CROSSLINKED,
    "wax": _EVAPORATIVE,
}
_BY_CARRIER = {  # stains, dyes and fillers dry the way of what they are thinned with
    "water": "waterborne",
    "alcohol": "evaporative",
    "strong": "evaporative",
    "spirits": "oxidative",
    "none": "oxidative",
}
_USUAL_CARRIER = {
    "evaporative": "strong", "waterborne": "water", "oxidative": "spirits", "crosslinked": "strong",
    "wax": "spirits", "stain": "spirits", "dye": "water", "filler": "spirits",
}  # fmt: skip


def progress_rate(
    family: str,
    stage: str,
    temp_c: float,
    rh: float,
    air_m_s: float = STILL_AIR_M_S,
    wet_ratio: float = 1.0,
    *,
    carrier: str = "",
    min_c: float | None = None,
    label_c: tuple[float, float] = LABEL_C,
) -> float:
    """
    Return how fast a coat gets on, relative to the air its label speaks of.

    Parameters
    ----------
    family
        How it hardens: one of `FAMILIES`.
    stage
        One of `STAGES`; ``recoat_until`` is the closing of the window.
    temp_c
        Air temperature [°C], −10 to 60.
    rh
        Relative humidity [1], 0–1.
    air_m_s
        Air speed over the piece [m/s]: 0.1 closed room, 0.5 fan at two metres, 1–2 outdoors.
    wet_ratio
        Wet film over the usual wet film [1], above 0, at most 10.
    carrier
        What the wet coat is thinned with: one of `CARRIERS`; empty = usual for the family.
    min_c
        Temperature below which a water-borne or cross-linked coat stands still [°C]; None = no stop.
    label_c
        Temperatures between which the hours of the label hold [°C]; equal for a single one.

    Returns
    -------
    float
        Rate [1]; 1 in the label's air, 0.5 where everything takes twice as long, 0 standing still.

    Raises
    ------
    OutOfRange
        If a word is not known, `rh` is a percentage, or a temperature is in °F or kelvin.

    Notes
    -----
    Weak below 15 °C, above 30 °C and outside 30–75 %; see `stage_spread`. Below its minimum
    temperature a water-borne film cracks or powders: that is a fault and never merely a longer wait.
    Source: "Recommended unified model": activation energy 50 kJ/mol for all chemistry, the trade's
    doubling per 10 °C; evaporation after Clausius–Clapeyron and Penman; shares and exponents judgement.

    Examples
    --------
    >>> progress_rate("waterborne", "touch", 21.0, 0.50)
    1.0
    >>> round(progress_rate("waterborne", "touch", 12.0, 0.80), 2)
    0.29
    """
    need_choice("family", family, FAMILIES)
    need_choice("stage", stage, STAGES)
    carried = carrier or _USUAL_CARRIER[family]
    need_choice("carrier", carried, CARRIERS)
    need_above("wet_ratio", wet_ratio, 0.0, 10.0, "1", "micrometres taken for a ratio")
    kind = family if family in _BY_FAMILY else _BY_CARRIER[carried]
    share, exponent = _BY_FAMILY[kind][stage]
    if carried == "none":
        share = 0.0
    evaporation = evaporation_rate(carried, temp_c, rh, air_m_s, label_c=label_c)
    chemistry = chemistry_rate(temp_c, label_c=label_c)
    if kind == "oxidative":
        chemistry *= damp_oxidation_rate(rh)
    if min_c is not None and temp_c < min_c and kind in {"waterborne", "crosslinked"}:
        return 0.0
    if stage == "recoat_until" and temp_c > _WINDOW_SHRINKS_C:
        chemistry *= 2.0
    return _power(evaporation, share) * _power(chemistry, 1.0 - share) * _power(wet_ratio, -exponent)


def stage_hours(
    family: str,
    stage: str,
    label_h: float,
    temp_c: float,
    rh: float,
    air_m_s: float = STILL_AIR_M_S,
    wet_ratio: float = 1.0,
    *,
    carrier: str = "",
    min_c: float | None = None,
    label_c: tuple[float, float] = LABEL_C,
) -> float:
    """
    Return the hours until a coat reaches a stage in steady air.

    Parameters
    ----------
    family, stage
        As in `progress_rate`.
    label_h
        Hours to that stage in the label's air [h], 0 or more.
    temp_c
        Air temperature [°C], −10 to 60.
    rh
        Relative humidity [1], 0–1.
    air_m_s
        Air speed over the piece [m/s].
    wet_ratio
        Wet film over the usual wet film [1], above 0, at most 10.
    carrier, min_c, label_c
        As in `progress_rate`: a word, [°C], [°C].

    Returns
    -------
    float
        Hours [h]; infinite where it stands still.

    Raises
    ------
    OutOfRange
        As `progress_rate`; or if the hours are negative or beyond a year (minutes slipped in).

    Notes
    -----
    `label_h` over `progress_rate`; same validity and source.

    Examples
    --------
    >>> stage_hours("oxidative", "recoat_from", 16.0, 20.0, 0.50)
    16.0
    >>> round(stage_hours("oxidative", "recoat_from", 16.0, 12.0, 0.50), 1)
    28.4
    """
    need_range("label_h", label_h, 0.0, 8760.0, "h", "minutes taken for hours")
    rate = progress_rate(
        family, stage, temp_c, rh, air_m_s, wet_ratio, carrier=carrier, min_c=min_c, label_c=label_c
    )
    return label_h / rate if rate else math.inf


def stage_spread(stage: str, temp_c: float, rh: float) -> float:
    """
    Return how far the hours to a stage may be off, as a factor.

    Parameters
    ----------
    stage
        One of `STAGES`.
    temp_c
        Air temperature [°C], −10 to 60.
    rh
        Relative humidity [1], 0–1.

    Returns
    -------
    float
        Factor [1]: the hours lie between hours ÷ factor and hours × factor, four times in five.

    Raises
    ------
    OutOfRange
        If the stage is not known, `rh` is a percentage or the temperature is in °F or kelvin.

    Notes
    -----
    A third either way in ordinary room air, twofold outside it and always for the full cure.
    Judgement, from the comparison with the data that could be read ("Comparison with readable data").

    Examples
    --------
    >>> stage_spread("touch", 20.0, 0.50), stage_spread("touch", 12.0, 0.50)
    (1.35, 2.0)
    """
    need_choice("stage", stage, STAGES)
    need_air(temp_c, rh)
    ordinary = 15.0 <= temp_c <= 30.0 and 0.30 <= rh <= 0.75
    return 1.35 if ordinary and stage != "cured" else 2.0


def _power(base: float, exponent: float) -> float:
    """Return the power as a float; 0 to the 0 is 1, so that a share of none takes no part."""
    return float(base**exponent)
