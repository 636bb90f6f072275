"""Small made-up pieces for tests that plan: one or two surfaces, drawn from few of everything."""

from functools import cache

from hypothesis import strategies as st

from refettle.domain.air import Air
from refettle.domain.piece import Look, OldLayer, Piece, Surface, Zone
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.workshop import Workshop
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.services.plan import plan_piece

HOLLOW = (Zone(name="flat", share=0.5), Zone(name="edge", share=0.2), Zone(name="recess", share=0.3))
WORKSHOPS = (
    Workshop(),
    Workshop(
        name="garage",
        air_likely=Air(temp_c=17.0, rh=0.6),
        tools=frozenset({"random-orbit"}),
        methods=frozenset({"brush", "wipe", "pad", "roller", "aerosol", "spray"}),
        hours_per_evening=1.0,
        evenings_per_week=5.0,
    ),
    Workshop(name="shed", air_likely=Air(temp_c=8.0, rh=0.8), hour_worth=6.0, hours_per_evening=3.0),
)


def old(*classes: str, kind: str = "clear", coats: int = 2) -> OldLayer:
    """Return an old layer that is one of some classes, each as likely as the other, or not known at all."""
    return OldLayer(guesses=tuple((cls, 1.0 / len(classes)) for cls in classes), kind=kind, coats=coats)


OLD_FINISHES = (
    (),
    (old("shellac-waxed"),),
    (old("shellac-waxed", "nitro-lacquer"),),
    (old(coats=3),),
    (old("latex-paint", kind="paint"),),
    (old("alkyd-varnish"), old("alkyd-enamel", kind="paint")),
)
LOOKS = (
    Look(kind="keep"),
    Look(kind="natural", sheen="satin"),
    Look(kind="stained", depth=65),
    Look(kind="opaque", colour="white"),
    Look(kind="oiled"),
    Look(kind="waxed"),
    None,
)
DIRT = ((), (("wax", 0.8),), (("grime", 0.9), ("silicone", 0.4)))
DAMAGE = ((), ("white-ring",), ("loose-joint", "dents"))


def one_surface(
    name: str, *, look: Look | None, layers: tuple[OldLayer, ...] = (), wood: str = "oak", **rest: object
) -> Surface:
    """Return a surface called as given."""
    return Surface(
        name=name, part=name, area_m2=0.6, wood=wood, layers=layers, look=look, orientation="up", **rest
    )


def made(*surfaces: Surface, year: int | None = 1960, demands: frozenset[str] = frozenset()) -> Piece:
    """Return a piece of some surfaces, made in a year."""
    return Piece(
        name="demo",
        form="list",
        surfaces=surfaces,
        year_from=year,
        year_to=year,
        invented=True,
        constraints=demands,
    )


@st.composite
def surfaces(draw: st.DrawFn, name: str) -> Surface:
    """Draw a surface."""
    carved = draw(st.booleans())
    return one_surface(
        name,
        wood=draw(st.sampled_from(("oak", "pine", "beech", "mahogany"))),
        layers=draw(st.sampled_from(OLD_FINISHES)),
        look=draw(st.sampled_from(LOOKS)),
        soundness=draw(st.sampled_from(("sound", "worn", "scratched"))),
        contamination=draw(st.sampled_from(DIRT)),
        damage=draw(st.sampled_from(DAMAGE)),
        relief="carved" if carved else "flat",
        zones=HOLLOW if carved else (Zone(name="flat", share=1.0),),
        veneer_um=draw(st.sampled_from((0, 0, 800))),
    )


@st.composite
def pieces(draw: st.DrawFn, least: int = 1) -> Piece:
    """Draw a piece of one or two surfaces, now and then with a demand."""
    drawn = [draw(surfaces(name)) for name in ("top", "side")[: draw(st.integers(least, 2))]]
    demands = draw(st.sampled_from((frozenset(), frozenset(), frozenset({"no stripping"}))))
    return made(*drawn, year=draw(st.sampled_from((1925, 1960, 1995, None))), demands=demands)


workshops = st.sampled_from(WORKSHOPS)


@cache
def facts() -> Knowledge:
    """Return all facts, read once."""
    return load_knowledge()


@cache
def planned(piece: Piece, workshop: Workshop, *, brief: bool = False) -> PiecePlan:
    """Return the plan of a piece, worked out once."""
    return plan_piece(piece, workshop, facts(), brief=brief)
