"""Groups: surfaces that are alike in everything that matters are planned as one."""

from dataclasses import dataclass, replace

from refettle.domain.finding import Where
from refettle.domain.piece import Surface, Zone


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """
    Surfaces planned as one.

    Attributes
    ----------
    name
        Common name.
    members
        Surface names.
    surface
        A stand-in with the whole area [m²].
    """

    name: str
    members: tuple[str, ...]
    surface: Surface


def group_surfaces(surfaces: tuple[Surface, ...]) -> tuple[Group, ...]:
    """
    Return the groups of a piece in the order in which they are worked on.

    Notes
    -----
    Alike means equal wood, build, veneer, old finish, condition, relief, orientation, look, use and kinds of
    zone; the shares of the zones may differ, as on the two faces of slats: the stand-in has their mean over the
    area, which keeps time and litres exact. Order: inside before outside, underside before top, upright before
    the top itself [common practice].
    """
    found: dict[Surface, list[Surface]] = {}
    for surface in surfaces:
        kinds = tuple(replace(zone, share=0.0) for zone in surface.zones)
        key = replace(surface, name="", part="", area_m2=0.0, zones=kinds, where=Where(file=""))
        found.setdefault(key, []).append(surface)
    groups = []
    for key, members in found.items():
        area = sum(s.area_m2 for s in members)
        names = tuple(s.name for s in members)
        stand_in = replace(
            key, name=common_name(names), part=members[0].part, area_m2=area, zones=_mean_zones(members, area)
        )
        groups.append(Group(name=stand_in.name, members=names, surface=stand_in))
    rank = {"inside": 0, "down": 1, "upright": 2, "up": 3}
    first = {s.name: i for i, s in enumerate(surfaces)}
    groups.sort(key=lambda g: (rank.get(g.surface.orientation, 2), first[g.members[0]]))
    return tuple(groups)


def _mean_zones(members: list[Surface], area_m2: float) -> tuple[Zone, ...]:
    """Return the zones of surfaces as one, their shares weighted by area."""
    shares = [tuple(zone.share for zone in surface.zones) for surface in members]
    if len(set(shares)) == 1 or area_m2 <= 0:
        return members[0].zones
    weights = [surface.area_m2 / area_m2 for surface in members]
    mean = [sum(w * own[i] for w, own in zip(weights, shares, strict=True)) for i in range(len(shares[0]))]
    return tuple(replace(zone, share=share) for zone, share in zip(members[0].zones, mean, strict=True))


def common_name(names: tuple[str, ...]) -> str:
    """Return a short name for a group of surfaces."""
    if len(names) == 1:
        return names[0]
    heads = list(dict.fromkeys(plain_name(n) for n in names))
    if len(heads) <= 3:
        return ", ".join(heads)
    return f"{heads[0]}, {heads[1]} and {len(heads) - 2} more"


def plain_name(name: str) -> str:
    """Return a surface name without its numbers: ``drawer.2/front`` → ``drawer fronts``."""
    part, _, face = name.partition("/")
    head, dot, tail = part.partition(".")
    many = bool(dot)
    word = head if many and (tail.isdigit() or tail in {"left", "right", "front", "back"}) else part
    return f"{word} {face}".strip() if face else word
