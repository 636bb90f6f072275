"""Air through the hours: what each hour of the days ahead is like."""

from dataclasses import dataclass

from refettle.domain.air import Air

HOURS_A_DAY = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class AirHours:
    """
    Temperature and humidity hour by hour.

    Attributes
    ----------
    temps_c
        Temperature in each hour from midnight of the first day on [°C].
    rhs
        Relative humidity in the same hours [1].
    air_m_s
        Air speed over the piece [m/s].
    said
        Where it is from, in words.
    lengths
        Hours of the clock on the wall that do not last one, with how long they last [h]: 0 skipped, 2 twice.
    """

    temps_c: tuple[float, ...]
    rhs: tuple[float, ...]
    air_m_s: float = 0.1
    said: str = ""
    lengths: tuple[tuple[int, float], ...] = ()

    def at(self, hour: int) -> Air:
        """
        Return the air of an hour.

        Parameters
        ----------
        hour
            Hour from midnight of the first day on [h]; past the last one the last whole days go round.

        Returns
        -------
        Air
            Air of that hour.
        """
        place = self.place(hour)
        return Air(temp_c=self.temps_c[place], rh=self.rhs[place], air_m_s=self.air_m_s)

    def place(self, hour: int) -> int:
        """Return where the air of an hour stands; past the end the last week, or all of less than a week, goes round."""
        count = len(self.temps_c)
        if hour < count:
            return max(0, hour)
        days = max(1, min(7, count // HOURS_A_DAY))
        span = min(count, days * HOURS_A_DAY)
        return count - span + (hour - count) % span


def steady(air: Air, said: str = "") -> AirHours:
    """Return one day of the same air."""
    return AirHours(
        temps_c=(air.temp_c,) * HOURS_A_DAY, rhs=(air.rh,) * HOURS_A_DAY, air_m_s=air.air_m_s, said=said
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursFrom:
    """
    Where the air of the hours comes from.

    Attributes
    ----------
    low_c, high_c, rh
        A typical day [°C], [1]; None = a file says it.
    logger, weather
        Names of files; empty = none.
    building
        Kind of building; empty = the air is that of the room.
    heated_to_c, heated
        What a heater holds [°C], and the hours of the day at which it is on.
    fan
        Whether a fan moves the air over the piece.
    """

    low_c: float | None = None
    high_c: float | None = None
    rh: float = 0.6
    logger: str = ""
    weather: str = ""
    building: str = ""
    heated_to_c: float | None = None
    heated: frozenset[int] = frozenset(range(24))
    fan: bool = False
