"""From a surface and a wish to a sequence that holds, and the checks on it."""
