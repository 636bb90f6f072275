"""What one's own work says, as JSON; ``learn.schema.json`` describes every name."""

from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, rounded, written
from refettle.cli.learn_text import kind_words
from refettle.domain.finding import Finding
from refettle.knowledge.knowledge import Knowledge
from refettle.learning.rates import Rate, Rates
from refettle.services.learn import Learnt


def learn_json(know: Knowledge, learnt: Learnt, findings: tuple[Finding, ...]) -> str:
    """
    Return what is learnt as a JSON document.

    Parameters
    ----------
    know
        Names and version.
    learnt
        What a journal says.
    findings
        Problems in the files.

    Returns
    -------
    str
        Valid against ``learn.schema.json``.
    """
    log = learnt.log
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "journal": log.name,
            "entries": len(log.work) + len(log.faults),
            "left_out": log.left_out,
            "pieces": learnt.pieces,
            "forget": sorted(log.forget),
            "hours": _rates(know, learnt.hours),
            "litres": _rates(know, learnt.litres),
            "drying": _rates(know, learnt.drying),
            "coats": _rates(know, learnt.coats),
            "rules": [
                {
                    "rule": rule,
                    "log_odds": rounded(found.offset),
                    "width": rounded(found.width),
                    "entries": found.entries,
                    "foreseen": rounded(found.foreseen),
                    "seen": rounded(found.seen),
                }
                for rule, found in sorted(learnt.offsets.items())
            ],
            "findings": [finding_json(finding) for finding in findings],
        }
    )


def _rates(know: Knowledge, rates: Rates) -> Document:
    """Return factors of one sort."""
    kinds = [
        {"kind": kind, "name": kind_words(know, kind), **_rate(rate)}
        for kind, rate in sorted(rates.kinds.items())
    ]
    return {"kinds": kinds, "others": _rate(rates.others)}


def _rate(rate: Rate) -> Document:
    """Return one factor."""
    return {
        "factor": rounded(rate.factor),
        "low": rounded(rate.low),
        "high": rounded(rate.high),
        "entries": rate.entries,
    }
