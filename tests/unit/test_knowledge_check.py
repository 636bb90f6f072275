"""Every problem of a table is found and said in full."""

import pytest

from refettle.knowledge.check import check_rows
from refettle.knowledge.rows import ERA_BANDS, ERA_KINDS, FactRow, Identity, Property, SourceRow

PROPS = (
    Property(kind="wood", name="hardness", type="number", unit="1", required=True, low=0.0, high=1.0),
    Property(kind="wood", name="shows_wood", type="flag"),
    Property(kind="era", name="share", type="number", unit="1", low=0.0, high=1.0),
    Property(kind="cleaner", name="removes", type="list"),
)
IDENTITIES = (
    Identity(kind="wood", id="oak", name="oak"),
    Identity(kind="film", id="varnish", name="varnish"),
    Identity(kind="contaminant", id="wax", name="wax"),
    Identity(kind="cleaner", id="soap", name="soap"),
)
SOURCES = (
    SourceRow(key="book", title="a handbook", rank=1),
    SourceRow(key="judgement", title="judgement", rank=30),
)
SOUND = FactRow(
    id="f-0001", subject="wood:oak", prop="hardness", value="0.6", low=0.5, high=0.7, unit="1",
    source="book", place="p. 2", grade="handbook", read_as="whole",
)  # fmt: skip
ERAS = tuple(
    FactRow(
        id=f"f-9{number:03d}", subject=f"era:{band}/{kind}:varnish", prop="share", value="1", unit="1",
        source="judgement", grade="judgement",
    )
    for number, (band, kind) in enumerate((band, kind) for band in ERA_BANDS for kind in ERA_KINDS)
)  # fmt: skip


def problems(*rows: FactRow, eras: tuple[FactRow, ...] = ERAS) -> list[str]:
    found = check_rows(
        tables=(("facts-a.csv", rows), ("facts-eras.csv", eras)),
        properties=PROPS,
        identities=IDENTITIES,
        sources=SOURCES,
    )
    return [finding.text() for finding in found]


def test_sound_tables_have_no_findings() -> None:
    assert problems(SOUND) == []


@pytest.mark.parametrize(
    ("change", "text"),
    [
        (
            {"source": "hearsay"},
            '"hearsay" is not a known source – add its key to sources.csv  [unknown-source]',
        ),
        (
            {"prop": "shine"},
            (
                '"shine" is not a property of kind wood – write a property of properties.csv, or add it there'
                "  [unknown-property]"
            ),
        ),
        (
            {"subject": "wood:oka"},
            (
                '"wood:oka" is not a known subject – write kind:id as in identities.csv, or add the identity'
                " there  [unknown-subject]"
            ),
        ),
        ({"unit": "%"}, 'unit "%" for hardness – convert to "1"  [wrong-unit]'),
        ({"value": "hard"}, '"hard" is no number – write a number  [wrong-type]'),
        (
            {"prop": "shows_wood", "value": "often", "unit": ""},
            '"often" is no flag – write 1 or 0  [wrong-type]',
        ),
        ({"value": ""}, "the value is empty – fill it in or take the row out  [no-value]"),
        (
            {"value": "60", "low": None, "high": None},
            "60 is outside 0 to 1 of hardness – mend the number or unit  [out-of-bounds]",
        ),
        (
            {"value": "0.9"},
            "0.9 is outside its own low and high – mend the value or its range  [out-of-range]",
        ),
        (
            {"grade": "certain"},
            (
                '"certain" is no grade – write one of measured, standard, handbook, label, common practice,'
                " judgement  [unknown-grade]"
            ),
        ),
        (
            {"read_as": ""},
            "a published source is named, but not how it was read – fill in read_as  [unknown-reading]",
        ),
        (
            {"source": "judgement"},
            'grade "handbook" with source judgement – write "judgement"  [wrong-grade]',
        ),
    ],
)
def test_a_damaged_row_is_found_at_its_line(change: dict[str, object], text: str) -> None:
    # the sound row stays beside it, so that nothing required is missing
    damaged = SOUND._replace(id="f-0002", place="p. 3", **change)
    assert f"facts-a.csv:3: f-0002: {text}" in problems(SOUND, damaged)


def test_twins_are_found_unless_one_was_superseded() -> None:
    twin = SOUND._replace(id="f-0002")
    assert problems(SOUND, twin) == [
        (
            "facts-a.csv:3: f-0002: wood:oak hardness stands twice from the same place: f-0001"
            " – keep one, or let the older be superseded  [twin]"
        )
    ]
    assert problems(SOUND._replace(superseded_by="f-0002"), twin) == []


def test_rivals_from_other_places_or_conditions_are_no_twins() -> None:
    assert (
        problems(SOUND, SOUND._replace(id="f-0002", place="p. 9"), SOUND._replace(id="f-0003", at_c=10.0))
        == []
    )


def test_an_id_used_twice_is_found() -> None:
    assert any("[twin-id]" in text for text in problems(SOUND, SOUND._replace(place="p. 7")))


def test_rows_out_of_order_are_found() -> None:
    second = SOUND._replace(id="f-0000", place="p. 7")
    assert problems(SOUND, second) == [
        "facts-a.csv:3: f-0000: f-0000 stands after f-0001 – sort the table by id  [unsorted]"
    ]


def test_a_missing_required_property_is_found() -> None:
    assert problems() == [
        "identities.csv: wood:oak/hardness: oak has no hardness – add a row for wood:oak  [missing-fact]"
    ]


def test_shares_that_do_not_add_up_are_found() -> None:
    short = (ERAS[0]._replace(value="0.9"), *ERAS[1:])
    assert problems(SOUND, eras=short) == [
        (
            "facts: era:before-1900/clear: shares of old finishes add up to 0.9 – make them add up to 1"
            "  [shares-not-1]"
        )
    ]


def test_an_unknown_decade_band_is_an_unknown_subject() -> None:
    odd = ERAS[0]._replace(id="f-9999", subject="era:1850s/clear:varnish")
    assert any("[unknown-subject]" in text for text in problems(SOUND, eras=(*ERAS, odd)))


def test_a_word_that_should_be_a_known_id_is_found() -> None:
    wrong = FactRow(
        id="f-0002",
        subject="cleaner:soap",
        prop="removes",
        value="wax;waks",
        source="judgement",
        grade="judgement",
    )
    assert problems(SOUND, wrong) == [
        'facts-a.csv:3: f-0002: "waks" is not known to removes – write a known id  [unknown-word]'
    ]
