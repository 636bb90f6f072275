"""
Read the cases of the fault rules.

A case is a small surface with the steps done on it, written in the words of a piece file. It starts as
every surface does: what the wood brings of its own (tannin, knots, oils) is there without being named.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Any, Final

from ruamel.yaml import YAML

from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.piece import (
    LOOKS,
    ORIENTATIONS,
    RELIEFS,
    SOUNDNESS,
    USES,
    Look,
    OldLayer,
    Surface,
    Zone,
)
from refettle.domain.step import COAT_VERBS, EVENT_MARKS, VERBS, WORK_MARKS, Step
from refettle.files.amounts import Unclear, film_um, grit, length_mm, share, temp_c, time_h
from refettle.knowledge import Knowledge
from refettle.rules.case import Case

_END: Final = ".yaml"
SIDES: Final = {"fires": "at least", "silent": "at most"}
METHODS: Final = ("", "brush", "wipe", "pad", "roller", "spray", "aerosol")
KIND_OF: Final = {
    "clean": "cleaner", "rinse": "cleaner", "neutralise": "cleaner", "strip": "remover", "repair": "repair",
}  # fmt: skip
BLEACHES: Final = ("oxalic-acid", "chlorine", "peroxide-alkali")
SURFACE_KEYS: Final = frozenset(
    {
        "wood", "build", "veneer", "films", "soundness", "worn", "on top", "in wood", "damage", "lead",
        "look", "depth", "use", "relief", "orientation", "zone", "air", "steps",
    }
)  # fmt: skip
STEP_KEYS: Final = frozenset({"by", "grit", "coats", "wait between", "wait after", "film", "how", "air"})
CHANGE: Final = re.compile(r"(?:(before|instead of|in|without) step (\d+)|air)")


class NotACase(Exception):  # noqa: N818 - it says what the text is not
    """A case file says something that is not understood."""


def case_files() -> dict[str, Traversable]:
    """Return the case files of the package by the card they are named after."""
    places = (place for place in files("refettle.rules").joinpath("cases").iterdir())
    return {place.name.removesuffix(_END): place for place in places if place.name.endswith(_END)}


def read_cases(know: Knowledge, path: Traversable) -> tuple[Case, ...]:
    """
    Return all cases of a file, its twins within the firing ones.

    Parameters
    ----------
    know
        Names that a case may use.
    path
        The file, named after its card.

    Returns
    -------
    tuple of Case
        Firing ones first, in the order of the file.

    Raises
    ------
    NotACase
        If something in it is not understood.
    """
    tree = YAML(typ="safe", pure=True).load(path.read_text(encoding="utf-8"))
    card = path.name.removesuffix(_END)
    if set(tree) != {"card", *SIDES} or tree["card"] != card:
        message = f"{path.name}: card, fires and silent are due, the card named as the file"
        raise NotACase(message)
    return tuple(_case(know, card, side, entry) for side in SIDES for entry in tree[side])


def cases_of(know: Knowledge, cards: Iterable[str]) -> dict[str, tuple[Case, ...]]:
    """Return the cases of some cards, by the id of the card."""
    places = case_files()
    return {card: read_cases(know, places[card]) for card in dict.fromkeys(cards) if card in places}


def read_sound(know: Knowledge, path: Traversable) -> tuple[Case, ...]:
    """Return sequences of ordinary sound work as silent cases of no card in particular."""
    entries = YAML(typ="safe", pure=True).load(path.read_text(encoding="utf-8"))
    return tuple(_case(know, "any", "silent", {**entry, "at most": 0}) for entry in entries)


def _case(know: Knowledge, card: str, side: str, entry: Mapping[str, Any]) -> Case:
    """Return one case."""
    fires = side == "fires"
    strange = set(entry) - SURFACE_KEYS - {"name", SIDES[side]} - ({"twin"} if fires else set())
    if strange:
        message = f"{card}: {entry.get('name')}: {sorted(strange)} not known"
        raise NotACase(message)
    case = Case(
        card=card,
        name=entry["name"],
        fires=fires,
        bound=float(entry[SIDES[side]]),
        surface=_surface(know, entry),
        steps=tuple(_step(know, step) for step in entry["steps"]),
        air=_air(entry["air"]) if "air" in entry else STANDARD_AIR,
    )
    return replace(case, twin=_twin(know, case, entry["twin"])) if fires else case


def _surface(know: Knowledge, entry: Mapping[str, Any]) -> Surface:
    """Return the surface of a case."""
    look = _one_of(entry.get("look", "natural"), LOOKS)
    return Surface(
        name="face",
        part="face",
        area_m2=1.0,
        wood=_known(know, "wood", entry["wood"]),
        build=_known(know, "build", entry.get("build", "solid")),
        veneer_um=round(1000 * _amount(length_mm, entry["veneer"])) if "veneer" in entry else 0,
        layers=tuple(_film(know, film) for film in entry.get("films", ())),
        soundness=_one_of(entry.get("soundness", "sound"), SOUNDNESS),
        worn_pct=_percent(entry.get("worn", "0 %")),
        contamination=tuple(
            (_known(know, "contaminant", name), _amount(share, amount))
            for name, amount in entry.get("on top", {}).items()
        ),
        old_stain=tuple(
            (name if name == "paint-in-pores" else _known(know, "latent", name), _percent(amount))
            for name, amount in entry.get("in wood", {}).items()
        ),
        damage=tuple(_known(know, "damage", name) for name in entry.get("damage", ())),
        lead_chance=_amount(share, entry.get("lead", "0 %")),
        look=Look(kind=look, depth=_percent(entry["depth"]) if "depth" in entry else None),
        use=_one_of(entry.get("use", "everyday"), USES),
        relief=_one_of(entry.get("relief", "flat"), RELIEFS),
        orientation=_one_of(entry.get("orientation", "upright"), ORIENTATIONS),
        zones=(Zone(name=_one_of(entry.get("zone", "flat"), ("flat", "edge", "recess")), share=1.0),),
    )


def _film(know: Knowledge, entry: Mapping[str, Any]) -> OldLayer:
    """Return one old film, known for certain."""
    _only(entry, {"what", "coats", "thick"})
    return OldLayer(
        guesses=((_known(know, "film", entry["what"]), 1.0),),
        coats=int(entry.get("coats", 1)),
        um=round(_amount(film_um, entry["thick"])) if "thick" in entry else None,
    )


def _step(know: Knowledge, entry: Mapping[str, Any]) -> Step:
    """Return one step: the first key is its verb."""
    words = dict(entry)
    said = next(iter(words))
    value = words.pop(said)
    verb = str(said).replace(" ", "_")
    _one_of(verb, sorted(VERBS))
    if verb in {"sand", "scuff", "rub_out"}:
        return _changed(know, Step(verb=verb, grit=int(_amount(grit, value))), words)
    if verb in {"wait", "air"}:
        return _changed(know, Step(verb=verb, wait_after_h=_amount(time_h, value)), words)
    if verb in {"use", "expose"}:
        return _changed(know, Step(verb=verb, how=_marks(value, EVENT_MARKS)), words)
    what = "" if value is None else str(value)
    if verb in COAT_VERBS:
        _known(know, "film", what)
    elif verb == "bleach":
        _one_of(what, BLEACHES)
    elif verb in KIND_OF:
        _known(know, KIND_OF[verb], what)
    return _changed(know, Step(verb=verb, what=what), words)


def _changed(know: Knowledge, step: Step, words: Mapping[str, Any]) -> Step:
    """Return a step with what else is said of it."""
    _only(words, STEP_KEYS)
    changes: dict[str, Any] = {}
    for key, value in words.items():
        match key:
            case "by":
                changes["method"] = value if value in METHODS else _known(know, "tool", value)
            case "grit":
                changes["grit"] = int(_amount(grit, value))
            case "coats":
                changes["coats"] = int(value)
            case "wait between":
                changes["wait_between_h"] = _amount(time_h, value)
            case "wait after":
                changes["wait_after_h"] = _amount(time_h, value)
            case "film":
                changes["film"] = _one_of(value, ("thin", "normal", "heavy"))
            case "how":
                changes["how"] = _marks(value, WORK_MARKS)
            case _:
                changes["air"] = _air(value)
    return replace(step, **changes)


def _twin(know: Knowledge, case: Case, entry: Mapping[str, Any]) -> Case:
    """Return a case with the one change that avoids its fault."""
    keys = [key for key in entry if key != "name"]
    found = CHANGE.fullmatch(keys[0]) if len(keys) == 1 else None
    if found is None or "name" not in entry:
        message = f"{case.card}: {case.name}: a twin has a name and one change"
        raise NotACase(message)
    twin = replace(case, name=f"{case.name}; {entry['name']}", change=str(entry["name"]))
    value = entry[keys[0]]
    if found[1] is None:
        return replace(twin, air=_air(value))
    at = int(found[2]) - 1
    old = case.steps[at]
    new: tuple[Step, ...]
    match found[1]:
        case "before":
            new = (_step(know, value), old)
        case "instead of":
            new = (_step(know, value),)
        case "in":
            new = (_changed(know, old, value),)
        case _:
            new = ()
    return replace(twin, steps=(*case.steps[:at], *new, *case.steps[at + 1 :]))


def _air(entry: Mapping[str, Any]) -> Air:
    """Return air; what is not said is as in a heated room."""
    _only(entry, {"temperature", "humidity", "sun"})
    return Air(
        temp_c=_amount(temp_c, entry.get("temperature", "20 C")),
        rh=_amount(share, entry.get("humidity", "50 %")),
        sun=entry.get("sun", "no") == "yes",
    )


def _marks(value: str | list[str], words: Mapping[str, str]) -> frozenset[str]:
    """Return the marks of a step from the words that a piece file takes."""
    said = [value] if isinstance(value, str) else value
    return frozenset(words[_one_of(word, tuple(words))] for word in said)


def _amount(reader: Callable[[str], float | Unclear], value: object) -> float:
    """Return an amount with its unit, as a piece file reads it."""
    read = reader(str(value))
    if isinstance(read, Unclear):
        message = f"{value}: {read}"
        raise NotACase(message)
    return float(read)


def _percent(value: object) -> int:
    """Return a share in whole percent [%]."""
    return round(100 * _amount(share, value))


def _known(know: Knowledge, kind: str, id_: str) -> str:
    """Return an id that there is."""
    if not know.has(kind, id_):
        message = f"{id_} is no {kind}"
        raise NotACase(message)
    return id_


def _one_of(value: str, words: tuple[str, ...] | list[str]) -> str:
    """Return a word that is allowed."""
    if value not in words:
        message = f"{value} is none of {words}"
        raise NotACase(message)
    return value


def _only(entry: Mapping[str, Any], allowed: set[str] | frozenset[str]) -> None:
    """Refuse keys that are not known."""
    if set(entry) - allowed:
        message = f"{sorted(set(entry) - allowed)} is none of {sorted(allowed)}"
        raise NotACase(message)
