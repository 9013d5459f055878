"""Texts of weather files: their encoding, their headers, and what pvlib's readers make of them."""

from __future__ import annotations

import codecs
import os
import re
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from heatmatch.errors import FileError, InvalidInput
from heatmatch.io.files import checked_path

if TYPE_CHECKING:
    import pandas as _pd

Place = tuple[float, float, float]  # latitude, longitude, elevation

# By the byte order mark at the beginning; longer marks first, because one begins with another.
_MARKS = (
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_IN_BRACKETS = re.compile(r"[\(\[]([^\)\]]*)[\)\]]")
_WATTS = ("wm2", "wm²", "whm2", "whm²")
# Name without case, blanks, signs and unit -> name in pvlib's reader, permitted units.
_TMY3 = {
    "date": ("Date (MM/DD/YYYY)", ("mmddyyyy",)),
    "time": ("Time (HH:MM)", ("hhmm",)),
    "ghi": ("GHI (W/m^2)", _WATTS),
    "dni": ("DNI (W/m^2)", _WATTS),
    "dhi": ("DHI (W/m^2)", _WATTS),
    "drybulb": ("Dry-bulb (C)", ("c", "°c", "degc")),
    "wspd": ("Wspd (m/s)", ("ms",)),
}
_PVGIS = {
    "timeutc": "time(UTC)",
    "t2m": "T2m",
    "gh": "G(h)",
    "gbn": "Gb(n)",
    "gdh": "Gd(h)",
    "ws10m": "WS10m",
}


def _letters(text: str) -> str:
    return "".join(c for c in text.lower() if c.isalnum() or c in "°²")


def stem(name: str) -> str:
    """A column's name as it is compared: without case, blanks, signs and unit in brackets."""
    return _letters(_IN_BRACKETS.sub("", name))


def decoded(raw: bytes, name: str) -> str:
    """The text of a file in any common encoding, its lines ended alike.

    UTF-8, UTF-16 and UTF-32 by their mark, else UTF-8, else Windows' and ISO's Latin-1: no other
    sign than a place's name is then read otherwise than it was meant.

    Raises
    ------
    InvalidInput
        It is not text.
    """
    encodings = next(([kind] for mark, kind in _MARKS if raw.startswith(mark)), None)
    for encoding in encodings or ["utf-8", "cp1252", "latin-1"]:
        try:
            text = raw.decode(encoding)
        except UnicodeError:
            continue
        if "\0" in text:
            break
        return text.replace("\r\n", "\n").replace("\r", "\n")
    allowed, remedy = "a text", "save it as text in UTF-8"
    value = "bytes that are not text"
    raise InvalidInput(
        f"{name}: file = {value} must be {allowed}; {remedy}", name, "file", value, allowed, remedy
    )


def text_of(path: str | os.PathLike[str]) -> str:
    """The text of a weather file.

    Raises
    ------
    FileError
        It cannot be read.
    InvalidInput
        It is not text.
    """
    name = checked_path(path, "read")
    if os.path.isdir(name):
        raise FileError(f"{name}: is a folder; name a file in it", field="path", value=name)
    if not os.path.isfile(name):
        raise FileError(f"{name}: there is no such file", field="path", value=name)
    try:
        raw = Path(name).read_bytes()
    except OSError as error:
        raise FileError(f'cannot read "{name}": {error.strerror}; check the path') from error
    return decoded(raw, name)


def _iotools() -> Any:
    """pvlib's readers."""
    try:
        from pvlib import iotools
    except ImportError as error:
        raise ImportError(
            "reading weather files needs pvlib; install it with pip install 'libheatmatch[weather]'"
        ) from error
    return iotools


def _read(
    path: str | os.PathLike[str],
    kind: str,
    read: Callable[[Any, str], Any],
    headed: Callable[[str, str], str] = lambda text, name: text,
) -> Any:
    """Read a file with a reader of pvlib, from a copy that it can read; errors name the file.

    The readers expect valid files; on others they raise errors of many types.
    """
    iotools = _iotools()
    name = checked_path(path, "read")
    text = headed(text_of(name), name)
    with tempfile.TemporaryDirectory(prefix="heatmatch-") as folder:
        # Numbers and the names of columns are ASCII; nothing else of the text is used.
        copy = Path(folder) / f"copy{os.path.splitext(name)[1].lower()}"
        copy.write_bytes(text.encode("ascii", "replace"))
        try:
            return read(iotools, str(copy))
        except InvalidInput:
            raise
        except Exception as error:
            said = str(error).replace(str(copy), name)[:200]
            plain = ""
            if name.lower().endswith(".csv"):
                plain = (
                    ", or read another table with pandas.read_csv and give its hours to "
                    "Weather.from_frame"
                )
            raise InvalidInput(
                f"{name}: cannot be read as {kind} ({type(error).__name__}: {said}); "
                f"check that it is a complete file of that kind{plain}",
                name,
                "file",
            ) from error


def _one_year(frame: _pd.DataFrame) -> _pd.DataFrame:
    """A typical year has months of several years; set all of them to one year.

    If its February is that of a leap year, that year is a leap year.
    """
    if frame.index.is_monotonic_increasing and frame.index.is_unique:
        return frame
    leap_day = ((frame.index.month == 2) & (frame.index.day == 29)).any()
    year = 2024 if leap_day else 2025
    return frame.set_axis(frame.index.map(lambda moment: moment.replace(year=year)), axis=0)


def _refuse_column(name: str, column: str, value: str, allowed: str, remedy: str) -> InvalidInput:
    message = f"{name}: column {column} = {value} must be {allowed}; {remedy}"
    return InvalidInput(message, name, f"column {column}", value, allowed, remedy)


def _tmy3_headed(text: str, name: str) -> str:
    """The text with the column names of the reader."""
    lines = text.split("\n", 2)
    if len(lines) < 3:
        return text
    cells = lines[1].split(",")
    known = {spelt for spelt, _ in _TMY3.values()}
    found = {cell for cell in cells if cell in known}
    for at, cell in enumerate(cells):
        spelt, units = _TMY3.get(stem(cell.strip().strip('"')), ("", ()))
        if not spelt or spelt in found:
            continue
        unit = _IN_BRACKETS.search(cell)
        if unit is not None and _letters(unit[1]) not in units:
            raise _refuse_column(
                name, cell.strip(), f"in {unit[1]}", f"in the unit of {spelt}", "convert the column"
            )
        cells[at] = spelt
        found.add(spelt)
    return "\n".join([lines[0], ",".join(cells), lines[2]])


def _pvgis_headed(text: str, name: str) -> str:
    """The same for the CSV of PVGIS, whose table follows its place and months."""
    del name
    lines = text.split("\n")
    for at, line in enumerate(lines[:40]):
        cells = line.split(",")
        if _letters(cells[0].strip()).startswith("time") and len(cells) > 2:
            plain = [re.sub(r"\[[^\]]*\]", "", cell).strip() for cell in cells]
            lines[at] = ",".join(_PVGIS.get(_letters(cell), cell) for cell in plain)
            break
    return "\n".join(lines)


def _place(values: Mapping[str, Any], *names: str) -> Place:
    latitude, longitude, elevation = (float(values[name]) for name in names)
    return latitude, longitude, elevation


def read_epw(path: str | os.PathLike[str]) -> tuple[_pd.DataFrame, Place]:
    """The hours of an EPW file, and its place."""

    def read(iotools: Any, copy: str) -> tuple[_pd.DataFrame, Place]:
        frame, meta = iotools.read_epw(copy)
        return _one_year(frame), _place(meta, "latitude", "longitude", "altitude")

    made: tuple[_pd.DataFrame, Place] = _read(path, "EPW", read)
    return made


def read_tmy3(path: str | os.PathLike[str]) -> tuple[_pd.DataFrame, Place]:
    """The hours of a TMY3 file, and its place."""

    def read(iotools: Any, copy: str) -> tuple[_pd.DataFrame, Place]:
        frame, meta = iotools.read_tmy3(copy, coerce_year=2025, map_variables=True)
        return frame, _place(meta, "latitude", "longitude", "altitude")

    made: tuple[_pd.DataFrame, Place] = _read(path, "TMY3", read, _tmy3_headed)
    return made


def read_pvgis(path: str | os.PathLike[str]) -> tuple[_pd.DataFrame, Place, float]:
    """The hours of a typical year of PVGIS, its place, and the time of its sun within the hour."""
    is_json = os.path.splitext(os.fspath(path))[1].lower() == ".json"

    def read(iotools: Any, copy: str) -> tuple[_pd.DataFrame, Place, float]:
        frame, meta = iotools.read_pvgis_tmy(copy)
        inputs = meta["inputs"]
        place = inputs.get("location", inputs)
        offset = place.get("irradiance_time_offset", inputs.get("irradiance time offset", 0.0))
        year = _one_year(frame)
        return year, _place(place, "latitude", "longitude", "elevation"), float(offset or 0.0)

    kind = "a typical year of PVGIS"
    made: tuple[_pd.DataFrame, Place, float] = (
        _read(path, kind, read) if is_json else _read(path, kind, read, _pvgis_headed)
    )
    return made
