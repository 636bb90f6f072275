"""How dark a colour is that somebody names."""

_COLOURS = {
    "white": 4, "warm white": 7, "off-white": 8, "cream": 10, "ivory": 10, "pale grey": 20, "light grey": 22,
    "pale green": 25, "pale blue": 25, "yellow": 22, "pink": 25, "grey": 45, "sage": 42, "green": 55, "blue": 60,
    "red": 58, "brown": 70, "dark grey": 75, "navy": 88, "dark blue": 85, "dark green": 82, "black": 96,
    "light": 12, "pale": 20, "mid": 50, "medium": 50, "dark": 75,
}  # fmt: skip


def colour_depth(word: str) -> int | None:
    """Return the darkness [%] of a colour word, or None where the word is not known."""
    known = word.strip().lower()
    if known in _COLOURS:
        return _COLOURS[known]
    for part in sorted(_COLOURS, key=len, reverse=True):
        if part in known:
            return _COLOURS[part]
    return None
