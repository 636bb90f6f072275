"""The shelf: what is too old, opened too long or frozen is not counted, and the file says it in plain words."""

import pytest

from refettle.domain.piece import Product
from refettle.domain.workshop import Workshop
from refettle.files.stock import age_months
from refettle.files.tables import load_knowledge
from refettle.files.workshop_file import read_workshop
from refettle.services.shelf import sort_shelf

KNOW = load_knowledge()


def sorted_one(**said: object) -> tuple[float, list[str]]:
    """Return the litres counted of one tin and the texts about it."""
    tin = Product(name="tin", have_l=0.5, **said)  # type: ignore[arg-type]
    shop, told = sort_shelf(KNOW, Workshop(products=(tin,)))
    return shop.products[0].have_l, [f"{finding.what} [{finding.code}]" for finding in told]


def test_a_frozen_water_borne_tin_is_not_counted_and_an_oil_is():
    have, told = sorted_one(cls="acrylic-paint", frozen=True)
    assert have == 0.0
    assert told == [
        "tin: it has been frozen, and a water-borne coat curdles then; not counted [stock-not-counted]"
    ]
    assert sorted_one(cls="drying-oil", frozen=True) == (0.5, [])


@pytest.mark.parametrize(
    ("months", "have", "told"),
    [
        (3.0, 0.5, []),
        (8.0, 0.5, ["tin: 8 months old; opened, it keeps 6 months to 12 months; counted [stock-to-test]"]),
        (
            14.0,
            0.0,
            ["tin: 14 months old; opened, it keeps 6 months to 12 months; not counted [stock-not-counted]"],
        ),
    ],
)
def test_dissolved_shellac_ages_within_the_year(months: float, have: float, told: list[str]):
    assert sorted_one(cls="shellac-dewaxed", age_months=months, opened=True) == (have, told)


def test_a_closed_tin_keeps_longer_than_an_opened_one():
    assert sorted_one(cls="alkyd-varnish", age_months=20.0)[1] == []
    assert sorted_one(cls="alkyd-varnish", age_months=36.0, opened=True)[0] == 0.0
    for cls in KNOW.ids("film"):
        closed, opened = (KNOW.range_of(f"film:{cls}", f"keeps_{word}months") for word in ("", "opened_"))
        assert closed[2] >= opened[2], cls


def test_without_an_age_a_tin_is_taken_as_good():
    assert sorted_one(cls="shellac-dewaxed", opened=True) == (0.5, [])


def shop_of(*lines: str) -> tuple[Workshop | None, list[str]]:
    text = "stock:\n" + "".join(f"  - {{{line}}}\n" for line in lines)
    shop, said = read_workshop(text, "shop.yaml", KNOW)
    return shop, [finding.text() for finding in said]


def test_the_file_tells_tins_agents_and_things_by_the_piece():
    shop, said = shop_of(
        "name: a, have: 0.4 L, class: dewaxed shellac, age: 2 years, opened: yes",
        "name: b, class: mineral spirits, have: 0.5 L",
        "name: c, class: sandpaper, grit: P180, have: 6",
        "name: d, class: acrylic paint, have: 200 ml, frozen: yes",
    )
    assert said == []
    assert shop is not None
    a, b, c, d = shop.products
    assert (a.kind, a.have_l, a.age_months, a.opened) == ("film", 0.4, 24.0, True)
    assert (b.kind, b.cls, b.have_l, b.size_l) == ("cleaner", "mineral-spirits", 0.5, 0.0)
    assert (c.kind, c.cls, c.grit, c.have_count) == ("supply", "abrasive-sheet", 180, 6.0)
    assert (d.frozen, d.have_l) == (True, 0.2)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (
            "name: a, class: gloves, have: 2, age: 3 years",
            'shop.yaml:2: stock/age: pair of solvent-proof gloves takes no "age" – take it out  [unknown-key]',
        ),
        (
            "name: a, class: gloves, have: 2, tin: 1 L",
            'shop.yaml:2: stock/tin: pair of solvent-proof gloves takes no "tin" – take it out  [unknown-key]',
        ),
        (
            "name: a, class: danish oil, have: 1 L, age: old",
            'shop.yaml:2: stock/age: "old" is no age – write a number and its unit, e.g. "8 months"  [unclear-amount]',
        ),
        (
            "name: a, class: danish oil, grit: P180",
            'shop.yaml:2: stock/grit: oil and varnish blend takes no "grit" – take it out  [unknown-key]',
        ),
    ],
)
def test_what_makes_no_sense_for_a_thing_is_told(line: str, told: str):
    shop, said = shop_of(line)
    assert shop is None
    assert said == [told]


@pytest.mark.parametrize(
    ("text", "months"), [("8 months", 8.0), ("3 years", 36.0), ("1.5 years", 18.0), ("1 month", 1.0)]
)
def test_an_age_is_read_in_months(text: str, months: float):
    assert age_months(text) == pytest.approx(months)
