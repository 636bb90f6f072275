"""What people say of trouble is understood by our own words, and shown so that it can be put right."""

import pytest

from refettle.files.sign_tables import load_signs
from refettle.knowledge.signs import SignBook
from refettle.trouble.words import ONSETS, hear, stem


@pytest.fixture(scope="module")
def book() -> SignBook:
    return load_signs()


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("Pink patches are coming up through the white.", "colour-up"),
        ("It has gone milky overnight", "haze"),
        ("the varnish pulls away from spots and leaves craters", "craters"),
        ("paint comes off in sheets when I pull tape off", "flakes"),
        ("it is still tacky", "soft"),
        ("the weave of the blanket is in the finish", "print"),
        ("a white ring where the mug stood", "ring"),
        ("blue-black marks around the nails", "black"),
        ("The drawers smell musty again", "smell"),
        ("dark right over the knots", "on-knots"),
    ],
)
def test_plain_words_are_heard(book: SignBook, text: str, sign: str) -> None:
    heard = hear(text, book)
    assert sign in dict(heard.signs), heard
    assert dict(heard.words)[sign]


def test_a_not_turns_a_sign_round(book: SignBook) -> None:
    heard = hear("it is not sticky but it is milky", book)
    assert "soft" in heard.denied
    assert "soft" not in dict(heard.signs)
    assert "haze" in dict(heard.signs)


def test_what_is_built_of_a_not_is_heard_as_it_stands(book: SignBook) -> None:
    assert "soft" in dict(hear("it will not dry", book).signs)
    assert "flakes" in dict(hear("the paint does not stick", book).signs)


@pytest.mark.parametrize(
    ("text", "when"),
    [
        ("it crawled as I brush", "immediate"),
        ("next morning it was rough", "hours"),
        ("three days later it was pink", "days"),
        ("after some weeks it peeled", "weeks"),
        ("cracked after a few months", "months"),
        ("years later it turned yellow", "years"),
        ("it is pink", ""),
    ],
)
def test_the_time_is_heard(book: SignBook, text: str, when: str) -> None:
    assert hear(text, book).when == when
    assert when in ("", *ONSETS)


def test_a_phrase_says_more_than_a_word_and_a_word_of_many_signs_less(book: SignBook) -> None:
    sure = dict(hear("pink patches come up through", book).signs)["colour-up"]
    one = dict(hear("pink", book).signs)["colour-up"]
    assert sure == 1.0
    assert one < sure


def test_nothing_is_heard_in_nothing(book: SignBook) -> None:
    for text in ("", "...", "hello garage", "1234"):
        heard = hear(text, book)
        assert heard.signs == () == heard.words
        assert heard.when == ""


@pytest.mark.parametrize(
    ("words", "root"),
    [(("peels", "peeled", "peeling"), "peel"), (("sagged", "sagging", "sags"), "sag"), (("glass",), "glass")],
)
def test_endings_do_not_matter(words: tuple[str, ...], root: str) -> None:
    assert {stem(word) for word in words} == {root}


def test_every_sign_is_heard_by_its_own_name_and_by_each_of_its_phrases(book: SignBook) -> None:
    deaf = [
        (sign.id, phrase)
        for sign in book.signs.values()
        for phrase in (sign.name, *sign.words)
        if sign.id not in dict(hear(phrase, book).signs)
    ]
    assert deaf == []


def test_every_row_of_chances_speaks_of_a_sign_a_fault_and_a_rule_there_are(book: SignBook) -> None:
    from refettle.files.tables import load_knowledge  # noqa: PLC0415
    from refettle.rules import RULES  # noqa: PLC0415

    know, rules = load_knowledge(), {card.id: card.fault for card in RULES}
    for row in book.rows.values():
        assert row.sign in book.signs
        assert know.has("fault", row.fault), row.id
        assert not row.rule or rules[row.rule] == row.fault, row.id
        assert 0 < row.chance < 1, row.id
        assert row.source in know.sources or row.source in {"judgement", "common-practice"}, row.id
    for sign in book.signs.values():
        assert 0 < sign.base < 1
        assert sign.question.endswith("?")
