"""A surface cut across its relief: sizes said, zones worked out, page, drawing, document."""

import json
from importlib.resources import files
from pathlib import Path
from xml.etree import ElementTree as ET

import jsonschema
import pytest

from plan_pieces import facts
from refettle.cli import main
from refettle.files.piece_file import read_piece

DOOR = """piece: Slatted door
form: list
wood: beech
era: 1970s
old finish: shellac
look: natural satin
surfaces:
  door: {area: 0.6 m2, relief: slats, section: {width: 10 mm, gap: 6 mm, depth: 15 mm, behind: 0 mm}}
  back: {area: 0.6 m2}
"""


@pytest.fixture
def door(tmp_path: Path) -> str:
    file = tmp_path / "door.yaml"
    file.write_text(DOOR, encoding="utf-8")
    return str(file)


def test_zones_are_worked_out_from_sizes_that_are_said() -> None:
    piece, findings = read_piece(DOOR, "door.yaml", facts())
    assert piece is not None, findings
    zones = {zone.name: zone.share for zone in piece.surfaces[0].zones}
    assert zones["recess"] > 0.6
    assert sum(zones.values()) == pytest.approx(1.0)


def test_wider_gaps_leave_less_that_nothing_reaches() -> None:
    wide, _ = read_piece(DOOR.replace("gap: 6 mm", "gap: 40 mm"), "door.yaml", facts())
    narrow, _ = read_piece(DOOR, "door.yaml", facts())
    assert wide is not None
    assert narrow is not None
    recess = [{z.name: z.share for z in p.surfaces[0].zones}.get("recess", 0.0) for p in (wide, narrow)]
    assert recess[0] < recess[1]


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("gap: 6 mm", "gap: 6 kg"), ("gap: 6 mm", "gap: 0.01 mm"), ("gap: 6 mm", "gpa: 6 mm"),
    ],
)  # fmt: skip
def test_a_size_that_cannot_be_is_refused_with_its_place(said: str, told: str) -> None:
    piece, findings = read_piece(DOOR.replace(said, told), "door.yaml", facts())
    assert piece is None
    assert findings[0].where.path.startswith("surfaces/door/section")
    assert findings[0].do


def test_the_page_draws_the_section_and_tells_what_gets_where(
    door: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["why", door, "door", "--section"]) == 0
    said = capsys.readouterr().out
    assert max(map(len, said.splitlines())) <= 80
    assert "as measured" in said
    assert "Sprayed film against an open face" in said
    block = next(line for line in said.splitlines() if "hand sanding block" in line)
    stick = next(line for line in said.splitlines() if "narrow sanding stick" in line)
    assert int(block.split("%")[0].split()[-1]) < int(stick.split("%")[0].split()[-1])


def test_the_drawing_is_sound_and_tells_zones_apart_without_colour(
    door: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["why", door, "door", "--svg"]) == 0
    drawn = ET.fromstring(capsys.readouterr().out)  # noqa: S314 - our own output
    lines = [one for one in drawn.iter() if one.tag.endswith("polyline")]
    kinds = {(one.get("stroke"), one.get("stroke-dasharray")) for one in lines}
    assert len({dash for _, dash in kinds}) == len(kinds) >= 2


def test_the_document_follows_its_schema(door: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["why", door, "door", "--section", "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    schema = json.loads(files("refettle.cli").joinpath("why.schema.json").read_text(encoding="utf-8"))
    jsonschema.validate(made, schema)
    assert made["measured"] is True


def test_a_section_and_another_question_stand_apart(door: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["why", door, "door", "--section", "--not", "strip"]) == 2
    assert "each stand alone" in capsys.readouterr().err
