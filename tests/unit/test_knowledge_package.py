"""The package's own tables: sound, complete, locked; and the questions others ask of them."""

import pytest

from refettle.files import lock
from refettle.files.tables import Tables, load_knowledge, read_tables
from refettle.knowledge import Knowledge
from refettle.knowledge.check import check_rows
from refettle.knowledge.rows import ERA_BANDS, ERA_KINDS, KINDS


@pytest.fixture(scope="module")
def known() -> Knowledge:
    return load_knowledge()


@pytest.fixture(scope="module")
def tables() -> Tables:
    return read_tables()


def test_the_tables_have_no_problems(tables: Tables) -> None:
    found = check_rows(
        tables=tables.facts,
        properties=tables.properties,
        identities=tables.identities,
        sources=tables.sources,
    )
    assert [finding.text() for finding in found] == []


def test_the_lock_is_current() -> None:
    assert lock.changed_tables() == (), "run python -m refettle.files.lock if the change is meant"


def test_every_identity_can_be_asked_for_and_is_found_by_its_own_name(known: Knowledge) -> None:
    for kind in KINDS:
        for id_ in known.ids(kind):
            assert known.has(kind, id_)
            assert known.find(kind, id_) == id_
            assert known.find(kind, known.name(kind, id_)) == id_


def test_no_alias_speaks_for_two_things_by_chance(tables: Tables) -> None:
    seen: dict[tuple[str, str], str] = {}
    for identity in tables.identities:
        for alias in identity.aliases:
            key = (identity.kind, alias)
            assert key not in seen, f"{alias}: {seen.get(key)} and {identity.id}"
            seen[key] = identity.id


def test_the_same_tables_give_the_same_version(known: Knowledge) -> None:
    assert known.version == load_knowledge().version
    assert len(known.version) == 12


def test_every_decade_band_has_priors_that_add_up_to_one_likeliest_first(known: Knowledge) -> None:
    for band in ERA_BANDS:
        for kind in ERA_KINDS:
            shares = [share for _, share in known.era_prior(band, kind)]
            assert sum(shares) == pytest.approx(1.0)
            assert shares == sorted(shares, reverse=True)
            assert all(known.has("film", cls) for cls, _ in known.era_prior(band, kind))


def test_a_piece_older_than_lacquer_may_still_wear_lacquer_because_films_are_redone(known: Knowledge) -> None:
    assert dict(known.era_prior("before-1900", "clear"))["nitro-lacquer"] > 0.0
    assert dict(known.era_prior("before-1900", "clear"))["shellac-waxed"] > 0.3


def test_a_winning_row_leads_to_its_source(known: Knowledge) -> None:
    (id_,) = known.because("wood:oak", "density_kg_m3")
    first = known.rows("wood:oak", "density_kg_m3")[0]
    assert first.id == id_
    assert known.source(first.source).title.startswith("Wood Handbook")
    assert len(known.rows("wood:oak", "density_kg_m3")) > 1, "the red oaks stay, shown behind the white"


def test_a_label_figure_makes_a_new_class_and_leaves_the_old_one(known: Knowledge) -> None:
    base = known.film("oil-polyurethane").recoat_from_h
    more = known.with_label("oil-polyurethane", (("recoat_from_h", 4.0), ("opaque", 1.0)), "Tin of 2021")
    new = more.film("oil-polyurethane.tin-of-2021")
    assert (new.recoat_from_h, new.opaque, new.name) == (4.0, True, "Tin of 2021")
    assert new.hardness == known.film("oil-polyurethane").hardness
    assert more.find("film", "tin of 2021") == new.id
    rows = more.rows(f"film:{new.id}", "recoat_from_h")
    assert more.because(f"film:{new.id}", "recoat_from_h") == (rows[0].id,)
    assert rows[0].grade == "label"
    assert more.source(rows[0].source).rank == 0
    assert rows[1].subject == "film:oil-polyurethane", "what the class says stays in sight"
    assert more.film("oil-polyurethane").recoat_from_h == base
    assert not known.has("film", new.id)


def test_a_label_figure_of_an_unknown_property_is_the_callers_mistake(known: Knowledge) -> None:
    with pytest.raises(KeyError):
        known.with_label("oil-polyurethane", (("shine", 1.0),), "tin")


def test_unknown_ids_are_the_callers_mistake(known: Knowledge) -> None:
    with pytest.raises(KeyError):
        known.wood("oka")
    assert known.near("wood", "oka")[0] == "oak"


@pytest.mark.parametrize(
    ("more", "less", "prop"),
    [
        ("oak", "pine", "tannin"),
        ("pine-knotty", "pine", "knots"),
        ("cocobolo", "teak", "antioxidant"),
        ("rosewood", "teak", "antioxidant"),
        ("pine", "oak", "blotch"),
        ("maple", "oak", "tight"),
        ("oak", "maple", "open_pores"),
        ("padauk", "mahogany", "dye_like"),
        ("mdf-edge", "mdf", "swells"),
        ("cedar-aromatic", "cedar-western", "vapour_softens"),
        ("foil", "hardboard", "slick"),
    ],
)
def test_woods_stand_in_the_order_a_finisher_expects(
    known: Knowledge, more: str, less: str, prop: str
) -> None:
    assert getattr(known.wood(more), prop) > getattr(known.wood(less), prop)


def test_faults_that_go_back_to_the_wood_cost_more_than_those_put_right_on_the_surface(
    known: Knowledge,
) -> None:
    deep = [fault for fault in known.faults.values() if fault.goes_back_to == "wood"]
    shallow = [fault for fault in known.faults.values() if fault.goes_back_to == "surface"]
    assert min(f.harm_h_m2 for f in deep) >= 0.5
    mean = sum(f.harm_h_m2 for f in deep) / len(deep), sum(f.harm_h_m2 for f in shallow) / len(shallow)
    assert mean[0] > 2 * mean[1]


def test_lead_is_the_dearest_fault(known: Knowledge) -> None:
    assert max(known.faults.values(), key=lambda f: (f.harm_h_m2, f.harm_price_m2)).id == "lead-dust"


def test_turned_work_is_slower_than_frames_and_frames_slower_than_panels(known: Knowledge) -> None:
    for labour in known.labours.values():
        assert labour.flat_m2_h > labour.frame_m2_h > labour.carved_m2_h, labour.id


def test_every_test_says_yes_more_often_where_it_is_so(known: Knowledge) -> None:
    for test in known.tests.values():
        assert test.yes_if_true > test.yes_if_false + 0.3, test.id
