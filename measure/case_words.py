"""
The word table: how the words of a trade case become surfaces, steps and air.

Frozen before the first score. It knows no case: every entry says what a word means at the bench,
whatever comes of it. How the tables of phrases are written and read: `case_reading`.

Marks that end up in ``Step.how``
---------------------------------
use, expose
    sun heat cold freezing damp wet-storm hot-dish standing-water plastic-cover stacked wrapped shut
    dark wall years hands freight children food, and beside these: cleaning (washed with cleaners),
    alcohol (drinks, perfume), dry-air (heated winter room).
    ``Step.what`` is the first mark found, or empty; ``wait_after_h`` the stated length of the event.
coat
    not wiped, wiped, slow thinner, fast thinner, thinned, warm, chilled, over-brushed, shaken,
    dry spray, wrong mix, old stock, tinted, one side, spot, mist; ``film`` is thin, normal or heavy.
sand, scuff, rub_out
    steel wool, synthetic, across grain, wet, dry, to bare, edges, machine, light; ``method`` is a tool id.
clean, rinse, strip
    light (one wipe, quick), thorough (several washes, scrubbed), flooding, soaking, hot, not rinsed, one pass;
    a stripping worked with steel wool carries its mark.

What was frozen when
--------------------
The tables in this file were committed before the first score (607777f) and widened with the reading of cases and
of advice (7bbe36c, 742371a); the first score was taken at 90998d9, and no entry has changed since. Later a second
set by other writers showed words that the tables did not know. They were widened once, by `case_wider_words`:
words are added, no entry is changed, and every case of the set the tables were written with is read as before.
"""

from collections.abc import Mapping

import case_wider_words as wider
from case_reading import words

CASES_WRITTEN_YEAR = 2026
"""Year from which "ten years old" is counted back: the year in the header of the schema."""

Table = Mapping[str, str]

# --- closed vocabulary of the schema --------

WOODS: Table = {
    "ash": "ash",
    "birch": "birch",
    "cedar_aromatic": "cedar-aromatic",
    "cherry": "cherry",
    "cocobolo": "cocobolo",
    "cypress": "cypress",
    "ebony": "ebony",
    "fir": "fir",
    "hardwood_unspecified": "hardwood",
    "laminate_or_foil": "foil",
    "mahogany": "mahogany",
    "maple": "maple",
    "mdf": "mdf",
    "oak": "oak",
    "padauk": "padauk",
    "pine_clear": "pine",
    "pine_knotty": "pine-knotty",
    "poplar": "poplar",
    "redwood": "redwood",
    "rosewood": "rosewood",
    "softwood_unspecified": "softwood",
    "teak": "teak",
    "walnut": "walnut",
    "wenge": "wenge",
    # beyond the header, should another file of the schema use them
    "beech": "beech",
    "chestnut": "chestnut",
    "elm": "elm",
    "alder": "alder",
    "basswood": "basswood",
    "spruce": "spruce",
    "larch": "larch",
    "pine": "pine",
    "cedar_western": "cedar-western",
    "cedar": "cedar-western",
    "particleboard": "particleboard",
    "hardboard": "hardboard",
}

WOOD_KINDS: Table = {
    "teak": "oily",
    "rosewood": "oily",
    "cocobolo": "oily",
    "padauk": "oily",
    "ebony": "oily",
    "wenge": "oily",
    "redwood": "colour",
    "cedar-aromatic": "colour",
    "cedar-western": "colour",
    "cypress": "resin",
    "pine-knotty": "resin",
    "larch": "resin",
    "mdf": "board",
    "mdf-edge": "board",
    "particleboard": "board",
    "hardboard": "board",
    "foil": "foil",
}
"""Kinds of wood that behave unlike the rest: a second substrate of another kind becomes a surface."""

BUILDS: Mapping[str, tuple[str, int]] = {
    "laminate_on_particleboard": ("laminate-on-particleboard", 150),
    "mdf": ("mdf", 0),
    "plywood": ("plywood", 500),
    "solid": ("solid", 0),
    "veneer": ("veneer", 700),
    "veneer_and_solid": ("veneer-and-solid", 700),
    "veneer_on_mdf": ("veneer-on-mdf", 600),
    "veneer_on_particleboard": ("veneer-on-particleboard", 500),
}
"""Build id and face thickness [µm] (common practice; the cases do not state it)."""

CORE_OF_BUILD: Table = {
    "mdf": "mdf-edge",
    "veneer-on-mdf": "mdf-edge",
    "laminate-on-particleboard": "particleboard",
    "veneer-on-particleboard": "particleboard",
}
"""Wood that shows where the core of a build is exposed."""

CLASSES: Mapping[str, tuple[str, str]] = {
    "shellac_clear_waxed": ("shellac-waxed", "topcoat"),
    "shellac_clear_dewaxed": ("shellac-dewaxed", "topcoat"),
    "shellac_clear_unspecified": ("shellac-unstated", "topcoat"),
    "shellac_primer_pigmented": ("shellac-primer", "prime"),
    "oil_primer_stainblocking": ("oil-primer", "prime"),
    "waterborne_primer": ("waterborne-primer", "prime"),
    "bonding_primer": ("bonding-primer", "prime"),
    "wood_conditioner_oil": ("oil-conditioner", "condition"),
    "sanding_sealer_lacquer": ("lacquer-sanding-sealer", "seal"),
    "vinyl_sealer": ("vinyl-sealer", "seal"),
    "pore_filler_oil": ("oil-pore-filler", "fill_pores"),
    "pore_filler_waterborne": ("waterborne-pore-filler", "fill_pores"),
    "oil_stain_wiping": ("oil-stain", "stain"),
    "gel_stain_oil": ("gel-stain", "stain"),
    "stain_polyurethane_combined": ("stain-polyurethane", "topcoat"),
    "dye_water": ("water-dye", "stain"),
    "dye_solvent": ("solvent-dye", "stain"),
    "glaze_oil": ("oil-glaze", "glaze"),
    "lacquer_toner": ("lacquer-toner", "tone"),
    "drying_oil": ("drying-oil", "topcoat"),
    "oil_varnish_blend": ("oil-varnish-blend", "topcoat"),
    "varnish_alkyd": ("alkyd-varnish", "topcoat"),
    "polyurethane_oil": ("oil-polyurethane", "topcoat"),
    "polyurethane_oil_modified_waterborne": ("oil-modified-waterborne", "topcoat"),
    "polyurethane_waterborne": ("waterborne-polyurethane", "topcoat"),
    "acrylic_clear_waterborne": ("waterborne-acrylic", "topcoat"),
    "lacquer_nitro": ("nitro-lacquer", "topcoat"),
    "lacquer_precat": ("precat-lacquer", "topcoat"),
    "conversion_varnish": ("conversion-varnish", "topcoat"),
    "latex_paint": ("latex-paint", "paint"),
    "acrylic_paint_waterborne": ("acrylic-paint", "paint"),
    "alkyd_enamel": ("alkyd-enamel", "paint"),
    "chalk_paint": ("chalk-paint", "paint"),
    "milk_paint": ("milk-paint", "paint"),
    "paste_wax": ("paste-wax", "wax"),
}
"""Coat class of the schema → class id and verb."""

SEALS_BELOW_OTHERS = frozenset({"shellac-waxed", "shellac-dewaxed", "shellac-unstated"})
"""Clear films that count as a seal when another coat follows."""

USUAL_WAIT_H: Mapping[str, float] = {
    "shellac-waxed": 3,
    "shellac-dewaxed": 3,
    "shellac-unstated": 3,
    "shellac-primer": 3,
    "oil-primer": 24,
    "waterborne-primer": 4,
    "bonding-primer": 12,
    "oil-conditioner": 2,
    "lacquer-sanding-sealer": 2,
    "vinyl-sealer": 1,
    "oil-pore-filler": 48,
    "waterborne-pore-filler": 6,
    "oil-stain": 24,
    "gel-stain": 24,
    "stain-polyurethane": 24,
    "water-dye": 12,
    "solvent-dye": 2,
    "oil-glaze": 24,
    "lacquer-toner": 1,
    "drying-oil": 48,
    "oil-varnish-blend": 24,
    "alkyd-varnish": 24,
    "oil-polyurethane": 24,
    "oil-modified-waterborne": 6,
    "waterborne-polyurethane": 4,
    "waterborne-acrylic": 3,
    "nitro-lacquer": 2,
    "precat-lacquer": 2,
    "conversion-varnish": 3,
    "latex-paint": 6,
    "acrylic-paint": 6,
    "alkyd-enamel": 24,
    "chalk-paint": 4,
    "milk-paint": 4,
    "paste-wax": 12,
}
"""Wait [h] taken where a case leaves it open: what a careful worker gives it (common practice)."""

WAIT_BEFORE_USE_H = 336.0
"""Wait [h] before ordinary use where the case leaves it open (common practice: two weeks)."""

WAIT_AFTER_WET_WORK_H: Mapping[str, float] = {
    "clean": 6,
    "strip": 1,
    "rinse": 24,
    "neutralise": 24,
    "bleach": 24,
}
"""Wait [h] after wet work where the case leaves it open (common practice)."""

OLD_FINISHES: Mapping[str, tuple[tuple[str, str], ...]] = {
    "none": (),
    "none_after_stripping": (),
    "acrylic_clear_waterborne": (("clear", "waterborne-acrylic 1"),),
    "alkyd_enamel": (("paint", "alkyd-enamel 1"),),
    "chalk_paint_waxed": (("paint", "chalk-paint 1"), ("clear", "paste-wax 1")),
    "conversion_varnish": (("clear", "conversion-varnish 1"),),
    "factory_coating": (("unknown", "factory-coating 1"),),
    "lacquer_catalysed": (("clear", "conversion-varnish 0.5 precat-lacquer 0.5"),),
    "lacquer_or_varnish_over_red_stain": (("clear", "nitro-lacquer 0.5 old-varnish 0.5"),),
    "lacquer_unspecified": (("clear", "nitro-lacquer 0.7 precat-lacquer 0.2 conversion-varnish 0.1"),),
    "latex_paint": (("paint", "latex-paint 1"),),
    "oil_varnish_blend": (("clear", "oil-varnish-blend 1"),),
    "polyurethane_oil": (("clear", "oil-polyurethane 1"),),
    "shellac_clear": (("clear", "shellac-unstated 1"),),
    "shellac_clear_waxed": (("clear", "shellac-waxed 1"),),
    "varnish_alkyd": (("clear", "alkyd-varnish 1"),),
    "varnish_unknown": (("clear", "old-varnish 1"),),
    "unknown": (("unknown", ""),),
    "paint_unknown": (("paint", ""),),
    "paint_layers_unknown": (("paint", ""), ("paint", "")),
}
"""Old finish → layers from the wood upwards: kind, then class ids with weights; no classes = prior by age."""

FINISH_WORDS = words(
    """
paint_unknown = paint*; enamel; primer; primed; gloss paint; house paint
paint_layers_unknown = paint layers; several paints; many paints; old paints
latex_paint = latex; emulsion
chalk_paint_waxed = chalk paint; chalky paint
alkyd_enamel = oil paint; alkyd; alkyd paint; lead paint
lacquer_unspecified = lacquer; sprayed lacquer; factory lacquer; nitrocellulose; nitro
lacquer_catalysed = catalysed; catalysed lacquer; precat; precatalysed; two pack; two part; polyester
lacquer_catalysed = uv cured
factory_coating = factory; factory finish; melamine; laminate; foil; powder coat; original coating
shellac_clear = shellac; french polish; spirit varnish
paste_wax = wax; waxed; paste wax; beeswax
oil_varnish_blend = oil; oiled; danish oil; teak oil; oil finish; hardwax oil; wax oil
drying_oil = linseed*; tung oil; raw oil
polyurethane_oil = polyurethane; oil polyurethane; urethane
polyurethane_waterborne = waterborne; water based; waterborne polyurethane
varnish_unknown = varnish; old varnish; oil varnish; clear; clear coat; old finish
none = bare; unfinished; raw; stripped; none
unknown = unknown; unidentified
- = old; layers; over; stain; red; finish; original; new; worn; clear finish; modern
"""
    + wider.FINISH_WORDS
)
"""Old finishes outside the header's list → the nearest word that is in it."""

OLD_STAINS: Mapping[str, tuple[str, int]] = {"lacquer_or_varnish_over_red_stain": ("red-stain", 80)}
"""Causes in the wood that the word for the old finish itself tells of, with strength [%]."""

LOOKS: Mapping[str, tuple[str, str, int | None]] = {
    "opaque_light": ("opaque", "white", 10),
    "opaque_dark": ("opaque", "black", 90),
    "opaque_distressed": ("opaque", "", 40),
    "stained_clear": ("stained", "brown", 65),
    "natural_clear": ("natural", "", None),
    "odour_free_interior": ("odour-free", "", None),
}
"""Wanted look → kind, colour, depth [%]."""

METHODS: Table = {
    "aerosol": "aerosol",
    "brush": "brush",
    "pad": "pad",
    "roller": "roller",
    "spray": "spray",
    "wipe": "wipe",
}

GEOMETRY: Mapping[str, tuple[str, tuple[int, int, int], str]] = {
    "flat": ("flat", (100, 0, 0), ""),
    "corners": ("", (50, 10, 40), ""),
    "drawer_front": ("flat", (90, 10, 0), "upright"),
    "edges": ("", (20, 80, 0), ""),
    "end_grain": ("", (80, 20, 0), ""),
    "inlay": ("flat", (100, 0, 0), ""),
    "inside_carcass": ("flat", (80, 0, 20), "inside"),
    "joints": ("", (70, 10, 20), ""),
    "long": ("", (100, 0, 0), ""),
    "moulding": ("moulded", (30, 40, 30), ""),
    "open_pores": ("", (100, 0, 0), ""),
    "panel": ("panel", (80, 10, 10), "upright"),
    "slats": ("slats", (50, 25, 25), ""),
    "slender": ("", (20, 80, 0), "upright"),
    "turned": ("turned", (0, 70, 30), "upright"),
    "vertical": ("", (100, 0, 0), "upright"),
    "carving": ("carved", (10, 40, 50), ""),
    "carved": ("carved", (10, 40, 50), ""),
}
"""Geometry word → relief, shares of flat, edge, recess [%], orientation; the shares are averaged."""

RELIEF_ORDER = ("carved", "slats", "turned", "moulded", "panel", "flat")
"""The relief that is hardest to work decides."""

CLIMATE_BASIS = frozenset({"stated", "assumed", "not_known", "converted"})

OPS = frozenset(
    {"clean", "strip", "rinse", "bleach", "sand", "scuff", "rub", "wait", "expose", "use", "coat"}
)
STEP_KEYS = frozenset(
    {
        "n",
        "op",
        "class",
        "method",
        "coats",
        "wait_between_h",
        "wait_after_h",
        "film",
        "note",
        "what",
        "grit",
    }
)

# --- free text: what a cleaning, rinse, strip or bleach is done with --------

CLEANERS = words(
    """
soap-water = soap; soap and water; mild soap and water; dish soap; dish liquid; dishwashing liquid
soap-water = oil soap; detergent; detergent and water; mild detergent; soapy water; washing up liquid
soap-water = saddle soap; castile soap; shampoo
?soap-water = wash*; cleaned; cleaner
?soap-water thorough = scrub*
alkaline-degreaser = household cleaner; all purpose cleaner; kitchen cleaner; spray cleaner; degreas*; tsp
alkaline-degreaser = trisodium phosphate; sugar soap; washing soda; soda; borax; phosphate cleaner
alkaline-degreaser = grease removed
ammonia-water = glass cleaner; window cleaner; ammonia; ammonia and water
thinner-wipe = deglosser; liquid deglosser; liquid sandpaper; lacquer thinner; thinner; cellulose thinner
thinner-wipe = xylene; toluene; stripper; after wash; stripper wash
mineral-spirits = mineral spirits; white spirit; paint thinner; turpentine; turps; odourless spirits
mineral-spirits = solvent; solvents; solvent wipe; wax remover; polish removed; wax removed; dewaxed
mineral-spirits = stoddard; solvent rag
naphtha = petroleum spirit; wax and grease remover; silicone remover; naphtha; benzine; heptane
naphtha = lighter fluid; white gas; camp fuel
alcohol-wipe = alcohol; denatured alcohol; methylated spirit*; ethanol; isopropyl alcohol; isopropanol
acetone-wipe = acetone
vinegar-water = vinegar; vinegar and water; acetic acid; citric acid; lemon juice; dilute acid
water-rinse = water; clean water; plain water; warm water; distilled water
water-rinse hot = hot water; steam clean*
water-rinse thorough flooding = hose*; pressure wash*; garden hose
flooding = flood*
thorough = several; twice; repeated*; thorough*; many; well; two washes; changes of; until clean
?water-rinse = rins*
bleach-water = bleach; chlorine bleach; household bleach; laundry bleach; bleach and water; bleach solution
mould-wash = antibacterial; antibacterial spray; disinfect*; mildew wash; mould wash; mold wash; fungicid*
mould-wash = mildew cleaner; peroxide; hydrogen peroxide; enzyme*; biocide
vacuum = vacuum*; blown*; blow*; compressed air; air hose; dusting brush; dry brush*; magnet
?vacuum = brushed; brush
tack-cloth = tack*; tack cloth; tack rag
dry-cloth = microfibre; microfiber; dust*; dry cloth; dry wipe; light wipe; lightly wiped; quick wipe
dry-cloth = dry rag; baking soda; cheesecloth; dry; lint free
damp-cloth = damp; damp cloth; damp rag; damp sponge; damp paper towel; wet cloth; wet rag; moist*
damp-cloth = water wipe; damp wipe
?damp-cloth = sponge*; wiped down; wipe down; wip*
- = wiped dry; dried; dirt; grime; grease; shellac; silicone; wax; polish residue; loose dirt; old
- = dust off; paste
polish-on = furniture polish; polish*; lemon oil; orange oil; oil polish; silicone polish; spray polish
polish-on = wax polish
light = one wipe; once; single; quick*; light*; brief*
neutral = neutrali*
skip = none; nothing; not cleaned; no cleaning; not washed; not rinsed; no rinse; unwashed; skipped
skip = not neutrali*; omitted; no wash; no wipe; no prep; uncleaned
steel_wool = steel wool
synthetic = abrasive pad; synthetic pad; nylon pad; green pad; scouring pad
air = ozone; aired; charcoal
"""
    + wider.CLEANERS
)
"""Cleaning words → cleaner ids and marks; ``?`` = only when nothing more exact is said."""

REMOVERS = words(
    """
mild-remover = citrus*; citrus gel; citrus type gel; soy*; gel stripper; gel remover; safe stripper
mild-remover = water based stripper; waterborne stripper; dibasic ester; benzyl alcohol; slow stripper
mild-remover = eco stripper; environment* stripper; mild stripper; nmp
?mild-remover = gel
caustic = poultice; alkaline paste; alkaline stripper; caustic*; lye; sodium hydroxide; potassium hydroxide
caustic = dip tank; lime; ammonia; washing soda; soda; tsp; oven cleaner
caustic hot = hot tank
?caustic = dip*
dichloromethane = methylene chloride; dichloromethane; dcm; chlorinated
?strong-solvent = chemical*; stripper; remover; stripped; professional*; commercial*
strong-solvent = chemical stripper; paint remover; paint stripper; paste stripper; paste remover
strong-solvent = semi paste; solvent; solvent stripper; varnish remover; acetone; lacquer thinner
strong-solvent = refinisher; refinishing solvent; strong stripper; wax containing; waxy stripper; thinner
alcohol = alcohol; denatured alcohol; methylated spirit*; ethanol
heat-gun = heat; heat gun; hot air; infrared; torch; blowtorch
heat-gun wet = steam*
?card-scraper = scrap*
card-scraper = card scraper; cabinet scraper
?sand = sand*; sanding
sand = sanded off
?sand machine = sander
sand machine = belt sander; drum sander
light = residue wiped; once; partly; partial*; top layer*
not_rinsed = residue left; not rinsed; no rinse; without rins*; unrinsed; not neutrali*; no neutrali*
not_rinsed = without neutrali*; no wash*; without wash*; not washed
rinse = rins*; neutrali*; wash*; hose*; flush*
thorough = twice; two passes; several; repeated*; thorough*
hot = hot
- = overnight; paint; shellac; old finish; varnish; lacquer; paste; bath; plastic; liquid; under plastic
- = layers; coats; all; solution
steel_wool = steel wool
skip = none
"""
    + wider.REMOVERS
)
"""Stripping words → remover ids and marks; ``sand`` = the old finish is sanded off."""

BLEACHES = words(
    """
oxalic-acid = oxalic*; oxalic acid; deck brightener; citric acid
?oxalic-acid = wood bleach; bleach*; acid
peroxide-alkali = two part*; two component; a b; a and b; peroxide; hydrogen peroxide; lye; sodium hydroxide
chlorine = chlorine*; household bleach; laundry bleach; pool*; swimming pool; hypochlorite
chlorine = sodium hypochlorite
?chlorine = household
rinse = rins*; wash*; neutrali*
not_rinsed = not rinsed; not neutrali*; unrinsed; no rinse; no neutrali*; without neutrali*; without rins*
thorough = twice; several
spot = spots
- = black*; ring*; stain*; hot; warm; solution; crystals; wood; spot; mix
skip = none
"""
    + wider.BLEACHES
)

# --- free text: sanding, scuffing, rubbing --------

ABRASIVES = words(
    """
steel_wool = steel wool; wire wool; wool
synthetic = bronze wool; synthetic; synthetic pad; synthetic steel wool; synthetic wool; nylon
synthetic = abrasive pad; grey pad; gray pad; white pad; maroon pad; nonwoven; non woven; plastic wool
foam = pad; pads; sponge*; foam; foam pad; sanding sponge
block = block; hand; by hand
machine = orbital; random orbit; random orbital; orbit sander; sander; machine*; power*; electric; belt
machine = belt sander; drum; drum sander; wide belt; vibrating; orbital sander; palm sander; disc sander
machine = detail sander; power sanded; machine sanded
across_grain = across the grain; across grain; cross grain; against the grain; swirls; circles; circular*
across_grain = cross scratches
- = with the grain; along the grain; soft layers taken off; soft layers; smooth*; level*; flats; flat*; fur
- = raised grain; grain; rubbed; sanded; sanding; hard*; heav*; aggressive*; thorough*; well; stearated
- = stearate*; end grain; last coat; maroon; grey; gray; white; green; red; belt sanded; paper; new paper
- = discs; disc; final; between
wet = wet; wet sanded; with water; water; soapy water; wet and dry; mineral spirits; with oil; oil
wet = lubricat*
dry = dry
to_bare = to bare; to bare wood; bare wood; to wood; to the wood; to raw wood; raw wood; down to wood
to_bare = all finish off; finish removed; finish sanded off; old finish off; through the finish; paint off
to_bare = sanded off; completely; stripped
edges = edges; edge; corners
edges to_bare = edges rubbed through; distress*; rub* through
light = light*; lightly; dull*; scuff*; key; keyed; degloss*; between coats; matt*; roughen*; abrad*
light = off the fur; fuzz; nibs; denib*
buff = buff*; polish*; rub* out; pumice; rottenstone; compound; rubbing compound; toothpaste; ash
buff = buffed last coat
wax = wax; paste wax; with wax; waxed; mayonnaise; petroleum jelly
alcohol = alcohol; denatured alcohol
cloth = cloth; rag; burlap
p80 = coarse
p60 = very coarse
p120 = medium
p220 = fine
p280 = very fine
p320 = extra fine
p400 = superfine
p600 = ultra fine
scraper = scrap*; card scraper; cabinet scraper; planed; plane
skip = none; not sanded; no sanding; unsanded
burnish = worn paper; burnish*; dull paper
"""
    + wider.ABRASIVES
)
"""Abrasive words → marks; ``pNNN`` is a grit where only a word is given."""

STEEL_WOOL_GRITS: Mapping[str, int] = {
    "0000": 600,
    "000": 400,
    "00": 280,
    "0": 220,
    "1": 150,
    "2": 120,
    "3": 80,
}
"""Steel wool number → comparable FEPA P grit (common practice)."""

GRITS = (60, 80, 100, 120, 150, 180, 220, 240, 280, 320, 400, 600, 800, 1000, 1500, 2000)
"""Grits as they follow each other in the shop, FEPA P."""

GRIT_UNSTATED: Mapping[str, int] = {"sand": 180, "scuff": 320, "rub_out": 600}

TOOL_OF_MARK: Mapping[str, str] = {
    "steel wool": "steel-wool",
    "synthetic": "synthetic-pad",
    "foam": "foam-pad",
    "machine": "random-orbit",
    "block": "hand-block",
    "scraper": "card-scraper",
    "cloth": "synthetic-pad",
}

# --- free text: how a coat goes on --------

COATING = words(
    """
heavy = heavy; heavily; thick*; very wet; generous*; flood*; pooled; puddle*; too much; loaded; excess*
heavy = poured; one heavy coat; single heavy; one thick; gob*; dripping; soaked; saturat*; poured on
heavy = build coat; high build; extra heavy
- = wet coat*; full wet; full; normal wet; normal; medium; even; standard; usual; regular; unthinned
- = full strength; undiluted; brushed out; foam*; foam brush; foam roller; both sides; both faces
- = before dry; not dry; still wet; tacky; no sanding; without sanding; not sanded; gloss; satin; matt
- = matte; flatted; flat; semi gloss; dewaxed; waxed; clear; white; black; dark; pale; grey; gray; cream
- = red; blue; green; brown; yellow; primer; sealer; paint; stain; varnish; lacquer; shellac; oil; wax
- = polyurethane; boiled; tung; linseed; danish; linseed oil; flattening; toner; hvlp; airless; gun; rag
- = cloth; padded; rolled; brushed; sprayed; rubbed in; rubbed on; second coat; first coat; each coat
- = coat*; percent; mineral spirits; mineral; spirits; alcohol; turpentine; naphtha; thinner; fast; slow
- = evaporat*; catalyst; hardener; pigment; tint; gravity; quick*; drop cloth; per cent; vertical
- = horizontal
thin = thin; thinly; thin coats; light; lightly; sparing*
thin mist = mist; mist coat*; dust coat*; fog*; tack coat
thin thinned = wash coat; washcoat; spit coat
not_wiped = not wiped; not wiped off; unwiped; left on; left to dry; without wiping; excess left
not_wiped = excess not wiped; excess not removed; no wiping; not wiped clean; never wiped; partly wiped
not_wiped = poorly wiped; wiped late
wiped = wiped; wiped off; wiped back; wiped clean; wiped dry; excess wiped; excess wiped off
wiped = excess removed; buffed; buffed off
slow_thinner = slow thinner; retard*; retarder; slow solvent; slow reducer; flow additive; extender
slow_thinner = conditioner added
fast_thinner = fast thinner; hot thinner; cheap thinner; fast solvent; acetone; fast evaporating
thinned = thinned; diluted; reduced; cut; half strength; thinned 50; with thinner; watered; water
warm = warm; warmed; heated
chilled = cold; chilled
over-brushed = over brushed; overbrushed; brushed back; back and forth; brushed over; overworked; worked
over-brushed = rebrushed; re brushed; going back; fast brush*; rolled fast; vigorous*; touched up; half dry
over-brushed = setting; forth
shaken = shaken; shaking; stirred hard; whisked
dry_spray = dry spray; sprayed dry; too far; far away; gun far; low air; high viscosity
wrong_mix = unmixed; not stirred; unstirred; wrong ratio; wrong catalyst; no hardener; no catalyst
wrong_mix = under catalysed; over catalysed; overcatalysed; too much catalyst; too much hardener
wrong_mix = catalyst double; double catalyst; double dose; extra catalyst; extra hardener; no activator
wrong_mix = hardener left out; catalyst left out; dose; pot life; past pot life
old_stock = expired; old stock; old shellac; old flakes; old can; years old; past date; stale; frozen
tinted = tinted; coloured; colored; dyed
one_side = one side; one face; top only; face only; underside bare; back left bare; back bare
spot = spot*; knots; only knots; knots only; worn areas
scuff_between = sanded between; scuffed between; rubbed between; steel wool between
raw_oil = raw; raw linseed
bonding_agent = bonding agent; with bonding agent; adhesion promoter
fisheye_additive = fish eye; fisheye; silicone additive
"""
    + wider.COATING
)
"""Words on how a coat is laid → film and marks."""

# --- free text: what the piece meets --------

EVENTS = words(
    """
sun = sun; sunlight; sunny; direct sun; sunny window; window; skylight; south facing; daylight; uv
sun heat = hot sun; conservatory; sunroom
- = light; hours in; night*; coaster*; felt; put back; put in; fitted; inside; storage; stored; store
- = months; use; dusted; dry room; indoor*; indoors; living room; bedroom; normal; room; shade; overnight
- = opened; open; air; aired; covered; covered up; exposed; direct; against; together; apartment; cedar
- = flow; through glass; behind glass; dish; dishes; bowl; towel; vapour; vapor; trunk; tape; masking tape
heat = heat; hot; warm; stove; oven; fireplace; heater; hair dryer; hot car; hot attic; attic; loft; summer
heat = car; car trunk; parked car; greenhouse; boiler; furnace; oven door; lamp heat; near heat
heat = hot water pipe*
heat dry-air = radiator
hot-dish = iron; hot dish*; hot plate*; hot pan; hot pot; hot cup; hot mug; hot coffee; hot drink*; coffee
hot-dish = casserole; pizza; pizza box; teapot; tea; pan; laptop; hot casserole*; cups; mug*; hot bowl*
hot-dish = serving dish*; kettle; toaster; hot iron; hot tray
cold = cold; winter; unheated; cool; garage
damp = cellar; basement; damp; humid*; moist*; wet; condens*; fog*; dew; sea air; coast*; bathroom; laundry
damp = tarp*; under a tarp; under tarp; swamp cooler; laundry room; shower; pool; monsoon; rainy season
damp = sauna
freezing cold = freez*; frost*; frozen; below zero; cold snap; snow; thaw*; ice cold
damp heat = steam*; tropic*
wet-storm = rain*; storm*; thunderstorm
wet-storm sun = outdoors; outside; porch; patio; garden; deck; weather*
wall = outside wall; exterior wall; against the wall; against the outside wall; against an outside wall
wall = against wall; wall*
standing-water = flood*; glass; glasses; wet glass*; cold drink*; drink*; vase*; flower pot*; plant*
standing-water = plant pot*; spill*; water; water glass; standing water; splash*; sink; wet dishes
standing-water = wet towel*; ice; leak*; dripping
hot-dish food = hot food
cleaning = wiped with water; cleaned; cleaner*; cleaning; wash*; wiped; wip*; scrub*; detergent; soap
cleaning = ammonia; polish*; spray cleaner; disinfect*; bleach; wet cloth; damp cloth; wiped daily; mopped
alcohol = wine; alcohol; beer; perfume; spirits; nail polish; cocktail*
plastic-cover = plastic; plastic cover; vinyl; vinyl cloth; tablecloth; plastic cloth; plastic tablecloth
plastic-cover = placemat*; rubber*; rubber feet; mat; oilcloth; plastic sheet
wrapped plastic-cover = bubble wrap; bubble wrapped; film wrapped; plastic film; stretch wrap; shrink wrap
wrapped plastic-cover = cling film; polythene; polyethylene
stacked = stacked; stack*; piled; leaned; leant; racked; books; lamp*; objects; ornament*; things; weight*
stacked = clamp*; face to face; television; boxes; clothes; linen*; sweaters; clothing; vise; typewriter
stacked = television set; stereo; computer; monitor; planter; heavy*
wrapped = wrap*; blanket*; blanket wrapped; packed; pack*; cardboard; paper; newspaper; cloth; plastic bag
wrapped = tarpaulin; quilt*; foam
shut = shut; closed; doors closed; doors shut; drawers shut; drawers closed; drawers put back
shut = drawers put in; drawers replaced; doors hung; door hung; lid closed; lid shut; reassembled
shut = put together; assembled; closing; windows closed; sealed; pushed in; pushed back; pushed back in
shut = pushed; slid in; tight; closed up; closed too soon; rehung; put in place
shut dark = kept closed; doors kept closed
dark = dark; darkness; behind; in the dark
years = years; year; for years; decades; long; ages; season*
years cold damp = seasons
hands = daily; everyday; every day; heavy use; normal use; used; handl*; hands; hand; touch*; armrest*
hands = arms; sweat; sat on; seat*; sitting; foot traffic; pulls; writing; desk use; worn; knocks; bumps
hands = pets; dog; cat; office; shop; restaurant; hotel; traffic; keyboard; mouse
freight wrapped = freight; ship*; transport*; van; delivered; delivery
freight = truck*; moved; moving
children hands = child*; kids; toddler; baby; crib; toy*; nursery; infant; chew*; school; classroom
food = food; grease; salad; cutting; cooking
food hot-dish standing-water = meals; dinner; eating
food hot-dish standing-water hands = dining
food hands = knife; knives
dry-air = dry air; dry; heated room; heated; heating; central heating; heated house; heated home
draught = fan; draught; draft; wind; windy; winds
?stacked = set on; placed on; put on; stood on; laid on; resting on
food hands cleaning = kitchen
cold damp = shed; barn; carport
"""
    + wider.EVENTS
)
"""Words of use and exposure → marks; ``draught`` is moving air."""

MARK_AIR: Mapping[str, tuple[float | None, float | None, bool]] = {
    "sun": (35.0, None, True),
    "heat": (38.0, None, False),
    "cold": (6.0, None, False),
    "freezing": (-5.0, None, False),
    "damp": (None, 0.85, False),
    "wet-storm": (None, 0.95, False),
    "dry-air": (None, 0.30, False),
}
"""Air that a mark of use or exposure brings: temperature [°C], relative humidity [1], sun (judgement)."""

AIR_WORDS = words(
    """
sun hot = direct sun; in the sun; sun; sunny; sunlight
hot = hot; heat; summer; hot day; very hot; attic
- = heated; mild; tarp; hallway; indoors; indoor; room; workshop; shop; dust*; ventilat*; morning
- = warm room; normal; air conditioned; climate control*; dark film; black film; film; surface; swings
- = season*; air; forced; window; sea level; altitude; afternoon; day; shade; brought
warm = warm
cold = cold
cool = cool; unheated; winter; chilly; autumn; spring; garage; shed; barn; cold night*; night*; evening
cool = cold wood; cold piece; cold material; dropped; dropping; falling; overnight
freezing = freez*; frost*
humid = humid*; damp; moist*; rain*; fog*; mist*; sea; coast*; storm*; wet; dew point
hot humid = tropic*; monsoon; muggy
dry = dry; arid; heating
hot dry = desert
cool humid = basement; cellar
outdoors = outdoors; outside; outdoor; porch
draught = draught*; draft*; breez*; fan; wind; windy; winds
"""
    + wider.AIR_WORDS
)
"""Words of climate notes; temperatures and humidities only fill what the case leaves null."""

AIR_VALUES: Mapping[str, tuple[float | None, float | None]] = {
    "hot": (32.0, None),
    "warm": (26.0, None),
    "cool": (12.0, None),
    "cold": (6.0, None),
    "freezing": (0.0, None),
    "humid": (None, 0.80),
    "dry": (None, 0.30),
}

# --- condition, age, piece and part --------

CONDITIONS = words(
    """
clean = clean; new
did:clean clean = cleaned; washed
did:degrease clean = degreased
did:spirits clean = dewaxed
- = wiped; bare; bare wood; raw; unfinished; sound; good; fair; intact; dry; smooth; flat; level; ordinary
- = rough; unsealed; unprimed; uncoated; varnished; painted; lacquered; not sanded; unsanded; test*; ready
- = glossy; gloss; slick; shiny; satin; matt; tight; hardware; yellowed; darkened; fresh; recent
- = orange peel; brush marks; drips; runs; open pores; open grain; closed grain; end grain; figured; curly
- = blotch prone; burl; sapwood; heartwood; two tone; mixed woods; mixed wood; uneven colour; uneven color
- = porous; absorbent; dense; soft wood; wide boards; inlay; doors; drawers; stored; stored cold; in use
- = used; unknown; unknown finish; old; aged; cured; fully cured; hard; dark; dull; ambered; scent; weak
- = scent weak; possible; source; pockets; paint in pores; masking tape; tape; some; near; hand
did:scuff = scuffed; abraded; deglossed
did:sand = sanded; planed; scraped; machine planed; rough sanded
did:strip = stripped
did:strip on:alkali:0.5 = dip stripped
did:strip on:alkali:0.7 = caustic stripped
did:prime = primed
did:seal = sealed
on:wax:0.9 = waxed; wax
on:mineral-oil:0.5 in:old-oil:50 = oiled
in:old-dye:40 = stained; dark varnish
in:old-dye:70 = dyed; dark stain*; stained dark; dark stained
did:bleach = bleached
on:glue:0.4 = filled; patched; repaired
on:grime:0.9 = not cleaned; uncleaned
on:grease:0.6 = not degreased; kitchen
on:glue:0.5 = putty; filler; wood filler
on:silicone:0.9 = silicone*
on:wax:0.95 = old wax; wax buildup
on:wax:0.7 = wax history
on:wax:0.8 = waxy
on:polish:0.9 on:silicone:0.4 = polish
on:polish:0.9 on:silicone:0.5 on:wax:0.4 = polish history
on:polish:0.8 on:silicone:0.3 = polished
on:polish:0.95 on:silicone:0.4 = polish residue
on:polish:0.9 on:silicone:0.5 = furniture polish
on:polish:0.9 on:silicone:0.8 = spray polish
on:mineral-oil:0.9 = lemon oil; cutting board oil
on:mineral-oil:0.95 = mineral oil
on:grease:0.95 = kitchen grease; grease; greasy; some grease; hand grease
on:grease:0.8 = grease history
on:grease:0.9 = fat; cooking oil
on:grime:0.95 = grime; grimy; dirt; dirty
on:smoke-film:0.7 in:smoke:50 = soot
on:skin-oil:0.9 = hand oil*; skin oil*; body oil*; hand grime; sweat
on:silicone:0.4 on:skin-oil:0.8 = hand cream
on:skin-oil:0.7 = handled
on:skin-oil:0.7 worn:10 = hand wear
on:smoke-film:0.9 in:smoke:80 = smoke*; tobacco; cigarette*
in:smoke:80 on:smoke-film:0.7 = smoke odour; smoke smell
on:smoke-film:0.95 in:smoke:80 = nicotine
on:smoke-film:0.9 in:smoke:90 = fire damage
on:mould:0.95 in:musty:60 = mildew; mould; mouldy; moulds; mold; moldy
on:mould:0.9 = fungus
on:mould:0.6 in:musty:50 = mildew history
on:remover-residue:0.8 on:remover-wax:0.4 = stripper residue; remover residue
on:remover-residue:0.6 = residue; solvent residue
on:remover-wax:0.9 = stripper wax
on:remover-residue:0.5 = old finish residue; finish residue; finish in pores
on:alkali:0.9 = alkali*; lye; caustic*; alkaline
on:alkali:0.4 = ammonia
on:acid:0.9 = acid*
on:acid:0.8 on:bleach-residue:0.6 = oxalic
on:bleach-residue:0.9 = bleach residue
on:iron-dust:0.8 = iron
on:iron-dust:0.95 = iron dust; steel dust
on:iron-dust:0.9 = steel wool
on:iron-dust:0.5 damage:holes = nail*
on:iron-dust:0.7 = iron nails; rust*
on:iron-dust:0.6 = steel
on:iron-dust:0.4 = screws; metal
on:iron-dust:0.5 = iron hardware
on:sanding-dust:0.8 = dust; dusty
on:sanding-dust:0.95 = sanding dust
on:sanding-dust:0.7 = dusty shop
on:glue:0.9 = glue; glue squeeze*; squeeze out; glue residue; adhesive*; contact paper
on:glue:0.95 = glue spots
on:glue:0.8 = sticker residue
on:glue:0.7 = tape residue
contact:plastic = plastic contact; vinyl contact; vinyl; plasticiser; plasticizer; plastic cloth
contact:plastic = rubber feet; rubber
on:loose-film:0.8 sound:flaking = loose; peeled
on:loose-film:0.95 sound:flaking = loose paint; flaking
on:loose-film:0.9 sound:flaking = loose finish; peeling
on:loose-film:0.4 sound:worn worn:10 = chipped
on:loose-film:0.7 sound:flaking = chipping; poor adhesion
on:loose-film:0.6 sound:flaking = chipped paint; failing; failed finish
on:loose-film:0.4 sound:worn = chalking
on:loose-film:0.6 sound:worn = powdery
on:mineral-oil:0.7 = oil
in:wood-oils:60 = oily
on:mineral-oil:0.4 = insecticide
on:silicone:0.4 on:skin-oil:0.7 = lotion
on:wax:0.8 in:ink:50 = crayon
in:red-stain:80 = red stain; red dye; mahogany stain
in:red-stain:60 = red filler
in:old-dye:60 = old stain; walnut stain
in:old-dye:80 = old dye; aniline*
in:old-dye:50 = stain residue; stain in pores; stain spots
in:bitumen-stain:80 = bitumen*; asphalt*; tar
in:bitumen-stain:90 = creosote
in:rodent:80 = rodent*
in:rodent:85 = rodent odour; mouse*; mice; urine; cat; cats; mouse urine; rodent urine; rodent droppings
in:rodent:85 = droppings
in:rodent:70 = pet; pets; animal*; pet urine; cat urine; dog; dog urine
in:musty:80 = musty; musty odour; must; mothball*
in:musty:60 = odour; odor; smell*
in:musty:50 = perfume
in:knots:80 = knot*; knots; resin*; pitch*; sappy
in:knots:70 = sap
in:wood-oils:70 = oily wood; wood oils
in:tannin:80 = tannin*; tannin rich
in:wood-colour:80 = bleeding wood; colour bleed
in:ink:80 damage:ink-mark = ink*; marker; ballpoint; pen
in:ink:70 damage:ink-mark = lipstick
in:ink:80 = stencil ink
in:old-oil:80 = oil soaked
in:old-oil:60 = oil history; linseed history
in:old-oil:50 = oil finish
in:old-oil:70 = oil in pores
in:silicone-deep:80 on:silicone:0.9 = silicone in wood
in:vapour:80 = cedar lining; aromatic
damage:black-ring in:tannin:50 = water stain*; black water stain*; black water mark*
damage:white-ring = white ring*; ring*; water ring*; water mark*; white mark*; white haze; heat mark*
damage:white-ring = blush*; haze*; water spot*
damage:black-ring = black ring*; black spot*; black stain*; iron stain*
damage:white-ring worn:10 = water damage*
expose:damp damage:white-ring = flood*
damage:scratches = scratch*
damage:dents = dent*
damage:gouges = gouge*
damage:burn = burn*; scorch*
damage:holes = hole*; woodworm; screw holes
damage:loose-joint = loose joint*; open joint*; joint open; joints open; loose joints; joints loose
damage:split = split*; cracked wood; cracks; shrinkage; checks; wood checks
damage:lifted-veneer = lifted veneer; loose veneer; veneer loose; veneer lifting; veneer blister*
damage:lifted-veneer = bubbled veneer
damage:missing-veneer = missing veneer; chipped veneer; veneer chips
thin = thin veneer
damage:broken-moulding = broken; missing moulding
damage:worn-runner = sticking; worn runner*
damage:crazed-film sound:crazed = crazed; crazing; alligator*; cracked finish; cracked; checked
damage:crazed-film sound:crazed = cracked paint; crackled
sound:crazed = brittle; wrinkled
damage:worn-film sound:worn worn:15 = worn; worn finish
damage:worn-film sound:worn worn:25 = worn through
damage:worn-film sound:worn worn:20 = worn spots
damage:worn-film sound:worn worn:10 = worn edges
sound:worn worn:10 = thin finish
worn:15 = sand through; sanded through
worn:30 = partly bare; partly sanded; patchy
worn:50 = partly stripped
worn:20 = bare spots; bare patches
damage:faded = faded; sun faded; sun bleached; discolou*; discolor*; grey; gray
damage:darkened-wood = darkened wood
sound:soft = soft; soft finish; softened; tacky; uncured; fresh finish; not cured
sound:soft on:skin-oil:0.6 = sticky; gummy
coats:5 = thick; thick film; thick finish; multiple coats; heavy film
coats:6 = thick paint; many coats; many layers
coats:4 = several coats; several layers; layers
lead:0.9 = lead*; lead paint
sound:flaking = bubbl*; blister*
wood:core = core exposed; exposed core; cut edge*; routed; raw edge*; damaged foil; peeled foil
wood:core expose:damp = swollen
expose:damp = damp; damp wood; wet; wet wood; green; green wood; high moisture; moist*; moisture; not dry
expose:damp = unseasoned
did:wet = raised grain; grain raised; furry; fuzzy; fur; hairy
on:grime:0.5 on:iron-dust:0.4 = reclaimed; recycled
worn:30 damage:faded sound:worn = weathered
burnish = burnished; polished wood; sanded too fine; mill glaze
swirls = swirl*; sanding scratches; sanding marks; cross grain scratches; planer marks; machine marks
swirls = mill marks
relief:carved = carved
relief:moulded = moulded
relief:turned = turned
use:dark = dark place; dark room; dark interior; low light
use:shut = closed; closed space; enclosed; tight fit; rubbing faces; contact faces; touching faces
use:shut = contact surfaces; contact; tight doors; tight drawers; close fitting
use:sun = sun; sunny; sunlight; window; sun exposed
use:wet-storm use:sun = outdoor*; exterior
use:heat = heat*; hot; near heat; stove; near stove
use:heat use:dry-air = radiator; near radiator
use:standing-water use:damp = near sink; sink
use:damp = bathroom; damp room; damp place; humid*; basement; cellar
use:damp use:heat = steam*
use:cold = cold; cold place; unheated
use:dry-air = dry air
use:hands = heavy use; high use; high wear; hard use; daily use
use:children = child*
use:food = food*; food contact
use:hot-dish use:standing-water = table use
use:wall = outside wall; wall
use:stacked = stacked
expose:damp in:musty:40 = stored damp; barn; stored in barn; stored in basement; stored in cellar
expose:damp in:musty:40 = stored in shed
look:dark = dark colour; dark color; black
look:light = light colour; light color; white; pale
value:good = antique; original finish; historic; heirloom; decal; label; gilding
value:fine = valuable
on:silicone:0.3 on:polish:0.4 = unknown history
on:alkali:0.6 = not neutralised; not neutralized; unneutralised; unneutralized; caustic dip
on:loose-film:0.8 sound:flaking wood:core = foil loose; loose foil; foil lifting
"""
    + wider.CONDITIONS
)
"""
Condition words → tags.

``on:`` contaminant and chance, ``in:`` cause in the wood and strength [%], ``damage:``, ``sound:`` state
of the old film, ``worn:`` share [%], ``wood:core``, ``did:`` work done before the first step (added when
the steps do not hold it), ``contact:`` foreign matter on an old film, or to come in use where there is
none, ``expose:`` before the first step, ``use:`` mark of the closing use, ``look:``, ``value:``, ``lead:``,
``coats:`` of old finish, ``relief:``; ``clean`` = nothing lies on it, ``burnish`` = sanded too fine,
``swirls`` = scratches left in the wood, ``thin`` = old thin veneer.
"""

SECOND_HAND_PRIOR: tuple[tuple[str, float], ...] = (("grime", 0.5), ("polish", 0.25), ("silicone", 0.1))
"""What lies on a used, finished piece when nobody says it is clean (judgement)."""

AGES = words(
    """
2026-2026 = new
2021-2026 = recent
1990-2026 = modern; contemporary
- = unknown; not known; not stated; second hand; recycled; mixed
1837-1901 = victorian
1901-1914 = edwardian
1714-1837 = georgian
1811-1830 = regency
1920-1940 = art deco
1880-1920 = arts and crafts
1890-1914 = art nouveau
1700-1800 = colonial
1945-1970 = mid century; midcentury
1900-1939 = pre war
1945-1960 = post war
1939-1945 = wartime
1800-1926 = antique; very old
1926-1986 = vintage; old
1976-2020 = used
1929-1939 = depression
1966-2006 = decades
1895-1905 = turn of the century
1916-1936 = century old
2016-2022 = several years
2019-2024 = few years
2012-2022 = some years
1880-1960 = generations
"""
    + wider.AGES
)
"""Age words → years from-to; years in figures and "ten years" are read by their form."""

USES = words(
    """
kitchen = kitchen; worktop; countertop; counter*; island; butcher*; cutting*; salad
wet = sink; vanity; bath*; outdoor*; garden; deck; porch; boat; exterior
table = bar; table*; dining; coffee; leaf; desk*
child = crib; cradle; toy*; high chair; nursery; child*
drawer = drawer*; drawers
storage = inside*; interior; carcass; wardrobe*; closet*; chest lining
everyday = chest of drawers
display = globe stand; frame*; panelling; paneling; picture*; mantel*; clock*; moulding
"""
    + wider.USES
)
"""Words of piece and part → use; unknown ones are everyday."""

PARTS_UP = frozenset(
    {"top", "tops", "leaf", "seat", "shelf", "shelves", "worktop", "tabletop", "countertop", "lid"}
)
PARTS_DOWN = frozenset({"underside", "bottom", "bottoms"})
PARTS_INSIDE = frozenset({"inside", "insides", "interior", "interiors"})
