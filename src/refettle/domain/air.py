"""Air: what a coat dries in."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Air:
    """
    Air around the piece while a step is done and dries.

    Attributes
    ----------
    temp_c
        Temperature [°C].
    rh
        Relative humidity [1], 0–1.
    air_m_s
        Air speed over the piece [m/s].
    sun
        Whether direct sun falls on the wet film.
    known
        Whether somebody measured or stated it; False for the default.
    """

    temp_c: float = 20.0
    rh: float = 0.50
    air_m_s: float = 0.1
    sun: bool = False
    known: bool = True


STANDARD_AIR = Air(temp_c=20.0, rh=0.50, known=False)
