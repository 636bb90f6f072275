"""What leads to a fault, as a page: how to tell the causes apart, what avoids each, and what mends it."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.telling_text import write_tests
from refettle.cli.words import chance_words, hours_words, minutes_words
from refettle.domain.plan import Range
from refettle.knowledge.knowledge import Knowledge
from refettle.services.causes import KnownCause, KnownFault, ShownCase
from refettle.services.telling import tests_for

_ODDS: Final = 22
_BACK: Final = {
    "nothing": "no coat mends it",
    "surface": "the film may stay",
    "film": "level the film or take it off",
    "wood": "take it off to what holds, often to the wood",
}
_SITS: Final = {
    "wood": "in the wood",
    "below": "in what is below",
    "between": "between the films",
    "film": "in the film",
    "on top": "on top",
}
_MOST_CASES: Final = 2
_DAY_H: Final = 24.0


def causes_text(know: Knowledge, word: str, faults: tuple[KnownFault, ...], page: Page) -> str:
    """
    Return the page of some faults.

    Parameters
    ----------
    know
        Names, tests and sources.
    word
        What was asked for.
    faults
        Faults with their causes.
    page
        Empty page of the right width.

    Returns
    -------
    str
        How to tell the causes apart first, where a test does; then the causes, likeliest first.
    """
    causes = [cause for fault in faults for cause in fault.causes]
    told = tests_for(know, (f"rule:{cause.card.id}" for cause in causes))
    if told and len(causes) > 1:
        page.heading(f'"{word}": tell it apart first')
        write_tests(page, told, errors=False)
    for fault in faults:
        _fault(page, know, fault)
    page.gap()
    page.write(_rests_on(know, causes), hang=2)
    return page.text()


def _fault(page: Page, know: Knowledge, fault: KnownFault) -> None:
    """Write one fault: its likeliest cause, its mending, then each cause."""
    page.heading(_start(know.name("fault", fault.fault)))
    first = fault.causes[0]
    if first.cases:
        case = first.cases[0]
        page.write(f"First suspect: {case.why}. Avoid it: {case.avoided}.", indent=2, hang=2)
    page.write(f"Mend: {_mending(fault)}.", indent=2, hang=2)
    if fault.signs:
        page.write(f"Shows: {'; '.join(fault.signs)}.", indent=2, hang=2)
    page.gap()
    page.write("Causes, each as likely as in its typical case:", indent=2)
    for cause in fault.causes:
        _cause(page, know, fault, cause)


def _mending(fault: KnownFault) -> str:
    """Return what mends a fault, how far one has to go back, and what it takes."""
    hours = fault.hours_m2
    work = Range(low=hours.low * 60, likely=hours.likely * 60, high=hours.high * 60)
    days = Range(
        low=fault.days.low * _DAY_H, likely=fault.days.likely * _DAY_H, high=fault.days.high * _DAY_H
    )
    done = [fault.mend] if fault.mend else []
    return "; ".join(
        (*done, _BACK[fault.back], f"{minutes_words(work)} of work a m², {hours_words(days)} lost")
    )


def _cause(page: Page, know: Knowledge, fault: KnownFault, cause: KnownCause) -> None:
    """Write one cause with its cases."""
    own = [sign for sign in cause.card.signs if sign not in fault.signs]
    for number, case in enumerate(cause.cases[:_MOST_CASES]):
        page.marked(chance_words(case.chance), _start(case.name), indent=2, column=_ODDS)
        if not number or case.why != cause.cases[0].why:
            page.write(f"{_start(case.why)}.", indent=_ODDS, hang=2)
        page.write(_avoided(case), indent=_ODDS, hang=2)
    shows = "; ".join((*own, f"{_when(cause)}, {_SITS.get(cause.card.layer, cause.card.layer)}"))
    page.write(f"Shows: {shows}.", indent=_ODDS, hang=2)
    before = [test for test in cause.tests if f"rule:{cause.card.id}" not in know.test(test).detects]
    if before:
        page.write(
            f"Tells it: {', '.join(know.name('test', test) for test in before)}.", indent=_ODDS, hang=2
        )


def _avoided(case: ShownCase) -> str:
    """Return what avoids a case and what is left of the chance."""
    return f"Avoid: {case.avoided} – then {chance_words(case.left)}."


def _when(cause: KnownCause) -> str:
    """Return when a cause usually shows."""
    first, last = cause.card.onset
    if first == "immediate":
        return "at once" if last == first else f"at once or {last} later"
    return f"{last} later" if first == last else f"{first} to {last} later"


def _rests_on(know: Knowledge, causes: list[KnownCause]) -> str:
    """Return the sources of the rules, and what the chances rest on."""
    keys = dict.fromkeys(key for cause in causes for key in cause.card.sources)
    titles = ", ".join(know.sources[key].title if key in know.sources else key for key in keys)
    return f"Rests on: {titles}. How likely: judgement, held to {sum(len(c.cases) for c in causes)} cases."


def _start(words: str) -> str:
    """Return words with a capital at their start."""
    return f"{words[:1].upper()}{words[1:]}"
