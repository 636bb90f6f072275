"""``refettle calc``: small sums of the bench, each with its formula."""

import sys
from argparse import Namespace
from collections.abc import Callable, Sequence
from typing import Final

from refettle.bootstrap import WrongCall
from refettle.cli.json_parts import SCHEMA_VERSION, rounded, written
from refettle.cli.page import Page
from refettle.cli.terminal import Answer, page_width
from refettle.domain.air import Air
from refettle.files.air_text import read_air_text
from refettle.files.amounts import Unclear, area_m2, count, film_um, grit, length_mm, share
from refettle.services.calc import Sum, coverage, dew, film_build, grits, settle, wood_moisture

_TAKES: Final = {
    "moisture": 'an air: calc moisture "18 C, 65 %"',
    "settle": 'a thickness: calc settle "20 mm"',
    "dew": 'an air: calc dew "12 C, 80 %"',
    "film": 'wet film and solids: calc film "75 um" "34 %"',
    "cover": 'area, coats, wet film, solids: calc cover "2.4 m2" 2 "75 um" "34 %"',
    "grits": "the first and the last: calc grits P80 P220",
}


def run(wishes: Namespace) -> Answer:
    """
    Return one small sum, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 0.

    Raises
    ------
    WrongCall
        If the sum is not known, or a value cannot be read.
    """
    if wishes.sum not in _TAKES:
        raise WrongCall(what=f'"{wishes.sum}" is no sum', do=f"name one of {', '.join(_TAKES)}")
    try:
        found = _MADE[wishes.sum](wishes.value)
    except ValueError as slip:
        raise WrongCall(what=str(slip), do=_TAKES[wishes.sum]) from slip
    if wishes.json:
        return Answer(out=_json(wishes.sum, found))
    page = Page(width=page_width(sys.stdout))
    for line in found.lines:
        page.write(line, hang=2)
    page.gap()
    page.write(f"By: {found.formula}", hang=4)
    page.write(f"Source: {found.source}", hang=4)
    return Answer(out=page.text())


def _json(kind: str, found: Sum) -> str:
    """Return a sum as a document; ``calc.schema.json`` describes every name."""
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "sum": kind,
            "values": {name: rounded(value) for name, value in found.values},
            "lines": list(found.lines),
            "formula": found.formula,
            "source": found.source,
        }
    )


def _need(values: Sequence[str], number: int, kind: str) -> None:
    """Raise WrongCall where other than so many values were given."""
    if len(values) != number:
        given = "1 value was" if len(values) == 1 else f"{len(values)} values were"
        raise WrongCall(what=f"{given} given, {number} needed", do=_TAKES[kind])


def _read(value: object, kind: str) -> float:
    """Return a number that was read, or raise WrongCall with what is unclear in it."""
    if isinstance(value, Unclear):
        raise WrongCall(what=value.what, do=f"{value.do}; {_TAKES[kind]}")
    return float(value)  # type: ignore[arg-type]  # a reader's number


def _air(values: Sequence[str], kind: str) -> Air:
    """Return the air that was given."""
    _need(values, 1, kind)
    air = read_air_text(values[0])
    if isinstance(air, Unclear):
        raise WrongCall(what=air.what, do=_TAKES[kind])
    return air


def _settle(values: Sequence[str]) -> Sum:
    """Return how long a board takes to come to the moisture of its room."""
    _need(values, 1, "settle")
    thick_mm = _read(length_mm(values[0]), "settle")
    if not 0.3 <= thick_mm <= 200.0:
        raise WrongCall(what=f"{thick_mm:g} mm is no board", do='name 0.3 to 200 mm: calc settle "20 mm"')
    return settle(thick_mm)


def _film(values: Sequence[str]) -> Sum:
    """Return the film that is left."""
    _need(values, 2, "film")
    return film_build(_read(film_um(values[0]), "film"), _read(share(values[1]), "film"))


def _cover(values: Sequence[str]) -> Sum:
    """Return the litres that it takes."""
    _need(values, 4, "cover")
    area, wet, solids = area_m2(values[0]), film_um(values[2]), share(values[3])
    coats = int(_read(count(values[1]), "cover"))
    return coverage(_read(area, "cover"), coats, _read(wet, "cover"), _read(solids, "cover"))


def _grits(values: Sequence[str]) -> Sum:
    """Return the sequence of grits."""
    _need(values, 2, "grits")
    first, last = (int(_read(grit(value), "grits")) for value in values)
    return grits(first, last)


_MADE: Final[dict[str, Callable[[Sequence[str]], Sum]]] = {
    "moisture": lambda values: wood_moisture(_air(values, "moisture")),
    "settle": _settle,
    "dew": lambda values: dew(_air(values, "dew")),
    "film": _film,
    "cover": _cover,
    "grits": _grits,
}
