"""The demo files read without a finding that stops them, and say that they are made up."""

from pathlib import Path

import pytest

from refettle.files.log_file import read_log
from refettle.files.piece_file import read_piece
from refettle.files.tables import load_knowledge
from refettle.files.workshop_file import read_workshop
from refettle.knowledge.knowledge import Knowledge

EXAMPLES = Path(__file__).parents[2] / "examples"
PIECES = sorted(path for path in EXAMPLES.glob("*.yaml") if not path.name.startswith(("workshop", "journal")))
WORKSHOPS = sorted(EXAMPLES.glob("workshop*.yaml"))


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    return load_knowledge()


def test_there_is_a_demo() -> None:
    assert (EXAMPLES / "gate-leg-table.yaml") in PIECES
    assert len(PIECES) >= 4
    assert (EXAMPLES / "workshop.yaml") in WORKSHOPS


@pytest.mark.parametrize("path", PIECES, ids=lambda path: str(path.stem))
def test_every_demo_piece_reads_without_an_error(path: Path, knowledge: Knowledge) -> None:
    piece, findings = read_piece(path.read_text(encoding="utf-8"), path.name, knowledge)
    assert not [finding.text() for finding in findings if finding.level == "error"]
    assert piece is not None
    assert piece.invented
    assert piece.surfaces


@pytest.mark.parametrize("path", WORKSHOPS, ids=lambda path: str(path.stem))
def test_every_demo_workshop_reads_without_an_error(path: Path, knowledge: Knowledge) -> None:
    workshop, findings = read_workshop(path.read_text(encoding="utf-8"), path.name, knowledge)
    assert not [finding.text() for finding in findings if finding.level == "error"]
    assert workshop is not None
    assert workshop.invented


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("journal*.yaml")), ids=lambda path: path.stem)
def test_every_demo_journal_reads_without_a_finding_and_says_that_it_is_invented(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    log, said = read_log(text, path.name, load_knowledge())
    assert said == ()
    assert log is not None
    assert log.work
    assert log.faults
    assert "invented: yes" in text
