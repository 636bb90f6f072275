"""``refettle why FILE SURFACE --finishes``: which finish suits a surface, in a table."""

from typing import Final

from refettle import bootstrap
from refettle.cli.json_parts import (
    SCHEMA_VERSION,
    finding_json,
    range_json,
    risk_json,
    rounded,
    step_json,
    written,
)
from refettle.cli.page import Page
from refettle.cli.words import chance_words, hours_words, minutes_words, money_words
from refettle.domain.plan import Route
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.services.finishes import Finish, Finishes
from refettle.services.step_words import step_words

_SHOWN: Final = 0.1
_MOST_RISKS: Final = 2
_MOST: Final = 8


def finishes_text(said: Finishes, know: Knowledge, currency: str, page: Page) -> str:
    """
    Return the page of the finishes that suit a surface.

    Parameters
    ----------
    said
        The finishes.
    know
        Names.
    currency
        Word for money.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Best first, each with what it takes, what it stands and what may go wrong.
    """
    page.heading(f"{said.group}: which finish suits ({said.look}; use: {said.use})")
    if not said.found:
        page.write("None can be had here: refettle why FILE SURFACE says which wishes clash.", indent=2)
        return page.text()
    best = said.found[0]
    page.write(f"Best: {best.facts.name} – {'; '.join(best.stands) or 'middling in all'}.", indent=2, hang=2)
    page.write(f"Way: {_way(know, best.route)}.", indent=2, hang=5)
    for number, finish in enumerate(said.found[:_MOST], start=1):
        _finish(page, know, currency, number, finish, best.route)
    rest = said.found[_MOST:]
    if rest:
        page.gap()
        page.write(f"Dearer still: {', '.join(finish.facts.name for finish in rest)}.", indent=2, hang=2)
    if said.barred:
        page.gap()
        page.write(f"No way here: {', '.join(said.barred)}.", indent=2, hang=2)
    page.gap()
    page.write(
        "Order: all counted, your hours, waiting, material and the cost of what may go wrong. "
        "Why not one of them: refettle why FILE SURFACE --not NAME.",
        indent=2,
    )
    return page.text()


def _finish(page: Page, know: Knowledge, currency: str, number: int, finish: Finish, best: Route) -> None:
    """Write one finish."""
    page.gap()
    more = finish.route.cost - best.cost
    end = "in the plan" if finish.taken else (f"+{more:.0f} {currency} in all" if more >= 1 else "")
    page.ended(f"{number:>2}  {finish.facts.name}", end, indent=2, hang=4)
    route = finish.route
    takes = (
        f"{minutes_words(route.minutes)} of work, {money_words(route.money, currency)}, "
        f"{hours_words(route.elapsed_h)} with waiting"
    )
    page.write(takes, indent=6, hang=2)
    page.write(f"{'; '.join(finish.stands) or 'middling in all'}", indent=6, hang=2)
    before = _before_of(route)
    if before != _before_of(best):
        page.write(f"Before it: {_listed(know, before)}", indent=6, hang=2)
    risks = [risk for risk in route.risks if risk.chance >= _SHOWN][:_MOST_RISKS]
    for risk in risks:
        page.write(
            f"{know.name('fault', risk.fault)}, {chance_words(risk.chance)}: {risk.why}", indent=6, hang=2
        )


def _before_of(route: Route) -> tuple[Step, ...]:
    """Return the work before the first coat of a route."""
    steps = [cost.step for cost in route.steps if cost.step.verb not in {"wait", "use"}]
    first = next((number for number, step in enumerate(steps) if step.is_coat), len(steps))
    return tuple(steps[:first])


def _way(know: Knowledge, route: Route) -> str:
    """Return the steps of a route in one line."""
    return _listed(know, tuple(cost.step for cost in route.steps if cost.step.verb not in {"wait", "use"}))


def _listed(know: Knowledge, steps: tuple[Step, ...]) -> str:
    """Return steps in one line."""
    said = [step_words(know, step) for step in steps]
    return (
        "; ".join((said[0], *(f"{words[:1].lower()}{words[1:]}" for words in said[1:])))
        if said
        else "nothing"
    )


def finishes_json(laid: "bootstrap.Laid", surface: str, said: Finishes) -> str:
    """Return the finishes as a document; ``why.schema.json`` describes every name."""
    know = laid.names
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "piece": laid.piece.name,
            "surface": surface,
            "look": said.look,
            "use": said.use,
            "finishes": [
                {
                    "class": finish.facts.id,
                    "name": finish.facts.name,
                    "taken": finish.taken,
                    "cost": rounded(finish.route.cost),
                    "minutes": range_json(finish.route.minutes),
                    "money": range_json(finish.route.money),
                    "elapsed_h": range_json(finish.route.elapsed_h),
                    "stands": list(finish.stands),
                    "steps": [step_json(step.step, know) for step in finish.route.steps],
                    "risks": [risk_json(risk, know) for risk in finish.route.risks],
                }
                for finish in said.found
            ],
            "barred": list(said.barred),
            "findings": [finding_json(finding) for finding in laid.findings],
        }
    )
