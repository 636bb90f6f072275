"""Groups on their benches: laid out for the search, with the look asked for or chosen."""

from dataclasses import dataclass, replace

from refettle.domain.piece import Look, Piece
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.clash import relooked_bench
from refettle.planning.cost import BALANCED, Aim
from refettle.planning.engine import Memory
from refettle.planning.offers import Menu
from refettle.planning.search import MAX_EXPANSIONS, Bench, Found, Search
from refettle.planning.start import start
from refettle.services.grouping import Group

_FREE_LOOKS = ("keep", "natural", "opaque")
_LEAST_SETUP = 0.12
ASIDE = 300
"""States expanded in a search whose answer is only one of several to choose from [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """
    One group on its bench, ready to be asked.

    Attributes
    ----------
    group
        The group.
    bench
        Surface, worlds and engines.
    menu
        What may be offered for the look aimed at.
    asked
        Whether the look was asked for.
    aim
        Weighting of its searches where no other is named.
    """

    group: Group
    bench: Bench
    menu: Menu
    asked: bool
    aim: Aim = BALANCED

    @property
    def weights(self) -> tuple[float, ...]:
        """Return the belief per world [1]."""
        return tuple(w.weight for w in self.bench.begin.worlds)

    def search(self, aim: Aim | None = None, menu: Menu | None = None, most: int = MAX_EXPANSIONS) -> Found:
        """Return the best route under an aim, at most so many states expanded; searched once, then remembered."""
        menu, aim = menu or self.menu, aim or self.aim

        def run() -> Found:
            return Search(self.bench, menu, self.weights, aim).run(most)

        return self.bench.kept(menu, f"found, {aim.name}, {most}", run)


def open_case(
    know: Knowledge,
    piece: Piece,
    workshop: Workshop,
    group: Group,
    *,
    setup_share: float,
    memory: Memory | None = None,
    look: Look | None = None,
) -> Case:
    """Return a group laid out for the search; a look that is not asked for is chosen by cost."""
    wish = look or group.surface.look
    surface = group.surface if wish is None else replace(group.surface, look=wish)
    begin = start(know, piece, surface)
    bench = Bench(know, workshop, surface, begin, setup_share, memory=memory)
    menu = Menu(know=know, workshop=workshop, surface=surface, look=wish or Look(kind="keep"),
                constraints=piece.constraints)  # fmt: skip
    return Case(group=group, bench=bench, menu=menu, asked=wish is not None)


def choose_look(
    know: Knowledge, piece: Piece, workshop: Workshop, group: Group, setup_share: float, memory: Memory
) -> tuple[Case, Found]:
    """Return the case and route of the look that costs least, flaws left counted, where none is asked for."""
    best: tuple[Case, Found] | None = None
    for kind in _FREE_LOOKS:
        case = open_case(
            know, piece, workshop, group, setup_share=setup_share, memory=memory, look=Look(kind=kind)
        )
        found = case.search()
        if found.steps and (best is None or found.cost < best[1].cost):
            best = (replace(case, asked=False), found)
    if best is None:
        case = open_case(
            know, piece, workshop, group, setup_share=setup_share, memory=memory, look=Look(kind="keep")
        )
        return replace(case, asked=False), case.search()
    return best


def first_try(
    know: Knowledge, piece: Piece, workshop: Workshop, group: Group, *, setup_share: float, memory: Memory
) -> tuple[Case, Found]:
    """Return a group on its bench with the best route for itself alone."""
    if group.surface.look is None:
        return choose_look(know, piece, workshop, group, setup_share, memory)
    case = open_case(know, piece, workshop, group, setup_share=setup_share, memory=memory)
    return case, case.search()


def relooked_case(case: Case, look: Look) -> Case:
    """Return the same group on a fresh bench with another look wanted."""
    bench = relooked_bench(case.bench, look)
    menu = replace(
        case.menu, look=look, surface=bench.surface, wanted=frozenset(), wanted_stage="", bare_first=False,
        keep_film=False,
    )  # fmt: skip
    return replace(case, bench=bench, menu=menu)


def share_of(group: Group, groups: tuple[Group, ...]) -> float:
    """Return the share of the piece's set-up and clean-up that a group bears [1]."""
    total = sum(g.surface.area_m2 for g in groups) or 1.0
    return max(_LEAST_SETUP, group.surface.area_m2 / total)
