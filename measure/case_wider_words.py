"""
More words for trade cases: a widening of the frozen tables, made once and openly.

`case_words`, `case_twin_words` and `case_reading` were frozen before the first score and fitted to one set
of cases by one writer. Other writers use other words, and a case with words that no table knows counts as
missed, whatever the rules would say. So these words were added afterwards, from what a trade dictionary
holds: neutral words, and synonyms of what the tables already tell apart. What a word means at the bench
decided, never how a case ended; no score was taken until they were committed.

The widening adds phrases only. None of them is a phrase that a frozen table, read at that place, knew before,
so that no frozen entry changes; `tests/unit/test_case_words_kept.py` proves that the cases the tables were
written with are read exactly as before. The forms are those of `case_reading.words`.
"""

FINISH_WORDS = """
paint_unknown = gloss; satin paint; eggshell; spray paint; distemper; whitewash; limewash; casein; undercoat
paint_unknown = radiator paint
latex_paint = wall paint; acrylic; vinyl paint
chalk_paint_waxed = limed; mineral paint; matt paint
alkyd_enamel = enamel paint; oil based paint; solvent paint; oil gloss
lacquer_unspecified = cellulose; cellulose lacquer; spray lacquer; solvent lacquer; brushing lacquer; toner
lacquer_unspecified = aerosol lacquer
lacquer_catalysed = conversion lacquer; acid catalysed; acid cured; cross linked; two component; epoxy
lacquer_catalysed = bar top resin; resin
factory_coating = veneer foil; paper foil; vinyl wrap; printed paper; powder coating; baked; uv finish
factory_coating = commercial finish; manufactured finish; shop finish
shellac_clear = polish; french polished; button polish; sanding sealer; spirit based; knotting
paste_wax = polish wax; carnauba; hard wax; wax polish
oil_varnish_blend = hardwax; wiping oil; wiping varnish; worktop oil; wood oil; rubbing oil; penetrating oil
oil_varnish_blend = mineral oil; lemon oil
drying_oil = tung; walnut oil; hemp oil; poppy oil
polyurethane_oil = urethane varnish; oil based polyurethane; floor varnish; yacht varnish; plastic coating
polyurethane_oil = plastic varnish
polyurethane_waterborne = water based varnish; acrylic varnish; acrylic clear; water based polyurethane
varnish_unknown = spar varnish; alkyd varnish; long oil; copal; resin varnish; varnished; coating
varnish_unknown = clear film; sealed; sealer; topcoat
none = nothing; untreated; uncoated; sanded; stripped bare; naked; white wood; whitewood; unsealed
unknown = mystery; not known; unclear; uncertain; unsure; mixed; various; something
- = age; aged; dark; darkened; coat; coats; layer; thin; thick; probably; perhaps; maybe; likely; possibly
- = partly; remains; traces; under; top; failing; flaking; yellowed; brown; white; commercial; sprayed
- = brushed; hand; based; fully; cured; glossy; matt; satin; and
"""

CLEANERS = """
soap-water = laundry soap; glycerine soap; vegetable soap; soft soap; soap flakes; liquid soap; hand soap
soap-water = baby shampoo; car shampoo; suds; sudsy; lather*; washing liquid; washing powder
soap-water = laundry detergent; upholstery shampoo; hand wash; neutral cleaner; ph neutral; floor cleaner
soap-water = wood cleaner; wood soap; furniture cleaner; dish detergent; dishwasher soap; mild cleaner
soap-water = gentle cleaner; carpet shampoo
alkaline-degreaser = oven cleaner; dishwasher powder; soda crystals; sal soda; tri sodium phosphate
alkaline-degreaser = phosphate; phosphate free cleaner; tsp substitute; grease cutter; grease remover
alkaline-degreaser = grill cleaner; engine cleaner; industrial cleaner; strong cleaner; alkaline cleaner
alkaline-degreaser = alkaline wash; paint cleaner; prep cleaner; sodium carbonate; potash
alkaline-degreaser = heavy duty cleaner; multi purpose cleaner; multi surface cleaner; bathroom cleaner
alkaline-degreaser = cleaning spray; stove cleaner; nicotine cleaner; soot cleaner; alkaline
alkaline-degreaser = strong detergent; scouring powder; scouring cream; crystal soda; hob cleaner
alkaline-degreaser = citrus cleaner; citrus degreaser; orange cleaner; caustic wash; caustic; lye
alkaline-degreaser = nicotine remover; cutting through grease; de greas*
ammonia-water = ammoniated; ammonia solution; household ammonia; glass spray; window spray; ammonia cleaner
thinner-wipe = lacquer solvent; nitro thinner; gun cleaner; brush cleaner; reducer; lacquer wash; ketone
thinner-wipe = strong solvent; paint remover; benzene
mineral-spirits = kerosene; paraffin; lamp oil; mineral turpentine; turpentine substitute; turps substitute
mineral-spirits = gum turpentine; petroleum distillate; petroleum solvent; low odour spirits
mineral-spirits = odorless mineral spirits; odourless mineral spirits; odorless spirits; wax stripper
mineral-spirits = wax cleaner; limonene; citrus solvent; adhesive remover; sticker remover; label remover
mineral-spirits = glue remover; tar remover; white spirits; oil solvent; dry cleaning fluid; wiping solvent
mineral-spirits = varnish cleaner; diesel; furniture restorer; dewaxing; de wax*; paint solvent
naphtha = hexane; petroleum ether; white petrol; gasoline; petrol; panel wipe; brake cleaner
naphtha = degreasing solvent; prep solvent; cleaning solvent; fuel; lighter fuel; final wipe solvent
naphtha = aliphatic solvent
alcohol-wipe = rubbing alcohol; surgical spirit; meths; grain alcohol; wood alcohol; methanol; propanol
alcohol-wipe = vodka; hand sanitizer; hand sanitiser; alcohol wipes; bioethanol; alcohol rag; tape remover
acetone-wipe = nail polish remover; nail varnish remover
vinegar-water = white vinegar; acid rinse; acid wash; acid water; mild acid; weak acid; acetic; diluted acid
vinegar-water = vinegar rinse; acidic
water-rinse = tap water; fresh water; running water; rain water; rainwater; demineralised water; cold water
water-rinse = lukewarm water; lukewarm; bucket of water; soft water; pure water; deionised water
water-rinse hot = boiling water; hot rinse; steam; steamer; steamed; steaming
water-rinse thorough flooding = power wash*; power washer; jet wash*; jetted; sluic*; dous*; drench*
water-rinse thorough flooding = shower*; swill*; spray bottle flooded
flooding = swamp*; drown*; running wet; dripping wet; sopping
soaking = soak*; immers*; submerg*; dunk*; left wet; standing wet; bath*; steep*
hot = hot; boiling; scalding
thorough = three times; four times; many times; deep clean*; deep cleaned; meticulous*; until clear; repeat
thorough = again and again; several rags; many rags; fresh rags; painstaking*; vigorous*; intensive*; scour*
thorough = hard scrub*; in several passes
light = cursory; hasty; hurried; superficial*; rapid*; hast*; rough wipe; just wiped; barely wiped
light = quick wipe over; lick; once over
bleach-water = diluted bleach; weak bleach; bleach spray; sodium hypochlorite; hypochlorite; chlorine
bleach-water = chlorinated; bleaching; chlorine cleaner; bleach wash
mould-wash = mold killer; mould killer; mould remover; mold remover; mildew remover; mildewcide; borate
mould-wash = boric acid; tea tree oil; quaternary ammonium; quat; odour eliminator; odor eliminator
mould-wash = odour neutraliser; odor neutralizer; pet odour remover; pet cleaner; sanitiz*; sanitis*
mould-wash = sterili*; antimicrobial; anti mould; antifungal; mould spray; mould cleaner; mold cleaner
mould-wash = bio cleaner; odour remover; odour treatment; moss killer; algae remover; algaecide
vacuum = vac; vacuum cleaner; air gun; air line; airline; air blast; blow gun; leaf blower; suck*; suction
vacuum = extraction; dust extraction; bench brush; swept; sweep; sweeping; counter brush; soft brush
vacuum = dust brush; paint brush; paintbrush
tack-cloth = sticky cloth; sticky rag; resin cloth; tacky cloth; tacky rag
?dry-cloth = feather duster; lint free cloth; lint free rag; t shirt; tee shirt; cotton rag; cotton cloth
?dry-cloth = paper towel; paper towels; clean rag; clean cloth; kitchen paper; kitchen roll; kitchen towel
?dry-cloth = soft cloth; soft rag; old cloth; terry; flannel; muslin; old shirt; cloth; rag; rags
dry-cloth = cornstarch; corn starch; talc; talcum powder; flour; cat litter; bicarbonate
dry-cloth = bicarbonate of soda; absorbent powder; dry duster; dry sponge; dry rags; dry dusted
damp-cloth = chamois; wrung*; damp mop; moist cloth; wet wipe*; baby wipe*; wet paper towel; wet sponge
damp-cloth = damp duster; spritz*; misted; damp microfibre; damp microfiber; damp towel; wet towel
damp-cloth = barely damp; slightly damp; damp wiped
polish-on = beeswax polish; almond oil; olive oil; walnut oil; baby oil; coconut oil; cooking oil
polish-on = vegetable oil; mayonnaise; furniture oil; furniture cream; furniture wax; cream polish
polish-on = wax cream; dusting spray; furniture spray; aerosol polish; silicone spray; reviver
polish-on = furniture reviver; wood feed; nourish*; rejuvenat*; teak oil; scratch cover; wood oil
polish-on = wood polish; dust spray; shine spray; lavender oil; mineral oil; aerosol wax; liquid wax
polish-on = linseed oil and turpentine; scratch remover
neutral = neutral ph; ph checked; ph tested
skip = never cleaned; never washed; not wiped; not dusted; not degreased; not vacuumed; not scrubbed
skip = left dirty; left dusty; left as found; as found; forgotten; forgot; left undone; dust left
skip = dust not removed; unwiped; without cleaning; without washing; without wiping; no dusting
skip = no degreasing; no vacuuming; not removed; straight to paint; not needed; left alone
steel_wool = wire wool; steel wool pad; fine wool; finest steel wool; steel wool soaked
synthetic = scrubbing pad; scourer; scouring sponge; nonwoven pad; grey pad; gray pad; white pad; maroon pad
synthetic = scrub pad; plastic scourer; nylon brush; nylon scrubber; abrasive sponge; melamine sponge
synthetic = melamine foam; bronze wool; nylon scourer; plastic wool; plastic pad; sisal
air = airing; fresh air; ventilat*; deodori*; activated carbon; ozone generator; ozone treatment; aired out
air = odour absorber; ozonis*; charcoal bags
- = fingerprint*; finger marks; fingermarks; cobweb*; crumbs; debris; swarf; particles; mud; bird droppings
- = fat; food; residue*; soot; nicotine; tar; smoke; mould; mildew; mold; sticky film; stickiness
- = toothbrush; tooth brush; bristle; bristle brush; scrubbing brush; cotton bud*; swab*; toothpick*
- = crevice*; carving*; gloves; rubber gloves; bowl; basin; tub; droplets; drops; diluted; dilute; undiluted
- = strength; concentrate*; mixture; solution; ratio; sanding dust; contamination; contaminant*; dry time
- = patted dry; towelled dry; towel dried; wiped off; all over; everything; hinges; runners; wood dust
- = sawdust; loose; flakes; loose flakes; black; brown; yellow; dirty; rag turned; came away; stays clean
- = nooks; silicone oil; body oil; hand oil; sweat; skin oil; pencil; chalk; adhesive; glue; wax residue
- = hand marks; insect*; droppings; urine; smell; odour; odor; acid; fume*; drawers; droppings removed
"""

REMOVERS = """
mild-remover = bio stripper; bio based; biodegradable; low odour; low odor; odourless stripper
mild-remover = non toxic stripper; green stripper; dbe; dcm free; dichloromethane free
mild-remover = methylene chloride free; nmp free; plant based; natural stripper; solvent free
mild-remover = solvent free stripper; bean based; citrus based; citrus stripper; orange stripper
mild-remover = water washable gel; low voc; non caustic gel; user friendly stripper; low fume stripper
mild-remover = no fume stripper
?mild-remover = slow; slow acting; peel off; blanket; film covered; slow gel
caustic = caustic soda; soda lye; lye bath; lye dip; caustic bath; caustic tank; caustic paste; potash
caustic = sodium carbonate; sal soda; soda crystals; alkali*; drain cleaner; slaked lime; lime paste
caustic = stripping vat; strip tank; dipping tank; stripping tank; dip and strip; soaking tank
caustic = ammonia stripper; crystal soda; strong soda; caustic stripping; caustic stripped
caustic hot = hot caustic; hot lye; hot dip; hot soda; heated tank; boiling soda; hot bath
?caustic = vat; tank; trough; immersion; immersed
dichloromethane = methylene; chlorinated solvent; chlorinated stripper; chloride; nonflammable stripper
dichloromethane = flow tray; flow over; dichloro methane; cold dip
?strong-solvent = furniture stripper; liquid stripper; spray stripper; aerosol stripper; brush on stripper
?strong-solvent = brush on remover; stripper gel; strippers; removers; trade stripper; shop stripped
?strong-solvent = solution stripper; stripped chemically
strong-solvent = methanol; ketone; mek; semi paste remover; wash away stripper; washable stripper
strong-solvent = solvent gel; lacquer remover; lacquer stripper; lacquer solvent; nitro thinner
strong-solvent = refinishing fluid; finish remover; polish remover; epoxy stripper; polyurethane stripper
strong-solvent = varnish stripper; solvent remover; thinners; solvent dip; cold tank; solvent tank
strong-solvent = solvent mix; acetone mix; lacquer thinners; solvent paste; fast stripper; graffiti remover
alcohol = rubbing alcohol; meths; isopropyl; shellac solvent; shellac thinner
heat-gun = infra red; hot air gun; hair dryer; hairdryer; iron; hot iron; clothes iron; burn* off; burnt off
heat-gun = propane; gas torch; flame; heat plate; heat lamp; hot plate; heat stripped; heat stripping
heat-gun = softened with heat; electric stripper; infrared heater; heat strip*; scorched off
heat-gun wet = wallpaper steamer; steam gun; steam iron; hot wet cloth; steam stripper
?card-scraper = putty knife; plastic scraper; razor blade*; razor; blade; broken glass; chisel*
?card-scraper = pull scraper; carbide scraper; hook scraper; paint knife; chip*; peel*; pick*; knife
?card-scraper = filling knife; stripping knife; wallpaper knife; dry scraped; pried; flaked; draw knife
?card-scraper = drawknife
?sand = abrad*; abrasive*; wire brush; wire brushed; rubbed down; plane; planed
sand machine = orbital sander; random orbital sander; disc sander; palm sander; flap wheel; flap disc
sand machine = grit blast*; soda blast*; sand blast*; media blast*; blasted; blasting; wire wheel
sand machine = angle grinder; grinder; planer; jointer; thicknesser; random orbital; random orbit
sand machine = sanding machine; machine sanded; edge sander; wide belt sander; power sander; detail sander
sand machine = floor sander; power sanded; nut shell blast*
light = one coat; single coat; once over; superficial*; halfway; half stripped; surface only; quick pass
light = one application; single application; one pass; upper layers; not fully; not completely; incomplete*
not_rinsed = not flushed; not washed off; never rinsed; never washed; never neutralised; never neutralized
not_rinsed = only wiped; wiped only; just wiped; only scraped; dry wiped; wiped dry only; residue dried
not_rinsed = wax left; residue not removed; no rinsing; no after wash; not cleaned off; nothing else
not_rinsed = sludge left
rinse = sluic*; power wash*; swill*; jet wash*; afterwash; hosing; mopped
soaking = soak*; submerg*; steep*; left in; bathed; dwell*
flooding = swamp*; drench*
thorough = three passes; multiple passes; multiple; several passes; three times; two coats; three coats
thorough = second coat; second pass; double; until bare; many passes; two applications; three applications
thorough = several applications; again and again; every trace
hot = boiling; heated
steel_wool = wire wool; steel wool pad; coarse steel wool; coarse wool; wire wool pads; fine steel wool
steel_wool = steel pads
- = sludge; goo; gunk; slime; residue; grooves; crevices; carving*; mouldings; mould; brass brush
- = toothbrush; nylon brush; bristle brush; coarse; string; twine; rope; sawdust; shavings; wood shavings
- = burlap; hessian; toothpicks; dental tools; pad; cling film; cling wrap; plastic wrap; plastic sheet
- = foil; aluminium foil; wrapped; covered; bubbled; bubbling; blistered; softened; soften*; dissolv*
- = lifted; wrinkled; applied; brushed on; sprayed on; poured; left; dwell time; business; company; firm
- = contractor; trade; specialist; stripping; shop; yard; factory; outdoors; outside; sun; shade; fume*
- = gloves; respirator; dark; darkened; raised; grain; glue; joints; veneer; wood; bare; down; linseed
- = primer; undercoat; lead; milk; enamel; latex; polyurethane; epoxy; stain; dye; finish; top; edges
- = cleaning; cleaned up; drying; very; hours; again; coat; pass
"""

BLEACHES = """
oxalic-acid = oxalate; rust remover; iron remover; teak brightener; wood brightener; brightener
oxalic-acid = tartaric acid; deck cleaner; deck wash; teak cleaner; oxalic solution; salts of lemon
oxalic-acid = stain remover
peroxide-alkali = hair developer; ammonia and peroxide; peroxide and ammonia; part a; part b; two solution
peroxide-alkali = sodium silicate; lye then peroxide; caustic then peroxide; strong peroxide; two step
peroxide-alkali = caustic soda; developer; alkali; a and b solutions; two pack
chlorine = calcium hypochlorite; bleaching powder; chlorinated lime; javel; thick bleach; bleach powder
chlorine = chlorine powder; shock; laundry; kitchen bleach
rinse = sluic*; flush*; sponged off; mopped
not_rinsed = never rinsed; never washed; no washing; left unrinsed; not flushed; without washing; only wiped
not_rinsed = dried on; crystals left
thorough = three times; multiple; several applications; two applications; again
flooding = drench*; swamp*
soaking = soak*; left wet; steep*; kept wet
hot = boiling
- = saturated; strong; weak; dilute; diluted; concentrated; applied; brushed on; mopped on; sponged on
- = applications; application; coat; gloves; plastic; synthetic brush; nylon brush; water marks; iron; rust
- = ink; tannin; dark; grey; gray; weathered; discolour*; discolor*; patch*; overnight; sun; sunlight
- = until light; even; evened; colour; color; white; pale; whole; surface; top; sodium bicarbonate; percent
- = per cent; full; strength
"""

ABRASIVES = """
steel_wool = steel wool pad; wire wool pad; fine steel wool; finest steel wool; steel pads; steel fibre
synthetic = scrub pad; scouring pad; scourer; web pad; abrasive web; finishing pad; nylon abrasive
synthetic = nylon web; nylon pad; fleece; abrasive fleece; green pad; plastic pad; fibre pad; fiber pad
synthetic = brass wool; stainless wool
foam = flexible pad; interface pad; foam block; sanding pad; soft pad; contour pad; foam backed
foam = sponge backed; foam abrasive; profile pad
block = cork block; sanding block; felt block; rubber block; cork; backing block; hand sanding; hand sanded
block = wood block; sanding board; long board; folded paper; hand only
machine = half sheet sander; quarter sheet sander; quarter sheet; half sheet; finishing sander; eccentric
machine = dual action; air sander; pneumatic; edge sander; spindle sander; floor sander; sanding machine
machine = oscillat*; triangle sander; triangular; corner sander; angle grinder; grinder; flap wheel
machine = flap disc; wire wheel; rotary tool; drill; stroke sander; buffing wheel; multitool; multi tool
machine = pad sander; mouse; mouse sander; thicknesser sander; sheet sander; random; orbit; orbital disc
machine = mop; abrasive mop; wheel; high speed
across_grain = crosswise; cross wise; diagonal*; crossways; loops; pigtail*; random directions
across_grain = all directions; perpendicular; zigzag; round and round; in circles; circle; circular motion
across_grain = any direction; against grain; wrong direction; orbital marks
wet = damp*; soapy; soap; rubbing oil; mineral oil; paraffin; white spirit; wet paper; wet dry paper
wet = wet or dry; kerosene; turpentine; naphtha; lubricant; flooded; lemon oil; linseed oil; slurry
wet = wet sanding; wet rubbed; water lubricated; wetted
dry = dry sanded; dry sanding
to_bare = back to wood; back to bare wood; back to bare; back to raw wood; down to bare wood; down to bare
to_bare = down to the wood; to bare timber; to timber; to fresh wood; to clean wood; to white wood
to_bare = until bare; until bare wood; everything off; all paint; all varnish; all old finish
to_bare = all the finish; all finish; varnish off; old varnish off; finish off; lacquer off; all traces
to_bare = every trace; grey off; gray off; grey layer off; weathered layer off; old paint off; coating off
to_bare = old coating off; all the paint; film off
edges = rounded; rounding; arris*; rim; rims; eased; easing; nosing; sharp edges; sharp corners; profiles
edges to_bare = worn look; aged look; antiqued; edges worn; edges bare; rubbed back edges
edges to_bare = rubbed back to wood
light = gentle; feather*; quick; briefly; slight*; knock down; knock back; knocked back; knocked down
light = rough up; roughed up; haz*; frosted; cut back; take the shine off; shine off; gloss off; tooth
light = scratch up; skim*; one pass; few strokes; couple of strokes; kiss*; just enough; barely; de nib*
light = de gloss*; dust nibs; de fuzz*; defuzz*; whisker*; delicate*; cursory; hasty; once over; a little
light = mild; fine scratch; keying
buff = polishing compound; cutting compound; burnishing compound; burnishing cream; polishing cream
buff = car polish; auto polish; metal polish; tripoli; rouge; rubbing paste; whiting; chalk; abrasive polish
buff = swirl remover; polishing paste; cutting paste; auto compound; car compound; brass polish
wax = beeswax; carnauba; wax polish; liquid wax; wax lubricant; wool wax; wool lube; furniture wax
alcohol = meths; methylated spirit*; alcohol pad; pulling over
cloth = linen; felt; muslin; denim; hessian; flannel; t shirt; cheesecloth; tissue; towel; canvas; terry
cloth = brown paper; paper bag; kraft paper; leather; cotton; wool cloth; wool felt
p60 = extra coarse; roughest
p100 = medium coarse
p150 = medium fine
p80 = rough paper; rough grit; coarser
p1000 = micro fine; finest
scraper = drawknife; draw knife; smoothing plane; spokeshave; hand plane; hand planed; jointer; planer
scraper = thicknesser; razor; razor blade; broken glass; blade; chisel; knife; planing; planer blades
skip = left unsanded; straight from stripping; as stripped; as is; as planed; untouched; not abraded
skip = not scuffed; not keyed; not rubbed; never sanded; never scuffed; without sanding; without scuffing
skip = left rough; left as planed; left glossy; no scuffing; no abrading; no scuff; omitted; forgotten
skip = skipped; unscuffed; none done; nothing
burnish = too fine; mirror smooth; glazed; clogged; clogged paper; worn out paper; dull disc; loaded paper
burnish = glassy; polished smooth; overheated; dull belt; worn disc; worn belt
- = cleaned up; dusted; wiped; vacuumed; vacuum; tack cloth; dust; dust free; swarf; scratch*; swirl*
- = abrasive*; aluminium oxide; aluminum oxide; silicon carbide; garnet; emery; film; ceramic; open coat
- = sheet; strip; strips; stick; sticks; nail file; emery board; grits; stages; stage; steps; sequence
- = progress*; through; up; every grit; graded; mesh; net; disc paper; hollows; bumps; high spots; low spots
- = drips; runs; sags; nib; specks; orange peel; brush marks; ridges; patches; repairs; filler; putty; glue
- = stain; paint; primer; sealer; varnish; lacquer; shellac; shell; veneer; knots; mouldings; carving*
- = turnings; spindles; crevice*; corner; flat areas; open areas; tops; fronts; outside; inside; whole
- = all over; everywhere; very; vigorous*; pressure; firm*; careful*; even; evenly; uniform; true
- = skip sanded; silky; until; uniform dullness; sheen; satin; gloss; shine; mirror; cured; first; second
- = rub; rubbing; each; previous; oxide; raised fibres; fibres; fibers; nap; old; surface; finish; finished
- = wood; sand; sandpaper; coat; repeated; grain direction; straight; long strokes; strokes
"""

COATING = """
heavy = lavish*; liberal*; slather*; plenty; loaded brush; full brush; dripping brush; glob*; blob*; pour*
heavy = overload*; in one go; one go; fat; fat coat; ample; copious; too thick; too heavy; drench*; swamp*
heavy = double thickness; very thick; extra thick; heavy wet; heavy coat; heavy coats; thick coat
heavy = thick coats; as thick as; wet heavy; soaking wet; deep coat; piled on; extra wet; applied thick
heavy = full heavy; brimming; very heavy
thin = skim*; scant*; lean; very thin; ultra thin; barely; whisper; thin film; thinnest; tight coat; slight
thin = light coat; light coats; hairline; very light; minimal; feather*
thin mist = light mist; dusted on; flash coat; mist passes; fine mist; light dusting
thin thinned = sealer coat thinned; size coat; sizing; size; thin wash; washed on; watery
not_wiped = not buffed; not wiped back; surplus left; excess pooled; left wet; left standing; left to soak
not_wiped = left as a film; left thick; not rubbed off; excess not buffed; not removed; surplus not wiped
not_wiped = never wiped off; left to dry on; dried on; no wipe; left without wiping; forgot to wipe
not_wiped = wiped hours later; wiped next day; wiped too late; barely wiped; carelessly wiped; wet left
not_wiped = unwiped excess; unbuffed; pools left; puddles left
wiped = rubbed off; surplus removed; surplus wiped; surplus wiped off; excess taken off; excess rubbed off
wiped = dabbed off; wiped down dry; buffed dry; mopped up; rubbed dry; excess off; wipe off
wiped = wiped thoroughly; wiped well; fully wiped; wiped back hard; wiped immediately; buffing
wiped = all excess wiped; all excess; surplus
slow_thinner = drying retarder; blush retarder; glycol ether; levelling agent; leveling agent; flow agent
slow_thinner = flow aid; slow drying solvent; slow evaporating; slowest thinner; slower thinner
slow_thinner = levelling additive; leveling additive; blush remover; blush eraser; drying inhibitor
slow_thinner = propylene glycol; open time extender; paint conditioner; brushing additive; paint extender
fast_thinner = cheap solvent; fast reducer; quick thinner; cheap lacquer thinner; fast drying thinner
fast_thinner = fast evaporating thinner; fastest thinner; quick solvent; cheap thinners; washing thinner
thinned = half and half; fifty fifty; one to one; let down; with turpentine; with mineral spirits
thinned = with white spirit; with alcohol; with water; weak; one pound; one pound cut; two pound cut
thinned = pound cut; thinned down; cut 50; cut with; watered down; water added; thinned heavily
thinned = over thinned; overthinned; thinning; weakened; dilution; dilute; wiping consistency
thinned = milk consistency; reduced with; thinned out
warm = warmed tin; water bath; hot water bath; preheated; pre heated; warm can; warm tin; heated material
warm = heated spray; hot spray
chilled = fridge; icy; cold can; cold tin; cold paint; cold varnish; cold lacquer; refrigerated; stored cold
over-brushed = fuss*; fiddl*; worked over; kept brushing; brushed again; again and again; many strokes
over-brushed = touched in; gone over; went over; go over; drag*; rework*; re worked; re rolled; rerolled
over-brushed = brushing over; over worked; over working; overworking; overbrushing; repeatedly brushed
over-brushed = repeated strokes; tipping late; late tipping; starting to set; after it had started
over-brushed = partly set; half set; nearly dry; repeated brushing; brushed repeatedly; scrubbed in
over-brushed = many passes; excessive brushing; brushed and brushed; retouch*
shaken = agitat*; froth*; power mixed; drill mixed; vigorously stirred; stirred vigorously; shaken can
shaken = shaken hard; well shaken; shake; blender; mixer; paint shaker; shaken tin; stirred fast
shaken = drill mixer
dry_spray = from far; from a distance; gun held far; dusty spray; too little material; low fluid; arm length
dry_spray = too dry; sandy; fast passes; gun distance; held too far; overspray; high pressure; too much air
dry_spray = rough spray; poorly atomised; poorly atomized
wrong_mix = catalyst forgotten; hardener forgotten; too little hardener; too little catalyst; not mixed
wrong_mix = by eye; guessed ratio; guessed; mismeasured; mis measured; settled; poorly mixed; badly mixed
wrong_mix = not stirred well; poorly stirred; wrong hardener; without hardener; without catalyst; no mixing
wrong_mix = hardener omitted; catalyst omitted; short of hardener; over catalyzed; under catalyzed
wrong_mix = half the hardener; half the catalyst; incompletely mixed; incompletely stirred
wrong_mix = flatting agent settled; unshaken; incorrect ratio; hardener short; mixed poorly; left over mix
old_stock = old tin; half empty can; half used tin; half full can; half full tin; leftover; left over
old_stock = skinned over; skinned; out of date; past its date; gelled; lumpy; curdled; from the shelf
old_stock = years in the tin; years on the shelf; old mix; pre mixed shellac; premixed; long opened
old_stock = opened long ago; opened years ago; old material; old paint; old varnish; old lacquer; separated
old_stock = shelf life; past shelf life; past expiry; opened can; opened tin; old batch
tinted = with dye; with pigment; with colour; with colorant; with color; colorant; pigmented; colour added
tinted = color added; stain added; tint added; dye added; universal colorant; universal tint; tinting
tinted = shaded; toned; coloured with
one_side = front only; outside only; show side only; underside unfinished; underside left bare
one_side = inside unfinished; not the underside; not the back; back unfinished; underside not coated
one_side = underside untreated; upper side only; top side only; visible side only; only the top; only top
one_side = only one face; only the face; only the front; top surface only; inside bare; inside left bare
one_side = back not coated; bottom bare; bottom unfinished; underside raw; other side bare
spot = local*; touch up; spot primed; patches only; bare spots only; bare patches only; only worn areas
spot = only bare; damaged areas; repairs only; damaged spots
scuff_between = abraded between; rubbed down between; cut back between; denibbed between
scuff_between = sanding between coats; sanded between coats; scuffing between; scuffing between coats
scuff_between = scuffed between coats; lightly sanded between; light sanding between; sanding between
scuff_between = rubbed between coats; denibbed; de nibbed between; light sanding between coats
scuff_between = lightly sanded between coats; scuff between; scuff between coats; sand between
scuff_between = sand between coats; sanded between each coat; steel wooled between
bonding_agent = bond additive; adhesion additive; bonding additive
fisheye_additive = fish eye additive; fisheye eliminator; fish eye eliminator; fish eye remover
fisheye_additive = flow additive silicone; silicone drops
- = syringe; squeegee; credit card; plastic card; spatula; trowel; scraper; sponge*; sponge brush
- = natural bristle; bristle; synthetic brush; nylon; china bristle; chip brush; cheap brush; good brush
- = mop; polishing mop; tampon; fad; microfibre; microfiber; mohair; short nap; nap; foam applicator
- = applicator*; applied; laid; brushed on; sprayed on; rolled on; wiped on; ragged on; padded on
- = poured off; fine tip; nozzle; cup gun; pressure pot; conventional; turbine; spray can; can; aerosol
- = air brush; airbrush; pass; passes; cross coat*; cross passes; overlap*; lap*; sections; section
- = one section; small areas; working; worked in; grain; along; across; with the grain; corners; edges; ends
- = end grain; drips; tipped; tipped off; tip off; laid off; lay off; smooth*; level; uniform; semi
- = eggshell; low sheen; sheen; high gloss; dead flat; dead matt; rubbing; rubbed; hand rubbed; interior
- = exterior; marine; spar; floor; furniture; cabinet; long oil; short oil; tinting base; base; deep base
- = base coat; top coat; topcoat; first; second; third; final; last; single; double; triple; two part
- = two pack; one part; self sealing; self priming; fast drying; quick drying; slow drying; drying; dried
- = cure*; curing; soaked in; soak in; soak; penetrat*; absorb*; absorbed; sank; left; sit; sits; wait
- = waited; later; between; strain*; filtered; stirred; stirred well; well stirred; mixed; mixed fresh
- = fresh; fresh flakes; flakes; blonde; orange; amber; garnet; super blonde; ruby; button; lemon; pound
- = per gallon; parts; part; ratio; solids; viscosity; film build; mil; mils; micron*; wet film; odourless
- = low odour; zero voc; voc; acrylic; alkyd; urethane; epoxy; resin; wood; bare; raw wood; bare wood; over
- = under; directly; straight; onto; primed; unsealed; sealed with; sanded; scuffed; rubbed out; oil based
- = water based; solvent based; waterborne; compatible; same; different; another; other; walnut; mahogany
- = oak; cherry; ebony; maple; pine; colour; color; dye; tone; dark brown; ivory; off white; pastel; bright
- = metallic; gold; silver; bronze; patina; distressed; antique; crackle; limed; liming; ceruse; glaze
- = wax coat; paste
"""

EVENTS = """
sun = sun exposed; sunshine; south window; west window; bay window; roof window; glass door; patio door
sun = french doors; bright; bright room; bright window; strong light; sunlit; sun lamp; ultraviolet
sun = big window; large window; sunbeam*; sunbath*; midday sun; morning sun; afternoon sun; low sun
sun = sun streams; light from window; windowsill; window sill; window ledge; sun drenched; hung in window
sun = near window; conservatory light
sun heat = sun room; sun porch; glass house; glasshouse; glazed porch; blazing; blazing sun; full sun
sun heat = hot sunny; summer sun; hot sunlight; baking sun; baking; strong sun; scorching; tropical sun
sun heat = dashboard
heat = heat register; heating vent; heat vent; vent; hot vent; hot air; warm air; hot air vent; register
heat = floor heating; underfloor heating; baseboard heater; range; cooker; hob; toaster oven; near stove
heat = wood stove; woodstove; wood burner; log burner; hearth; chimney; chimney breast; mantel; space heater
heat = fan heater; storage heater; heat lamp; heat source; heat gun; hairdryer; blow dryer; heat wave
heat = heatwave; hot weather; hot room; hot day*; hot van; hot truck; hot storage; hot shed; hot garage
heat = hot loft; hot house; warm room; warm weather; boiler room; boiler cupboard; airing cupboard
heat = tumble dryer; dryer; dishwasher; hotplate; halogen; spotlight; spot light; grill; barbecue; candle*
heat = tea light*; tealight*; incense; engine; warm climate; above oven; next to oven; projector; amplifier
heat = heat pipe; hot pipes; engine room; kiln; furnace room; hot trailer; shipping container; body heat
heat = electric blanket; hot water bottle
heat dry-air = heater nearby; near radiator; near heater; radiators; above radiator; heated floor; near fire
heat dry-air = near the fire; open fire; heating season; heating turned on; heating switched on; forced air
heat dry-air = forced hot air; near heating vent; over heating vent; stove heated; wood heat
hot-dish = hot food dish; hot mugs; coffee cup*; coffee mug*; coffee pot*; tea cup*; teacup*; tea pot*
hot-dish = soup bowl*; soup; hot soup; bowls; hot pizza; pizzas; frying pan; saucepan*; pots; pans; hot pots
hot-dish = hot pans; cast iron; dutch oven; baking tray; baking sheet; baking dish; oven dish; oven tray
hot-dish = roasting*; gravy; plates; hot plate mat; plate warmer; slow cooker; coffee maker; coffee machine
hot-dish = rice cooker; waffle iron; steam iron; clothes iron; ironing; ironed; curling iron
hot-dish = hair straightener*; curling tongs; hot roller*; soldering iron; hot glue; glue gun; hot pack
hot-dish = heating pad; hot laptop; notebook computer; fondue; trivet; saucer*; cup; espresso; cocoa
hot-dish = hot chocolate; takeaway; take away boxes; delivery pizza; tray; hot things; hot objects
hot-dish = hot items; warm dish*; warm plate*; dinner plate*; hot serving; platter*; casseroles; tureen
hot-dish = griddle; toast; barbecue dish
cold = unheated room; unheated house; unheated garage; unheated building; unheated storage; chilly; chill*
cold = autumn; cold room; cold garage; cold storage; cold store; cold weather; cold night*; cold season
cold = cold house; cold hall; cold van; cold truck; cold day*; winter storage; cool room; cool night*
cold = air conditioned cold; cold spell; north room; north facing; winter months; cold workshop; cold shop
cold = temperature drop; temperature fell; temperature swing*; cold floor; cold wall; cold trailer; draughty
cold = larder; pantry cold; loft in winter
damp = damp room; damp cellar; damp basement; damp house; damp weather; damp air; damp garage; damp storage
damp = damp season; humid air; humid room; humid day*; humid weather; humid summer; moist air; high humidity
damp = mist; misty; mildew*; musty; crawl space; crawlspace; laundry area; utility room; wash house
damp = wet room; steam room; shower room; toilet; lavatory; powder room; ensuite; en suite; vanity; spa
damp = pool house; indoor pool; greenhouse damp; root cellar; wine cellar; dank; clammy; sweating; sweats
damp = seaside; seashore; seafront; lake house; beach house; beach; lakeside; riverside; marine; marina
damp = houseboat; closed up house; unventilated; swampy; swamp; monsoon season; wet season; wet weather
damp = wet summer; wet spring; wet basement; wet cellar; rain season; evening dew; morning dew; night dew
damp = concrete floor; bare concrete; concrete; slab; stone floor; dirt floor; earth floor; crypt; damp wall
damp = damp floor; cool mist; aquarium; fish tank; terrarium; kettle steam; cooking steam; ground floor flat
damp = basement flat; basement storage; basement room; flooded basement; tent; under plastic outside
damp cold = shed storage; outbuilding; barn storage; storage barn; stable; lean to; summer house
damp cold = summerhouse; garden shed; garden house; cabin; holiday home; holiday house; caravan; boathouse
damp cold = garage over winter; unheated barn; unheated shed; cold cellar; cold basement; vacant house
damp cold = empty house; storage unit; storage locker; storage container; self storage; lock up; warehouse
damp cold = depot; cold damp; damp cold; winter barn
heat cold = unheated attic; uninsulated attic; attic storage; attic room; loft storage; uninsulated loft
heat cold = car boot
freezing cold = icy; ice storm; sub zero; subzero; hard frost; below freezing; minus; night frost*
freezing cold = deep freeze; arctic; sleet; snowy
damp heat = sauna bath; hot bath*; hot shower*; hothouse; hot and humid; jungle; equatorial; wet heat
damp heat = boiling water; pressure cooker; rice steamer; dish steam; dishwasher steam; orangery
damp heat = summer humidity; hot humid
wet-storm = downpour; shower of rain; rain shower; drizzle*; hail; driving rain; rained on; rain soaked
wet-storm = cloudburst; hurricane; gale*; sprinkler*; hosed; hose; hosing; garden hose; pressure wash*
wet-storm = power wash*
wet-storm sun = outdoor; balcony; terrace; veranda; verandah; pergola; front porch; back porch
wet-storm sun = screened porch; open porch; garden table; garden furniture; yard; backyard; courtyard
wet-storm sun = roof terrace; lawn; boat; boat deck; yacht; dock; jetty; poolside; front door; exterior door
wet-storm sun = in the open; out of doors; open air; elements; all weather; gazebo; campsite; camping
wet-storm sun = picnic; exterior; bench outside; left out; beach chair
wall = external wall; outer wall; brick wall; stone wall; cellar wall; basement wall; wall side
wall = close to the wall; flush to wall; flush against wall; back to the wall; against exterior wall
wall = tight to the wall; pushed to the wall; alcove; niche; corner of the room
standing-water = overflow*; overwater*; over watered; watered plants; watering; plant tray; flower*; flowers
standing-water = flower vase; fresh flowers; flower water; potted plant*; pot plant*; house plant*
standing-water = houseplant*; herb pots; plant saucer; puddle*; pool of water; pooled; water pool
standing-water = cold glass*; iced drink*; iced tea; ice bucket; ice water; water jug; water pitcher
standing-water = pitcher*; jug*; carafe; water bowl; pet bowl; dog bowl; cat bowl; dog water; bath mat
standing-water = wet clothes; wet coat*; wet umbrella*; umbrella*; wet laundry; wet boots; wet shoes
standing-water = wet bottle*; wet swimsuit*; wet hair; wet cloth left; wet sponge left; wet rag left
standing-water = water left; water stood; water stands; standing liquid; liquids; liquid; juice; milk; soda
standing-water = soft drink*; lemonade; water ring; water bottle; bottle*; beverage*
standing-water = condensation on glasses; cup ring*; seepage; dripped; drips; drip*; roof leak; pipe leak
standing-water = burst pipe; basin; wash basin; tap; taps; faucet; sink side; beside sink; next to sink
standing-water = around sink; draining board; wash bowl; dish rack; soaked; soak*; wetted; wetting; rinsed
standing-water = rinsing; wet feet; wet hands; wet shoes left; wet floor; mop water; mopping; wet mop*
standing-water = wet mopping; humidifier water; aquarium water; melt water; snow boots; sprinkled
hot-dish food = hot meal*; breakfast; cooked food; cooking pot*; buffet; serving; served; hot snacks; supper
hot-dish food = lunch
cleaning = washed daily; daily wiping; wiped down; wiped often; window cleaner; glass cleaner
cleaning = household cleaner*; kitchen cleaner; all purpose cleaner; multi purpose cleaner; bathroom cleaner
cleaning = degreaser; sanitiz*; sanitis*; hand sanitizer; hand sanitiser; alcohol cleaner; ammonia cleaner
cleaning = dish soap; washing up liquid; soapy water; soapy cloth; soapy; sponge; sponged; sponging; mop
cleaning = dusting spray; furniture polish; lemon oil; lemon polish; orange oil; oil polish; spray polish
cleaning = peroxide; hydrogen peroxide; oven cleaner; washing soda; borax; vinegar; baking soda
cleaning = bleach cleaner; steam clean*; steam mop; scour*; chemical*; chlorine; baby wipes; wet wipes
cleaning = disinfectant wipes; melamine sponge; stain remover; solvent cleaner; cleaned daily
cleaning = cleaned weekly; cleaned with
alcohol = whisky; whiskey; vodka; gin; rum; brandy; liquor; spirit; bar; bar top; pub; tavern; liqueur
alcohol = champagne; cologne; aftershave; after shave; hair spray; hairspray; nail varnish
alcohol = nail polish remover; nail varnish remover; acetone; mouthwash; rubbing alcohol; cider
alcohol = drinks party; scent bottle; perfume bottle; alcoholic drink*; party; solvent spill; mosquito spray
alcohol = insect repellent; bug spray; medicine
plastic-cover = vinyl cover; vinyl tablecloth; vinyl mat*; plastic mat*; plastic tray; plastic bottle
plastic-cover = plastic toy*; plastic feet; plastic pad*; plastic wrap; plastic bag on; place mat*
plastic-cover = place mats; table mat*; rubber mat*; rubber pad*; rubber foot; rubber band*; rubber bumper*
plastic-cover = silicone mat*; silicone feet; silicone pad*; shelf liner; shelf paper; non slip mat
plastic-cover = non slip pad*; nonslip; anti slip; rug pad; rubber backed; gripper; grip mat; pvc; wax cloth
plastic-cover = waxed cloth; oil cloth; table protector; table pad; clear plastic; clear vinyl; desk mat
plastic-cover = desk pad; mouse mat; mouse pad; blotter; leatherette; imitation leather; artificial leather
plastic-cover = faux leather; binder*; ring binder*; vinyl binder*; cables; cable; power cord
plastic-cover = telephone cord; telephone; phone; yoga mat; plasticiser; plasticizer; appliance feet
plastic-cover = sticky feet; suction cup*; bath toys; stick on; sticker*; decal*; adhesive; adhesive tape
plastic-cover = sticky tape; duct tape; painter tape; bumpers; acrylic sheet; cutting mat; garbage bag
plastic-cover = bin bag; bin liner; suit bag; garment bag; plastic crate*; plastic box*; plastic container*
plastic-cover = baby mat; changing mat; mattress cover
wrapped plastic-cover = bubble film; plastic wrapped; plastic wrapping; wrapped in plastic
wrapped plastic-cover = wrapped in bubble wrap; wrapped in film; pallet wrap; stretch film; shrink film
wrapped plastic-cover = foil wrapped; poly sheet; poly bag; plastic sheeting; polyethylene foam; foam wrap
wrapped plastic-cover = foam sheet; packing foam; foam corner*; air cushion; bubble bag; mattress bag
wrapped plastic-cover = plastic tarp; cling wrap; packing tape; furniture bag; polystyrene; packing peanuts
stacked = doors stacked; stacked doors; face on face; face against face; on top of each other
stacked = on top of one another; one on another; one on top; atop; pile; heap; heaped; nested
stacked = pressed together; doors leaned; leaning; racked together; drying rack; interleaved; cauls; press
stacked = veneer press; vacuum bag; laid together; sandwiched; pressed; stood against; leaned against
loaded = statue*; statuette*; figurine*; bust; candlestick*; candle holder*; sewing machine; microwave
loaded = printer; turntable; record player; hi fi; radio; speaker*; clock; mantel clock; jewellery box
loaded = jewelry box; toolbox; tool box; tools; crockery; china; glassware; jars; tins; canned; cans; papers
loaded = files; paperweight; picture frame*; photo frame*; photo*; basket*; trays; machine; appliance*
loaded = mixer; kitchen machine; blender; bread machine; bread box; suitcase*; luggage; box; crate; crates
loaded = carton; storage box; load; loads; loaded; dumbbell*; piano; organ; safe; marble top; marble
loaded = stone top; stone; terrarium stand; cage; bird cage; hamster cage; statuettes; trophies; trophy
loaded = collection; collectibles; records; magazines; magazine; newspapers; book; book ends; bookends
loaded = bookend*; encyclopedia; shelves of books; folders; binders of paper; crates of records
loaded = knick knack*; knickknack*; trinket*; decoration*; decor; lamp base; table lamp; desk lamp
loaded = things on it; things on top; items; something heavy; legs of chair; chair legs; chair feet; castors
loaded = casters; table feet; towels; bedding; jumpers; sweater; garments; hangers; shoes; boots; handbag*
loaded = dishes stored; plates stored; books on shelves; shelf load; mattress; cushion*; pillow*; upholster*
wrapped = moving blanket*; furniture blanket*; packing blanket*; moving pad*; furniture pad*; packing paper
wrapped = tissue paper; brown paper; kraft paper; bedsheet; bed sheet; sheet; sheets over; dust sheet
wrapped = dust cover; drop cloth; fabric; cotton cloth; towel wrapped; burlap; canvas; cover; covers
wrapped = corrugated; corrugated cardboard; cardboard box; cardboard corners; boxed; swaddled; padded
wrapped = padding; parcel; parcelled; glassine; felt blanket; old blanket; wool blanket; eiderdown; duvet
wrapped = comforter
shut = latched; locked; locked up; fastened; lids closed; closed doors; closed drawers; closed cabinet
shut = closed lid; closed drawer; shut tight; closed tight; kept shut; drawers in; door in; doors fitted
shut = drawer closed; drawer pushed in; drawers pushed in; drawers inserted; drawers slid in
shut = drawers returned; drawers fitted; reinstalled; re installed; put back in; back in place
shut = put back together; closed overnight; closed at night; doors rehung; sash; sashes; window closed
shut = window shut; closed window; door closed; door shut; door stop; stops; rebate; rabbet; jamb; door jamb
shut = frame contact; strike; weather strip*; seal strip; drop leaf; leaves down; leaves in; table closed
shut = extension leaf; leaves stored; roll top; tambour; flap closed; fall front closed; unopened
shut = no ventilation; tightly; airtight; air tight; mated; nesting; screwed together; bolted
shut = bolted together; re assembled
shut dark = closed chest; closed trunk; closed wardrobe; kept in a drawer; inside drawers; inside cabinet
shut dark = closed box; in a cupboard; in a closet; closet; wardrobe; cupboard; inside a closed
shut dark = stored closed; sealed up; boxed up; drawer interior; under the bed; under bed
dark = dim; low light; little light; behind pictures; behind picture; behind a sofa; windowless; shaded room
dark = north light; shuttered; drapes closed; curtains closed; curtains drawn; curtain; hidden; under rug
dark = under a rug; rug; under tablecloth; under a cloth; under runner; table runner; runner; doily; doilies
dark = lace; under doily; hidden from light; no light
years = long term; longterm; long time; over time; over the years; year after year; generation*; lifetime
years = century; centuries; ageing; aging; aged; decade; years later; permanently; permanent; a long while
years = eventually; ten winters; several winters; winters; summers; several summers; many seasons
years = every season; every winter; each winter; each summer; every summer; in the long run; yearly; annual*
hands = grip*; gripped; grasp*; fingerprints; palms; fingernail*; sweaty; sweating hands; body oil*
hands = skin oil*; body contact; hand cream; hand lotion; lotion; sunscreen; sun cream; suntan oil
hands = cosmetics; makeup; make up; hair oil; hair gel; hair; head rest; headrest; leaning back; leaned on
hands = leaned back; elbows; elbow; forearm*; wrists; wrist; knees; bare legs; bare arms; bare skin
hands = door handle; drawer pulls; pull; opened daily; opened often; pulled out; opening and closing; slid
hands = sliding; scrape*; scuff*; scratch*; abras*; abrad*; shoes on; boots on; footrest; foot rest
hands = walked on; walking; stair*; staircase; banister; bannister; handrail; hand rail; desk; homework
hands = hobby; craft*; sewing; games; gaming; board games; cards; playing cards; typing; laptop use
hands = work surface; workbench; work bench; shop counter; reception; lobby; waiting room; public
hands = commercial; cafe; canteen; pub table; club; library; guests; guest; visitors; bed and breakfast
hands = rental; tenant*; tenants; household; family use; family life; rough use; hard wear; hard use
hands = heavy wear; heavy traffic; high traffic; everyday life; regular use; frequent use; constant use
hands = light use; occasional use; gentle use; usage; wear; wear and tear; tear; dogs; cats; claws; claw
hands = paws; paw; puppy; kitten; cat scratch*; dog scratch*; pet; animals; parrot; bird; pet hair; licking
hands = jumped; jumping; sleeping; climbed; climbing; pushed chairs; chairs pushed; bumped; banged; banging
hands = kicked; knocked; impact*; dented; dent*; keys; key; coins; belt buckle; jeans; rivets; zips; zipper
hands = buttons; watch strap; bracelet
freight wrapped = removal*; removal van; removals; moving van; moving truck; moving company; mover*; movers
freight wrapped = courier; carrier; posted; mailed; haul*; hauled; trailer; lorry; pickup truck
freight wrapped = pick up truck; loaded on truck; loaded into van; transit; journey; export*; import*
freight wrapped = overseas; sea freight; air freight; rail freight; dispatch*; despatch*; collected; sent
freight wrapped = driven; carted; relocat*; moving house; house move; house moving; van journey; consign*
children hands = baby bed; bunk bed; high chair; highchair; teeth*; teething; gnaw*; biting; bitten; drool*
children hands = saliva; grandchild*; grandchildren; playroom; play; playing; kindergarten; daycare
children hands = day care; playpen; rocking horse; school desk; crayon*; felt tip*; felt pen*; markers
children hands = paint set; finger paint; glue stick; little ones; boys; girls; pupils; students; student
children hands = teenager*; teen
food = bread; dough; kneading; chopping; chopped; meat; raw meat; fish; fruit; vegetable*; cheese; butter
food = olive oil; cooking oil; vegetable oil; salad oil; vinegar dressing; mustard; ketchup; tomato sauce
food = sauce; tomato; curry; turmeric; jam; honey; syrup; sugar; chocolate; egg; eggs; spice*; salt; lemon
food = lemon juice; citrus; pickles; fat; lard; greasy; greasy hands; frying; fryer; bacon; salad bowl
food = serving board; bread board; cutting board; chopping board; wooden spoon*; utensil*; fruit bowl
food = snack*; popcorn; cereal; berry; berries; beetroot; cake; baking food; ice cream; pet food; dog food
food hot-dish standing-water hands = family meals; family dinner*; daily meals; every meal; meal
food hot-dish standing-water hands = dinner table; dining table; dining room; coffee table; tea table
food hot-dish standing-water hands = breakfast table; bar use; table use; restaurant table; cafe table
food hot-dish standing-water hands = party use; dinner part*; entertaining; holiday dinner; thanksgiving
food hot-dish standing-water hands = christmas dinner; christmas; kitchen table; breakfast bar
dry-air = dry heat; dry winter; dry winter air; dry climate; dry house; dry home; winter heating
dry-air = winter indoors; heating on; heated indoors; central heat; heated flat; heated apartment
dry-air = indoor heating; low humidity; desert; arid; air conditioning; air conditioned; air con; dehumidif*
dry-air = dry season; dry summer; dry spell; dry indoor air; parched; overheated; overheated room
dry-air = winter dryness; heated bedroom; heated living room
draught = breeze*; breezy; ceiling fan; box fan; fans; fan on; open window*; open door*; windows open
draught = ventilat*; ventilation; cross draft; cross draught; air flow; airflow; drafty; through draft
draught = air stream; exhaust fan; extractor; air mover
- = sofa; couch; lounge; sitting room; hallway; hall; corridor; entry; entrance; foyer; study; home office
- = guest room; dressing room; attic stairs; landing; flat; house; home; cottage; mansion; castle; building
- = gallery; showroom; show room; showcase; display; displayed; exhibited; stage; studio; mild; moderate
- = controlled; climate controlled; stable air; stable climate; constant; even temperature; well ventilated
- = cured; hardened; dried; dry to touch; handled gently; carefully; treated gently; seldom; rarely
- = occasionally; sometimes; often; frequently; usually; always; constantly; continuous*; continual*
- = repeatedly; repeated*; again; once; weekly; monthly; hourly; at night; in daytime; daytime; noon
- = midnight; evenings; mornings; weekend*; afternoon*; autumn day; spring; in spring; holiday; vacation
- = minutes; moment; brief; briefly; short time; some time; while; long while; left; stays; stay; stayed
- = sits; sat; standing; kept; keep; resting; rest; waits; waited; waiting; use begins; in use; service
- = put to use; put into use; into service; returned; sold; sale; customer; buyer; inspection; looked at
- = viewed; checked; examined; tested; test; trial; nothing; nothing else; none; ordinary; average; typical
- = modest; decorative; decorative use; interior; interior use; domestic; private; residential; cork
- = cork mat; cork mats; cork coaster*; felt pads; felt feet; felt pad; felt glides; cloth pad; cotton
- = linen cloth; woollen; wool; silk; velvet; leather; fabric coaster*; ceramic; pottery; porcelain; metal
- = brass; bronze; stainless; steel; wood; wooden; oak; mdf; pegs; sawhorses; trestles; trestle; saw horses
- = rack; racks; stand; stands; hooks; hung up; screws; nailed; glued; edge; corner; upright; upside down
- = face up; face down; on its side; on edge; horizontal; vertical; level; turned; rotated; lifted; carried
- = wheeled; taken; touch dry; contact; rubbing; spacer*; stickers between; gap; air gap; space; separately
- = separate; singly; smoke; smoker*; smoking; cigarette*; cigar*; tobacco; pipe smoke; ash; ashtray
- = fireplace smoke; candle wax; wax drip*; ink; pen; pens; pencil*; ballpoint; marker; printer ink
- = paint splash*; newsprint; dust; dusty; sawdust; pollen; insect*; woodworm; moth*; mothball*; moth balls
- = camphor; cedar chips; lavender; smell; odour; odor; scent; potpourri; light bulb; electric light
- = lamps on; led; television stand; remote control; doll; dollhouse; aquarium stand; music; instrument*
- = guitar; violin; mirror; curtains; carpet; floor; ceiling; roof; roofed; under roof; sheltered; protected
- = protection; shaded; in shade; shadow; north; south; east; west; inland; mountain*; city; town; country
- = countryside; village; farm; farmhouse; ranch; hospital; clinic; dentist; surgery; bank; courthouse
- = town hall; theatre; theater; cinema; gym; sports hall; store front; salon; hairdresser; barber; bakery
- = butcher; brewery; winery; stables; workshop use; lathe; turning; pleasant; comfortable; day one
- = first day; first night; first winter; first summer; first use; first wash; first month*; first week*
- = first year*; next summer; next winter; following; following winter; following summer; afterwards
- = thereafter; since; since then; meanwhile; finally; soon; shortly
"""

AIR_WORDS = """
sun hot = full sun; blazing; blazing sun; strong sun; sunshine; midday sun; sun through window
sun hot = sun on the piece; summer sun; hot sun
hot = sweltering; scorching; boiling; heat wave; heatwave; hot room; hot workshop; hot shop; hot weather
hot = loft; stifling; midsummer; high summer; midday heat; hot afternoon; summer heat; hot attic; hot garage
hot = near heater; near stove; hot air
warm = warmish; balmy; late spring; pleasantly warm; warm day; summery; warm weather; warm spell; warm house
warm = heated shop; heated workshop
cold = bitter; bitterly; bitterly cold; very cold; cold day; wintry; unheated in winter; midwinter; icy
cold = cold snap; cold weather; cold spell; cold workshop; cold shop; cold garage; cold shed; winter day
cold = near freezing; cold room; raw day; cold air
cool = chill; coolish; crisp; fresh; mild winter; late autumn; fall; october; november; december; january
cool = february; march; early spring; cold morning; cold evening; cool day; cool room; cool shop
cool = cool weather; outbuilding; stone building; church; temperature fell; temperature drop*; after sunset
cool = dusk; unheated shop; unheated workshop; cooling
freezing = ice; subzero; sub zero; below zero; snow*; minus
humid = sticky; close; clammy; steamy; wet weather; wet day; rain shower*; drizzl*; thunder*; monsoon season
humid = high humidity; very humid; humid day; damp room; damp workshop; damp air; damp weather; damp shop
humid = damp day; condens*; dew; marine; lake; lakeside; seaside; beach; bathroom; laundry; flooded; swamp*
humid = saturated; wet season; overcast; showers; concrete; boat; pool
hot humid = sultry; steaming; jungle; gulf; equatorial; hot and humid; subtropical; humid summer; hot humid
hot humid = summer humidity; humid heat
dry = parched; low humidity; dry air; dry room; dry winter air; dry heat; central heating; heated house
dry = heated room; radiator*; wood stove; stove heat; mountain*; high altitude; dehumidif*; dry climate
dry = heating season; dry winter; dry indoor air; bone dry; heating on; forced air
hot dry = hot dry; desert heat; kiln; arid summer
cool humid = crypt; crawl space; cool damp; cold damp; damp cellar; damp basement; damp garage; damp shed
cool humid = damp barn; stone cellar; cool and damp; cold and damp
outdoors = garden; yard; patio; deck; balcony; terrace; veranda; driveway; open air; carport; courtyard
outdoors = open garage; lawn; street; site
draught = gust*; gale*; blow*; drying wind; ceiling fan; fans; air movement; moving air; airflow
draught = cross draught; extractor; exhaust; spray booth; booth; blower
- = pleasant; comfortable; moderate; medium; average; typical; usual; stable; constant; steady; ideal; good
- = suitable; right; fine; within; limits; label; recommended; temperature; temperatures; temp; degrees
- = degree; celsius; fahrenheit; relative; humidity level; percent; per cent; about; some; estimated; guess
- = guessed; guessed from; assumed; assumption; presumably; probably; perhaps; likely; not stated; not known
- = unknown; unstated; not given; not said; not mentioned; not recorded; not measured; unmeasured
- = unspecified; inferred; implied; implies; stated; source; writer; author; says; said; quoted; text
- = measured; meter; hygrometer; thermometer; indoor air; inside; house; home; flat; apartment; living room
- = kitchen; bedroom; studio; factory; production shop; industrial; commercial shop; cabinet shop
- = paint shop; barn conversion; north; south; east; west; northern; southern; region; country; state
- = climate; local; location; weather; month; may; april; june; july; august; september; year; years
- = typical day; working; work; finishing; finish; drying; dries; dried; cure; curing; later; afterwards
- = first; then; next; following; both; two; during; throughout; use; storage; stored; store; before; piece
- = wood; table; shop air; shop temperature; room air; surface temperature; material; can; stable room
- = conditioned; controlled; closed; open; windows open; windows; garage door; door; doors; light; bright
- = low light; dim; fairly; slightly; somewhat; moderately; reasonable; reasonably; high; low; higher; lower
- = rising; rose; changing; varying; variable; fluctuat*; alternating; between seasons; daily; quiet; still
- = still air; calm; no wind; sheltered; poor; poorly; stagnant; little air; stuffy; smell; fumes; clean
"""

CONDITIONS = """
clean = spotless; immaculate; pristine; spotlessly clean; brand new; unused; dust free; freshly made
clean = newly made; newly built; just made; freshly milled; freshly planed; freshly sanded
did:clean clean = washed down; scrubbed; wiped clean; cleaned up; hosed; hosed down; power washed
did:clean clean = pressure washed; shampooed; freshly cleaned; freshly washed; well cleaned
did:clean clean = thoroughly cleaned; soap washed; cleaned thoroughly
did:degrease clean = degreased thoroughly; tsp washed; sugar soaped; de greased; washed with degreaser
did:spirits clean = de waxed; wax removed; wiped with mineral spirits; solvent cleaned; solvent wiped
did:spirits clean = polish removed; wiped with solvent; wiped with naphtha; wiped with white spirit
did:scuff = keyed; roughened; sanded lightly; lightly sanded; rubbed down; denibbed; scuff sanded; flatted
did:scuff = matted; de glossed; lightly scuffed
did:sand = hand sanded; machine sanded; freshly sanded bare; sanded smooth; well sanded; jointed
did:sand = thicknessed; hand planed; drum sanded; belt sanded; sanded bare; sanded to bare wood; sanded back
did:sand = sanded down
did:strip = freshly stripped; chemically stripped; paint stripped; stripped bare; stripped clean
did:strip = stripped with solvent; newly stripped; finish removed; old finish removed; recently stripped
did:strip on:alkali:0.5 = dipped; tank stripped; tank dipped; stripped in a tank; dip tank
did:strip on:alkali:0.5 = dipped and stripped; stripped by dipping; dip tank stripped; commercially dipped
did:strip on:alkali:0.5 = vat stripped; vat dipped
did:strip on:alkali:0.7 = lye stripped; caustic tank; caustic bath; caustic soda; caustic stripped door
did:strip on:alkali:0.7 = caustic dipped; lye dipped; stripped with lye; stripped with caustic
did:strip on:alkali:0.7 = hot tank stripped; stripped with caustic soda
did:prime = undercoated; primed white; factory primed; pre primed; primer coated; primer on
did:seal = pre sealed; shellac sealed; sealed with shellac; sealer coat; sanding sealed; sealed bare
did:bleach = bleached wood; two part bleached; peroxide bleached; oxalic bleached; lightened
on:wax:0.9 = beeswax; paste wax; furniture wax; wax polish; wax polished; wax coated; carnauba; floor wax
on:wax:0.9 = clear wax; wax finish; wax layer; liquid wax; wax over; dark wax; brown wax; liming wax
on:wax:0.9 = paraffin; paraffin wax; wax paste
on:wax:0.95 = heavy wax; thick wax; wax build up; wax built up; built up wax; wax layers; layers of wax
on:wax:0.95 = caked wax; candle wax; wax drip*; wax residue; wax spill*; years of wax; many coats of wax
on:wax:0.95 = wax rich; candle drip*; wax in pores; wax in crevices; wax in the pores
on:wax:0.7 = once waxed; formerly waxed; waxed before; waxed years ago; traces of wax; possibly waxed
on:wax:0.7 = wax traces; waxed once; previously waxed; wax possible; regularly waxed; perhaps waxed
on:wax:0.7 = may be waxed; sometimes waxed
on:polish:0.9 on:silicone:0.5 = polished for years; polished for decades; polished regularly
on:polish:0.9 on:silicone:0.5 = polished weekly; regularly polished; years of polish; decades of polish
on:polish:0.9 on:silicone:0.5 = years of furniture polish; decades of furniture polish; old polish
on:polish:0.9 on:silicone:0.5 = polish build up; polish buildup; built up polish; polish layers
on:polish:0.9 on:silicone:0.5 = household polish; dusting spray; furniture spray; cream polish; oil polish
on:polish:0.9 on:silicone:0.5 = orange oil; reviver; furniture cream; polish film; much polished
on:polish:0.9 on:silicone:0.5 = heavily polished; often polished; polish in pores; polish on it
on:polish:0.9 on:silicone:0.5 = furniture oil; polishing residue
on:polish:0.9 on:silicone:0.8 = aerosol polish; spray polished; sprayed polish; spray wax
on:polish:0.9 on:silicone:0.8 = spray furniture polish; silicone polish; silicone polished
on:polish:0.9 on:silicone:0.8 = silicone furniture polish; aerosol furniture polish; dusting polish
on:polish:0.9 on:silicone:0.8 = shine spray; years of spray polish; spray polish for years
on:polish:0.9 on:silicone:0.8 = spray polish history
on:silicone:0.9 = lubricant spray; spray lubricant; waterproofing spray; tyre dressing; car polish
on:silicone:0.9 = silicon oil; fabric protector; release agent; silicone sealant; caulk; bathroom sealant
on:silicone:0.9 = sealant; car wax; penetrating lubricant; rust loosener; dashboard spray; fisheyes
on:silicone:0.9 = fish eyes; fish eye; fisheye; craters
on:mineral-oil:0.9 = teak oil polish; baby oil; machine oil; sewing machine oil; lamp oil; paraffin oil
on:mineral-oil:0.9 = chopping board oil; cutting oil; hinge oil; motor oil; engine oil; butcher block oil
on:mineral-oil:0.9 = lubricating oil; lubricant; oil drip*; oil spill*; petroleum jelly; kerosene; diesel
on:mineral-oil:0.9 = fuel oil; petrol; gasoline; oil treated; mineral oiled; treated with mineral oil
on:mineral-oil:0.9 = axle grease; lighter fluid; sewing oil; grease from hinges; chain oil
on:mineral-oil:0.5 in:old-oil:50 = teak oil; danish oil; tung oil; linseed oil; oil treated wood; oil rubbed
on:mineral-oil:0.5 in:old-oil:50 = oil polished; hardwax oil; worktop oil; regularly oiled; furniture oiled
on:mineral-oil:0.5 in:old-oil:50 = freshly oiled; oiled regularly; oiled yearly; olive oil
on:mineral-oil:0.5 in:old-oil:50 = cooking oil rubbed; vegetable oil; walnut oil
on:grease:0.95 = cooking grease; greasy kitchen; cooking fat; frying fat; bacon fat; lard; kitchen fat
on:grease:0.95 = kitchen film; kitchen residue; greasy film; grease film; sticky grease; oven grease
on:grease:0.95 = cooker grease; cooking residue; kitchen dirt; fatty; fryer; restaurant kitchen; greasy dirt
on:grease:0.95 = butter; grease and grime; cooking film; heavy grease; greasy hands; grease spots
on:grease:0.95 = grease spot; grease stain*; food grease; grease marks; grease mark
on:grease:0.6 = restaurant; bar; cafe; canteen; pub; near cooker; near stove top; beside cooker
on:grease:0.6 = above cooker; food residue; food stain*; food spill*; food spots; dining use; kitchen use
on:grease:0.6 = from a kitchen; kitchen history; used in kitchen; diner; galley; kitchen furniture
on:grime:0.95 = filthy; filth; muck; mucky; soiled; heavily soiled; dark grime; black grime; ingrained dirt
on:grime:0.95 = ingrained grime; caked dirt; crud; cruddy; gunk; gunky; scum; mud; muddy; coal dust
on:grime:0.95 = sooty dirt; dirt in pores; dirt in crevices; dirt build up; dirt buildup; grime build up
on:grime:0.95 = grime buildup; dingy; grubby; bird droppings; fly specks; fly spots; cobweb*; bird dirt
on:grime:0.95 = dirt layer; stained with dirt; very dirty; heavy dirt; dirty edges; dirty surface
on:grime:0.95 = years of dirt; years of grime; decades of grime; decades of dirt; unwashed; attic dirt
on:grime:0.95 = dust and grime; road dirt; soil; earth; lichen; algae
on:grime:0.6 = neglected; barn find; attic find; long stored; stored for years; stored for decades
on:grime:0.6 = from attic; stored in attic; attic stored; stored in garage; garage stored; from a garage
on:grime:0.6 = stored in a garage; storage unit; from storage; flea market; junk shop; roadside; kerbside
on:grime:0.6 = curbside; found outside; dumped; abandoned; house clearance; thrift; auction; much used
on:grime:0.6 = heavily used; heavy wear; unrestored; untouched; as found; uncleaned for years; from a barn
on:grime:0.6 = hen house; chicken coop; factory use; workshop use; workbench
on:smoke-film:0.9 in:smoke:80 = cigar*; smoky; nicotine film; tobacco film; tobacco smoke; pipe smoke
on:smoke-film:0.9 in:smoke:80 = smoking household; smoked in; smoke stained; smoke film; smoker household
on:smoke-film:0.9 in:smoke:80 = smoke house; smoking room; nicotine stain*; cigarette smoke; tobacco smell
on:smoke-film:0.9 in:smoke:80 = tobacco odour; smells of smoke; smell of smoke; smoke damage; smoke damaged
on:smoke-film:0.9 in:smoke:80 = fire smoke; sooty; bar smoke; fireplace soot; lamp soot; candle soot
on:smoke-film:0.9 in:smoke:80 = smoke odor
on:skin-oil:0.9 = skin grease; body grease; hair oil; sweaty; perspiration; hand grease on arms
on:skin-oil:0.9 = dark hand marks; hand dirt; palm marks; finger grease; oily hands; oils from hands
on:skin-oil:0.9 = head grease; hand contact; arm contact; sweat softened; skin contact; body contact
on:skin-oil:0.9 = fingermarks; finger marks; fingerprints; gripped daily; touched daily; handled daily
on:skin-oil:0.9 = hand soiled; suntan oil; sunscreen; sun cream; cosmetics; makeup; make up; hand creme
on:skin-oil:0.9 = baby oil hands; hair gel; hair products; cosmetic*; hairspray; hair spray; armrest*
on:skin-oil:0.9 = arm rest*; headrest grease
on:mould:0.95 in:musty:60 = mouldy smell; mould spots; mold spots; mildew spots; black mould; black mold
on:mould:0.95 in:musty:60 = mildewed; mould growth; mold growth; spores; fungal; fungal growth; mouldering
on:mould:0.95 in:musty:60 = white mould; mould patches; active mould; live mildew; mildewy; mould on back
on:mould:0.95 in:musty:60 = green mould; surface mould; surface mold; mildew stain*
on:mould:0.6 in:musty:50 = mould history; mold history; old mould; old mildew; mould stain*; mold stain*
on:mould:0.6 in:musty:50 = past mould; mildew once; treated mould
on:remover-residue:0.8 on:remover-wax:0.4 = stripper left; traces of stripper; stripper traces
on:remover-residue:0.8 on:remover-wax:0.4 = residue of stripper; stripper not rinsed; not rinsed; unrinsed
on:remover-residue:0.8 on:remover-wax:0.4 = stripper in pores; paint stripper residue; stripper sludge
on:remover-residue:0.8 on:remover-wax:0.4 = chemical residue; stripped not rinsed; remover not washed off
on:remover-residue:0.8 on:remover-wax:0.4 = stripping residue; stripper film; stripper; paint remover
on:remover-residue:0.8 on:remover-wax:0.4 = not washed after stripping; rinsed poorly; poorly rinsed
on:remover-residue:0.8 on:remover-wax:0.4 = badly rinsed; not rinsed after stripping; remover left
on:remover-residue:0.5 = traces of finish; finish traces; traces of paint; paint traces; paint residue
on:remover-residue:0.5 = remains of finish; remains of varnish; varnish residue; varnish traces
on:remover-residue:0.5 = varnish in pores; finish remnants; remnants; patches of finish; old finish in pores
on:remover-residue:0.5 = lacquer residue; some finish left; finish left; old finish left; residual finish
on:remover-residue:0.5 = paint remains; paint in grain; paint in crevices; finish in grain; shellac residue
on:remover-residue:0.5 = paint flecks; stripped badly; poorly stripped; badly stripped
on:remover-residue:0.5 = incompletely stripped; not fully stripped; not completely stripped
on:remover-residue:0.5 = old finish traces
on:alkali:0.9 = alkali residue; lye residue; caustic residue; high ph; ph high; soda residue
on:alkali:0.9 = alkaline residue; soapy residue; white crystals; white deposit; white salts; salts
on:alkali:0.9 = efflorescence; whitish bloom; caustic soda residue; ph 10; tsp residue; alkali left
on:alkali:0.9 = caustic left
on:alkali:0.6 = oven cleaner; washing soda; sodium carbonate; strong soda; borax; dishwasher powder; tsp
on:alkali:0.6 = trisodium phosphate; detergent residue; cleaner residue; degreaser residue; cement dust
on:alkali:0.6 = lime; plaster; plaster dust; concrete splashes; soap residue; soap film; soap scum
on:alkali:0.6 = cleaned with lye; washing powder; cleaning residue; sugar soap; never neutralised
on:alkali:0.6 = never neutralized; without neutralising; without neutralizing; no neutralising; dipped door*
on:alkali:0.6 = stripped in caustic; ammonia fumed; fuming; un neutralised; unneutralised lye
on:alkali:0.6 = lye not neutralised; lye not neutralized; caustic not neutralised; caustic not neutralized
on:acid:0.9 = vinegar; lemon juice; rust remover; acid spill; citric acid; acetic acid; acid residue
on:acid:0.9 = wood brightener; hydrochloric; muriatic; battery acid
on:bleach-residue:0.9 = peroxide; hydrogen peroxide; bleach not rinsed; bleach crystals; chlorine bleach
on:bleach-residue:0.9 = household bleach; unrinsed bleach; bleach left; bleached not rinsed
on:bleach-residue:0.9 = not rinsed after bleaching; bleach in pores; chlorine
on:iron-dust:0.9 = wire wool; steel wool fibres; steel wool dust; steel wool fragments; metal filings
on:iron-dust:0.9 = filings; iron filings; grinding dust; steel filings; steel particles; steel wool bits
on:iron-dust:0.9 = steel fibres; metal dust; swarf; steel wool used; steel wool rubbed
on:iron-dust:0.9 = rubbed with steel wool; angle grinder dust; wire brush bits; steel fragments
on:iron-dust:0.4 = hinge; hinges; nut; bolt; bolts; staple*; tack; tacks; upholstery tacks; bracket
on:iron-dust:0.4 = brackets; screw; steel hinges; iron hinges; lock; locks; castor*; caster*; iron fitting*
on:iron-dust:0.4 = steel fitting*; steel screws; iron screws; wire; metal fittings; metal strap*
on:iron-dust:0.4 = iron straps; steel plate; pins; brads; drawing pins; cut nails; nail heads; metal feet
on:iron-dust:0.4 = hook; hooks; iron stand
on:sanding-dust:0.8 = sawdust; wood dust; sander dust; dust in pores; dust in grain; dust in the pores
on:sanding-dust:0.8 = dust nibs; nibs; dust specks; not dusted; dust left; dust on it; powder; lint; fluff
on:sanding-dust:0.8 = specks; not wiped after sanding; not vacuumed; unvacuumed; shop dust; spray dust
on:sanding-dust:0.8 = overspray
on:glue:0.9 = hide glue; animal glue; bone glue; pva; white glue; wood glue; yellow glue; carpenter glue
on:glue:0.9 = epoxy; epoxy glue; contact cement; contact adhesive; super glue; superglue; cyanoacrylate
on:glue:0.9 = construction adhesive; hot glue; hot melt; glue film; glue line; glue marks; glue smear*
on:glue:0.9 = glue drip*; glue at joints; glue around joints; glued; reglued; re glued; glue stains
on:glue:0.9 = glue stain; old glue; casein glue; urea glue; polyurethane glue; glue run*; glue ooze
on:glue:0.9 = squeezed out glue; glue fingerprints; rubber cement; carpet glue; felt glue; mastic
on:glue:0.9 = linoleum glue; glue patches; glue in pores; gluey; newly glued; glue traces; glue remains
on:glue:0.9 = paste; wallpaper paste; decoupage; fresh glue; repair glue
on:glue:0.7 = sticker; stickers; tape marks; adhesive tape; sticky tape; price label; price tag
on:glue:0.7 = price sticker; parcel tape; duct tape; shelf paper; shelf liner; self adhesive film
on:glue:0.7 = sticky residue; sticky label; labels; gummed paper; gum; chewing gum; felt pads; stick on pads
on:glue:0.7 = stuck paper; paper stuck; newspaper stuck; carpet tape; double sided tape; wallpaper
on:glue:0.7 = sticky back plastic; sticky backed; transfer; transfers; sticker marks; glue from sticker
on:glue:0.7 = iron on; iron on edging; iron on tape; edge banding; edge band; edge tape; edging tape
on:glue:0.7 = edgeband*; veneer edging; edging; lipping
on:glue:0.5 = spackle; spackling; spachtel; stopping; wood putty; filled holes; filler patch; filler patches
on:glue:0.5 = patch; patches; patch repair; filled dents; filled cracks; filled scratches; plaster filler
on:glue:0.5 = polyester filler; body filler; two part filler; epoxy filler; epoxy putty; epoxied
on:glue:0.5 = epoxy repair; putty repairs; putty patches; resin fill; resin repair; wax filler
on:glue:0.5 = repaired joint; repaired joints; repairs; repair; old repair*; mended; spliced; dutchman
on:glue:0.5 = veneer patch; veneer repair; inserted patch; filler in pores; grain filler; wood filler patch
on:glue:0.5 = grain filled; plugged; plugs; wood plug*; caulked; grouted; crack filler; nail holes filled
on:glue:0.5 = pocket holes filled
contact:plastic = rubber foot; rubber mat; rubber mats; rubber pads; rubber marks; vinyl cloth; vinyl cover
contact:plastic = vinyl tablecloth; plastic tablecloth; plastic cover; plastic covered; plastic mat
contact:plastic = plastic mats; place mat; place mats; placemat*; pvc; vinyl seat; vinyl pad; shelf mat
contact:plastic = non slip mat; non slip pads; plastic bag; plastic film; bubble wrap; cling film
contact:plastic = plastic wrap; stretch film; plastic wrapped; wrapped in plastic; silicone feet
contact:plastic = imitation leather; mouse mat; vinyl records; plastic toys; vinyl binder; ring binder
contact:plastic = telephone feet; appliance feet; rubber band; plastic feet; plastic tape; plastic sheet
contact:plastic = oilcloth; vinyl liner; plastic liner; computer feet; lamp feet; suction cups; soft plastic
contact:plastic = rubber bumper*; polythene
on:loose-film:0.9 sound:flaking = flaked; flakes; flaky; flakes off; scaling; shedding; delaminating
on:loose-film:0.9 sound:flaking = delaminated; detached; detaching; coming off; falling off; peels
on:loose-film:0.9 sound:flaking = peeling off; peels off; loosened; lifting finish; lifting paint
on:loose-film:0.9 sound:flaking = paint lifting; finish lifting; loose flakes; failing paint
on:loose-film:0.9 sound:flaking = failing varnish; failing finish; blown finish; flaking off; peeling paint
on:loose-film:0.9 sound:flaking = peeling varnish; peeling finish; flaking paint; flaking varnish
on:loose-film:0.9 sound:flaking = flaking finish; flaking lacquer; peeling lacquer; paint peeling
on:loose-film:0.9 sound:flaking = paint flaking; varnish flaking; varnish peeling; finish flaking
on:loose-film:0.9 sound:flaking = finish peeling; poor bond; poorly bonded; bad adhesion; no adhesion
on:loose-film:0.9 sound:flaking = scratches off; comes off; scraped off easily; fails tape test
on:loose-film:0.4 sound:worn = chalky; chalked; powdered; degraded; weathered finish; deteriorated
on:loose-film:0.4 sound:worn = deteriorating; decayed finish; perished; sun damaged; sun damage; uv damaged
on:loose-film:0.4 sound:worn = eroded; tired; broken down; breaking down; sun baked; sun rotted
on:loose-film:0.4 sound:worn worn:10 = chips; chip; nicked; nicks; dinged; chipped edges; chipped finish
on:loose-film:0.4 sound:worn worn:10 = chipped corners; chipped lacquer; knocked; knocks; battered; bashed
on:loose-film:0.4 sound:worn worn:10 = banged up
on:skin-oil:0.7 = fingered; thumbed; well handled; much handled; touched often; hand worn; hand polished
in:red-stain:80 = mahogany dye; red mahogany; mahogany coloured; mahogany colour; red mahogany stain
in:red-stain:80 = red undertone; red wood stain; reddish stain; cherry stain; old red stain; red bleeds
in:red-stain:80 = red dye stain; red lacquer; oxblood; bloodwood stain; red brown stain; red filler stain
in:red-stain:80 = rosewood stain
in:red-stain:60 = reddish; red tinge; red cast; red tone; mahogany look; cherry coloured; red grain filler
in:red-stain:60 = red pore filler; mahogany filler
in:old-dye:60 = old colour; old coloring; old colouring; toner; toned; glazed; shaded; oak stain
in:old-dye:60 = ebony stain; brown stain; oil stain; pigment stain; gel stain; gel stained; wiping stain
in:old-dye:60 = tinted; coloured; colored; stain; jacobean; ebonised; ebonized; walnut stained; oak stained
in:old-dye:60 = pickled; whitewashed; limed; fumed; stained brown; sprayed stain; stained wood; dark oak
in:old-dye:60 = dark toner; shading lacquer; tinted lacquer; tinted varnish; varnish stain; stained varnish
in:old-dye:80 = aniline dye; spirit dye; spirit stain; alcohol dye; water dye; water stain dye; dye stain
in:old-dye:80 = dye; dyes; black dye; leather dye; coloured dye; walnut crystals; fuchsine; shoe polish
in:old-dye:80 = ink dye; food dye; fabric dye; hair dye; red wine; wine stain*; berry stain*; beet
in:old-dye:80 = coffee stain*; tea stain*; coloured ink; turmeric; curry stain; grape juice; mustard stain
in:old-dye:50 = stain in grain; stain residues; stain remains; patchy stain; stain traces; old stain traces
in:old-dye:50 = uneven stain; remains of stain; traces of stain; residual stain; stain in the pores
in:old-dye:50 = stain left in pores; stain not fully removed; filler stain
in:bitumen-stain:80 = pitch stain; pine tar; coal tar; wood tar; tarred; roofing tar; black varnish
in:bitumen-stain:80 = black japan; japan black; brown japan; tar paint; wood preservative; preservative
in:bitumen-stain:80 = preservative treated; pressure treated; treated timber; railway sleeper; judea
in:bitumen-stain:80 = tar stain; old preservative
in:rodent:85 = mouse droppings; mouse nest; mouse nests; mouse smell; mouse odour; mice nest; mice nests
in:rodent:85 = rat; rats; rat urine; squirrel*; bat droppings; bats; bat; vermin; gnawed; pee; ammonia smell
in:rodent:85 = urine smell; urine stain*; urine odour; urine soaked; hamster; mouse infested; raccoon
in:rodent:85 = possum; nest; nests; mouse urine stain*; mousy; mouse dirt; bird nest; chicken*; pigeon*
in:rodent:70 = dog smell; cat smell; cat pee; dog pee; puppy; kitten; cat spray; sprayed by cat; rabbit
in:rodent:70 = ferret; guinea pig; pet stain*; pet smell; pet odour; pet accident*; pet damage; animal urine
in:rodent:70 = animal smell; kennel; stable; litter box; wet dog; incontinence; bed wetting; soiled by pets
in:rodent:70 = pet hair; baby urine
in:musty:80 = musty smell; musty drawers; mustiness; moth balls; moth ball; mothball smell; mothball odour
in:musty:80 = naphthalene; camphor; camphor smell; fusty; stale; stale smell; stale odour; old smell
in:musty:80 = cellar smell; basement smell; damp smell; attic smell; stink*; stench; rank; sour smell
in:musty:80 = rotten smell; mouldy odour; moldy smell; mildew smell; dank; smells musty; smells old; pungent
in:musty:80 = reeks; fishy; stale air; foul; medicine smell; sewage
in:musty:60 = scented; incense; smells strongly; strong smell; strong odour; strong odor; chemical smell
in:musty:60 = kerosene smell; diesel smell; cooking smell; fried smell; odorous; aftershave; cologne
in:musty:60 = perfumed; perfume spill; fuel smell; oil smell; potpourri; lavender oil; essential oil*
in:musty:60 = soap smell; garlic; spice smell; spices; fish smell; old cheese; solvent smell; paint smell
in:musty:60 = varnish smell; closed chest smell; fabric softener
in:knots:80 = knot hole*; gum pocket*; gummy wood; resin pocket*; pitch pocket*; resin streak*; resin bleed
in:knots:80 = sap streak*; sap pockets; dead knots; live knots; loose knots; large knots; many knots
in:knots:80 = resin canals; resin rich; turpentine wood; resin seep*; knots showing; bleeding knots
in:knots:80 = knots bleeding; sticky knots; weeping knots; amber beads
in:wood-oils:60 = natural oils; oily timber; oily surface; oil rich; oily exotic; exotic; tropical hardwood
in:wood-oils:60 = tropical wood; natural oil; oily woods
in:tannin:80 = tannic; tannin bleed; oak tannin; tannin stain*; high tannin; brown bleed; brown stain bleed
in:tannin:80 = tannin rich wood; tea coloured bleed; bark; bog oak; galls; brown water marks
in:wood-colour:80 = colour bleeds; bleeding colour; bleeding dye; coloured extractives; extractives
in:wood-colour:80 = red heartwood; wood bleeds; colour bleeding; bleeding; bleeds; bleed
in:ink:80 damage:ink-mark = felt tip*; felt pen*; ink stain*; ink spill*; ink spot*; ink blot*; printer ink
in:ink:80 damage:ink-mark = permanent marker; marker pen; pen marks; pen mark; highlighter; ink pad; stamp
in:ink:80 damage:ink-mark = stamped; stamps; graffiti; ballpoint pen; black ink; blue ink; pen writing
in:ink:80 damage:ink-mark = writing; pencil marks; pencil; handwriting; chalk marks; crayon marks
in:ink:80 damage:ink-mark = stencilled; stenciled; printing; newsprint; ink transfer; printed marks
in:ink:80 damage:ink-mark = nail polish; nail varnish; lip stick; hair colour; shoe polish marks; mascara
in:ink:80 damage:ink-mark = carbon paper; iodine; medicine stain*
in:old-oil:80 = oil soaked wood; soaked in oil; saturated with oil; heavily oiled; soaked with oil
in:old-oil:80 = oil logged; deep oil; impregnated; oil impregnated; oily from machine; machine oil soaked
in:old-oil:80 = oil drenched; years of oil; many coats of oil; oil stained; linseed soaked; oil stain mark
in:old-oil:80 = decades of oil; oiled for years; oiled for decades
in:old-oil:50 = oiled finish; linseed finish; old oil; once oiled; oiled before; previously oiled
in:old-oil:50 = formerly oiled; oiled years ago; danish oiled; tung oiled; linseed oiled; boiled linseed
in:old-oil:50 = linseed; hardwax oiled; oil traces; teak oiled; hard wax oil; hardwaxed; wax oiled
in:silicone-deep:80 on:silicone:0.9 = silicone soaked; silicone in pores; silicone in the wood
in:silicone-deep:80 on:silicone:0.9 = deep silicone; silicone penetrated; silicone contaminated wood
in:silicone-deep:80 on:silicone:0.9 = silicone contamination; silicone under finish; silicone contaminated
in:silicone-deep:80 on:silicone:0.9 = silicone history
in:vapour:80 = cedar chest; cedar lined; cedar wood; cedar drawers; aromatic cedar; cedar oil; red cedar
in:vapour:80 = camphorwood; camphor wood; aromatic wood; cedar bottom; cedar smell
damage:black-ring in:tannin:50 = plant pot ring*; plant pot mark*; flower pot ring*; flower pot mark*
damage:black-ring in:tannin:50 = flower pot; plant pot; plant stand mark*; plant ring*; black mark*
damage:black-ring in:tannin:50 = black water ring*; dark ring*; dark spot*; dark stain spots; blue black
damage:black-ring in:tannin:50 = black blotch*; iron mark*; nail stain*; rust mark*; rust stain*
damage:black-ring in:tannin:50 = dark water mark*; dark water stain*; black patch*; black streak*
damage:black-ring in:tannin:50 = plant water stain*; vase mark*; vase ring*; black water spot*; dark patches
damage:black-ring in:tannin:50 = black edge*; dark water spot*; blue stain*; nail streaks; flowerpot*
damage:black-ring in:tannin:50 = planter mark*; planter ring*; tin can ring; can ring; black nail marks
damage:white-ring = glass ring*; glass mark*; cup ring*; cup mark*; mug ring*; mug mark*; coffee ring*
damage:white-ring = coffee cup ring*; coffee mug ring*; drink ring*; drink mark*; heat ring*; heat spot*
damage:white-ring = heat damage; heat haze; heat bloom; hot dish mark*; hot plate mark*; hot mug mark*
damage:white-ring = hot cup mark*; pizza box mark*; laptop mark*; iron mark white; steam mark*; steam haze
damage:white-ring = white spot*; white patch*; white cloud; white stain*; white blotch*; white bloom; bloom
damage:white-ring = bloomed; cloudy; clouded; cloudiness; milky; milkiness; hazy; foggy; fogged; whitened
damage:white-ring = whitening; white area*; wet glass mark*; bottle ring*; moisture mark*; moisture ring*
damage:white-ring = damp mark*; moisture damage; condensation mark*; ghost ring*; ring mark*; ring marks
damage:white-ring = candle ring*; vase ring white; hot iron mark*; water blush; chilled; white outline
damage:white-ring = glass marks; bleached ring; alcohol mark*; alcohol ring*; alcohol stain*; alcohol spot*
damage:white-ring = alcohol damage; perfume mark*; perfume stain*; perfume spill mark
damage:white-ring worn:10 = water spill*; spill*; spilled water; spillage; plant overwatered; water splashed
damage:white-ring worn:10 = wet feet; wet base; water line; tide mark*; tidemark*; leak damage
damage:white-ring worn:10 = sink water damage; sink splashes; wet splashed; water exposure; water soaked
damage:white-ring worn:10 = rained on; rain damage; splashes; splashed
expose:damp damage:white-ring = flood damage; been in a flood; stood in water; flood damaged; under water
expose:damp damage:white-ring = submerged; soaked; waterlogged; left in rain; left in the rain; burst pipe
expose:damp damage:white-ring = sewer; stood in flood water
damage:scratches = scored; scores; scuff marks; scuff mark; scraped marks; cat scratch*; dog scratch*; claw*
damage:scratches = claw marks; clawed; scraped finish; abrasions; fine scratches; deep scratches
damage:scratches = hairline scratches; surface scratches; scrapes; ring scratches; scratched top
damage:scratches = knife marks; knife cuts; cut marks; scratched finish; scrape; rub marks; scuffing
damage:dents = dings; ding; bruise*; bruised; impressions; impression; indent*; indentation*; pressed marks
damage:dents = crushed; dented edges; hammer marks; compressed; pressure marks; crush marks; pressmark*
damage:dents = tooth marks; teeth marks; bite marks
damage:gouges = gashes; gash; chunk; chunks; chipped wood; chips in wood; deep cut*; deep scratch; splinter*
damage:gouges = splintered; bite; bitten; chewed; chew marks; chew*; dog chewed; dog chew*; gnaw marks
damage:gouges = missing piece*; missing chunk*; hacked; torn; tear out; tearout; torn grain; torn out
damage:gouges = broken corner*; corner missing; missing corner*; broken edge*; router marks; saw marks
damage:gouges = damaged corner*; damaged edge*; wood loss; losses
damage:burn = charred; char; cigarette burn*; cigarette mark*; cigar burn*; candle burn*; iron burn*
damage:burn = iron scorch; scorched by iron; singed; cigarettes burn; burn marks; burned spots; heat scorch
damage:burn = hot pan burn*; hot pan mark; pan burn*; pan mark*; stove burn; fire marks; match marks
damage:burn = soldering burns; burnt ring
damage:holes = worm; worm holes; wormholes; wormed; worm eaten; beetle*; beetle holes; insect damage
damage:holes = insects; insect holes; termites; termite damage; powder post; drilled; drill holes
damage:holes = bolt holes; knob holes; handle holes; hinge holes; lock hole; nail holes; tack holes
damage:holes = pin holes; staple holes; old holes; hardware holes; pull holes; extra holes; rot holes
damage:holes = empty holes; flight holes; pinholes; old screw holes; keyhole; mortise; mortises
damage:holes = holes from hardware; rotten; rot; rotted; decay; decayed; punky; dry rot; wet rot
damage:loose-joint = wobbly; wobble*; rickety; rocking; rocks; racked; out of square; loose legs; loose leg
damage:loose-joint = loose arm; loose arms; loose back; loose base; loose frame; loose tenon*; loose dowel*
damage:loose-joint = loose spindles; loose rungs; loose rails; failed joint*; broken joint*; joint gaps
damage:loose-joint = open mitre*; open miter*; open dovetails; glue failed; glue joint open; unglued
damage:loose-joint = glue failure; shaky; unstable; loosened joints; mitre open; failed glue
damage:loose-joint = dovetails loose; creaks; creaky; joint failure; come apart; falling apart
damage:loose-joint = separated joints; seam open; open seam*; joints separated; loose runners
damage:loose-joint = loose structure; broken glue; loose top; open glue line
damage:split = crack in top; cracked top; cracked panel; split panel; split top; shrinkage crack*
damage:split = end check*; end checks; check; checked wood; drying crack*; cracked leg; split leg
damage:split = cracked board; warped; warp; cupped; cupping; twisted; bowed; shrunk; shrunken
damage:split = seasoning checks; shakes; split seat; split end*; crack across; hairline crack*
damage:split = crack in panel; cracked side; split side; panel split; panel cracked; top split; bowing
damage:split = swollen joints; cracked through; cracked seat; open crack*
damage:lifted-veneer = veneer bubble*; veneer bubbles; veneer bubbling; bubbled up veneer; blistered veneer
damage:lifted-veneer = raised veneer; peeling veneer; veneer peeling; veneer loose at edge
damage:lifted-veneer = veneer edge loose; veneer lifted; veneer detached; delaminating veneer
damage:lifted-veneer = veneer delaminat*; lifting veneer; veneer coming off; veneer coming loose
damage:lifted-veneer = veneer curling; curled veneer; loose banding; lifted inlay; loose inlay
damage:lifted-veneer = veneer cracked; cracked veneer; veneer cracks; veneer splitting; veneer separated
damage:lifted-veneer = buckled veneer; veneer buckled; loose edge banding; lifting edge banding
damage:lifted-veneer = edge banding loose; veneer failing; loose marquetry; plywood delaminat*
damage:lifted-veneer = ply separating; delaminated plywood
damage:missing-veneer = veneer missing; veneer lost; lost veneer; veneer losses; veneer loss
damage:missing-veneer = veneer patches missing; broken veneer; veneer broken; veneer chipped
damage:missing-veneer = chipped veneer edges; chips in veneer; gaps in veneer; missing inlay
damage:missing-veneer = missing banding; veneer torn; torn veneer; missing stringing; missing edge banding
damage:missing-veneer = damaged veneer; veneer damage; veneer damaged; veneer chip
thin = paper thin veneer; thin modern veneer; very thin veneer; veneer thin; sanded veneer; thinned veneer
thin = paper thin; paper veneer; veneer already thin; knife cut veneer; sliced veneer; already sanded
thin = sanded before; previously sanded; thin face veneer; delicate veneer; paper backed
thin = paper backed veneer; phenolic backed; sanded many times
damage:broken-moulding = moulding missing; moulding broken; trim missing; missing trim; broken trim
damage:broken-moulding = missing carving; broken carving; carving broken; broken leg; leg broken
damage:broken-moulding = missing finial; finial missing; missing bead; broken bead; missing parts
damage:broken-moulding = missing foot; broken foot; missing feet; parts missing; carving chipped
damage:broken-moulding = broken spindle*; missing spindle*; broken slat*; missing slat*; broken slats
damage:broken-moulding = broken fretwork; missing drawer; missing handle*; chipped moulding
damage:broken-moulding = missing piece of moulding; snapped; missing crest; missing molding; broken molding
damage:broken-moulding = crumbling gesso; gesso loss; missing gesso
damage:worn-runner = drawer runners worn; runners worn; drawers stick; sticking drawer*; sticky drawer*
damage:worn-runner = drawer stick*; stiff drawer*; binding drawer*; drawer binds; binding; jams; jammed
damage:worn-runner = sticky runners; drawers jam; stuck drawer*; worn drawer*; grooved runners; worn guides
damage:worn-runner = drawer sags; drawers sag; drawers stuck; drawers hard to open
damage:crazed-film sound:crazed = craze; crackle; crackling; crackled finish; spider*; spiderweb*
damage:crazed-film sound:crazed = cobwebbed finish; crocodile*; crazed finish; crazed varnish
damage:crazed-film sound:crazed = crazed lacquer; crazed paint; crazed shellac; hairline cracks in finish
damage:crazed-film sound:crazed = fine cracks; cracks in finish; finish cracks; finish cracked
damage:crazed-film sound:crazed = lacquer cracked; cracked lacquer; cracked varnish; varnish cracked
damage:crazed-film sound:crazed = checked lacquer; checked finish; cold checked; cold check*; cold cracks
damage:crazed-film sound:crazed = network of cracks; crow feet; checking finish; reticulated; dry lake bed
damage:crazed-film sound:crazed = mosaic cracks; paint cracked; cracking finish; cracking varnish
damage:crazed-film sound:crazed = cracking paint; finish cracking; shattered; lacquer checking
damage:crazed-film sound:crazed = deeply cracked finish; crizzled; cracking; crackle finish
sound:crazed = brittle finish; hard brittle; wrinkle*; shrivel*; shrivelled; puckered; rivelled; embrittled
sound:crazed = glassy brittle; prune skin; cracks off; ridged film; crinkl*
damage:worn-film sound:worn worn:15 = shabby; scuffed up; rubbed finish; dry looking; worn out; worn look
damage:worn-film sound:worn worn:15 = worn top; worn surface; wear marks; wear spots; worn arms; worn seat
damage:worn-film sound:worn worn:15 = worn varnish; worn lacquer; worn shellac; worn patches; wear; wears
damage:worn-film sound:worn worn:15 = finish worn; varnish worn; lacquer worn; tired finish; dried out
damage:worn-film sound:worn worn:15 = dry and dull; dull and worn; lifeless; well worn; normal wear
damage:worn-film sound:worn worn:15 = lightly worn; light wear; slightly worn; general wear
damage:worn-film sound:worn worn:15 = dull finish worn; surface wear; thirsty; worn paint; faded finish
damage:worn-film sound:worn worn:15 = well used; playworn; threadbare; age worn; tatty
damage:worn-film sound:worn worn:25 = heavily worn; badly worn; much worn; worn away; worn off; worn to bare
damage:worn-film sound:worn worn:25 = worn to bare wood; finish gone; finish missing; finish worn off
damage:worn-film sound:worn worn:25 = finish worn away; varnish gone; worn to the wood; worn bare
damage:worn-film sound:worn worn:25 = rubbed through; finish worn through; mostly worn; completely worn
damage:worn-film sound:worn worn:25 = finish lost; very worn; extremely worn; badly weathered finish
damage:worn-film sound:worn worn:25 = worn thin; severe wear; finish rubbed off; film gone
damage:worn-film sound:worn worn:10 = worn corners; edge wear; edges worn; corners worn; rubbed edges
damage:worn-film sound:worn worn:10 = bare edges; bare corners; rubbed corners; wear at edges
damage:worn-film sound:worn worn:10 = wear around knobs; wear around pulls; wear at handles; handle wear
damage:worn-film sound:worn worn:10 = slight edge wear; worn front edge; worn rim; worn around handles
sound:worn worn:10 = thin coat; thin old finish; thin worn finish; thin film; thin varnish; thin lacquer
sound:worn worn:10 = thin shellac; little finish; remaining finish thin; finish thin
worn:15 = sand throughs; cut through; burned through edges; rub through; rub throughs; rubbed through edges
worn:15 = sanded edges; edges sanded through
worn:30 = patchy finish; uneven finish; half sanded; part sanded; some bare; mixed bare and finished
worn:30 = partially sanded; partly bare wood; bare in places; bare in spots; finish patchy; blotchy finish
worn:30 = spotty finish; partial finish; half bare; bare areas
worn:50 = half stripped; partially stripped; stripped in part; half removed; half the finish
worn:50 = half finished stripping; top stripped; incompletely removed; mostly bare; part stripped
worn:50 = finish half gone
worn:20 = spots of bare wood; bare wood spots; bare wood showing; bare wood shows; wood showing
worn:20 = wood exposed; exposed wood; bare wood patches; small bare spots; touch ups; touched up
worn:20 = bare where worn; bare at edges; raw patches; raw spots; missing finish; bare wood in places
damage:faded = sun bleaching; bleached by sun; light faded; uv faded; lightened by sun; bleached out; paled
damage:faded = washed out; sun lightened; lost colour; lost color; light damage; uneven fading; fading; fade
damage:faded = shadow marks; sun shadows; light patches; silvered; silvery; silver grey; greyed; grayed
damage:faded = sun marks; faded top; faded side; fade line*; ghost of objects; sun aged; lighter patch*
damage:faded = lighter area*; lighter spot*; lighter under; grey weathered; uv exposure; weather grey
damage:darkened-wood = ammonia darkened; blackened; wood darkened; lye darkened; darkened by caustic
damage:darkened-wood = darkened by lye; turned dark; dark from lye; fumed dark; discoloured by stripper
damage:darkened-wood = darkened by stripper; darkened by water; blackened wood; age darkened wood
sound:soft = softening; soft film; soft varnish; soft lacquer; soft paint; not hard; not hardened
sound:soft = not fully cured; under cured; undercured; green finish; green varnish; freshly painted
sound:soft = freshly varnished; freshly lacquered; freshly coated; freshly finished; newly painted
sound:soft = newly varnished; just painted; recently painted; recently varnished; recently coated
sound:soft = recently finished; new finish; new paint; fresh paint; fresh varnish; fresh lacquer; still soft
sound:soft = wet finish; rubbery; cheesy; easily scratched; dents with nail; thumbnail dent*
sound:soft = fingernail dent*; slow to dry; not dry yet; imprint*; fingernail marks; soft to nail
sound:soft = plasticised
sound:soft on:skin-oil:0.6 = gooey; sticky arms; sticky finish; tacky arms; tacky finish
sound:soft on:skin-oil:0.6 = sticky where touched; gummed up; sticky in places; tacky with age
sound:soft on:skin-oil:0.6 = sticky with age; sticky seat; sticky armrests; sticky edges; sticky surface
sound:soft on:skin-oil:0.6 = softened by hands; sticky feel; gummy finish; tacky patches; sticky patches
sound:soft on:skin-oil:0.6 = softened finish; sticky top; black sticky; stickiness; tackiness; sticky spots
sound:soft on:skin-oil:0.6 = finish sticky
coats:5 = thick varnish; thick lacquer; thick coating; heavy coating; heavy varnish; heavy build
coats:5 = heavy finish; built up finish; thick clear; bar top; thick gloss; multiple layers
coats:5 = many coats of varnish; plastic looking; encapsulated; dipped look; thick polyurethane; deep gloss
coats:5 = thick shellac; build up; buildup; overcoated; over coated; over varnished; recoated
coats:5 = recoated many times; varnished over; layer upon layer; heavy old finish; several coats of varnish
coats:5 = finished twice
coats:6 = thick old paint; heavy paint; paint build up; paint buildup; painted many times
coats:6 = many coats of paint; many layers of paint; paint layers; layers of paint; repainted
coats:6 = repainted many times; painted several times; several coats of paint; several paint layers
coats:6 = several layers of paint; multiple paint layers; overpainted; over painted
coats:6 = multiple layers of paint; old paint layers; paint caked; clogged with paint
coats:6 = detail filled with paint; five coats; six coats; thickly painted; detail clogged; ten coats
coats:4 = three coats; four coats; some coats; few coats; several finishes
lead:0.9 = lead based; lead based paint; lead possible; lead suspected; possibly lead; lead test positive
lead:0.9 = tested positive for lead; lead bearing; may contain lead
sound:flaking = blistered paint; bubbled paint; bubbled finish; blistered finish; bubbled varnish
sound:flaking = heat blistered; popped; puffed; tented
wood:core = core showing; core visible; chipboard showing; chipboard exposed; particleboard exposed
wood:core = particle board exposed; exposed edge*; exposed chipboard; exposed mdf; raw mdf; bare mdf
wood:core = bare edge mdf; unsealed edges; unsealed edge; sawn edge*; cut edges raw; routed edge*
wood:core = machined edge*; milled edge*; profiled edge*; peeling foil; peeling laminate; laminate peeling
wood:core = laminate lifting; chipped laminate; laminate chipped; laminate damaged; torn foil; foil torn
wood:core = foil peeling; chipped foil; foil chipped; crumbling edge*; broken laminate; cracked laminate
wood:core = chipped melamine; peeling vinyl; delaminated foil; raw board; raw fibreboard; raw chipboard
wood:core = laminate worn through; worn laminate; foil worn through; porous edge*; raw cut edges
wood:core = bare chipboard
wood:core expose:damp = swelled; swelling; swells; puffed edge*; swollen edge*; swollen corner*; swollen mdf
wood:core expose:damp = swollen chipboard; swollen core; swollen particleboard; puffy; bloated
wood:core expose:damp = water swollen; blown chipboard; blown mdf; swelled edges; edge swelling
wood:core expose:damp = swollen board
expose:damp = wet from rain; not yet dry; still damp; still wet; washed yesterday; freshly washed wood
expose:damp = recently washed; freshly rinsed; wet from stripping; wet from washing; damp from washing
expose:damp = damp from stripping; soaking wet; undried; not dried; unseasoned wood; unseasoned timber
expose:damp = freshly cut; freshly sawn; air dried; high moisture content; moisture content
expose:damp = not acclimatised; not acclimated; not acclimat*; from outdoors; from outside; from cold
expose:damp = cold wood; just brought in; brought in; stored outside; stored outdoors; left outside
expose:damp = left outdoors; kept outside; outdoor stored; stored on concrete; wet stored; stored wet
expose:damp = stored unheated; from unheated storage; dewy; sweating wood; moist wood; dampness; dampish
expose:damp = damp from storage; recently stripped wet; wet through; rained
did:wet = wetted; water raised; fuzz; fuzzed; fuzzy grain; fuzzy surface; fibres raised; raised fibres
did:wet = raised fibers; wooly; woolly; whiskers; whiskery; grain up; rough after washing; rough from water
did:wet = rough after stripping; raised; hairy surface; nap; furry surface; grain standing up; splintery
did:wet = rough raised grain; fuzzy after stripping; fibrous
on:grime:0.5 on:iron-dust:0.4 = salvaged; salvage; reclaimed wood; reclaimed timber; old beams; pallet
on:grime:0.5 on:iron-dust:0.4 = pallets; pallet wood; barn wood; barnwood; barn board; old floorboards
on:grime:0.5 on:iron-dust:0.4 = floorboards; scaffold*; driftwood; recycled wood; old joists; demolition
on:grime:0.5 on:iron-dust:0.4 = second hand timber; beams; old timber; old boards; old planks; railway
on:grime:0.5 on:iron-dust:0.4 = crate; crates
worn:30 damage:faded sound:worn = weather worn; weather beaten; weatherbeaten; weathering; weathered grey
worn:30 damage:faded sound:worn = left in the garden; outdoor weathered; years outdoors; years outside
worn:30 damage:faded sound:worn = sun weathered; exposed to weather; stood outside; outdoor worn
burnish = over sanded; oversanded; sanded too smooth; glazed wood; glossy wood; mirror smooth; sanded to 400
burnish = sanded to 600; sanded very fine; polished by planer; planer glaze; burnished end grain
burnish = dull planer knives; glass smooth; compressed grain; case hardened surface; closed by sanding
burnish = very smooth; finely sanded; highly sanded
swirls = cross scratches; scratch marks; sander marks; sanding swirls; belt marks; belt sander marks
swirls = drum sander marks; orbital marks; pigtails; pig tails; rough sawn; saw marks left; chatter*
swirls = tool marks; planer lines; planer ripples; knife lines; scraper marks; sanding lines
swirls = coarse scratches; coarse sanded; deep sanding scratches; sandpaper scratches; cross grain marks
swirls = machine lines; coarsely sanded; sanded across the grain; sanded coarse; grinder marks
swirls = poorly sanded; badly sanded; washboard
relief:carved = carving; carvings; relief carving; carved details; deep carving; ornate; fretwork
relief:carved = ornamented; scrollwork; gesso; applied ornament*; heavily carved; ornament; ornaments
relief:carved = carved legs; pierced
relief:moulded = mouldings; profiled; reeded; fluted; beaded; cornice; molded; molding; fluting; reeding
relief:moulded = beading; raised panel; raised panels; routed profile; ogee; coving; bolection
relief:turned = turned legs; spindles; spindle; turnings; turning; barley twist; bobbin; turned spindles
relief:turned = lathe turned; baluster*; turned parts; turned spindle; twist
use:dark = dim; dimly lit; little light; no daylight; no light; away from light; windowless; kept dark
use:dark = in the dark; closed room; behind doors; north room; hallway
use:shut = doors close on frame; doors close tight; lid rests; lid closes; meeting edges; meeting faces
use:shut = tight tolerances; snug; snug fit; drawers tight; doors tight; tight clearance*; tight clearances
use:shut = close clearances; mating faces; mating surfaces; rebated; rabbeted; inset; inset doors
use:shut = inset drawers; sliding doors; sliding; sliding lid; slides; door edges; window sash; sash; sashes
use:shut = drawer sides; runners; fitting closely; little clearance; closing faces; rubbing; rub together
use:shut = lid; drop leaf; drop leaves; folding; folded; stored closed; closes; lids; tambour; roll top
use:shut = stacking chairs; fall front
use:sun = sunroom; conservatory; bay window; window sill; windowsill; skylight; south facing; west facing
use:sun = large window; large windows; by a window; near window; near windows; facing window; bright
use:sun = bright room; direct sun; strong sun; strong light; sunshine; daylight; sunlit; full sun
use:sun = afternoon sun; morning sun; south window; glass door; direct light; in the sun; uv
use:wet-storm use:sun = porch; patio; garden; deck; balcony; terrace; veranda; yard; boat; yacht; marine
use:wet-storm use:sun = front door; exterior door; pool; poolside; garden furniture; rain; rainy; open porch
use:wet-storm use:sun = covered porch; weather exposed; open air; dock; lawn; gate; pergola; greenhouse
use:wet-storm use:sun = shed door; beach; weather; barn door
use:heat = fireplace; near fireplace; beside fireplace; beside stove; near oven; next to oven; beside oven
use:heat = oven; above oven; near heater; space heater; heat register; heat vent; heating vent; floor vent
use:heat = floor heating; underfloor heating; heat source; warm room; hot room; hot climate; hot attic
use:heat = attic; loft; stove side; mantel; mantelpiece; hearth; chimney; over radiator; range; cooker
use:heat = dishwasher; near dishwasher; next to dishwasher; toaster; kettle; hair dryer; hot iron; boiler
use:heat = furnace; hot lamp; lamp heat; dryer
use:heat use:dry-air = radiator shelf; radiator cover; above radiator; beside radiator; next to radiator
use:heat use:dry-air = over a radiator; wood stove; woodstove; near wood stove; near a radiator
use:heat use:dry-air = hot dry room; near stove in winter
use:standing-water use:damp = sink surround; wash stand; washstand; vanity; vanity unit; vanity top
use:standing-water use:damp = bathroom vanity; bathroom cabinet; shower; bath; bath panel; wash basin; basin
use:standing-water use:damp = draining board; wet bar; drinks cabinet; plant stand; plant table; planter
use:standing-water use:damp = beside sink; around sink; next to sink; splash zone; splashes expected
use:standing-water use:damp = water splashes; laundry sink; bathtub; wet area; wet use; wet room
use:damp = steamy room; damp climate; damp house; damp wall; damp floor; damp garage; damp storage; coastal
use:damp = coast; seaside; sea air; lake house; laundry; laundry room; utility room; shower room; toilet
use:damp = cloakroom; crawl space; houseboat; cabin; holiday home; unventilated; condensation; tropical
use:damp = tropics; monsoon; swamp cooler; mist; fog; damp place near sea; storage locker; stone floor
use:damp = concrete floor; rising damp; root cellar; wine cellar
use:cold = cold room; cold house; garage; unheated room; unheated garage; unheated house; unheated porch
use:cold = winter; cold climate; cold winters; summer house; summerhouse; cold storage; cold attic; workshop
use:cold = unheated shed; frost; freezing; cool room; cold hall; shed; carport
use:dry-air = heated room; heated house; central heating; dry house; dry room; dry climate; desert
use:dry-air = winter heating; dry winter; air conditioning; air conditioned; arid; low humidity
use:dry-air = centrally heated; overheated; dry heat
use:hands = heavily handled; frequent use; constant use; everyday use; high traffic; heavy traffic; handrail
use:hands = banister; bannister; door handle; desk; desk top; work surface; office use; hotel; rental
use:hands = shop counter; counter; public use; commercial use; floor; stair; stairs; treads; tread; armchair
use:hands = arms; seat; handles; handle; gripped; daily; everyday; hard wear; rough use; tough use
use:hands = busy household; busy; family use; guests; working table; hobby table; sewing table; school use
use:hands = shoes; footstool
use:children = kids; toddler*; baby; babies; infant*; crib; cot; cradle; nursery; toy*; high chair
use:children = highchair; playroom; teeth*; chewing; grandchild*; grandchildren; kindergarten; bunk bed
use:children = changing table; rocking horse; family with children; small children; young family
use:food = cutting board; chopping board; butcher block; bread board; salad bowl; serving board
use:food = kitchen counter; kitchen worktop; worktop; countertop; food safe; food prep; food preparation
use:food = meals; bowl; spoon; utensil*; bread; knife use; rolling pin; eating surface; kitchen island
use:hot-dish use:standing-water = dining; dining table; coffee table; kitchen table; hot dishes; hot drinks
use:hot-dish use:standing-water = hot cups; hot plates; hot mugs; table top; tabletop; plates; dishes
use:hot-dish use:standing-water = drinks; drinks table; glasses; cups; serving; sideboard; buffet; tea table
use:hot-dish use:standing-water = side table; end table; bedside; bedside table; nightstand; night stand
use:hot-dish use:standing-water = cocktail table; dinner table; daily meals; family meals; hot food
use:hot-dish use:standing-water = sofa table; bar counter
use:wall = exterior wall; cold wall; against wall; against the wall; against a wall; against outside wall
use:wall = back to wall; built in; external wall; wall hung; wall mounted; fitted furniture; fitted
use:wall = wall side; back panel; wainscot*; damp outer wall
use:stacked = stacking; stacks; piled; pile; nested; nesting tables; stackable; stacked doors; face to face
use:stacked = doors stacked; leaned; doors leaned together
use:loaded = books; bookshelf load; heavy books; shelf; shelves; bookcase; bookcases; bookshelf; bookshelves
use:loaded = heavy objects; heavy things; objects; ornament stand; lamp; lamps; television; tv; computer
use:loaded = monitor; laptop; printer; microwave; vases; vase; figurines; statue; aquarium; fish tank
use:loaded = typewriter; sewing machine; stereo; speakers; records; piano; heavy load; loaded
use:loaded = display objects; linen; linens; clothes; storage of books; crockery; china; pots; jars
expose:damp in:musty:40 = stored in barn loft; stored in damp; stored in a barn; stored in a basement
expose:damp in:musty:40 = stored in a cellar; stored in a shed; damp stored; basement stored; cellar stored
expose:damp in:musty:40 = barn stored; shed stored; from a basement; from basement; from a cellar
expose:damp in:musty:40 = from cellar; from a shed; from shed; kept in cellar; kept in basement
expose:damp in:musty:40 = years in a barn; years in a cellar; years in a basement; years in a shed
expose:damp in:musty:40 = garage damp; damp cellar; damp basement; damp barn; stored in outbuilding
expose:damp in:musty:40 = outbuilding; stored in storage unit; stored in stable; houseboat stored; boathouse
expose:damp in:musty:40 = crawl space storage; damp attic; stood in a barn; stood in a cellar
expose:damp in:musty:40 = stood in a shed; basement find; cellar find
look:dark = dark paint; black paint; navy; dark green; dark blue; dark grey; charcoal; deep colour
look:dark = deep blue; deep red; dark shade; deep green; near black; anthracite; very dark; burgundy
look:dark = espresso; dark brown paint
look:light = white paint; off white; cream; ivory; pastel; light grey; light gray; light blue; pale blue
look:light = pale green; light paint; pale paint; light shade; pale colour; white finish; pale grey
look:light = antique white; magnolia; bright white; eggshell white; light green; beige; pure white
look:light = soft white; duck egg; pale pink; pink; yellow paint; lemon yellow
value:good = antiques; period; period piece; family piece; family heirloom; inherited; sentimental
value:good = marquetry; inlaid; parquetry; hand made; handmade; handcrafted; original surface
value:good = original patina; patina; original paint; original varnish; original shellac; original label
value:good = signed; stencil; stencilled decoration; stenciled decoration; painted decoration; gilded; gilt
value:good = gold leaf; old label; paper label; cabinetmaker; stringing; transfer decoration
value:good = painted flowers; folk art; lacquered decoration; carved antique; collector*; crotch veneer
value:good = burl veneer; fine veneer; century old
value:fine = museum; museum quality; rare; museum piece; important; fine antique; highly valuable; georgian
value:fine = signed antique; very valuable; precious
on:silicone:0.3 on:polish:0.4 = history unknown; unknown past; unknown treatment; unknown care
on:silicone:0.3 on:polish:0.4 = unknown cleaning; unknown care history; past care unknown; care unknown
on:silicone:0.3 on:polish:0.4 = treatment unknown; unknown products; unknown product; second hand
on:silicone:0.3 on:polish:0.4 = used furniture; previous owner; previous owners; household use
on:silicone:0.3 on:polish:0.4 = polish possible; possibly polished; polishing unknown; history not known
on:silicone:0.3 on:polish:0.4 = unknown polish; unknown residue; unknown contamination; unknown contaminants
on:loose-film:0.8 sound:flaking wood:core = foil lifted; foil coming off; foil bubbles; foil bubbled
on:loose-film:0.8 sound:flaking wood:core = foil detached; lifting foil; loose laminate; laminate loose
on:loose-film:0.8 sound:flaking wood:core = bubbled foil; foil shrunk; vinyl wrap peeling; vinyl peeling
on:loose-film:0.8 sound:flaking wood:core = vinyl lifting; foil edges lifting; melamine peeling
on:loose-film:0.8 sound:flaking wood:core = wrap peeling; laminate bubbled; foil edges loose; film peeling
on:loose-film:0.8 sound:flaking wood:core = paper foil peeling; delaminating foil; foil delaminated
on:loose-film:0.8 sound:flaking wood:core = foil delaminating
on:mineral-oil:0.4 = pesticide; woodworm treated; woodworm treatment; woodworm killer; wood worm treated
on:mineral-oil:0.4 = insect spray; bug spray; fly spray; flea spray; worm treatment; fumigated; moth spray
on:mineral-oil:0.4 = wood preserver
on:wax:0.8 in:ink:50 = crayons; wax crayon*; child drawing*; scribble*; wax pencil; chalk pastel
on:wax:0.8 in:ink:50 = coloured pencil; colored pencil; grease pencil
on:plasticiser:0.6 = plasticiser bloom; plasticiser stain; imprint of mat; mat marks; mat mark; rubber stain
on:plasticiser:0.6 = rubber stains; rubber foot marks; rubber feet marks; vinyl stain; mat imprint
on:plasticiser:0.6 = sticky imprint; mat stuck; place mat stuck
- = aged finish; patinated; original colour; brown; tan; honey; golden; orange; amber; mid brown; dark brown
- = light brown; light; medium; deep; natural; blond; blonde; dirty white; straight grained; straight grain
- = straight; interlocked; interlocked grain; wild grain; wavy; quilted; flamed; flame; birdseye; ribbon
- = quarter sawn; quartersawn; quarter cut; plain sawn; flat sawn; rift; spalted; crotch; burr; knot free
- = clear grade; clear; fine grained; coarse grained; fine grain; coarse; coarse grain; ring porous
- = diffuse porous; large pores; pores; open; filled grain; unfilled; blotchy wood; blotchy; blotch*; mixed
- = mixed species; different woods; two woods; several woods; secondary wood; solid wood; all wood
- = thick veneer; veneered; veneer; veneer sound; veneer intact; veneer tight; original veneer; plywood back
- = backs; solid edges; lipped; good condition; fair condition; poor; poor condition; bad condition
- = excellent; excellent condition; very good; very good condition; sturdy; solid; tight joints
- = joints tight; joints sound; no damage; undamaged; complete; usable; serviceable; stiff; heavy
- = lightweight; firm; firmly; adheres; adhering; well adhered; well bonded; bonded; sticks well
- = good adhesion; tight film; tight finish; tightly; fully hardened; hard finish; hard film; hard coating
- = durable; intact finish; sound finish; sound paint; sound film; finish sound; paint sound; finish intact
- = finish good; high gloss; semi gloss; low sheen; sheen; dull finish; lustre; luster; muddy look
- = darkened finish; darkened varnish; dark finish; dark with age; yellow; yellowish; yellowing
- = yellow finish; amber finish; ambering; orange varnish; discoloured finish; uneven; unevenly; streaky
- = streaks; lap marks; roller marks; roller texture; stipple; textured; texture; ridges; ridge; sags
- = sagged; drip; curtain*; lumps; bumps; bumpy; hair in finish; brush hairs; paint; varnish; lacquer
- = shellac; finish; film; coating; coated; coat; coats; old finish; old varnish; old lacquer; old shellac
- = old coating; factory finish; modern finish; polyurethane; polyurethaned; urethane; enamel; latex
- = oil based; water based; waterborne; melamine; laminate; foil; vinyl foil; printed grain; chipboard
- = particleboard; particle board; mdf; hardboard; cardboard back; plywood; ply; hardwood; softwood; timber
- = lumber; board; kiln dried; seasoned; well seasoned; acclimatised; acclimated; dry wood; dry stored
- = stored dry; stored indoors; kept indoors; indoors; indoor; indoor use; interior use; interior
- = living room; bedroom; dining room; lounge; hall; house; home; apartment; room; normal use; light use
- = occasional use; gentle use; ordinary use; decorative; display; displayed; for sale; to be sold; customer
- = client; owner; handed down; bought; purchased; found; given; gift; newly bought; from a shop; family
- = grandmother; grandparents; parents; uncle; aunt; made by; cut; assembled; knock down; flat pack
- = flatpack; unassembled; disassembled; dismantled; parts; pieces; hardware removed; hardware off; knobs
- = drawers out; doors off; glass; glazed doors; mirror; marble top; leather top; cane; caned; rush
- = rush seat; upholstered; upholstery; fabric; cushion; brass; brass fittings; brass hardware; copper
- = bronze; aluminium; plastic; acrylic; ceramic; tile; tiled; stone; slate; chalkboard; cork; felt
- = felt lined; paper; paper lined; lined; lining; newspaper; cloth; lace; leather; bare inside; inside bare
- = unfinished inside; raw inside; interior unfinished; underside bare; back bare; back unfinished
- = both sides; one side; one side only; all sides; edges; end; ends; top; sides; legs; front; fronts; face
- = frame; frames; panels; rails; slats; slatted; crevices; grooves; groove; recess; recesses; corners
- = flat surface; curved; curves; bent; round; rounded; square; tapered; shaped; scalloped; thin; wide
- = narrow; small; large; tall; tiny; huge; long; short; shallow; slender; thin parts; delicate; fragile
- = alcohol test; solvent test; water test; water beads; beads; beading water; water drop test; tape test
- = adhesion test; test patch; dissolves; dissolves in alcohol; dissolves in thinner; soluble; softens
- = alcohol softens; thinner softens; thinner; insoluble; resists alcohol; resists; resistant; untested
- = not tested; unidentified; unclear; assumed; presumed; presumably; probably; perhaps; maybe; apparently
- = appears; seems; reported; said; told; described; stated; believed; suspected; likely; almost; completely
- = entirely; fully; partly; partially; mostly; largely; mainly; slightly; somewhat; fairly; rather; quite
- = very; badly; heavily; severely; extremely; highly; lightly; mildly; moderately; generally; overall
- = locally; everywhere; throughout; in places; here and there; only; except; around; near edges; underneath
- = beneath; above; beside; between; along; across; several places; previous; previously; earlier; formerly
- = once; before; ago; since; recently; lately; just; freshly; newly; already; still; later; now; today
- = yesterday; month; months; week; weeks; year; years; decades; decade; age; ages; many; several; few; none
- = nothing; nothing known; no visible; visible; invisible; hidden; unseen; obvious; noticeable; otherwise
- = otherwise sound; generally sound; structurally; structurally sound; structure; repairable; needs; needed
- = wanted; to be; will be; planned; expected; intended; meant; colour; color; shade; tone; hue; tint
- = matching; match; contrast; contrasting; pattern; stripe*; spray can; sprayed; hand rubbed; rubbed
- = brushed; rolled; wiped on; padded; applied
"""

AGES = """
2026-2026 = freshly made; newly made; just made; new build; newly built; brand new; under construction
2026-2026 = new work; not yet finished; current; fresh; unused; this year
2021-2026 = nearly new; almost new; newish; year old; last year; recently made; recently bought
1990-2026 = flat pack; late modern; present day; young
1837-1901 = late victorian; early victorian; high victorian
1901-1914 = early twentieth; belle epoque
1880-1910 = fin de siecle; gilded age
1714-1837 = queen anne; federal
1600-1700 = jacobean; baroque; carolean
1700-1780 = rococo
1815-1848 = biedermeier; empire
1890-1920 = mission; craftsman
1920-1940 = deco; interwar; inter war; between the wars; twenties; thirties
1945-1970 = fifties; sixties; danish modern; scandinavian; teak era; mid twentieth
1970-1980 = seventies
1980-1990 = eighties
1990-2000 = nineties
1940-1950 = forties
1900-1939 = prewar
1945-1960 = postwar
1800-1926 = heirloom; antiques; hundred years; over a century; very old piece; over a hundred years
1926-1986 = retro; older; elderly; old piece; aged; inherited; grandmother; grandparents; family piece
1926-1986 = oldish
1976-2020 = previously owned; preowned; pre owned; secondhand; thrift*; worn; reclaimed; salvaged
1976-2020 = fairly old
1895-1905 = turn of century
1960-1990 = unfashionable; production furniture; factory furniture; institutional
- = about; circa; ca; c; approximately; probably; perhaps; maybe; around; roughly; some; estimated; early
- = late; mid; period; style; reproduction; repro; revival; century; years; year; ago; made; built; piece
- = furniture; unspecified; not given; uncertain; unclear; various; different; item; assumed; guess; likely
- = at least; over; under; more than; less than; age; aged wood; wood; timber; top; frame; house; building
- = door; original; factory; home made; homemade; hand made; handmade; shop made; workshop; date; dated
- = undated; stored; not said; not mentioned; n a; na; unfinished; series; production; modern copy
"""

USES = """
kitchen = worktops; work surface; cutting board; chopping board; bread board; breadboard; salad bowl
kitchen = bread bin; bread box; pantry; larder; spoon*; bowl; bowls; rolling pin; utensil*; kitchens; hutch
kitchen = serving board; cheese board; plate rack; spice rack; knife block; butcher block
wet = wash stand; washstand; washbasin; shower; patio; balcony; terrace; pergola; gate; front door
wet = window frame; window frames; window sill; windowsill; sash; sashes; dock; yacht; planter; plant stand
wet = swing; arbour; fence; shutter*; exterior door; boat trim; entry door; garden bench; shed; sauna; pool
wet = teak deck; transom
table = side table; end table; tray; trays; sideboard; buffet; nightstand; bedside; cocktail; countertop bar
table = bureau; secretary; writing; trolley; tea cart; cart; night stand; credenza; console; lectern
table = workbench; vanity table; drop leaf; pedestal; gateleg
child = baby; cot; rocking horse; playpen; school; bunk*; rattle; blocks; highchair; kids; doll*; puzzle
child = building blocks; play table; changing table
storage = cupboard interior; armoire; armoires; blanket chest; cedar chest; hope chest; trunk; trunks
storage = linen press; chest interior; lining; box inside
display = mirror; mirror frame; picture frames; candlestick*; wainscot*; cornice; carving; sculpture; plaque
display = sign; box; jewellery box; jewelry box; humidor; clock case; music stand; curio; vitrine
display = display cabinet; piano; organ; violin; guitar; instrument; ornament; pew; altar; urn; vase
display = stand lamp; screen; skirting; baseboard; architrave; beam; beams; ceiling; grandfather clock
display = chess board; chessboard; shelf bracket; finial
"""

NEUTRAL = """
above absolutely absorb absorbed absorbs acacia accept acceptable accepted accidentally across actual
actually additionally adhere adhered adheres advice afterward afterwards against ago ahead aim aired airing
alder alike allegedly allow allowed allowing allows along already although always am amateur amber among
amongst amount amounts ancient angle annually answer anybody anyone anyway anywhere apart apartment
apparently appear apple apprentice appropriate april architrave arm armchair armchairs armoire armrest
armrests arms arris ash aside ask asked asks assemble assembled assembling attach attached attaching attempt
attempted attempting attempts attic august aunt autumn available average backrest backs backward badly
balustrade bamboo banding banister bannister barely barn baseboard basement basic basically basswood
bathroom bead beading beam beams became because become becomes becoming bedpost bedroom bedside bedstead
bedtime beech beforehand began beginner begins begun behind beige believe believed believes below benches
bend beneath bent beside besides bevel beyond bigger biggest birch biscuit biscuits bit bits blade blades
blend blended blending blockboard blow blown blunt bolt bolted bolts bond bonded bookcase bookcases
bookshelf bookshelves booth bottle bottles bought bowl boxwood boy boys bracket brackets brads brighter
bring bringing brings briskly bristle bristles broadly bronze brother brushing bucket buckets buffet build
building builds built bullnose bunk bureau burgundy burlap buy buyer buying buys cabinetmaker cabinetry call
called calls came cane canopy cans capital cardboard carelessly carpenter carries carry carrying cart carve
casework casing caster casters castor castors catch caul cauls cause caused cedar ceiling cellar celsius
cent centimetre centimetres century certain certainly chamfer chapel charcoal cheesecloth cherry chestnut
chief chiefly chiffonier chill chilled chipboard chisel choose chooses chose chosen church circular city
clamp clamped clamping clamps classic cleanly clearly clock closely closet coast column columns come comes
coming commission commode common complex complicated compressor condo conservator conservatory considerably
constantly contemporary continually continuously contractor cook cooked cooled cooling copper corbel cornice
correct cot cottage cotton couch counter countertop country couple cousin cradle craft credenza crest crib
crooked crossbanding crossbar crosspiece crown cup cupful current currently curved custom cypress dab dabbed
dabbing dado daily darker dash daub daughter dawn dealer decade decades december decent decide decided
decides deck decorator deeply defect defects definitely degree degrees deliberately deliver depth design
desks detach detached difficult dilute dip dipped dipping dips disassemble disassembled dismantle dismantled
display displayed dissolve dissolved dissolves distance doorframe doorway double dovetail dovetails dowel
dowels downstairs dozen dozens drill drilled drilling drink drinking drop dropped drops dull during dusk
dust dusted dusting earlier early easel east eastern easy eat eating eats ebony effect effects effort
eighteen eighth eighty either eleven elm elsewhere emptied empty ending entirely entry equal escutcheon
especially essential essentially evaporate evaporated evaporates eventually everybody everyone everywhere
evidently exactly example examples excellent except expect expected expects experience expose exposed
exposing factory fahrenheit faint fair fairly fall false fan fans farm fasten fastened fastening father
fault faults february feel feels fence fewer fiberboard fibreboard fifteen fifth fifty file filed fill
filled filling filter filters find finding finds finial finishing fir fireplace firm firmly firstly fix
fixed fixing flannel flap flatten flattened flexible flip flipped floorboard floorboards floors flush
flushed foil fold folded follow followed following follows footstool form formerly forms forth fortunately
forty forward found fourteen fourth foyer fragment fragments frequently freshly fretwork friday friend
friends future gallon gallons garden gate general generally generously gentleman gets getting girl girls
gives giving glide glides gloves glue glued gluing goal goggles going gold golden gone gotten gradually gram
grams grandfather grandmother grandparents great greatly grille grip groove grooves group groups guest
guests gun guns habit hall hallway halves handle handles handling handrail handsome hanging hangs happen
happened happens hardboard hardening hardly hardwood hardwoods hasp hastily having headrest heat heated
heating heavily height held help helped helps hence herself hickory higher highly him himself hinge hobbyist
hold holding holds hollow holly honey hook hooked hope hoped hopefully hopes hose hosed hoses hotel hourly
however huge hundred hurriedly husband hutch idea important impossible inch inches included including
incomplete incorrect indirectly individual individually inland inlay inlays inn instant instantly instead
instruction intend intended intends intentionally invert inverted iroko island issue issues item items
itself ivory jamb january jar jars join joined joiner jointly july june keep keeping keeps key keyhole keys
kilo kilos kind kinds kitchen knew knife knives knob know knowledge known knows labelled ladder ladderback
lady laminate laminated landing landlord larch largely larger largest lastly latch late lately latest lathe
lattice laying lays lead leads leaf lean leaned leaning leave leaves leaving lectern led length lets letting
leveled levelled liberally library lid lids lifting lighter lightly like liked likely likes likewise lime
linden linen lint lip list liter liters litre litres live lived living load lobby location lock locks loft
longest looking loosely lots louver louvers louvre louvres lovely lower lowered lowering lumber lunchtime
mahogany main mainly major makes making man manage managed mansion mantel mantelpiece maple march marked
marking maroon marquetry mask masked masking match matched matches matching matter maybe me mean means meant
meanwhile measure measured measuring medallion meet meets melamine mend mended mending meranti merely met
meter meters metre metres micron microns midday mil mildly millimetre millimetres mils mine minor minus
miter mitre mixing moderately modern moment moments monday monthly mortise mostly mother mount mountain
mounting move moves moving museum muslin mutually nail nailed nails name named narrowly navy near nearby
neatly necessary need needing needs neighbor neighbour neither newel newer newest newly newspaper newspapers
nice nightly nightstand ninety ninth nobody noon north northern nosing noticeably november nowadays nowhere
nozzle numbers nursery oak object objects obviously occasionally october offcut offcuts offer offered office
often older oldest olive olivewood opposite optional orange order orders organ originally others otherwise
ottoman ounce ounces oval overhead owned owns pack padauk paid pail painter pair pairs paneling panelling
pantyhose parents parquetry partially particleboard particular particularly past patiently patio pattern
patterns pay pear pecan pedestal penetrate penetrated penetrates percent perfect perfectly perhaps period
periodically periods permanently pew pews piano pieces pilaster pine pink pins pint pints plan planned
planning plans plastic plate plates play plenty plinth plum plus pointed polisher poor poorly poplar portion
portions possible possibly post posts pound pounds pour poured practically practice precisely prefer
preferred prefers present pressing pressure presumably pretty previously primary principal probably problem
problems professional project projects promptly proportion protect protected protecting pulling purple
purpose purposely push pushed pushes pushing puts putting putty quantity quart quarters quarts question
rabbet rack railing raising ran randomly rapidly rarely ratio rattan read reads real really reason
reasonable reasons reassemble reassembled rebate rebuild rebuilt receive received receives recent recently
recliner recoat recoated recoating recommendation rectangular recycle redo redone redwood refinish
refinished refinishing refit refitted refitting refresh refreshed region regularly reinstall reinstalled
remain remained renew renewed renovate renovated renovation repaint repainted repainting repair repaired
repairing repeat repeated repeatedly repeating replace replaced replacing reportedly require requires
respectively respirator respray resprayed restoration restore restored restorer restoring result results
reuse reused revarnish revarnished rich right rigid rim road rocker rocking rod rods roll rolling rosette
rosewood rotate rotated rotating round rounded row rows rule rules run rung rungs runner runners running
runs safely said samples sapele sash sashes sat satinwood satisfactory saturday save saved saw sawhorse
sawhorses sawing sawn say says scarcely school scrap scrape scraped scraper scrapers scraping scraps screw
screwed screwing screws scrub scrubbed scrubbing season seasons seats secondary secondly secretary securely
see seem seemed seemingly seems seen sees seldom sell seller selling sells send sent separate separately
september sequence series serve served serves serving settee settle settled settling seventh seventy
severely shake shallow shape shaped shaping share shared sharp shed ship shirt shopkeeper show showed
showing shown shows shutter shutters sideboard sill silver similar similarly since single sister site
sitting sixteen sixth sixty size sizes skill skirting sleep slept slid slide slides sliding slightly smaller
smallest smear smeared smoothed smoothing smoothly soak soaked soap soaped sock socks sofa soften softened
softer softly softwood softwoods sold solid somebody someone sometimes somewhat somewhere son sooner sort
sorts south southern spare sparingly spatula special specific speed spin splash splat sponged sponges
sprayer spread spreading spreads spring spruce square squeeze squeezed stack stair staircase stairs standard
staples starting stay stayed staying stays steadily stick sticks stiff stir stirred stirring stockinette
stools stop stopping stops store stored storing strain strained street stretch stretched stretcher
stretchers stringing stronger strongly stuck student studio stuff style styles subject subjected suddenly
suffer suffered suggestion suitable summer sunday support supported supporting supposedly surely survive
survived swab swabbed swabs sweep swept sycamore syringe tablespoon tabletop tack tacked takes taking tall
tambour tan tape taped tapes taping tarp teacher teak teaspoon tell tells temporarily tenant tenon tenth
terry them themselves thereafter therefore thicken thicker thickly thickness thing things think thinks
thinly thinned thinning thirteen thirty thoroughly though thought thousand thrice throughout thursday thus
tie tied tightly tilt tilted timbers tins tiny together told tomorrow tonight toothbrush toothbrushes
toothpick toothpicks total totally touched touching tough toward towards town trade tradesman tradition
traditional tray trestle trestles tried tries trimmed trimming triple trolley trouble true truly trunk try
trying tub tuesday turn turning turnings turns turquoise twelve twenty twice type types typical typically
ugly uncle underneath underside unevenly unfold unfortunately unless unlikely unload unloaded unnecessary
unpack unpacked unsuitable unusual unwrap unwrapped upon upside upstairs us utile vacuum vacuumed vanity
ventilate ventilated version versions vice vigorously villa village violet virtually vise visibly vivid
volunteer wainscot wainscoting walnut want wanted wants wardrobe warmed warming washstand weak weaker weakly
wear wearing wears wednesday weekend weekends weekly weight wenge west western wheel wheels whenever
wherever whether wholly wicker widely wider width wife window windows windsor winter wipes wiping within
woman woodworker workbench worktop worse worst wrap write written wrong wrote yard yards yearly yesterday
yew young yours zebrano
"""
