"""Air as it is said on the command line: ``8 C, 80 %``."""

from typing import Final

from refettle.domain.air import Air
from refettle.files.amounts import Unclear, quoted, share, temp_c

USUAL_RH: Final = 0.65
"""Humidity taken for a shed or garage where none is said [1]; judgement."""
_EG: Final = 'write temperature and humidity, e.g. "8 C, 80 %"'
_WARMEST_C, _COLDEST_C = 45.0, -10.0


def read_air_text(text: str) -> Air | Unclear:
    """
    Return air from a line of text.

    Parameters
    ----------
    text
        Temperature with its unit and humidity in percent, in any order, a comma, ``and`` or a space between.

    Returns
    -------
    Air or Unclear
        The air; where no humidity is said, that of a usual garage.

    Examples
    --------
    >>> air = read_air_text("8 C, 80 %")
    >>> (air.temp_c, air.rh)
    (8.0, 0.8)
    """
    words = text.replace("%", " % ").replace(" and ", ",").replace("humidity", "").replace("/", ",")
    parts = [part.strip() for part in words.split(",") if part.strip()]
    if len(parts) == 1 and "%" in parts[0]:
        head, _, tail = parts[0].removesuffix("%").strip().rpartition(" ")
        parts = [head.strip(), f"{tail} %"] if head else parts
    degrees = [part for part in parts if "%" not in part]
    damp = [part for part in parts if "%" in part]
    if len(degrees) != 1 or len(damp) > 1:
        return Unclear(what=f"{quoted(text)} is no air", do=_EG)
    temp = temp_c(degrees[0])
    if isinstance(temp, Unclear):
        return Unclear(what=temp.what, do=_EG)
    rh = share(damp[0]) if damp else USUAL_RH
    if isinstance(rh, Unclear):
        return Unclear(what=rh.what, do=_EG)
    if not _COLDEST_C <= temp <= _WARMEST_C:
        return Unclear(what=f"{temp:g} °C is no air one works in", do=_EG)
    if not 0.05 <= rh <= 1.0:
        return Unclear(what=f"{rh * 100:g} % is no humidity of a room", do=_EG)
    return Air(temp_c=temp, rh=rh)
