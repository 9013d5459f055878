"""The public classes hold compiled objects: here they are wrapped, and unwrapped."""

from __future__ import annotations

import ast
import inspect
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, ClassVar, Generic, NoReturn, TypeVar, overload
from weakref import WeakValueDictionary

from heatmatch import _core
from heatmatch._arguments import arguments_error
from heatmatch.text.plain import plain_line

if TYPE_CHECKING:
    from typing_extensions import Never, Self

T = TypeVar("T")
FACES: dict[type, type[Face]] = {}
# Existing instances: one compiled object has one face, so `ranking[0] is ranking[0]`.
_KNOWN: WeakValueDictionary[int, Face] = WeakValueDictionary()


class Face:
    """Base of the public classes; an instance holds one compiled object and copies nothing.

    Pickles, copies, comparison and hash are those of the compiled object.
    """

    __slots__ = ("__weakref__", "_core")
    _core: Any
    _compiled: ClassVar[Any]
    _made_by: ClassVar[str] = "a function of heatmatch"

    def __init_subclass__(cls, *, of: str = "") -> None:
        # Tracebacks, pickles and help() name the package, not the module of the class.
        cls.__module__ = "heatmatch"
        found = compiled_class(of or cls.__name__)
        if found is not None:  # otherwise a member of several classes
            cls._compiled = found
            FACES[found] = cls

    def __init__(self, *_: object, **__: object) -> None:
        raise TypeError(f"{type(self).__name__} has no constructor; it comes from {self._made_by}")

    @classmethod
    def _holding(cls, compiled: object) -> Self:
        """The instance that holds a compiled object."""
        face = cls.__new__(cls)
        face._hold(compiled)
        return face

    def _hold(self, compiled: object) -> None:
        self._core = compiled
        _KNOWN[id(compiled)] = self

    def _call(self, name: str, /, *arguments: Any, **options: Any) -> Any:
        """Result of a method of the compiled object, with public objects in and out."""
        return call(getattr(self._core, name), *arguments, **options)

    def __getstate__(self) -> object:
        return wrap(self._core.__getstate__())

    def __setstate__(self, state: object) -> None:
        compiled = self._compiled.__new__(self._compiled)
        compiled.__setstate__(unwrap(state))
        self._hold(compiled)

    def __eq__(self, other: object) -> bool:
        return bool(self._core == other._core) if isinstance(other, Face) else NotImplemented

    def __hash__(self) -> int:
        return hash(self._core)

    def __repr__(self) -> str:
        return plain_line(repr(self._core))


def compiled_class(name: str) -> Any:
    """The compiled class of a name, or None."""
    return getattr(_core, name, None)


class Held(Generic[T]):
    """A data field of the compiled object: an attribute with a docstring, which cannot be set."""

    def __init__(self, doc: str) -> None:
        self.__doc__ = doc
        self.name = ""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, face: None, owner: type) -> Self: ...
    @overload
    def __get__(self, face: Face, owner: type) -> T: ...
    def __get__(self, face: Face | None, owner: type) -> Any:
        return self if face is None else wrap(getattr(face._core, self.name))

    def __set__(self, face: Face, value: Never) -> NoReturn:
        raise AttributeError(f"{type(face).__name__}.{self.name} cannot be set")


def wrap(value: Any) -> Any:
    """The result of a compiled call, with compiled objects in their public classes."""
    kind = type(value)
    if kind is list or kind is tuple:
        return kind(map(wrap, value))
    face = FACES.get(kind)
    if face is None:
        return value
    known = _KNOWN.get(id(value))
    return known if known is not None and known._core is value else face._holding(value)


def unwrap(value: Any) -> Any:
    """Argument of a compiled call for a public object, or for a list, tuple or dict of them."""
    if isinstance(value, Face):
        return value._core
    kind = type(value)
    if kind is list or kind is tuple:
        return kind(map(unwrap, value))
    return {key: unwrap(one) for key, one in value.items()} if kind is dict else value


def compiled_call(compiled: Callable[..., Any], /, *arguments: Any, **options: Any) -> Any:
    """Result of a compiled function for public objects."""
    given = {name: unwrap(value) for name, value in options.items()}
    try:
        return compiled(*map(unwrap, arguments), **given)
    except TypeError as error:
        said = arguments_error(error, arguments, options)
        if said is error:
            raise
        raise said from None


def call(compiled: Callable[..., Any], /, *arguments: Any, **options: Any) -> Any:
    """The same, as public objects."""
    return wrap(compiled_call(compiled, *arguments, **options))


class Call:
    """A compiled function that accepts and returns public objects."""

    def __init__(self, compiled: Callable[..., Any]) -> None:
        self._compiled = compiled
        self.__name__ = self.__qualname__ = compiled.__name__
        self.__doc__ = compiled.__doc__
        self.__module__ = "heatmatch"

    def __call__(self, *arguments: Any, **options: Any) -> Any:
        return call(self._compiled, *arguments, **options)

    @property
    def __signature__(self) -> inspect.Signature:
        return _signature_of(str(self.__doc__).partition("\n")[0])

    def __repr__(self) -> str:
        return f"<compiled function {self.__name__}>"


# Types as a reader knows them, for those that the compiled library accepts.
_READ_AS = (
    ("typing.SupportsFloat | typing.SupportsIndex", "float"),
    ("typing.SupportsInt | typing.SupportsIndex", "int"),
    ("collections.abc.", ""),
    ("heatmatch._core.", ""),
)


def _signature_of(line: str) -> inspect.Signature:
    """The signature that begins the docstring of a compiled function."""
    for compiled, read in _READ_AS:
        line = line.replace(compiled, read)
    found = ast.parse(f"def {line}: ...").body[0]
    assert isinstance(found, ast.FunctionDef)
    given = found.args

    def parameter(argument: ast.arg, kind: Any, default: ast.expr | None) -> inspect.Parameter:
        value = inspect.Parameter.empty if default is None else ast.literal_eval(default)
        note = argument.annotation
        shown = inspect.Parameter.empty if note is None else ast.unparse(note)
        return inspect.Parameter(argument.arg, kind, default=value, annotation=shown)

    missing = [None] * (len(given.args) - len(given.defaults))
    named = inspect.Parameter.POSITIONAL_OR_KEYWORD
    only = inspect.Parameter.KEYWORD_ONLY
    positional = zip(given.args, [*missing, *given.defaults], strict=True)
    keywords = zip(given.kwonlyargs, given.kw_defaults, strict=True)
    returned = inspect.Signature.empty if found.returns is None else ast.unparse(found.returns)
    return inspect.Signature(
        [
            *(parameter(one, named, default) for one, default in positional),
            *(parameter(one, only, default) for one, default in keywords),
        ],
        return_annotation=returned,
    )
