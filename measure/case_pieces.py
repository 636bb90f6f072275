"""
How a trade case becomes a piece with one surface, an air and the sequence of the case.

Only item, wanted look, climate and steps come in here: anything else is refused, so that no outcome can
leak into what is judged.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import case_words as table
from case_reading import read_text
from case_steps import Notes, climate_air, map_steps
from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.finding import Where
from refettle.domain.piece import Look, OldLayer, Own, Piece, Surface, Zone
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop

GIVEN = ("item", "wanted_look", "climate", "steps")
"""All that the adapter may see of a case."""

ITEM_KEYS = frozenset(
    {"piece", "part", "substrate", "build", "status", "age", "existing_finish", "geometry", "condition"}
)
BEFORE = frozenset({"did", "expose", "burnish", "swirls"})
"""Kinds of condition tags that speak of what was before the first step."""

TOOLS = frozenset(
    {
        "hand-block", "random-orbit", "foam-pad", "synthetic-pad", "steel-wool", "sanding-stick",
        "card-scraper", "pick", "brass-brush",
    }
)  # fmt: skip
METHODS = frozenset({"brush", "wipe", "pad", "roller", "aerosol", "spray"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Adapted:
    """
    A case in our words.

    Attributes
    ----------
    piece
        Piece whose `intend` is the sequence of the case.
    workshop
        Workshop with the air of the case.
    unread
        Words that no table knows.
    unmapped
        Values that are not understood; any of them makes the case count as missed or as a false alarm.
    """

    piece: Piece
    workshop: Workshop
    unread: tuple[str, ...] = ()
    unmapped: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Condition:
    """What the condition words add up to: rows of kind, name and amount."""

    rows: tuple[tuple[str, str, str], ...]

    def names(self, kind: str) -> tuple[str, ...]:
        """Return the names of one kind, each once."""
        return tuple(dict.fromkeys(name for row, name, _ in self.rows if row == kind))

    def amounts(self, kind: str) -> dict[str, float]:
        """Return the greatest amount per name of one kind."""
        found: dict[str, float] = {}
        for row, name, amount in self.rows:
            if row == kind:
                found[name] = max(found.get(name, 0.0), float(amount))
        return found

    def last(self, kind: str, otherwise: str) -> str:
        """Return the last name of one kind."""
        return (self.names(kind) or (otherwise,))[-1]

    def most(self, kind: str) -> int:
        """Return the greatest whole number of one kind, 0 if there is none."""
        return max((int(name) for name in self.names(kind)), default=0)

    @property
    def plastic(self) -> bool:
        """Return whether foreign plastic lies on it, or will in use."""
        return bool(self.names("contact"))


def given_part(case: Mapping[str, object]) -> dict[str, object]:
    """
    Return the part of a case that a forecast may see.

    Parameters
    ----------
    case
        Whole case.

    Returns
    -------
    dict[str, object]
        Item, wanted look, climate and steps only.
    """
    return {key: case[key] for key in GIVEN if key in case}


def adapt_case(given: Mapping[str, object]) -> Adapted:
    """
    Return a case in our words.

    Parameters
    ----------
    given
        Item, wanted look, climate and steps; nothing else.

    Returns
    -------
    Adapted
        Piece, workshop and what could not be read.

    Raises
    ------
    ValueError
        If the case still holds anything else, or lacks one of the four.
    """
    if set(given) != set(GIVEN):
        odd = ", ".join(sorted(set(given) ^ set(GIVEN)))
        message = f"the adapter takes {', '.join(GIVEN)} and nothing else; look at: {odd}"
        raise ValueError(message)
    notes = Notes()
    item, climate, raws = _mapping(given["item"]), _mapping(given["climate"]), _sequence(given["steps"])
    for key in item:
        if key not in ITEM_KEYS:
            notes.unknown("item", key)
    condition = _read_condition(item, notes)
    layers, old_stain = _old_finish(item, condition, notes)
    air = _climate(climate, notes)
    steps = map_steps([_mapping(raw) for raw in raws], notes, air, film_on=bool(layers))
    steps = _around(steps, condition, air, filmed=bool(layers))
    surfaces = _surfaces(item, given["wanted_look"], condition, layers, old_stain, notes)
    if item.get("status") == "second_hand" and layers and not condition.names("clean"):
        surfaces = tuple(_with(surface, table.SECOND_HAND_PRIOR) for surface in surfaces)
    if notes.polished:
        surfaces = tuple(_with(surface, (("polish", 0.9), ("silicone", 0.4))) for surface in surfaces)
    years = _years(item.get("age"), notes)
    piece = Piece(
        name="case",
        form="list",
        year_from=years[0] if years else None,
        year_to=years[1] if years else None,
        surfaces=surfaces,
        intend=(Own(surface="", steps=steps, where=tuple(Where(file="case") for _ in steps)),),
    )
    workshop = Workshop(name="case", air_likely=air, air_safe=air, tools=TOOLS, methods=METHODS)
    unread, unmapped = dict.fromkeys(notes.unread), dict.fromkeys(notes.unmapped)
    return Adapted(piece=piece, workshop=workshop, unread=tuple(unread), unmapped=tuple(unmapped))


def _mapping(value: object) -> Mapping[str, object]:
    """Return a mapping, empty where the case has none."""
    return value if isinstance(value, Mapping) else {}


def _sequence(value: object) -> Sequence[object]:
    """Return a list; one word stands for a list of one."""
    if value is None:
        return ()
    return value if isinstance(value, Sequence) and not isinstance(value, str) else (value,)


def _read_condition(item: Mapping[str, object], notes: Notes) -> _Condition:
    """Add up what the condition words say."""
    rows = []
    for word in _sequence(item.get("condition")):
        for tag in notes.text("item/condition", word, table.CONDITIONS).tags:
            kind, _, rest = tag.partition(":")
            name, _, amount = rest.partition(":")
            rows.append((kind, name, amount))
    return _Condition(rows=tuple(rows))


def _old_finish(
    item: Mapping[str, object], condition: _Condition, notes: Notes
) -> tuple[tuple[OldLayer, ...], dict[str, int]]:
    """Return the old layers and what their name tells of the wood below."""
    word = str(item.get("existing_finish"))
    if word not in table.OLD_FINISHES and word not in table.CLASSES:
        tags = notes.text("item/existing_finish", word, table.FINISH_WORDS).tags
        word = tags[0] if tags else "unknown"
    if word in table.OLD_FINISHES:
        rows = table.OLD_FINISHES[word]
    else:
        cls, verb = table.CLASSES[word]
        rows = (("paint" if verb in {"paint", "prime"} else "clear", f"{cls} 1"),)
    layers = []
    for kind, guesses in rows:
        parts = guesses.split()
        pairs = tuple((cls, float(weight)) for cls, weight in zip(parts[::2], parts[1::2], strict=True))
        layers.append(
            OldLayer(guesses=pairs, kind=kind, coats=condition.most("coats") or (2 if kind == "paint" else 1))
        )
    stain = {cause: round(percent) for cause, percent in condition.amounts("in").items()}
    if word in table.OLD_STAINS:
        cause, percent = table.OLD_STAINS[word]
        stain[cause] = max(stain.get(cause, 0), percent)
    return tuple(layers), stain


def _climate(climate: Mapping[str, object], notes: Notes) -> Air:
    """Return the air of a case; words fill only what is left open."""
    note = notes.text("climate/note", climate.get("note"), table.AIR_WORDS)
    temp, rh = climate.get("temperature_c"), climate.get("rh_percent")
    worded = climate_air(note.tags, STANDARD_AIR)
    return replace(
        worded,
        temp_c=worded.temp_c if temp is None else float(str(temp)),
        rh=worded.rh if rh is None else float(str(rh)) / 100.0,
        known=worded.known or temp is not None or rh is not None,
    )


def _surfaces(
    item: Mapping[str, object],
    look: object,
    condition: _Condition,
    layers: tuple[OldLayer, ...],
    old_stain: dict[str, int],
    notes: Notes,
) -> tuple[Surface, ...]:
    """Return the surface of the case, and a small one for each wood of another kind."""
    build, veneer_um = table.BUILDS.get(str(item.get("build")), ("", 0))
    if not build:
        notes.unknown("item/build", item.get("build"))
        build = "solid"
    geometry = [str(word) for word in _sequence(item.get("geometry"))]
    woods = _woods(item, notes) or ["hardwood"]
    core = bool(condition.names("wood")) or (build == "mdf" and bool({"edges", "moulding"} & set(geometry)))
    if core:
        woods[0] = table.CORE_OF_BUILD.get(build, woods[0])
    relief, zones, orientation = _shape(geometry, condition, notes)
    words = f"{item.get('piece', '')} {item.get('part', '')}".replace("inside corner", "corner")
    first = Surface(
        name="face",
        part="face",
        area_m2=1.0,
        relief=relief,
        orientation=_orientation(str(item.get("part", "")), orientation),
        zones=zones,
        wood=woods[0],
        build=build,
        veneer_um=min(veneer_um, 400) if condition.names("thin") else veneer_um,
        layers=layers,
        old_stain=_causes(woods[0], woods, old_stain),
        soundness=condition.last("sound", "sound") if layers else "sound",
        worn_pct=condition.most("worn") if layers else 0,
        contamination=tuple(sorted(_on_top(item, condition, filmed=bool(layers)).items())),
        damage=condition.names("damage"),
        look=_look(look, condition, notes),
        use=_use(words, geometry),
        value=condition.last("value", "ordinary"),
        lead_chance=max(map(float, condition.names("lead")), default=None),
        where=Where(file="case"),
    )
    kinds = {table.WOOD_KINDS.get(first.wood, "plain")}
    more = []
    for number, wood in enumerate(woods[1:], start=2):
        kind = table.WOOD_KINDS.get(wood, "plain")
        if kind not in kinds:
            kinds.add(kind)
            more.append(
                replace(
                    first,
                    name=f"face {number}",
                    area_m2=0.1,
                    wood=wood,
                    old_stain=_causes(wood, woods, old_stain),
                )
            )
    return (first, *more)


def _causes(wood: str, woods: Sequence[str], causes: Mapping[str, int]) -> tuple[tuple[str, int], ...]:
    """Return the causes in one wood; oil and resin belong to the woods that have them, if there are any."""
    kinds = [table.WOOD_KINDS.get(other, "plain") for other in woods]
    own = table.WOOD_KINDS.get(wood, "plain")
    elsewhere = {
        cause for cause, kind in (("wood-oils", "oily"), ("knots", "resin")) if kind in kinds and own != kind
    }
    return tuple(sorted((cause, percent) for cause, percent in causes.items() if cause not in elsewhere))


def _on_top(item: Mapping[str, object], condition: _Condition, *, filmed: bool) -> dict[str, float]:
    """Return what lies on the surface; plastic softens only a film that is there."""
    found = condition.amounts("on")
    if item.get("existing_finish") == "none_after_stripping":
        found.setdefault("remover-residue", 0.2)
    if condition.plastic and filmed:
        found["plasticiser"] = 0.9
    return found


def _with(surface: Surface, usual: Sequence[tuple[str, float]]) -> Surface:
    """Return the surface with what usually lies on it, where the case says nothing of it."""
    found = dict(surface.contamination)
    for contaminant, chance in usual:
        found.setdefault(contaminant, chance)
    return replace(surface, contamination=tuple(sorted(found.items())))


def _woods(item: Mapping[str, object], notes: Notes) -> list[str]:
    """Return the wood ids of a case."""
    woods = []
    for word in _sequence(item.get("substrate")):
        if str(word) in table.WOODS:
            woods.append(table.WOODS[str(word)])
        else:
            notes.unknown("item/substrate", word)
    return woods


def _shape(geometry: Sequence[str], condition: _Condition, notes: Notes) -> tuple[str, tuple[Zone, ...], str]:
    """Return relief, zones and orientation."""
    rows = []
    for word in geometry:
        if word in table.GEOMETRY:
            rows.append(table.GEOMETRY[word])
        else:
            notes.unknown("item/geometry", word)
    rows = rows or [table.GEOMETRY["flat"]]
    reliefs = {row[0] for row in rows} | set(condition.names("relief"))
    relief = next((name for name in table.RELIEF_ORDER if name in reliefs), "flat")
    shares = [round(sum(row[1][column] for row in rows) / len(rows) / 100.0, 3) for column in range(3)]
    shares[max(range(3), key=shares.__getitem__)] += 1.0 - sum(shares)
    names = ("flat", "edge", "recess")
    zones = tuple(
        Zone(name=name, share=share) for name, share in zip(names, shares, strict=True) if share > 0
    )
    orientation = next((row[2] for row in rows if row[2] == "inside"), "")
    return relief, zones, orientation or next((row[2] for row in rows if row[2]), "")


def _orientation(part: str, shaped: str) -> str:
    """Return how the face lies, from the part's name, else from its shape."""
    words = set(re.findall(r"[a-z]+", part.lower().replace("inside corner", "corner")))
    if shaped == "inside" or (words & table.PARTS_INSIDE and "outside" not in words):
        return "inside"
    if words & table.PARTS_UP:
        return "up"
    if words & table.PARTS_DOWN:
        return "down"
    return shaped or "upright"


def _look(word: object, condition: _Condition, notes: Notes) -> Look | None:
    """Return the look wanted."""
    if str(word) not in table.LOOKS:
        notes.unknown("wanted_look", word)
        return None
    kind, colour, depth = table.LOOKS[str(word)]
    if kind == "opaque" and condition.names("look"):
        depth = 90 if condition.last("look", "") == "dark" else 10
    return Look(kind=kind, colour=colour, depth=depth)


def _use(words: str, geometry: Sequence[str]) -> str:
    """Return what the piece is used for; the hardest use named wins."""
    tags = read_text(words, table.USES).tags
    for use in ("child", "kitchen", "wet", "table", "drawer", "storage", "display"):
        if use in tags:
            return use
    return "storage" if "inside_carcass" in geometry else "everyday"


def _years(age: object, notes: Notes) -> tuple[int, int] | None:
    """Return the years between which the piece was made, or None."""
    text = str(age or "").lower().replace("_", " ")
    century = re.search(r"(\d\d)(?:st|nd|rd|th)? century", text)
    if century:
        first = (int(century[1]) - 1) * 100
        return first, first + 99
    stated = [(int(year), bool(decade)) for year, decade in re.findall(r"\b(1[5-9]\d\d|20\d\d)(s)?", text)]
    if stated:
        slack = (
            5 if re.search(r"about|around|circa|c\.|ca\b|late|early|mid", text) and not stated[0][1] else 0
        )
        return stated[0][0] - slack, stated[-1][0] + (9 if stated[-1][1] else slack)
    reading = notes.text("item/age", re.sub(r"\bold\b", "", text), table.AGES)
    ago = reading.lasts_h or reading.waited_h
    if ago:
        years = round(ago / 8766)
        return table.CASES_WRITTEN_YEAR - years - years // 5, table.CASES_WRITTEN_YEAR - years + years // 5
    spans = [tag for tag in reading.tags if "-" in tag]
    if not spans:
        return None
    first_year, _, last_year = spans[0].partition("-")
    return int(first_year), int(last_year)


def _around(steps: tuple[Step, ...], condition: _Condition, air: Air, *, filmed: bool) -> tuple[Step, ...]:
    """Return the steps with what was done and met before them, and the use that the condition tells of."""
    told = [f"{kind}:{name}" for kind, name, _ in condition.rows if kind in BEFORE]
    before = [step for tag in dict.fromkeys(told) for step in _done_before(tag, steps, air)]
    marks = list(condition.names("use"))
    if condition.plastic and not filmed:
        marks.append("plastic-cover")
    if not marks:
        return (*before, *steps)
    marks_set = frozenset(marks)
    for at in range(len(steps) - 1, -1, -1):
        if steps[at].verb == "use":
            merged = replace(steps[at], how=steps[at].how | marks_set, what=steps[at].what or marks[0])
            return (*before, *steps[:at], merged, *steps[at + 1 :])
    return (*before, *steps, Step(verb="use", what=marks[0], how=marks_set))


def _done_before(tag: str, steps: tuple[Step, ...], air: Air) -> tuple[Step, ...]:
    """Return the work a condition word tells of, unless the sequence itself holds it."""
    verbs = {step.verb for step in steps}
    coat_at = next((at for at, step in enumerate(steps) if step.is_coat), len(steps))
    rubbed = any(step.verb in {"sand", "scuff"} for step in steps[:coat_at])
    cleaned = "clean" in {step.verb for step in steps[:coat_at]}
    match tag:
        case "did:clean" if not cleaned:
            return (Step(verb="clean", what="soap-water", wait_after_h=24.0),)
        case "did:degrease" if not cleaned:
            return (Step(verb="clean", what="alkaline-degreaser", wait_after_h=24.0),)
        case "did:spirits" if not cleaned:
            return (Step(verb="clean", what="mineral-spirits", wait_after_h=24.0),)
        case "did:scuff" if not rubbed:
            return (Step(verb="scuff", method="foam-pad", grit=220),)
        case "did:sand" if not rubbed:
            return (Step(verb="sand", method="hand-block", grit=150),)
        case "did:prime" if "prime" not in verbs:
            return (Step(verb="prime", what="waterborne-primer", method="brush", wait_after_h=48.0),)
        case "did:seal" if "seal" not in verbs:
            return (Step(verb="seal", what="shellac-unstated", method="brush", wait_after_h=48.0),)
        case "did:wet":
            return (Step(verb="rinse", what="water-rinse", wait_after_h=24.0),)
        case "burnish:":
            return (Step(verb="sand", method="hand-block", grit=400),)
        case "swirls:":
            return (Step(verb="sand", method="random-orbit", grit=80, how=frozenset({"machine"})),)
        case "expose:damp":
            damp = replace(air, rh=max(air.rh, 0.85), known=True)
            return (Step(verb="expose", what="damp", how=frozenset({"damp"}), wait_after_h=0.0, air=damp),)
        case _:
            return ()
