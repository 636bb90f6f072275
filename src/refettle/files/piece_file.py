"""
The piece file: what a person writes about a piece becomes a `Piece`, or findings with their lines.

A short file is enough: what is not said is taken as usual and listed under `Piece.assumed`. All
problems are reported at once; a file with an error gives no piece, so that no plan rests on a guess.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Final

from refettle.domain.finding import Finding
from refettle.domain.piece import Assumed, Piece, Surface
from refettle.files import form_entries as forms
from refettle.files.amounts import Unclear, money, money_range, quoted, time_h, years
from refettle.files.defaults import Notes, Spoken, make_surface
from refettle.files.fields import Desk, known_list
from refettle.files.own_entries import picked, read_own
from refettle.files.places import Place, is_exact
from refettle.files.surface_fields import PLACE_KEYS, SURFACE_KEYS, Said, check_sheen, read_surface_entry
from refettle.files.wrong_entries import read_fittings, read_wrong
from refettle.files.yaml_tree import Entry, Mapping, plain, read_tree
from refettle.geometry.zones import zones_of
from refettle.knowledge.knowledge import Knowledge
from refettle.services.foresee import as_done

_OWN: Final = ("intend", "done")
CONSTRAINTS: Final = ("no stripping", "no bare wood", "no upkeep", "no spraying")

PIECE_KEYS: Final = (
    "piece", "form", "era", "child", "paid", "sells", "constraints", "ready in", "invented", "notes",
    "surfaces", "wrong", "fittings", "intend", "done",
)  # fmt: skip


@dataclass(slots=True, kw_only=True)
class _Draft:
    """A piece that is being read."""

    name: str = ""
    form: str = ""
    form_line: int = 0
    form_entries: list[Entry] = field(default_factory=list)
    years: tuple[int, int] | None = None
    era_said: bool = False
    child: bool = False
    invented: bool = False
    paid: float | None = None
    sells: tuple[float, float] | None = None
    constraints: frozenset[str] = frozenset()
    deadline_h: float | None = None
    notes: tuple[str, ...] = ()
    general: Said = field(default_factory=Said)
    surfaces: Entry | None = None
    sequences: dict[str, Entry] = field(default_factory=dict)
    assumed: list[Assumed] = field(default_factory=list)


def read_piece(text: str, file_name: str, knowledge: Knowledge) -> tuple[Piece | None, tuple[Finding, ...]]:
    """
    Return the piece that a file describes.

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
    tuple[Piece | None, tuple[Finding, ...]]
        The piece, None where there is an error; and all findings in the order of the file.
    """
    root, findings = read_tree(text, file_name)
    if root is None:
        return None, findings
    desk = Desk(file=file_name, knowledge=knowledge, findings=list(findings))
    if is_workshop(root):
        what, do = (
            "this is a workshop file, and a piece is asked for",
            "name a piece file; this one after --workshop",
        )
        desk.say("no-piece", root.line, "", what, do)
        return None, tuple(desk.findings)
    draft = _Draft()
    for entry in root.entries:
        _read_entry(desk, draft, entry)
    check_sheen(desk, draft.general)
    _check_needed(desk, root, draft)
    piece = _build_piece(desk, draft)
    said = tuple(sorted(dict.fromkeys(desk.findings), key=lambda finding: finding.where.line))
    return (None if any(finding.level == "error" for finding in said) else piece), said


def is_workshop(root: Mapping) -> bool:
    """Return whether a file describes a workshop, and no piece."""
    keys = {plain(entry.key) for entry in root.entries}
    return "workshop" in keys and not keys & {"piece", "form", "surfaces"}


def _read_entry(desk: Desk, draft: _Draft, entry: Entry) -> None:
    """Read one outermost entry."""
    key = plain(entry.key)
    reader = _READERS.get(key)
    if reader is not None:
        reader(desk, draft, entry)
    elif key in forms.SIZE_KEYS or key in forms.parameter_keys():
        draft.form_entries.append(entry)
    elif not read_surface_entry(desk, entry, key, draft.general):
        desk.unknown_key(
            entry, entry.key, (*PIECE_KEYS, *forms.SIZE_KEYS, *SURFACE_KEYS, *forms.parameter_keys())
        )


def _name(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.name = desk.text(entry.value, "piece") or ""


def _form(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.form_line = entry.line
    draft.form = forms.read_form(desk, entry.value) or ""


def _era(desk: Desk, draft: _Draft, entry: Entry) -> None:
    said = desk.text(entry.value, "era")
    value = None if said is None else years(said)
    if isinstance(value, Unclear):
        desk.say("unclear-amount", entry.value.line, "era", value.what, value.do)
    else:
        draft.years, draft.era_said = value, True


def _child(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.child = bool(desk.yes(entry.value, "child"))


def _invented(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.invented = bool(desk.yes(entry.value, "invented"))


def _paid(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.paid = desk.amount(entry.value, "paid", money)


def _sells(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.sells = desk.amount(entry.value, "sells", money_range)


def _constraints(desk: Desk, draft: _Draft, entry: Entry) -> None:
    said = (desk.choice(item, "constraints", CONSTRAINTS, "constraint") for item in desk.items(entry.value))
    draft.constraints = frozenset(word for word in said if word)


def _ready(desk: Desk, draft: _Draft, entry: Entry) -> None:
    draft.deadline_h = desk.amount(entry.value, "ready in", time_h)


def _notes(desk: Desk, draft: _Draft, entry: Entry) -> None:
    texts = [desk.lines(item, "notes") for item in desk.items(entry.value)]
    draft.notes = tuple(line for lines in texts if lines for line in lines)


def _surfaces(desk: Desk, draft: _Draft, entry: Entry) -> None:
    del desk
    draft.surfaces = entry


def _sequence(desk: Desk, draft: _Draft, entry: Entry) -> None:
    del desk
    draft.sequences[plain(entry.key)] = entry


_READERS: Final[dict[str, Callable[[Desk, _Draft, Entry], None]]] = {
    "piece": _name,
    "form": _form,
    "era": _era,
    "child": _child,
    "paid": _paid,
    "sells": _sells,
    "constraints": _constraints,
    "ready in": _ready,
    "invented": _invented,
    "notes": _notes,
    "surfaces": _surfaces,
    "wrong": _sequence,
    "fittings": _sequence,
    "intend": _sequence,
    "done": _sequence,
}


def _check_needed(desk: Desk, root: Mapping, draft: _Draft) -> None:
    """Say which entries are missing without which there is no piece."""
    keys = {plain(entry.key) for entry in root.entries}
    if "piece" not in keys:
        desk.say("missing", 0, "piece", "the piece has no name", 'add e.g. "piece: Hall table"')
    if "form" not in keys:
        known = known_list(forms.form_names())
        desk.say("missing", 0, "form", "the form is not said", f'add "form:" with {known}')
    if draft.form == forms.FREE_LIST and draft.surfaces is None:
        do = 'add "surfaces:" with e.g. "top: {area: 0.8 m2}"'
        desk.say("missing", draft.form_line, "surfaces", '"form: list" needs its surfaces', do)


def _places_of(
    desk: Desk, draft: _Draft, own: dict[str, list[tuple[str, Said]]]
) -> tuple[tuple[Place, ...], tuple[float, float, float] | None]:
    """Return the surfaces and the size [mm]; none where the form is not known."""
    if draft.form == forms.FREE_LIST:
        return _listed(desk, draft, own), forms.sizes_of_list(desk, draft.form_entries)
    if not draft.form:
        return (), None
    built = forms.build_places(desk, draft.form, draft.form_line, draft.form_entries)
    draft.assumed.extend(built.assumed)
    if built.places:
        _overrides(desk, draft, built.places, own)
    return built.places, built.size_mm


def _build_piece(desk: Desk, draft: _Draft) -> Piece | None:
    """Return the piece as far as it could be read."""
    own: dict[str, list[tuple[str, Said]]] = {}
    places, size_mm = _places_of(desk, draft, own)
    if not places:
        return None
    surfaces = _make_surfaces(desk, draft, places, own)
    sequences = {
        key: read_own(desk, places, draft.sequences[key], draft.assumed)
        for key in _OWN
        if key in draft.sequences
    }
    if not draft.era_said:
        draft.assumed.append(Assumed(path="era", value="unknown", why="not said"))
    low, high = draft.sells or (None, None)
    first, last = draft.years or (None, None)
    piece = Piece(
        name=draft.name,
        form=draft.form,
        size_mm=size_mm,
        year_from=first,
        year_to=last,
        surfaces=surfaces,
        paid=draft.paid,
        sells_low=low,
        sells_high=high,
        child=draft.child,
        invented=draft.invented,
        constraints=draft.constraints,
        deadline_h=draft.deadline_h,
        wrong=read_wrong(desk, draft.sequences.get("wrong"), places, draft.assumed),
        fittings=read_fittings(desk, draft.sequences.get("fittings")),
        intend=sequences.get("intend", ()),
        done=sequences.get("done", ()),
        assumed=tuple(dict.fromkeys(draft.assumed)),
        notes=draft.notes,
    )
    return replace(piece, surfaces=tuple(as_done(piece, surface) for surface in piece.surfaces))


def _make_surfaces(
    desk: Desk, draft: _Draft, places: tuple[Place, ...], own: dict[str, list[tuple[str, Said]]]
) -> tuple[Surface, ...]:
    """Return the surfaces with what was said of each, and gather what was assumed."""
    notes = Notes()
    surfaces: list[Surface] = []
    homeless: list[str] = []
    draft.assumed.extend(draft.general.assumed)
    for place in places:
        said = Said()
        for _, more in sorted(own.get(place.name, ()), key=lambda pair: is_exact(places, pair[0])):
            said = more.over(said)
        draft.assumed.extend(said.assumed)
        surface = make_surface(desk, place, Spoken(general=draft.general, own=said), notes, form=draft.form)
        if surface is None:
            homeless.append(place.name)
        else:
            surfaces.append(surface)
    if homeless and not any(finding.code == "unknown-wood" for finding in desk.findings):
        whose = "the wood is not said" if not surfaces else f"the wood of {known_list(homeless)} is not said"
        do = 'add e.g. "wood: oak"; if you do not know, "hardwood" or "softwood"'
        desk.say("missing", 0, "wood", whose, do)
    draft.assumed.extend(notes.told(places))
    return tuple(surfaces)


def _entries_below(desk: Desk, draft: _Draft) -> tuple[Entry, ...]:
    """Return the entries under ``surfaces``."""
    if draft.surfaces is None:
        return ()
    mapping = desk.mapping(draft.surfaces.value, "surfaces", '"top: {wood: oak}"')
    if mapping is not None and not mapping.entries:
        desk.say(
            "no-value", mapping.line, "surfaces", "no surface stands here", 'write e.g. "top: {area: 0.8 m2}"'
        )
    return () if mapping is None else mapping.entries


def _read_said(desk: Desk, mapping: Mapping, path: str, *, placed: bool) -> Said:
    """Read the entries of one surface or group."""
    said = Said()
    known = (*SURFACE_KEYS, *PLACE_KEYS) if placed else (*SURFACE_KEYS, "relief", "zones", "section")
    for entry in mapping.entries:
        below = f"{path}/{entry.key}"
        if plain(entry.key) in PLACE_KEYS and plain(entry.key) not in known:
            what, do = (
                "the form gives the area and the place of its surfaces",
                'take it out, or write "form: list"',
            )
            desk.say("no-use", entry.line, below, what, do)
        elif plain(entry.key) not in known:
            desk.unknown_key(entry, below, known)
        else:
            read_surface_entry(desk, entry, below, said, placed=True)
    check_sheen(desk, said)
    return said


def _listed(desk: Desk, draft: _Draft, own: dict[str, list[tuple[str, Said]]]) -> tuple[Place, ...]:
    """Return the surfaces of a free list."""
    places: list[Place] = []
    for entry in _entries_below(desk, draft):
        path = f"surfaces/{entry.key}"
        mapping = desk.mapping(entry.value, path, '"area: 0.8 m2"')
        if mapping is None:
            continue
        said = _read_said(desk, mapping, path, placed=True)
        if not any(plain(below.key) == "area" for below in mapping.entries):
            what = f"{quoted(entry.key)} has no area"
            desk.say("missing", entry.line, f"{path}/area", what, 'add e.g. "area: 0.8 m2"')
        place = Place(
            name=entry.key,
            part=said.part or entry.key,
            area_m2=said.area_m2 or 0.0,
            relief=said.relief or "flat",
            orientation=said.orientation or _orientation(draft, entry.key),
            zones=said.zones or zones_of(said.relief or "flat", said.section).zones,
            line=entry.line,
        )
        if said.relief is None:
            draft.assumed.append(Assumed(path=f"{path}/relief", value="flat", why="not said"))
        elif said.zones is None and said.relief != "flat":
            usual = zones_of(said.relief, said.section)
            draft.assumed.append(Assumed(path=f"{path}/zones", value=usual.text(), why=usual.why))
        places.append(place)
        own[entry.key] = [(entry.key, said)]
    return tuple(places)


def _orientation(draft: _Draft, name: str) -> str:
    """Return which way a listed surface most likely faces, and note it."""
    words = plain(name).replace("/", " ").replace(".", " ").split()
    orientation = (
        "up" if {"top", "shelf", "seat"} & set(words) else "inside" if "inside" in words else "upright"
    )
    draft.assumed.append(
        Assumed(
            path=f"surfaces/{name}/orientation", value=orientation, why="not said; from the surface's name"
        )
    )
    return orientation


def _overrides(
    desk: Desk, draft: _Draft, places: tuple[Place, ...], own: dict[str, list[tuple[str, Said]]]
) -> None:
    """Read what is said of single surfaces and groups of a form."""
    for entry in _entries_below(desk, draft):
        path = f"surfaces/{entry.key}"
        mapping = desk.mapping(entry.value, path, '"look: natural"')
        names = picked(desk, places, entry.key, entry.line, path)
        if mapping is None:
            continue
        said = _read_said(desk, mapping, path, placed=False)
        if said.relief is not None and said.zones is None:
            usual = zones_of(said.relief, said.section)
            said.zones = usual.zones
            said.assumed.append(Assumed(path=f"{path}/zones", value=usual.text(), why=usual.why))
        for name in names:
            own.setdefault(name, []).append((entry.key, said))
