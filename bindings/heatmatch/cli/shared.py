"""Common parts of the commands: options, catalog, installation, weather, selected circuit."""

from __future__ import annotations

import argparse
import os
import re
from collections.abc import Callable, Iterable
from typing import Any, NoReturn

from heatmatch import _library as _core
from heatmatch import weather
from heatmatch.cli.output import bar, complain, read_text, say
from heatmatch.errors import FileError
from heatmatch.text.columns import WIDTH
from heatmatch.text.results import clip, wrap

DANGER = 3
_MONTH_NAMES = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september",
    "october", "november", "december",
)  # fmt: skip
KEPT, _MOST = 200, 1_000_000  # candidates of a ranking, as rank() has them; of anything
# Arguments that begin with a minus but are not options.
_NEGATIVE = re.compile(r"^-(?:\d+\.?\d*|\.\d+)\s*°?\s*[kcf]?$", re.IGNORECASE)
_QUANTITY = re.compile(r"\s*([-+]?(?:\d+\.?\d*|\.\d+))\s*°?\s*([kcf]?)\s*", re.IGNORECASE)
_VOLTS = re.compile(r"\s*(\d+\.?\d*|\.\d+)\s*v?\s*", re.IGNORECASE)
_LEAST_V, _MOST_V = 1, 2000
_F_PER_K, _F_AT_ZERO_C = 1.8, 32.0


class Parser(argparse.ArgumentParser):
    """A parser whose help keeps its lines, and whose errors are one line."""

    def __init__(self, **options: Any) -> None:
        options.setdefault("formatter_class", argparse.RawDescriptionHelpFormatter)
        super().__init__(**options)
        self._negative_number_matcher = _NEGATIVE

    def error(self, message: str) -> NoReturn:
        """Print the error of the command, and how to get its help."""
        complain(f"{message}; {self.prog} --help explains it")
        self.exit(2)


def positive(text: str) -> int:
    """A whole number above zero."""
    try:
        number = int(text)
    except ValueError:
        number = 0
    if not 1 <= number <= _MOST:
        raise argparse.ArgumentTypeError(
            f"{text[:20]} must be 1 or more, a whole number up to {_MOST}"
        )
    return number


BUILD = 0  # place of the recommended circuit, whatever its row


def place(text: str) -> int:
    """A place of the ranking, or the recommended circuit."""
    if text.lower() == "build":
        return BUILD
    try:
        return positive(text)
    except argparse.ArgumentTypeError as error:
        raise argparse.ArgumentTypeError(
            f'{text[:20]} must be "build", or a whole number from 1 to {_MOST}'
        ) from error


def month(text: str) -> int:
    """A month by number or name."""
    if text.isascii() and text.isdigit() and 1 <= int(text) <= len(_MONTH_NAMES):
        return int(text)
    for number, name in enumerate(_MONTH_NAMES, 1):
        if text.lower() in (name, name[:3]):
            return number
    raise argparse.ArgumentTypeError(f"{text} must be a month: 1 to 12, or a name such as Jan")


def _number_and_letter(text: str, example: str) -> tuple[float, str]:
    found = _QUANTITY.fullmatch(text)
    if found is None:
        raise argparse.ArgumentTypeError(f"{text} must be a temperature, such as {example}")
    return float(found[1]), found[2].lower()


def temperature_c(text: str) -> float:
    """A temperature in °C, from a number with or without a unit."""
    value, letter = _number_and_letter(text, '20, "20 °C" or "68 °F"')
    if letter == "k":
        raise argparse.ArgumentTypeError(f"{text} must be in °C or °F")
    return (value - _F_AT_ZERO_C) / _F_PER_K if letter == "f" else value


def volts(text: str) -> float:
    """A voltage in volts, from a number with or without a unit."""
    found = _VOLTS.fullmatch(text)
    value = float(found[1]) if found else 0.0
    if not _LEAST_V <= value <= _MOST_V:
        raise argparse.ArgumentTypeError(
            f'{text[:20]} must be a voltage of {_LEAST_V} to {_MOST_V} V, such as 60 or "60 V"'
        )
    return value


def difference_k(text: str) -> float:
    """A difference of temperatures in kelvins, from a number with or without a unit."""
    value, letter = _number_and_letter(text, '-8, "-8 K" or "-14 °F"')
    return value / _F_PER_K if letter == "f" else value


# Options that several commands have: name -> flags and arguments of argparse.
_OPTIONS: dict[str, dict[str, Any]] = {
    "--rank": {
        "type": place,
        "metavar": "N",
        "help": "the recommended circuit (build), or the N-th of the ranking, as numbered by "
        "heatmatch rank. Default: the existing circuit (`installation.circuit`), else build",
    },
    "--circuit": {
        "metavar": "NAME",
        "help": "the existing circuit of that name, where the installation has several",
    },
    "--max-bank": {
        "type": positive,
        "metavar": "N",
        "default": 4,
        "help": "maximum number of elements in a bank of the ranking (default 4)",
    },
    "--volts-max": {
        "type": volts,
        "metavar": "V",
        "help": "leave out arrays above this open-circuit voltage at the record low, such as 60 "
        "(default: volts_max of the goals)",
    },
    "--catalog": {
        "metavar": "FILE",
        "help": "your catalog file (or HEATMATCH_CATALOG); default: the starter catalog",
    },
    "--weather": {
        "metavar": "FILE",
        "help": "a typical year (EPW, TMY3 or PVGIS) instead of the installation's twelve months",
    },
    "--units": {
        "choices": ("si", "us"),
        "default": "si",
        "help": "°C, mm and m, or °F, inches, feet and AWG (default si)",
    },
    "--json": {
        "action": "store_true",
        "help": "plain data instead of text: numbers in SI units, sentences in --units",
    },
    "--csv": {
        "metavar": "FILE",
        "help": "also write the table for a spreadsheet, numbers in SI units. Texts that begin "
        "with = + - or @ get an apostrophe, so that they are not run as formulas",
    },
    "--force": {"action": "store_true", "help": "overwrite existing files"},
    "--quiet": {"action": "store_true", "help": "no progress on the error stream"},
}


def add_options(parser: argparse.ArgumentParser, *names: str) -> None:
    """Add common options to a parser."""
    for name in names:
        parser.add_argument(name, **_OPTIONS[name])


def add_command(
    commands: Any,
    name: str,
    purpose: str,
    run: Callable[[argparse.Namespace], int],
    *,
    text: str,
    examples: Iterable[str],
    danger: bool = False,
) -> argparse.ArgumentParser:
    """Add a command: its purpose in one sentence, input and output, examples."""
    ends = "exit codes: 0 done, 1 the input cannot be used, 2 wrong command,\n"
    ends += f"{f'{DANGER} something is a danger, ' if danger else ''}130 interrupted, 143 ended"
    parser: argparse.ArgumentParser = commands.add_parser(
        name,
        help=purpose,
        description=f"{purpose[0].upper()}{purpose[1:]}.\n\n{text.strip()}",
        epilog="\n".join(["examples:", *(f"  heatmatch {line}" for line in examples), "", ends]),
    )
    parser.set_defaults(run=run, parser=parser)
    return parser


def add_installation(parser: argparse.ArgumentParser, **options: Any) -> None:
    """The installation file, which nearly every command begins with."""
    parser.add_argument(
        "installation",
        metavar="INSTALLATION.json",
        help="your situation; - for standard input; heatmatch demo prints one",
        **options,
    )


def open_catalog(path: str | None, *, create: bool = False) -> _core.Catalog:
    """The catalog file of that name, or of HEATMATCH_CATALOG; the starter if there is none."""
    name = path or os.environ.get("HEATMATCH_CATALOG")
    if not name:
        return _core.Catalog.starter()
    if not create and not os.path.exists(name):
        raise FileError(
            f'no catalog file "{name}"; check the name, or make one with '
            "heatmatch catalog add|edit|import --catalog FILE"
        )
    return _core.Catalog.open(name)


def read_installation(arguments: argparse.Namespace) -> _core.Installation:
    """The installation that was named; --volts-max replaces that of its goals."""
    if arguments.installation == "-":
        read = _core.Installation.from_json_text(read_text("-"))
    else:
        read = _core.Installation.from_json(arguments.installation)
    most: float | None = getattr(arguments, "volts_max", None)
    return read if most is None else read.replace({"goals.volts_max": most})


def say_name(arguments: argparse.Namespace, installation: _core.Installation) -> None:
    """Prints the installation's name above a result."""
    say(clip(installation.name or arguments.installation, WIDTH) + "\n")


def in_liquid(candidate: _core.Candidate | None) -> bool:
    """Whether the store of a candidate is a liquid; not without one."""
    heat = None if candidate is None else candidate.circuit.heat
    return heat is not None and heat.liquid


def say_cautions(candidate: _core.Candidate | None = None) -> None:
    """Prints the cautions that belong to every result, those of liquids where its store is one."""
    say("\ncautions:")
    for sentence in _core.cautions(in_liquid=in_liquid(candidate)):
        say(wrap(f"- {sentence}"))


def read_weather(
    arguments: argparse.Namespace, installation: _core.Installation
) -> _core.Weather | None:
    """The weather of the file that was named, on the installation's panels."""
    if arguments.weather is None:
        return None
    return weather.read_file(arguments.weather, installation.site)


def shows_progress(arguments: argparse.Namespace) -> bool:
    """Whether progress may be shown: not with --quiet, and not for a program."""
    return not (arguments.quiet or arguments.json)


def make_ranking(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
    *,
    top: int,
    keep_rejected: int = KEPT,
) -> _core.Ranking:
    """Ranks every pairing of an installation."""
    return _core.rank(
        catalog,
        installation,
        year,
        top=top,
        keep_rejected=keep_rejected,
        max_bank=arguments.max_bank,
        progress=bar(wanted=shows_progress(arguments)),
    )
