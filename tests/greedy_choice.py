"""The choice as it was made before: each group its best, then look by look the cheapest way to be alike."""

from collections.abc import Callable
from dataclasses import replace

from refettle.planning.search import Found
from refettle.services.agree import asks_ground, bares, body_class, look_key
from refettle.services.cases import Case

Tried = list[tuple[Case, Found]]


def greedy(tries: Tried) -> Tried:
    """Return the tries with ground, then body agreed for each look by itself."""
    return _agreed(_agreed(tries, _asked_ground, _ground_ways), _asked_body, _body_ways)


def _asked_ground(case: Case, found: Found) -> object:
    asked = bool(found.steps) and asks_ground(case.bench, case.menu.look)
    return bares(found.steps) if asked else None


def _asked_body(case: Case, found: Found) -> object:
    coated = case.menu.look.kind in {"natural", "stained", "oiled", "opaque"}
    return (body_class(found.steps) or None) if coated else None


def _ground_ways(case: Case, off: object) -> Case:
    return replace(case, menu=replace(case.menu, bare_first=bool(off), keep_film=not off))


def _body_ways(case: Case, cls: object) -> Case:
    return replace(case, menu=replace(case.menu, wanted=frozenset({str(cls)}), wanted_stage="body"))


def _agreed(
    tries: Tried, asked: Callable[[Case, Found], object], way: Callable[[Case, object], Case]
) -> Tried:
    """Return the tries with one answer per look: the one with the least total that all can take."""
    result = list(tries)
    looks: dict[str, list[int]] = {}
    for i, (case, found) in enumerate(tries):
        if asked(case, found) is not None:
            looks.setdefault(look_key(case.menu.look), []).append(i)
    for members in looks.values():
        said = list(dict.fromkeys(asked(*tries[i]) for i in members))
        if len(said) < 2:
            continue
        ways: list[Tried] = []
        for answer in said:
            made: Tried = []
            for i in members:
                case, found = tries[i]
                if asked(case, found) != answer:
                    case = way(case, answer)
                    found = case.search()
                made.append((case, found))
            if all(found.steps for _, found in made):
                ways.append(made)
        if ways:
            best = min(ways, key=lambda made: sum(found.cost for _, found in made))
            for i, tried in zip(members, best, strict=True):
                result[i] = tried
    return result
