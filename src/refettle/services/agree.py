"""Parts of one look agree: on keeping the old film or not, and on the coat that makes the look."""

from dataclasses import replace

from refettle.domain.step import Step
from refettle.planning.search import Found
from refettle.services.cases import Case


def body_class(found: Found) -> str:
    """Return the class that makes the look of a route; empty where none does."""
    bodies = [s.what for s in found.steps if s.verb in {"paint", "topcoat"}]
    paints = [s.what for s in found.steps if s.verb == "paint"]
    return paints[-1] if paints else (bodies[-1] if bodies else "")


def agree_on_body(tries: list[tuple[Case, Found]]) -> list[tuple[Case, Found]]:
    """
    Return the tries with one class of body coat per look, so that parts that should match do.

    Notes
    -----
    For each look, every class that some group chose is tried on all groups of that look; the one with
    the least total cost is taken by all that can. One look, one tin, one set of brushes.
    """
    result = list(tries)
    looks: dict[tuple[str, str, int | None, str], list[int]] = {}
    for i, (case, found) in enumerate(tries):
        look = case.menu.look
        if found.steps and look.base in {"natural", "stained", "oiled", "opaque"} and body_class(found):
            looks.setdefault((look.kind, look.colour, look.depth, look.sheen), []).append(i)
    for members in looks.values():
        classes = list(dict.fromkeys(body_class(tries[i][1]) for i in members))
        if len(classes) < 2:
            continue
        best: tuple[float, list[tuple[int, Case, Found]]] | None = None
        for cls in classes:
            made = _all_with(tries, members, cls)
            if made is None:
                continue
            total = sum(found.cost for _, _, found in made)
            if best is None or total < best[0]:
                best = (total, made)
        if best is not None:
            for i, case, found in best[1]:
                result[i] = (case, found)
    return result


def agree_on_ground(tries: list[tuple[Case, Found]]) -> list[tuple[Case, Found]]:
    """
    Return the tries with the old film kept on all parts of one clear look, or off all of them.

    Notes
    -----
    Under a clear finish a stripped part beside an unstripped one shows; the cheaper of the two ways
    that all can go is taken. Under paint each part may be treated as it needs.
    """
    result = list(tries)
    looks: dict[tuple[str, str, int | None, str], list[int]] = {}
    for i, (case, found) in enumerate(tries):
        look = case.menu.look
        if (
            found.steps
            and look.base in {"natural", "stained", "waxed", "oiled"}
            and not case.bench.begin.worlds[0].states[0].bare
        ):
            looks.setdefault((look.kind, look.colour, look.depth, look.sheen), []).append(i)
    for members in looks.values():
        bared = {i for i in members if any(_bares(s) for s in tries[i][1].steps)}
        if not bared or len(bared) == len(members):
            continue
        ways = [
            [(i, *(tries[i] if (i in bared) == off else _one_way(tries[i], off=off))) for i in members]
            for off in (True, False)
        ]
        whole = [way for way in ways if all(found.steps for _, _, found in way)]
        if whole:
            for i, case, found in min(whole, key=lambda way: sum(f.cost for _, _, f in way)):
                result[i] = (case, found)
    return result


def _bares(step: Step) -> bool:
    """Return whether a step takes the old film off."""
    return step.verb == "strip" or "to bare" in step.how


def _one_way(tried: tuple[Case, Found], *, off: bool) -> tuple[Case, Found]:
    """Return a group searched again with the old film off, or kept."""
    case, _ = tried
    menu = replace(case.menu, bare_first=off, keep_film=not off)
    case = replace(case, menu=menu)
    return case, case.search()


def _all_with(
    tries: list[tuple[Case, Found]], members: list[int], cls: str
) -> list[tuple[int, Case, Found]] | None:
    """Return the tries of some groups with one body class, or None where one cannot take it."""
    made = []
    for i in members:
        case, found = tries[i]
        if body_class(found) != cls:
            menu = replace(case.menu, wanted=frozenset({cls}), wanted_stage="body")
            case = replace(case, menu=menu)
            found = case.search()
            if not found.steps:
                return None
        made.append((i, case, found))
    return made
