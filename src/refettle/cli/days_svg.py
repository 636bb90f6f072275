"""The days as a drawing: the curve of the air leads, work hangs on it, waits run below."""

from dataclasses import dataclass
from typing import Final
from xml.sax.saxutils import escape

from refettle.domain.airhours import AirHours, steady
from refettle.domain.piece_plan import Day
from refettle.services.calendar import Calendar
from refettle.services.free_time import day_words

_WIDTH: Final = 1120
_LEFT: Final = 52
_RIGHT: Final = 16
_TOP: Final = 56
_AIR: Final = 190
_HANGS: Final = 44
_ROW: Final = 30
_MOST_DAYS: Final = 70
_INK: Final = "#3a3226"
_LETTERS: Final = f"font-family='sans-serif' font-size='11' fill='{_INK}'"
_TEMP: Final = "#b4552d"
_DAMP: Final = "#8fb3c2"
_WORK: Final = "#5c7a4f"


@dataclass(frozen=True, slots=True)
class _Axes:
    """Where hours and temperatures lie on the sheet: days shown, coldest and warmest shown [°C]."""

    days: int
    low_c: float
    high_c: float

    def x(self, at_h: float) -> float:
        """Return the place of an hour."""
        span = 24.0 * self.days
        return _LEFT + (_WIDTH - _LEFT - _RIGHT) * min(at_h, span) / span

    def y(self, temp_c: float) -> float:
        """Return the place of a temperature."""
        return _TOP + (_AIR - _TOP) * (self.high_c - temp_c) / (self.high_c - self.low_c)


def days_svg(calendar: Calendar) -> str:
    """
    Return the days as a drawing.

    Parameters
    ----------
    calendar
        The days.

    Returns
    -------
    str
        An SVG document: temperature as a line, humidity as a band, work as bars under the hours it takes, and a thin
        line for each group while it dries.
    """
    last = min(_MOST_DAYS, max((day.day for day in calendar.days), default=1) + 1)
    hours = calendar.workshop.hours or steady(calendar.workshop.air_likely)
    temps = [hours.at(hour).temp_c for hour in range(24 * last)]
    axes = _Axes(last, min(0.0, *temps), max(25.0, *temps))
    groups = list(dict.fromkeys(task.group for day in calendar.days for task in day.tasks if task.number))
    height = _AIR + _HANGS + _ROW * len(groups) + 12
    title = escape(f"Days for {', '.join(ready.piece for ready in calendar.ready)}")
    parts = [
        f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {_WIDTH} {height}' role='img' {_LETTERS}>",
        f"<title>{title}</title>",
        f"<rect width='{_WIDTH}' height='{height}' fill='#fbf8f1'/>",
        f"<text x='{_LEFT}' y='20' font-size='14'>{title}</text>",
        *_air(axes, hours),
        *(part for day in calendar.days if day.day <= last for part in _work(calendar, day, axes)),
        *_waits(calendar, axes, groups),
        "</svg>",
    ]
    return "\n".join(parts) + "\n"


def _air(axes: _Axes, hours: AirHours) -> list[str]:
    """Return the air: humidity as a band from the bottom, temperature as a line, a rule each ten degrees."""
    airs = [(hour, hours.at(hour)) for hour in range(24 * axes.days)]
    damp = " ".join(f"{axes.x(hour):.1f},{_AIR - (_AIR - _TOP) * air.rh:.1f}" for hour, air in airs)
    line = " ".join(f"{axes.x(hour):.1f},{axes.y(air.temp_c):.1f}" for hour, air in airs)
    end = axes.x(24.0 * axes.days)
    parts = [f"<polygon points='{_LEFT},{_AIR} {damp} {end:.1f},{_AIR}' fill='{_DAMP}' opacity='0.35'/>"]
    for temp in range(0, int(axes.high_c) + 1, 10):
        at = axes.y(temp)
        parts += [
            f"<line x1='{_LEFT}' x2='{end:.1f}' y1='{at:.1f}' y2='{at:.1f}' stroke='{_INK}' opacity='0.15'/>",
            f"<text x='{_LEFT - 6}' y='{at + 4:.1f}' text-anchor='end'>{temp} °C</text>",
        ]
    return [*parts, f"<polyline points='{line}' fill='none' stroke='{_TEMP}' stroke-width='1.6'/>"]


def _work(calendar: Calendar, day: Day, axes: _Axes) -> list[str]:
    """Return one day's work: a bar that hangs on the air, the longer the more there is to do; its day above."""
    begin = min(task.begin_h for task in day.tasks)
    end = max(task.begin_h + task.minutes / 60.0 for task in day.tasks)
    words = day_words(calendar.workshop, day.day)
    named = escape(f"{words}: {'; '.join(dict.fromkeys(task.text for task in day.tasks))}")
    label = f"{words[:3]} {words[-5:]}" if calendar.workshop.begins else str(day.day)
    left, width = axes.x(begin), max(4.0, axes.x(end) - axes.x(begin))
    tall = min(_HANGS - 8.0, 5.0 + day.minutes / 9.0)
    return [
        f"<g><title>{named}</title>",
        f"<rect x='{left:.1f}' y='{_AIR}' width='{width:.1f}' height='{tall:.1f}' fill='{_WORK}'/>",
        f"<text x='{left:.1f}' y='{_TOP - 4}' font-size='9' transform='rotate(-35 {left:.1f} {_TOP - 4})'>{label}</text>",
        "</g>",
    ]


def _waits(calendar: Calendar, axes: _Axes, groups: list[str]) -> list[str]:
    """Return a row for each group: its name, and a line while it dries."""
    parts = []
    for number, group in enumerate(groups):
        at = _AIR + _HANGS + _ROW * number
        parts.append(f"<text x='{_LEFT}' y='{at + 10}' font-size='10'>{escape(group)}</text>")
        for day in calendar.days:
            for task in day.tasks:
                if task.group == group and task.number and task.wait_h > 0:
                    begin = task.begin_h + task.minutes / 60.0
                    ends = f"x1='{axes.x(begin):.1f}' x2='{axes.x(begin + task.wait_h):.1f}'"
                    line = f"y1='{at + 16}' y2='{at + 16}' stroke='{_TEMP}' stroke-width='3' opacity='0.55'"
                    parts.append(f"<line {ends} {line}/>")
    return parts
