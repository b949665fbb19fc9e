"""How a frozen record becomes plain JSON data and comes back, driven by the annotations of its class.

The form is unique. A field is left out exactly when it holds its default and that default says nothing (None, empty
text, an empty list, False); every other field is written. Reading refuses a field that should have been left out, as
it refuses a field it does not know, so that one record has one form. Annotations are resolved once for each class.
"""

# ruff: noqa: ANN401 - values of every type pass through here; the annotations of their classes say which

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Callable, Mapping
from typing import Any, Final, Generic, TypeVar

from witnessmark.journal.canonical import LARGEST_WHOLE

__all__ = ["Field", "Misfit", "MissingField", "Shape", "UnknownField", "path_to", "shape_of"]


class Misfit(Exception):  # noqa: N818 - it is caught and told as a problem, never shown as an error
    """A value that a field does not allow.

    Attributes:
        path: the field, with the fields it stands in before it (``body.count.checked``).
        allowed: what may stand there, in words.
        got: what stands there, shortened.
    """

    def __init__(self, path: str, allowed: str, got: object) -> None:
        super().__init__(path, allowed, got)
        self.path = path
        self.allowed = allowed
        self.got = ascii(got)
        if len(self.got) > 80:  # noqa: PLR2004 - enough to recognise the value, short enough for one line
            self.got = self.got[:77] + "..."

    def __str__(self) -> str:
        return f"{self.path} allows {self.allowed}; it holds {self.got}"


class UnknownField(Misfit):
    """A field that the record does not have."""

    def __str__(self) -> str:
        return f"{self.path} is not known; allowed are {self.allowed}"


class MissingField(Misfit):
    """A field that the record must have."""

    def __str__(self) -> str:
        return f"{self.path} is missing; it holds {self.allowed}"


T = TypeVar("T")
Way = Callable[[Any, str], Any]
_SILENT: Final = (None, "", (), False)


@dataclasses.dataclass(frozen=True, slots=True)
class Field:
    """One field of a record: how it is read and written, and when it is left out.

    ``words`` says what it allows; ``silent``: it is left out while it holds ``default``.
    """

    name: str
    annotation: Any
    words: str
    default: Any
    required: bool
    silent: bool
    read: Way
    write: Way


class Shape(Generic[T]):
    """The fields of one class, and both directions between its objects and plain data."""

    def __init__(self, cls: type[T]) -> None:
        self.cls = cls
        hints = typing.get_type_hints(cls)
        specs = dataclasses.fields(typing.cast("Any", cls))
        self.fields = tuple(_field(spec, hints[spec.name]) for spec in specs)
        self.by_name = {field.name: field for field in self.fields}
        self._always = frozenset(field.name for field in self.fields if not field.silent)

    def read(self, plain: object, path: str) -> T:
        """The object that plain data describes. Raises ``Misfit``."""
        if type(plain) is not dict:
            raise Misfit(path, "an object", plain)
        by_name = self.by_name
        values: dict[str, Any] = {}
        for name, value in plain.items():
            field = by_name.get(name)
            if field is None:
                raise UnknownField(path_to(path, name), ", ".join(by_name), value)
            values[name] = item = field.read(value, path)
            if field.silent and item == field.default:
                raise Misfit(path_to(path, name), "nothing: it is left out when it says nothing", value)
        if not self._always <= values.keys():
            name = next(field.name for field in self.fields if field.name in self._always - values.keys())
            raise MissingField(path_to(path, name), by_name[name].words, None)
        return self.cls(**values)

    def write(self, record: object, path: str) -> dict[str, Any]:
        """The plain data of an object, its types checked as in reading. Raises ``Misfit``."""
        if type(record) is not self.cls:
            raise Misfit(path, f"a {self.cls.__name__}", record)
        plain: dict[str, Any] = {}
        for field in self.fields:
            value = getattr(record, field.name)
            if not field.silent or value != field.default or type(value) is not type(field.default):
                plain[field.name] = field.write(value, path)
        return plain


_known: Final[dict[type, Shape[Any]]] = {}


def shape_of(cls: type[T]) -> Shape[T]:
    """The shape of a dataclass, worked out once."""
    shape = _known.get(cls)
    if shape is None:
        shape = _known[cls] = Shape(cls)
    return shape


def path_to(path: str, name: str) -> str:
    """The name of a field within the one at *path*, safe to print whatever the name holds."""
    if not (name.isascii() and name.isidentifier()):
        name = ascii(name)
    return f"{path}.{name}" if path else name


def _field(spec: dataclasses.Field[Any], annotation: Any) -> Field:
    default = spec.default
    required = default is dataclasses.MISSING and spec.default_factory is dataclasses.MISSING
    silent = any(default is quiet or (type(default) is type(quiet) and default == quiet) for quiet in _SILENT)
    read, write, words = _ways(spec.name, annotation)
    return Field(spec.name, annotation, words, None if required else default, required, silent, read, write)


def _ways(name: str, annotation: Any) -> tuple[Way, Way, str]:
    """Reading, writing, and words for what an annotation allows."""
    origin = typing.get_origin(annotation)
    if annotation in _PLAIN:
        check, words = _PLAIN[annotation]
        return _checked(name, check, words)
    if origin is tuple:
        item, _ = typing.get_args(annotation)
        return _listed(name, item)
    if origin is types.UnionType:
        options = [option for option in typing.get_args(annotation) if option is not types.NoneType]
        if len(options) == 1:
            return _ways(name, options[0])
        return _left_open(name)
    if dataclasses.is_dataclass(annotation):
        return _nested(name, typing.cast("type[Any]", annotation))
    raise TypeError(f"{name}: no JSON form is defined for {annotation}")


def _is_text(value: object) -> bool:
    return type(value) is str


def _is_whole(value: object) -> bool:
    return type(value) is int and 0 <= value <= LARGEST_WHOLE


def _is_truth(value: object) -> bool:
    return type(value) is bool


_PLAIN: Final[Mapping[Any, tuple[Callable[[object], bool], str]]] = {
    str: (_is_text, "text"),
    int: (_is_whole, f"a whole number from 0 to {LARGEST_WHOLE}"),
    bool: (_is_truth, "true or false"),
}


def _checked(name: str, check: Callable[[object], bool], words: str) -> tuple[Way, Way, str]:
    def pass_on(value: Any, path: str) -> Any:
        if check(value):
            return value
        raise Misfit(path_to(path, name), words, value)

    return pass_on, pass_on, words


def _nested(name: str, cls: type[Any]) -> tuple[Way, Way, str]:
    def read(value: Any, path: str) -> Any:
        return shape_of(cls).read(value, path_to(path, name))

    def write(value: Any, path: str) -> Any:
        return shape_of(cls).write(value, path_to(path, name))

    return read, write, f"an object of {', '.join(field.name for field in dataclasses.fields(cls))}"


def _listed(name: str, item: Any) -> tuple[Way, Way, str]:
    read_item, write_item, words = _ways(name, item)

    def read(value: Any, path: str) -> Any:
        if type(value) is not list:
            raise Misfit(path_to(path, name), f"a list, each {words}", value)
        return tuple([read_item(one, path) for one in value])

    def write(value: Any, path: str) -> Any:
        if type(value) is not tuple:
            raise Misfit(path_to(path, name), f"a tuple, each {words}", value)
        return [write_item(one, path) for one in value]

    return read, write, f"a list, each {words}"


def _left_open(name: str) -> tuple[Way, Way, str]:
    """A choice of classes cannot be told from plain data alone; who knows which it is reads it (the codec does)."""

    def pass_on(value: Any, path: str) -> Any:
        del path
        return value

    return pass_on, pass_on, f"what {name} says"
