"""The error of a failed import, with its cause."""

from __future__ import annotations

_AGAIN = (
    "install the package again with 'pip install .' in the source folder (it needs a C++20 "
    "compiler, CMake and SQLite)"
)
# Messages of the loaders of Linux, macOS and Windows for a library of the compiled part.
_NOT_FOUND = ("cannot open shared object file", "Library not loaded", "DLL load failed")
_OTHER_BUILD = ("undefined symbol", "Symbol not found", "' not found (required by", "invalid ELF")


def import_failure(error: ImportError) -> ImportError:
    """The error to raise in its place: a package, a shared library or the compiled part itself."""
    said, missing = str(error), (error.name or "").partition(".")[0]
    if isinstance(error, ModuleNotFoundError) and missing not in ("", "heatmatch"):
        message = f"heatmatch needs {missing}, which is not installed; pip install {missing}"
    elif any(words in said for words in _NOT_FOUND):
        message = (
            f"heatmatch's compiled part needs a shared library that is not found: {said}; install "
            f"that library, or {_AGAIN}"
        )
    elif any(words in said for words in _OTHER_BUILD):
        message = f"heatmatch's compiled part was built for other libraries: {said}; {_AGAIN}"
    elif missing == "heatmatch" and "_core" in said:
        message = f"heatmatch is installed without its compiled part; {_AGAIN}"
    else:
        message = f"heatmatch cannot be imported: {said}; {_AGAIN}"
    return ImportError(message, name=error.name, path=error.path)
