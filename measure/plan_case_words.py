"""
The word tables of the plan check: words of a piece into ours, and our steps and warnings into the file's words.

Frozen before the first score; `case_words` lends the rest. No entry knows a piece.
"""

from collections.abc import Mapping

import case_words as trade
from case_scores import DEFECT_OF_FAULT

Names = frozenset[str]
Table = Mapping[str, Names]


def _names(text: str) -> Names:
    """Return the words of a text."""
    return frozenset(text.split())


def _table(text: str) -> dict[str, Names]:
    """Return rows ``ours = theirs theirs``."""
    rows = (line.partition(" = ") for line in filter(None, map(str.strip, text.splitlines())))
    return {key: _names(rest) for key, _, rest in rows}


# --- from the piece --------

OLD_FINISHES: Mapping[str, tuple[tuple[str, str], ...]] = {
    "oil_finish": (("clear", "drying-oil 0.5 oil-varnish-blend 0.5"),),
    "polyester": (("clear", "two-pack-polyurethane 0.6 conversion-varnish 0.4"),),
    "exterior_varnish_uv": (("clear", "alkyd-varnish 1"),),
    "exterior_oil": (("clear", "oil-varnish-blend 1"),),
    "exterior_paint": (("paint", "alkyd-enamel 0.5 latex-paint 0.5"),),
    "paste_wax": (("clear", "paste-wax 1"),),
    "hardwax_oil": (("clear", "hardwax-oil 1"),),
    "two_pack_polyurethane": (("clear", "two-pack-polyurethane 1"),),
    "mineral_oil": (),
}
"""Old finishes beyond the trade cases → layers, written as in `case_words.OLD_FINISHES` (judgement)."""

ON_BARE: Mapping[str, tuple[str, float]] = {"mineral_oil": ("mineral-oil", 0.9)}
"""Old finishes that are no film: contaminant and chance."""

LOOKS: Mapping[str, tuple[str, str, int | None]] = {
    "limed_clear": ("whitewashed", "", None),
    "opaque_distressed": ("distressed", "", 40),
    "freshened": ("keep", "", None),
    "leave_bare": ("bare", "", None),
}
"""
Wanted looks beyond the trade cases → kind, colour, depth [%].

"White in pores or thin white, grain seen" is limed on wood with open pores (`OPEN_PORED`), else whitewashed.
"""

OPEN_PORED = _names("oak ash chestnut elm mahogany walnut teak wenge padauk")
"""Substrates with pores that hold white."""

SHEENS: Mapping[str, str] = {
    "matt": "matt", "matte": "matt", "flat": "matt", "dead_matt": "matt", "satin": "satin", "silk": "satin",
    "eggshell": "satin", "semi_matt": "satin", "semi_gloss": "semi-gloss", "semi-gloss": "semi-gloss",
    "gloss": "gloss", "high_gloss": "gloss",
}  # fmt: skip

TESTED: Mapping[str, tuple[tuple[str, str], ...]] = {
    "tested_alcohol": (("alcohol-drop", "yes"),),
    "tested_thinner": (("alcohol-drop", "no"), ("thinner-drop", "yes")),
    "tested_nothing_dissolves": (("alcohol-drop", "no"), ("thinner-drop", "no")),
}
"""Spot tests already made → our tests with their answers."""

UNSURE: Mapping[str, tuple[str, ...]] = {
    "clear": ("shellac-unstated", "nitro-lacquer", "old-varnish"),
    "paint": ("alkyd-enamel", "latex-paint"),
}
"""What an old finish may be besides its name where nobody tested it."""

NAMED_SHARE = 0.7
"""Belief [1] in the name of an old finish that nobody tested (judgement)."""

CONSTRAINTS: Mapping[str, str] = {
    "no_stripping": "no stripping",
    "no_sanding_to_bare": "no bare wood",
    "no_upkeep": "no upkeep",
    "no_spraying": "no spraying",
}

CONDITIONS: Table = _table(
    """
    paint_in_pores = in:paint-in-pores:80
    foil_loose = damage:loose-foil
    loose_foil = damage:loose-foil
    foil_peeling = damage:loose-foil
    foil_lifting = damage:loose-foil
    paint_left_in_pores = in:paint-in-pores:80
    blackened = damage:darkened-wood
    """
)
"""Condition words that mean more to a plan than to a trade case; same tags as `case_words.CONDITIONS`."""

DARKENED = _names("darkened nearly_black dark_from_caustic")
"""Condition words that speak of the wood where it is bare, and of the film where it is not."""

UPRIGHT_PARTS = _names(
    "side sides door doors rail rails arm arms leg legs front fronts spindle spindles frame frames"
)
"""Parts that stand upright."""

STRUCTURE: tuple[tuple[str, str], ...] = (
    (r"\bjoints? (?:\w+ ){0,3}?(?:rocks?|loose|open(?:ed|s)?|wobbl\w*|gone|failed|apart|moves?|give)\b", "loose-joint"),
    (r"\b(?:rocks?|rocking|wobbl\w*|rickety|loose|open(?:ed)?) (?:\w+ ){0,2}?joints?\b", "loose-joint"),
    (r"\b(?:chairs?|table|legs?|frame|seats?) (?:\w+ ){0,2}?(?:rocks?|wobbl\w*|rickety)\b", "loose-joint"),
    (r"\bveneer (?:\w+ ){0,3}?(?:lift\w*|loose|blister\w*|bubbl\w*|come (?:off|away))\b", "lifted-veneer"),
    (r"\b(?:loose|lifting|lifted|blistered|bubbled) veneer\b", "lifted-veneer"),
    (r"\b(?:drawers? (?:\w+ ){0,2}?(?:stick\w*|jam\w*)|worn runners?|runners? (?:\w+ ){0,2}?worn)\b", "worn-runner"),
    (r"\b(?:split|cracked) (?:\w+ ){0,1}?(?:panel|top|board|seat|leg|side)\b", "split"),
)  # fmt: skip
"""What a person says of the structure in the story of the piece → damage."""

# --- from the plan --------

CLASSES: Mapping[str, str] = {
    **{ours: theirs for theirs, (ours, _) in trade.CLASSES.items()},
    "hardwax-oil": "hardwax_oil",
    "two-pack-polyurethane": "two_pack_polyurethane",
}
"""Our film class → coat class of the file."""

SOILS: Table = _table(
    """
    wax = wax
    remover-wax = residue wax
    remover-residue = residue
    bleach-residue = residue
    acid = residue
    alkali = alkali
    silicone = silicone
    grease = grease
    grime = grime
    smoke-film = smoke
    mould = mould
    skin-oil = skin_oil
    mineral-oil = mineral_oil
    glue = adhesive
    loose-film = loose_paint
    """
)
"""Our contaminant → what a cleaning of the file takes off."""

OIL_WIPES = _names("naphtha acetone-wipe thinner-wipe mineral-spirits alcohol-wipe")
"""Wipes that take the wood's own oil off its face, where the wood has any."""

REMOVER_CLASSES: Table = _table(
    """
    solvent = solvent
    mild = solvent
    alcohol = alcohol
    chlorinated = chlorinated
    caustic = caustic
    heat = heat
    scraper = scraper
    """
)
"""How a remover acts → class of a stripping."""

ALSO_SOLVENT = _names("alcohol chlorinated")
"""Classes of a stripping that count as solvent where a step must be."""

BLEACHES: Mapping[str, str] = {
    "oxalic-acid": "oxalic",
    "chlorine": "chlorine",
    "bleach-water": "chlorine",
    "peroxide-alkali": "peroxide_alkali",
}

REPAIRS: Table = _table(
    """
    glue-joint = glue_joint
    glue-split = glue_split consolidate
    fill = fill
    scrape-burn = fill
    remove-foil = remove_foil
    relay-veneer = relay_veneer consolidate
    patch-veneer = patch_veneer
    remake-moulding = replace_part
    renew-runner = replace_part
    touch-up = touch_up
    steam-dent = steam_dent
    """
)
"""Our repair → object of a repair."""

RUB_REPAIRS = _names("alcohol-rub rub-fine")

TESTS: Table = _table(
    """
    lead-test = lead
    spirits-wipe = old_finish
    alcohol-drop = old_finish
    thinner-drop = old_finish
    xylene-drop = old_finish
    water-drop = old_finish
    fingernail = old_finish
    tape-pull = old_finish patch
    bleed-patch = patch
    crater-patch = patch
    """
)
"""Our test → object of a test."""

TOOLS: Table = _table(
    """
    random-orbit = machine
    hand-block = hand
    foam-pad = hand pad
    synthetic-pad = hand pad
    steel-wool = hand steel_wool
    sanding-stick = hand
    card-scraper = hand scraper
    pick = hand pick
    brass-brush = hand brush
    """
)

FAULTS: Mapping[str, str] = {
    **DEFECT_OF_FAULT,
    "lead-dust": "lead",
    "incomplete-removal": "incomplete_removal",
}
"""Our fault → name of a warning."""

CAUTIONS: Table = _table(
    """
    lead = lead
    lead-wet = lead
    oily-rags = self_heating_rags
    vapour = solvent_vapour fire_flash
    wash-solvent = solvent_vapour fire_flash
    remover = solvent_vapour fire_flash
    spray-mist = solvent_vapour
    caustic = caustic_burn
    heat = fire_flash
    dust = wood_dust
    bleach-oxalic-acid = oxalic_dust bleach_burn
    bleach = bleach_burn
    veneer = veneer_budget
    iron = iron_stain
    cedar = softening_in_use
    white = yellowing
    knives = film_cut_by_knives food_contact
    food = food_contact food_contact_cure
    lid = child_entrapment
    fades = colour_fades
    upkeep = upkeep_needed
    mould = mould_spores
    """
)
"""Id of a caution, or its first word → hazards that its text names."""

LOOKS_OFFERED: Table = _table(
    """
    natural = natural_clear
    limed = limed_clear
    whitewashed = limed_clear
    bleached = natural_clear
    dyed = stained_clear
    distressed = opaque_distressed
    stained = stained_clear strip_then_stain
    opaque = opaque_light opaque_dark opaque_distressed
    oiled = oiled
    keep = freshened
    bare = leave_bare
    odour-free = odour_free_interior
    """
)
"""Kind of look that a refusal offers → looks of the file that it meets."""

SUFFIXES = ("_darker", "_later", "_with_upkeep", "_satin", "_other_finish", "_over_old_film")
"""What a listed alternative may say beyond its base look."""

POROUS_PAINTS = _names("chalk_paint milk_paint")
"""Paints on which wax is the top coat."""
