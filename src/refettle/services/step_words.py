"""Steps in the words one would say at the bench: every verb as an imperative phrase, no ids."""

from collections.abc import Callable, Mapping
from typing import Final

from refettle.domain.step import Step, mark_words
from refettle.knowledge.knowledge import Knowledge

Phrase = Callable[[Knowledge, Step], str]

_LAY: Final = {
    "brush": "brush", "wipe": "wipe on", "pad": "pad on", "roller": "roll", "spray": "spray",
    "aerosol": "spray from the can",
}  # fmt: skip
_FILMS: Final = {"thin": "thin", "heavy": "heavy"}
_AGENTS: Final = {
    "alkaline-degreaser": "an alkaline degreaser", "alcohol-wipe": "alcohol", "acetone-wipe": "acetone",
    "thinner-wipe": "lacquer thinner", "water-rinse": "clean water", "mould-wash": "a mould wash",
    "tack-cloth": "a tack cloth", "damp-cloth": "a damp cloth", "dry-cloth": "a dry cloth",
    "vacuum": "vacuum cleaner and brush", "strong-solvent": "a strong solvent remover",
    "dichloromethane": "dichloromethane remover", "mild-remover": "a slow mild remover",
    "caustic": "caustic lye", "heat-gun": "heat gun and scraper", "card-scraper": "a card scraper",
    "oxalic-acid": "oxalic acid", "chlorine": "chlorine bleach", "peroxide-alkali": "two-part bleach",
    "bleach-water": "chlorine bleach and water",
}  # fmt: skip
"""Cleaners, removers and bleaches as they stand after "with", where their name alone does not do."""
_DRY_AGENTS: Final = frozenset({"vacuum", "tack-cloth", "damp-cloth", "dry-cloth"})
_TESTS: Final = {
    "spirits-wipe": "Wipe a hidden spot with mineral spirits and see what shows",
    "alcohol-drop": "Put a drop of alcohol on a hidden spot: does it go soft",
    "thinner-drop": "Put a drop of lacquer thinner on a hidden spot: does it go soft",
    "xylene-drop": "Put a drop of xylene on a hidden spot: does it go soft",
    "tape-pull": "Cut a cross through the film, press tape on it and pull: does the film stay",
    "lead-test": "Cut a notch through all coats where it won't show and test for lead",
    "water-drop": "Put a drop of water on it: does it bead",
    "bleed-patch": "Paint a patch and leave it two days: does colour come through",
    "crater-patch": "Lay a patch of the clear coat: does it pull into craters",
    "fingernail": "Press a fingernail into a hidden spot: does it leave a dent",
    "edge-grain": "Look at an end of a top or door: do the lines of the face run on into end grain",
    "edge-layer": "Look at a chip, a keyhole or a back edge: is there a thin layer on top",
    "figure-repeats": "Look along the face: does the figure repeat, or mirror itself at a seam",
    "back-differs": "Turn it over: is the underside of another wood, or are its knots others than on top",
    "grain-printed": "Run a nail across the grain: is it flat, without pores, however open it looks",
    "haze-wipes-off": "Wipe the haze with mineral spirits: does it go for good",
    "haze-comes-back": "Wet the haze with mineral spirits: does it go, and come back when dry",
    "haze-clears-with-solvent": "Draw a trace of slow solvent over a hidden spot: does the haze clear",
    "haze-clears-in-warm-air": "Give it a day of warm moving air: does the haze fade",
}
_REPAIRS: Final = {"oxalic-acid": "Bleach the ring with oxalic acid and rinse"}
_WAITS: Final = {
    "safe to wrap": "Wait until safe to wrap", "dry out": "Let it dry out", "cure": "Wait until it has cured",
}  # fmt: skip
_MEETS: Final = {
    "sun": "it stands in the sun", "heat": "it gets hot", "hot dish": "a hot dish stands on it",
    "cold": "it stands in the cold", "freezing": "it freezes", "damp air": "it stands in damp air",
    "dry air": "it stands in dry air", "storm": "rain drives on it", "standing water": "water stands on it",
    "closed": "its faces are shut on each other", "dark": "it stands in the dark",
    "against a wall": "it stands against a wall", "stacked": "it is stacked", "loaded": "things stand on it",
    "wrapped": "it is wrapped", "freight": "it goes by freight", "plastic cover": "plastic lies on it",
    "hands": "hands grip it daily", "years": "years go by",
}  # fmt: skip
_LEFT: Final = frozenset({"", "ordinary use"})


def wait_words(hours: float) -> str:
    """Return a wait in words: ``2 h``, ``overnight``, ``3 days``; nothing for no wait."""
    if hours <= 0:
        return ""
    if hours < 1:
        return f"{round(hours * 60)} min"
    if hours < 8:
        return f"{round(hours, 1):g} h"
    if hours <= 16:
        return "overnight"
    days = hours / 24.0
    if days < 1.6:
        return "a day"
    if days < 14:
        return f"{days:.0f} days"
    return f"{days / 7.0:.0f} weeks"


def step_words(know: Knowledge, step: Step) -> str:
    """
    Return a step as an imperative phrase, without full stop.

    Parameters
    ----------
    know
        Names of classes, agents, tools and repairs.
    step
        The step; its waits are not told.

    Returns
    -------
    str
        E.g. ``Scuff P240 by hand, wet, and take up the dust``.
    """
    text = PHRASES[step.verb](know, step)
    return text[:1].upper() + text[1:]


def _named(know: Knowledge, step_id: str, *kinds: str) -> str:
    """Return the name of the first kind that has the id; a tin not known counts as its class."""
    for kind in kinds:
        for id_ in (step_id, step_id.partition(".")[0]):
            if know.has(kind, id_):
                return know.name(kind, id_)
    return step_id.replace("-", " ")


def _agent(know: Knowledge, step: Step) -> str:
    """Return a cleaner, remover or bleach as it stands after "with"."""
    return _AGENTS.get(step.what) or _named(know, step.what, "cleaner", "remover", "repair")


def _by(know: Knowledge, step: Step) -> str:
    """Return with what tool, as it stands behind a verb."""
    if "steel wool" in step.how or step.method == "steel-wool":
        return " with steel wool"
    if step.method in {"", "hand-block"}:
        return " by hand"
    name = _named(know, step.method, "tool")
    return f" with {name}" if name.endswith("s") else f" with a {name}"


def _marks(step: Step) -> str:
    """Return the marks of abrasive work."""
    wet = ", wet" if "wet" in step.how else ""
    cut = ", damp it, let it dry and cut the raised grain" if "raise" in step.how else ""
    dust = " and take up the dust" if "clean dust" in step.how else ""
    return f"{wet}{cut}{',' if dust and (wet or cut) else ''}{dust}"


def _coats(know: Knowledge, step: Step) -> str:
    """Return number, thickness and name of coats: ``2 thin coats of paste wax``."""
    film = _FILMS.get(step.film, "")
    name = _named(know, step.what, "film")
    if step.coats > 1:
        return " ".join(word for word in (str(step.coats), film, "coats of", name) if word)
    return " ".join(word for word in ("a", film, "coat of", name) if word)


def _coat(know: Knowledge, step: Step) -> str:
    """Return the laying of coats."""
    text = f"{_LAY.get(step.method, 'lay')} {_coats(know, step)}"
    if "covered" in step.how:
        text += ", covered"
    if "slow thinner" in step.how:
        text += " with slow thinner"
    if "not wiped" in step.how:
        return f"{text} and leave it unwiped"
    return f"{text} and wipe off the excess" if "wiped" in step.how and step.verb != "wax" else text


def _film_for(purpose: str) -> Phrase:
    """Return the laying of coats with what they are for."""
    return lambda know, step: f"{_coat(know, step)}{purpose}"


def _clean(know: Knowledge, step: Step) -> str:
    """Return a cleaning: wet agents wash, solvents and cloths wipe."""
    if step.what == "vacuum":
        return "take the dust off with vacuum cleaner and brush"
    solvent = know.has("cleaner", step.what) and know.cleaner(step.what).water_share < 0.3
    return f"{'wipe' if solvent or step.what in _DRY_AGENTS else 'wash'} with {_agent(know, step)}"


def _strip(know: Knowledge, step: Step) -> str:
    """Return a stripping with its passes."""
    passes = f", {step.coats} passes" if step.coats > 1 else ""
    covered = ", covered while it works" if "covered" in step.how else ""
    return f"strip with {_agent(know, step)}{passes}{covered}"


def _scrape(know: Knowledge, step: Step) -> str:
    """Return a scraping."""
    if "hollows" in step.how:
        return "pick the softened rest out of the hollows with scraper points"
    if "open pores" in step.how:
        return "brush the pores open along the grain with a brass brush"
    if "pores" in step.how:
        return "brush the softened rest out of the pores with a brass brush"
    if "loose" in step.how:
        return "scrape off what is loose"
    tool = f" with {_agent(know, step)}" if step.what else _by(know, step) if step.method else ""
    return f"scrape dry{tool}"


def _sand(know: Knowledge, step: Step) -> str:
    """Return a sanding: to bare wood, through the grits, or one grit."""
    if "to bare" in step.how:
        return f"sand to bare wood with P{step.grit}{_by(know, step)}{_marks(step)}"
    through = "sand through the grits to" if "sequence" in step.how else "sand"
    grit = f" P{step.grit}" if step.grit else ""
    return f"{through}{grit}{_by(know, step)}{_marks(step)}"


def _rub(word: str) -> Phrase:
    """Return work that dulls or polishes a film."""

    def words(know: Knowledge, step: Step) -> str:
        if "edges" in step.how:
            return f"rub through the edges where hands would wear it, P{step.grit or 220}{_marks(step)}"
        grit = f" P{step.grit}" if step.grit else ""
        return f"{word}{grit}{_by(know, step)}{_marks(step)}"

    return words


def _repair(know: Knowledge, step: Step) -> str:
    """Return a mending; a damage where the person named one."""
    if know.has("repair", step.what):
        return _REPAIRS.get(step.what, know.name("repair", step.what))
    return f"mend: {_named(know, step.what, 'damage')}"


def _met(step: Step) -> tuple[str, ...]:
    """Return the words for what it meets, the one that the person named first in front."""
    said = () if step.what in _LEFT else mark_words(frozenset({step.what}))
    return (*said, *(word for word in mark_words(step.how) if word not in said))


def _free(words: str, usual: str = "") -> Phrase:
    """Return a phrase that takes the person's own word for what, or the usual one."""
    return lambda _know, step: f"{words} {step.what or usual}".strip()


PHRASES: Final[Mapping[str, Phrase]] = {
    "test": lambda know, step: _TESTS.get(step.what) or f"test: {_named(know, step.what, 'test')}",
    "take_off": _free("take off", "hardware, bag and number it; drawers and doors out"),
    "refit": _free("refit", "the hardware"),
    "clean": _clean,
    "repair": _repair,
    "strip": _strip,
    "scrape": _scrape,
    "rinse": lambda know, step: f"rinse with {_agent(know, step)}",
    "neutralise": lambda know, step: f"neutralise with {_agent(know, step)}",
    "bleach": lambda know, step: f"bleach with {_agent(know, step)}",
    "sand": _sand,
    "scuff": _rub("scuff"),
    "raise_grain": lambda _know, _step: "raise the grain: wet it, let it dry, cut off the fur",
    "climate": lambda _know, step: (
        f"make the room {step.what or 'warmer'} first"
        + (
            f": about {step.air.temp_c:.0f} °C and {step.air.rh:.0%}, and hold it until all is dry"
            if step.air
            else ""
        )
    ),
    "mask": _free("mask", "what must stay clean"),
    "sample": lambda _know, _step: "make a sample on a hidden place and look at it by day and by lamp",
    "rub_out": _rub("rub out"),
    "revive": lambda know, step: f"soften and level the old film with a pad of {_agent(know, step)}",
    "air": lambda _know, step: f"let it air{': ' + step.what if step.what else ''}",
    "wait": lambda _know, step: _WAITS.get(step.what, "wait"),
    "expose": lambda _know, step: (
        " and ".join(_MEETS.get(word, f"it meets {word}") for word in _met(step)) or "it stands exposed"
    ),
    "use": lambda _know, step: "put it to use" + (f" ({', '.join(_met(step))})" if _met(step) else ""),
    "condition": _coat,
    "stain": _coat,
    "glaze": _film_for(" and wipe it into the hollows"),
    "tone": _coat,
    "fill_pores": lambda know, step: (
        f"fill the pores with {_named(know, step.what, 'film')}"
        + (" and wipe off the excess across the grain" if "wiped" in step.how else "")
    ),
    "prime": _coat,
    "seal": _film_for(" to seal"),
    "paint": _coat,
    "topcoat": _coat,
    "wax": _film_for(" and buff"),
}
"""The phrase of every verb."""
