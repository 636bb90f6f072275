"""The cross-section of a surface: as text, as a drawing, as JSON."""

from typing import Final
from xml.sax.saxutils import escape as _escaped

import numpy as np

from refettle.cli.json_parts import SCHEMA_VERSION, Document, rounded, written
from refettle.cli.page import Page
from refettle.geometry.reach import class_of_points, outline_of
from refettle.geometry.section import Section
from refettle.knowledge.knowledge import Knowledge
from refettle.services.sections import CutOpen, ToolReach

_PERIODS: Final = 3
_MARKS: Final = {"flat": "=", "edge": "o", "recess": "x"}
_TELLS: Final = {
    "flat": "a block lies on it",
    "edge": "a fingertip gets there, a block does not",
    "recess": "neither: stick, pick, bristles or mist",
}
_FACES: Final = ("front", "side", "floor", "back")
_COLOURS: Final = {"flat": "#2f6f5e", "edge": "#c8860a", "recess": "#a3262a"}
_DASHES: Final = {"flat": "", "edge": "6 3", "recess": "1.5 2.5"}
_WOOD, _LINE = "#e8d9bf", "#6b5a3e"
_DRAWN_PX: Final = 432.0
_MARGIN: Final = 24.0


def section_text(cut: CutOpen, know: Knowledge, page: Page) -> str:
    """
    Return the page of a cross-section.

    Parameters
    ----------
    cut
        The surface cut open.
    know
        Names of the tools.
    page
        Empty page of the right width.

    Returns
    -------
    str
        The drawing, what its marks mean, and what each tool reaches.
    """
    page.heading(f"{cut.surface}: cut across its relief ({cut.section.relief})")
    sizes = ", ".join(_size(name, value) for name, value in cut.section.sizes)
    how = "as measured" if cut.measured else "usual sizes; say your own under section"
    page.write(f"{sizes or 'a plain face'} – {how}", indent=2, hang=2)
    page.gap()
    for line in _drawn(cut.section, page.width - 4):
        page.write(line.replace(" ", "\u00a0"), indent=2)
    page.gap()
    for zone, mark in _MARKS.items():
        page.marked(mark, _TELLS[zone], indent=2, column=6)
    page.heading("What gets where")
    shown = [face for face in _FACES if any(face in dict(one.reach.faces) for one in cut.tools)]
    page.ended("", "".join(f"{word:>8}" for word in ("in all", *shown)), indent=2)
    for one in cut.tools:
        page.ended(know.name("tool", one.tool), _row(one, shown), indent=2, hang=2)
    mist = next((one for one in cut.tools if one.reach.dose), None)
    if mist is not None:
        said = ", ".join(f"{face} {dose:.0%}" for face, dose in mist.reach.dose)
        page.gap()
        page.write(f"Sprayed film against an open face: {said}.", indent=2, hang=2)
    return page.text()


def _size(name: str, value: float) -> str:
    """Return a size in words."""
    return f"{name} {value:g}°" if name == "tilt" else f"{name} {value:g} mm"


def _row(one: ToolReach, shown: list[str]) -> str:
    """Return the shares of a tool, in all and per face, each in a column."""
    faces = dict(one.reach.faces)
    cells = [f"{one.reach.share:.0%}", *(f"{faces[face]:.0%}" if face in faces else "" for face in shown)]
    return "".join(f"{cell:>8}" for cell in cells)


def _inside(section: Section, u: float, v: float) -> bool:
    """Return whether a point lies in wood."""
    for solid in section.solids:
        points = solid.points
        turns = [
            (x1 - x0) * (v - y0) - (y1 - y0) * (u - x0)
            for (x0, y0), (x1, y1) in zip(points, (*points[1:], points[0]), strict=True)
        ]
        if all(t >= -1e-9 for t in turns) or all(t <= 1e-9 for t in turns):
            return True
    return False


def _drawn(section: Section, width: int) -> list[str]:
    """Return the section as lines of text: # wood, a mark in the air beside each face by what gets there."""
    span = section.period_mm * _PERIODS
    cell_u = span / width
    cell_v = 2.0 * cell_u
    outline = outline_of(section)
    low = float(outline.points[:, 1].min()) - 2.0 * cell_v
    rows = round((2.0 * cell_v - low) / cell_v)
    grid = [
        [
            "#" if _inside(section, (c + 0.5) * cell_u - span / 2, 2.0 * cell_v - (r + 0.5) * cell_v) else " "
            for c in range(width)
        ]
        for r in range(rows)
    ]
    order = {"recess": 0, "edge": 1, "flat": 2}
    classes = class_of_points(section)
    for at in sorted(range(len(classes)), key=lambda i: order[str(classes[i])]):
        (u, v), (nu, nv) = outline.points[at], outline.normals[at]
        for shift in range(_PERIODS):
            place = u + (shift - _PERIODS // 2) * section.period_mm + 0.6 * cell_u * nu
            c = int((place + span / 2) / cell_u)
            r = int((2.0 * cell_v - (v + 0.6 * cell_v * nv)) / cell_v)
            if 0 <= c < width and 0 <= r < rows and grid[r][c] != "#":
                grid[r][c] = _MARKS[str(classes[at])]
    return ["".join(row).rstrip() for row in grid if any(cell != " " for cell in row)]


def section_svg(cut: CutOpen) -> str:
    """
    Return the section as a drawing.

    Parameters
    ----------
    cut
        The surface cut open.

    Returns
    -------
    str
        SVG: wood, its faces by what gets there (colour and kind of line), legend, sizes in millimetres.
    """
    section = cut.section
    span = section.period_mm * _PERIODS
    scale = _DRAWN_PX / span
    outline = outline_of(section)
    low = float(outline.points[:, 1].min()) - 4.0
    width, height = span * scale + 2 * _MARGIN, (-low + 6.0) * scale + 2 * _MARGIN + 78.0

    def x(u: float) -> float:
        return round((u + span / 2) * scale + _MARGIN, 1)

    def y(v: float) -> float:
        return round((6.0 - v) * scale + _MARGIN, 1)

    size = f'viewBox="0 0 {width:.0f} {height:.0f}" width="{width:.0f}" height="{height:.0f}"'
    field = f'x="{x(-span / 2)}" y="{_MARGIN}" width="{span * scale:.1f}" height="{(-low + 6.0) * scale:.1f}"'
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} font-family="sans-serif" font-size="13">',
        f"<title>{_escaped(cut.surface)}: cut across its relief</title>",
        f'<clipPath id="field"><rect {field}/></clipPath><g clip-path="url(#field)">',
    ]
    for solid in section.solids:
        points = " ".join(f"{x(u)},{y(v)}" for u, v in solid.points)
        parts.append(f'<polygon points="{points}" fill="{_WOOD}" stroke="{_WOOD}" stroke-width="0.6"/>')
    classes = class_of_points(section)
    for shift in range(_PERIODS):
        off = (shift - _PERIODS // 2) * section.period_mm
        parts.extend(_runs(outline.points + np.array([off, 0.0]), [str(c) for c in classes], x, y))
    parts.append("</g>")
    parts.extend(_legend(cut, x, y, low))
    return "\n".join([*parts, "</svg>"]) + "\n"


def _runs(points, classes: list[str], x, y) -> list[str]:  # type: ignore[no-untyped-def]  # noqa: ANN001
    """Return the faces as lines, one for each run of points of one zone that hang together."""
    made, run = [], [0]
    for at in range(1, len(classes) + 1):
        last = at == len(classes)
        apart = last or abs(points[at] - points[at - 1]).sum() > 1.0 or classes[at] != classes[at - 1]
        if apart:
            zone = classes[run[0]]
            dash = f' stroke-dasharray="{_DASHES[zone]}"' if _DASHES[zone] else ""
            path = " ".join(f"{x(float(points[i][0]))},{y(float(points[i][1]))}" for i in run)
            made.append(
                f'<polyline points="{path}" fill="none" stroke="{_COLOURS[zone]}" stroke-width="3"{dash}/>'
            )
            run = []
        run.append(at)
    return made


def _legend(cut: CutOpen, x, y, low: float) -> list[str]:  # type: ignore[no-untyped-def]  # noqa: ANN001
    """Return the legend and the sizes."""
    left, top = x(-cut.section.period_mm * _PERIODS / 2), y(low) + 14.0
    made = []
    for number, zone in enumerate(_MARKS):
        line = top + 18.0 * number
        dash = f' stroke-dasharray="{_DASHES[zone]}"' if _DASHES[zone] else ""
        made.append(
            f'<line x1="{left}" y1="{line}" x2="{left + 34}" y2="{line}" stroke="{_COLOURS[zone]}" '
            f'stroke-width="3"{dash}/><text x="{left + 42}" y="{line + 4}" fill="#333">{_TELLS[zone]}</text>'
        )
    sizes = ", ".join(_size(name, value) for name, value in cut.section.sizes)
    made.append(f'<text x="{left}" y="{top + 60}" fill="{_LINE}">{cut.section.relief}: {sizes}</text>')
    return made


def section_json(piece: str, cut: CutOpen, know: Knowledge) -> str:
    """Return the section as a JSON document, valid against ``why.schema.json``."""
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "piece": piece,
            "surface": cut.surface,
            "relief": cut.section.relief,
            "measured": cut.measured,
            "sizes": [{"name": name, "value": rounded(value)} for name, value in cut.section.sizes],
            "tools": [_tool(one, know) for one in cut.tools],
        }
    )


def _tool(one: ToolReach, know: Knowledge) -> Document:
    """Return a tool with its shares."""
    return {
        "tool": one.tool,
        "name": know.name("tool", one.tool),
        "share": rounded(one.reach.share),
        "faces": [{"face": face, "share": rounded(share)} for face, share in one.reach.faces],
        "dose": [{"face": face, "share": rounded(dose)} for face, dose in one.reach.dose],
        "because": list(one.because),
    }
