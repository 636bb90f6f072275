"""Looking things up on the terminal: every value with its source, the winner before its rivals."""

import json
from dataclasses import replace
from importlib.resources import files
from typing import Any

import jsonschema
import pytest

from fakes_plan import leaks
from refettle import bootstrap
from refettle.cli import main
from refettle.cli.facts_text import facts_text
from refettle.cli.page import Page
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow, Identity, Property, SourceRow
from refettle.services.look_up import KIND_WORDS, kind_meant, known_of, label_of, near_words, things_meant

DENSITY = Property(
    kind="wood", name="density_kg_m3", type="number", unit="kg/m3", meaning="at 12 % moisture", default="500"
)


@pytest.fixture(scope="module")
def know() -> Knowledge:
    return load_knowledge()


def row(id_: str, value: str, grade: str, **rest: Any) -> FactRow:  # noqa: ANN401 - any field of a row
    return FactRow(
        id=id_, subject="wood:oak", prop="density_kg_m3", value=value, unit="kg/m3", grade=grade, **rest
    )


def small(*rows: FactRow) -> Knowledge:
    return Knowledge.build(
        rows=rows,
        properties=(*load_knowledge().properties["wood"].values(), DENSITY),
        identities=(
            Identity(kind="wood", id="oak", name="oak", aliases=("white oak",), parent="hardwood"),
            Identity(kind="wood", id="hardwood", name="hardwood (kind not known)"),
        ),
        sources=(
            SourceRow(key="book", title="A book on woods", year="1990", rank=2),
            SourceRow(key="judgement", title="Judgement: the founders' own", rank=30),
        ),
    )


def page_of(know: Knowledge, word: str) -> str:
    things = tuple(known_of(know, found) for found in things_meant(know, word))
    return facts_text(know, things, Page(width=80), everything=False)


def schema() -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads(
        files("refettle.cli").joinpath("facts.schema.json").read_text("utf-8")
    )
    return loaded


def asked(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    assert main(["facts", *words, "--json"]) == 0
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    jsonschema.validate(document, schema())
    return document


def test_a_property_says_value_range_conditions_grade_source_place_and_reading():
    text = page_of(
        small(row("f-1", "755", "handbook", low=710.0, high=800.0, at_c=20.0, source="book", place="table 4",
                  read_as="excerpt", note="air dry")),
        "White Oak",
    )  # fmt: skip
    assert "density: 755 kg/m³ (710–800 kg/m³) at 20 °C\n    At 12 % moisture\n" in text
    assert "    Handbook: A book on woods (1990), table 4; read in excerpt; air dry\n" in text


def test_the_winner_comes_first_and_the_losers_beneath_in_whatever_order_they_were_written():
    best, worse = (
        row("f-9", "700", "handbook", source="book"),
        row("f-1", "755", "judgement", source="judgement"),
    )
    for rows in ((best, worse), (worse, best)):
        text = page_of(small(*rows), "oak")
        assert "density: 700 kg/m³" in text
        assert "    also: 755 kg/m³ (judgement)\n" in text


def test_a_row_that_was_replaced_is_told_as_such_and_decides_nothing():
    text = page_of(small(row("f-1", "755", "measured", source="book", superseded_by="f-2")), "oak")
    assert "density: 500 kg/m³, as usual\n" in text
    assert "    no source speaks of it\n    replaced: 755 kg/m³" in text


def test_facts_of_the_parent_say_whose_they_are():
    inherited = replace_subject(row("f-1", "600", "handbook", source="book"), "wood:hardwood")
    text = page_of(small(inherited), "oak")
    assert "as hardwood (kind not known)" in text
    assert "said of hardwood (kind not known)" in text


def replace_subject(fact: FactRow, subject: str) -> FactRow:
    return fact._replace(subject=subject)


def test_what_no_source_speaks_of_is_summed_up_with_its_usual_value():
    text = page_of(small(row("f-1", "755", "handbook", source="book")), "oak")
    told = " ".join(text.partition("Taken as usual, since no source speaks of it")[2].split())
    assert "fuzzy 0.1; rusts 0;" in told
    assert "density" not in told


def test_a_label_leaves_the_unit_off_but_keeps_a_name_that_ends_like_one():
    assert label_of(DENSITY) == "density"
    assert label_of(replace(DENSITY, name="recoat_from_h", unit="h")) == "recoat from"
    assert label_of(replace(DENSITY, name="min_c", unit="C")) == "min"
    assert label_of(replace(DENSITY, name="h", unit="h")) == "h"


def test_facts_alone_counts_every_kind(know: Knowledge, capsys: pytest.CaptureFixture[str]):
    assert main(["facts"]) == 0
    lines = capsys.readouterr().out.splitlines()
    for kind, (_, many) in KIND_WORDS.items():
        assert any(
            line.strip().startswith(many) and line.endswith(f" {len(know.ids(kind))}") for line in lines
        )
    assert set(KIND_WORDS) == set(know.identities)


@pytest.mark.parametrize("kind", KIND_WORDS)
def test_every_kind_can_be_listed_and_its_word_is_the_name_of_no_thing(
    kind: str, know: Knowledge, capsys: pytest.CaptureFixture[str]
):
    many = KIND_WORDS[kind][1]
    assert kind_meant(many) == kind_meant(f"{kind}s") == kind
    assert not things_meant(know, many)
    assert main(["facts", many]) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert all(" ".join(identity.name.split()) in text for identity in know.identities[kind].values())


def test_a_word_of_several_kinds_shows_each(know: Knowledge, capsys: pytest.CaptureFixture[str]):
    kinds = [thing["kind"] for thing in asked(capsys, "wax")["things"]]
    assert {"film", "contaminant"} <= set(kinds)
    assert main(["facts", "wax"]) == 0
    text = capsys.readouterr().out
    assert "paste wax: finish class\n" in text
    assert "wax: contaminant\n" in text
    assert not leaks(know, text)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["shelac"], '"shelac" is not known – nearest are shellac'),
        (["wods"], "woods"),
        (["qqqqqq"], "names of all are listed by woods, builds, finish classes"),
        (["oak", "tanin"], 'oak has no property "tanin" – write tannin'),
        (["oak", "zzz"], "known are group, tannin"),
        (["oak", "tannin", "more"], "unrecognized arguments: more"),
    ],
)
def test_an_unknown_word_is_a_wrong_call_that_names_the_nearest(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str]
):
    assert main(["facts", *words]) == 2
    shown = capsys.readouterr()
    assert said in " ".join(shown.err.split())
    assert shown.out == ""


def test_a_nearest_word_is_always_one_that_is_understood(know: Knowledge):
    for word in ("shelac", "wods", "okk", "white rinngs", "peelin"):
        assert near_words(know, word)
        assert all(things_meant(know, near) or kind_meant(near) for near in near_words(know, word))


def test_one_property_may_be_named_in_full_in_words_or_in_part(capsys: pytest.CaptureFixture[str]):
    for word in ("recoat_from_h", "recoat from", "Recoat-from"):
        found = asked(capsys, "shellac", word)["things"][0]["facts"]
        assert [one["property"] for one in found] == ["recoat_from_h"]
    both = asked(capsys, "shellac", "recoat")["things"][0]["facts"]
    assert {one["property"] for one in both} == {"recoat_from_h", "recoat_until_h"}


def test_one_property_over_a_kind_is_sorted_highest_first(
    know: Knowledge, capsys: pytest.CaptureFixture[str]
):
    assert main(["facts", "woods", "tannin"]) == 0
    text = capsys.readouterr().out
    shown = [line.strip() for line in text.splitlines() if line.startswith("  ") and ";" in line]
    names = [next(w.name for w in know.woods.values() if line.startswith(f"{w.name}  ")) for line in shown]
    assert len(names) == len(know.woods)
    tannin = [next(w.tannin for w in know.woods.values() if w.name == name) for name in names]
    assert tannin == sorted(tannin, reverse=True)


def test_every_thing_has_a_page_within_its_width_without_ids_and_a_sound_document(
    know: Knowledge, capsys: pytest.CaptureFixture[str]
):
    for kind, identities in know.identities.items():
        assert kind in KIND_WORDS
        for identity in identities.values():
            text = facts_text(know, (known_of(know, identity),), Page(width=80), everything=False)
            assert max(map(len, text.splitlines())) <= 80
            assert not leaks(know, "\n".join(value_lines(text)))
            assert {row["id"] for row in rows_of(know, identity)} == {
                fact.id for fact in know.rows(f"{kind}:{identity.id}")
            }
    document = asked(capsys, "finishes", "hardness")
    assert len(document["things"]) == len(know.films)


def value_lines(text: str) -> list[str]:
    """Return the lines with values; other names may be ids, and what a property means may speak of them."""
    lines = (line for line in text.splitlines() if not line.startswith("  Also called"))
    return [line for line in lines if line.startswith("  ") and not line.startswith("    ")]


def rows_of(know: Knowledge, identity: Identity) -> list[dict[str, str]]:
    """Return the rows of a thing's own properties; shares by time are rows on another subject."""
    found = []
    for one in known_of(know, identity).properties:
        if not one.about:
            found.extend({"id": row.id} for row in ((one.winner,) if one.winner else ()) + one.others)
    return found


def test_the_shares_of_a_class_among_old_finishes_say_for_which_time(capsys: pytest.CaptureFixture[str]):
    shares = [one for one in asked(capsys, "waxy shellac")["things"][0]["facts"] if one["about"]]
    assert any(one["about"] == "before 1900, old clear finish" for one in shares)
    know = bootstrap.knowledge()
    early = next(one for one in shares if one["about"] == "1930–1949, old clear finish")
    assert float(early["value"]) == dict(know.era_prior("1930-1949", "clear"))["shellac-waxed"]
