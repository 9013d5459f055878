"""Every text a user reads, by room, with its long sentences and its reading grade.

    python tests/python/user_texts.py          one line a room
    python tests/python/user_texts.py --long   also each sentence over 20 words

Read are the tables of sentences, the meanings of fields and the words of the Python faces. The
grade is that of Kincaid, Fishburne, Rogers and Chissom, Derivation of New Readability Formulas,
Research Branch Report 8-75, Naval Technical Training Command, 1975:

    grade = 0.39 words / sentences + 11.8 syllables / words - 15.59

A place such as `{value}` counts as one word of one syllable, so numbers and names weigh nothing.
"""

from __future__ import annotations

import ast
import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
SOURCES = ROOT / "libheatmatch" / "src"
FACES = ("cli", "explorer", "plot", "report", "text")
LONG = 20

# What people do and things do not: things report, are best at, absorb, withstand, are listed.
OF_PEOPLE = re.compile(
    r"\b(?:tells?|told|untold|telling|wants?|wanted|nobody|takes|taking|stands|lives|lived|knows"
    r"|asks?|asked|gives way|give way|let go|lets go|believed|kinder)\b",
    re.IGNORECASE,
)

LITERAL = r'"((?:[^"\\\n]|\\.)*)"'
LINE = re.compile(r'\{\s*"([a-z_.0-9]+)",\s*((?:' + LITERAL + r"\s*)+)\}")
MEANING = re.compile(r"\.meaning\s*=\s*((?:" + LITERAL + r"\s*)+)")
PLACE = re.compile(r"\{[^{}]*\}")


@dataclass(frozen=True)
class Text:
    """One text: its room, its name there, its words."""

    room: str
    name: str
    text: str


def joined(literals: str) -> str:
    return "".join(re.findall(LITERAL, literals)).replace('\\"', '"')


def templates() -> Iterator[Text]:
    """The lines of all tables of sentences."""
    for path in sorted(SOURCES.rglob("*sentences*.hpp")):
        room = path.parent.relative_to(SOURCES).as_posix()
        for match in LINE.finditer(path.read_text(encoding="utf-8")):
            yield Text(room, match[1], joined(match[2]))


def meanings() -> Iterator[Text]:
    """Meaning of each field in the field tables."""
    for path in sorted(SOURCES.rglob("*.cpp")):
        for match in MEANING.finditer(path.read_text(encoding="utf-8")):
            yield Text("fields", path.name, joined(match[1]))


def _is_docstring(parent: ast.AST, node: ast.AST) -> bool:
    return isinstance(parent, ast.Expr) and parent.value is node


def _pieces(node: ast.JoinedStr) -> str:
    parts = (p.value if isinstance(p, ast.Constant) else "{x}" for p in node.values)
    return "".join(str(part) for part in parts)


def _strings(parent: ast.AST) -> Iterator[str]:
    """Strings and f-strings below a node; documentation strings left out."""
    for node in ast.iter_child_nodes(parent):
        if isinstance(node, ast.JoinedStr):
            yield _pieces(node)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            if not _is_docstring(parent, node):
                yield node.value
        else:
            yield from _strings(node)


def _is_said(text: str) -> bool:
    """Whether a string is text for a user: words with a space, and no markup or style."""
    return bool(re.search(r"[A-Za-z]{2,} \S", text)) and not re.search(r"[<>;]\s*\S*[{}=]", text)


def faces() -> Iterator[Text]:
    """Strings of the command line, tables, plots, explorer and report."""
    for face in FACES:
        for path in sorted((ROOT / "bindings" / "heatmatch" / face).glob("*.py")):
            for said in _strings(ast.parse(path.read_text(encoding="utf-8"))):
                if _is_said(said):
                    yield Text(f"python {face}", path.name, said)


def page() -> Iterator[Text]:
    """Text between the tags of the report's page."""
    path = ROOT / "bindings/heatmatch/report/page.html.j2"
    unseen = r"(?s)<style.*?</style>|<script.*?</script>|\{[%#].*?[%#]\}"
    text = re.sub(unseen, "", path.read_text(encoding="utf-8"))
    for said in re.split(r"<[^>]*>", text):
        if _is_said(said):
            yield Text("python report", path.name, said.strip())


def all_texts() -> list[Text]:
    return [*templates(), *meanings(), *faces(), *page()]


def of_people(text: str) -> list[str]:
    """Words that only people do, in a text about things."""
    return OF_PEOPLE.findall(PLACE.sub("", text))


def sentences(text: str) -> list[str]:
    """A text cut after each point, question mark, exclamation mark or empty line."""
    plain = PLACE.sub("x", text)
    cut = re.split(r"(?<=[.!?])[\"”)]*\s+|\n\s*\n", plain)
    return [one for one in cut if words(one)]


def words(text: str) -> list[str]:
    return re.findall(r"[A-Za-z°µ][\w'’-]*", text)


def syllables(word: str) -> int:
    """Groups of vowels; a silent e at the end is none."""
    small = word.lower()
    groups = len(re.findall(r"[aeiouy]+", small))
    if small.endswith("e") and not small.endswith(("le", "ee")) and groups > 1:
        groups -= 1
    return max(1, groups)


def grade(texts: list[str]) -> float:
    cut = [one for text in texts for one in sentences(text)]
    said = [word for one in cut for word in words(one)]
    if not said:
        return 0.0
    sounds = sum(map(syllables, said))
    return 0.39 * len(said) / len(cut) + 11.8 * sounds / len(said) - 15.59


def over(text: str, most: int = LONG) -> list[str]:
    """The sentences of a text that have more words than that."""
    return [one for one in sentences(text) if len(words(one)) > most]


def table() -> str:
    rooms: dict[str, list[str]] = defaultdict(list)
    for one in all_texts():
        rooms[one.room].append(one.text)
    rooms["all"] = [one.text for one in all_texts()]
    lines = [
        f"{'room':24}{'texts':>7}{'sentences':>11}{'over 20':>9}{'longest':>9}"
        f"{'of people':>11}{'grade':>7}"
    ]
    for room, texts in rooms.items():
        cut = [one for text in texts for one in sentences(text)]
        long = sum(len(over(text)) for text in texts)
        most = max(len(words(one)) for one in cut)
        people = sum(len(of_people(text)) for text in texts)
        lines.append(
            f"{room:24}{len(texts):7}{len(cut):11}{long:9}{most:9}{people:11}{grade(texts):7.1f}"
        )
    return "\n".join(lines)


if __name__ == "__main__":
    print(table())
    if "--long" in sys.argv[1:]:
        for one in all_texts():
            for sentence in over(one.text):
                print(f"{one.room} {one.name} ({len(words(sentence))}): {sentence}")
