"""What the person's own sequence leads to, as a page."""

from typing import Final

from refettle.bootstrap import ForeseenSurface
from refettle.cli.group_text import write_risks
from refettle.cli.page import Page
from refettle.cli.plan_text import write_findings
from refettle.cli.words import chance_words
from refettle.domain.finding import Finding
from refettle.domain.plan import Risk
from refettle.knowledge.knowledge import Knowledge
from refettle.services.step_words import step_words

TOLD: Final = 0.1
"""Chance [1] from which a risk is told."""
UNSOUND: Final = 0.3
"""Chance [1] from which a sequence is not sound."""
_LINE: Final = 24


def foresee_text(
    piece: str,
    foreseen: tuple[ForeseenSurface, ...],
    know: Knowledge,
    findings: tuple[Finding, ...],
    page: Page,
) -> str:
    """
    Return the page of what is foreseen.

    Parameters
    ----------
    piece
        Name of the piece.
    foreseen
        Per surface.
    know
        Names.
    findings
        Problems in the files.
    page
        Empty page of the right width.

    Returns
    -------
    str
        The page; surfaces that fare alike stand together.
    """
    page.heading(f"{piece}: what your own steps lead to")
    alike: dict[str, list[ForeseenSurface]] = {}
    for surface in foreseen:
        alike.setdefault(_block(Page(width=page.width), surface, know).text(), []).append(surface)
    for surfaces in alike.values():
        page.heading(", ".join(surface.surface for surface in surfaces))
        _block(page, surfaces[0], know)
    write_findings(page, findings)
    return page.text()


def _block(page: Page, surface: ForeseenSurface, know: Knowledge) -> Page:
    """Write what one surface meets: the steps, the risks, the change."""
    for number, step in enumerate(surface.steps[: surface.own], start=1):
        page.marked(f"{number:>3}", step_words(know, step), indent=1, column=6)
    if any(risk.chance >= TOLD for risk in surface.risks):
        write_risks(page, surface.risks, know, surface.own, everything=False, floor=TOLD)
    else:
        page.gap()
        page.write("Sound: each fault is unlikely or less.", indent=2)
    _change(page, surface, know)
    return page


def _change(page: Page, surface: ForeseenSurface, know: Knowledge) -> None:
    """Write the smallest change that makes the sequence sound, and what it does to the risks."""
    change = surface.change
    if change is None:
        return
    left = unsound(change.risks_after)
    page.gap()
    head = "The small change that helps most" if left else "The smallest change that makes it sound"
    page.write(head, indent=2)
    page.write(f"{change.words[:1].upper()}{change.words[1:]}", indent=4, hang=2)
    after = {risk.fault: risk.chance for risk in change.risks_after}
    before = {risk.fault: risk.chance for risk in change.risks_before}
    for fault in dict.fromkeys((*before, *after)):
        was, now = before.get(fault, 0.0), after.get(fault, 0.0)
        if max(was, now) >= TOLD and chance_words(was) != chance_words(now):
            words = f"{know.name('fault', fault)}, {chance_words(was)} before"
            page.marked(chance_words(now), words, indent=6, column=_LINE + 2)
    if left:
        page.write("No one or two changes make it sound; see what the plan says.", indent=4, hang=2)


def unsound(risks: tuple[Risk, ...]) -> bool:
    """Return whether a fault is likely enough to be no longer called sound."""
    return any(risk.chance >= UNSOUND for risk in risks)
