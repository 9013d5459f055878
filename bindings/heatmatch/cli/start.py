"""The command line's start: plain questions, and an installation file from their answers."""

from __future__ import annotations

import argparse
import sys
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.output import check_new_file, say
from heatmatch.cli.shared import add_command, add_options, open_catalog
from heatmatch.errors import InvalidInput
from heatmatch.text.table import wrapped
from heatmatch.text.units import told

HELP = """\
A dozen questions; their answers become an installation file. Press Enter where
you do not know: what is then assumed is listed, and kept in the file. Answers
may be in any unit, and are checked at once.
"""
EXAMPLES = ("start my_place.json", "start my_place.json --units us")
_BACK = "back"


class _Session:
    """The questions, and the answers so far."""

    def __init__(self, catalog: _core.Catalog, units: str) -> None:
        self.catalog = catalog
        self.units = units
        self.questions = _core.questions(units=units)
        self.answers: list[tuple[str, str]] = []

    def ask(self, number: int, *, more: bool) -> None:
        """Print a question with an example."""
        question = self.questions[number]
        head = f"{number + 1}/{len(self.questions)}  "
        asked = _core.ask_for_more() if more else question["ask"]
        lines = wrapped([head + told(asked, self.units)], self.units)
        if not more:
            like = told(_core.answer_like(question["example"]), self.units)
            lines += wrapped([" " * len(head) + like], self.units)
        say("\n" + "\n".join(lines))

    def take(self, kind: str, text: str) -> bool:
        """Keep an accepted answer, and print how it was read."""
        accepted, said = _core.understand(self.catalog, self.answers, kind, text, units=self.units)
        if accepted:
            self.answers.append((kind, text))
        if said:
            say("\n".join(wrapped(["  " + told(said, self.units)], self.units)))
        return accepted

    def forget(self, number: int) -> None:
        """Drop the answers to that question and to those behind it."""
        kinds = [question["kind"] for question in self.questions[:number]]
        self.answers = [one for one in self.answers if one[0] in kinds]

    def run(self) -> None:
        """Ask everything."""
        number = 0
        more = False
        while number < len(self.questions):
            question = self.questions[number]
            self.ask(number, more=more)
            text = _line()
            if text.strip().lower() == _BACK:
                number = max(number - 1, 0)
                more = False
                self.forget(number)
                continue
            if more and not text.strip():
                number, more = number + 1, False
                continue
            if not self.take(question["kind"], text):
                continue
            more = question["repeats"] and text.strip() not in ("", "?")
            number += 0 if more else 1


def _line() -> str:
    """One line of the input, without its end."""
    sys.stdout.write("> ")
    sys.stdout.flush()
    line = sys.stdin.readline()
    if not line:
        raise InvalidInput(
            "the input ended before the last question, and nothing was written; "
            "answer every question, with an empty line where you do not know"
        )
    return line.rstrip("\r\n")


def run_start(arguments: argparse.Namespace) -> int:
    """Ask the questions and write the installation."""
    check_new_file(arguments.output, arguments)
    session = _Session(open_catalog(arguments.catalog), arguments.units)
    say("\n".join(wrapped([_core.how_to_answer(_BACK)], arguments.units)))
    session.run()
    made, assumed = _core.start_installation(
        session.catalog, session.answers, units=arguments.units
    )
    say("")
    for sentence in assumed:
        say("\n".join(wrapped([f"- {told(sentence, arguments.units)}"], arguments.units)))
    made.to_json(arguments.output, force=arguments.force)
    say(f"\nwrote {arguments.output}\nheatmatch rank {arguments.output}")
    return 0


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    start = add_command(
        commands,
        "start",
        "answer a dozen questions, and get an installation file",
        run_start,
        text=HELP,
        examples=EXAMPLES,
    )
    start.add_argument(
        "output",
        nargs="?",
        default="my_place.json",
        metavar="FILE.json",
        help="the file to write (default my_place.json)",
    )
    add_options(start, "--force", "--catalog", "--units")
