"""The first line of an answer to "why not": is it needed, would it be better, and by how much."""

from dataclasses import replace

from refettle.domain.piece import Look
from refettle.domain.plan import Route
from refettle.planning.clash import look_words
from refettle.planning.reasons import make_route
from refettle.services.cases import Case
from refettle.services.pools import weighed

_ALIKE = 0.02
_ALL = "money, hours, days and what may go wrong counted"


def without(case: Case, what: str) -> Route | None:
    """
    Return the best way that does without something.

    Parameters
    ----------
    case
        The group on its bench.
    what
        A verb, or the id of a class, remover or cleaner.

    Returns
    -------
    Route or None
        None where no way leads to the look without it.
    """
    menu = replace(case.menu, banned=case.menu.banned | {what})
    found = weighed(case, case.search(menu=menu))
    return make_route(case.bench, menu, found, "without it", with_reasons=False) if found.steps else None


def needed_words(case: Case, now: Route, other: Route | None, name: str) -> str:
    """Return whether something that the plan takes is needed."""
    if other is None:
        return f"Yes, {name} is needed: without it no way leads to {look_words(case.menu.look)}"
    more = other.cost - now.cost
    if more <= _ALIKE * now.cost:
        return f"No, {name} is not needed: without it is about as good"
    return f"Yes, rather {name}: without it costs about {_money(case, more)} more – {_ALL}"


def wanted_words(case: Case, now: Route | None, other: Route, name: str) -> str:
    """Return whether something that the plan leaves out would be better."""
    if now is None:
        return f"Yes: with {name} there is a way"
    more = other.cost - now.cost
    if more <= _ALIKE * now.cost:
        return f"As you like: with {name} is about as good"
    return f"No, {name} is not needed: with it costs about {_money(case, more)} more – {_ALL}"


def look_verdict(case: Case, now: Route | None, other: Route, look: Look) -> str:
    """Return whether another look would be better than the one aimed at."""
    said = look_words(look)
    if now is None:
        return f"Yes, it can be had: {said}"
    less = now.cost - other.cost
    if not case.asked:
        return (
            f"It can be had, but costs about {_money(case, -less)} more – {_ALL}"
            if less < 0
            else "As you like"
        )
    wish = look_words(case.menu.look)
    if less > _ALIKE * now.cost:
        return f"It can be done, for about {_money(case, less)} less – but you asked for: {wish}"
    if -less > _ALIKE * now.cost:
        return f"It can be done, for about {_money(case, -less)} more – and you asked for: {wish}"
    return f"It can be done, and costs about the same – but you asked for: {wish}"


def _money(case: Case, amount: float) -> str:
    """Return an amount of money in round numbers."""
    return f"{amount:.0f} {case.bench.workshop.currency}"
