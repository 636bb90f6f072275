"""Ways to put trouble right, as JSON; ``mend.schema.json`` describes every name."""

from refettle.bootstrap import Laid, Mended
from refettle.cli.diagnose_json import looked_json
from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, rounded, written
from refettle.cli.plan_json import purchase_json, route_json
from refettle.knowledge.knowledge import Knowledge
from refettle.services.mend_ways import Mend


def mend_json(laid: Laid, mended: Mended) -> str:
    """
    Return the ways to put trouble right as a JSON document.

    Parameters
    ----------
    laid
        Piece, names and findings.
    mended
        What was found, and the ways.

    Returns
    -------
    str
        Valid against ``mend.schema.json``.
    """
    right, around = mended.right, mended.around
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": laid.know.version,
            "piece": laid.piece.name,
            "currency": laid.workshop.currency,
            **looked_json(mended.looked, laid.names),
            "taken_as": [
                {"fault": cause.suspect.fault, "rule": cause.suspect.rule, "share": rounded(share)}
                for cause, share in right.causes
            ],
            "same": right.same,
            "mends": [_mend(mend, laid.names) for mend in right.mends],
            "same_steps": list(around.same_steps),
            "unlike": list(around.unlike),
            "kept": around.kept,
            "shelf": [purchase_json(item) for item in around.shelf],
            "care": [
                {"id": c.id, "steps": list(c.steps), "text": c.text, "source": c.source} for c in around.care
            ],
            "findings": [finding_json(finding) for finding in laid.findings],
        }
    )


def _mend(mend: Mend, know: Knowledge) -> Document:
    """Return one way."""
    return {
        "name": mend.name,
        "depth": mend.depth,
        "place": mend.place,
        "cost": rounded(mend.cost),
        "route": None if mend.route is None else route_json(mend.route, know),
    }
