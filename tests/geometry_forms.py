"""Random sizes for every form: what hypothesis draws, shared by the property and the mesh tests."""

from typing import Any

from hypothesis import strategies as st

from refettle.geometry import FORMS, Parameter
from refettle.geometry.parameters import Value

SHAPED = tuple(form for form in FORMS if form != "list")
USUAL_SIZES: dict[str, dict[str, Any]] = {  # one real piece of every form [mm]
    "board": {"width": 400, "depth": 20, "height": 800},
    "chest_of_drawers": {"width": 1050, "depth": 500, "height": 1000},
    "table": {"width": 1400, "depth": 800, "height": 750},
    "cupboard": {"width": 1000, "depth": 560, "height": 1900},
    "chest": {"width": 1150, "depth": 480, "height": 520},
    "settle": {"width": 1400, "depth": 500, "height": 1300},
    "wardrobe": {"width": 1000, "depth": 560, "height": 1900},
    "bookcase": {"width": 900, "depth": 300, "height": 1800},
    "sideboard": {"width": 1600, "depth": 450, "height": 850},
    "desk": {"width": 1400, "depth": 700, "height": 760},
    "bench": {"width": 1200, "depth": 350, "height": 450},
    "bedside": {"width": 450, "depth": 400, "height": 600},
    "chair": {"width": 450, "depth": 480, "height": 900},
    "bed": {"width": 1000, "depth": 2050, "height": 1000},
    "bed_end": {"width": 1000, "depth": 45, "height": 900},
    "frame": {"width": 500, "depth": 20, "height": 700},
    "door": {"width": 450, "depth": 20, "height": 700},
    "panel": {"width": 350, "depth": 12, "height": 600},
    "dressing_chest": {"width": 1000, "depth": 450, "height": 1500},
    "cot": {"width": 640, "depth": 1250, "height": 900},
    "blanket_box": {"width": 1150, "depth": 480, "height": 700},
}
_LIKELY = {  # sizes of real pieces [mm]; the rest is drawn over the lower half of what is allowed
    "board": ((100, 1500), (100, 900), (8, 40)),
    "chest_of_drawers": ((300, 1600), (250, 700), (300, 1500)),
    "table": ((300, 2400), (300, 1200), (300, 1000)),
    "cupboard": ((300, 2000), (250, 700), (400, 2200)),
    "chest": ((400, 1500), (250, 700), (250, 800)),
    "settle": ((600, 2200), (300, 700), (700, 1800)),
    "wardrobe": ((500, 2400), (350, 700), (1500, 2300)),
    "bookcase": ((400, 2400), (180, 450), (500, 2300)),
    "sideboard": ((700, 2400), (300, 600), (500, 1100)),
    "desk": ((900, 2000), (450, 900), (650, 850)),
    "bench": ((400, 2400), (200, 600), (250, 600)),
    "bedside": ((300, 700), (250, 600), (400, 900)),
    "chair": ((350, 700), (350, 700), (700, 1200)),
    "bed": ((700, 2000), (1500, 2200), (600, 1400)),
    "bed_end": ((500, 2000), (25, 70), (400, 1400)),
    "frame": ((150, 1200), (10, 60), (150, 1200)),
    "door": ((250, 1000), (15, 50), (300, 2100)),
    "panel": ((100, 1200), (6, 40), (100, 1200)),
    "dressing_chest": ((600, 1500), (350, 600), (1000, 1800)),
    "cot": ((450, 800), (800, 1500), (600, 1100)),
    "blanket_box": ((600, 1600), (350, 700), (450, 1000)),
}


def _value(parameter: Parameter) -> st.SearchStrategy[Value]:
    if parameter.kind == "choice":
        return st.sampled_from(parameter.choices)
    low, high = parameter.low, (parameter.low + parameter.high) / 2
    if parameter.kind == "count":
        return st.integers(int(low), max(int(low), int(high)))
    return st.floats(low, min(high, low + 60.0)).map(lambda value: max(low, round(value, 2)))


@st.composite
def sizes(draw: st.DrawFn, form_id: str) -> dict[str, Value]:
    """Sizes as a person might give them: the three needed ones and a few others."""
    params: dict[str, Value] = {
        name: round(draw(st.floats(*span)), 1)
        for name, span in zip(("width", "depth", "height"), _LIKELY[form_id], strict=True)
    }
    for parameter in FORMS[form_id].parameters[3:]:
        meant = parameter.only_with is None or params.get(parameter.only_with[0]) in parameter.only_with[1]
        if (meant and draw(st.integers(0, 3)) == 0) or (parameter.kind == "choice" and meant):
            params[parameter.name] = draw(_value(parameter))
    return params
