"""Impossible looks: which demands clash, and which looks can be had."""

from dataclasses import replace

from refettle.domain.air import Air
from refettle.domain.piece import Look
from refettle.domain.plan import Impossible
from refettle.planning.goal import OPEN_PORES
from refettle.planning.offers import Menu
from refettle.planning.pool import route_words
from refettle.planning.search import Bench, Search
from refettle.planning.start import relooked

_NEAR = {
    "natural": ("natural", "stained", "oiled", "opaque", "keep"),
    "oiled": ("natural", "waxed", "stained", "opaque", "keep"),
    "waxed": ("natural", "keep", "oiled", "opaque"),
    "bare": ("oiled", "natural", "opaque", "keep"),
    "stained": ("natural", "opaque", "keep"),
    "opaque": ("keep", "stained", "natural"),
    "keep": ("natural", "opaque"),
    "limed": ("whitewashed", "natural", "stained", "opaque"),
    "whitewashed": ("limed", "opaque", "natural"),
    "bleached": ("natural", "whitewashed", "opaque"),
    "dyed": ("stained", "natural", "opaque"),
    "distressed": ("opaque", "keep", "natural"),
    "antiqued": ("opaque", "distressed", "keep", "natural"),
    "odour-free": ("opaque", "natural"),
}
_WARM = Air(temp_c=20.0, rh=0.5)


def explain_clash(bench: Bench, menu: Menu) -> Impossible:
    """
    Return why a look cannot be had and what can be had instead.

    Parameters
    ----------
    bench
        The surface.
    menu
        The menu that led nowhere.

    Returns
    -------
    Impossible
        The smallest set of demands each of which, dropped, opens a way; and looks nearest first.
    """
    clash = [look_words(menu.look)]
    facts = bench.know.wood(bench.surface.wood)
    because: tuple[str, ...] = ()
    if menu.look.kind == "limed" and facts.open_pores < OPEN_PORES and facts.shows_wood:
        clash.append(f"{facts.name} has no open pores to hold the white")
        because = bench.know.because(f"wood:{facts.id}", "open_pores")
    elif not facts.shows_wood and menu.look.base not in {"opaque", "keep", "odour-free", "bare"}:
        clash.append(f"{facts.name} has no wood face to show")
        because = bench.know.because(f"wood:{facts.id}", "shows_wood")
    else:
        clash.extend(_droppable(bench, menu))
    nearest = []
    for kind in _NEAR.get(menu.look.kind, ()):
        look = Look(kind=kind, sheen=menu.look.sheen)
        if kind == menu.look.kind and menu.look.depth is None:
            continue
        if kind == "keep" and bench.begin.worlds[0].states[0].bare:
            continue
        again = relooked_bench(bench, look)
        other = replace(menu, look=look, surface=again.surface)
        found = Search(again, other, _weights(bench)).run(most=400)
        if found.steps:
            nearest.append((kind, f"{look_words(look)}: {route_words(bench, found.steps)}"))
        if len(nearest) == 3:
            break
    return Impossible(clash=tuple(clash), nearest=tuple(nearest), because=because)


def relooked_bench(bench: Bench, look: Look) -> Bench:
    """Return a fresh bench of the same surface with another look wanted."""
    begin = relooked(bench.know, bench.begin, look)
    return Bench(bench.know, bench.workshop, begin.surface, begin, bench.setup_share, memory=bench.memory)


def _weights(bench: Bench) -> tuple[float, ...]:
    """Return the belief per world."""
    return tuple(w.weight for w in bench.begin.worlds)


def _droppable(bench: Bench, menu: Menu) -> list[str]:
    """Return the demands each of which alone, dropped, opens a way."""
    tries: list[tuple[str, Menu]] = []
    tries.extend((d, replace(menu, constraints=menu.constraints - {d})) for d in sorted(menu.constraints))
    if menu.look.sheen:
        tries.append((f"{menu.look.sheen} sheen", replace(menu, look=replace(menu.look, sheen=""))))
    if menu.look.depth is not None or menu.look.colour:
        plain = replace(menu.look, depth=None, colour="")
        tries.append((f"that colour ({menu.look.colour or 'depth'})", replace(menu, look=plain)))
    if "spray" not in menu.workshop.methods:
        place = replace(menu.workshop, methods=menu.workshop.methods | {"spray"})
        tries.append(("no spray gun", replace(menu, workshop=place)))
    if menu.air.known and (menu.air.temp_c < 15 or menu.air.rh > 0.75):
        place = replace(menu.workshop, air_likely=_WARM)
        tries.append((f"air at {menu.air.temp_c:g} °C and {menu.air.rh:.0%}", replace(menu, workshop=place)))
    opened = []
    for words, other in tries:
        if Search(bench, other, _weights(bench)).run(most=300).steps:
            opened.append(words)
    if not opened:
        opened.append(_stuck(bench))
    return opened


def _stuck(bench: Bench) -> str:
    """Return what stands in the way when no single demand does."""
    surface = bench.surface
    left = bench.begin.worlds[0].states[0].wood_um
    if surface.veneer_um > 0 and left < 250:
        return f"only about {left / 1000:.1f} mm of the veneer may go"
    top = bench.begin.worlds[0].states[0].top
    if top is not None:
        return f"no remover here takes {bench.know.film(top.cls).name} off this surface"
    return "nothing this workshop has makes that look on this surface"


_LOOKS = {
    "keep": "the old finish kept and renewed", "natural": "clear finish, the wood's own colour",
    "stained": "stained and clear", "oiled": "oiled", "waxed": "waxed", "opaque": "painted",
    "bare": "left bare", "odour-free": "free of smell", "limed": "limed: white in the pores, clear over it",
    "whitewashed": "whitewashed: thin white, grain seen", "bleached": "bleached pale and clear",
    "dyed": "dyed and clear", "distressed": "painted, worn through at the edges",
    "antiqued": "painted, glaze left in the hollows, clear over it",
}  # fmt: skip


def look_words(look: Look) -> str:
    """Return a look in words."""
    words = _LOOKS.get(look.kind, look.kind)
    if look.colour:
        words += f", {look.colour}"
    if look.sheen:
        words += f", {look.sheen}"
    return words
