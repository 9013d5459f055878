"""The command line: heatmatch start|rank|plan|assess|wires|day|meter|diagnose|report|catalog."""

from __future__ import annotations

import contextlib
import io
import os
import signal
import sys
from collections.abc import Sequence

import heatmatch._stopping as _stopping
from heatmatch import _library as _core
from heatmatch.cli import catalog, day, diagnose, meter, plan, rank, report, start, wires
from heatmatch.cli.output import complain
from heatmatch.cli.shared import Parser
from heatmatch.errors import Error

DESCRIPTION = """\
Find the heating element and hook-up that suit the panels you own, and the
limits of the circuit. Describe your situation in an installation file (JSON);
make it with `heatmatch start`, or change the example of `heatmatch demo`.
"""
EPILOG = """\
`heatmatch COMMAND --help` explains one command, with examples.

exit codes: 0 done, 1 the input cannot be used, 2 wrong command,
3 the circuit has a danger, 130 interrupted, 143 ended

Severities are in color on a terminal; NO_COLOR=1 turns that off.
"""
GUIDE = """\
heatmatch COMMAND: commands by question

  I have no file yet                      heatmatch start mine.json
  What does a file look like?             heatmatch demo > demo.json
  Which element, in which hook-up?        heatmatch rank mine.json
  What do I build with all I own?         heatmatch plan mine.json
  What limits does my circuit exceed?     heatmatch assess mine.json
  Which wire melts, which is suitable?    heatmatch wires mine.json
  Does it keep the space warm at night?   heatmatch day mine.json
  What should my meter read?              heatmatch meter mine.json
  Which fault explains my readings?       heatmatch diagnose mine.json r.csv
  How do I print or show a result?        heatmatch report mine.json -o r.html
  Which parts are in the catalog?         heatmatch catalog list

heatmatch COMMAND --help explains one command, with examples.
"""


def make_parser() -> Parser:
    """The parser of the whole command line."""
    parser = Parser(prog="heatmatch", description=DESCRIPTION, epilog=EPILOG)
    parser.add_argument("--version", action="version", version=_core.library_version())
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    start.add_parsers(commands)
    rank.add_parsers(commands)
    plan.add_parsers(commands)
    wires.add_parsers(commands)
    day.add_parsers(commands)
    meter.add_parsers(commands)
    diagnose.add_parsers(commands)
    report.add_parsers(commands)
    catalog.add_parsers(commands)
    return parser


def _open_streams() -> None:
    """Replace streams that were closed before the start, and let terminals show all characters."""
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        if stream is None:
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: SIM115
        elif isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that cannot print ° still works


def _flush() -> None:
    """Flush the output; if that fails, Python must not try again at its end."""
    try:
        sys.stdout.flush()
    except OSError:
        with contextlib.suppress(OSError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        raise


def _run(arguments: Sequence[str]) -> int:
    try:
        parsed = make_parser().parse_args(arguments)
        code: int = parsed.run(parsed)
    finally:
        _flush()
    return code


def _attempt(words: Sequence[str]) -> tuple[int, str]:
    """Run the command line; return its exit code, and the error to print."""
    try:
        return _run(words), ""
    except (Error, ImportError) as error:
        text = str(error).replace("(keep_good)", "(--keep-good)")
        return 1, text.replace("overwrite it with force", "overwrite it with --force")
    except BrokenPipeError:
        return 1, ""
    except OSError as error:
        name = f' "{error.filename}"' if error.filename else ""
        return 1, f"cannot use the file{name}: {error.strerror or error}; check the path"
    except UnicodeError as error:
        return 1, f"a file or a name is not text in UTF-8: {error}; save it as UTF-8"


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command line and gives its exit code."""
    _open_streams()
    words = sys.argv[1:] if arguments is None else arguments
    if not words:
        print(GUIDE, end="", file=sys.stderr)
        return 2
    heard = _stopping.Heard()
    try:
        with heard:
            code, complaint = _attempt(words)
    except (KeyboardInterrupt, _stopping.Ended):
        heard.signum = heard.signum or signal.SIGINT
    if heard.signum:  # also where its exception was converted to another one
        code = _stopping.exit_code(heard.signum)
        complaint = _stopping.WORDS[heard.signum]
    if complaint:
        with contextlib.suppress(OSError):
            complain(complaint)
    return code
