"""What goes over what, as a page: the verdict, the ways that hold in each state, and the reasons of the others."""

from collections.abc import Hashable, Iterable
from typing import Final, TypeVar

from refettle.cli.page import Page
from refettle.cli.words import chance_words
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.services.over import BARRIER, STATES, WAYS, Meeting, Pair
from refettle.services.step_words import wait_words

_ANSWERS: Final = {"as it is": "yes", "scuffed": "scuff", "barrier": "barrier"}
_SAID: Final = {
    "as it is": "holds as it is",
    "scuffed": "holds only after scuffing (P220 to P320, dust off)",
    "barrier": "holds only over a barrier: a coat of dewaxed shellac between",
}

_REASONS: Final = 3
Said = TypeVar("Said", bound=Hashable)


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
    for verdict, states in _alike((_verdict(know, pair, state), state) for state in pair.states):
        which = "Fresh, cured or old" if len(states) == len(STATES) else _start(_states_words(lower, states))
        page.write(f"{which}: {verdict}.", indent=2, hang=2)
    if all(pair.at(state, "as it is").holds for state in pair.states):
        _rest(page)
        return page.text()
    page.heading("What goes wrong otherwise")
    failing = [m for way in WAYS for m in pair.meetings if m.way == way and not m.holds]
    for (way, reasons), states in _alike(((_way_words(m), _reasons(know, m)), m.state) for m in failing):
        page.gap()
        which = ", ".join(_SHORT[state].lower() for state in states)
        page.write(f"{_start(way)} ({which}):", indent=2, hang=2)
        for odds, said in reasons:
            page.marked(odds, said, indent=4, column=25)
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
    page.write(f"{'Coat':<{_NAME}}{head}".rstrip().replace(" ", "\u00a0"), indent=2)
    for pair in pairs:
        cells = "".join(f"{_cell(pair.best(state)):<{_CELL}}" for state in states)
        name = know.name("film", pair.upper)
        page.marked(name, cells.rstrip().replace(" ", "\u00a0"), indent=2, column=_NAME + 2)
    page.gap()
    page.write(
        f"yes: as it is; scuff: only scuffed dull; barrier: only with a coat of {know.name('film', BARRIER)} "
        f'between. Why: refettle facts COAT --over "{below.name}".',
        indent=2,
    )
    _rest(page)
    return page.text()


_NAME: Final = 38
_CELL: Final = 12
_SHORT: Final = {"fresh": "Fresh", "cured": "Cured", "old": "Old film"}


def _alike(said: Iterable[tuple[Said, str]]) -> list[tuple[Said, tuple[str, ...]]]:
    """Return what is said with all the states it is said of, in the order it is first said."""
    found: dict[Said, list[str]] = {}
    for words, state in said:
        found.setdefault(words, []).append(state)
    return [(words, tuple(states)) for words, states in found.items()]


def _reasons(know: Knowledge, meeting: Meeting) -> tuple[tuple[str, str], ...]:
    """Return what goes wrong in a meeting, each with how likely."""
    return tuple(
        (chance_words(hit.chance), f"{know.name('fault', hit.fault)}: {hit.why}")
        for hit in meeting.hits[:_REASONS]
    )


def _states_words(lower: FilmFacts, states: tuple[str, ...]) -> str:
    """Return some states of the lower film in words."""
    words = [_state_words(lower, state) for state in states]
    return " or ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else words[0]


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
    return f"no – {_way_words(best)}, {know.name('fault', worst.fault)} stays {chance_words(worst.chance)}: {worst.why}"


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
