"""
Print how long the choice for a whole piece takes on made-up pieces, and how near to its bound it comes.

    python measure/choice.py [GROUPS ...] [--seed N]

Each piece has so many surfaces of their own, see `planning.py`. Says per piece: time of each group's own search, of
the pools, of the choice itself; ways and combinations; gap; whether it is proved. Judges nothing.
"""

import argparse
import random
import time
from dataclasses import replace
from itertools import pairwise

from planning import made_up
from refettle.domain.piece import Piece, Product
from refettle.domain.workshop import Workshop
from refettle.files.tables import load_knowledge
from refettle.planning.engine import Memory
from refettle.services.cases import first_try, share_of
from refettle.services.grouping import group_surfaces
from refettle.services.pools import below_steps, pools_of, problem_of
from refettle.solver.choice import choose

SHELF = (
    Product(name="shellac", cls="shellac-dewaxed", have_l=0.4),
    Product(name="spirits", cls="mineral-spirits", kind="cleaner", have_l=0.5, size_l=0.0),
)


def main() -> None:
    """Draw the pieces, choose, print."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("groups", nargs="*", type=int, default=[3, 12, 30])
    parser.add_argument("--seed", type=int, default=7)
    asked = parser.parse_args()
    know = load_knowledge()
    shop = Workshop(tools=frozenset({"random-orbit"}), products=SHELF)
    for count in asked.groups:
        dice = random.Random(asked.seed)  # noqa: S311 - pieces by lot, no secret
        drawn = [made_up(know, dice)[1] for _ in range(count)]
        surfaces = tuple(replace(s, name=f"part.{n}", part=f"part.{n}") for n, s in enumerate(drawn))
        piece = Piece(name="made up", form="list", surfaces=surfaces, year_from=1938, year_to=1938)
        groups, memory, laps = group_surfaces(surfaces), Memory(know), [time.perf_counter()]
        tries = [
            first_try(know, piece, shop, g, setup_share=share_of(g, groups), memory=memory) for g in groups
        ]
        laps.append(time.perf_counter())
        pools = pools_of([tried for tried in tries if tried[1].steps])
        problem = problem_of(know, shop, pools)
        laps.append(time.perf_counter())
        chosen = choose(problem)
        laps.append(time.perf_counter())
        own, made, choice = (b - a for a, b in pairwise(laps))
        bound = sum(pool.bound for pool in pools) - below_steps(know, shop, problem)
        ways = sum(len(pool) for pool in problem.pools)
        print(f"{len(groups)} groups: own searches {own:.2f} s, pools {made:.2f} s, choice {choice:.2f} s")
        print(
            f"  {ways} ways, {float(chosen.choices):.2g} combinations, cost {chosen.cost:.0f}, splits {chosen.splits}"
        )
        print(
            f"  {'proved' if chosen.proved else 'not proved'}, gap to the bound {1 - bound / max(chosen.cost, 1e-9):.1%}"
        )


if __name__ == "__main__":
    main()
