"""Invalid texts: made from a valid one, or of invalid input only."""

from __future__ import annotations

import random
from collections.abc import Iterator

WORDS = [
    "NaN", "nan", "Infinity", "-Infinity", "inf", "-nan(ind)", "1e999", "-1e999", "1e-308",
    "5e-324", "1e308", "0x1p3", "1_000", "1,5", "--5", "+-5", "1e", ".", "1" * 5000,
    "0." + "3" * 5000, "null", "true", "[]", "{}", '""', "\x00", "\x1b[31m", "\u202e", "\u2066",
    "\ufeff", "\udc80", "ä" * 3000, "'; DROP TABLE panels; --", "=1+1", "\r", '"', "\\", "\\u0000",
    "\\ud800", "99999999999999999999", "-1", "2023-02-30", "24:61", "\u0661\u0662",
]  # fmt: skip
WHOLE = [
    "", " ", "\n", "\x00", "\ufeff", "\r\n\r\n", '"', "{", "[", "]", "}", "null", "NaN", "1",
    "true", '"text"', "[" * 100_000, '{"a":' * 100_000, "[" + "1," * 50_000 + "1]", "a" * 1_000_000,
    "," * 100_000, "\n" * 100_000, '"' * 99_999, "\udc80" * 10, "{}", "[]", "[[]]",
    '{"a": 1, "a": 2}',
    "{" + ",".join(f'"k{i}": 1' for i in range(20_000)) + "}", "1" * 5000, "-" * 5000,
    "\\ud800", '"\\ud800"', '{"\\ud800": "\\udfff"}', "\x1b]0;title\x07",
]  # fmt: skip


def mutated(good: str, dice: random.Random) -> str:
    """A good text with one thing wrong, or several."""
    text = good
    for _ in range(dice.choice((1, 1, 1, 2, 5))):
        at = dice.randrange(len(text) + 1)
        end = min(len(text), at + dice.choice((0, 1, 1, 3, 10, 200)))
        kind = dice.randrange(8)
        if kind == 0:  # one word for another, where a value may be
            start = max(text.rfind(sign, 0, at) for sign in ",: [\n") + 1
            stops = [place for place in (text.find(s, start) for s in ",]}\n") if place >= 0]
            text = text[:start] + dice.choice(WORDS) + text[min(stops, default=len(text)) :]
        elif kind == 1:
            text = text[:at] + dice.choice(WORDS) + text[end:]
        elif kind == 2:
            text = text[:at] + text[end:]
        elif kind == 3:
            text = text[:at]
        elif kind == 4:
            text = text[:at] + text[at:end] * dice.choice((2, 3, 50)) + text[end:]
        elif kind == 5:
            text = text.replace("\n", dice.choice(("\r\n", "\r", "")))
        elif kind == 6:
            lines = text.split("\n")
            dice.shuffle(lines)
            text = "\n".join(lines)
        else:
            text = text[:at] + chr(dice.choice((0, 7, 27, 127, 155, 0x202E, 0xFEFF))) + text[at:]
    return text


def nasty_texts(good: str, seed: int, count: int) -> Iterator[str]:
    """Every text of trouble, then so many made from the good one."""
    yield from WHOLE
    dice = random.Random(seed)
    for _ in range(count):
        yield mutated(good, dice)


def bytes_of(text: str, dice: random.Random) -> bytes:
    """A text as some program may have saved it, or as bytes that are no text."""
    encoding = dice.choice(
        ("utf-8", "utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252", "utf-32")
    )
    raw = text.encode(encoding, "surrogatepass" if encoding.startswith("utf") else "replace")
    return raw[: dice.randrange(len(raw) + 1)] if dice.random() < 0.1 else raw
