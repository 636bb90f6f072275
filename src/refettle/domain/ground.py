"""What does not change while a surface is worked on."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """
    The unchanging side of one zone of a surface.

    Attributes
    ----------
    wood, build
        Ids of the wood and of the build.
    veneer_um
        Face veneer [µm]; 0 = solid.
    relief, zone, orientation, use
        As in `Surface` and `Zone`.
    running
        Whether the face slides or closes on another.
    dark
        Whether it lives shut away from light.
    mixed
        Whether it is of more than one wood.
    wish
        Kind of look wanted, one of `LOOKS`.
    wish_depth
        Darkness wanted [%], 0 white to 100 black.
    """

    wood: str
    build: str = "solid"
    veneer_um: int = 0
    relief: str = "flat"
    zone: str = "flat"
    orientation: str = "upright"
    use: str = "everyday"
    running: bool = False
    dark: bool = False
    mixed: bool = False
    wish: str = "natural"
    wish_depth: int = 40
