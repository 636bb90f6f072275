"""Zones of reliefs where no body says how large they are."""

from collections.abc import Iterable
from dataclasses import dataclass

from refettle.domain.piece import Zone


@dataclass(frozen=True, slots=True)
class UsualZones:
    """
    Zones taken where nothing was measured.

    Attributes
    ----------
    zones
        Zones with their shares [1], which add up to 1.
    why
        Where the shares come from, in half a sentence.
    """

    zones: tuple[Zone, ...]
    why: str

    def text(self) -> str:
        """Return the shares in words: ``flat 40 %, edge 25 %, recess 35 %``."""
        return ", ".join(f"{zone.name} {zone.share * 100.0:.0f} %" for zone in self.zones)


_PRACTICE = "common practice"
_USUAL: dict[str, tuple[tuple[tuple[str, float], ...], str]] = {
    "flat": ((("flat", 1.0),), "a plain face"),
    "panel": (
        (("flat", 0.95), ("edge", 0.03), ("recess", 0.02)),
        "measured on a frame-and-panel door of 450 × 700 mm in the usual sizes",
    ),
    "moulded": (
        (("flat", 0.10), ("edge", 0.60), ("recess", 0.30)),
        f"{_PRACTICE}: rounds and hollows of a moulding",
    ),
    "turned": (
        (("edge", 0.83), ("recess", 0.17)),
        "measured on a turned table leg of 60 mm without its square",
    ),
    "carved": (
        (("flat", 0.40), ("edge", 0.25), ("recess", 0.35)),
        f"{_PRACTICE}: about a third of carved work lies in hollows; judge it by eye and write your own",
    ),
    "slats": (
        (("flat", 0.69), ("recess", 0.31)),
        "measured on a door of 450 × 700 mm with slats 30 mm wide, 10 mm apart, on a board",
    ),
    "slats open": (
        (("flat", 0.78), ("recess", 0.22)),
        "measured on a door of 450 × 700 mm with slats 30 mm wide, 10 mm apart",
    ),
}


def usual_zones(relief: str) -> UsualZones:
    """
    Return the zones of a surface of which only the relief is known.

    Parameters
    ----------
    relief
        One of ``domain.piece.RELIEFS``.

    Returns
    -------
    UsualZones
        Shares and where they come from.

    Raises
    ------
    KeyError
        If there is no such relief.
    """
    shares, why = _USUAL[relief]
    return UsualZones(tuple(Zone(name=name, share=share) for name, share in shares), why)


def zones_of(relief: str, sizes: Iterable[tuple[str, float]] | None = None) -> UsualZones:
    """
    Return the zones of a surface of a relief, from its cross-section where its sizes were measured.

    Parameters
    ----------
    relief
        One of ``domain.piece.RELIEFS``.
    sizes
        Sizes of the relief [mm]; None or nothing = as usual.

    Returns
    -------
    UsualZones
        With sizes: ``flat`` is what a block 75 mm wide touches, ``edge`` what a fingertip touches besides, ``recess``
        the rest; see `geometry.reach`. Without: `usual_zones`.

    Raises
    ------
    KeyError
        If there is no such relief.
    """
    known = dict(sizes or ())
    if not known or relief == "flat":
        return usual_zones(relief)
    from refettle.geometry.reach import zones_by_reach  # noqa: PLC0415 - only where a relief was measured
    from refettle.geometry.section import section_of  # noqa: PLC0415 - as above

    section = section_of(relief, known)
    if section is None:
        return usual_zones(relief)
    zones = tuple(Zone(name=name, share=share) for name, share in zones_by_reach(section))
    return UsualZones(zones, "by its cross-section: what a block, a fingertip and neither touch")
