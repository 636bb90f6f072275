"""``python -m refettle`` is ``refettle``."""

import sys

from refettle.cli import main

if __name__ == "__main__":
    sys.exit(main())
