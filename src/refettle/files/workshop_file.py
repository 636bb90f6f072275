"""The workshop file: tools, air, time, shelf and prices."""

from dataclasses import dataclass, field, replace
from typing import Final

from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.finding import Finding
from refettle.domain.piece import Assumed
from refettle.domain.workshop import Workshop
from refettle.files.air_entries import AIR_KEYS, read_air
from refettle.files.amounts import Unclear, area_m2, count, money, number, quoted, time_h
from refettle.files.clock_zone import check_zone, hour_lengths, read_zone
from refettle.files.fields import Desk
from refettle.files.hours_checks import check_hours
from refettle.files.hours_entries import read_day, read_free, read_hours, read_not_on
from refettle.files.own_steps import METHODS
from refettle.files.stock import read_stock
from refettle.files.yaml_tree import Entry, Tree, plain, read_tree
from refettle.knowledge.knowledge import Knowledge

VENTILATION: Final = ("good", "poor", "outdoors")
WORKSHOP_KEYS: Final = (
    "workshop", "currency", "worth of an hour", "worth of a day", "air", "tools", "methods", "ventilation",
    "clamps", "evenings per week", "hours per evening", "stock", "prices", "begins", "time zone", "free", "not on",
    "spraying", "drying places", "air by the hour", "planning air", "journal", "pieces", "invented",
)  # fmt: skip
WORKSHOP_AIR_KEYS: Final = ("likely", "safe")
USUAL_TOOLS: Final = (
    "hand-block",
    "foam-pad",
    "synthetic-pad",
    "sanding-stick",
    "card-scraper",
    "pick",
    "brass-brush",
)
COOLER_C: Final = 4.0
DAMPER_RH: Final = 0.10
_DAMPEST_RH: Final = 0.98


@dataclass(slots=True, kw_only=True)
class _Draft:
    """A workshop that is being read."""

    workshop: Workshop = field(default_factory=Workshop)
    said: dict[str, int] = field(default_factory=dict)
    assumed: list[Assumed] = field(default_factory=list)


def read_workshop(
    text: str, file_name: str, knowledge: Knowledge
) -> tuple[Workshop | None, tuple[Finding, ...]]:
    """
    Return the workshop that a file describes.

    Parameters
    ----------
    text
        The file.
    file_name
        Its name, for findings.
    knowledge
        What is known.

    Returns
    -------
    tuple[Workshop | None, tuple[Finding, ...]]
        The workshop, None where there is an error; and all findings in the order of the file.
    """
    root, findings = read_tree(text, file_name)
    if root is None:
        return None, findings
    desk = Desk(file=file_name, knowledge=knowledge, findings=list(findings))
    if {plain(entry.key) for entry in root.entries} & {"piece", "form"}:
        what, do = (
            "this is a piece file, and a workshop is asked for",
            "name a workshop file after --workshop",
        )
        desk.say("no-workshop", root.line, "", what, do)
        return None, tuple(desk.findings)
    draft = _Draft()
    for entry in root.entries:
        _read_entry(desk, draft, entry)
    check_hours(desk, draft.workshop, draft.said)
    lengths = hour_lengths(draft.workshop.time_zone, draft.workshop.begins)
    draft.workshop = replace(draft.workshop, hour_lengths=lengths)
    check_zone(desk, draft.workshop, draft.said.get("time zone", 0))
    _assume(desk, draft)
    said = tuple(sorted(dict.fromkeys(desk.findings), key=lambda finding: finding.where.line))
    workshop = replace(draft.workshop, assumed=tuple(draft.assumed))
    return (None if any(finding.level == "error" for finding in said) else workshop), said


def _read_entry(desk: Desk, draft: _Draft, entry: Entry) -> None:
    """Read one outermost entry."""
    key = plain(entry.key)
    draft.said[key] = entry.line
    shop = draft.workshop
    match key:
        case "workshop":
            draft.workshop = replace(shop, name=desk.text(entry.value, key) or shop.name)
        case "currency":
            draft.workshop = replace(shop, currency=desk.text(entry.value, key) or shop.currency)
        case (
            "planning air"
            | "begins"
            | "time zone"
            | "free"
            | "not on"
            | "spraying"
            | "drying places"
            | "air by the hour"
        ):
            _read_days(desk, draft, entry, key)
        case "journal" | "pieces":
            _read_paths(desk, draft, entry, key)
        case "ventilation":
            said = desk.choice(entry.value, key, VENTILATION, "ventilation")
            draft.workshop = replace(shop, ventilation=said or shop.ventilation)
        case "invented":
            draft.workshop = replace(shop, invented=bool(desk.yes(entry.value, key)))
        case "air":
            _read_airs(desk, draft, entry.value)
        case "tools":
            ids = (desk.word(item, key, "tool") for item in desk.items(entry.value))
            draft.workshop = replace(shop, tools=frozenset(id_ for id_ in ids if id_))
        case "methods":
            words = (desk.choice(item, key, METHODS, "way to lay a coat") for item in desk.items(entry.value))
            draft.workshop = replace(shop, methods=frozenset(word for word in words if word))
        case "stock":
            draft.workshop = replace(shop, products=read_stock(desk, entry.value))
        case "prices":
            draft.workshop = replace(shop, prices=_read_prices(desk, entry.value))
        case _:
            _read_number(desk, draft, entry, key)


def _read_days(desk: Desk, draft: _Draft, entry: Entry, key: str) -> None:
    """Read when one is free, and the air of the hours."""
    shop = draft.workshop
    match key:
        case "begins":
            draft.workshop = replace(shop, begins=read_day(desk, entry.value, key))
        case "time zone":
            draft.workshop = replace(shop, time_zone=read_zone(desk, entry.value, key))
        case "free":
            draft.workshop = replace(shop, free=read_free(desk, entry.value, key))
        case "spraying":
            draft.workshop = replace(shop, spraying=read_free(desk, entry.value, key))
        case "planning air":
            side = desk.choice(entry.value, key, WORKSHOP_AIR_KEYS, "side of the air")
            draft.workshop = replace(shop, plan_safe=side == "safe")
        case "drying places":
            draft.workshop = replace(shop, places_m2=desk.amount(entry.value, key, area_m2))
        case "not on":
            draft.workshop = replace(shop, not_on=read_not_on(desk, entry.value))
        case _:
            draft.workshop = replace(shop, hours_from=read_hours(desk, entry.value))


def _read_paths(desk: Desk, draft: _Draft, entry: Entry, key: str) -> None:
    """Read paths of other files: the journal, and the pieces that stand in the workshop."""
    if key == "journal":
        draft.workshop = replace(draft.workshop, journal=desk.text(entry.value, key) or "")
        return
    paths = (desk.text(item, key) for item in desk.items(entry.value))
    draft.workshop = replace(draft.workshop, pieces=tuple(path for path in paths if path))


def _read_number(desk: Desk, draft: _Draft, entry: Entry, key: str) -> None:
    """Read the worth of time and the free hours."""
    shop = draft.workshop
    match key:
        case "worth of an hour":
            worth = desk.amount(entry.value, key, money)
            draft.workshop = replace(shop, hour_worth=shop.hour_worth if worth is None else worth)
        case "worth of a day":
            worth = desk.amount(entry.value, key, money)
            draft.workshop = replace(shop, day_worth=shop.day_worth if worth is None else worth)
        case "clamps":
            clamps = desk.amount(entry.value, key, count)
            draft.workshop = replace(shop, clamps=shop.clamps if clamps is None else clamps)
        case "evenings per week":
            evenings = desk.amount(entry.value, key, number)
            if evenings is not None and not 0 < evenings <= 7:
                said = quoted(f"{evenings:g}")
                desk.say(
                    "unclear-amount",
                    entry.line,
                    key,
                    f"{said} is no number of evenings",
                    "write more than 0, at most 7",
                )
            draft.workshop = replace(
                shop, evenings_per_week=shop.evenings_per_week if evenings is None else evenings
            )
        case "hours per evening":
            hours = desk.amount(entry.value, key, _hours)
            if hours is not None and not 0 < hours <= 24:
                desk.say(
                    "unclear-amount",
                    entry.line,
                    key,
                    f"{hours:g} h is no evening",
                    "write more than 0 h, at most 24 h",
                )
            draft.workshop = replace(
                shop, hours_per_evening=shop.hours_per_evening if hours is None else hours
            )
        case _:
            desk.unknown_key(entry, entry.key, WORKSHOP_KEYS)


def _hours(text: str) -> float | Unclear:
    """Return hours where the entry's name already says so: ``2`` or ``90 min``."""
    value = number(text)
    return time_h(text) if isinstance(value, Unclear) else value


def _read_airs(desk: Desk, draft: _Draft, tree: Tree) -> None:
    """Read the likely and the safe air; one air alone is the likely one."""
    mapping = desk.mapping(tree, "air", '"likely: {temperature: 18 C, humidity: 55 %}"')
    if mapping is None:
        return
    if any(plain(entry.key) in AIR_KEYS for entry in mapping.entries):
        likely, safe = read_air(desk, tree, "air"), None
    else:
        for entry in mapping.entries:
            if plain(entry.key) not in WORKSHOP_AIR_KEYS:
                desk.unknown_key(entry, f"air/{entry.key}", (*WORKSHOP_AIR_KEYS, *AIR_KEYS))
        airs = {
            plain(entry.key): read_air(desk, entry.value, f"air/{entry.key}")
            for entry in mapping.entries
            if plain(entry.key) in WORKSHOP_AIR_KEYS
        }
        likely, safe = airs.get("likely"), airs.get("safe")
    if likely is not None and safe is None:
        safe = _cooler(likely)
        draft.assumed.append(
            Assumed(path="air/safe", value=_air_text(safe), why="not said: a cooler, damper day")
        )
    if likely is None and safe is not None:
        likely = safe
        draft.assumed.append(
            Assumed(path="air/likely", value=_air_text(likely), why="not said: as on the safe side")
        )
    if likely is not None and safe is not None:
        draft.workshop = replace(draft.workshop, air_likely=likely, air_safe=safe)


def _cooler(air: Air) -> Air:
    """Return the air of a cooler, damper day."""
    return replace(air, temp_c=air.temp_c - COOLER_C, rh=round(min(_DAMPEST_RH, air.rh + DAMPER_RH), 9))


def _air_text(air: Air) -> str:
    return f"{air.temp_c:.0f} C, {air.rh * 100:.0f} %"


def _read_prices(desk: Desk, tree: Tree) -> tuple[tuple[str, float], ...]:
    """Read prices per litre."""
    mapping = desk.mapping(tree, "prices", '"shellac: 32" (a litre)')
    if mapping is None:
        return ()
    prices: dict[str, float] = {}
    for entry in mapping.entries:
        path = f"prices/{entry.key}"
        cls = desk.known("film", entry.key, entry.line, path)
        price = desk.amount(entry.value, path, money)
        if cls is None or price is None:
            continue
        if cls in prices:
            desk.say(
                "word-twice",
                entry.line,
                path,
                f"{quoted(entry.key)} is priced a second time",
                "keep one of the two",
            )
        prices.setdefault(cls, price)
    return tuple(sorted(prices.items()))


def _assume(desk: Desk, draft: _Draft) -> None:
    """Note every default."""
    if draft.workshop.plan_safe and "air" not in draft.said:
        draft.workshop = replace(draft.workshop, air_safe=_cooler(STANDARD_AIR))
    shop = draft.workshop
    if "tools" not in draft.said:
        known = tuple(id_ for id_ in USUAL_TOOLS if desk.knowledge.has("tool", id_))
        draft.workshop = replace(shop, tools=frozenset(known))
        names = ", ".join(desk.knowledge.name("tool", id_) for id_ in known)
        draft.assumed.append(Assumed(path="tools", value=names, why="not said: usual hand tools"))
    values = {
        "workshop": shop.name,
        "currency": shop.currency,
        "worth of an hour": f"{shop.hour_worth:g}",
        "worth of a day": f"{shop.day_worth:g}",
        "air": _air_text(STANDARD_AIR),
        "methods": ", ".join(word for word in METHODS if word in shop.methods),
        "ventilation": shop.ventilation,
        "clamps": f"{shop.clamps}",
        "evenings per week": f"{shop.evenings_per_week:g}",
        "hours per evening": f"{shop.hours_per_evening:g} h",
    }
    for key, value in values.items():
        if key not in draft.said:
            draft.assumed.append(Assumed(path=key, value=value, why="not said"))
