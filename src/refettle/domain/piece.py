"""The piece as the person describes it: parts, surfaces, old finish, wishes."""

from dataclasses import dataclass

from refettle.domain.finding import Where
from refettle.domain.step import Step
from refettle.domain.wrong import Fitting, Wrong

LOOKS = (
    "keep", "natural", "bleached", "stained", "dyed", "limed", "whitewashed", "oiled", "waxed", "opaque", "distressed",
    "antiqued", "bare", "odour-free",
)  # fmt: skip
_BASES = {
    "bleached": "natural", "dyed": "stained", "limed": "stained", "whitewashed": "stained", "distressed": "opaque",
    "antiqued": "opaque",
}  # fmt: skip
SHEENS = ("matt", "satin", "semi-gloss", "gloss")
SOUNDNESS = ("sound", "worn", "scratched", "crazed", "soft", "flaking")
RELIEFS = ("flat", "panel", "moulded", "turned", "carved", "slats", "slats open")
ORIENTATIONS = ("up", "down", "upright", "inside")
USES = ("display", "everyday", "table", "kitchen", "wet", "child", "storage", "drawer", "food", "outdoors")
NOWHERE = Where(file="")
VALUES = ("ordinary", "good", "fine")


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumed:
    """
    A value the person did not give.

    Attributes
    ----------
    path
        Entry of the file that would override it, e.g. ``surfaces/top/soundness``.
    value
        What was taken instead, in words.
    why
        Reason in half a sentence.
    because
        Fact rows behind it.
    """

    path: str
    value: str
    why: str
    because: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """
    What a surface should look like in the end.

    Attributes
    ----------
    kind
        One of `LOOKS`. ``keep`` = leave the old finish: clean, touch up, wax; ``limed`` = white in open pores,
        ``whitewashed`` = a thin white film, ``bleached`` = the wood itself made paler, ``distressed`` = paint
        worn through at the edges, ``antiqued`` = a darker glaze wiped into the hollows of paint, clear over it.
    colour
        Plain word for the colour; empty where the wood speaks.
    depth
        Darkness wanted [%], 0 white to 100 black; None = as it comes.
    sheen
        One of `SHEENS`; empty = any.
    """

    kind: str
    colour: str = ""
    depth: int | None = None
    sheen: str = ""

    @property
    def base(self) -> str:
        """Return the plainer look that this one is a kind of: its ground and last coats are the same."""
        return _BASES.get(self.kind, self.kind)


@dataclass(frozen=True, slots=True, kw_only=True)
class OldLayer:
    """
    One layer of old finish, from the wood upwards.

    Attributes
    ----------
    guesses
        Class ids with weights [1] that add up to 1; empty where the person does not know at all.
    kind
        ``clear``, ``paint`` or ``unknown`` when `guesses` is empty: which prior to take.
    coats
        Number of coats [1].
    um
        Thickness of the whole layer [µm]; None = from the class.
    """

    guesses: tuple[tuple[str, float], ...] = ()
    kind: str = "unknown"
    coats: int = 1
    um: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """
    Part of a surface that the same tools get at.

    Attributes
    ----------
    name
        ``flat``, ``edge`` or ``recess``.
    share
        Share of the area [1].
    """

    name: str
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """
    One face finished alike.

    Attributes
    ----------
    name
        Unique in the piece, e.g. ``top`` or ``door.left/outside``.
    part
        Part it belongs to.
    area_m2
        Exposed area [m²].
    relief
        One of `RELIEFS`.
    orientation
        One of `ORIENTATIONS`.
    zones
        Up to three zones whose shares add up to 1.
    section
        Sizes of the relief that were said: name → mm (tilt: degrees).
    wood, build
        Ids of woods.csv and of the builds.
    veneer_um
        Face veneer [µm]; 0 = solid.
    layers
        Old finish from the wood upwards; empty = bare.
    old_stain
        Causes in the wood below the old finish that the person knows of, with strength [%]
        (``red-stain``, ``bitumen-stain``, ``smoke``, ``rodent`` ...).
    soundness
        One of `SOUNDNESS`: state of the old finish.
    worn_pct
        Share worn through to the wood [%].
    contamination
        Contaminant ids with the chance that it is there [1].
    damage
        Damage ids.
    tested
        Answers of spot tests: test id, "yes" or "no".
    look
        Look wanted; None = whatever suits the piece best.
    use
        One of `USES`.
    value
        One of `VALUES`: what the original finish, label or inlay is worth keeping.
    keep_reason
        Why it is worth keeping, in the person's words (label, inlay, original finish); empty if nothing.
    lead_chance
        Chance of lead in the old coats [1] where the person or a test says; None = from the era.
    done
        Steps that have been done to it; what else is said of it holds from before them.
    where
        Place in the file.
    """

    name: str
    part: str
    area_m2: float
    relief: str = "flat"
    orientation: str = "upright"
    zones: tuple[Zone, ...] = (Zone(name="flat", share=1.0),)
    section: tuple[tuple[str, float], ...] = ()
    wood: str
    build: str = "solid"
    veneer_um: int = 0
    layers: tuple[OldLayer, ...] = ()
    old_stain: tuple[tuple[str, int], ...] = ()
    soundness: str = "sound"
    worn_pct: int = 0
    contamination: tuple[tuple[str, float], ...] = ()
    damage: tuple[str, ...] = ()
    tested: tuple[tuple[str, str], ...] = ()
    look: Look | None = None
    use: str = "everyday"
    value: str = "ordinary"
    keep_reason: str = ""
    lead_chance: float | None = None
    done: tuple[Step, ...] = ()
    where: Where = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Own:
    """
    A sequence of the person's own: what they intend or have done, on one surface or on all.

    Attributes
    ----------
    surface
        Name of the surface; empty = every surface.
    steps
        Steps in order.
    where
        One place in the file per step.
    """

    surface: str
    steps: tuple[Step, ...]
    where: tuple[Where, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """
    The piece as described.

    Attributes
    ----------
    name, form
        The person's name for it; form id.
    size_mm
        Width, depth, height [mm]; None for a free list of surfaces.
    year_from, year_to
        Years between which it was made; None = not known.
    surfaces
        All surfaces, in the order of the form or the file.
    paid
        Asking or paid price [money]; None = not given.
    sells_low, sells_high
        What such a piece sells at when done [money]; None = not given.
    child
        Whether a small child lives with it.
    invented
        Whether the file says that the piece is made up.
    constraints
        Demands of the person: ``no stripping``, ``no bare wood``, ``no upkeep``, ``no spraying``.
    deadline_h
        Hours until it must be ready [h]; None = no date.
    wrong
        What is wrong with parts and with the whole.
    fittings
        Hardware, glass, stone, leather, seats.
    intend, done
        The person's own sequences.
    assumed
        Every default taken.
    notes
        Free lines the person wrote; shown, never read.
    """

    name: str
    form: str
    size_mm: tuple[float, float, float] | None = None
    year_from: int | None = None
    year_to: int | None = None
    surfaces: tuple[Surface, ...]
    paid: float | None = None
    sells_low: float | None = None
    sells_high: float | None = None
    child: bool = False
    invented: bool = False
    constraints: frozenset[str] = frozenset()
    deadline_h: float | None = None
    wrong: tuple[Wrong, ...] = ()
    fittings: tuple[Fitting, ...] = ()
    intend: tuple[Own, ...] = ()
    done: tuple[Own, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Product:
    """
    A tin, or a few pieces of something, that the person has or can buy, bound to a behaviour class.

    Attributes
    ----------
    name
        What the person calls it (chemistry, no brand needed).
    cls
        Class id; cleaner, remover or supply id for those.
    have_l
        Litres on the shelf that can be used [L].
    size_l
        Tin size to buy [L]; 0 = as usual for it.
    price
        Price of that tin [money].
    label
        Label figures that override the class: property of ``properties.csv`` → value.
    where
        Place in the workshop file.
    kind
        ``film``, ``remover``, ``cleaner`` or ``supply``.
    have_count
        Pieces there [1], of a supply.
    grit
        FEPA P number [1] of an abrasive; 0 = none said.
    age_months
        Age, since it was bought or made up [month]; None = not said.
    opened, frozen
        Whether it has been opened; whether it has been frozen.
    """

    name: str
    cls: str
    have_l: float = 0.0
    size_l: float = 0.75
    price: float | None = None
    label: tuple[tuple[str, float], ...] = ()
    where: Where = NOWHERE
    kind: str = "film"
    have_count: float = 0.0
    grit: int = 0
    age_months: float | None = None
    opened: bool = False
    frozen: bool = False
