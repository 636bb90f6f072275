"""What the person's own sequence leads to, as JSON; ``foresee.schema.json`` describes every name."""

from refettle.bootstrap import ForeseenSurface
from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, risk_json, step_json, written
from refettle.domain.finding import Finding
from refettle.knowledge.knowledge import Knowledge


def foresee_json(
    piece: str, foreseen: tuple[ForeseenSurface, ...], know: Knowledge, findings: tuple[Finding, ...]
) -> str:
    """
    Return what is foreseen as a JSON document.

    Parameters
    ----------
    piece
        Name of the piece.
    foreseen
        Per surface.
    know
        Names and version.
    findings
        Problems in the files.

    Returns
    -------
    str
        Valid against ``foresee.schema.json``.
    """
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "piece": piece,
            "surfaces": [_surface(surface, know) for surface in foreseen],
            "findings": [finding_json(finding) for finding in findings],
        }
    )


def _surface(surface: ForeseenSurface, know: Knowledge) -> Document:
    """Return one surface."""
    change = surface.change
    return {
        "name": surface.surface,
        "steps": [step_json(step, know) for step in surface.steps],
        "own_steps": surface.own,
        "risks": [risk_json(risk, know) for risk in surface.risks],
        "change": None
        if change is None
        else {
            "words": change.words,
            "edits": change.edits,
            "steps": [step_json(step, know) for step in change.steps],
            "risks_before": [risk_json(risk, know) for risk in change.risks_before],
            "risks_after": [risk_json(risk, know) for risk in change.risks_after],
        },
    }
