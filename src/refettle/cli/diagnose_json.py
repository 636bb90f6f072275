"""What may be behind trouble, as JSON; ``diagnose.schema.json`` describes every name."""

from refettle.bootstrap import Laid, Looked
from refettle.cli.diagnose_text import question_words
from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, rounded, step_json, written
from refettle.cli.trouble_words import asked_as, fault_words
from refettle.cli.words import chance_words
from refettle.knowledge.knowledge import Knowledge


def diagnose_json(laid: Laid, looked: Looked) -> str:
    """
    Return what may be behind trouble as a JSON document.

    Parameters
    ----------
    laid
        Piece, names and findings.
    looked
        What was found.

    Returns
    -------
    str
        Valid against ``diagnose.schema.json``.
    """
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": laid.know.version,
            "piece": laid.piece.name,
            **looked_json(looked, laid.names),
            "findings": [finding_json(finding) for finding in laid.findings],
        }
    )


def looked_json(looked: Looked, know: Knowledge) -> Document:
    """Return what was understood, done and found on one surface."""
    found = looked.found
    words = dict(found.heard.words)
    return {
        "surface": looked.surface.name,
        "taken_from": looked.taken_from,
        "steps": [step_json(step, know) for step in found.steps],
        "own_steps": looked.own,
        "signs": [
            {
                "sign": sign,
                "name": looked.book.signs[sign].name,
                "surety": rounded(surety),
                "words": words.get(sign, ""),
            }
            for sign, surety in found.told.signs.items()
        ],
        "when": asked_as(found.told.when) if found.told.when else "",
        "causes": _causes(looked, know),
        "faults": [
            {
                "fault": fault,
                "name": fault_words(know, fault),
                "chance": rounded(chance),
                "chance_words": chance_words(chance),
            }
            for fault, chance in found.faults
        ],
        "questions": [
            {
                "sign": question.sign,
                "question": question_words(looked, question),
                "tells_bit": rounded(question.tells),
                "minutes": rounded(question.minutes),
            }
            for question in found.questions
        ],
    }


def _causes(looked: Looked, know: Knowledge) -> list[Document]:
    """Return the causes, likeliest first."""
    return [
        {
            "fault": cause.suspect.fault,
            "name": fault_words(know, cause.suspect.fault),
            "rule": cause.suspect.rule,
            "step": cause.suspect.step,
            "chance_done": rounded(cause.suspect.chance),
            "chance": rounded(cause.chance),
            "why": cause.suspect.why,
            "fits": list(cause.fits),
        }
        for cause in looked.found.causes
    ]
