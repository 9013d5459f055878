"""Docstrings of public functions: whole numpydoc, with examples that run."""

from __future__ import annotations

import builtins
import dataclasses
import doctest
import inspect
import io
import re
from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import pytest
from heatmatch._faces import Call, Face, Held
from heatmatch.io import rankings

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")

MODULES = {"hm": hm, "hm.plot": hm.plot, "hm.weather": hm.weather}
FUNCTIONS: dict[str, Callable[..., Any]] = {
    f"{place}.{name}": getattr(module, name)
    for place, module in MODULES.items()
    for name in module.__all__
    if inspect.isroutine(getattr(module, name)) or isinstance(getattr(module, name), Call)
}
FACES: dict[str, type] = {
    name: thing
    for name, thing in ((name, getattr(hm, name)) for name in hm.__all__)
    if inspect.isclass(thing) and issubclass(thing, Face)
}


def face_methods(cls: type) -> dict[str, Callable[..., Any]]:
    """Public methods of a class of Python, those it shares with others too."""
    found = {name: getattr(cls, name) for name in dir(cls) if not name.startswith("_")}
    return {name: thing for name, thing in found.items() if inspect.isroutine(thing)}


FUNCTIONS |= {
    f"hm.{place}.{name}": method
    for place, cls in FACES.items()
    for name, method in face_methods(cls).items()
}
DATA = [
    cls for cls in map(rankings.__dict__.get, rankings.__all__) if dataclasses.is_dataclass(cls)
]
# Public callables that named all their parameters when this was counted: raise it, never lower it.
FLOOR = 142
SELF = ("self", "cls")
# As pybind11 writes one, before the docstring.
SIGNATURE = re.compile(r"^(?:\d+\. )?\w+\(.*$", re.MULTILINE)
# Unit suffix of a name, the longest first, and the unit in a docstring.
UNITS = {
    "_w_m2k_per_ms": "W/m2K per m/s",
    "w_per_cm": "W/cm",
    "_a_per_k": "A/K",
    "_w_m2k": "W/m2K",
    "_w_m2": "W/m2",
    "_w_mk": "W/mK",
    "_m_s": "m/s",
    "_w_k": "W/K",
    "_per_k": "1/K",
    "_conductance_s": "S",
    "_deg": "deg",
    "_ohm": "ohm",
    "_mm": "mm",
    "_ev": "eV",
    "_hour": "h",
    "_c": "°C",
    "_k": "K",
    "_w": "W",
    "_v": "V",
    "_a": "A",
    "_h": "h",
    "_s": "s",
    "_m": "m",
}
each_function = pytest.mark.parametrize("name", FUNCTIONS)


def unit_of(parameter: str) -> str:
    """The unit in a name; None without one."""
    return next((unit for end, unit in UNITS.items() if parameter.endswith(end)), "")


def text_of(thing: object) -> str:
    """A docstring without the signatures that pybind11 puts before it."""
    text = inspect.getdoc(thing) or ""
    if not inspect.isfunction(getattr(thing, "__func__", thing)):
        text = SIGNATURE.sub("", text.replace("Overloaded function.", ""))
    return text.strip()


def sections_of(thing: object) -> dict[str, list[str]]:
    """The underlined sections of a docstring; what comes before the first is named ``""``."""
    lines = text_of(thing).splitlines() or [""]
    found: dict[str, list[str]] = {"": []}
    title = ""
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        if line and below == "-" * len(line):
            title = line
            found[title] = []
        elif not (title and line == "-" * len(title)):
            found[title].append(line)
    return found


def entries_of(section: list[str]) -> dict[str, str]:
    """Name -> type and description of each entry; "a, b : type" makes two."""
    found: dict[str, str] = {}
    names: list[str] = []
    for line in section:
        if line and not line.startswith(" "):
            head, _, kind = line.partition(" : ")
            names = [name.lstrip("*") for name in head.split(", ")]
            found |= dict.fromkeys(names, kind)
        else:
            found |= {name: f"{found[name]}\n{line.strip()}".rstrip() for name in names}
    return found


def bound_parameters(signature: str) -> list[str]:
    """Names in a signature as pybind11 writes it, without self, ``*`` and ``/``."""
    inside, depth = "", 0
    for sign in signature.split("(", 1)[1]:
        depth += {"(": 1, "[": 1, "{": 1, ")": -1, "]": -1, "}": -1}.get(sign, 0)
        if depth < 0:
            break
        inside += sign if depth == 0 else ""
    names = [part.split(":")[0].split("=")[0].strip() for part in inside.split(", ")]
    return [name for name in names if name.isidentifier() and name != "self"]


def parameters_of(function: Callable[..., Any]) -> list[str]:
    """Parameters of a function of Python, or of all overloads of a compiled one."""
    function = getattr(function, "__func__", function)
    if inspect.isfunction(function):
        return [name for name in inspect.signature(function).parameters if name not in SELF]
    signatures = SIGNATURE.findall(function.__doc__ or "")
    return list(dict.fromkeys(name for one in signatures for name in bound_parameters(one)))


def public_callables() -> Iterator[tuple[str, Callable[..., Any]]]:
    """Every public function, and every public method of a public class; compiled ones too."""
    for place, module in MODULES.items():
        for name in module.__all__:
            thing = getattr(module, name)
            if inspect.isroutine(thing) or isinstance(thing, Call):
                yield f"{place}.{name}", thing
            elif name in FACES:
                for member, method in face_methods(thing).items():
                    yield f"{place}.{name}.{member}", method
            elif inspect.isclass(thing):
                for member in vars(thing):
                    if not member.startswith("_") and inspect.isroutine(getattr(thing, member)):
                        yield f"{place}.{name}.{member}", getattr(thing, member)


def returns_of(function: Callable[..., Any]) -> str:
    """The return type in a signature."""
    if inspect.isfunction(function):
        return str(inspect.signature(function).return_annotation)
    return SIGNATURE.findall(function.__doc__ or "")[0].rpartition(" -> ")[2]


CALLABLES = dict(public_callables())
CONSTRUCTORS = {
    f"hm.{name}.__init__": getattr(hm, name).__init__
    for name in hm.__all__
    if inspect.isclass(getattr(hm, name))
}
CLASSES = {
    f"hm.{name}": getattr(hm, name) for name in hm.__all__ if inspect.isclass(getattr(hm, name))
}
WRITTEN = CALLABLES | CONSTRUCTORS | CLASSES
WITH_EXAMPLES = [name for name, thing in WRITTEN.items() if ">>>" in text_of(thing)]
DESCRIBED = [
    name for name, thing in (CALLABLES | CONSTRUCTORS).items() if "Parameters" in sections_of(thing)
]
# The fields of a part, given as keywords, have no name in a signature of pybind11.
NAMED = [name for name in DESCRIBED if parameters_of(WRITTEN[name])]


@each_function
def test_the_summary_is_one_imperative_sentence(name: str) -> None:
    first, *rest = sections_of(FUNCTIONS[name])[""]
    assert first.endswith(".")
    assert first[0].isupper()
    assert not re.search(r"[^s]s$", first.split()[0]), "write it in the imperative"
    assert not rest or rest[0] == ""


@pytest.mark.parametrize("name", list(dict.fromkeys([*FUNCTIONS, *NAMED])))
def test_every_parameter_is_described_in_the_order_of_the_signature(name: str) -> None:
    described = entries_of(sections_of(WRITTEN[name]).get("Parameters", []))
    assert list(described) == parameters_of(WRITTEN[name])
    for parameter, text in described.items():
        kind, _, meaning = text.partition("\n")
        assert kind, f"{parameter} has no type"
        assert meaning, f"{parameter} has no description"


@each_function
def test_the_result_is_described(name: str) -> None:
    returned = returns_of(FUNCTIONS[name])
    assert ("Returns" in sections_of(FUNCTIONS[name])) == (returned != "None")


@pytest.mark.parametrize("name", DESCRIBED)
def test_a_parameter_has_the_unit_that_its_name_says(name: str) -> None:
    for parameter, text in entries_of(sections_of(WRITTEN[name])["Parameters"]).items():
        unit = unit_of(parameter)
        assert not unit or f"[{unit}]" in text, f"{parameter}: [{unit}] is missing"


@each_function
def test_raised_errors_exist_and_sources_are_in_the_bibliography(name: str) -> None:
    sections = sections_of(FUNCTIONS[name])
    for error, text in entries_of(sections.get("Raises", [])).items():
        assert issubclass(getattr(hm, error, None) or getattr(builtins, error), Exception)
        assert text.strip(), f"{error} has no description"
    assert set(entries_of(sections.get("References", []))) <= set(hm.sources())


@pytest.mark.parametrize("cls", DATA, ids=lambda cls: cls.__name__)
def test_every_field_of_a_result_is_an_attribute(cls: Any) -> None:
    described = entries_of(sections_of(cls)["Attributes"])
    fields = {field.name for field in dataclasses.fields(cls)}
    assert set(described) == fields
    assert all("\n" in text for text in described.values())


@pytest.mark.parametrize("name", FACES)
def test_a_class_and_its_attributes_are_described(name: str) -> None:
    cls = FACES[name]
    assert sections_of(cls)[""][0].endswith(".")
    if "__init__" in vars(cls):
        assert list(entries_of(sections_of(cls)["Parameters"])) == parameters_of(cls.__init__)
    for member in dir(cls):
        thing = inspect.getattr_static(cls, member)
        if isinstance(thing, (Held, property)):
            first, *_ = (inspect.getdoc(thing) or "").splitlines()
            assert first[0].isupper() or first[0] == '"', f"{name}.{member}"
            assert first.split()[0] not in ("Return", "Compute", "Get", "The"), f"{name}.{member}"


def test_every_plot_has_an_example() -> None:
    plots = [name for name in FUNCTIONS if name.startswith("hm.plot.")]
    assert len(plots) > 10
    assert not set(plots) - set(WITH_EXAMPLES)


@pytest.mark.parametrize("name", WITH_EXAMPLES)
def test_the_example_runs_and_prints_what_it_says(name: str) -> None:
    example = doctest.DocTestParser().get_doctest(text_of(WRITTEN[name]), {}, name, None, 0)
    said = io.StringIO()
    runner = doctest.DocTestRunner(optionflags=doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE)
    try:
        result = runner.run(example, out=said.write)
    finally:
        plt.close("all")
    assert result.attempted > 0
    assert result.failed == 0, said.getvalue()


def test_no_fewer_callables_name_all_their_parameters_than_before(
    record_property: Callable[[str, object], None],
) -> None:
    wanted = {name: parameters_of(thing) for name, thing in CALLABLES.items()}
    with_parameters = {name: names for name, names in wanted.items() if names}
    whole = [
        name
        for name, thing in CALLABLES.items()
        if name in with_parameters
        and set(with_parameters[name]) <= set(entries_of(sections_of(thing).get("Parameters", [])))
    ]
    told = f"{len(whole)} of {len(with_parameters)} public callables name all their parameters"
    record_property("told", f"docstrings: {told}")
    assert len(whole) >= FLOOR, told
