"""How much slower air is by the psychrometric library than by Magnus, with and without memory: ratios in one run."""

import math
import time
from collections.abc import Callable

import psychrolib

from refettle.physics.air import dew_point_c, saturation_pa
from refettle.physics.climate import day_temps_c

YEAR = [(temp + 0.001 * day, 0.55 + 0.001 * day) for day in range(365) for temp in day_temps_c(4.0, 14.0)]
CASES = 25


def magnus_pa(temp_c: float) -> float:
    """Return the saturation pressure after Magnus [Pa]."""
    return 611.2 * math.exp(17.62 * temp_c / (243.12 + temp_c))


def magnus_dew_c(temp_c: float, rh: float) -> float:
    """Return the dew point after Magnus [°C]."""
    a = math.log(rh) + 17.62 * temp_c / (243.12 + temp_c)
    return 243.12 * a / (17.62 - a)


def seconds(reckon: Callable[[float, float], float], times: int = 1) -> float:
    """Return the time that a year of hours takes, some times over [s]."""
    begin = time.perf_counter()
    for _ in range(times):
        for temp_c, rh in YEAR:
            reckon(temp_c, min(0.95, rh))
    return time.perf_counter() - begin


def main() -> None:
    """Print the ratios."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    plain = seconds(lambda t, _: magnus_pa(t)), seconds(magnus_dew_c)
    bare = (
        seconds(lambda t, _: float(psychrolib.GetSatVapPres(t))),
        seconds(lambda t, rh: float(psychrolib.GetTDewPointFromRelHum(t, rh))),
    )
    kept = seconds(lambda t, _: saturation_pa(t), CASES), seconds(dew_point_c, CASES)
    for name, one, library, remembered in zip(("saturation", "dew point"), plain, bare, kept, strict=True):
        print(
            f"{name}: library {library / one:.1f} times Magnus; remembered, over {CASES} cases a year each,"
        )
        print(f"  {remembered / (CASES * one):.1f} times")


if __name__ == "__main__":
    main()
