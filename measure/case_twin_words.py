"""
The second word table: "what would have avoided it" as changes of steps and air.

Frozen before the first score (742371a), and widened once by words alone (`case_wider_words`), like
`case_words`; it knows no case. `DO` reads what is advised, `DONT`
what stands after "no", "never", "instead of", "rather than". The changes themselves: `case_twins`.

Changes
-------
``clean:X rinse:X`` insert that cleaning before the first abrading or coating; ``scuff`` before the first
coat; ``key`` between all coats; ``bare`` strip again and sand to bare wood; ``grain`` raise and cut the
grain; ``finer`` ``coarser`` grit; ``wash-coat:X`` before the first coat; ``seal:X`` before the first film;
``tie:X`` before the first clear coat; ``put:X`` swap in that class for the coats of its role, or insert it;
``thin`` ``wiped`` ``slow`` ``stirred`` how coats go on; ``fewer`` ``one`` ``more`` coats;
``between:usual|window|days|cure`` ``last:cure`` ``prep:dry`` waits; ``air:dry|warm|cool|shade|moist`` air;
``drop:MARK`` take a mark off the events; ``drop:steel-wool`` work with a synthetic pad; ``drop:water``
take water off; ``drop:CLASS`` leave a class out; ``method:X`` lay coats that way; ``grain-wise`` sand with
the grain; ``both-sides`` coat both faces.
"""

from collections.abc import Mapping

import case_wider_words as wider
from case_reading import words

DO = words(
    """
clean:alkaline-degreaser = degreas*; degrease well; remove grease; wash with degreaser; sugar soap; tsp
clean:soap-water = clean*; wash*; wash first; soap and water; clean first; cleaner surface
clean:naphtha = naphtha; remove silicone; silicone removed; decontaminat*; clean with naphtha
clean:naphtha = solvent cleaning; solvent clean*; clean with solvent; solvent wash
clean:mineral-spirits = mineral spirits; dewax*; remove wax; remove the wax; wax off; take the wax off
clean:mineral-spirits = remove all wax; all wax off; wax removed; remove polish; white spirit; residue off
clean:mineral-spirits = remove residue; remove the residue; residue removed
clean:ammonia-water = ammonia; ammonia wash
clean:thinner-wipe = acetone; wipe with acetone; acetone wipe; lacquer thinner; solvent wipe
clean:thinner-wipe = wipe with solvent
clean:alcohol-wipe = alcohol wipe; wipe with alcohol
clean:mould-wash = kill mildew; kill mould; kill the mildew; kill the mould; fungicid*; disinfect*; biocide
clean:mould-wash = bleach wash; remove mildew; remove mould
clean:vacuum = vacuum*; magnet; dust off; remove dust; remove the dust; blow off; dust free; clean shop
clean:tack-cloth = tack*; tack cloth; tack rag
rinse:strip = washes; wash off stripper; rins*; rinse well; rinse thoroughly; wash off
rinse:strip = wash off the stripper; rinse the stripper; after wash; wash residue; remove stripper residue
rinse:strip = rinse until clean; flush
rinse:vinegar-water = neutrali*; vinegar; neutralise; acid rinse; ph; neutral ph
rinse:water-rinse = rinse with water; water rinses; water rinse; flood with water; rinse bleach
scuff = scuff*; key; sand lightly; scuff sand*; abrad*; degloss*; sand first; sand dull; roughen; etch
scuff = light sanding; sand the old finish; sand the gloss; scuffing first
key = key each coat; scuff between; scuff between coats; sand between coats; sand between; scuff each coat
key = sand each coat; sand smooth; sand off; sand; cut back; key between coats; abrade between coats
bare = bare wood; get to bare wood; strip*; strip first; strip completely; strip fully; full strip*
bare = remove the old finish; remove old finish; take off the old finish; sand to bare; sand to bare wood
bare = remove all paint; remove loose; remove failing; complete removal; remove the failed film
grain = raise and cut the grain; raise the grain; raise grain; pre raise; pre raised grain; pre raised
grain = wet and sand; wet first; cut the grain; raise and sand; dampen; dampen first; raised grain sanded
finer = finer; finer grit; finer grits; sand finer; finer abrasive; work through the grits; all grits
finer = through the grits; proper grit; each grit; grit sequence; sand out; sand to 220
finer = sand end grain finer; sand end grain; polish end grain
coarser = coarser; coarser grit; sand coarser; stop at 150; stop at 180; stop at 120; less fine
grain-wise = with the grain; along the grain; hand sand*; by hand; final hand sanding
wash-coat:shellac-dewaxed = wash coat; washcoat; thin shellac; spot seal*; spit coat; seal end grain; size
wash-coat:shellac-dewaxed = pre seal; partial seal; spot prime
wash-coat:oil-conditioner = conditioner; wood conditioner; pre stain conditioner; pre stain; condition
seal:shellac-dewaxed = seal*; shellac; dewaxed shellac; wax free shellac; shellac coat; shellac first
seal:shellac-dewaxed = shellac barrier; barrier; barrier coat; isolat*; seal first; seal coat; sealer
seal:shellac-dewaxed = shellac sealer; coat of shellac; dewaxed; shellac between; shellac seal*
seal:shellac-dewaxed = spirit sealer
tie:shellac-dewaxed = shellac as tie coat; tie coat; shellac tie coat; dewaxed shellac between
tie:shellac-dewaxed = shellac over stain; seal the stain; seal stain; seal the dye; seal colour
tie:shellac-dewaxed = seal over the stain; lock in
put:vinyl-sealer = vinyl sealer; vinyl; vinyl primer; catalysed sealer
put:lacquer-sanding-sealer = sanding sealer; lacquer sealer
put:shellac-primer = stain blocking primer; stain blocking shellac based primer; shellac based primer
put:shellac-primer = stain blocker; shellac primer; stain blocking; stain block*; blocking primer
put:shellac-primer = pigmented shellac; block*; odour blocking primer; odour blocker; stain killing primer
put:shellac-primer = knot sealer; seal knots; knotting; seal the knots; block the stain
put:shellac-primer = shellac based stain blocking primer
put:oil-primer = oil primer; oil based primer; solvent primer; alkyd primer; oil stain blocker
put:oil-primer = other solvent primer; oil based; solvent based primer; solvent borne primer
put:oil-primer = oil based stain blocker
put:bonding-primer = bonding agent; bonding primer; adhesion primer; primer; prime*; priming
put:bonding-primer = adhesion promoter; proper primer; suitable primer
put:waterborne-primer = waterborne primer; water based primer
put:oil-pore-filler = fill pores; pore filler; fill the pores; fill the grain; grain filler; fill open pores
put:conversion-varnish = conversion varnish; catalysed finish; catalysed lacquer; catalysed varnish
put:two-pack-polyurethane = two part polyurethane; two pack polyurethane; two component; two part; two pack
put:alkyd-varnish = oil varnish; varnish; alkyd varnish; wiping varnish; spar varnish; oil based varnish
put:oil-polyurethane = polyurethane; oil polyurethane; oil based polyurethane; oil based clear
put:oil-polyurethane = oil based topcoat
put:waterborne-polyurethane = waterborne polyurethane; water based polyurethane; waterborne poly
put:waterborne-acrylic = acrylic; acrylic clear; oil free clear; waterborne clear; water based clear
put:waterborne-acrylic = waterborne finish; water based finish; waterborne topcoat; water clear
put:waterborne-acrylic = non yellowing; non yellowing finish; water white; waterborne acrylic
put:waterborne-acrylic = waterborne lacquer
put:nitro-lacquer = nitrocellulose; nitro lacquer; nitrocellulose lacquer; lacquer topcoat; lacquer over
put:acrylic-paint = acrylic paint; cabinet paint; acrylic enamel; waterborne enamel; furniture paint
put:acrylic-paint = hard enamel; harder paint; hard paint; self levelling enamel; cabinet enamel
put:acrylic-paint = trim enamel
put:alkyd-enamel = alkyd enamel; oil paint; oil enamel; oil based paint; alkyd paint; alkyd; enamel
put:gel-stain = gel stain; gel
put:water-dye = dye; water dye; dye stain; water soluble dye
put:solvent-dye = solvent dye; alcohol dye; non grain raising dye; ngr dye
put:lacquer-toner = toner; sprayed toner; tinted clear; tinted lacquer; shading lacquer; tone; toning
put:lacquer-toner = spray colour
put:oil-stain = oil stain; wiping stain; pigment stain
put:drying-oil = tung oil; linseed oil; pure oil; oil only
put:oil-varnish-blend = danish oil; oil finish; oil varnish blend
put:paste-wax = wax only; just wax
put:clear-over = clear coat over; topcoat over; protect with clear; top coat; seal the paint; clear coat
thin = thin coats; thin; thinner coats; thinner film; thin coat; thinly; mist coats; mist; light coats
thin = very light mist coats; light passes; film in limits; keep film in limits; within film limits
thin = lighter coats; less film; film build; thin layers; thin film; lighter; several thin
thin = several thin coats; sparing*
wiped = wipe; wiped; wipe off; wipe off excess; wipe every coat; wipe clean; wipe the excess; wipe well
wiped = wiping off; remove excess; excess off; wiping; clean stain; wipe again; wipe dry; rewipe
wiped = stain clean; stains clean; excess clean
slow = slower alcohol; slow thinner; retard*; slower thinner; slow*; milder thinner; slower solvent
slow = extender; flow additive; conditioner additive; slow drying thinner; slow solvent
stirred = stir*; stir gently; stirred; stir slowly
between:usual = dry each coat; let dry; full drying; let each coat dry; proper drying; longer drying
between:usual = wait longer; longer waits; drying time; more drying; longer between; dry fully
between:usual = dry completely; let it dry; wait; dry between coats; longer; time to dry; dry time
between:usual = fully dry; let dry fully; allow drying; dry coats; dry hard; let the stain dry
between:usual = let the oil dry; complete drying; recommended wait; patience
between:days = days; several days; extra days; more days; days of drying; few days
between:window = within the stated hours; recoat within; recoat in time; stated hours; within the window
between:window = within hours; within recoat time; recoat window; recoat sooner; same day; within a day
between:window = stated recoat time
between:cure = after full cure; weeks; full cure first; cure first; wait weeks; let cure; let it cure
between:cure = cured oil
last:cure = full cure; cure; cured; cure fully; cure time; cure before; fully cured; full hardening
last:cure = harden*; cure well; weeks before; weeks of cure; longer cure; wait before use; before use
last:cure = before wrapping; before stacking; before closing; hard before; let harden; a month; thirty days
last:cure = full hardness; open until; leave open
prep:dry = feels dry; wood dry; dry wood; until dry; dry out; dry the wood; wood is dry; moisture content
prep:dry = dry first; let the wood dry; dry thoroughly; dry well; moisture meter; acclimat*
prep:dry = let water evaporate
air:dry = drier air; dry air; climate control; dehumidif*; room dry; dry room; lower humidity; dry day
air:dry = drier day; drier; low humidity; dry weather; dry conditions; indoor drying; indoors
air:dry = humidity control; keep the room dry; better weather; controlled air; air conditioning
air:warm = warm; warm the room; warmer; warm room; heated; heat the room; warm material; room temperature
air:warm = above 18; one temperature; warm workshop; normal temperature; warm wood; warmer room; temperate
air:warm = above 15
air:cool = cool; cooler; cool room; cooler room; cool of the day; moderate temperature
air:shade = shade; out of the sun; in shade; away from sun; keep out of sun; no sun; early or late
vent = air flow; airflow; ventilat*; air gap; space behind; away from the wall; air out; airing; dry place
drop:wall = away from wall; off the wall
drop:damp = moisture off; keep moisture off; keep dry; keep it dry; away from moisture; dry store
drop:damp = moisture control
drop:sun = block uv; uv; curtains; curtain; away from light
drop:heat = away from heat; keep from heat; away from radiator; trivet*; heat pad; pads under; hot pad*
drop:hot-dish = trivets; mats; hot mats; table mat*; heat mat*
drop:standing-water = coasters; coaster*; wipe spills; keep water off; saucer*
drop:plastic-cover = felt; cloth; felt or cloth; cotton; felt pads; breathable; cloth cover
drop:wrapped = moving blankets later; paper wrap; loose wrapping; unwrapped
drop:stacked = spacers; stickers; stand apart; air between; separate; stand upright; apart
drop:shut = doors open; leave doors open; drawers out; leave drawers out; bumpers; clearance; wax on contact
drop:freezing = frost free; keep from freezing
drop:cold = heated storage; warm storage; keep warm
drop:over-brushed = leave it alone; lay off; fewer strokes; light strokes; keep a wet edge; wet edge
drop:over-brushed = quick strokes
drop:dry-spray = closer gun; gun closer; wetter coats; more fluid; thin the material; reduce material
drop:dry-spray = better atomis*
drop:steel-wool = synthetic pad*; synthetic; synthetic steel wool; bronze wool; nylon pad*; abrasive pad*
drop:steel-wool = plastic pad*
drop:heavy = less material; smaller amounts; drain; work small areas; small areas
thinned = thin with; thinned; reduce; reduced; diluted
both-sides = both sides; both faces; coat both sides; balance; seal the back; seal underside; all sides
fewer = fewer coats; less coats; one coat; single coat
more = more coats; two coats; another coat; extra coat; three coats; second coat; second coat of primer
more = additional coats; build up; enough coats
method:spray = spray; sprayed; spray it; spraying
method:brush = brush; brushed; brush it
method:wipe = wipe on; wiped on; wipe on coats
- = plus; allow*; above; within; only; tested first; test*; sample; test patch; scrap; check*; test first
- = label; directions; as directed; stated; cleaning alone; clean shop air; waterborne; oily; teak
- = rosewood; oak; pine; knots; veneer; mdf; edges; ends; stain; paint; topcoat; finish; film; lacquer; oil
- = wax; stripper; alcohol; water; solvent; resin; tannin; colour; retest; avoid; accept; choose; pick; use
- = keep; stay; light coat; pale; first light coat; whole piece; interiors; darker stain; darker
- = compatible; system; manufacturer; one system; same system; product; agent; surface; demand*; smell
- = odour; worn areas; bare; worn; humidity; temperature; rh; dew point; blush; insides; inside
"""
    + wider.DO
)

DONT = words(
    """
air:shade = sun; sunlight; direct sun; dry in the sun; sun drying; in the sun; uv; hot sun
drop:heat = heat; hot; heat gun; hair dryer; force drying; radiator; heater; force dry
drop:cold = cold; cold room; cold storage; unheated
drop:freezing = freez*; frost
air:dry = rh; humidity; humid*; dew point; damp air; rain; humid day; moist air; wet weather
air:warm = cold air; below 10; below 15; below 18; low temperature; cool
air:cool = above 30; high temperature; heat of the day; hot day
drop:damp = moisture; wet; condensation; steam
drop:wet-storm = outdoors; outside; storm; weather
drop:wall = wall; against the wall; outside wall
drop:plastic-cover = plastic; vinyl; rubber; plastic cover
drop:stacked = stack*; objects; weight; load; contact
drop:wrapped = wrap*; blanket*; packing; bubble wrap; covers
drop:shut = clos*; shut*; closed; reassembl*; drawers in
drop:hot-dish = hot dishes; hot dish; hot plates; hot things; hot cups
drop:standing-water = standing water; spills; wet glasses
drop:water = water; water after; water wash*; wet clean*; damp cloth; wet rag; rinse; wet sand*; water on
drop:steel-wool = steel wool; steel; wire wool; iron
drop:shaken = shak*; shake; foam; bubbles
drop:over-brushed = brush back; over brush*; overwork*; rebrush*; touch; brush again
drop:heavy = heavy coats; thick coats; heavy; thick; flood*; pool*; heavy film
drop:not-wiped = excess; puddles; left on; unwiped
wiped = leave excess; leave wet
one = more coats; extra coats; many coats; further coats
fewer = too many coats; build
drop:stain = stain; staining; pigment stain; wiping stain; oil stain
drop:dye = dye
drop:wax = wax; waxing; waxed shellac; waxy shellac; polish; silicone polish; paste wax
drop:oil = oil; linseed; raw linseed; oil finish; oils
drop:caustic = caustic; lye; alkaline stripper; alkali; dip; dipping; ammonia
drop:bleach = bleach*; chlorine
drop:sand = sand*; sanding; power sand*; belt sand*; aggressive sanding; machine sand*; orbital
drop:sand = sand through
drop:strip = strip*
grain-wise = across the grain; cross grain; circular
coarser = too fine; beyond 180; beyond 220; past 220; finer than 220; finer than 180; polish the wood
coarser = burnish
finer = coarse; skip grits; skipping grits; coarse grit
drop:polyurethane = polyurethane; oil polyurethane; oil based polyurethane; oil based finish; oil varnish
drop:polyurethane = varnish
drop:lacquer = lacquer; nitrocellulose; nitro lacquer; solvent lacquer; hot solvents
drop:shellac = shellac
drop:latex = latex; wall paint; latex paint; emulsion
drop:waterborne = waterborne; water based; water based finish; waterborne finish; waterborne coat
drop:chalk = chalk paint; milk paint
drop:sealer = sanding sealer; stearated sealer; sealer
clean:mould-wash = mildew; live mildew; paint over live mildew; mould; over live mould
clean:alkaline-degreaser = grease; over grease; dirt; over dirt
clean:naphtha = silicone; contamination; over silicone
scuff = gloss; unsanded; over gloss; unscuffed
between:usual = wet coat; over wet; soft coat; uncured; before dry; too soon; rush; hurry; trap solvent
between:usual = one day; undried; wet film; overnight only
last:cure = use early; early use; too early; before cure; before cured
prep:dry = damp wood; wet wood; green wood; over damp; damp
method:brush = spray; spraying
method:spray = brush; brushing
- = above; within; oak; blush; removed; removed the smell; paint; coat; coats; finish; any; rely; light
- = film; old finish; unknown; yellow; lift; react; soften; show; mix; stop; reach; bare; allow; exceed
- = limits; over; topcoat
"""
    + wider.DONT
)

ROLE_OF_DROP: Mapping[str, frozenset[str]] = {
    "stain": frozenset({"oil-stain", "gel-stain", "stain-polyurethane"}),
    "dye": frozenset({"water-dye", "solvent-dye"}),
    "wax": frozenset({"paste-wax"}),
    "oil": frozenset({"drying-oil", "oil-varnish-blend"}),
    "polyurethane": frozenset({"oil-polyurethane", "alkyd-varnish"}),
    "lacquer": frozenset({"nitro-lacquer", "precat-lacquer"}),
    "shellac": frozenset({"shellac-waxed", "shellac-unstated"}),
    "latex": frozenset({"latex-paint"}),
    "waterborne": frozenset({"waterborne-acrylic", "waterborne-polyurethane", "oil-modified-waterborne"}),
    "chalk": frozenset({"chalk-paint", "milk-paint"}),
    "sealer": frozenset({"lacquer-sanding-sealer"}),
}
"""Classes that "leave out X" speaks of."""

STANDS_IN: Mapping[str, str] = {
    "stain": "lacquer-toner",
    "dye": "gel-stain",
    "oil": "alkyd-varnish",
    "polyurethane": "waterborne-acrylic",
    "lacquer": "alkyd-varnish",
    "shellac": "shellac-dewaxed",
    "latex": "acrylic-paint",
    "waterborne": "alkyd-varnish",
    "chalk": "acrylic-paint",
    "sealer": "shellac-dewaxed",
    "wax": "",
}
"""What takes the place of a class left out when the advice names nothing else (common practice)."""
