"""Every form reads from a file of five lines: its name, its size, its wood."""

import pytest
from tests.fakes import small_knowledge

from geometry_forms import SHAPED, USUAL_SIZES
from refettle.files.piece_file import read_piece
from refettle.geometry import FORMS, Built, build_form


def test_every_form_has_a_size_to_be_tried_in():
    assert set(USUAL_SIZES) == set(SHAPED)


@pytest.mark.parametrize("form", SHAPED)
def test_name_size_and_wood_are_a_file_that_reads(form: str):
    size = USUAL_SIZES[form]
    lines = [f"piece: Trial {FORMS[form].name}", f"form: {FORMS[form].name}"]
    lines += [f"{name}: {size[name]} mm" for name in ("width", "depth", "height")]
    piece, findings = read_piece("\n".join([*lines, "wood: oak", ""]), "t.yaml", small_knowledge())
    assert [finding.text() for finding in findings if finding.level == "error"] == []
    built = build_form(form, size)
    assert piece is not None
    assert isinstance(built, Built)
    assert piece.form == form
    assert [surface.name for surface in piece.surfaces] == [face.name for face in built.faces]
