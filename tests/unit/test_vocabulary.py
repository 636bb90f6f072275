"""Words that people bring: woods, boards, finishes, damage; each must be understood."""

import pytest

from plan_pieces import facts
from refettle.domain.workshop import Workshop
from refettle.files.piece_file import read_piece
from refettle.services.cautions import LEAD_TOLD
from refettle.services.plan import plan_piece

WORDS = {
    "wood": (
        "oak, ash, beech, birch, cherry, walnut, mahogany, teak, rosewood, pine, knotty pine, spruce, larch, fir, cypress, "
        "redwood, elm, chestnut, maple, sycamore, poplar, lime wood, alder, wenge, ebony, padauk, cocobolo, aromatic cedar, "
        "rubberwood, acacia, mango wood, meranti, lauan, iroko, pear, apple, plum, olive, yew, hickory, sweetgum, "
        "butternut, robinia, hornbeam, satinwood, merbau, zebrano, paulownia, bamboo, rattan, cork, mdf, particleboard, "
        "chipboard, hardboard, plywood face, melamine, laminate, printed foil, hardwood, softwood"
    ),
    "film": (
        "shellac, french polish, nitrocellulose lacquer, varnish, polyurethane, danish oil, linseed oil, tung oil, "
        "hard-wax oil, "
        "wax, milk paint, chalk paint, latex paint, emulsion, oil paint, lead paint, distemper, casein, limewash, "
        "bitumen varnish, polyester, uv cured, catalysed lacquer, two-part polyurethane, graining, piano finish, "
        "stain, dye, whitewash, grain filler, factory finish"
    ),
    "damage": (
        "white rings, black rings, scratches, dents, burn, loose joint, split panel, lifted veneer, missing veneer, "
        "worn runners, loose foil, sagging bottom, door sags, missing key, missing handle, stripped holes, loose castor, "
        "woodworm, bedbugs, rot, swollen chipboard, smells of mouse, musty smell, smoke smell, broken glass"
    ),
    "contaminant": "wax, silicone, kitchen grease, grime, nicotine, mildew, caustic residue, glue smears, furniture polish",
}  # fmt: skip
EACH = [(kind, word.strip()) for kind, words in WORDS.items() for word in words.split(",")]


@pytest.mark.parametrize(("kind", "word"), EACH, ids=[f"{kind}: {word}" for kind, word in EACH])
def test_a_word_that_people_bring_is_understood(kind: str, word: str) -> None:
    assert facts().find(kind, word) is not None


def test_paint_that_is_called_lead_paint_is_treated_as_such_whatever_its_age() -> None:
    text = (
        "piece: door\nform: list\nwood: pine\nera: 1995\nold finish: lead paint\nlook: opaque white satin\n"
        "surfaces: {face: {area: 1 m2}}\n"
    )
    piece, findings = read_piece(text, "door.yaml", facts())
    assert piece is not None, findings
    plan = plan_piece(piece, Workshop(), facts())
    assert any(advice.needed for _, advice in plan.tests)
    assert LEAD_TOLD < 0.95


@pytest.mark.parametrize(
    "cls", ["polyester-finish", "distemper", "lead-paint", "uv-cured-finish", "japan-black"]
)
def test_what_is_met_on_old_pieces_alone_is_never_offered_as_a_coat(cls: str) -> None:
    assert facts().film(cls).role == ("old",)
