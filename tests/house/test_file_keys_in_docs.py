"""Every entry that a reader knows stands in its reference page."""

import re
from pathlib import Path

import pytest
from tests.fakes import small_knowledge

from refettle.domain.piece import LOOKS, ORIENTATIONS, RELIEFS, SHEENS, SOUNDNESS, USES, VALUES
from refettle.domain.step import EVENT_MARKS, WORK_MARKS
from refettle.files import (
    air_entries,
    form_entries,
    old_finish,
    own_steps,
    piece_file,
    stock,
    surface_fields,
    workshop_file,
)
from refettle.files.log_file import ENTRY_KEYS, GROUNDS, JOURNAL_KEYS, read_log
from refettle.files.tables import load_knowledge

DOCS = Path(__file__).parents[2] / "docs" / "reference"
PIECE_WORDS = {
    *piece_file.PIECE_KEYS, *form_entries.SIZE_KEYS, *piece_file.CONSTRAINTS, *form_entries.parameter_keys(),
    *surface_fields.SURFACE_KEYS, *surface_fields.PLACE_KEYS, *old_finish.LAYER_KEYS,
    *surface_fields.LOOK_KEYS, *own_steps.STEP_KEYS, *air_entries.AIR_KEYS, *own_steps.VERB_WORDS,
    *own_steps.METHODS, *own_steps.FILMS, *WORK_MARKS, *EVENT_MARKS, *LOOKS, *SHEENS,
    *SOUNDNESS, *RELIEFS, *ORIENTATIONS, *USES, *VALUES,
}  # fmt: skip
WORKSHOP_WORDS = {
    *workshop_file.WORKSHOP_KEYS, *stock.PRODUCT_KEYS, *workshop_file.WORKSHOP_AIR_KEYS,
    *workshop_file.VENTILATION, *air_entries.AIR_KEYS, *own_steps.METHODS,
}  # fmt: skip


def told(page: str) -> set[str]:
    return set(re.findall(r"`([^`\n]+)`", (DOCS / page).read_text(encoding="utf-8")))


@pytest.mark.parametrize("word", sorted(PIECE_WORDS))
def test_the_piece_page_tells_every_entry_and_word(word: str):
    assert word in told("piece-file.md")


@pytest.mark.parametrize("word", sorted(WORKSHOP_WORDS))
def test_the_workshop_page_tells_every_entry_and_word(word: str):
    assert word in told("workshop-file.md")


def test_the_first_example_of_each_page_is_read_without_an_error():
    for page, read in (
        ("piece-file.md", piece_file.read_piece),
        ("workshop-file.md", workshop_file.read_workshop),
    ):
        text = re.findall(r"```yaml\n(.*?)```", (DOCS / page).read_text(encoding="utf-8"), re.DOTALL)[0]
        assert read(text, page, small_knowledge())[1] == ()


@pytest.mark.parametrize("word", sorted({*JOURNAL_KEYS, *ENTRY_KEYS, *GROUNDS}))
def test_the_journal_page_tells_every_entry_and_word(word: str):
    assert word in told("journal-file.md")


def test_the_example_of_the_journal_page_is_read_without_a_finding():
    page = (DOCS / "journal-file.md").read_text(encoding="utf-8")
    example = re.findall(r"```yaml\n(.*?)```", page, flags=re.DOTALL)[0]
    log, said = read_log(example, "j.yaml", load_knowledge())
    assert said == ()
    assert log is not None
    assert (len(log.work), len(log.faults)) == (2, 1)
