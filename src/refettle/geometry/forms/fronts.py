"""
Doors and panelling: what closes an opening, upright and facing the front.

One description serves doors, chest fronts, high backs and loose boards: plain or carved board,
frame with panels, frame with slats (open, or with a board behind), with a lattice, with glass or cane.
Tongues in their grooves are left out: members meet edge to edge. Glass and cane count to no surface;
the frame counts as it is with them out.
"""

import math
from dataclasses import dataclass, field

from refettle.geometry.cells import (
    Cell,
    Index,
    PartBody,
    Side,
    Skin,
    Span,
    box,
    cut_box,
    panel_box,
)
from refettle.geometry.form import Skeleton
from refettle.geometry.forms.framing import FRAMED, OPEN, TILT, Framing
from refettle.geometry.forms.lattice import lattice_cells
from refettle.geometry.forms.louvres import louvre_cells, louvre_size_mm
from refettle.geometry.parameters import Problem

QUIRK_MM = 5.0  # border of a panel that a pad or scraper cannot square up to, beside the frame
FINGER_GAP_MM = 20.0  # a finger pad of 9 mm radius gets at the walls of an open gap from here up
_LEAST_OPENING_MM = 30.0
_RELIEF = {
    "flat": "flat",
    "carved": "carved",
    "frame-and-panel": "panel",
    "glazed": "panel",
    "caned": "panel",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """
    A door, panelled front or back.

    Attributes
    ----------
    name
        Name of the part.
    outside, inside
        Surfaces of the face to the front and of the face to the rear; outer edges count to `outside`.
    below
        Surface of the lower edge.
    x, z
        Width and height as spans [mm].
    y
        Thickness as a span [mm].
    kind
        One of `KINDS`.
    columns, rows
        Panels beside and above each other [1].
    framing
        Frame and what stands in it.
    """

    name: str
    outside: str
    inside: str
    below: str
    x: Span
    y: Span
    z: Span
    kind: str = "flat"
    columns: int = 1
    rows: int = 1
    framing: Framing = field(default_factory=Framing)

    @property
    def reliefs(self) -> tuple[str, str]:
        """Return the reliefs of outside and inside."""
        if self.kind in {"louvred", "lattice"}:
            return ("slats open", "slats open")
        if self.kind == "slatted":
            return ("slats open", "slats open") if self.framing.behind_mm is None else ("slats", "panel")
        outer = _RELIEF[self.kind]
        return outer, ("flat" if self.kind == "carved" else outer)

    @property
    def filling_mm(self) -> float:
        """Return the thickness [mm] of what stands in the frame."""
        if self.kind == "frame-and-panel" or self.kind in OPEN:
            return self.framing.panel_mm
        if self.kind == "louvred":
            return louvre_size_mm(self.framing)[0]
        if self.kind == "lattice":
            return self.framing.slat_thick_mm
        return self.framing.slat_thick_mm + (
            0.0 if self.framing.behind_mm is None else self.framing.behind_mm + self.framing.panel_mm
        )


def front_skeletons(
    front: Front, orientation: str = "upright", *, hidden: bool = False
) -> tuple[Skeleton, ...]:
    """
    Return the two surfaces of a front.

    Parameters
    ----------
    front
        The front.
    orientation
        Orientation of its inside.
    hidden
        Whether nobody sees its inside.

    Returns
    -------
    tuple of Skeleton
        Outside, inside.
    """
    outer, inner = front.reliefs
    return (
        Skeleton(name=front.outside, part=front.name, relief=outer, other_side=front.inside),
        Skeleton(
            name=front.inside,
            part=front.name,
            relief=inner,
            orientation=orientation,
            other_side=front.outside,
            hidden=hidden,
        ),
    )


def front_bodies(front: Front) -> tuple[PartBody, ...]:
    """
    Return the parts of a front.

    Parameters
    ----------
    front
        A front without problems (`front_problems`).

    Returns
    -------
    tuple of PartBody
        One board, or frame and filling.
    """
    if front.kind not in FRAMED:
        board = box(front.x, front.y, front.z, front.outside, {"back": front.inside, "bottom": front.below})
        return (PartBody(name=front.name, cells=(board,)),)
    columns = _openings(front.x, front.framing.stile_mm, _panels_across(front))
    rows = _openings(front.z, front.framing.rail_mm, front.rows)
    bodies = _frame(front, columns, rows)
    for r, row in enumerate(rows):
        for c, column in enumerate(columns):
            place = f"{front.name} {r + 1}.{c + 1}"
            filling = {"slatted": _slats, "louvred": _louvres, "lattice": _lattice}.get(front.kind, _panel)
            bodies += [] if front.kind in OPEN else filling(front, column, row, place)
    return tuple(bodies)


def front_problems(front: Front, word: str) -> tuple[Problem, ...]:
    """
    Return why a front cannot be made.

    Parameters
    ----------
    front
        The front.
    word
        Word for it, e.g. ``door``.

    Returns
    -------
    tuple of Problem
        Everything that does not fit.
    """
    if front.kind not in FRAMED:
        return ()
    made, word_mm = front.framing, f"mm between them in a {word}"
    across, up = _panels_across(front), front.rows
    wide = (front.x[1] - front.x[0] - (across + 1) * made.stile_mm) / across
    tall = (front.z[1] - front.z[0] - (up + 1) * made.rail_mm) / up
    least, thick = _LEAST_OPENING_MM, front.y[1] - front.y[0]
    problems = [
        Problem(
            param=name,
            what=f"{name}s of {member:.6g} mm leave {max(left, 0.0):.3g} {word_mm}",
            do=f"leave at least {least:.0f} mm: narrower {name}s or fewer panels",
        )
        for name, member, left in (("stile", made.stile_mm, wide), ("rail", made.rail_mm, tall))
        if left < least
    ]
    if front.filling_mm > thick - 1.0:
        inside = {
            "slatted": "slats and what is behind them", "louvred": "tilted slats", "lattice": "slats",
        }.get(front.kind, "panels")  # fmt: skip
        what = f"{inside} of {front.filling_mm:.6g} mm do not fit into a frame of {thick:.6g} mm"
        name = {"slatted": "slat_thickness", "louvred": "slat_width", "lattice": "slat_thickness"}.get(
            front.kind, "panel"
        )
        problems.append(Problem(param=name, what=what, do="check the thicknesses"))
    run = min(wide, tall) if front.kind == "lattice" else wide if made.upright else tall
    if front.kind in {"slatted", "lattice"} and min(wide, tall) >= least and made.slat_mm > run - 2.0:
        what = f"slats of {made.slat_mm:.6g} mm do not fit into an opening of {run:.3g} mm"
        problems.append(Problem(param="slat_width", what=what, do="give narrower slats"))
    if front.kind == "louvred" and tall >= least and louvre_size_mm(made)[1] > tall - 2.0:
        what = f"slats of {made.slat_mm:.6g} mm do not fit into an opening of {tall:.3g} mm"
        problems.append(Problem(param="slat_width", what=what, do="give narrower slats"))
    return tuple(problems)


def slats_in(run: Span, slat_mm: float, gap_mm: float) -> tuple[Span, ...]:
    """
    Return where slats lie so that all gaps, those at the ends too, are equal.

    Parameters
    ----------
    run
        Opening across the slats [mm].
    slat_mm, gap_mm
        Width of a slat, gap wished [mm].

    Returns
    -------
    tuple of tuple
        Span of every slat [mm].
    """
    length = run[1] - run[0]
    number = max(1, round((length - gap_mm) / (slat_mm + gap_mm)))
    while number > 1 and length - number * slat_mm < (number + 1) * 0.5:
        number -= 1
    gap = (length - number * slat_mm) / (number + 1)
    starts = [run[0] + gap + n * (slat_mm + gap) for n in range(number)]
    return tuple((start, start + slat_mm) for start in starts)


def _panels_across(front: Front) -> int:
    return front.columns if front.kind == "frame-and-panel" or front.kind in OPEN else 1


def _openings(span: Span, member_mm: float, number: int) -> tuple[Span, ...]:
    """Return equal openings between members of one width, members at both ends."""
    wide = (span[1] - span[0] - (number + 1) * member_mm) / number
    starts = [span[0] + member_mm + n * (wide + member_mm) for n in range(number)]
    return tuple((start, start + wide) for start in starts)


def _between(span: Span, openings: tuple[Span, ...]) -> tuple[Span, ...]:
    """Return the members that the openings leave."""
    ends = [span[0], *(place for opening in openings for place in opening), span[1]]
    return tuple(zip(ends[::2], ends[1::2], strict=True))


def _filling(front: Front) -> tuple[float, float, float]:
    """Return front and rear of the filling and the plane in it that parts outside from inside [mm]."""
    start = front.y[0] + (front.y[1] - front.y[0] - front.filling_mm) / 2.0
    end = start + front.filling_mm
    if front.kind == "louvred":
        return start, end, (start + end) / 2.0
    solid = (
        front.framing.slat_thick_mm
        if front.kind == "lattice" or (front.kind == "slatted" and front.framing.behind_mm is None)
        else front.framing.panel_mm
    )
    return start, end, end - solid / 2.0


def _wall_zone(front: Front) -> str:
    """Return the zone of the walls of an opening, slats' sides among them."""
    if front.kind == "louvred":
        return _louvre_zone(front)
    if front.kind == "lattice":
        return "edge" if front.framing.gap_mm >= FINGER_GAP_MM else "recess"
    if front.kind != "slatted":
        return "edge"
    across, z = front.x, front.z
    run = (
        _openings(across, front.framing.stile_mm, 1)[0]
        if front.framing.upright
        else _openings(z, front.framing.rail_mm, front.rows)[0]
    )
    first = slats_in(run, front.framing.slat_mm, front.framing.gap_mm)[0]
    wide_open = front.framing.behind_mm is None and first[0] - run[0] >= FINGER_GAP_MM
    return "edge" if wide_open else "recess"


def _frame(front: Front, columns: tuple[Span, ...], rows: tuple[Span, ...]) -> list[PartBody]:
    """Return stiles, rails and muntins, each cut where the filling parts outside from inside."""
    x, z = front.x, front.z
    stiles, rails = _between(x, columns), _between(z, rows)
    left, right = stiles[0], stiles[-1]
    bodies = [
        _member(front, "stile left", left, z, ("right",)),
        _member(front, "stile right", right, z, ("left",)),
    ]
    across = (left[1], right[0])
    for number, rail in enumerate(rails):
        inner: tuple[Side, ...] = ("bottom", "top")
        if number == 0:
            inner = ("top",)
        if number == len(rails) - 1:
            inner = ("bottom",)
        bodies.append(_member(front, f"rail {number + 1}", across, rail, inner))
    for r, row in enumerate(rows):
        bodies += [
            _member(front, f"muntin {r + 1}.{m + 1}", muntin, row, ("left", "right"))
            for m, muntin in enumerate(stiles[1:-1])
        ]
    return bodies


def _member(front: Front, name: str, x: Span, z: Span, inner: tuple[Side, ...]) -> PartBody:
    _, _, middle = _filling(front)
    wall = _wall_zone(front)

    def skin(side: Side, index: Index) -> Skin:
        fore = index[1] == 0
        if side == "back":
            return Skin(front.inside)
        if side in inner:
            return Skin(front.outside, wall) if fore else Skin(front.inside, "edge")
        return Skin(front.below if side == "bottom" else front.outside)

    cells = cut_box(x, (front.y[0], middle, front.y[1]), z, skin)
    return PartBody(name=f"{front.name} {name}", cells=cells)


def _panel(front: Front, x: Span, z: Span, place: str) -> list[PartBody]:
    start, end, _ = _filling(front)
    cell = panel_box(x, (start, end), z, front.outside, front.inside, _quirk_mm(x, z))
    return [PartBody(name=f"{place} panel", cells=(cell,))]


def _quirk_mm(x: Span, z: Span) -> float:
    return min(QUIRK_MM, (x[1] - x[0]) / 4.0, (z[1] - z[0]) / 4.0)


def _slats(front: Front, x: Span, z: Span, place: str) -> list[PartBody]:
    start, end, _ = _filling(front)
    wall = Skin(front.outside, _wall_zone(front))
    rear: str | Skin = front.inside if front.framing.behind_mm is None else Skin(front.outside, "recess")
    y = (start, start + front.framing.slat_thick_mm)
    bodies = []
    for number, span in enumerate(
        slats_in(x if front.framing.upright else z, front.framing.slat_mm, front.framing.gap_mm)
    ):
        sx, sz = (span, z) if front.framing.upright else (x, span)
        cell = box(sx, y, sz, wall, {"front": front.outside, "back": rear})
        bodies.append(PartBody(name=f"{place} slat {number + 1}", cells=(cell,)))
    if front.framing.behind_mm is not None:
        bodies.append(PartBody(name=f"{place} board", cells=(_backing(front, x, z, end),)))
    return bodies


def _lattice(front: Front, x: Span, z: Span, place: str) -> list[PartBody]:
    start, _, _ = _filling(front)
    made, wall = front.framing, Skin(front.outside, _wall_zone(front))
    y = (start, start + made.slat_thick_mm)
    rows = (slats_in(x, made.slat_mm, made.gap_mm), slats_in(z, made.slat_mm, made.gap_mm))
    members = lattice_cells(x, y, z, rows, wall, {"front": front.outside, "back": front.inside})
    return [PartBody(name=f"{place} {name}", cells=cells) for name, cells in members]


def _backing(front: Front, x: Span, z: Span, end: float) -> Cell:
    """Return the board behind slats: its front is a recess, its rear a panel."""
    cell = panel_box(x, (end - front.framing.panel_mm, end), z, front.outside, front.inside, _quirk_mm(x, z))
    return Cell(
        vertices=cell.vertices,
        faces=tuple(
            type(face)(loop=face.loop, surface=face.surface, zone="recess")
            if face.surface == front.outside
            else face
            for face in cell.faces
        ),
    )


def _louvre_zone(front: Front) -> str:
    """Return the zone of tilted slats: a recess unless a finger gets between them."""
    return "flat" if front.framing.gap_mm * math.cos(TILT) >= FINGER_GAP_MM else "recess"


def _louvres(front: Front, x: Span, z: Span, place: str) -> list[PartBody]:
    start, end, _ = _filling(front)
    zone = _louvre_zone(front)
    outer, inner = Skin(front.outside, zone), Skin(front.inside, zone)
    return [
        PartBody(name=f"{place} slat {number}", cells=(cell,))
        for number, cell in enumerate(louvre_cells(front.framing, x, (start, end), z, outer, inner), start=1)
    ]
