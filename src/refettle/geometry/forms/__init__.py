"""Forms: one module each; `FORMS` is the registry."""

from collections.abc import Mapping
from difflib import get_close_matches

from refettle.geometry.form import Built, Form, build_to_size
from refettle.geometry.forms import (
    bed,
    bedside,
    bench,
    blanket_box,
    board,
    bookcase,
    chair,
    chest,
    chest_of_drawers,
    cot,
    cupboard,
    desk,
    door,
    dressing_chest,
    frame,
    free_list,
    panel,
    settle,
    sideboard,
    table,
    wardrobe,
)
from refettle.geometry.forms.free_list import build_list
from refettle.geometry.parameters import Problem, Value

FORMS: dict[str, Form] = {
    form.id: form
    for form in (
        board.FORM,
        chest_of_drawers.FORM,
        table.FORM,
        cupboard.FORM,
        chest.FORM,
        settle.FORM,
        wardrobe.FORM,
        bookcase.FORM,
        sideboard.FORM,
        desk.FORM,
        bedside.FORM,
        bench.FORM,
        chair.FORM,
        bed.FORM,
        bed.END_FORM,
        frame.FORM,
        door.FORM,
        panel.FORM,
        blanket_box.FORM,
        dressing_chest.FORM,
        cot.FORM,
        free_list.FORM,
    )
}


def find_form(word: str) -> Form | None:
    """
    Return the form that a word names.

    Parameters
    ----------
    word
        Id, name or alias, in any case; ``-`` and ``_`` count as blanks.

    Returns
    -------
    Form or None
        The form; None if no form is called that.
    """
    return _WORDS.get(_told(word))


def build_form(form_id: str, params: Mapping[str, Value]) -> Built | tuple[Problem, ...]:
    """
    Return a form built to size, or everything that is wrong with what was asked for.

    Parameters
    ----------
    form_id
        Id, name or alias of the form.
    params
        Values by parameter: lengths in mm, counts, words. `list` takes what
        `refettle.geometry.forms.free_list.build_list` says.

    Returns
    -------
    Built or tuple of Problem
        Parts, surfaces and values assumed; or all problems at once.
    """
    form = find_form(form_id)
    if form is None:
        near = get_close_matches(_told(form_id), _WORDS, n=1)
        do = f'write "{_WORDS[near[0]].id}"' if near else f"write one of {', '.join(FORMS)}"
        return (Problem(param="form", what=f'"{form_id}" is not a known form', do=do),)
    if form is free_list.FORM:
        return build_list(params)
    return build_to_size(form, params)


def _told(word: str) -> str:
    return " ".join(word.lower().replace("_", " ").replace("-", " ").split())


_WORDS: dict[str, Form] = {
    _told(word): form for form in FORMS.values() for word in (form.id, form.name, *form.aliases)
}
