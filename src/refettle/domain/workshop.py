"""The place, its means and its hours."""

from dataclasses import dataclass

from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.airhours import AirHours, HoursFrom
from refettle.domain.piece import Assumed, Product


@dataclass(frozen=True, slots=True, kw_only=True)
class Workshop:
    """
    The place and its means.

    Attributes
    ----------
    name
        The person's name for it.
    currency
        Word or sign printed beside money.
    hour_worth
        What an hour of one's own time is worth [money/h].
    day_worth
        What a day's delay costs [money/d].
    air_likely, air_safe
        Air as usual, and on the bad side; plans are made for the first.
    plan_safe
        Whether plans are to be made for the bad side: then `air_likely` is made the same as `air_safe`.
    tools
        Tool ids there are (``tools.csv``).
    methods
        Ways to coat: ``brush wipe pad roller aerosol``; ``spray`` where there is a gun.
    ventilation
        ``good``, ``poor`` or ``outdoors``.
    clamps
        Clamps there are [1].
    evenings_per_week, hours_per_evening
        Free time [1/week], [h].
    products
        Tins on the shelf or to be had.
    prices
        Price per litre by class [money/L] that override the class price.
    begins
        First day, ISO 8601; empty = not said.
    free
        Free hours: weekday from Monday = 0, begin and end [h]; empty = evenings as above, from 18 o'clock.
    not_on
        Days that fall out: ISO 8601 or a weekday's name.
    spraying
        Hours in which it may be sprayed, as `free`; empty = in all free hours.
    places_m2
        Area on which coated faces may stand or lie to dry [m²]; None = enough.
    pieces
        Paths of the pieces that stand in it, as the file gives them.
    hours_from, hours
        Where the air of the hours comes from, and that air hour by hour; None = the planning air at all times.
    time_zone, hour_lengths
        Name of the time zone, empty = clocks never change; and the hours of the clock on the wall that do not last one,
        from midnight of the first day, with how long they last [h].
    journal
        Path of the journal that is learnt from, as the file gives it; empty = none.
    invented
        Whether the file says that it is made up.
    assumed
        Every default taken.
    """

    name: str = "workshop"
    currency: str = "EUR"
    hour_worth: float = 12.0
    day_worth: float = 1.0
    air_likely: Air = STANDARD_AIR
    air_safe: Air = STANDARD_AIR
    plan_safe: bool = False
    tools: frozenset[str] = frozenset()
    methods: frozenset[str] = frozenset({"brush", "wipe", "pad", "roller", "aerosol"})
    ventilation: str = "good"
    clamps: int = 4
    evenings_per_week: float = 3.0
    hours_per_evening: float = 2.0
    products: tuple[Product, ...] = ()
    prices: tuple[tuple[str, float], ...] = ()
    begins: str = ""
    free: tuple[tuple[int, float, float], ...] = ()
    not_on: frozenset[str] = frozenset()
    spraying: tuple[tuple[int, float, float], ...] = ()
    places_m2: float | None = None
    pieces: tuple[str, ...] = ()
    hours_from: HoursFrom | None = None
    hours: AirHours | None = None
    time_zone: str = ""
    hour_lengths: tuple[tuple[int, float], ...] = ()
    journal: str = ""
    invented: bool = False
    assumed: tuple[Assumed, ...] = ()
