"""Limits of the formulas: a call outside them names the value, the range and the likely slip."""

from collections.abc import Iterable


class OutOfRange(ValueError):  # noqa: N818 -- says what is wrong, as ValueError and KeyError do
    """
    A value that a formula does not hold for: the caller's mistake, not the person's.

    Attributes
    ----------
    name
        Name of the value, unit suffix included.
    value
        What was given.
    allowed
        Range or choices, in words.
    slip
        Likely slip, in words; empty if none suggests itself.
    """

    def __init__(self, name: str, value: object, allowed: str, slip: str = "") -> None:
        self.name = name
        self.value = value
        self.allowed = allowed
        self.slip = slip
        hint = f"; {slip}" if slip else ""
        super().__init__(f"{name} is {value!r}, must be {allowed}{hint}")


def need_range(name: str, value: float, low: float, high: float, unit: str, slip: str = "") -> None:
    """
    Refuse a value outside a closed range.

    Parameters
    ----------
    name
        Name of the value.
    value, low, high
        Value and its bounds, each included, in the unit named [`unit`].
    unit
        Unit, for the message; ``1`` for a fraction.
    slip
        Likely slip, in words.

    Raises
    ------
    OutOfRange
        If `value` is below `low`, above `high` or not a number.

    Examples
    --------
    >>> need_range("rh", 50.0, 0.0, 1.0, "1", "a percentage slipped in")
    Traceback (most recent call last):
    refettle.physics.limits.OutOfRange: rh is 50.0, must be 0 to 1; a percentage slipped in
    """
    if not low <= value <= high:
        raise OutOfRange(name, value, f"{low:g} to {high:g}{_unit(unit)}", slip)


def need_above(name: str, value: float, low: float, high: float, unit: str, slip: str = "") -> None:
    """
    Refuse a value outside a range whose lower bound is itself excluded.

    Parameters
    ----------
    name
        Name of the value.
    value, low, high
        Value, its bound below (excluded) and above (included), in the unit named [`unit`].
    unit
        Unit, for the message; ``1`` for a fraction.
    slip
        Likely slip, in words.

    Raises
    ------
    OutOfRange
        If `value` is not above `low`, is above `high` or is not a number.

    Examples
    --------
    >>> need_above("solids_vol", 30.0, 0.0, 1.0, "m³/m³", "a percentage slipped in")
    Traceback (most recent call last):
    refettle.physics.limits.OutOfRange: solids_vol is 30.0, must be above 0, at most 1 m³/m³; a percentage slipped in
    """
    if not low < value <= high:
        raise OutOfRange(name, value, f"above {low:g}, at most {high:g}{_unit(unit)}", slip)


def need_choice(name: str, value: object, choices: Iterable[object]) -> None:
    """
    Refuse a word or grade that is not among the choices (no unit: [1] thing of a list).

    Parameters
    ----------
    name
        Name of the value.
    value
        What was given.
    choices
        What there is.

    Raises
    ------
    OutOfRange
        If `value` is not among `choices`.

    Examples
    --------
    >>> need_choice("stage", "dry", ("touch", "sand"))
    Traceback (most recent call last):
    refettle.physics.limits.OutOfRange: stage is 'dry', must be one of touch, sand
    """
    known = tuple(choices)
    if value not in known:
        raise OutOfRange(name, value, f"one of {', '.join(str(choice) for choice in known)}")


def _unit(unit: str) -> str:
    """Return the unit as it stands behind a number; nothing for a bare fraction."""
    return "" if unit == "1" else f" {unit}"
