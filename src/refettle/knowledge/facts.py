"""
Resolved facts of one subject, one frozen class a kind.

Every field is the property of the same name in ``properties.csv``, which holds its unit, bounds and
meaning; a test keeps the two alike. Shares and scales are 0-1 [1].
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class FilmFacts:
    """Behaviour of one class of film or colourant; fields as in ``properties.csv``."""

    id: str
    name: str
    family: str
    carrier: str
    role: tuple[str, ...]
    methods: tuple[str, ...]
    water_share: float
    bite: float
    resist_water: float
    resist_alcohol: float
    resist_spirits: float
    resist_strong: float
    resist_alkali: float
    redissolves: bool
    hardness: float
    flexibility: float
    grip: float
    holds_keyed: float
    holds_smooth: float
    wax_content: float
    wax_shy: float
    tolerates_dirt: float
    feeds_mould: bool
    crater_prone: float
    blocks_knots: float
    blocks_tannin: float
    blocks_dye: float
    blocks_smoke: float
    blocks_oils: float
    blocks_silicone: float
    cure_oxidative: float
    yellows: float
    ambers: float
    opaque: bool
    hide: float
    colour_kind: str
    colour_power: float
    blotch_prone: float
    needs_bare: bool
    needs_absorbent: bool
    wiped_off: bool
    solids_vol: float
    wet_um: float
    dry_um: float
    max_wet_um: float
    max_total_um: float
    coats: float
    touch_h: float
    recoat_from_h: float
    recoat_until_h: float
    sand_h: float
    wrap_h: float
    cured_h: float
    window_critical: bool
    min_c: float
    max_c: float
    rh_max: float
    blush_prone: float
    sticks_shut: float
    resist_heat: float
    resist_wear: float
    plasticiser_weak: float
    skin_oil_weak: float
    porous: float
    bubble_prone: float
    levels: float
    sag_prone: float
    sheens: tuple[str, ...]
    strip_alcohol: float
    strip_solvent: float
    strip_mild: float
    strip_caustic: float
    strip_heat: float
    voc_g_l: float
    trade_only: bool
    flammable: bool
    self_heats: bool
    price_l: float
    mendable: float
    smooths_h_m2: float
    holds_lead: float
    for_use: str
    resist_weather: float
    keeps_months: float
    keeps_opened_months: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodFacts:
    """Behaviour of one wood or board as a ground for films; fields as in ``properties.csv``."""

    id: str
    name: str
    group: str
    tannin: float
    colour_bleed: float
    dye_like: float
    knots: float
    resin: float
    oils: float
    antioxidant: float
    vapour_softens: float
    blotch: float
    open_pores: float
    figure_contrast: float
    tight: float
    lightness: float
    swells: float
    fuzzy: float
    rusts: float
    slick: float
    takes_colour: float
    shows_wood: bool
    hardness: float
    density_kg_m3: float
    shrink_t: float
    shrink_r: float
    change_t: float
    change_r: float
    first_coat_factor: float
    paint_class: float
    dust_sensitises: float
    hue: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildFacts:
    """How a part is built up behind its face; fields as in ``properties.csv``."""

    id: str
    name: str
    veneer_um: float
    water_weak: float
    heat_weak: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ContaminantFacts:
    """What one kind of dirt or residue does to coats; fields as in ``properties.csv``."""

    id: str
    name: str
    spoils_bond: float
    craters: float
    slows_cure: float
    rejects_colour: float
    shows: float
    comes_out: float
    smells: float
    mould: float
    sanding_spreads: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LatentFacts:
    """How one cause in the wood moves and what holds it back; fields as in ``properties.csv``."""

    id: str
    name: str
    moves_water: float
    moves_alcohol: float
    moves_spirits: float
    moves_strong: float
    blocked_by: str
    old_film_blocks: float
    months: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CleanerFacts:
    """What one cleaner takes off, leaves and costs; fields as in ``properties.csv``."""

    id: str
    name: str
    removes: tuple[str, ...]
    removes_half: tuple[str, ...]
    water_share: float
    leaves: tuple[str, ...]
    bite: float
    solvent: str
    h_m2: float
    dry_h: float
    price_m2: float
    darkens_tannin: float
    l_m2: float
    tin_l: float
    bought_as: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RemoverFacts:
    """How one remover works, what it leaves and costs; fields as in ``properties.csv``."""

    id: str
    name: str
    acts_by: str
    leaves: tuple[str, ...]
    washed_by: tuple[str, ...]
    water_share: float
    hurts_veneer: float
    darkens_tannin: float
    dwell_h: float
    h_m2: float
    dry_h: float
    price_m2: float
    reach_recess: float
    min_c: float
    not_for_lead: bool
    restricted: bool
    voc_g_l: float
    l_m2: float
    tin_l: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolFacts:
    """How far one tool gets in each zone; fields as in ``properties.csv``."""

    id: str
    name: str
    zone_flat: float
    zone_edge: float
    zone_recess: float
    relative_time: float
    burns_through: float
    sheds_iron: bool
    shape: str
    size_mm: float
    thick_mm: float
    soft_mm: float
    cone_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TestFacts:
    """What one spot test finds and how often it errs; fields as in ``properties.csv``."""

    id: str
    name: str
    detects: tuple[str, ...]
    yes_if_true: float
    yes_if_false: float
    minutes: float
    price: float
    wait_h: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DamageFacts:
    """How one kind of damage offends and what mends it; fields as in ``properties.csv``."""

    id: str
    name: str
    needs_bare: bool
    needs_film: bool
    structural: bool
    shows_clear: float
    shows_opaque: float
    mend: str
    of_part: bool
    stage: str
    give_up: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RepairFacts:
    """What one repair takes and how surely it works; fields as in ``properties.csv``."""

    id: str
    name: str
    h_each: float
    h_m2: float
    wait_h: float
    price: float
    works: float
    operations: tuple[str, ...]
    water_share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OperationFacts:
    """What one operation at the bench takes, its name being what to do; fields as in ``properties.csv``."""

    id: str
    name: str
    h_each: float
    wait_h: float
    clamps: float
    price: float
    waits_for: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FittingFacts:
    """What is done with what takes no finish, before colour and after; fields as in ``properties.csv``."""

    id: str
    name: str
    before: tuple[str, ...]
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultFacts:
    """What one fault costs to mend; fields as in ``properties.csv``."""

    id: str
    name: str
    harm_h_m2: float
    harm_price_m2: float
    harm_days: float
    goes_back_to: str
    typical_share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LabourFacts:
    """How fast one operation goes; fields as in ``properties.csv``."""

    id: str
    name: str
    flat_m2_h: float
    frame_m2_h: float
    carved_m2_h: float
    setup_h: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyFacts:
    """What is bought by the piece or pack and how far it goes; fields as in ``properties.csv``."""

    id: str
    name: str
    pack: float
    price: float
    serves_m2: float
    clogged_m2: float
    lasts: bool
