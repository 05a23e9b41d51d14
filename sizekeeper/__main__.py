"""`python -m sizekeeper` is the same as the command `sizekeeper`."""

import sys

from sizekeeper.cli.main import main

sys.exit(main())
