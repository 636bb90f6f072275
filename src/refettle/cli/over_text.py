"""What goes over what, as a page: the verdict, the ways that hold in each state, and the reasons of the others."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.words import chance_words
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.services.over import BARRIER, WAYS, Meeting, Pair
from refettle.services.step_words import wait_words

_ANSWERS: Final = {"as it is": "yes", "scuffed": "scuff first", "barrier": "shellac between"}
_SAID: Final = {
    "as it is": "holds as it is",
    "scuffed": "holds only after scuffing (P220 to P320, dust off)",
    "barrier": "holds only over a barrier: a coat of dewaxed shellac between",
}

_REASONS: Final = 3


def pair_text(know: Knowledge, pair: Pair, page: Page) -> str:
    """
    Return the page of one coat over another.

    Parameters
    ----------
    know
        Names and hours.
    pair
        The two, in every state and way.
    page
        Empty page of the right width.

    Returns
    -------
    str
        A verdict for each state of the lower film first, then what goes wrong otherwise.
    """
    upper, lower = know.film(pair.upper), know.film(pair.lower)
    page.heading(f"{_start(upper.name)} over {lower.name}")
    for state in pair.states:
        page.write(f"{_start(_state_words(lower, state))}: {_verdict(know, pair, state)}.", indent=2, hang=4)
    if all(pair.at(state, "as it is").holds for state in pair.states):
        _rest(page)
        return page.text()
    page.heading("What goes wrong otherwise")
    for state in pair.states:
        for meeting in (m for m in pair.meetings if m.state == state and not m.holds):
            page.gap()
            page.write(f"{_start(_state_words(lower, state))}, {_way_words(meeting)}:", indent=2, hang=2)
            for hit in meeting.hits[:_REASONS]:
                said = f"{know.name('fault', hit.fault)}: {hit.why}"
                page.marked(chance_words(hit.chance), said, indent=4, column=25)
    _rest(page)
    return page.text()


def table_text(know: Knowledge, lower: str, pairs: tuple[Pair, ...], page: Page) -> str:
    """
    Return the page of all usual coats over one.

    Parameters
    ----------
    know
        Names.
    lower
        Id of the class below.
    pairs
        Every usual coat over it, best first.
    page
        Empty page of the right width.

    Returns
    -------
    str
        A line a coat.
    """
    below = know.film(lower)
    page.heading(f"What goes over {below.name}, best first")
    for state in pairs[0].states if pairs else ():
        page.write(f"{_SHORT[state]}: {_state_words(below, state)}.", indent=2, hang=2)
    page.gap()
    states = pairs[0].states if pairs else ()
    head = "".join(f"{_SHORT[state]:<{_CELL}}" for state in states)
    page.write(f"{'Coat':<{_NAME}}{head}".replace(" ", "\u00a0"), indent=2)
    for pair in pairs:
        cells = "".join(f"{_cell(pair.best(state)):<{_CELL}}" for state in states)
        name = know.name("film", pair.upper)
        page.marked(name if len(name) < _NAME - 1 else f"{name[: _NAME - 3]}…", cells, indent=2, column=_NAME + 2)
    page.gap()
    page.write(
        f'"shellac between" is a coat of {know.name("film", BARRIER)}. Why: '
        f'refettle facts COAT --over "{below.name}".',
        indent=2,
    )
    _rest(page)
    return page.text()


_NAME: Final = 30
_CELL: Final = 16
_SHORT: Final = {"fresh": "Fresh", "cured": "Cured", "old": "Old film"}


def _cell(best: Meeting) -> str:
    """Return one cell of the table."""
    return _ANSWERS[best.way] if best.holds else "no"


def _verdict(know: Knowledge, pair: Pair, state: str) -> str:
    """Return what is said of one state of the lower film."""
    best = pair.best(state)
    if best.holds:
        first = pair.at(state, WAYS[0])
        if best.way == WAYS[0] or not first.hits:
            return _SAID[best.way]
        return f"{_SAID[best.way]} – else {know.name('fault', first.hits[0].fault)}, {chance_words(first.chance)}"
    worst = best.hits[0]
    return (
        f"no – {_way_words(best)}, {know.name('fault', worst.fault)} stays {chance_words(worst.chance)}: {worst.why}"
    )


def _way_words(meeting: Meeting) -> str:
    """Return a way as it stands in a sentence."""
    return {"as it is": "as it is", "scuffed": "scuffed", "barrier": "over dewaxed shellac"}[meeting.way]


def _state_words(lower: FilmFacts, state: str) -> str:
    """Return a state of the lower film with its hours."""
    if state == "old":
        return "an old film, sound and washed"
    if state == "cured":
        return f"cured ({wait_words(max(lower.cured_h, lower.recoat_from_h))})"
    until = f" to {wait_words(lower.recoat_until_h)}" if lower.recoat_until_h > 0 else ""
    return f"at its recoat time ({wait_words(lower.recoat_from_h)}{until} after laying)"


def _rest(page: Page) -> None:
    """Write what the answer holds for."""
    page.gap()
    page.write(
        "On flat, clean, dry wood at 20 °C and 50 % humidity, by the rules of adhesion, lifting, cure and hardness; "
        "chances are judgement. Wash first; the label decides. Your own piece: refettle foresee FILE.",
        indent=2,
    )


def _start(words: str) -> str:
    """Return words with a capital at their start."""
    return f"{words[:1].upper()}{words[1:]}"
