"""python -m heatmatch: the command line."""

import sys

from heatmatch.cli import main

if __name__ == "__main__":
    sys.exit(main())
