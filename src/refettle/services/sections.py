"""The cross-section of a surface with what each tool reaches of it."""

from dataclasses import dataclass

from refettle.domain.piece import Surface
from refettle.geometry.reach import Reach, Shape, reach_of
from refettle.geometry.section import Section, section_of
from refettle.knowledge.knowledge import Knowledge


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolReach:
    """
    What one tool reaches.

    Attributes
    ----------
    tool
        Tool id.
    reach
        Shares per face.
    because
        Fact rows of its geometry.
    """

    tool: str
    reach: Reach
    because: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutOpen:
    """
    A surface cut across its relief.

    Attributes
    ----------
    surface
        Its name.
    section
        The cut.
    measured
        Whether its sizes were said; False = usual ones.
    tools
        Tools, those that reach most first.
    """

    surface: str
    section: Section
    measured: bool
    tools: tuple[ToolReach, ...]


def cut_open(know: Knowledge, surface: Surface) -> CutOpen | None:
    """
    Return the section of a surface with what every tool that has a shape reaches.

    Parameters
    ----------
    know
        Geometry of the tools.
    surface
        The surface.

    Returns
    -------
    CutOpen or None
        None for a relief without a section.
    """
    relief = surface.relief
    section = section_of(relief, dict(surface.section))
    if section is None:
        return None
    made = []
    for tool in know.ids("tool"):
        facts = know.tool(tool)
        if not facts.shape:
            continue
        shape = Shape(facts.shape, facts.size_mm, facts.thick_mm, facts.soft_mm, facts.cone_deg)
        because = tuple(row for prop in ("shape", "size_mm") for row in know.because(f"tool:{tool}", prop))
        made.append(ToolReach(tool=tool, reach=reach_of(section, shape), because=because))
    made.sort(key=lambda one: (-round(one.reach.share, 3), one.tool))
    return CutOpen(surface=surface.name, section=section, measured=bool(surface.section), tools=tuple(made))
