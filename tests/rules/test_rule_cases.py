"""Every card has cases that make it speak, cases that leave it silent, and twins that avoid the fault."""

from pathlib import Path

import pytest

from refettle.files.rule_cases import NotACase, case_files, read_cases, read_sound
from refettle.files.rule_page import rule_page
from refettle.files.tables import load_knowledge
from refettle.rules import RULES
from refettle.rules.case import Case
from refettle.services.causes import hits_of

KNOW = load_knowledge()
FILES = case_files()
CASES = [case for path in FILES.values() for case in read_cases(KNOW, path)]
FIRING = [case for case in CASES if case.fires]
SILENT = [case for case in CASES if not case.fires]
SOUND = read_sound(KNOW, Path(__file__).with_name("sound.yaml"))
PLAIN = 0.3
"""From here on a chance is a plain warning [1]."""
PAGE = Path(__file__).parents[2] / "docs/reference/rules.md"

SNIPPET = """card: no-key-on-sealed-ground
fires:
  - name: gloss paint not scuffed
    at least: 0.1
    wood: {wood}
    films: [{{what: alkyd-enamel}}]
    look: opaque
    steps:
      - {{paint: latex-paint, by: brush, wait after: {wait}}}
    twin:
      name: scuffed
      before step 1: {{scuff: P220, by: hand-block}}
{more}
silent:
  - name: bare
    at most: 0.01
    wood: oak
    steps:
      - {{paint: latex-paint, by: brush}}
"""


def chances(case: Case) -> dict[str, float]:
    return {rule: hit.chance for rule, hit in hits_of(KNOW, case).items()}


def chance_of(case: Case) -> float:
    return chances(case).get(case.card, 0.0)


def named(case: Case) -> str:
    return f"{case.card}: {case.name}"


def test_every_card_has_its_case_file_and_every_file_its_card() -> None:
    assert set(FILES) == {card.id for card in RULES}


@pytest.mark.parametrize("card", [card.id for card in RULES])
def test_each_card_has_cases_of_both_sides(card: str) -> None:
    cases = read_cases(KNOW, FILES[card])
    assert [case for case in cases if case.fires]
    assert [case for case in cases if not case.fires]
    assert len({case.name for case in cases}) == len(cases), "two cases bear one name"


@pytest.mark.parametrize("case", FIRING, ids=named)
def test_it_speaks(case: Case) -> None:
    assert chance_of(case) >= case.bound


@pytest.mark.parametrize("case", FIRING, ids=named)
def test_the_one_change_at_least_halves_it(case: Case) -> None:
    assert case.twin is not None
    assert chance_of(case.twin) <= 0.5 * chance_of(case)


@pytest.mark.parametrize("case", SILENT, ids=named)
def test_it_stays_silent(case: Case) -> None:
    assert chance_of(case) <= case.bound


@pytest.mark.parametrize("work", SOUND, ids=lambda work: work.name)
def test_ordinary_sound_work_is_not_warned_of(work: Case) -> None:
    loud = {card: chance for card, chance in chances(work).items() if chance >= PLAIN}
    assert not loud


def test_no_case_is_satisfied_by_next_to_nothing() -> None:
    assert all(case.bound >= 0.1 for case in FIRING)
    assert all(case.bound <= 0.15 for case in SILENT)


def test_the_page_of_rules_is_made_from_these_cards_and_cases() -> None:
    renew = "run: python -m refettle.files.rule_page docs/reference/rules.md"
    assert PAGE.read_text(encoding="utf-8") == rule_page(), renew


@pytest.mark.parametrize(
    ("wood", "wait", "more", "said"),
    [
        ("oka", "24 h", "", "oka is no wood"),
        ("oak", "24", "", "24: "),
        ("oak", "24 h", "      air: {temperature: 20 C}", "a twin has a name and one change"),
    ],
    ids=["unknown wood", "hours without a unit", "twin with two changes"],
)
def test_a_case_that_is_not_understood_is_refused(
    tmp_path: Path, wood: str, wait: str, more: str, said: str
) -> None:
    path = tmp_path / "no-key-on-sealed-ground.yaml"
    path.write_text(SNIPPET.format(wood=wood, wait=wait, more=more), encoding="utf-8")
    with pytest.raises(NotACase, match=said):
        read_cases(KNOW, path)


def test_a_case_as_written_is_understood(tmp_path: Path) -> None:
    path = tmp_path / "no-key-on-sealed-ground.yaml"
    path.write_text(SNIPPET.format(wood="oak", wait="24 h", more=""), encoding="utf-8")
    firing, silent = read_cases(KNOW, path)
    assert firing.twin is not None
    assert [step.verb for step in firing.twin.steps] == ["scuff", "paint"]
    assert firing.twin.steps[1] == firing.steps[0]
    assert silent.twin is None
