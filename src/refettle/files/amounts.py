"""
Amounts as people write them: a number and its unit, read from text.

Each reader returns the value in the unit that its name says, or an `Unclear` that says what is wrong
and what to write. Nothing is guessed: a bare number for a length, a comma that may be either sign, a
grit without its system are all unclear.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from refettle import units

_NUMBER = re.compile(r"[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)", re.ASCII)
_FRACTION = re.compile(r"(?:(\d{1,4})[ -])?(\d{1,4})/(\d{1,4})", re.ASCII)
_RANGE = re.compile(r"(?<=\d)\s*(?:-|–|—|to)\s*(?=\d)", re.ASCII)
_FEET_AND_INCHES = re.compile(r"(\d{1,2}) ?(?:ft|feet|foot|'|′),? ?(\S.*)")
_EXPONENT = re.compile(r"[+-]?[\d.,]+[eE][+-]?\d+", re.ASCII)
_FRACTION_SIGNS = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_LONGEST = 40

_LENGTH_WORDS = {
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "cm": "cm", "centimetre": "cm",
    "centimetres": "cm", "m": "m", "metre": "m", "metres": "m", "in": "in", "inch": "in", "inches": "in",
    '"': "in", "″": "in", "ft": "ft", "foot": "ft", "feet": "ft", "'": "ft", "′": "ft",
}  # fmt: skip
_AREA_WORDS = {
    "m2": "m2", "m²": "m2", "sq m": "m2", "cm2": "cm2", "cm²": "cm2", "sq cm": "cm2", "ft2": "ft2",
    "ft²": "ft2", "sq ft": "ft2", "in2": "in2", "in²": "in2", "sq in": "in2",
}  # fmt: skip
_VOLUME_WORDS = {
    "l": "L", "litre": "L", "litres": "L", "liter": "L", "liters": "L", "ml": "ml", "qt": "qt",
    "quart": "qt", "quarts": "qt", "pt": "pt", "pint": "pt", "pints": "pt", "gal": "gal",
    "gallon": "gal", "gallons": "gal", "fl oz": "fl oz", "floz": "fl oz",
}  # fmt: skip
_FILM_WORDS = {
    "um": "um", "µm": "um", "μm": "um", "micron": "um", "microns": "um", "mm": "mm", "mil": "mil",
    "mils": "mil",
}  # fmt: skip
_TIME_WORDS = {
    "min": "min", "mins": "min", "minute": "min", "minutes": "min", "h": "h", "hr": "h", "hrs": "h",
    "hour": "h", "hours": "h", "d": "day", "day": "day", "days": "day", "wk": "week", "week": "week",
    "weeks": "week",
}  # fmt: skip
_TEMPERATURE_WORDS = {"c": "C", "°c": "C", "f": "F", "°f": "F"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """
    Text that is no such amount.

    Attributes
    ----------
    what
        What is wrong, in half a sentence that begins with the text in quotes.
    do
        What to write instead.
    """

    what: str
    do: str


def quoted(text: str) -> str:
    """
    Return text in quotes, cut short and on one line.

    Parameters
    ----------
    text
        Anything a person wrote.

    Returns
    -------
    str
        The text in double quotes.
    """
    line = " ".join(text.split())
    return f'"{line[:_LONGEST]}…"' if len(line) > _LONGEST else f'"{line}"'


def _plain_number(text: str) -> float | None:
    """Return the number that the whole text is, or None; a comma before exactly three digits is not read."""
    if not _NUMBER.fullmatch(text) or len(text) > 20:
        return None
    if "," in text:
        if len(text.partition(",")[2]) == 3:
            return None
        text = text.replace(",", ".")
    return float(text)


def _quantity(text: str) -> float | None:
    """Return a plain number or a fraction such as ``24 1/2``."""
    fraction = _FRACTION.fullmatch(text)
    if fraction is None:
        return _plain_number(text)
    whole, over, under = fraction.groups()
    if int(under) == 0:
        return None
    return int(whole or 0) + int(over) / int(under)


def _plain_fractions(text: str) -> str:
    """Return text with signs such as ``½`` written as ``1/2``, apart from the number before them."""
    for sign, fraction in _FRACTION_SIGNS.items():
        text = text.replace(sign, f" {fraction}")
    return text


def _split(text: str) -> tuple[str, str]:
    """Split ``24 1/2 in`` into the number's text and the unit's word."""
    text = _plain_fractions(text)
    match = re.match(r"[-+\d.,/]+(?: +\d{1,4}/\d{1,4})?", text.strip(), re.ASCII)
    if match is None:
        return "", text.strip()
    return match.group().strip(), text.strip()[match.end() :].strip()


def _with_unit(
    text: str, *, noun: str, words: Mapping[str, str], per: Mapping[str, float], eg: str
) -> float | Unclear:
    """Return the amount in the inner unit, never below 0."""
    known = ", ".join(per)
    if _EXPONENT.match(text.strip()):
        return Unclear(
            what=f"{quoted(text)} is written with a power of ten", do=f"write the number out, e.g. {eg}"
        )
    number, word = _split(text)
    value = _quantity(number)
    if value is not None and not word:
        return Unclear(what=f"{quoted(text)} has no unit", do=f"name the unit ({known}), e.g. {eg}")
    if value is None:
        if "," in number and word:
            return Unclear(
                what=f"the comma in {quoted(text)} can be read two ways",
                do=f"write it with a point, e.g. {eg}",
            )
        return Unclear(
            what=f"{quoted(text)} is not {noun}", do=f"write a number and a unit ({known}), e.g. {eg}"
        )
    unit = words.get(" ".join(word.lower().split()))
    if unit is None:
        return Unclear(
            what=f"{quoted(word)} is not a unit of {noun.rpartition(' ')[2]}",
            do=f"use one of {known}, e.g. {eg}",
        )
    if value < 0:
        return Unclear(what=f"{quoted(text)} is below zero", do=f"write {noun} above zero, e.g. {eg}")
    return round(value * per[unit], 9)


def length_mm(text: str) -> float | Unclear:
    """
    Return a length.

    Parameters
    ----------
    text
        E.g. ``60 cm``, ``24 1/2 in``, ``2 ft 6 in``.

    Returns
    -------
    float | Unclear
        Length [mm], above 0.

    Examples
    --------
    >>> length_mm("24 1/2 in")
    622.3
    """
    both = _FEET_AND_INCHES.fullmatch(text.strip())
    if both is not None:
        feet, inches = length_mm(f"{both.group(1)} ft"), length_mm(both.group(2))
        if isinstance(feet, Unclear) or isinstance(inches, Unclear):
            return Unclear(what=f"{quoted(text)} is not a length", do="write feet and inches, e.g. 2 ft 6 in")
        return round(feet + inches, 9)
    value = _with_unit(text, noun="a length", words=_LENGTH_WORDS, per=units.MM_PER, eg="60 cm")
    if value == 0:
        return Unclear(what=f"{quoted(text)} is no length", do="write a length above zero, e.g. 60 cm")
    return value


def area_m2(text: str) -> float | Unclear:
    """
    Return an area.

    Parameters
    ----------
    text
        E.g. ``0.8 m2``, ``9 sq ft``.

    Returns
    -------
    float | Unclear
        Area [m²], above 0.

    Examples
    --------
    >>> area_m2("80 cm2")
    0.008
    """
    value = _with_unit(text, noun="an area", words=_AREA_WORDS, per=units.M2_PER, eg="0.8 m2")
    if value == 0:
        return Unclear(what=f"{quoted(text)} is no area", do="write an area above zero, e.g. 0.8 m2")
    return value


def volume_l(text: str) -> float | Unclear:
    """
    Return a volume.

    Parameters
    ----------
    text
        E.g. ``1 qt``, ``0.75 L``, ``400 ml``; quarts, pints and gallons are US ones.

    Returns
    -------
    float | Unclear
        Volume [L], 0 or above.

    Examples
    --------
    >>> volume_l("750 ml")
    0.75
    """
    return _with_unit(text, noun="a volume", words=_VOLUME_WORDS, per=units.L_PER, eg="0.75 L")


def film_um(text: str) -> float | Unclear:
    """
    Return the thickness of a film or a veneer.

    Parameters
    ----------
    text
        E.g. ``0.7 mm``, ``80 um``, ``3 mil``.

    Returns
    -------
    float | Unclear
        Thickness [µm], 0 or above.

    Examples
    --------
    >>> film_um("0.7 mm")
    700.0
    """
    return _with_unit(text, noun="a thickness", words=_FILM_WORDS, per=units.UM_PER, eg="0.7 mm")


def time_h(text: str) -> float | Unclear:
    """
    Return a length of time.

    Parameters
    ----------
    text
        E.g. ``4 h``, ``30 min``, ``2 days``.

    Returns
    -------
    float | Unclear
        Time [h], 0 or above.

    Examples
    --------
    >>> time_h("2 days")
    48.0
    """
    return _with_unit(text, noun="a time", words=_TIME_WORDS, per=units.H_PER, eg="4 h")


def temp_c(text: str) -> float | Unclear:
    """
    Return a temperature.

    Parameters
    ----------
    text
        E.g. ``12 C``, ``54 °F``.

    Returns
    -------
    float | Unclear
        Temperature [°C], between -40 and 60.

    Examples
    --------
    >>> temp_c("50 F")
    10.0
    """
    number, word = _split(text)
    value = _plain_number(number)
    unit = _TEMPERATURE_WORDS.get(word.lower().replace("° ", "°"))
    if value is None or unit is None:
        what = (
            f"{quoted(text)} has no unit"
            if value is not None and not word
            else f"{quoted(text)} is not a temperature"
        )
        return Unclear(what=what, do="write degrees with C or F, e.g. 12 C")
    degrees = round(units.celsius(value), 9) if unit == "F" else value
    if not -40.0 <= degrees <= 60.0:
        return Unclear(
            what=f"{quoted(text)} is no air to work in", do="write a temperature between -40 C and 60 C"
        )
    return degrees


def share(text: str) -> float | Unclear:
    """
    Return a share or a chance.

    Parameters
    ----------
    text
        E.g. ``30 %`` or ``0.3``; a bare number above 1 is unclear.

    Returns
    -------
    float | Unclear
        Share [1], 0–1.

    Examples
    --------
    >>> share("30 %")
    0.3
    """
    number, word = _split(text)
    value = _plain_number(number)
    if value is None or word not in {"", "%", "percent"}:
        return Unclear(
            what=f"{quoted(text)} is not a share", do="write a percentage or a number from 0 to 1, e.g. 30 %"
        )
    if word:
        value = round(value / 100.0, 9)
    elif value > 1:
        return Unclear(what=f"{quoted(text)} has no unit", do=f"write {number} % or a number from 0 to 1")
    if not 0 <= value <= 1:
        return Unclear(
            what=f"{quoted(text)} is outside 0 % to 100 %", do="write a percentage from 0 % to 100 %"
        )
    return value


def count(text: str) -> int | Unclear:
    """
    Return a whole number of things.

    Parameters
    ----------
    text
        E.g. ``3``.

    Returns
    -------
    int | Unclear
        Number [1], 1–100.

    Examples
    --------
    >>> count("3")
    3
    """
    stripped = text.strip()
    if not re.fullmatch(r"\d{1,3}", stripped, re.ASCII) or not 1 <= int(stripped) <= 100:
        return Unclear(
            what=f"{quoted(text)} is not a whole number from 1 to 100", do="write a whole number, e.g. 2"
        )
    return int(stripped)


def whole(text: str) -> int | Unclear:
    """
    Return a whole number, nought included.

    Parameters
    ----------
    text
        E.g. ``0``.

    Returns
    -------
    int | Unclear
        Number [1], 0–999.

    Examples
    --------
    >>> whole("0")
    0
    """
    stripped = text.strip()
    if not re.fullmatch(r"\d{1,3}", stripped, re.ASCII):
        return Unclear(what=f"{quoted(text)} is not a whole number", do="write a whole number, e.g. 3")
    return int(stripped)


def number(text: str) -> float | Unclear:
    """
    Return a plain number that has no unit.

    Parameters
    ----------
    text
        E.g. ``2.5``.

    Returns
    -------
    float | Unclear
        Number [1], 0 or above.

    Examples
    --------
    >>> number("2,5")
    2.5
    """
    value = _plain_number(text.strip())
    if value is None or value < 0:
        return Unclear(
            what=f"{quoted(text)} is not a plain number of zero or more", do="write a number, e.g. 2.5"
        )
    return value


def money(text: str) -> float | Unclear:
    """
    Return a sum of money in the workshop's currency.

    Parameters
    ----------
    text
        E.g. ``40`` or ``12.50``; no sign, since the currency stands in the workshop file.

    Returns
    -------
    float | Unclear
        Sum [money], 0 or above.

    Examples
    --------
    >>> money("12.50")
    12.5
    """
    value = _plain_number(text.strip())
    if value is None:
        return Unclear(
            what=f"{quoted(text)} is not a sum of money",
            do="write the number alone, e.g. 40; the currency stands in the workshop file",
        )
    if value < 0:
        return Unclear(what=f"{quoted(text)} is below zero", do="write a sum of zero or more, e.g. 40")
    return value


def money_range(text: str) -> tuple[float, float] | Unclear:
    """
    Return a range of money; one sum is a range without width.

    Parameters
    ----------
    text
        E.g. ``180-240`` or ``200``.

    Returns
    -------
    tuple[float, float] | Unclear
        Low and high sum [money].

    Examples
    --------
    >>> money_range("180-240")
    (180.0, 240.0)
    """
    parts = _RANGE.split(text.strip())
    sums = [money(part) for part in parts]
    if len(sums) > 2 or any(isinstance(part, Unclear) for part in sums):
        return Unclear(what=f"{quoted(text)} is not a range of money", do="write two sums, e.g. 180-240")
    low, high = (part for part in (sums[0], sums[-1]) if not isinstance(part, Unclear))
    if low > high:
        return Unclear(what=f"{quoted(text)} runs downwards", do="write the lower sum first, e.g. 180-240")
    return low, high


def grit(text: str) -> int | Unclear:
    """
    Return an abrasive's number in the P system.

    Parameters
    ----------
    text
        E.g. ``P180``.

    Returns
    -------
    int | Unclear
        FEPA P number [1], 12–2500.

    Examples
    --------
    >>> grit("P180")
    180
    """
    match = re.fullmatch(r"[Pp] ?(\d{2,4})", text.strip(), re.ASCII)
    if match is None:
        bare = re.search(r"\d{2,4}", text, re.ASCII)
        eg = f"P{bare.group()}" if bare else "P180"
        return Unclear(
            what=f"{quoted(text)} names no grit in the P system",
            do=f"write the number on the back of the sheet with its P, e.g. {eg}",
        )
    if not 12 <= int(match.group(1)) <= 2500:
        return Unclear(what=f"{quoted(text)} is no grit that is made", do="write a number from P12 to P2500")
    return int(match.group(1))


_YEAR = r"(1[5-9]\d\d|20\d\d)"
_ABOUT_YEARS = 10


def years(text: str) -> tuple[int, int] | Unclear | None:
    """
    Return the years between which a piece was made.

    Parameters
    ----------
    text
        ``1930s``, ``1934``, ``about 1900`` (ten years either way), ``1925-1940``, ``unknown``.

    Returns
    -------
    tuple[int, int] | Unclear | None
        First and last year [year]; None = not known.

    Examples
    --------
    >>> years("1930s")
    (1930, 1939)
    """
    said = " ".join(text.lower().split())
    if said == "unknown":
        return None
    if decade := re.fullmatch(_YEAR[:-1] + r")s", said, re.ASCII):
        first = int(decade.group(1))
        if first % 100 == 0:
            return Unclear(
                what=f"{quoted(text)} may be ten years or a hundred",
                do=f"write {first}-{first + 9} or {first}-{first + 99}",
            )
        if first % 10 == 0:
            return first, first + 9
    if year := re.fullmatch(_YEAR, said, re.ASCII):
        return int(year.group(1)), int(year.group(1))
    if about := re.fullmatch(r"(?:about|around|c\.?|circa) ?" + _YEAR, said, re.ASCII):
        middle = int(about.group(1))
        return middle - _ABOUT_YEARS, middle + _ABOUT_YEARS
    if span := re.fullmatch(_YEAR + r" ?(?:-|–|to) ?" + _YEAR, said, re.ASCII):
        first, last = int(span.group(1)), int(span.group(2))
        if first <= last:
            return first, last
        return Unclear(
            what=f"{quoted(text)} runs downwards", do="write the earlier year first, e.g. 1925-1940"
        )
    return Unclear(
        what=f"{quoted(text)} is no time that can be read",
        do="write 1930s, 1934, about 1900, 1925-1940 or unknown",
    )
