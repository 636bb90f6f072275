"""
The table for remedies: what a source did about a fault, as acts and how deep they go.

Written from the trade's common verbs before any remedy was read, and not changed by a score since.

Acts
----
``leave`` nothing; ``wait`` time, warmth, moving air; ``wash`` cleaning and wiping with a solvent; ``abrade``
scuffing, levelling, rubbing out; ``recoat`` a further coat of the same kind; ``revive`` softening the film with
its own solvent; ``repair`` gluing, ironing, filling, touching up; ``seal`` a barrier or a primer; ``strip`` taking
films or stain off to the wood; ``bleach`` taking colour out of the wood; ``look`` another look than was wanted.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from case_reading import read_text, words

ACTS = words(
    """
leave = leave; leave it; accept; accept it; live with; nothing; do nothing; no remedy; tolerate; ignore
wait = wait*; warm*; heat*; more time; time; dry out; drying; dry; let dry; cure*; fan; ventilat*; air; dehumidif*
wait = patience; warm room; raise temperature; higher temperature; hair dryer; lamp
wash = wash*; clean*; wipe*; wipe off; rinse*; scrub*; degreas*; mineral spirits; white spirit; naphtha; soap
wash = ammonia; acetone; vinegar; neutrali*; solvent wipe; tack*; vacuum*; disinfect*; mould wash; fungicid*
abrade = sand*; scuff*; abrad*; level*; rub*; rub out; rub down; flatten*; steel wool; polish*; buff*; sand smooth
abrade = sand level; sand back; denib*; cut back; smooth*; wet sand*; sand lightly; compound
recoat = recoat*; coat again; another coat; more coats; repaint*; topcoat*; new coat; fresh coat; apply; reapply
recoat = further coat; re coat*; revarnish*; relacquer*; overcoat*; spray*; brush*; coat*
revive = reamalgamat*; re amalgamat*; retarder; mist*; thinner; lacquer thinner; alcohol; french polish*
revive = reflow*; re flow*; dissolve*; soften*; padding; pad with alcohol
repair = glue*; reglue*; inject*; iron*; clamp*; fill*; patch*; touch up; burn in; slit*; press*; replace*; syringe
repair = tone*; toner; tint*; blend*; pore filler; colour in; plane*; trim*; wax
seal = seal*; shellac; dewaxed; barrier*; primer*; prime*; block*; isolat*; stain blocking; stain blocker; sealer
seal = bonding; knotting; wash coat
strip = strip*; remover; stripper; paint remover; bare wood; to bare; bare; remove*; take off; taken off; start over
strip = scrape*; sand off; sand to bare; sand to wood; refinish*; back to wood; start again; redo; peel off
strip = dig out; pick out; wash off the stain; wash out; remove finish; remove paint; remove coat
bleach = bleach*; oxalic; oxalic acid; peroxide; chlorine
look = paint it; paint over; opaque; darker colour; darker stain; distress*; glaze*; paint instead; dark colour
"""
)
DEPTH_OF_ACT: Mapping[str, str] = {
    "leave": "leave",
    "wait": "wait",
    "wash": "film",
    "abrade": "film",
    "recoat": "film",
    "revive": "film",
    "repair": "film",
    "seal": "seal",
    "strip": "wood",
    "bleach": "wood",
    "look": "look",
}
"""How deep an act goes, in the words of our mends."""

ORDER = ("leave", "wait", "film", "seal", "wood")
"""Depths, shallow first; another look stands beside them."""
ALTERNATIVE = re.compile(r"[,;.]\s+(?:or|otherwise|else|if that fails|failing that)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedy:
    """
    What a source did.

    Attributes
    ----------
    acts
        All acts named.
    depths
        The deepest act of each alternative, in the words of our mends.
    """

    acts: frozenset[str]
    depths: frozenset[str]


def read_remedy(text: str) -> Remedy:
    """
    Return what a remedy asks for.

    Parameters
    ----------
    text
        Remedy as the source tells it.

    Returns
    -------
    Remedy
        No depths where no act is understood.
    """
    depths, acts = set(), set()
    for part in ALTERNATIVE.split(text):
        found = set(read_text(part, ACTS).tags)
        acts |= found
        if found:
            depths.add(deepest(DEPTH_OF_ACT[act] for act in found))
    return Remedy(acts=frozenset(acts), depths=frozenset(depths))


def deepest(depths: Iterable[str]) -> str:
    """Return the deepest of some depths; another look counts as deep as the wood."""
    ordered = sorted(depths, key=lambda depth: ORDER.index(depth) if depth in ORDER else len(ORDER))
    return ordered[-1]


CHANGE_KINDS: Mapping[str, str] = {
    "clean": "wash",
    "rinse": "wash",
    "scuff": "key",
    "key": "key",
    "bare": "strip",
    "grain": "sand",
    "finer": "sand",
    "coarser": "sand",
    "grain-wise": "sand",
    "wash-coat": "barrier",
    "seal": "barrier",
    "tie": "barrier",
    "thin": "lay",
    "wiped": "lay",
    "slow": "lay",
    "stirred": "lay",
    "method": "lay",
    "fewer": "coats",
    "one": "coats",
    "more": "coats",
    "both-sides": "coats",
    "between": "wait",
    "last": "wait",
    "prep": "wait",
    "air": "air",
    "drop": "leave out",
}
"""Change of `case_twin_words` → what kind of change it is; ``put`` is a barrier or another material."""
_BARRIERS = frozenset(
    {
        "shellac-dewaxed", "shellac-primer", "oil-primer", "bonding-primer", "waterborne-primer", "vinyl-sealer",
        "lacquer-sanding-sealer", "oil-conditioner", "exterior-primer",
    }
)  # fmt: skip


def change_kind(change: str) -> str:
    """Return the kind of a change in the words of `case_twin_words`."""
    kind, _, what = change.partition(":")
    if kind == "put":
        return "barrier" if what in _BARRIERS else "material"
    return CHANGE_KINDS.get(kind, kind)
