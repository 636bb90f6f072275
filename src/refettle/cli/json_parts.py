"""Parts that the JSON of several commands shares; names carry units as everywhere."""

import json
from collections.abc import Mapping
from typing import Any, Final

from refettle.cli.words import chance_words
from refettle.domain.finding import Finding
from refettle.domain.piece_plan import Day
from refettle.domain.plan import Range, Risk
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.services.step_words import step_words

SCHEMA_VERSION: Final = 1
"""Raised when a name goes or changes its meaning; new names alone do not raise it."""
_DIGITS: Final = 4

Document = dict[str, Any]


def written(document: Mapping[str, Any]) -> str:
    """Return a document as text that ends in a newline."""
    return json.dumps(document, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def rounded(value: float) -> float:
    """Return a number [as it comes] with at most four digits after the point: more would be noise."""
    return round(float(value), _DIGITS)


def range_json(amount: Range) -> Document:
    """Return a range."""
    return {"low": rounded(amount.low), "likely": rounded(amount.likely), "high": rounded(amount.high)}


def step_json(step: Step, know: Knowledge) -> Document:
    """Return a step with its phrase."""
    return {
        "text": step_words(know, step),
        "verb": step.verb,
        "what": step.what,
        "method": step.method,
        "coats": step.coats,
        "film": step.film,
        "grit_p": step.grit,
        "wait_between_h": rounded(step.wait_between_h),
        "wait_after_h": rounded(step.wait_after_h),
        "how": sorted(step.how),
    }


def risk_json(risk: Risk, know: Knowledge) -> Document:
    """Return a risk with its chance as a number and in words."""
    return {
        "fault": risk.fault,
        "name": know.name("fault", risk.fault),
        "chance": rounded(risk.chance),
        "chance_words": chance_words(risk.chance),
        "step": risk.step,
        "why": risk.why,
        "rules": list(risk.rules),
        "because": list(risk.because),
        "worlds": [{"world": label, "chance": rounded(chance)} for label, chance in risk.worlds],
    }


def finding_json(finding: Finding) -> Document:
    """Return a finding."""
    return {
        "code": finding.code,
        "level": finding.level,
        "file": finding.where.file,
        "line": finding.where.line,
        "path": finding.where.path,
        "what": finding.what,
        "do": finding.do,
        "because": list(finding.because),
    }


def day_json(day: Day) -> Document:
    """Return one evening."""
    return {
        "day": day.day,
        "minutes": rounded(day.minutes),
        "tasks": [
            {
                "group": task.group,
                "step": task.number,
                "text": task.text,
                "minutes": rounded(task.minutes),
                "wait_h": rounded(task.wait_h),
                "begin_h": rounded(task.begin_h),
                "left": task.left,
            }
            for task in day.tasks
        ],
    }
