"""Which of several rows wins, and what the bundle answers."""

from collections.abc import Callable
from typing import Any

import pytest

from refettle.knowledge import FactRow, Identity, Knowledge, Property, SourceRow, facts, label_class
from refettle.knowledge.resolve import plain_spelling

PROPS = (
    Property(kind="film", name="recoat_from_h", type="number", unit="h", low=0.0, high=1000.0),
    Property(kind="film", name="hardness", type="number", unit="1", default="0.4"),
    Property(kind="film", name="opaque", type="flag"),
    Property(kind="film", name="methods", type="list"),
    Property(kind="film", name="family", type="text", default="evaporative"),
)
SOURCES = (
    SourceRow(key="book", title="a handbook", rank=1),
    SourceRow(key="leaflet", title="a leaflet", rank=5),
    SourceRow(key="judgement", title="judgement", rank=30),
)

Build = Callable[..., Knowledge]


def row(id_: str, value: str, *, cls: str = "varnish", **more: str | float | None) -> FactRow:
    usual: dict[str, Any] = {"prop": "recoat_from_h", "grade": "handbook", "source": "book", "unit": "h"}
    return FactRow(id=id_, subject=f"film:{cls}", value=value, **{**usual, **more})


@pytest.fixture
def build(monkeypatch: pytest.MonkeyPatch) -> Build:
    """Build a bundle of film classes whose facts are a plain dict instead of the full FilmFacts."""
    monkeypatch.setattr(facts, "FilmFacts", dict)

    def make(*rows: FactRow, parent: str = "") -> Knowledge:
        identities = (
            Identity(kind="film", id="varnish", name="oil varnish", aliases=("varnish", "spar varnish")),
            Identity(kind="film", id="spar", name="spar", aliases=("spar varnish",), parent=parent),
        )
        return Knowledge.build(rows=rows, properties=PROPS, identities=identities, sources=SOURCES)

    return make


def test_the_better_grade_wins_whatever_the_order(build: Build) -> None:
    worse = row("f-1", "24", grade="judgement", source="judgement")
    better = row("f-2", "12", grade="measured", source="leaflet")
    for rows in ((worse, better), (better, worse)):
        known = build(*rows)
        assert known.film("varnish")["recoat_from_h"] == 12.0
        assert known.because("film:varnish", "recoat_from_h") == ("f-2",)
        assert [r.id for r in known.rows("film:varnish", "recoat_from_h")] == ["f-2", "f-1"]


def test_within_a_grade_the_better_source_wins_then_the_lower_id(build: Build) -> None:
    known = build(row("f-1", "20", source="leaflet"), row("f-3", "16"), row("f-2", "18"))
    assert [r.id for r in known.rows("film:varnish")] == ["f-2", "f-3", "f-1"]


def test_a_figure_that_was_read_goes_before_one_recalled(build: Build) -> None:
    known = build(row("f-1", "20", read_as="memory"), row("f-2", "18", source="leaflet", read_as="excerpt"))
    assert known.because("film:varnish", "recoat_from_h") == ("f-2",)


def test_a_row_found_in_the_cold_stands_behind_one_at_room_conditions(build: Build) -> None:
    known = build(row("f-1", "60", grade="measured", at_c=10.0), row("f-2", "18", at_c=23.0))
    assert known.film("varnish")["recoat_from_h"] == 18.0


def test_a_superseded_row_stays_shown_but_decides_nothing(build: Build) -> None:
    known = build(row("f-1", "20", grade="measured", superseded_by="f-2"), row("f-2", "18"))
    assert known.film("varnish")["recoat_from_h"] == 18.0
    assert [r.id for r in known.rows("film:varnish")] == ["f-2", "f-1"]


def test_without_a_row_the_default_stands_and_nothing_is_given_as_its_reason(build: Build) -> None:
    known = build()
    assert known.film("varnish")["hardness"] == 0.4
    assert known.film("varnish")["family"] == "evaporative"
    assert known.film("varnish")["opaque"] is False
    assert known.film("varnish")["methods"] == ()
    assert known.because("film:varnish", "hardness") == ()
    assert known.range_of("film:varnish", "hardness") == (0.4, 0.4, 0.4)


def test_a_child_has_its_parents_facts_until_it_has_its_own(build: Build) -> None:
    inherited = build(row("f-1", "20"), parent="varnish")
    assert inherited.film("spar")["recoat_from_h"] == 20.0
    assert inherited.because("film:spar", "recoat_from_h") == ("f-1",)
    own = build(row("f-1", "20"), row("f-2", "30", cls="spar", grade="judgement"), parent="varnish")
    assert own.film("spar")["recoat_from_h"] == 30.0
    assert [r.id for r in own.rows("film:spar", "recoat_from_h")] == ["f-2", "f-1"]


def test_a_ring_of_parents_does_not_hang(build: Build) -> None:
    assert build(row("f-1", "20"), parent="spar").film("spar")["recoat_from_h"] == 0.0


def test_the_range_of_a_row_without_width_is_its_value(build: Build) -> None:
    known = build(row("f-1", "20"), row("f-2", "30", cls="spar", low=24.0, high=48.0))
    assert known.range_of("film:varnish", "recoat_from_h") == (20.0, 20.0, 20.0)
    assert known.range_of("film:spar", "recoat_from_h") == (24.0, 30.0, 48.0)


def test_flags_and_lists_are_read(build: Build) -> None:
    known = build(row("f-1", "1", prop="opaque"), row("f-2", "brush; wipe", prop="methods"))
    assert known.film("varnish")["opaque"] is True
    assert known.film("varnish")["methods"] == ("brush", "wipe")


def test_a_cell_that_is_no_flag_is_refused(build: Build) -> None:
    with pytest.raises(ValueError, match='"perhaps" is neither yes'):
        build(row("f-1", "perhaps", prop="opaque"))


def test_words_are_found_by_id_name_or_alias_however_spelt(build: Build) -> None:
    known = build()
    assert known.find("film", "Oil-Varnish") == "varnish"
    assert known.find("film", "SPARVARNISH") == "varnish"  # an alias of both: the first row has it
    assert known.find("film", "spar") == "spar"
    assert known.find("film", "paint") is None
    assert known.find("wood", "varnish") is None


def test_near_words_are_offered_once_a_thing(build: Build) -> None:
    assert build().near("film", "oil varnsh") == ("oil varnish",)
    assert build().near("film", "zzz") == ()


def test_plain_spelling_forgets_case_hyphens_and_spaces() -> None:
    assert (
        plain_spelling("Yellow-Poplar") == plain_spelling("yellow poplar") == plain_spelling("yellow_poplar")
    )


def test_the_id_of_a_labelled_class_is_plain() -> None:
    assert label_class("nitro-lacquer", "Old tin, 2021") == "nitro-lacquer.old-tin-2021"
