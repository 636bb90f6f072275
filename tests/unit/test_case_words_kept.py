"""Widening the word tables leaves the cases they were written with as they were read before."""

import sys
from dataclasses import MISSING, fields, is_dataclass
from hashlib import sha256
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

from case_pieces import adapt_case, given_part
from case_twins import read_advice
from trade_cases import read_cases, truth_of

CASES = Path(__file__).parents[3] / "shared/cases/trade_cases.yaml"
READ_BEFORE = "d3a483ff57c5aeba1a1d27974185ba169689a64334ebeec4cd2f824751011317"
"""SHA-256 of all pieces, steps, airs and unread words of that file, as the frozen tables read them."""

ADVICE_BEFORE = "abb509538fa8aa0dc8ecbc745a499acfeaebf558a6aa32716d43eb96ac5edb24"
"""SHA-256 of the changes that the frozen tables read in the advice of that file."""


def written(value: object) -> str:
    """Return a value as text that no hash seed and no later field with a default changes."""
    if is_dataclass(value) and not isinstance(value, type):
        parts = [
            f"{field.name}={written(getattr(value, field.name))}"
            for field in fields(value)
            if field.default is MISSING or getattr(value, field.name) != field.default
        ]
        return f"{type(value).__name__}({', '.join(parts)})"
    if isinstance(value, frozenset):
        return "{" + ", ".join(sorted(map(written, value))) + "}"
    if isinstance(value, tuple):
        return "(" + ", ".join(map(written, value)) + ")"
    return repr(value)


@pytest.mark.skipif(not CASES.exists(), reason="the file of cases lies beside the tree only")
def test_the_widening_reads_every_earlier_case_as_before():
    read = "\n".join(f"{case['id']} {written(adapt_case(given_part(case)))}" for case in read_cases(CASES))
    assert sha256(read.encode()).hexdigest() == READ_BEFORE


@pytest.mark.skipif(not CASES.exists(), reason="the file of cases lies beside the tree only")
def test_the_widening_reads_every_earlier_advice_as_before():
    truths = [truth_of(case) for case in read_cases(CASES)]
    read = "\n".join(f"{truth.case} {written(read_advice(truth.advice))}" for truth in truths)
    assert sha256(read.encode()).hexdigest() == ADVICE_BEFORE


def test_the_text_of_a_value_does_not_hang_on_the_order_of_a_set():
    assert written((frozenset({"wet", "dry", "hot"}), 1.0)) == "({'dry', 'hot', 'wet'}, 1.0)"
