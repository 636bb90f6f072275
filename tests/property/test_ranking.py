"""
Ranking of causes: chances add up, questions pay, answers move the right way.

Histories are simulated from the tables' own chances: that tests the arithmetic, not the truth of the tables.
"""

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from refettle.files.sign_tables import load_signs
from refettle.knowledge.signs import SignBook
from refettle.rules import RULES
from refettle.trouble.rank import (
    STRANGER,
    Question,
    Ranked,
    Suspect,
    Told,
    by_fault,
    entropy,
    in_time,
    questions,
    rank,
    told_apart,
)
from refettle.trouble.words import ONSETS

BOOK = load_signs()
FEW = settings(max_examples=60, deadline=None)


def suspect(rule: int, chance: float) -> Suspect:
    card = RULES[rule % len(RULES)]
    return Suspect(fault=card.fault, rule=card.id, step=1, chance=chance, onset=card.onset, why="because")


@st.composite
def suspects(draw: st.DrawFn) -> list[Suspect]:
    numbers = draw(st.lists(st.integers(0, len(RULES) - 1), min_size=1, max_size=8, unique=True))
    return [suspect(number, draw(st.floats(0.01, 0.95))) for number in numbers]


@st.composite
def told(draw: st.DrawFn) -> Told:
    signs = draw(
        st.dictionaries(
            st.sampled_from(sorted(BOOK.signs)), st.sampled_from((0.0, 0.5, 0.75, 1.0)), max_size=4
        )
    )
    return Told(signs=signs, when=draw(st.sampled_from(("", *ONSETS))))


@given(suspects(), told())
@FEW
def test_chances_add_up_to_one_and_something_else_is_always_there(them: list[Suspect], said: Told) -> None:
    ranked = rank(them, said, BOOK)
    assert sum(one.chance for one in ranked) == pytest.approx(1.0)
    assert [one.chance for one in ranked] == sorted((one.chance for one in ranked), reverse=True)
    assert STRANGER in [one.suspect for one in ranked]
    assert sum(chance for _, chance in by_fault(ranked)) == pytest.approx(1.0)


@given(suspects())
@FEW
def test_without_a_word_the_order_is_that_of_what_was_done(them: list[Suspect]) -> None:
    ranked = rank(them, Told(), BOOK)
    chances = [one.suspect.chance for one in ranked]
    assert chances == sorted(chances, reverse=True)


@given(suspects(), told())
@FEW
def test_no_question_is_expected_to_take_knowledge_away(them: list[Suspect], said: Told) -> None:
    ranked = rank(them, said, BOOK)
    for question in questions(ranked, said, BOOK):
        assert question.tells >= -1e-9
        assert question.tells <= entropy([one.chance for one in ranked]) + 1e-9


@given(suspects(), told())
@FEW
def test_what_is_known_is_not_asked_again(them: list[Suspect], said: Told) -> None:
    asked = {question.sign for question in questions(rank(them, said, BOOK), said, BOOK)}
    assert not asked & {sign for sign, surety in said.signs.items() if surety in {0.0, 1.0}}
    assert ("when" in asked) == (not said.when)


def test_all_times_of_a_cause_add_up_to_one() -> None:
    for card in RULES:
        assert sum(in_time(card.onset, when) for when in ONSETS) == pytest.approx(1.0)


def answered(truth: Ranked, question: Question, dice: Random) -> Told:
    """Return the answer that a cause gives to a question, by its own chances."""
    if question.sign == "when":
        weights = [in_time(truth.suspect.onset, when) for when in ONSETS]
        return Told(when=dice.choices(ONSETS, weights)[0])
    there = dice.random() < BOOK.chance(question.sign, truth.suspect.fault, truth.suspect.rule)
    return Told(signs={question.sign: float(there)})


def left_open(book: SignBook, them: list[Suspect], *, best: bool, dice: Random) -> float:
    """Return what is not known after one question of a simulated history [bit]."""
    before = rank(them, Told(), book)
    asked = sorted(questions(before, Told(), book), key=lambda q: -q.tells)
    question = asked[0] if best else dice.choice(asked)
    truth = dice.choices(before, [one.chance for one in before])[0]
    return entropy([one.chance for one in rank(them, answered(truth, question, dice), book)])


def test_the_best_question_leaves_less_open_than_one_at_random() -> None:
    dice = Random(7)  # noqa: S311 - a simulation that must repeat
    histories = [
        [suspect(dice.randrange(len(RULES)), dice.uniform(0.05, 0.6)) for _ in range(6)] for _ in range(150)
    ]
    best = sum(left_open(BOOK, them, best=True, dice=dice) for them in histories)
    chance = sum(left_open(BOOK, them, best=False, dice=dice) for them in histories)
    assert best < 0.85 * chance


def test_the_expected_information_is_what_simulated_answers_bring() -> None:
    dice = Random(11)  # noqa: S311 - a simulation that must repeat
    them = [suspect(number, 0.2) for number in (0, 7, 19, 33)]
    before = rank(them, Told(), BOOK)
    question = max(questions(before, Told(), BOOK), key=lambda q: q.tells)
    now = entropy([one.chance for one in before])
    left = 0.0
    for _ in range(4000):
        truth = dice.choices(before, [one.chance for one in before])[0]
        left += entropy([one.chance for one in rank(them, answered(truth, question, dice), BOOK)])
    assert now - left / 4000 == pytest.approx(question.tells, abs=0.03)


def test_two_causes_that_show_alike_cannot_be_told_apart_and_it_is_said() -> None:
    one, other = suspect(0, 0.4), suspect(0, 0.3)
    ranked = rank([one, other], Told(), BOOK)
    asked = questions(ranked, Told(), BOOK)
    assert told_apart(ranked[0], ranked[0], asked, BOOK) == ""


def test_a_sign_that_only_one_shows_tells_them_apart() -> None:
    bleed = next(n for n, card in enumerate(RULES) if card.fault == "bleed-through")
    craters = next(n for n, card in enumerate(RULES) if card.fault == "craters")
    ranked = rank([suspect(bleed, 0.4), suspect(craters, 0.4)], Told(), BOOK)
    sign = told_apart(ranked[0], ranked[1], questions(ranked, Told(), BOOK), BOOK)
    assert sign in {"colour-up", "craters"}
