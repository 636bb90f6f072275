"""Why a surface gets its steps, as a page: the reasons, and the facts they rest on."""

from typing import Final

from refettle.cli.page import Page
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow
from refettle.services.why import Explanation

_MARK: Final = 6
_UNITS: Final = {"1": "", "C": "°C", "um": "µm", "m2/h": "m²/h", "h/m2": "h/m²", "m3/m3": ""}


def why_text(said: Explanation, know: Knowledge, currency: str, page: Page) -> str:
    """
    Return the page of an explanation.

    Parameters
    ----------
    said
        The explanation.
    know
        Names and sources.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Lines with numbers that lead to the facts below them.
    """
    page.heading(said.title)
    page.gap()
    numbers = {row.id: number for number, row in enumerate(said.rows, start=1)}
    for line in said.lines:
        marks = [str(numbers[id_]) for id_ in line.because if id_ in numbers]
        page.write(line.text + (f" [{', '.join(marks)}]" if marks else ""), indent=2, hang=3)
    if said.rows:
        page.heading("What this rests on")
    for number, row in enumerate(said.rows, start=1):
        page.marked(f"[{number}]", fact_words(row, know, currency), indent=1, column=_MARK)
    return page.text()


def fact_words(row: FactRow, know: Knowledge, currency: str) -> str:
    """
    Return a fact as a sentence: of what, which property, value and range, grade and source.

    Parameters
    ----------
    row
        The row.
    know
        Names and sources.
    currency
        Word for money.

    Returns
    -------
    str
        E.g. ``dewaxed shellac, may be recoated from: 2 h (1–4 h); handbook: title, table 4``.
    """
    kind, _, id_ = row.subject.partition(":")
    unit = _UNITS.get(row.unit, row.unit).replace("money", currency)
    after = f" {unit}" if unit else ""
    width = "" if row.low is None or row.high is None else f" ({row.low:.3g}–{row.high:.3g}{after})"
    said = f"{know.name(kind, id_)}, {_meaning(row, kind, know)}: {_valued(row.value, know)}{after}{width}"
    source = know.sources.get(row.source)
    title = source.title if source else row.source.replace("-", " ")
    if title.casefold().startswith(row.grade):
        return f"{said}; {row.grade}"
    return f"{said}; {row.grade}: {title}" + (f", {row.place}" if row.place else "")


def _meaning(row: FactRow, kind: str, know: Knowledge) -> str:
    """Return what a property says: the first clause of its meaning."""
    prop = know.properties.get(kind, {}).get(row.prop)
    if prop is None or not prop.meaning:
        return row.prop.replace("_", " ")
    return prop.meaning.partition(":")[0].partition(";")[0].partition("(")[0].strip()


def _valued(cell: str, know: Knowledge) -> str:
    """Return a value with ids as names."""
    return ", ".join(_name(word.strip(), know) for word in cell.split(";"))


def _name(word: str, know: Knowledge) -> str:
    """Return the name of whatever has that id, the word itself where nothing has."""
    for kind in know.identities:
        if know.has(kind, word):
            return know.name(kind, word)
    return word
