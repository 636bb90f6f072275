"""Air of a day and of a building: the daily swing, and how an unheated room follows it late and damp."""

import math
from collections.abc import Sequence

from refettle.physics.air import saturation_pa
from refettle.physics.limits import need_above, need_range

_COLDEST_H = 5.0
"""Hour of the day at which it is coldest [h]: about sunrise."""
_WARMEST_H = 15.0
_DRIEST, _DAMPEST = 0.05, 0.99


def day_temps_c(low_c: float, high_c: float) -> tuple[float, ...]:
    """
    Return the temperature through a typical day.

    Parameters
    ----------
    low_c, high_c
        Coldest and warmest of the day [°C], −40 to 60.

    Returns
    -------
    tuple of float
        24 temperatures, from midnight on [°C].

    Raises
    ------
    OutOfRange
        If a temperature is in °F or kelvin, or the high lies below the low.

    Notes
    -----
    Two half cosines, coldest at 5 and warmest at 15 o'clock: the usual shape for a day known by its two ends. Judgement.

    Examples
    --------
    >>> day = day_temps_c(4.0, 14.0)
    >>> day[5], day[15], round(day[10], 1)
    (4.0, 14.0, 9.0)
    """
    need_range("low_c", low_c, -40.0, 60.0, "°C", "°F or kelvin taken for °C")
    need_range("high_c", high_c, low_c, 60.0, "°C", "the high is below the low")
    return tuple(_swing(hour, low_c, high_c) for hour in range(24))


def _swing(hour: float, low_c: float, high_c: float) -> float:
    """Return the temperature at an hour of the day [°C]."""
    rise = _WARMEST_H - _COLDEST_H
    since = (hour - _COLDEST_H) % 24.0
    share = since / rise if since <= rise else 1.0 + (since - rise) / (24.0 - rise)
    return low_c + (high_c - low_c) * 0.5 * (1.0 - math.cos(math.pi * share))


def day_rhs(temps_c: Sequence[float], mean_rh: float) -> tuple[float, ...]:
    """
    Return the relative humidity through a day whose water in the air stays the same.

    Parameters
    ----------
    temps_c
        Temperatures of the day [°C].
    mean_rh
        Relative humidity at the mean temperature [1], 0–1.

    Returns
    -------
    tuple of float
        Relative humidity in the same hours [1].

    Raises
    ------
    OutOfRange
        If `mean_rh` is a percentage.

    Notes
    -----
    The vapour pressure of the mean is kept through the day; source of the saturation pressure: `saturation_pa`.

    Examples
    --------
    >>> [round(rh, 2) for rh in day_rhs([10.0, 14.0, 18.0], 0.60)]
    [0.78, 0.6, 0.46]
    """
    need_range("mean_rh", mean_rh, 0.0, 1.0, "1", "a percentage taken for a share")
    water = mean_rh * saturation_pa(sum(temps_c) / len(temps_c))
    return tuple(_kept(water / saturation_pa(temp)) for temp in temps_c)


def _kept(rh: float) -> float:
    """Return a humidity kept within what air can hold."""
    return min(_DAMPEST, max(_DRIEST, rh))


def indoors(
    temps_c: Sequence[float],
    rhs: Sequence[float],
    *,
    lag_h: float,
    air_changes_h: float,
    heated_to_c: float | None = None,
    heated_hours: frozenset[int] = frozenset(range(24)),
    damp_pa: float = 0.0,
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """
    Return the air in a room by the air outdoors.

    Parameters
    ----------
    temps_c, rhs
        Outdoors, hour by hour [°C], [1].
    lag_h
        Time in which the room makes up 63 % of a step outdoors [h], above 0: an open shed 2, a garage 10, a cellar 60.
    air_changes_h
        How often an hour its air is changed [1/h], above 0.
    heated_to_c
        Temperature that a heater holds [°C]; None = no heater.
    heated_hours
        Hours of the day at which the heater is on.
    damp_pa
        Vapour that floor and walls add [Pa].

    Returns
    -------
    tuple
        Temperatures [°C] and relative humidities [1] in the same hours.

    Raises
    ------
    OutOfRange
        If a time or a rate is not above 0.

    Notes
    -----
    One store of heat and one of vapour, each filling at its own rate; the first day is run three times before it
    counts. A heater warms the air at once and leaves its water as it was. Judgement.

    Examples
    --------
    >>> temps, rhs = indoors([10.0] * 24, [0.8] * 24, lag_h=10.0, air_changes_h=0.5, heated_to_c=18.0)
    >>> temps[0], round(rhs[0], 2)
    (18.0, 0.48)
    """
    need_above("lag_h", lag_h, 0.0, 1000.0, "h", "minutes taken for hours")
    need_above("air_changes_h", air_changes_h, 0.0, 100.0, "1/h", "changes a day taken for an hour")
    warms, airs = 1.0 - math.exp(-1.0 / lag_h), 1.0 - math.exp(-air_changes_h)
    outside = [rh * saturation_pa(temp) for temp, rh in zip(temps_c, rhs, strict=True)]
    first = min(24, len(temps_c))
    room = sum(temps_c[:first]) / first
    vapour = sum(outside[:first]) / first + damp_pa
    temps: list[float] = []
    damps: list[float] = []
    for turn in range(4):
        hours = range(first if turn < 3 else len(temps_c))
        for hour in hours:
            room += warms * (temps_c[hour] - room)
            vapour += airs * (outside[hour] + damp_pa - vapour)
            held = heated_to_c is not None and hour % 24 in heated_hours
            now = max(room, heated_to_c) if held and heated_to_c is not None else room
            vapour = min(vapour, _DAMPEST * saturation_pa(room))
            if turn == 3:
                temps.append(now)
                damps.append(_kept(vapour / saturation_pa(now)))
    return tuple(temps), tuple(damps)
