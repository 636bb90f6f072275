"""The same examples on every run of ``make test``; new ones, and more of them, with ``make explore``."""

import os

from hypothesis import settings

settings.register_profile("same", derandomize=True)
settings.register_profile("explore", print_blob=True)
settings.load_profile("explore" if os.environ.get("REFETTLE_EXPLORE") else "same")
