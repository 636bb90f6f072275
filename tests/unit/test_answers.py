"""Answers to what people ask: causes of a fault, what goes over what, a coat in an air, which finish suits."""

import json
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from refettle import bootstrap
from refettle.cli import main
from refettle.domain.air import Air
from refettle.files.air_text import read_air_text
from refettle.files.amounts import Unclear, length_mm
from refettle.files.rule_cases import cases_of
from refettle.files.tables import load_knowledge
from refettle.rules import RULES
from refettle.services.causes import cards_meant, faults_of, hits_of
from refettle.services.finishes import stands_words
from refettle.services.in_air import class_in_air
from refettle.services.over import all_over, one_over_other, usual_coats

KNOW = load_knowledge()
EXAMPLES = Path(__file__).parents[2] / "examples"


def document(capsys: pytest.CaptureFixture[str], schema: str, *words: str) -> dict[str, Any]:
    assert main([*words, "--json"]) == 0
    made: dict[str, Any] = json.loads(capsys.readouterr().out)
    jsonschema.validate(made, json.loads(files("refettle.cli").joinpath(schema).read_text("utf-8")))
    return made


def page(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(list(words)) == 0
    return " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("fault", sorted({card.fault for card in RULES}))
def test_every_fault_says_for_each_of_its_rules_what_leads_to_it_and_what_avoids_it(fault: str) -> None:
    cards = tuple(card for card in RULES if card.fault == fault)
    (known,) = faults_of(KNOW, cards, cases_of(KNOW, (card.id for card in cards)))
    assert {cause.card.id for cause in known.causes} == {card.id for card in cards}
    assert [cause.chance for cause in known.causes] == sorted((c.chance for c in known.causes), reverse=True)
    for cause in known.causes:
        assert cause.cases
        assert all(case.left <= 0.5 * case.chance and case.avoided and case.why for case in cause.cases)


def test_a_chance_on_the_page_is_the_one_that_the_rule_gives_in_its_own_case() -> None:
    (known,) = faults_of(KNOW, cards_meant(KNOW, "craters"), cases_of(KNOW, ("matter-repels-coat",)))
    shown = {case.name: case.chance for cause in known.causes for case in cause.cases}
    for case in cases_of(KNOW, ("matter-repels-coat",))["matter-repels-coat"]:
        if case.fires:
            assert shown[case.name] == hits_of(KNOW, case)["matter-repels-coat"].chance


@pytest.mark.parametrize("word", ["white", "Haze", "milky", "why is it cloudy and white"])
def test_white_leads_to_hazes_that_tests_tell_apart(word: str) -> None:
    assert {card.fault for card in cards_meant(KNOW, word)} & {"blushing", "sanding-marks"}


def test_white_names_the_four_hazes_and_how_to_tell_them_apart(capsys: pytest.CaptureFixture[str]) -> None:
    said = page(capsys, "facts", "white")
    apart = said.partition("First suspect")[0]
    for haze in ("blush", "wax bloom", "water in the film", "sanding haze"):
        assert haze in apart


@pytest.mark.parametrize(
    ("word", "fault"), [("peels", "peeling"), ("why does it peel", "peeling"), ("fisheye", "craters"),
                        ("sticky hours", "soft-film")],
)  # fmt: skip
def test_a_question_finds_its_fault(word: str, fault: str) -> None:
    assert fault in {card.fault for card in cards_meant(KNOW, word)}


def test_a_word_that_nothing_shows_is_a_wrong_call_with_the_nearest(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["facts", "peelng"]) == 2
    assert "peeling" in capsys.readouterr().err


def test_tests_that_speak_for_rules_name_rules_that_there_are() -> None:
    marks = {
        mark for test in KNOW.ids("test") for mark in KNOW.test(test).detects if mark.startswith("rule:")
    }
    assert marks
    assert marks <= {f"rule:{card.id}" for card in RULES}


def test_dewaxed_shellac_parts_what_does_not_go_together() -> None:
    # common practice, no source: urethane over waxy shellac wants dewaxed shellac between
    pair = one_over_other(KNOW, "waterborne-polyurethane", "shellac-waxed")
    assert not pair.at("old", "scuffed").holds
    assert pair.best("old").way == "barrier"


def test_a_film_melts_into_its_own_kind_and_a_hard_one_wants_a_key() -> None:
    # common practice, no source
    assert all(
        one_over_other(KNOW, "nitro-lacquer", "nitro-lacquer").at(state, "as it is").holds
        for state in ("fresh", "old")
    )
    own = one_over_other(KNOW, "oil-polyurethane", "oil-polyurethane")
    assert own.at("fresh", "as it is").holds
    assert own.best("old").way == "scuffed"


def test_lacquer_over_fresh_oil_lifts_it_and_oil_does_not_sink_into_a_film() -> None:
    # common practice, no source
    over = one_over_other(KNOW, "nitro-lacquer", "oil-polyurethane").at("fresh", "as it is")
    assert over.hits[0].fault == "wrinkling"
    assert not one_over_other(KNOW, "drying-oil", "oil-polyurethane").best("old").holds


def test_a_key_or_a_barrier_is_never_advised_where_a_coat_holds_without() -> None:
    for pair in all_over(KNOW, "alkyd-enamel"):
        for state in pair.states:
            if pair.at(state, "as it is").holds:
                assert pair.best(state).way == "as it is"


def test_the_table_holds_every_usual_coat_once_best_first(capsys: pytest.CaptureFixture[str]) -> None:
    made = document(capsys, "facts.schema.json", "facts", "--over", "shellac")
    assert sorted(pair["coat"] for pair in made["pairs"]) == sorted(usual_coats(KNOW))
    answers = [list(pair["best"].values()).count("no") for pair in made["pairs"]]
    assert answers == sorted(answers)


def test_below_its_lowest_temperature_a_waterborne_coat_stands_still(
    capsys: pytest.CaptureFixture[str],
) -> None:
    said = page(capsys, "facts", "waterborne polyurethane", "--air", "8 C, 80 %")
    assert "No – too cold: it stands still below" in said


def test_damper_and_colder_air_never_lets_doors_close_sooner() -> None:
    hours = []
    for temp, rh in ((23.0, 0.5), (18.0, 0.6), (14.0, 0.7), (11.0, 0.8)):
        shut = class_in_air(KNOW, "latex-paint", Air(temp_c=temp, rh=rh)).hours("shut")
        assert shut is not None
        hours.append(shut.here_h.likely)
    assert hours == sorted(hours)


def test_at_the_air_of_the_label_the_hours_are_those_of_the_label() -> None:
    one = class_in_air(KNOW, "oil-polyurethane", Air(temp_c=21.0, rh=0.5))
    assert not one.barred
    assert not one.risks
    for hours in one.stages:
        assert hours.here_h.likely == pytest.approx(hours.label_h, rel=0.02)


def test_wet_air_is_too_near_the_dew_point_for_all(capsys: pytest.CaptureFixture[str]) -> None:
    made = document(capsys, "facts.schema.json", "facts", "--air", "20 C, 97 %")
    assert made["coats"]
    assert not any(coat["may_be_laid"] for coat in made["coats"])
    assert all("dew" in coat["barred"] for coat in made["coats"])


@pytest.mark.parametrize(
    "text", ["8 C, 80 %", "80 %, 8 C", "8 C 80%", "46.4 F, 80 %", "8 °C and 80 % humidity"]
)
def test_air_is_read_in_any_order(text: str) -> None:
    assert read_air_text(text) == Air(temp_c=8.0, rh=0.8)


@pytest.mark.parametrize(
    "text", ["", "warm", "8", "80 %", "200 C, 50 %", "8 C, 300 %", "8 C, 9 C", "8 C, 0 %"]
)
def test_air_that_is_none_is_told(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert isinstance(read_air_text(text), Unclear)
    assert main(["facts", "--air", text]) == 2
    assert "8 C, 80 %" in " ".join(capsys.readouterr().err.split())


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["facts", "shelac", "--over", "oak"], '"oak" is no finish class'),
        (["facts", "shelac", "--over", "shellac"], "nearest are shellac"),
        (["facts", "shellac", "--over", "shellac", "--air", "8 C, 80 %"], "each stand alone"),
        (["facts", "oak", "tannin", "--air", "8 C, 80 %"], "each stand alone"),
    ],
)
def test_a_wrong_question_is_told(words: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(words) == 2
    assert said in " ".join(capsys.readouterr().err.split())


def test_finishes_are_ordered_by_what_they_cost_and_the_plans_own_is_among_them(
    capsys: pytest.CaptureFixture[str],
) -> None:
    made = document(
        capsys, "why.schema.json", "why", str(EXAMPLES / "gate-leg-table.yaml"), "top", "--finishes"
    )
    costs = [finish["cost"] for finish in made["finishes"]]
    assert len(costs) > 3
    assert costs == sorted(costs)
    assert any(finish["taken"] for finish in made["finishes"])


def test_what_a_finish_stands_follows_its_facts() -> None:
    assert "weak against wear, water, heat and alcohol" in stands_words(KNOW.film("shellac-dewaxed"))
    assert any(said.startswith("stands wear") for said in stands_words(KNOW.film("oil-polyurethane")))


def test_why_not_says_first_whether_it_is_needed(capsys: pytest.CaptureFixture[str]) -> None:
    said = page(capsys, "why", str(EXAMPLES / "settle.yaml"), "back/front", "--not", "strip")
    assert "Yes, stripping is needed: without it no way leads to" in said
    said = page(capsys, "why", str(EXAMPLES / "gate-leg-table.yaml"), "top", "--not", "keep")
    assert "you asked for" in said


def test_a_test_that_the_plan_cannot_weigh_is_told(tmp_path: Path) -> None:
    path = tmp_path / "desk.yaml"
    path.write_text(
        "piece: Desk\nform: list\nwood: oak\nold finish: shellac\nlook: natural\n"
        "tests: {edge grain: yes}\nsurfaces: {top: {area: 1 m2}}\n", encoding="utf-8",
    )  # fmt: skip
    laid = bootstrap.lay_out(str(path), None)
    assert isinstance(laid, bootstrap.Laid)
    (told,) = (finding for finding in laid.findings if finding.code == "not-weighed")
    assert told.level == "note"
    assert "build: veneer" in told.do


def test_a_file_that_never_ends_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "/dev/zero"]) == 2
    assert "is no ordinary file" in " ".join(capsys.readouterr().err.split())
    (tmp_path / "big.yaml").write_bytes(b"#" * 2_000_001)
    assert main(["plan", str(tmp_path / "big.yaml")]) == 2
    assert "far too large" in " ".join(capsys.readouterr().err.split())


def test_a_fraction_sign_is_read_and_a_power_of_ten_is_told() -> None:
    assert length_mm("½ in") == length_mm("1/2 in") == 12.7
    assert length_mm("24½ in") == 622.3
    told = length_mm("1e9 m")
    assert isinstance(told, Unclear)
    assert "power of ten" in told.what


def test_colour_beside_look_is_told_where_it_belongs(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "desk.yaml"
    path.write_text(
        "piece: D\nform: list\nwood: oak\ncolour: white\nsurfaces: {top: {area: 1 m2}}\n", encoding="utf-8"
    )
    assert main(["plan", str(path)]) == 1
    assert '"look: opaque white satin"' in " ".join(capsys.readouterr().err.split())


def test_the_next_line_of_new_can_be_pasted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "hall table.yaml"
    assert main(["new", str(path), "--form", "table"]) == 0
    assert f"refettle plan '{path}'" in " ".join(capsys.readouterr().out.split())
