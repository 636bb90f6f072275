"""The workshop file: what it says, what is assumed, and the full text of every finding."""
# ruff: noqa: E501 - the full text of a message stands on one line

import pytest
from tests.fakes import small_knowledge

from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.workshop import Workshop
from refettle.files.workshop_file import read_workshop


def read(text: str) -> Workshop:
    workshop, findings = read_workshop(text, "w.yaml", small_knowledge())
    assert [finding.text() for finding in findings] == []
    assert workshop is not None
    return workshop


def messages(text: str) -> list[str]:
    workshop, findings = read_workshop(text, "w.yaml", small_knowledge())
    assert workshop is None
    return [finding.text() for finding in findings]


def test_a_name_alone_is_enough_and_the_rest_is_assumed():
    workshop = read("workshop: Shed\n")
    assert workshop.name == "Shed"
    assert workshop.air_likely == STANDARD_AIR
    assert "hand-block" in workshop.tools
    assert [one.path for one in workshop.assumed] == [
        "tools", "currency", "worth of an hour", "worth of a day", "air", "methods", "ventilation",
        "clamps", "evenings per week", "hours per evening",
    ]  # fmt: skip


def test_everything_can_be_said():
    workshop = read(
        "workshop: Garage\ncurrency: crowns\nworth of an hour: 14.50\nworth of a day: 2\n"
        "air:\n  likely: {temperature: 54 F, humidity: 65 %}\n  safe: {temperature: 5 C, humidity: 0.8}\n"
        "tools: [hand block, random-orbit sander]\nmethods: [brush, spray]\nventilation: outdoors\n"
        "clamps: 8\nevenings per week: 2.5\nhours per evening: 90 min\ninvented: yes\n"
        "stock:\n  - name: old tin\n    class: nitro lacquer\n    have: 1 qt\n    tin: 1 gal\n    price: 60\n"
        "    label: {recoat from: 45 min, min: 10 C, dry: 30 um, rh max: 70 %, flammable: yes, voc g l: 680}\n"
        "prices: {shellac: 32}\n"
    )
    assert (workshop.currency, workshop.hour_worth, workshop.day_worth) == ("crowns", 14.5, 2.0)
    assert workshop.air_likely.temp_c == pytest.approx(12.2222, abs=1e-4)
    assert workshop.air_safe == Air(temp_c=5.0, rh=0.8)
    assert workshop.tools == {"hand-block", "random-orbit"}
    assert workshop.methods == {"brush", "spray"}
    assert (workshop.ventilation, workshop.evenings_per_week, workshop.hours_per_evening) == (
        "outdoors",
        2.5,
        1.5,
    )
    tin = workshop.products[0]
    assert (tin.name, tin.cls, tin.have_l, tin.size_l, tin.price) == (
        "old tin", "nitro-lacquer", 0.946352946, 3.785411784, 60.0,
    )  # fmt: skip
    assert dict(tin.label) == {
        "recoat_from_h": 0.75, "min_c": 10.0, "dry_um": 30.0, "rh_max": 0.7, "flammable": 1.0, "voc_g_l": 680.0,
    }  # fmt: skip
    assert (tin.where.line, tin.where.path) == (16, "stock/old tin")
    assert workshop.prices == (("shellac-waxed", 32.0),)
    assert workshop.invented
    assert workshop.assumed == ()


def test_one_air_is_the_likely_one_and_a_worse_day_is_assumed():
    workshop = read("workshop: Shed\nair: {temperature: 12 C, humidity: 70 %}\n")
    assert workshop.air_likely == Air(temp_c=12.0, rh=0.7)
    assert workshop.air_safe == Air(temp_c=8.0, rh=0.8)
    told = {one.path: (one.value, one.why) for one in workshop.assumed}
    assert told["air/safe"] == ("8 C, 80 %", "not said: a cooler, damper day")


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("curency: EUR", 'w.yaml:2: curency: "curency" is not an entry that is known here – write "currency"  [unknown-key]'),
        ("worth of an hour: lots", 'w.yaml:2: worth of an hour: "lots" is not a sum of money – write the number alone, e.g. 40; the currency stands in the workshop file  [unclear-amount]'),
        ("air: cold", 'w.yaml:2: air: entries are due here – write entries below it, e.g. "likely: {temperature: 18 C, humidity: 55 %}"  [wrong-form]'),
        ("air: {winter: {temperature: 3 C}}", 'w.yaml:2: air/winter: "winter" is not an entry that is known here – known here: likely, safe, temperature, humidity, sun  [unknown-key]'),
        ("air: {temperature: 12}", 'w.yaml:2: air/temperature: "12" has no unit – write degrees with C or F, e.g. 12 C  [unclear-amount]'),
        ("tools: [random orbit sandr]", 'w.yaml:2: tools: "random orbit sandr" is not a known tool – write "random-orbit sander"  [unknown-tool]'),
        ("methods: [brsh]", 'w.yaml:2: methods: "brsh" is not a known way to lay a coat – write "brush"  [unknown-word]'),
        ("ventilation: some", 'w.yaml:2: ventilation: "some" is not a known ventilation – write good, poor or outdoors  [unknown-word]'),
        ("evenings per week: 9", 'w.yaml:2: evenings per week: "9" is no number of evenings – write more than 0, at most 7  [unclear-amount]'),
        ("hours per evening: 30", "w.yaml:2: hours per evening: 30 h is no evening – write more than 0 h, at most 24 h  [unclear-amount]"),
        ("stock: primer", "w.yaml:2: stock: a list of tins is due here – begin each tin with a dash: - name: white primer  [wrong-form]"),
        ("stock: [primer]", 'w.yaml:2: stock: entries are due here – write entries below it, e.g. "name: white primer" and "class: oil primer"  [wrong-form]'),
        ("stock: [{name: a}]", 'w.yaml:2: stock/class: this tin has no class – add e.g. "class: oil primer"  [missing]'),
        ("stock: [{class: oil primer}]", 'w.yaml:2: stock/name: this tin has no name – add e.g. "name: white primer"  [missing]'),
        ("stock: [{name: a, class: oil primer}, {name: a, class: shellac}]", 'w.yaml:2: stock: "a" stands here a second time – give each tin a name of its own  [word-twice]'),
        ("stock: [{name: a, class: oil primer, colour: red}]", 'w.yaml:2: stock/colour: "colour" is not an entry that is known here – known here: name, class, have, tin, price, label, grit, age, opened, frozen  [unknown-key]'),
        ("stock: [{name: a, class: oil primer, have: 2}]", 'w.yaml:2: stock/have: "2" has no unit – name the unit (L, ml, gal, qt, pt, fl oz), e.g. 0.75 L  [unclear-amount]'),
        ("stock: [{name: a, class: oil primer, label: {recoat frm: 2 h}}]", 'w.yaml:2: stock/label/recoat frm: "recoat frm" is no figure that a label gives – write "recoat from"  [unknown-key]'),
        ("stock: [{name: a, class: oil primer, label: {touch: 900 h}}]", "w.yaml:2: stock/label/touch: 900 h is outside 0 to 500 h – check the figure and its unit  [unclear-amount]"),
        ("prices: {shelac: 3}", 'w.yaml:2: prices/shelac: "shelac" is not a known film or colour – write "shellac", "clear shellac" or "shellac-primer"  [unknown-film]'),
        ("prices: {shellac: 3, french polish: 4}", 'w.yaml:2: prices/french polish: "french polish" is priced a second time – keep one of the two  [word-twice]'),
    ],
)  # fmt: skip
def test_a_finding_says_what_where_and_what_to_do(line: str, message: str):
    assert messages(f"workshop: Shed\n{line}\n") == [message]
