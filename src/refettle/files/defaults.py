"""
What is taken where the person says nothing, each noted as assumed.

The numbers here are judgement unless a fact row stands behind them; each is shown to the person with
its reason and is overruled by one line in the file.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from refettle.domain.piece import Assumed, Look, OldLayer, Surface
from refettle.files.fields import Desk
from refettle.files.old_finish import UNSAID_COATS
from refettle.files.places import Place, matching
from refettle.files.surface_fields import Said
from refettle.rules.use import SMELLS

SILICONE_CHANCE: Final = 0.2
UNKNOWN_COATS: Final = 2
WORN_PCT: Final = 15
SOLID_RELIEFS: Final = ("turned", "carved", "slats", "slats open")
RUNNER_DAMAGE: Final = "worn-runner"
OF_VENEER: Final = frozenset({"lifted-veneer", "missing-veneer"})
TABLE_USES: Final = ("table", "kitchen")


@dataclass(slots=True, kw_only=True)
class Notes:
    """Assumptions gathered over all surfaces; one that holds for all of them is told once."""

    by_what: dict[tuple[str, str, str, tuple[str, ...]], list[str]] = field(default_factory=dict)

    def add(self, surface: str, key: str, value: str, why: str, because: tuple[str, ...] = ()) -> None:
        """Note one assumption on one surface."""
        self.by_what.setdefault((key, value, why, because), []).append(surface)

    def told(self, places: Sequence[Place]) -> tuple[Assumed, ...]:
        """Return the assumptions, each with the shortest path that would overrule it."""
        told: list[Assumed] = []
        for (key, value, why, because), names in self.by_what.items():
            told.extend(
                Assumed(path=path, value=value, why=why, because=because)
                for path in _paths(key, names, places)
            )
        return tuple(told)


def _paths(key: str, names: Sequence[str], places: Sequence[Place]) -> list[str]:
    """Return the entry of the whole piece, of a group, or of each surface."""
    wanted = set(names)
    if wanted in ({place.name for place in places}, {place.name for place in places if place.shown}):
        return [key]
    group = next(
        (word for word in ("outside", "inside", "hidden") if set(matching(places, word)) == wanted), None
    )
    return [f"surfaces/{group}/{key}"] if group else [f"surfaces/{name}/{key}" for name in names]


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """
    What was said of one surface.

    Attributes
    ----------
    general
        What was said of the whole piece.
    own
        What was said under ``surfaces`` for it or its group.
    """

    general: Said
    own: Said


def make_surface(desk: Desk, place: Place, spoken: Spoken, notes: Notes, *, form: str) -> Surface | None:
    """
    Return a surface with everything unsaid filled in.

    Parameters
    ----------
    desk
        Desk of the file.
    place
        The surface as the form or the list gives it.
    spoken
        What was said of it.
    notes
        Where assumptions are noted.
    form
        Form of the piece.

    Returns
    -------
    Surface | None
        None where its wood is not known.
    """
    spoken = replace(spoken, general=_general_of(spoken.general, place))
    said = spoken.own.over(spoken.general)
    if said.wood is None:
        return None
    layers = _layers(desk, place, spoken, notes)
    build, veneer_um = _build(desk, place, spoken, notes)
    soundness, worn = _soundness(place, said, notes, finished=bool(layers))
    relief = said.relief or place.relief
    return Surface(
        name=place.name,
        part=said.part or place.part,
        area_m2=place.area_m2 if said.area_m2 is None else said.area_m2,
        relief=relief,
        orientation=said.orientation or place.orientation,
        zones=said.zones or place.zones,
        section=said.section or (),
        wood=said.wood,
        build=build,
        veneer_um=veneer_um,
        layers=layers,
        old_stain=said.old_stain or (),
        soundness=soundness,
        worn_pct=worn,
        contamination=_contamination(place, spoken, notes, layers),
        damage=_damage(desk, place, spoken, notes, build),
        tested=said.tested or (),
        look=_look(place, spoken, notes, finished=bool(layers)),
        use=_use(place, spoken, notes, form),
        value=_value(place, said, notes),
        keep_reason=said.keep_reason or "",
        lead_chance=None if said.lead_unknown else said.lead_chance,
        where=desk.where(place.line, f"surfaces/{place.name}"),
    )


_OUTDOORS: Final = "outdoors"
"""Use under which every face meets the weather, those out of sight too."""


def _damage(desk: Desk, place: Place, spoken: Spoken, notes: Notes, build: str) -> tuple[str, ...]:
    """Return the damage of a surface: what was said of the whole piece holds of every shown face that can have it."""
    damage = spoken.own.over(spoken.general).damage or ()
    if spoken.own.damage is not None or not damage:
        return damage
    if build == "solid":
        damage = tuple(id_ for id_ in damage if id_ not in OF_VENEER)
    if damage:
        names = ", ".join(desk.knowledge.name("damage", id_) for id_ in damage)
        why = "said of the whole piece: counted and mended on each; say it under surfaces where it is"
        notes.add(place.name, "damage", names, why)
    return damage


def _general_of(general: Said, place: Place) -> Said:
    """Return what holds of a surface from what was said of the whole piece; little of it out of sight indoors."""
    runner = tuple(id_ for id_ in general.damage or () if id_ == RUNNER_DAMAGE)
    rest = tuple(id_ for id_ in general.damage or () if id_ != RUNNER_DAMAGE)
    if place.shown or general.use == _OUTDOORS:
        return replace(general, damage=() if place.closed else rest)
    return Said(
        wood=general.wood,
        build=general.build,
        veneer_um=general.veneer_um,
        layers=general.layers if general.layers == () else None,
        value=general.value,
        damage=runner if place.running else (),
    )


def _layers(desk: Desk, place: Place, spoken: Spoken, notes: Notes) -> tuple[OldLayer, ...]:
    said = spoken.own.over(spoken.general)
    layers = said.layers
    if not place.shown and spoken.own.layers is None and spoken.general.layers != ():
        notes.add(
            place.name, "old finish", "bare", "faces that run or are out of sight were usually left bare"
        )
        return ()
    if layers is None:
        notes.add(place.name, "old finish", "unknown", "not said")
        layers = (OldLayer(kind="unknown", coats=UNSAID_COATS),)
    if said.coats is not None and len(layers) == 1 and layers[0].coats == UNSAID_COATS:
        return (replace(layers[0], coats=said.coats),)
    if said.coats is not None and said.coats_at is not None and layers:
        line, path = said.coats_at
        what, do = (
            '"old coats" can only be said of one layer',
            "write {finish: shellac, coats: 3} in the list",
        )
        desk.say("coats-of-layers", line, path, what, do)
    return tuple(_counted(desk, place, layer, notes, alone=len(layers) == 1) for layer in layers)


def _counted(desk: Desk, place: Place, layer: OldLayer, notes: Notes, *, alone: bool) -> OldLayer:
    """Return a layer with its number of coats."""
    if layer.coats != UNSAID_COATS:
        return layer
    coats, why = UNKNOWN_COATS, "number not said; old finishes were seldom laid in one coat"
    because: tuple[str, ...] = ()
    if layer.guesses:
        likeliest = max(layer.guesses, key=lambda guess: guess[1])[0]
        facts = desk.knowledge.films.get(likeliest)
        if facts is not None:
            coats = max(1, round(facts.coats))
            why = f"number not said; usual for {desk.knowledge.name('film', likeliest)}"
            because = desk.knowledge.because(f"film:{likeliest}", "coats")
    key, value = (
        ("old coats", str(coats))
        if alone
        else ("old finish", f"{coats} coat{'s' if coats != 1 else ''} of one layer")
    )
    notes.add(place.name, key, value, why, because)
    return replace(layer, coats=coats)


def _build(desk: Desk, place: Place, spoken: Spoken, notes: Notes) -> tuple[str, int]:
    said = spoken.own.over(spoken.general)
    build = said.build
    if build is None and said.veneer_um:
        build = "veneer"
    relief = said.relief or place.relief
    general = spoken.own.build is None and spoken.own.veneer_um is None
    if build is not None and build != "solid" and general and relief in SOLID_RELIEFS:
        notes.add(place.name, "build", "solid", f"{relief} work is not veneered")
        return "solid", 0
    if build is None:
        notes.add(place.name, "build", "solid", "not said")
        build = "solid"
    if said.veneer_um is not None:
        return build, said.veneer_um
    facts = desk.knowledge.builds.get(build)
    usual = round(facts.veneer_um) if facts else 0
    if usual:
        because = desk.knowledge.because(f"build:{build}", "veneer_um")
        notes.add(
            place.name, "veneer", f"{usual / 1000:g} mm", "usual for this build; measure at an edge", because
        )
    return build, usual


def _soundness(place: Place, said: Said, notes: Notes, *, finished: bool) -> tuple[str, int]:
    soundness = said.soundness
    if not finished:
        return soundness or "sound", said.worn_pct or 0
    if soundness is None:
        notes.add(place.name, "soundness", "sound", "not said")
        soundness = "sound"
    if said.worn_pct is None and soundness == "worn":
        notes.add(place.name, "worn", f"{WORN_PCT} %", "worn, share not said")
        return soundness, WORN_PCT
    return soundness, said.worn_pct or 0


def _contamination(
    place: Place, spoken: Spoken, notes: Notes, layers: tuple[OldLayer, ...]
) -> tuple[tuple[str, float], ...]:
    said = spoken.own.over(spoken.general)
    if not place.shown and spoken.own.contamination is None:
        return ()
    if said.contamination is not None:
        return said.contamination
    notes.add(place.name, "contamination", "grime", "not said; no old piece comes in clean")
    grime = ("grime", 1.0)
    if not layers or layers[-1].kind == "paint":
        return (grime,)
    share = f"silicone {SILICONE_CHANCE * 100:.0f} %"
    notes.add(place.name, "contamination", share, "not said; old polished furniture: silicone possible")
    return (grime, ("silicone", SILICONE_CHANCE))


def _look(place: Place, spoken: Spoken, notes: Notes, *, finished: bool) -> Look | None:
    own, said = spoken.own, spoken.own.over(spoken.general)
    if not place.shown and own.looks is None and said.use != _OUTDOORS:
        kind = "keep" if finished else "bare"
        notes.add(place.name, "look", kind, "runs or is out of sight")
        return Look(kind=kind)
    if place.closed and own.looks is None and spoken.general.looks is not None:
        smells = any(id_ in SMELLS for id_, _ in spoken.own.over(spoken.general).old_stain or ())
        kind = "odour-free" if smells else "keep" if finished else "bare"
        notes.add(place.name, "look", kind, 'seen only when open; write "inside: {look: ...}" to do it too')
        return Look(kind=kind)
    if said.looks is None:
        notes.add(place.name, "look", "any", "not said: whatever suits the piece best")
    if not said.looks:
        return None
    look = said.looks[0]
    return replace(look, sheen=said.sheen) if said.sheen and not look.sheen else look


def _use(place: Place, spoken: Spoken, notes: Notes, form: str) -> str:
    if spoken.own.use is not None:
        return spoken.own.use
    general = spoken.general.use
    if general == _OUTDOORS:
        return general
    if place.orientation == "inside" or not place.shown:
        use = "drawer" if "drawer" in place.part.lower() else "storage"
        notes.add(place.name, "use", use, "inside" if place.orientation == "inside" else "out of sight")
        return use
    if general in TABLE_USES and place.orientation != "up":
        notes.add(place.name, "use", "everyday", "not a top")
        return "everyday"
    if general is not None:
        return general
    table = place.orientation == "up" and ("table" in form or "desk" in form)
    use = "table" if table else "everyday"
    notes.add(place.name, "use", use, "not said; the top of a table" if table else "not said")
    return use


def _value(place: Place, said: Said, notes: Notes) -> str:
    if said.value is not None:
        return said.value
    value = "good" if said.keep_reason else "ordinary"
    notes.add(
        place.name, "value", value, "something worth keeping is named" if said.keep_reason else "not said"
    )
    return value
