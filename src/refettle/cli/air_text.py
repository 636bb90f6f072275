"""A coat in an air, as a page: the verdict, the hours, and what may go wrong; and all usual coats in a table."""

from math import isfinite
from typing import Final

from refettle.cli.page import Page
from refettle.cli.words import chance_words, hours_words
from refettle.domain.air import Air
from refettle.domain.plan import Range
from refettle.knowledge.knowledge import Knowledge
from refettle.services.in_air import DEW_MARGIN_K, InAir
from refettle.services.step_words import wait_words

_STAGES: Final = {
    "touch": "dry to touch",
    "recoat_from": "recoat from",
    "recoat_until": "recoat without scuffing until",
    "sand": "sand from",
    "wrap": "handle, stack and wrap from",
    "shut": "close doors and drawers from",
    "cured": "cured for use (water, hot dishes)",
}
_LABEL: Final = 36
_HERE: Final = 18
_NAME: Final = 38
_LONG_H: Final = 24.0 * 300


def class_text(know: Knowledge, one: InAir, page: Page) -> str:
    """
    Return the page of a class in an air.

    Parameters
    ----------
    know
        Names and sources.
    one
        The class in the air.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Verdict first, then hours here beside those of the label.
    """
    page.heading(f"{_start(one.facts.name)} at {air_words(one.air)}")
    page.write(f"{_start(verdict(one))}.", indent=2, hang=2)
    doors = one.hours("shut")
    if doors is not None and not one.stands_still:
        page.write(_doors(one, doors.here_h), indent=2, hang=2)
    elif doors is None and not one.barred:
        page.write(
            "Close doors and drawers once it can be handled (below): it hardly clings.", indent=2, hang=2
        )
    page.write(_dew(one), indent=2, hang=2)
    page.gap()
    page.write(_row("Hours after the last coat", "here", "on the label, 20 °C"), indent=2)
    for stage, words in _STAGES.items():
        hours = one.hours(stage)
        if hours is not None:
            page.write(_row(words, _span(hours.here_h), _plain(hours.label_h)), indent=2)
    if one.risks:
        page.heading("What this air makes likelier")
        page.gap()
    for hit in one.risks:
        page.marked(
            chance_words(hit.chance), f"{know.name('fault', hit.fault)}: {hit.why}", indent=2, column=23
        )
    page.gap()
    page.write(_rests_on(know, one), hang=2)
    return page.text()


def table_text(air: Air, found: tuple[InAir, ...], page: Page) -> str:
    """
    Return the page of all usual coats in an air.

    Parameters
    ----------
    air
        The air.
    found
        Each usual coat in it.
    page
        Empty page of the right width.

    Returns
    -------
    str
        What may be laid today first, a line a coat.
    """
    fit = [one for one in found if not one.barred]
    page.heading(f"At {air_words(air)}: {_may(fit, found)}")
    if found:
        page.write(_dew(found[0]), indent=2, hang=2)
    if fit and len(fit) < len(found):
        warmest = max(one.facts.min_c for one in found)
        page.write(f"From {warmest:g} °C on the cold stops none of them.", indent=2)
    page.gap()
    page.write(
        f"{'Coat':<{_NAME}}{'Today':<24}{'Next coat after':<18}".replace(" ", "\u00a0").rstrip("\u00a0"),
        indent=2,
    )
    for one in found:
        said = f"{_today(one):<24}{'' if one.barred else _span(_recoat(one))}"
        page.marked(one.facts.name, said.replace(" ", "\u00a0").rstrip("\u00a0"), indent=2, column=_NAME + 2)
    page.gap()
    page.write(
        f'One coat in full: refettle facts COAT --air "{air.temp_c:g} C, {air.rh * 100:.0f} %". '
        "Taken as steady day and night; what counts is the coldest hour until it is dry, and the label.",
        indent=2,
    )
    return page.text()


def verdict(one: InAir) -> str:
    """
    Return whether a coat may be laid, in one sentence without full stop.

    Parameters
    ----------
    one
        The class in the air.

    Returns
    -------
    str
        E.g. ``no – too cold: it stands still below 10 °C; wait until 10 °C or warm room and piece``.
    """
    facts = one.facts
    why = []
    if "cold" in one.barred:
        does = "stands still" if one.stands_still else "does not harden as it should"
        why.append(
            f"too cold: it {does} below {facts.min_c:g} °C; wait until {facts.min_c:g} °C, or warm room and piece"
        )
    if "hot" in one.barred:
        why.append(f"too warm: it sets too fast above {facts.max_c:g} °C; wait for the cool of the day")
    if "damp" in one.barred:
        why.append(f"too damp: it wants at most {facts.rh_max * 100:.0f} % humidity; heat or dry the room")
    if "dew" in one.barred and "damp" not in one.barred:
        why.append(
            f"too near the dew point ({one.margin_k:.0f} K, {DEW_MARGIN_K:g} K are wanted); heat or dry the room"
        )
    if why:
        return f"no – {'; '.join(why)}"
    if one.slow:
        return f"yes, but slow: everything takes about {one.slower:.0f} times as long as the label says"
    if one.risks:
        worst = one.risks[0]
        return f"yes, with care: {worst.why}"
    return "yes"


def air_words(air: Air) -> str:
    """Return an air as one says it: ``8 °C and 80 % humidity``."""
    return f"{air.temp_c:g} °C and {air.rh * 100:.0f} % humidity"


def _doors(one: InAir, hours: Range) -> str:
    """Return when faces may touch."""
    if not isfinite(hours.likely):
        return "Close doors and drawers: not in this air."
    said = f"Close doors and drawers after {_span(hours)}."
    if one.clings >= 0.1:
        return f"{said} Even then faces that press go on clinging ({chance_words(one.clings)}): wax them, leave a gap."
    return said


def _dew(one: InAir) -> str:
    """Return how cold the piece may be."""
    return (
        f"Dew falls on anything below {_degrees(one.dew_c)}: the piece itself must be at least "
        f"{_degrees(one.dew_c + DEW_MARGIN_K)} (3\u00a0K above)."
    )


def _degrees(temp_c: float) -> str:
    """Return a temperature in whole degrees, with a true minus sign."""
    return f"{temp_c:.0f} °C".replace("-", "−")


def _may(fit: list[InAir], found: tuple[InAir, ...]) -> str:
    """Return how many coats may be laid."""
    if not fit:
        return "nothing may be laid today"
    if len(fit) == len(found):
        return "all may be laid today"
    return f"{len(fit)} of {len(found)} coats may be laid today"


def _today(one: InAir) -> str:
    """Return one word on whether a coat may be laid."""
    if "cold" in one.barred:
        return f"no: below {one.facts.min_c:g} °C"
    if "hot" in one.barred:
        return f"no: above {one.facts.max_c:g} °C"
    if "damp" in one.barred:
        return f"no: above {one.facts.rh_max * 100:.0f} % damp"
    if "dew" in one.barred:
        return "no: near the dew point"
    if one.slow:
        return f"yes, {one.slower:.0f} times slower"
    return "yes, with care" if one.risks else "yes"


def _recoat(one: InAir) -> Range:
    """Return the hours to the next coat."""
    hours = one.hours("recoat_from")
    return Range(low=0.0, likely=0.0, high=0.0) if hours is None else hours.here_h


def _span(hours: Range) -> str:
    """Return a stretch of hours with its width, or that it does not come."""
    if not isfinite(hours.likely):
        return "stands still"
    return "more than a year" if hours.likely > _LONG_H else hours_words(hours)


def _plain(hours: float) -> str:
    """Return hours on the label."""
    return wait_words(hours) if isfinite(hours) else "never"


def _row(words: str, here: str, label: str) -> str:
    """Return a line of the table, its spaces held."""
    return f"{words:<{_LABEL}}{here:<{_HERE}}{label}".replace(" ", "\u00a0")


def _rests_on(know: Knowledge, one: InAir) -> str:
    """Return what limits and hours rest on."""
    ids = {
        i for prop in ("min_c", "rh_max", "recoat_from_h") for i in know.because(f"film:{one.facts.id}", prop)
    }
    rows = [row for row in know.rows(f"film:{one.facts.id}") if row.id in ids]
    titles = dict.fromkeys(know.sources[row.source].title for row in rows if row.source in know.sources)
    return (
        f"Limits: {'; '.join(titles)}. Hours: label hours over the drying rate of this air, twofold off either way "
        f"in cold or damp; 3 K above dew is a rule of the coating trade. The label decides. "
        f'All rows: refettle facts "{one.facts.name}".'
    )


def _start(words: str) -> str:
    """Return words with a capital at their start."""
    return f"{words[:1].upper()}{words[1:]}"
