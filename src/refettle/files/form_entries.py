"""The entries that shape the form: its name, its sizes and what else the form asks for."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Final

from refettle.domain.piece import Assumed
from refettle.files.amounts import Unclear, length_mm, quoted, whole
from refettle.files.fields import Desk, known_list, nearest
from refettle.files.places import Place
from refettle.files.yaml_tree import Entry, Tree, plain

if TYPE_CHECKING:
    from refettle.geometry.form import Form
    from refettle.geometry.parameters import Value

FREE_LIST: Final = "list"
SIZE_KEYS: Final = ("width", "depth", "height")
_LEAVES: Final = ("door", "lid")
_SEEN_THROUGH: Final = ("glazed", "caned", "lattice")
SizeMm = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """
    Surfaces of a form.

    Attributes
    ----------
    places
        Surfaces; none where the form could not be built.
    size_mm
        Width, depth, height [mm] as given; None where one of them was not.
    assumed
        Sizes that were not given.
    """

    places: tuple[Place, ...] = ()
    size_mm: SizeMm | None = None
    assumed: tuple[Assumed, ...] = ()


@cache
def _forms() -> Mapping[str, "Form"]:
    """Return the forms by id, in order; loaded here because geometry is heavy."""
    from refettle.geometry.forms import FORMS  # noqa: PLC0415 - keeps start-up light

    return {form.id: form for form in FORMS.values() if form.id != FREE_LIST}


def form_names() -> tuple[str, ...]:
    """
    Return the words that `form` takes.

    Returns
    -------
    tuple[str, ...]
        Names of the forms, and ``list``.
    """
    return (*(form.name for form in _forms().values()), FREE_LIST)


@cache
def parameter_keys() -> tuple[str, ...]:
    """
    Return every entry that some form asks for besides width, depth and height.

    Returns
    -------
    tuple[str, ...]
        Keys in the order of the forms.
    """
    keys = (plain(parameter.name) for form in _forms().values() for parameter in form.parameters)
    return tuple(dict.fromkeys(key for key in keys if key not in SIZE_KEYS))


def read_form(desk: Desk, tree: Tree) -> str | None:
    """
    Return the form's id.

    Parameters
    ----------
    desk
        Desk of the file.
    tree
        What stands behind ``form``.

    Returns
    -------
    str | None
        The id, or None where it is not known.
    """
    said = desk.text(tree, "form")
    if said is None:
        return None
    from refettle.geometry.forms import find_form  # noqa: PLC0415 - geometry is heavy

    form = find_form(said)
    if form is not None:
        return form.id
    words = [plain(word) for form in _forms().values() for word in (form.name, *form.aliases)]
    near = nearest(plain(said), words)
    do = f'write "{near}"' if near else f"write {known_list(form_names())}"
    what = f"{quoted(said)} is not a known form"
    desk.say("unknown-form", tree.line, "form", what, f'{do}; or "list" and the surfaces with their areas')
    return None


def build_places(desk: Desk, form_id: str, form_line: int, entries: Sequence[Entry]) -> Placed:
    """
    Return the surfaces of a form in the sizes given.

    Parameters
    ----------
    desk
        Desk of the file.
    form_id
        The form.
    form_line
        Line of the form [1], for what is missing.
    entries
        Entries for its sizes and choices.

    Returns
    -------
    Placed
        Surfaces, size and what was assumed.
    """
    from refettle.geometry.form import Built  # noqa: PLC0415 - geometry is heavy
    from refettle.geometry.forms import build_form  # noqa: PLC0415 - as above

    form = _forms()[form_id]
    lines: dict[str, int] = {}
    values: dict[str, Value] = {}
    unread = False
    for entry in entries:
        value = _value(desk, form, entry)
        unread = unread or value is None
        if value is not None:
            name, read = value
            values[name], lines[name] = read, entry.line
    built = build_form(form_id, values)
    if not isinstance(built, Built):
        for problem in built:
            # an entry that stands there but could not be read has had its finding
            if problem.param in lines or not any(_same(problem.param, entry.key) for entry in entries):
                line = lines.get(problem.param, form_line)
                what, do = _worded(form, problem.what), _worded(form, problem.do)
                desk.say("form", line, plain(problem.param), what, do)
        return Placed()
    shut = any(face.part.startswith(_LEAVES) for face in built.faces)
    shut = shut and values.get("door_kind") not in _SEEN_THROUGH
    places = tuple(
        Place(
            name=face.name,
            part=face.part,
            area_m2=face.area_m2,
            relief=face.relief,
            orientation=face.orientation,
            zones=face.zones,
            running=face.running,
            hidden=face.hidden or (face.orientation == "inside" and face.part.startswith("drawer")),
            closed=face.orientation == "inside" and shut and not face.part.startswith(_LEAVES),
        )
        for face in built.faces
    )
    assumed = tuple(
        Assumed(path=_path(one.path), value=one.value, why=one.why, because=one.because)
        for one in built.assumed
    )
    size = tuple(float(values[key]) for key in SIZE_KEYS if key in values)
    return Placed(
        places=() if unread else places,
        size_mm=(size[0], size[1], size[2]) if len(size) == len(SIZE_KEYS) else None,
        assumed=assumed,
    )


def _length_or_nought(text: str) -> float | Unclear:
    """Return a length [mm] that may be nought: ``0``, ``0 mm``."""
    value = length_mm(text)
    return 0.0 if isinstance(value, Unclear) and re.fullmatch(r"0(?:[.,]0+)?(?: ?[a-z]+)?", text) else value


def _path(path: str) -> str:
    """Return geometry's path of an assumption as the entry of the file."""
    return plain(path.removeprefix("form/")) if path.startswith("form/") else path


def _same(param: str, key: str) -> bool:
    return plain(param).replace("-", " ") == plain(key).replace("-", " ")


def _worded(form: "Form", text: str) -> str:
    """Return a sentence of geometry with entries as they stand in the file."""
    for parameter in form.parameters:
        text = text.replace(parameter.name, plain(parameter.name))
    return text


def _value(desk: Desk, form: "Form", entry: Entry) -> "tuple[str, Value] | None":
    """Return parameter and value; None where the form has no such entry or it cannot be read."""
    key = plain(entry.key)
    parameter = next((one for one in form.parameters if _same(one.name, key)), None)
    if parameter is None:
        known = known_list(plain(one.name) for one in form.parameters)
        what = f"a {form.name} has no {quoted(entry.key)}"
        desk.say("form", entry.line, key, what, f"take it out; known here: {known}")
        return None
    if parameter.kind == "length":
        read = _length_or_nought if parameter.low == 0 else length_mm
        length = desk.amount(entry.value, key, read)
        return None if length is None else (parameter.name, length)
    if parameter.kind == "count":
        number = desk.amount(entry.value, key, whole)
        return None if number is None else (parameter.name, float(number))
    word = desk.text(entry.value, key)
    if word is None:
        return None
    known_words = {plain(choice).replace("-", " "): choice for choice in parameter.choices}
    return parameter.name, known_words.get(plain(word).replace("-", " "), word)


def sizes_of_list(desk: Desk, entries: Sequence[Entry]) -> SizeMm | None:
    """
    Return the size of a piece whose surfaces are listed; say which other entries have no use there.

    Parameters
    ----------
    desk
        Desk of the file.
    entries
        Entries for sizes and choices of a form.

    Returns
    -------
    SizeMm | None
        Width, depth, height [mm], where all three are given.
    """
    sizes: dict[str, float] = {}
    for entry in entries:
        key = plain(entry.key)
        if key not in SIZE_KEYS:
            desk.say(
                "form", entry.line, key, f'{quoted(entry.key)} has no use with "form: list"', "take it out"
            )
            continue
        length = desk.amount(entry.value, key, length_mm)
        if length is not None:
            sizes[key] = length
    if len(sizes) < len(SIZE_KEYS):
        return None
    return sizes["width"], sizes["depth"], sizes["height"]
