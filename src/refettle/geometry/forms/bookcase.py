"""Bookcase: an open case with shelves, in one or more bays."""

from refettle.geometry.cells import PartBody, Span, box
from refettle.geometry.form import Built, Form, Skeleton, measured
from refettle.geometry.forms.carcase import CASE_PARAMETERS, case_bodies, case_problems, opening
from refettle.geometry.forms.casework import (
    bays,
    inside_skeletons,
    shelf_levels,
    shelf_problems,
    upright_bodies,
    upright_skeletons,
)
from refettle.geometry.parameters import Problem, Sizes, count, length, size_parameters

_LEAST_BAY_MM = 80.0


def _tall_mm(sizes: Sizes) -> float:
    return opening(sizes).z[1] - opening(sizes).z[0]


PARAMETERS = (
    *size_parameters((200.0, 100.0, 200.0), (5000.0, 800.0, 3000.0)),
    *CASE_PARAMETERS,
    count(
        "bays",
        "number of bays side by side",
        lambda sizes: max(1, min(8, round(sizes.mm("width") / 900.0))),
        "one for about 900 mm of width",
        1,
        12,
    ),
    count(
        "shelves",
        "number of shelves in a bay",
        lambda sizes: max(0, min(10, round(_tall_mm(sizes) / 320.0) - 1)),
        "one for about 320 mm of height",
        0,
        20,
    ),
    length("shelf", "thickness of a shelf", 18.0, 4.0, 60.0),
)


def _bays(sizes: Sizes) -> tuple[Span, ...]:
    return bays(opening(sizes).x, sizes.count("bays"), sizes.mm("board"))


def problems(sizes: Sizes) -> tuple[Problem, ...]:
    """
    Return what is wrong with the sizes together.

    Parameters
    ----------
    sizes
        All parameters.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    found = list(case_problems(sizes))
    first = _bays(sizes)[0]
    if sizes.count("bays") > 1 and first[1] - first[0] < _LEAST_BAY_MM:
        what = f"{sizes.count('bays')} bays are {max(first[1] - first[0], 0.0):.3g} mm wide each"
        do = f"leave at least {_LEAST_BAY_MM:.0f} mm: fewer bays, or check the width"
        found.append(Problem(param="bays", what=what, do=do))
    return (*found, *shelf_problems(opening(sizes).z, sizes.count("shelves"), sizes.mm("shelf")))


def build(sizes: Sizes) -> Built:
    """
    Return the bookcase built to size.

    Parameters
    ----------
    sizes
        All parameters, without problems.

    Returns
    -------
    Built
        Shelves lie between the sides and against the back; they are numbered bay by bay from below.
    """
    free, openings = opening(sizes), _bays(sizes)
    bodies = [*case_bodies(sizes, "rails"), *upright_bodies(openings, free.y, free.z)]
    skeletons = [
        *inside_skeletons(running=False),
        Skeleton(name="rails", part="carcase"),
        *upright_skeletons(openings),
    ]
    levels = shelf_levels(free.z, sizes.count("shelves"), sizes.mm("shelf"))
    places = [(x, z) for x in openings for z in levels]
    for number, (x, z) in enumerate(places, start=1):
        name, under = f"shelf.{number}", f"shelf.{number}/underside"
        bodies.append(PartBody(name=name, cells=(box(x, free.y, z, name, {"bottom": under}),)))
        skeletons += [
            Skeleton(name=name, part=name, orientation="up", other_side=under),
            Skeleton(name=under, part=name, orientation="down", other_side=name),
        ]
    return measured(tuple(bodies), tuple(skeletons))


FORM = Form(
    id="bookcase",
    name="bookcase",
    aliases=("bookshelf", "bookshelves", "shelves", "open bookcase", "shelving"),
    meaning="An open case with shelves, in one bay or more.",
    parameters=PARAMETERS,
    problems=problems,
    build=build,
)
