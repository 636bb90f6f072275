"""
How a piece of the plan check becomes a `Piece` and a `Workshop`.

Only situation, item, workshop and surfaces come in here: anything else is refused, so that no expectation can
leak into what is planned. Each surface is read as the trade cases are (`case_pieces`); of the story only what it
says of the structure is taken.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import case_words as trade
import plan_case_words as table
from case_pieces import METHODS, TOOLS, adapt_case
from case_reading import read_text
from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.finding import Where
from refettle.domain.piece import Look, OldLayer, Piece, Surface
from refettle.domain.workshop import Workshop
from refettle.planning.colours import colour_depth

GIVEN = ("situation", "item", "workshop", "surfaces")
"""All that the adapter may see of a piece."""

Raw = Mapping[str, object]


@dataclass(frozen=True, slots=True, kw_only=True)
class Adapted:
    """
    A piece in our words.

    Attributes
    ----------
    piece, workshop
        What is planned.
    surface_of
        Name of a surface in the piece → id of the surface in the file.
    asked_of
        Name of a surface in the piece → kind of look asked for.
    unread
        Words that no table knows.
    """

    piece: Piece
    workshop: Workshop
    surface_of: Mapping[str, str]
    asked_of: Mapping[str, str]
    unread: tuple[str, ...] = ()


def given_part(raw: Raw) -> dict[str, object]:
    """
    Return the part of a piece that a plan may see.

    Parameters
    ----------
    raw
        Whole piece of the file.

    Returns
    -------
    dict[str, object]
        Situation, item, workshop and surfaces only.
    """
    return {key: raw[key] for key in GIVEN if key in raw}


def adapt_piece(given: Raw) -> Adapted:
    """
    Return a piece in our words.

    Parameters
    ----------
    given
        Situation, item, workshop and surfaces; nothing else.

    Returns
    -------
    Adapted
        Piece, workshop, and which surface is which.

    Raises
    ------
    ValueError
        If there is anything else, or a part is missing.
    """
    if set(given) != set(GIVEN):
        odd = ", ".join(sorted(set(given) ^ set(GIVEN)))
        message = f"the adapter takes {', '.join(GIVEN)} and nothing else; look at: {odd}"
        raise ValueError(message)
    item, place = _mapping(given["item"]), _mapping(given["workshop"])
    unread: list[str] = []
    surfaces: list[Surface] = []
    surface_of: dict[str, str] = {}
    years: tuple[int | None, int | None] = (None, None)
    for raw in _sequence(given["surfaces"]):
        made, years, words = _surfaces(item, _mapping(raw))
        unread += words
        for surface in made:
            surface_of[surface.name] = str(_mapping(raw)["id"])
            surfaces.append(surface)
    surfaces = _structure(str(given["situation"]), surfaces)
    use = str(item.get("use", ""))
    asked = {s.name: s.look.kind for s in surfaces if s.look is not None}
    demands = frozenset(map(str, _sequence(place.get("constraints"))))
    unread += [f"constraint: {word}" for word in sorted(demands - set(table.CONSTRAINTS))]
    deadline = place.get("deadline_h")
    piece = Piece(
        name=str(item.get("piece", "piece")),
        form="list",
        size_mm=_size_mm(item),
        year_from=years[0],
        year_to=years[1],
        surfaces=tuple(surfaces),
        child=bool(re.search(r"child|kid|toddler|baby|infant|nursery", f"{use} {item.get('piece', '')}")),
        constraints=frozenset(table.CONSTRAINTS[word] for word in demands if word in table.CONSTRAINTS),
        deadline_h=None if deadline is None else float(str(deadline)),
    )
    return Adapted(
        piece=piece, workshop=_workshop(place), surface_of=surface_of, asked_of=asked, unread=tuple(unread)
    )


def _mapping(value: object) -> Raw:
    """Return a mapping, empty where there is none."""
    return value if isinstance(value, Mapping) else {}


def _sequence(value: object) -> Sequence[object]:
    """Return a list; one word stands for a list of one."""
    if value is None:
        return ()
    return value if isinstance(value, Sequence) and not isinstance(value, str) else (value,)


def _workshop(place: Raw) -> Workshop:
    """Return the workshop: every hand tool and a random-orbit sander, a gun where it says so."""
    temp, rh = place.get("temperature_c"), place.get("rh_percent")
    air = Air(
        temp_c=STANDARD_AIR.temp_c if temp is None else float(str(temp)),
        rh=STANDARD_AIR.rh if rh is None else float(str(rh)) / 100.0,
        air_m_s=STANDARD_AIR.air_m_s,
        known=temp is not None or rh is not None,
    )
    methods = METHODS if place.get("spray_gun") else METHODS - {"spray"}
    ventilation = str(place.get("ventilation") or "good")
    return Workshop(
        air_likely=air, air_safe=air, tools=TOOLS, methods=frozenset(methods), ventilation=ventilation
    )


def _surfaces(item: Raw, raw: Raw) -> tuple[list[Surface], tuple[int | None, int | None], list[str]]:
    """Return the surface, one more for each further kind of wood, the years of the piece, and what is unread."""
    finish, looked = str(raw.get("existing_finish")), str(raw.get("wanted_look"))
    case = {
        "item": {
            **{key: item.get(key) for key in ("piece", "status", "age")},
            **{key: raw.get(key) for key in ("part", "substrate", "build", "geometry", "condition")},
            "existing_finish": "none" if finish in table.OLD_FINISHES else finish,
        },
        "wanted_look": looked if looked in trade.LOOKS else "natural_clear",
        "climate": {},
        "steps": [],
    }
    read = adapt_case(case)
    unread = [f"{raw['id']}/{text}" for text in read.unread]
    if looked not in trade.LOOKS and looked not in table.LOOKS:
        unread.append(f"{raw['id']}/wanted_look: {looked}")
    piece = read.piece
    name = str(raw["id"])
    part = str(raw.get("part", "")).replace("/", " and ").replace(".", " ")
    if part and part != name:
        name = f"{name}, {part}"
    area = _area_m2(item, raw)
    made = []
    for number, surface in enumerate(piece.surfaces, start=1):
        layers = _layers(surface, raw)
        on_bare = table.ON_BARE.get(finish)
        soil = dict(surface.contamination)
        if on_bare is not None:
            soil.setdefault(*on_bare)
        if finish in table.OLD_FINISHES and layers and item.get("status") == "second_hand":
            for contaminant, chance in trade.SECOND_HAND_PRIOR:
                soil.setdefault(contaminant, chance)
        made.append(
            replace(
                surface,
                name=name if number == 1 else f"{name} {number}",
                part=part,
                area_m2=area if number == 1 else 0.1 * area,
                veneer_um=_veneer_um(surface, raw),
                layers=layers,
                contamination=tuple(sorted(soil.items())),
                old_stain=_causes(surface, raw),
                damage=_damage(surface, raw, bare=not layers),
                tested=table.TESTED.get(str(raw.get("finish_identified")), ()),
                look=_look(raw, surface.look),
                orientation=_lies(part, surface.orientation),
                use=_use(item, part, surface),
                value="fine" if item.get("value") == "antique_fine" else surface.value,
                keep_reason="original finish of a fine old piece"
                if item.get("value") == "antique_fine"
                else "",
                where=Where(file="piece"),
            )
        )
    return made, (piece.year_from, piece.year_to), unread


def _layers(surface: Surface, raw: Raw) -> tuple[OldLayer, ...]:
    """Return the old finish; its name is only likely where nobody tested it."""
    finish = str(raw.get("existing_finish"))
    layers = surface.layers
    if finish in table.OLD_FINISHES:
        layers = tuple(
            OldLayer(kind=kind, guesses=_guesses(text)) for kind, text in table.OLD_FINISHES[finish]
        )
    if finish == "paint_layers_unknown":
        layers = tuple(replace(layer, coats=max(1, layer.coats // len(layers))) for layer in layers)
    if str(raw.get("finish_identified")) != "no" or not layers or not layers[-1].guesses:
        return layers
    top = layers[-1]
    named = dict(top.guesses)
    others = [cls for cls in table.UNSURE.get(top.kind, ()) if cls not in named]
    if not others:
        return layers
    rest = (1.0 - table.NAMED_SHARE) / len(others)
    guesses = (
        *((cls, share * table.NAMED_SHARE) for cls, share in top.guesses), *((cls, rest) for cls in others),
    )  # fmt: skip
    return (*layers[:-1], replace(top, guesses=guesses))


def _guesses(text: str) -> tuple[tuple[str, float], ...]:
    """Return classes with weights."""
    parts = text.split()
    return tuple((cls, float(share)) for cls, share in zip(parts[::2], parts[1::2], strict=True))


def _tags(raw: Raw) -> list[str]:
    """Return what the condition words mean beyond the trade cases."""
    words = [str(word) for word in _sequence(raw.get("condition"))]
    return [tag for word in words for tag in sorted(table.CONDITIONS.get(word, frozenset()))]


def _causes(surface: Surface, raw: Raw) -> tuple[tuple[str, int], ...]:
    """Return the causes in the wood."""
    causes = dict(surface.old_stain)
    for tag in _tags(raw):
        kind, _, rest = tag.partition(":")
        name, _, percent = rest.partition(":")
        if kind == "in":
            causes[name] = max(int(percent), causes.get(name, 0))
    return tuple(sorted(causes.items()))


def _damage(surface: Surface, raw: Raw, *, bare: bool) -> tuple[str, ...]:
    """Return the damage."""
    found = [tag.partition(":")[2] for tag in _tags(raw) if tag.startswith("damage:")]
    if bare and table.DARKENED & set(map(str, _sequence(raw.get("condition")))):
        found.append("darkened-wood")
    return tuple(dict.fromkeys((*surface.damage, *found)))


def _structure(story: str, surfaces: Sequence[Surface]) -> list[Surface]:
    """Return the surfaces with what the story says of the structure, put on the first that it can be of."""
    made = list(surfaces)
    for pattern, damage in table.STRUCTURE:
        if not re.search(pattern, story.lower()) or any(damage in surface.damage for surface in made):
            continue
        fits = [
            number
            for number, surface in enumerate(made)
            if (damage != "lifted-veneer" or surface.veneer_um > 0)
            and (damage != "worn-runner" or "drawer" in f"{surface.name} {surface.part}")
        ]
        if fits:
            made[fits[0]] = replace(made[fits[0]], damage=(*made[fits[0]].damage, damage))
    return made


def _veneer_um(surface: Surface, raw: Raw) -> int:
    """Return the face veneer [µm]; the stated one wins."""
    stated = raw.get("veneer_mm")
    return surface.veneer_um if stated is None else round(1000 * float(str(stated)))


def _look(raw: Raw, read: Look | None) -> Look | None:
    """Return the look wanted, its darkness from the colour word where that is known."""
    wanted = str(raw.get("wanted_look"))
    colour = str(raw.get("wanted_colour") or "")
    kind, own, depth = table.LOOKS.get(wanted) or trade.LOOKS.get(wanted, ("", "", None))
    if not kind:
        return None
    if kind == "opaque" and read is not None:
        depth = read.depth
    known = colour_depth(colour) if colour else None
    sheen = table.SHEENS.get(str(raw.get("wanted_sheen") or "").replace(" ", "_"), "")
    if kind == "keep":
        return Look(kind=kind)
    if wanted == "limed_clear":
        pores = table.OPEN_PORED & set(map(str, _sequence(raw.get("substrate"))))
        return Look(kind="limed" if pores else "whitewashed", sheen=sheen)
    return Look(kind=kind, colour=colour or own, depth=depth if known is None else known, sheen=sheen)


def _use(item: Raw, part: str, surface: Surface) -> str:
    """Return the use, the harder of what piece and part say and what the piece is used for; fronts are no insides."""
    read = surface.use
    if read in {"drawer", "storage"}:
        if surface.orientation == "inside" or (read == "drawer" and "front" not in part):
            return read
        read = "everyday"
    ranks = ("display", "everyday", "table", "wet", "kitchen", "child")
    tags = read_text(str(item.get("use", "")), trade.USES).tags
    return max((read, *(use for use in ("wet", "kitchen", "table") if use in tags)), key=ranks.index)


def _lies(part: str, read: str) -> str:
    """Return how a surface lies; one of many parts stands upright for the most."""
    words = set(re.findall(r"[a-z]+", part.lower()))
    return "upright" if read == "up" and words & table.UPRIGHT_PARTS else read


def _size_mm(item: Raw) -> tuple[float, float, float] | None:
    """Return width, depth and height [mm]."""
    size = [10.0 * float(str(value)) for value in _sequence(item.get("size_cm"))]
    return (size[0], size[1], size[2]) if len(size) == 3 else None


_COUNTS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "pair": 2}


def _area_m2(item: Raw, raw: Raw) -> float:
    """Return a rough area from the outer size [m²]: tops, slender parts, insides, all round (judgement)."""
    size = _size_mm(item)
    if size is None:
        return 1.0
    width, depth, height = (value / 1000.0 for value in size)
    words = set(re.findall(r"[a-z]+", str(raw.get("part", "")).lower()))
    geometry = set(map(str, _sequence(raw.get("geometry"))))
    round_ = 2.0 * height * (width + depth) + width * depth
    if words and words <= {"top", "tabletop", "seat", "seats", "lid", "tops", "worktop", "table"}:
        area = width * depth
    elif geometry and geometry <= {
        "slender",
        "turned",
        "edges",
        "slats",
        "moulding",
        "carving",
        "open_pores",
    }:
        area = 0.35 * round_
    elif "inside_carcass" in geometry:
        area = 0.8 * round_
    else:
        area = round_
    pieces = re.findall(r"[a-z]+", str(item.get("piece", "")).lower())
    return round(min(6.0, max(0.05, area * max((_COUNTS.get(word, 1) for word in pieces), default=1))), 3)
