"""
How long it takes from a symptom to ranked causes and mends, beside planning the same piece. Prints, judges nothing.

``python measure/trouble.py [FILE] [--workshop FILE]``: a demo piece with its steps; every surface in turn.
"""

import argparse
from dataclasses import replace
from time import perf_counter

from refettle.bootstrap import Laid, Said, lay_out, look_into, mend, plan
from refettle.domain.finding import Where
from refettle.domain.piece import Own
from refettle.domain.step import Step

SYMPTOMS = (
    "pink patches come up through the coat",
    "a white haze next morning",
    "it peels off in sheets after some weeks",
    "still sticky after two days",
    "little craters as I brush",
)
DONE = (
    Step(verb="clean", what="soap-water", wait_after_h=12.0),
    Step(verb="paint", what="acrylic-paint", method="roller", coats=2, wait_between_h=2.0, wait_after_h=24.0),
)


def main() -> None:
    """Time each surface with each symptom, and planning the whole."""
    parser = argparse.ArgumentParser(description="Time diagnose and mend.")
    parser.add_argument("file", nargs="?", default="examples/sideboard.yaml")
    parser.add_argument("--workshop", default="examples/workshop.yaml")
    options = parser.parse_args()
    laid = lay_out(options.file, options.workshop)
    if not isinstance(laid, Laid):
        raise SystemExit("\n".join(finding.text() for finding in laid.findings))
    begin = perf_counter()
    groups = len(plan(laid).groups)
    planned = perf_counter() - begin

    own = Own(surface="", steps=DONE, where=(Where(file="measure"),) * len(DONE))
    troubled = replace(laid, piece=replace(laid.piece, done=(own,)))
    rows = []
    for surface in troubled.piece.surfaces:
        for symptom in SYMPTOMS:
            said = Said(text=symptom)
            begin = perf_counter()
            look_into(troubled, surface.name, said)
            asked = perf_counter() - begin
            begin = perf_counter()
            mend(troubled, surface.name, said, "")
            rows.append((asked, perf_counter() - begin, surface.name, symptom))
    for asked, mended, name, symptom in sorted(rows, key=lambda row: -row[1])[:5]:
        print(f"{name:<24}{symptom:<42}{1000 * asked:>6.0f} ms causes{1000 * mended:>7.0f} ms mends")
    asked_all, mended_all = [row[0] for row in rows], [row[1] for row in rows]
    print(f"{len(rows)} questions on {groups} groups; planning the piece {1000 * planned:.0f} ms")
    print(
        f"causes: {1000 * sum(asked_all) / len(rows):.0f} ms on average, {max(asked_all) / planned:.2f} of planning at most"
    )
    print(
        f"causes and mends: {1000 * sum(mended_all) / len(rows):.0f} ms on average, {1000 * max(mended_all):.0f} ms at most,"
        f" {max(mended_all) / planned:.2f} of planning"
    )


if __name__ == "__main__":
    main()
