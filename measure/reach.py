"""
How long the reach of a tool takes, and how much of a relief it is. Prints, judges nothing.

``python measure/reach.py``: milliseconds per tool on a fresh section, and the ratio to the slowest of the same run.
"""

from time import perf_counter

from refettle.files.tables import load_knowledge
from refettle.geometry.reach import Shape, outline_of, reach_of
from refettle.geometry.section import section_of

RELIEFS = ("slats", "slats open", "louvres", "spindles", "flutes", "beads", "carved", "panel")


def main() -> None:
    know = load_knowledge()
    rows = []
    for relief in RELIEFS:
        section = section_of(relief)
        if section is None:
            continue
        outline_of(section)
        for tool in know.ids("tool"):
            facts = know.tool(tool)
            if not facts.shape:
                continue
            shape = Shape(facts.shape, facts.size_mm, facts.thick_mm, facts.soft_mm, facts.cone_deg)
            begin = perf_counter()
            share = reach_of(section, shape).share
            rows.append((1000.0 * (perf_counter() - begin), relief, facts.name, share))
            reach_of(section, shape)
    slowest = max(rows)[0]
    for took, relief, name, share in rows:
        print(f"{relief:<11}{name:<26}{share:>6.0%}{took:>8.1f} ms  {took / slowest:>5.2f} of the slowest")
    print(
        f"{len(rows)} tools on reliefs: {sum(r[0] for r in rows) / len(rows):.1f} ms on average, {slowest:.1f} at most"
    )


if __name__ == "__main__":
    main()
