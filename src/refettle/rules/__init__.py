"""The fault rules: about fifteen mechanisms, one registry."""

from refettle.rules import (
    abrasion,
    absorption,
    adhesion,
    application,
    bleed,
    chemistry,
    craters,
    cure,
    hardness,
    humidity,
    lead,
    lifting,
    light,
    recesses,
    thickness,
    use,
    water_on_wood,
)
from refettle.rules.card import Card

RULES: tuple[Card, ...] = (
    *adhesion.CARDS,
    *bleed.CARDS,
    *cure.CARDS,
    *thickness.CARDS,
    *humidity.CARDS,
    *craters.CARDS,
    *lifting.CARDS,
    *absorption.CARDS,
    *abrasion.CARDS,
    *water_on_wood.CARDS,
    *chemistry.CARDS,
    *light.CARDS,
    *hardness.CARDS,
    *recesses.CARDS,
    *use.CARDS,
    *application.CARDS,
    *lead.CARDS,
)
"""Every rule there is; the order has no meaning."""

BY_LEVEL: dict[str, tuple[Card, ...]] = {
    level: tuple(card for card in RULES if level in card.levels)
    for level in ("coat", "work", "expose", "use")
}
"""Rules by the event at which they are asked."""
