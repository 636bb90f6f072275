"""Numbers are said with unit and range, chances in words, steps without ids."""

import pytest

from fakes_plan import leaks
from refettle.cli import words
from refettle.cli.page import Page
from refettle.domain.plan import Range
from refettle.domain.step import COAT_VERBS, VERBS, Step
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.services.step_words import PHRASES, step_words


@pytest.fixture(scope="module")
def know() -> Knowledge:
    return load_knowledge()


def amount(low: float, high: float) -> Range:
    return Range(low=low, likely=0.5 * (low + high), high=high)


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0.0, "hardly"), (0.029, "hardly"), (0.03, "unlikely"), (0.099, "unlikely"),
        (0.1, "perhaps one in six"), (0.249, "perhaps one in six"), (0.25, "about one in three"),
        (0.449, "about one in three"), (0.45, "as likely as not"), (0.649, "as likely as not"),
        (0.65, "likely"), (0.85, "almost certain"), (1.0, "almost certain"),
    ],
)  # fmt: skip
def test_a_chance_is_said_in_words(chance: float, said: str):
    assert words.chance_words(chance) == said


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        (0, 0, "no time"), (3, 6, "3–6 min"), (21, 46, "20–45 min"),
        (84, 180, "1.5–3 h"), (540, 780, "9–13 h"),
        (0.1, 0.4, "under 1 min"),
    ],
)  # fmt: skip
def test_hands_on_time_has_its_range(low: float, high: float, said: str):
    assert words.minutes_words(amount(low, high)) == said


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        (0.4, 0.75, "25–45 min"),
        (2.2, 4.5, "2–4.5 h"),
        (9, 18, "9–18 h"),
        (36, 72, "1.5–3 days"),
        (252, 504, "11–21 days"),
    ],
)
def test_waiting_turns_into_days_after_a_day_and_a_half(low: float, high: float, said: str):
    assert words.hours_words(amount(low, high)) == said


def test_a_wait_is_said_as_one_says_it_with_its_range():
    assert words.wait_range_words(Range(low=9.0, likely=12.0, high=18.0)) == "overnight (9–18 h)"
    assert words.wait_range_words(Range(low=2.0, likely=2.0, high=2.0)) == "2 h"
    assert words.wait_range_words(Range(low=0.0, likely=0.0, high=0.0)) == ""


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        (0, 0, "nothing"), (0.1, 0.4, "under 1 EUR"), (0.3, 0.8, "up to 1 EUR"), (20, 28, "20–28 EUR"),
        (-2, 14, "−2 to 14 EUR"), (3.8, 4.2, "about 4 EUR"), (77, 133, "77–133 EUR"),
    ],
)  # fmt: skip
def test_money_has_its_range_and_word(low: float, high: float, said: str):
    assert words.money_words(amount(low, high), "EUR") == said


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [(0, 0, ""), (0.03, 0.06, "30–60 ml"), (0.24, 0.42, "0.2–0.4 L"), (1.2, 2.6, "1–2.5 L")],
)
def test_a_volume_has_its_range(low: float, high: float, said: str):
    assert words.litres_words(amount(low, high)) == said


def test_every_verb_has_a_phrase():
    assert set(PHRASES) == VERBS


def whats(know: Knowledge, verb: str) -> tuple[str, ...]:
    """Return every id that a verb may be said with."""
    if verb in COAT_VERBS:
        return know.ids("film")
    kinds = {
        "clean": ("cleaner",), "rinse": ("cleaner",), "neutralise": ("cleaner",), "strip": ("remover",),
        "scrape": ("remover", "tool"),
        "test": ("test",), "repair": ("repair", "damage"), "bleach": ("repair", "cleaner"),
        "revive": ("cleaner", "remover"),
    }  # fmt: skip
    return ("", *(id_ for kind in kinds.get(verb, ()) for id_ in know.ids(kind)))


@pytest.mark.parametrize("verb", sorted(VERBS))
def test_a_phrase_is_imperative_and_free_of_ids(verb: str, know: Knowledge):
    for what in whats(know, verb):
        for method in ("", "brush", "random-orbit") if verb in {"sand", "scuff", "paint"} else ("",):
            text = step_words(know, Step(verb=verb, what=what, method=method, grit=180, coats=2))
            assert text[0].isupper()
            assert not text.endswith(".")
            assert "_" not in text
            assert not leaks(know, text), text


def test_a_phrase_says_how(know: Knowledge):
    wet = Step(verb="scuff", grit=240, method="hand-block", how=frozenset({"wet", "clean dust"}))
    assert step_words(know, wet) == "Scuff P240 by hand, wet, and take up the dust"
    wax = Step(verb="wax", what="paste-wax", method="wipe", coats=2, film="thin")
    assert step_words(know, wax) == "Wipe on 2 thin coats of paste wax and buff"
    assert step_words(know, Step(verb="clean", what="soap-water")) == "Wash with mild soap and water"
    assert step_words(know, Step(verb="wait", what="safe to wrap")) == "Wait until safe to wrap"


def test_a_tin_that_is_not_known_is_called_by_its_class(know: Knowledge):
    own = Step(verb="topcoat", what="nitro-lacquer.old-tin-2021", method="spray")
    assert step_words(know, own) == "Spray a coat of nitrocellulose lacquer"


def test_a_number_stays_beside_its_unit():
    page = Page(width=20)
    page.write("waits some time, about 10 min and 12 h after step 3")
    assert page.text() == "waits some time,\nabout 10 min and\n12 h after step 3\n"
