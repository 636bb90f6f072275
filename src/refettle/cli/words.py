"""Numbers as one says them: chances in words, amounts with unit and range."""

from math import ceil, floor
from typing import Final

from refettle.domain.plan import Range
from refettle.planning.reasons import odds
from refettle.services.step_words import wait_words

chance_words = odds
"""A chance in words; one table for lines and pages, see ``docs/reference/words.md``."""

_DAY_H: Final = 24.0
_DAYS_FROM_H: Final = 36.0
_HOURS_FROM_MIN: Final = 120.0
_NONE: Final = 1e-6


def count_words(number: int, one: str, many: str = "") -> str:
    """Return a count with its noun: ``1 coat``, ``3 coats``."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def _step_for(high: float) -> float:
    """Return the step that numbers up to `high` are rounded to."""
    for limit, step in ((0.3, 0.05), (2.0, 0.1), (5.0, 0.5), (60.0, 1.0), (200.0, 5.0)):
        if high <= limit:
            return step
    return 10.0


def _rounded(value: float, step: float) -> float:
    """Return a value rounded to a step, halves up."""
    return floor(value / step + 0.5 + 1e-9) * step


def _span(low: float, high: float, unit: str, step: float) -> str:
    """Return ``3–5 h``, ``about 4 h``, ``up to 1 h`` or ``under 1 h``."""
    bottom, top = _rounded(low, step), _rounded(high, step)
    if bottom < 0 and top <= 0:
        return (
            f"about {_plain(bottom)} {unit}" if bottom == top else f"{_plain(bottom)} to {_plain(top)} {unit}"
        )
    if top <= 0:
        return f"under {step:g} {unit}"
    if bottom == top:
        return f"about {top:g} {unit}"
    if bottom <= 0 <= low:
        return f"up to {top:g} {unit}"
    return f"{_plain(bottom)}–{top:g} {unit}" if bottom >= 0 else f"{_plain(bottom)} to {top:g} {unit}"


def _plain(value: float) -> str:
    """Return a number with a true minus sign."""
    return f"−{-value:g}" if value < 0 else f"{value:g}"


def minutes_words(minutes: Range) -> str:
    """
    Return hands-on time.

    Parameters
    ----------
    minutes
        Time [min].

    Returns
    -------
    str
        ``4–9 min``, ``20–40 min``, ``1.5–2.5 h``; ``no time`` for none.

    Examples
    --------
    >>> minutes_words(Range(low=21.0, likely=30.0, high=46.0))
    '20–45 min'
    >>> minutes_words(Range(low=84.0, likely=120.0, high=180.0))
    '1.5–3 h'
    """
    if minutes.high <= 0:
        return "no time"
    if minutes.high >= _HOURS_FROM_MIN:
        return _span(minutes.low / 60, minutes.high / 60, "h", 0.5 if minutes.high < 600 else 1.0)
    return _span(minutes.low, minutes.high, "min", 1.0 if minutes.high < 15 else 5.0)


def hours_words(hours: Range) -> str:
    """
    Return elapsed time.

    Parameters
    ----------
    hours
        Time [h].

    Returns
    -------
    str
        ``2–5 h``; from a day and a half on in days: ``1.5–3 days``.

    Examples
    --------
    >>> hours_words(Range(low=54.0, likely=72.0, high=108.0))
    '2.5–4.5 days'
    """
    if hours.high <= 1.0:
        return _span(hours.low * 60, hours.high * 60, "min", 5.0)
    if hours.high <= _DAYS_FROM_H:
        return _span(hours.low, hours.high, "h", 0.5 if hours.high <= 6 else 1.0)
    days_high = hours.high / _DAY_H
    words = _span(hours.low / _DAY_H, days_high, "days", 0.5 if days_high < 7 else 1.0)
    return "about 1 day" if words == "about 1 days" else words


def wait_range_words(hours: Range) -> str:
    """
    Return a wait as one says it, with its range: ``overnight (9–18 h)``.

    Parameters
    ----------
    hours
        Wait [h].

    Returns
    -------
    str
        Empty for no wait; no range where it has no width.
    """
    said = wait_words(hours.likely)
    return said if not said or hours.low == hours.high else f"{said} ({hours_words(hours)})"


def money_words(money: Range, currency: str) -> str:
    """
    Return money.

    Parameters
    ----------
    money
        Amount [money].
    currency
        Word beside it.

    Returns
    -------
    str
        ``20–28 EUR``, ``up to 3 EUR``, ``under 1 EUR``; ``nothing`` for none.

    Examples
    --------
    >>> money_words(Range(low=0.3, likely=0.5, high=0.8), "EUR")
    'up to 1 EUR'
    """
    if money.low == money.high == 0:
        return "nothing"
    return _span(money.low, money.high, currency, 1.0 if abs(money.high) < 1000 else 10.0)


def rate_words(per_hour: Range, currency: str) -> str:
    """Return what an hour brings [money/h], losses with a minus."""
    return f"{money_words(per_hour, currency)} an hour"


def litres_words(litres: Range) -> str:
    """
    Return a volume.

    Parameters
    ----------
    litres
        Volume [L].

    Returns
    -------
    str
        ``0.2–0.4 L``, below a tenth ``30–60 ml``; empty for none.

    Examples
    --------
    >>> litres_words(Range(low=0.12, likely=0.15, high=0.21))
    '0.1–0.2 L'
    """
    if litres.high <= 0:
        return ""
    if litres.high < 0.1:
        return _span(litres.low * 1000, litres.high * 1000, "ml", 5.0 if litres.high >= 0.02 else 1.0)
    return _span(
        litres.low, litres.high, "L", 0.05 if litres.high < 0.15 else max(0.1, _step_for(litres.high))
    )


def pieces_words(pieces: Range) -> str:
    """Return a number of pieces [1], begun ones counted: ``2``, ``2–4``; empty for none."""
    if pieces.high <= 0:
        return ""
    low, high = ceil(pieces.low - _NONE), ceil(pieces.high - _NONE)
    return f"{high}" if low == high else f"{low}–{high}"


def area_words(area_m2: float) -> str:
    """Return an area [m²]: two digits below one, then one."""
    return f"{area_m2:.2f} m²" if area_m2 < 1 else f"{area_m2:.1f} m²"
