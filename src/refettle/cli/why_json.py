"""Why a surface gets its steps, as JSON; ``why.schema.json`` describes every name."""

from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, written
from refettle.domain.finding import Finding
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow
from refettle.services.why import Explanation


def why_json(
    piece: str,
    surface: str,
    not_this: str | None,
    said: Explanation,
    know: Knowledge,
    findings: tuple[Finding, ...],
) -> str:
    """
    Return an explanation as a JSON document.

    Parameters
    ----------
    piece, surface
        Names.
    not_this
        What was expected instead; None = nothing.
    said
        The explanation.
    know
        Sources and version.
    findings
        Problems in the files.

    Returns
    -------
    str
        Valid against ``why.schema.json``.
    """
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "piece": piece,
            "surface": surface,
            "not": not_this,
            "title": said.title,
            "lines": [{"text": line.text, "because": list(line.because)} for line in said.lines],
            "rows": [_row(row, know) for row in said.rows],
            "findings": [finding_json(finding) for finding in findings],
        }
    )


def _row(row: FactRow, know: Knowledge) -> Document:
    """Return a fact with its source."""
    kind, _, id_ = row.subject.partition(":")
    source = know.sources.get(row.source)
    return {
        "id": row.id,
        "subject": row.subject,
        "name": know.name(kind, id_),
        "property": row.prop,
        "value": row.value,
        "low": row.low,
        "high": row.high,
        "unit": row.unit,
        "source": row.source,
        "title": source.title if source else "",
        "place": row.place,
        "grade": row.grade,
        "read_as": row.read_as,
        "note": row.note,
    }
