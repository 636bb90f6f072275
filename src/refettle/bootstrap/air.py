"""Air by the hour: read from the file that the workshop names."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from refettle.domain.finding import Finding
    from refettle.domain.workshop import Workshop


def with_hours(workshop: "Workshop", workshop_file: str | None) -> "tuple[Workshop, tuple[Finding, ...]]":
    """
    Return a workshop with its air hour by hour, where it says where that comes from.

    Parameters
    ----------
    workshop
        The workshop.
    workshop_file
        Its path; files of air are sought beside it.

    Returns
    -------
    tuple
        The workshop, planned for the air that it asks for; and what is to be said of the file.

    Raises
    ------
    WrongCall
        If a file cannot be opened.
    """
    read, said = _with_hours(workshop, workshop_file)
    return (replace(read, air_likely=read.air_safe) if read.plan_safe else read), said


def _with_hours(workshop: "Workshop", workshop_file: str | None) -> "tuple[Workshop, tuple[Finding, ...]]":
    """Return a workshop with its air hour by hour, its planning air still the likely one."""
    source = workshop.hours_from
    if source is None:
        return workshop, ()
    from refettle.bootstrap import opened  # noqa: PLC0415 - each needs the other
    from refettle.files.clock_zone import summer_hours  # noqa: PLC0415 - heavy
    from refettle.files.hours_entries import air_of  # noqa: PLC0415 - heavy
    from refettle.services.free_time import planning_air  # noqa: PLC0415 - heavy

    name, text = source.logger or source.weather, ""
    if name:
        path = str(Path(workshop_file or ".").parent / name)
        read = opened(path)
        if not isinstance(read, str):
            return workshop, (read,)
        name, text = path, read
    summer = summer_hours(workshop.time_zone, workshop.begins) if source.weather else ()
    hours, said = air_of(source, text, name, workshop.begins, summer)
    if hours is None:
        return workshop, said
    workshop = replace(workshop, hours=replace(hours, lengths=workshop.hour_lengths))
    if any(one.path == "air" for one in workshop.assumed):
        likely, safe = planning_air(workshop)
        kept = tuple(one for one in workshop.assumed if one.path != "air")
        workshop = replace(workshop, air_likely=likely, air_safe=safe, assumed=kept)
    return workshop, said
