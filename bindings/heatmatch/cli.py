"""The command line: heatmatch rank|assess|wires|day|meter|diagnose|report|catalog|demo."""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Sequence

from heatmatch import (
    _core,
    cli_catalog,
    cli_day,
    cli_meter,
    cli_rank,
    cli_report,
    cli_wires,
)
from heatmatch.cli_output import complain
from heatmatch.cli_shared import Parser
from heatmatch.errors import Error

DESCRIPTION = """\
Which heating element suits the panels you own, in which hook-up, and what
its limits are. Describe your situation in an installation file (JSON);
`heatmatch demo` prints one to start from.
"""
EPILOG = """\
`heatmatch COMMAND --help` explains one of them, with examples.

exit codes: 0 done, 1 the input cannot be used, 2 wrong command,
3 the circuit has a danger, 130 interrupted

Severities are in colour on a terminal; NO_COLOR=1 turns that off.
"""
GUIDE = """\
heatmatch COMMAND: which question, which command?

  I have no file yet                      heatmatch demo > mine.json
  Which element, in which hook-up?        heatmatch rank mine.json
  Is what I built all right?              heatmatch assess mine.json
  Which wire melts, which would do?       heatmatch wires mine.json
  Does it keep the space warm at night?   heatmatch day mine.json
  What should my meter read?              heatmatch meter mine.json
  My readings are odd: what is broken?    heatmatch diagnose mine.json r.csv
  Something to print or to show           heatmatch report mine.json -o r.html
  Which parts are known? Mine are not.    heatmatch catalog list

heatmatch COMMAND --help explains one of them, with examples.
"""


def make_parser() -> Parser:
    """The parser of the whole command line."""
    parser = Parser(prog="heatmatch", description=DESCRIPTION, epilog=EPILOG)
    parser.add_argument("--version", action="version", version=_core.library_version())
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    cli_rank.add_parsers(commands)
    cli_wires.add_parsers(commands)
    cli_day.add_parsers(commands)
    cli_meter.add_parsers(commands)
    cli_report.add_parsers(commands)
    cli_catalog.add_parsers(commands)
    return parser


def _run(arguments: Sequence[str]) -> int:
    parsed = make_parser().parse_args(arguments)
    code: int = parsed.run(parsed)
    sys.stdout.flush()
    return code


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command line and gives its exit code."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that cannot print ° still works
    words = sys.argv[1:] if arguments is None else arguments
    if not words:
        print(GUIDE, end="", file=sys.stderr)
        return 2
    try:
        return _run(words)
    except (Error, ImportError) as error:
        complain(str(error).replace("(keep_good)", "(--keep-good)"))
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except OSError as error:
        name = f' "{error.filename}"' if error.filename else ""
        complain(f"cannot use the file{name}: {error.strerror or error}; check the path")
    except UnicodeError as error:
        complain(f"a file or a name is not text in UTF-8: {error}; save it as such")
    except KeyboardInterrupt:
        complain("interrupted")
        return 130
    return 1
