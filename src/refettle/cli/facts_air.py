"""``refettle facts COAT --air AIR``: may it be laid today, and how long everything takes there."""

from math import isfinite

from refettle.bootstrap import WrongCall
from refettle.cli.air_text import class_text, table_text, verdict
from refettle.cli.facts_over import class_meant
from refettle.cli.json_parts import SCHEMA_VERSION, Document, rounded, written
from refettle.cli.page import Page
from refettle.cli.terminal import Answer, folded
from refettle.domain.air import Air
from refettle.files.air_text import USUAL_RH, read_air_text
from refettle.files.amounts import Unclear
from refettle.knowledge.knowledge import Knowledge
from refettle.services.in_air import InAir, StageHours, class_in_air, usual_in_air


def air_answer(know: Knowledge, word: str | None, text: str, page: Page, *, as_json: bool) -> Answer:
    """
    Return how a coat, or every usual one, gets on in an air.

    Parameters
    ----------
    know
        All facts.
    word
        The coat, in words; None = all usual ones.
    text
        The air, as written.
    page
        Empty page of the right width.
    as_json
        Whether JSON is wanted.

    Returns
    -------
    Answer
        Code 0.

    Raises
    ------
    WrongCall
        If the coat or the air cannot be read.
    """
    air = read_air_text(text)
    if isinstance(air, Unclear):
        raise WrongCall(what=f"--air: {air.what}", do=air.do)
    found = usual_in_air(know, air) if word is None else (class_in_air(know, class_meant(know, word), air),)
    if as_json:
        return Answer(out=_json(know, air, found))
    taken = f"No humidity was said: {USUAL_RH * 100:.0f} % is taken." if "%" not in text else ""
    out = table_text(air, found, page) if word is None else class_text(know, found[0], page)
    return Answer(out=out, notes=folded(taken) if taken else "")


def _json(know: Knowledge, air: Air, found: tuple[InAir, ...]) -> str:
    """Return the document; ``facts.schema.json`` describes every name."""
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "temperature_c": air.temp_c,
            "humidity_pct": rounded(air.rh * 100.0),
            "coats": [_coat(know, one) for one in found],
        }
    )


def _coat(know: Knowledge, one: InAir) -> Document:
    """Return one coat in the air."""
    facts = one.facts
    props = ("min_c", "max_c", "rh_max", "recoat_from_h")
    return {
        "coat": facts.id,
        "name": facts.name,
        "may_be_laid": not one.barred,
        "barred": list(one.barred),
        "verdict": verdict(one),
        "stands_still": one.stands_still,
        "min_c": facts.min_c,
        "max_c": facts.max_c,
        "humidity_max_pct": rounded(facts.rh_max * 100.0),
        "dew_point_c": rounded(one.dew_c),
        "dew_margin_k": rounded(one.margin_k),
        "hours": [_hours(hours) for hours in one.stages],
        "clings": rounded(one.clings),
        "risks": [
            {
                "fault": hit.fault,
                "name": know.name("fault", hit.fault),
                "rule": hit.rule,
                "chance": rounded(hit.chance),
                "why": hit.why,
            }
            for hit in one.risks
        ],
        "because": list(dict.fromkeys(i for prop in props for i in know.because(f"film:{facts.id}", prop))),
    }


def _hours(hours: StageHours) -> Document:
    """Return the hours to a stage; null where it never comes."""
    return {
        "stage": hours.stage,
        "label_h": _number(hours.label_h),
        "low_h": _number(hours.here_h.low),
        "likely_h": _number(hours.here_h.likely),
        "high_h": _number(hours.here_h.high),
    }


def _number(hours: float) -> float | None:
    """Return hours [h]; None for never."""
    return rounded(hours) if isfinite(hours) else None
