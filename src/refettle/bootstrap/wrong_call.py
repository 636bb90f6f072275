"""A call that cannot be answered."""


class WrongCall(Exception):  # noqa: N818 - it names the person's slip, as exit code 2 does
    """
    A command cannot be answered as it was called.

    Parameters
    ----------
    what
        What is wrong, without full stop.
    do
        What would do, without full stop.
    """

    def __init__(self, *, what: str, do: str) -> None:
        super().__init__(f"{what} – {do}")
