"""The tree of texts, and what it relies on in the library."""
# ruff: noqa: E501 - the full text of a message stands on one line

import io

import pytest
from ruamel.yaml import YAML
from ruamel.yaml.constructor import DuplicateKeyError

from refettle.files.yaml_tree import LARGEST, Listing, Mapping, Text, read_tree


def texts(text: str) -> list[str]:
    return [finding.text() for finding in read_tree(text, "a.yaml")[1]]


def test_the_library_keeps_comments_and_order_in_a_round_trip():
    text = "# first\nb: 1  # one\n\n# between\na:\n  - x  # in the list\n  - 'q'\n# last\n"
    yaml = YAML(typ="rt", pure=True)
    yaml.preserve_quotes = True
    yaml.indent(mapping=2, sequence=4, offset=2)
    out = io.StringIO()
    yaml.dump(yaml.load(text), out)
    assert out.getvalue() == text


def test_the_library_refuses_a_key_given_twice():
    with pytest.raises(DuplicateKeyError):
        YAML(typ="rt", pure=True).load("a: 1\nb: 2\na: 3\n")


def test_every_scalar_stays_the_text_that_was_written():
    root, findings = read_tree("a: no\nb: 1:30\nc: 010\nd: ~\ne: 2026-01-02\nf: 1e3\n'g': \"x\"\n", "a.yaml")
    assert findings == ()
    assert root is not None
    assert [(entry.key, entry.value.value) for entry in root.entries] == [
        ("a", "no"), ("b", "1:30"), ("c", "010"), ("d", "~"), ("e", "2026-01-02"), ("f", "1e3"), ("g", "x"),
    ]  # fmt: skip


def test_lines_are_counted_from_one():
    root, _ = read_tree("# a\na:\n  - x\n  - b: y\n", "a.yaml")
    assert isinstance(root, Mapping)
    entry = root.get("a")
    assert entry is not None
    assert entry.line == 2
    assert isinstance(entry.value, Listing)
    assert entry.value.items[0] == Text(line=3, value="x")
    assert entry.value.items[1].line == 4


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", 'a.yaml: the file is empty – begin with an entry such as "piece: Hall table"  [empty-file]'),
        ("# only\n", 'a.yaml: the file is empty – begin with an entry such as "piece: Hall table"  [empty-file]'),
        ("- a\n- b\n", 'a.yaml:1: the file is no list of entries – begin with an entry such as "piece: Hall table"  [no-entries]'),
        ("a: 1\na: 2\n", 'a.yaml:2: "a" stands here a second time; the first is in line 1 – keep one of the two  [key-twice]'),
        ("x:\n  a: 1\n  a: 2\n", 'a.yaml:3: x: "a" stands here a second time; the first is in line 2 – keep one of the two  [key-twice]'),
        ("a: &b c\n", 'a.yaml:1: a: "&b" marks an entry – leave the mark out, or quote the text  [reference]'),
        ("a: !!int 3\n", 'a.yaml:1: a: "tag:yaml.org,2002:int" says what kind of value follows – leave it out: every entry is read as text  [tag]'),
        ("a: 1\n---\nb: 2\n", "a.yaml:2: a second document begins here – keep one document in a file  [second-document]"),
        ("a:\n\tb: 1\n", "a.yaml:2: a tab stands at the beginning of the line – use spaces  [tab]"),
        ("a: \x00\n", "a.yaml:1: character U+0000 is no text – save the file as plain text (UTF-8)  [not-text]"),
        ("? [a, b]\n: c\n", "a.yaml:1: a list or mapping stands where a key is due – write a word and a colon  [odd-key]"),
        ("<<: x\n", 'a.yaml:1: "<<" merges another entry into this one – write the entries out  [reference]'),
        ("a: b: c\n", 'a.yaml:1: this is no YAML: mapping values are not allowed here – check colons, dashes and indentation here and one line up; put text with ": " or " #" in quotes  [syntax]'),
    ],
)  # fmt: skip
def test_a_fault_of_form_is_told_with_its_line(text: str, message: str):
    assert texts(text) == [message]


def test_a_file_that_points_into_itself_is_refused():
    assert texts("a: &x\n  b: *x\n") == [
        'a.yaml:1: a: "&x" marks an entry – leave the mark out, or quote the text  [reference]',
        'a.yaml:2: a/b: "*x" points to another entry – write the entry out  [reference]',
    ]


def test_deep_nesting_is_refused_and_not_followed():
    message = "a.yaml:1: entries stand more than 12 levels deep – a file needs at most six levels  [too-deep]"
    assert texts("[" * 5000) == [message]
    nested = "".join("  " * depth + "a:\n" for depth in range(500))
    assert [finding.code for finding in read_tree(nested, "a.yaml")[1]] == ["too-deep"]


def test_a_huge_file_is_refused():
    assert texts("a" * (LARGEST + 1)) == [
        "a.yaml: the file is longer than 500000 characters – check that it is the right file  [too-long]"
    ]
