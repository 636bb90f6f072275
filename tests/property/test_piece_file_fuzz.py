"""Mangled files: findings with lines or a whole piece, never an exception, never a silent guess."""

import random
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.fakes import small_knowledge

from refettle.domain.finding import Finding
from refettle.domain.piece import (
    LOOKS,
    ORIENTATIONS,
    RELIEFS,
    SHEENS,
    SOUNDNESS,
    USES,
    VALUES,
    Piece,
    Surface,
)
from refettle.domain.step import EVENT_MARKS, VERBS, WORK_MARKS
from refettle.domain.workshop import Workshop
from refettle.files.piece_file import CONSTRAINTS, read_piece
from refettle.files.piece_writer import amend_piece, write_piece
from refettle.files.workshop_file import read_workshop
from refettle.files.yaml_tree import Listing, Mapping, Text, Tree, read_tree

EXAMPLES = Path(__file__).parents[2] / "examples"
PIECES = sorted(path for path in EXAMPLES.glob("*.yaml") if not path.stem.startswith(("workshop", "journal")))
STEPS = """
done:
  - clean: soap and water
  - sand: [P120, P180]
    by: random-orbit sander
  - coat: acrylic furniture paint
    coats: 2
    by: roller
    wait between: 4 h
    wait after: 1 day
    air: {temperature: 12 C, humidity: 80 %}
intend:
  top:
    - strip: mild remover
      passes: 2
    - scuff: synthetic pad
      how: [wet, clean dust]
      across grain: no
    - wait: 3 days
    - expose: [storm, sun]
    - use: [table, hot dish, years]
"""
MARKS = frozenset(EVENT_MARKS.values()) | frozenset(WORK_MARKS.values())
ODD = "\t\x00\ufeff:-#{}[],&*!|>'\"%@`?~\n 0159.,°µ½²éx\u200b\u2028\U0001f600<<=/\\"
WORDS = [
    "no",
    "unknown",
    "bare",
    "1:30",
    "0",
    "-3",
    "1e999",
    "9" * 400,
    "nan",
    "inf",
    "{}",
    "[]",
    "",
    "P180",
    "storm",
    "hot-dish",
    "30 %",
    "60 cm",
]


def texts() -> list[str]:
    listed = "piece: Panel\nform: list\nwood: oak\nsurfaces:\n"
    listed += "  top: {area: 0.5 m2, relief: carved}\n  side: {area: 1 m2}\n"
    return [path.read_text(encoding="utf-8") for path in PIECES] + [listed + STEPS]


def check_findings(findings: tuple[Finding, ...], lines: int) -> None:
    for finding in findings:
        assert finding.what
        assert finding.do
        assert finding.where.file == "f.yaml"
        assert 0 <= finding.where.line <= lines + 1
        whole_file = {"missing", "empty-file", "too-long", "syntax"}
        assert finding.where.line > 0 or finding.code in whole_file
        assert "\n" not in finding.text()
        assert "Traceback" not in finding.text()


def check_surface(surface: Surface) -> None:
    known = small_knowledge()
    assert surface.wood in known.ids("wood")
    assert surface.build in known.ids("build")
    assert surface.relief in RELIEFS
    assert surface.orientation in ORIENTATIONS
    assert surface.soundness in SOUNDNESS
    assert surface.use in USES
    assert surface.value in VALUES
    assert 0 < surface.area_m2 < float("inf")
    assert 0 <= surface.worn_pct <= 100
    assert surface.veneer_um >= 0
    assert sum(zone.share for zone in surface.zones) == pytest.approx(1.0)
    assert all(0 <= chance <= 1 for _, chance in surface.contamination)
    assert {id_ for id_, _ in surface.contamination} <= set(known.ids("contaminant"))
    assert set(surface.damage) <= set(known.ids("damage"))
    assert all(answer in {"yes", "no"} for _, answer in surface.tested)
    for layer in surface.layers:
        assert layer.coats >= 1
        assert not layer.guesses or sum(weight for _, weight in layer.guesses) == pytest.approx(1.0)
    if surface.look is not None:
        assert surface.look.kind in LOOKS
        assert surface.look.sheen in {"", *SHEENS}


def check_piece(piece: Piece) -> None:
    assert piece.name
    assert piece.surfaces
    assert piece.constraints <= set(CONSTRAINTS)
    names = [surface.name for surface in piece.surfaces]
    assert len(set(names)) == len(names)
    for surface in piece.surfaces:
        check_surface(surface)
    for own in (*piece.intend, *piece.done):
        assert own.surface in {"", *names}
        assert len(own.steps) == len(own.where)
        for step in own.steps:
            assert step.verb in VERBS
            assert step.how <= MARKS
            assert 0 <= step.wait_after_h < float("inf")
    assert all(one.path and one.value and one.why for one in piece.assumed)


def check_text(text: str) -> Piece | None:
    piece, findings = read_piece(text, "f.yaml", small_knowledge())
    lines = (
        text.count("\n")
        + text.count("\r")
        + text.count("\x85")
        + text.count("\u2028")
        + text.count("\u2029")
        + 1
    )
    check_findings(findings, lines)
    assert (piece is None) == any(finding.level == "error" for finding in findings)
    if piece is not None:
        check_piece(piece)
    return piece


def mangle_signs(text: str, dice: random.Random) -> str:
    for _ in range(dice.randint(1, 4)):
        at = dice.randrange(len(text) + 1)
        match dice.randrange(4):
            case 0:
                text = text[:at] + dice.choice(ODD) + text[at:]
            case 1:
                text = text[:at] + text[at + dice.randint(1, 12) :]
            case 2:
                text = text[:at] + dice.choice(ODD) + text[at + 1 :]
            case _:
                other = dice.randrange(len(text) + 1)
                text = text[:at] + text[other : other + dice.randint(1, 30)] + text[at:]
    return text


def plain_values(tree: Tree) -> object:
    if isinstance(tree, Text):
        return tree.value
    if isinstance(tree, Listing):
        return [plain_values(item) for item in tree.items]
    return {entry.key: plain_values(entry.value) for entry in tree.entries}


def mangle_values(value: object, dice: random.Random, odds: float) -> object:
    if dice.random() < odds:
        return dice.choice(
            [dice.choice(WORDS), [dice.choice(WORDS)], {dice.choice(WORDS) or "x": dice.choice(WORDS)}, value]
        )
    if isinstance(value, dict):
        pairs = [
            (mangle_key(key, dice, odds), mangle_values(inner, dice, odds)) for key, inner in value.items()
        ]
        if dice.random() < odds:
            dice.shuffle(pairs)
        return dict(pairs[1:] if dice.random() < odds / 3 else pairs)
    if isinstance(value, list):
        return [mangle_values(inner, dice, odds) for inner in value]
    return value


def mangle_key(key: str, dice: random.Random, odds: float) -> str:
    if dice.random() > odds / 3:
        return key
    at = dice.randrange(len(key))
    return (
        dice.choice([key[:at] + key[at + 1 :], key.upper(), key.replace(" ", "_"), "surfaces", "wood"]) or "x"
    )


@pytest.mark.parametrize("seed", range(8))
def test_thousands_of_files_with_mangled_signs_give_findings_or_a_piece(seed: int):
    dice = random.Random(seed)  # noqa: S311 - a repeatable shuffle, no secret
    sources = texts()
    for _ in range(150):
        check_text(mangle_signs(dice.choice(sources), dice))


@pytest.mark.parametrize("seed", range(8))
def test_thousands_of_files_with_mangled_entries_give_findings_or_a_piece(seed: int):
    dice = random.Random(1000 + seed)  # noqa: S311 - a repeatable shuffle, no secret
    trees = []
    for text in texts():
        root, findings = read_tree(text, "f.yaml")
        assert findings == ()
        assert isinstance(root, Mapping)
        trees.append(plain_values(root))
    pieces = 0
    for _ in range(100):
        mangled = mangle_values(dice.choice(trees), dice, dice.choice([0.005, 0.02, 0.1]))
        if isinstance(mangled, dict):
            pieces += check_text(write_piece(mangled)) is not None
    assert pieces > 0


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=300))
def test_any_text_gives_findings_or_a_piece(text: str):
    check_text(text)


@settings(max_examples=150, deadline=None)
@given(st.text(alphabet=":-{}[]#&*!|>'\"%@`? \nab", max_size=80))
def test_any_punctuation_gives_findings_or_a_piece(text: str):
    check_text(text)


@settings(max_examples=150, deadline=None)
@given(
    st.text(
        st.characters(codec="utf-8", exclude_categories=("Cc", "Cf", "Cs", "Zl", "Zp", "Cn", "Co")),
        min_size=1,
        max_size=60,
    )
)
def test_what_is_written_is_read_back(value: str):
    root, findings = read_tree(write_piece({"piece": value}), "f.yaml")
    assert findings == ()
    assert root is not None
    assert plain_values(root) == {"piece": value.strip()}


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(["wood", "era", "paid", "look", "surfaces/top/worn", "worn"]), st.sampled_from(WORDS[:6])
)
def test_an_amended_file_differs_in_one_entry_only(path: str, value: str):
    for text in texts():
        amended = amend_piece(text, path, value)
        assert isinstance(amended, str)
        before, _ = read_tree(text, "f.yaml")
        after, findings = read_tree(amended, "f.yaml")
        assert findings == ()
        assert before is not None
        assert after is not None
        assert [line for line in text.splitlines() if line.lstrip().startswith("#")] == [
            line for line in amended.splitlines() if line.lstrip().startswith("#")
        ]
        same = [entry.key for entry in before.entries if entry.key != path.partition("/")[0]]
        for key in same:
            first, second = before.get(key), after.get(key)
            assert first is not None
            assert second is not None
            assert plain_values(first.value) == plain_values(second.value)


@pytest.mark.parametrize("seed", range(3))
def test_mangled_workshops_give_findings_or_a_workshop(seed: int):
    dice = random.Random(2000 + seed)  # noqa: S311 - a repeatable shuffle, no secret
    source = (EXAMPLES / "workshop.yaml").read_text(encoding="utf-8")
    root, _ = read_tree(source, "f.yaml")
    assert root is not None
    for number in range(150):
        text = mangle_signs(source, dice)
        if number % 2:
            mangled = mangle_values(plain_values(root), dice, 0.03)
            text = write_piece(mangled) if isinstance(mangled, dict) else text
        workshop, findings = read_workshop(text, "f.yaml", small_knowledge())
        check_findings(findings, text.count("\n") + 2)
        assert (workshop is None) == any(finding.level == "error" for finding in findings)
        assert workshop is None or isinstance(workshop, Workshop)


@pytest.mark.parametrize("path", PIECES, ids=lambda path: path.stem)
def test_an_example_is_a_piece_without_findings_and_says_that_it_is_invented(path: Path):
    piece, findings = read_piece(path.read_text(encoding="utf-8"), "f.yaml", small_knowledge())
    assert findings == ()
    assert piece is not None
    assert piece.invented
    check_piece(piece)


def test_the_example_workshop_has_no_findings():
    workshop, findings = read_workshop(
        (EXAMPLES / "workshop.yaml").read_text(encoding="utf-8"), "f.yaml", small_knowledge()
    )
    assert findings == ()
    assert workshop is not None
    assert workshop.invented
