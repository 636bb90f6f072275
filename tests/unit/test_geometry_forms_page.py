"""The reference page of forms says what the registry says."""

from pathlib import Path

from refettle.geometry import FORMS
from refettle.geometry.forms_page import forms_page

PAGE = Path(__file__).parents[2] / "docs" / "reference" / "forms.md"


def test_the_reference_page_is_made_from_the_registry():
    assert PAGE.read_text(encoding="utf-8") == forms_page(FORMS.values())
