"""Writing: one value changes, all else stays as the person wrote it."""

import pytest
from tests.fakes import small_knowledge

from refettle.domain.finding import Finding
from refettle.files.piece_file import read_piece
from refettle.files.piece_writer import amend_piece, write_piece
from refettle.files.yaml_tree import Text, read_tree

FILE = """\
# my own table
piece: Hall table   # its name
form: list

# what it is made of
wood: oak           # or ash?
era: 1930
child: no
notes: 'kept: quotes'
surfaces:
  top: {area: 0.80 m2}
  # the frame
  apron/front:
    area: 0.5 m2
    look: stained dark brown   # as it is now
done:
  - clean: soap and water  # twice
  - sand: [P120, P180]
"""


def test_one_value_changes_and_comments_and_order_stay():
    assert amend_piece(FILE, "wood", "ash") == FILE.replace("wood: oak           #", "wood: ash           #")
    assert amend_piece(FILE, "surfaces/apron/front/look", "natural") == FILE.replace(
        "look: stained dark brown   #", "look: natural              #"
    )


def test_a_new_entry_is_added_where_its_path_says():
    amended = amend_piece(FILE, "surfaces/apron/front/worn", "20 %")
    assert isinstance(amended, str)
    assert "    worn: 20 %\n" in amended
    piece, _ = read_piece(amended, "t.yaml", small_knowledge())
    assert piece is not None
    assert piece.surfaces[1].worn_pct == 20
    for line in FILE.splitlines():
        assert line in amended.splitlines()


def test_an_answered_test_is_added_to_a_surface():
    amended = amend_piece(FILE, "surfaces/top/tests/alcohol drop", "dissolves")
    assert isinstance(amended, str)
    piece, _ = read_piece(amended, "t.yaml", small_knowledge())
    assert piece is not None
    assert piece.surfaces[0].tested == (("alcohol-drop", "yes"),)


def test_an_entry_can_be_taken_out():
    amended = amend_piece(FILE, "child", None)
    assert amended == FILE.replace("child: no\n", "")


def test_what_looks_like_a_number_stays_as_it_was_written():
    text = "piece: 007\nera: 1930\nnotes: [no, 1:30, 010, ~, 1e3, 2026-01-02, 0x1F, 1_000]\n"
    assert amend_piece(text, "era", "1934") == text.replace("1930", "1934")


def test_a_broken_file_is_not_touched():
    said = amend_piece("a: 1\na: 2\n", "b", "3")
    assert isinstance(said, Finding)
    assert said.text() == (
        ': b: the file cannot be changed while "a" stands here a second time; the first is in line 1'
        " – keep one of the two  [not-amended]"
    )


def test_a_value_in_the_way_is_not_overwritten():
    said = amend_piece(FILE, "wood/colour", "red")
    assert isinstance(said, Finding)
    assert (
        said.text()
        == ': wood/colour: nothing can be put at "wood/colour" – change the file by hand  [not-amended]'
    )


@pytest.mark.parametrize(
    "value", ["no", "1:30", "a: b", "# x", "- x", "'", '"', "*a", "&a", "!a", "{a", "[a", "%", "@", ""]
)
def test_a_written_value_is_read_back_as_it_was(value: str):
    root, findings = read_tree(write_piece({"piece": value, "notes": [value, "x"]}), "t.yaml")
    assert findings == ()
    assert root is not None
    entry = root.get("piece")
    assert entry is not None
    assert isinstance(entry.value, Text)
    assert entry.value.value == value


def test_a_written_file_is_a_piece():
    text = write_piece(
        {"piece": "Loose panel", "form": "list", "wood": "oak", "surfaces": {"face": {"area": "0.5 m2"}}}
    )
    assert text == "piece: Loose panel\nform: list\nwood: oak\nsurfaces:\n  face:\n    area: 0.5 m2\n"
    piece, findings = read_piece(text, "t.yaml", small_knowledge())
    assert findings == ()
    assert piece is not None
