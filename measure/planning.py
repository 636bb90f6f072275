"""
Print how long planning takes on made-up groups, as multiples of a fixed loop of plain Python in the same run.

    python measure/planning.py [GROUPS ...] [--seed N]

Each group is one surface of its own (wood, build, relief, old finish known or not, dirt, damage, look) that is
searched under all weightings. Says per run: time of each search in yardsticks (taken just before and after, for
a machine does not keep its pace), states expanded, steps judged, share of searches that ended by themselves, and
the most memory held. Judges nothing.
"""

import argparse
import random
import resource
import time
from dataclasses import dataclass

from refettle.domain.piece import Look, OldLayer, Piece, Surface, Zone
from refettle.domain.workshop import Workshop
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import AIMS
from refettle.planning.engine import Memory
from refettle.planning.offers import Menu
from refettle.planning.search import Bench, Found, Search
from refettle.planning.start import start

WOODS = (
    "oak", "ash", "beech", "cherry", "mahogany", "maple", "teak", "walnut", "pine", "pine-knotty", "rosewood",
    "birch", "mdf", "softwood",
)  # fmt: skip
CLEARS = (
    "shellac-waxed",
    "nitro-lacquer",
    "alkyd-varnish",
    "oil-varnish-blend",
    "oil-polyurethane",
    "old-varnish",
)
PAINTS = ("alkyd-enamel", "latex-paint", "chalk-paint", "milk-paint")
DIRT = ("wax", "grime", "polish", "silicone", "grease", "smoke-film")
DAMAGE = ("white-ring", "black-ring", "scratches", "dents", "lifted-veneer")
LOOKS = (
    Look(kind="natural"), Look(kind="natural", depth=40, sheen="satin"), Look(kind="opaque", colour="white"),
    Look(kind="opaque", colour="dark green"), Look(kind="stained"), Look(kind="stained", depth=70),
    Look(kind="keep"), Look(kind="oiled"), Look(kind="waxed"),
)  # fmt: skip
HOLLOW = (Zone(name="flat", share=0.5), Zone(name="edge", share=0.2), Zone(name="recess", share=0.3))


@dataclass(frozen=True)
class Timed:
    """One search: what was asked, how long it took [s] and in yardsticks [1] of that moment, what it cost to find."""

    group: str
    aim: str
    seconds: float
    yards: float
    expanded: int
    judged: int
    exact: bool
    found: bool


def yardstick_s(rounds: int = 5) -> float:
    """Return the time of a fixed loop of plain Python [s], the best of some rounds."""
    best = float("inf")
    for _ in range(rounds):
        began = time.process_time()
        table: dict[int, float] = {}
        for i in range(200_000):
            table[i % 977] = table.get(i % 977, 0.0) + i * 0.5
        best = min(best, time.process_time() - began)
    return best


def made_up(know: Knowledge, dice: random.Random) -> tuple[Piece, Surface]:
    """Return a piece with one surface, drawn by lot."""
    wood = dice.choice(WOODS)
    look = dice.choice(LOOKS)
    if not know.wood(wood).shows_wood:
        look = dice.choice([choice for choice in LOOKS if choice.kind in {"opaque", "keep"}])
    veneer = dice.choice((0, 0, 0, 700, 900)) if know.wood(wood).shows_wood else 0
    relief = dice.choice(("flat", "flat", "flat", "panel", "turned", "carved"))
    kind = dice.choice(("clear", "clear", "paint", "unknown", "bare"))
    known = {"clear": CLEARS, "paint": PAINTS, "unknown": CLEARS, "bare": CLEARS}[kind]
    guesses = ((dice.choice(known), 1.0),) if dice.random() < 0.4 and kind != "unknown" else ()
    layers = () if kind == "bare" else (OldLayer(kind=kind, guesses=guesses, coats=dice.randint(1, 4)),)
    year = dice.choice((1895, 1925, 1938, 1955, 1975, None))
    surface = Surface(
        name="top",
        part="top",
        area_m2=round(dice.uniform(0.2, 2.0), 2),
        orientation=dice.choice(("up", "upright")),
        wood=wood,
        build="veneer" if veneer else "solid",
        veneer_um=veneer,
        relief=relief,
        zones=HOLLOW if relief in {"turned", "carved"} else (Zone(name="flat", share=1.0),),
        layers=layers,
        soundness=dice.choice(("sound", "sound", "worn", "scratched", "flaking")) if layers else "sound",
        old_stain=(("red-stain", 80),) if dice.random() < 0.2 else (),
        contamination=tuple(
            sorted((n, round(dice.uniform(0.2, 1.0), 1)) for n in dice.sample(DIRT, dice.randint(0, 3)))
        ),
        damage=tuple(dice.sample(DAMAGE, dice.randint(0, 2))),
        use=dice.choice(("everyday", "table", "display", "child")),
        value=dice.choice(("ordinary", "ordinary", "good")),
        look=look,
    )
    piece = Piece(name="made up", form="list", surfaces=(surface,), year_from=year, year_to=year)
    return piece, surface


def time_group(memory: Memory, workshop: Workshop, piece: Piece, surface: Surface) -> list[Timed]:
    """Return the searches of one group under all weightings; they share one bench, as a plan's do."""
    look = surface.look or Look(kind="natural")
    know = memory.know
    before_s = yardstick_s(2)
    laps: list[tuple[float, Found, int]] = []
    began = time.process_time()
    bench = Bench(know, workshop, surface, start(know, piece, surface), memory=memory)
    menu = Menu(know=know, workshop=workshop, surface=surface, look=look)
    weights = tuple(world.weight for world in bench.begin.worlds)
    for aim in AIMS:
        judged = plays(bench)
        found = Search(bench, menu, weights, aim).run()
        ended = time.process_time()
        laps.append((ended - began, found, plays(bench) - judged))
        began = ended
    yard_s = 0.5 * (before_s + yardstick_s(2))
    title = f"{surface.wood} {surface.relief} {look.kind}, {len(weights)} worlds"
    return [
        Timed(
            title, aim.name, seconds, seconds / yard_s, found.expanded, judged, found.exact, bool(found.steps)
        )
        for aim, (seconds, found, judged) in zip(AIMS, laps, strict=True)
    ]


def plays(bench: Bench) -> int:
    """Return how many pairs of state and step the engines of a bench have judged."""
    return sum(engine.played for engine in bench.engines)


def report(count: int, timed: list[Timed]) -> None:
    """Print the figures of one run."""
    total, yards = sum(t.seconds for t in timed), sum(t.yards for t in timed)
    ordered = sorted(t.yards for t in timed)
    exact = sum(t.exact for t in timed) / len(timed)
    print(f"{count} groups, {len(timed)} searches")
    print(f"  all        {yards:8.2f} yardsticks  {total:8.3f} s")
    print(f"  per search {yards / len(timed):8.3f} yardsticks, half below {ordered[len(ordered) // 2]:.3f}")
    print(f"  expanded   {sum(t.expanded for t in timed)}, judged {sum(t.judged for t in timed)}")
    print(f"  exact      {exact:.1%}, no way found {sum(not t.found for t in timed)}")
    for t in sorted(timed, key=lambda t: -t.yards)[:5]:
        end = "exact" if t.exact else "cut short"
        print(
            f"  {t.yards:6.2f} yardsticks {t.seconds:7.4f} s {t.expanded:5d} expanded {t.judged:6d} judged"
            f"  {end}: {t.group}; {t.aim}"
        )


def main() -> None:
    """Draw the groups, search them, print."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("groups", nargs="*", type=int, default=[12, 100])
    parser.add_argument("--seed", type=int, default=7)
    asked = parser.parse_args()
    know = load_knowledge()
    workshop = Workshop(tools=frozenset({"random-orbit"}))
    print(f"yardstick {yardstick_s():.4f} s")
    for count in asked.groups:
        dice = random.Random(asked.seed)  # noqa: S311 - groups by lot, no secret
        memory = Memory(know)
        timed: list[Timed] = []
        for _ in range(count):
            timed.extend(time_group(memory, workshop, *made_up(know, dice)))
        report(count, timed)
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"most memory held {peak_mb:.0f} MB")


if __name__ == "__main__":
    main()
