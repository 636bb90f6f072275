"""What is said where a file holds an error."""

import json

from refettle.bootstrap import Refused
from refettle.cli.json_parts import SCHEMA_VERSION, finding_json
from refettle.cli.terminal import Answer, folded
from refettle.domain.finding import Finding


def findings_note(findings: tuple[Finding, ...]) -> str:
    """
    Return findings as notes, one under the other.

    Parameters
    ----------
    findings
        Problems in the files.

    Returns
    -------
    str
        Empty where there are none.
    """
    return "".join(folded(finding.text()) for finding in findings)


def refusal(refused: Refused, *, as_json: bool) -> Answer:
    """
    Return what a command says of files that hold an error.

    Parameters
    ----------
    refused
        What was found.
    as_json
        Whether JSON was asked for; the findings are then the data.

    Returns
    -------
    Answer
        Code 1.
    """
    if not as_json:
        return Answer(notes=findings_note(refused.findings), code=1)
    document = {
        "schema_version": SCHEMA_VERSION,
        "knowledge_version": refused.knowledge_version,
        "findings": [finding_json(finding) for finding in refused.findings],
    }
    return Answer(out=json.dumps(document, indent=2, ensure_ascii=False) + "\n", code=1)
