"""Writes levigate/_core.pyi, the types of the module: python bindings/stubs.py [--check].

All of it is read off the built module, from the signatures in its docstrings. What these cannot say
stands below. --check writes nothing and ends with 1 where the file is not what would be written.
"""

from __future__ import annotations

import ast
import inspect
import re
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:] = [path for path in sys.path if Path(path or ".").resolve() != HERE]  # the one built, not that beside

from levigate import _core  # noqa: E402

STUB = HERE / "levigate" / "_core.pyi"
WIDTH = 100

HEAD = '''\
# Written by bindings/stubs.py from the module.
import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, Literal, TypedDict, final, overload

import numpy as np
import numpy.typing as npt
from matplotlib.figure import Figure

_Path = str | os.PathLike[str]
_Number = float | np.floating[Any] | np.integer[Any]
_Numbers = (
    npt.NDArray[np.floating[Any]]
    | npt.NDArray[np.integer[Any]]
    | Sequence[float]
    | Sequence[Sequence[float]]
)
_Given = _Number | _Numbers
_Array = npt.NDArray[np.float64]

class _Source(TypedDict):
    basis: str
    citation: str
'''

# How a signature spells a type, and how the stub does.
SPELLINGS = (
    (r"levigate\._core\.|collections\.abc\.|pathlib\.(?=Path)|typing\.(?=Literal)", ""),
    (r"typing\.SupportsFloat \| typing\.SupportsIndex", "float"),
    (r"typing\.SupportsInt \| typing\.SupportsIndex", "int"),
    (r"os\.PathLike \| str \| bytes", "_Path"),
    (r"typing\.Annotated\[(.+?), 'FixedSize\(\d+\)'\]", r"\1"),
    (r"float \| numpy\.ndarray", "_Given"),
    (r"numpy\.typing\.NDArray\[numpy\.float64\]", "_Array"),
    (r"numpy\.typing\.NDArray\[numpy\.", "npt.NDArray[np."),
    (r"\bdict\b(?!\[)", "dict[str, Any]"),
)
# Arguments that take an array of numpy as well.
ARRAYS_TOO = {
    "Sequence[float]": "Sequence[float] | _Array",
    "Sequence[str]": "Sequence[str] | npt.NDArray[np.str_]",
}
# What no signature says: types of attributes and results.
TYPES = {"Grade.sources": "dict[str, _Source]", "Plan.plot": "Figure", "plan_many": "list[Plan | Error]"}
UNITS = {"units": 'Literal["metric", "us"]'}
COATS = {"coats": "int | Sequence[Coat | dict[str, Any]]"}
ARGUMENT_TYPES = {
    "Plan.plot": {
        "picture": 'Literal["film", "gloss", "ladder", "minutes", "section", "tradeoff"] | None',
        "simulation": "Simulation | None",
        "save": "_Path | None",
    },
    "Plan.bench_sheet": UNITS,
    "Film.__init__": COATS,
    "Film.__replace__": COATS,
    "Plan.bench_sheet_html": UNITS,
}
SHOWN = {"__init__", "__replace__", "__len__", "__iter__", "__contains__", "__getitem__", "_repr_html_"}  # beside the names without an underscore
# What a result hangs on.
OVERLOADS = {
    "source": [
        "def source(name: str, field: None = None) -> Formula: ...",
        "def source(name: str, field: str) -> Sourced: ...",
    ]
}


def spelled(annotation: ast.expr | None) -> str:
    text = ast.unparse(annotation) if annotation else "Any"
    for pattern, spelling in SPELLINGS:
        text = re.sub(pattern, spelling, text)
    return text.replace("'", '"')


def signatures(function: object) -> list[ast.FunctionDef]:
    """The signatures in a docstring; none where it has none."""
    found = []
    for line in (function.__doc__ or "").splitlines():
        match = re.match(r"(?:\d+\. )?(\w*)(\(.*\) -> .+)$", line)
        if match and not line.startswith(" "):
            text = f"def {match[1] or 'get'}{match[2]}: ..."
            parsed = ast.parse(text.replace(", /)", ")")).body[0]
            assert isinstance(parsed, ast.FunctionDef)
            found.append(parsed)
            if not line.startswith(tuple("123456789")):
                break
    return found


class Argument:
    """One argument as the stub writes it."""

    def __init__(self, name: str, type_: str | None = None, default: str | None = None) -> None:
        self.name, self.type, self.default = name, type_, default

    def __str__(self) -> str:
        text = self.name + (f": {self.type}" if self.type else "")
        return text + (f" = {self.default}" if self.default is not None else "")


def arguments(function: ast.FunctionDef) -> list[Argument]:
    given, result = function.args, []
    defaults = [None] * (len(given.args) - len(given.defaults)) + list(given.defaults)
    named = [*zip(given.args, defaults)]
    if given.kwonlyargs:
        named += [(ast.arg("*"), None), *zip(given.kwonlyargs, given.kw_defaults)]
    for argument, default in named:
        if argument.arg in ("self", "*"):
            result.append(Argument(argument.arg))
            continue
        type_ = spelled(argument.annotation)
        text = ast.unparse(default).replace("'", '"') if default else None
        result.append(Argument(argument.arg, ARRAYS_TOO.get(type_, type_), "()" if text == "[]" else text))
    return result


def written(name: str, given: list[Argument], result: str, indent: str) -> list[str]:
    """A function in as few lines as its width allows."""
    texts = [str(argument) for argument in given]
    line = f"{indent}def {name}({', '.join(texts)}) -> {result}: ..."
    if len(line) <= WIDTH:
        return [line]
    inner = f"{indent}    {', '.join(texts)}"
    middle = [inner] if len(inner) <= WIDTH else [f"{indent}    {text}," for text in texts]
    return [f"{indent}def {name}(", *middle, f"{indent}) -> {result}: ..."]


def of_numbers(name: str, given: list[Argument], result: str, indent: str) -> list[str]:
    """A function of numbers: of numbers a number, of arrays an array."""
    one, many = ("float", "_Array") if result == "_Given" else result.split(" | ")
    numbers = [a for a in given if a.type == "_Given"]
    lines = []
    several = len(numbers) > 1
    for type_, made in (("_Number", one), ("_Given" if several else "_Numbers", many)):
        made += " | Any" if type_ == "_Given" else ""
        copies = [Argument(a.name, type_ if a in numbers else a.type, a.default) for a in given]
        lines += [f"{indent}@overload", *written(name, copies, made, indent)]
    return lines


def function_lines(name: str, function: object, owner: type | None = None, static: bool = False) -> list[str]:
    indent = "    " if owner else ""
    place = f"{owner.__name__}.{name}" if owner else name
    if place in OVERLOADS:
        return [line for text in OVERLOADS[place] for line in (f"{indent}@overload", indent + text)]
    found, lines = signatures(function), []
    for signature in found:
        given, result = arguments(signature), TYPES.get(place, spelled(signature.returns))
        if signature.args.kwarg:  # the arguments that make what it returns
            making = signatures(getattr(_core, result).__init__)[0]
            makes = arguments_of_init(getattr(_core, result), making)[1:]
            optional = name == "__replace__"
            given += [Argument(a.name, a.type, "..." if optional and a.type else a.default) for a in makes]
        elif owner and name == "__init__":
            given = arguments_of_init(owner, signature)
        for argument in given:
            argument.type = ARGUMENT_TYPES.get(place, {}).get(argument.name, argument.type)
        if any(a.type == "_Given" for a in given) and (result == "_Given" or result.count(" | ") == 1):
            lines += of_numbers(name, given, result, indent)
            continue
        lines += [f"{indent}@overload"] if len(found) > 1 else []
        lines += [f"{indent}@staticmethod"] if static else []
        lines += written(name, given, result, indent)
    return lines


def arguments_of_init(owner: type, signature: ast.FunctionDef) -> list[Argument]:
    """Arguments that are named as an attribute with a choice take that choice."""
    given = arguments(signature)
    for argument in given:
        attribute = vars(owner).get(argument.name)
        if argument.type == "str" and isinstance(attribute, property):
            type_ = property_type(owner, argument.name, attribute)
            argument.type = type_ if type_.startswith("Literal[") else argument.type
    return given


def property_type(owner: type, name: str, value: property) -> str:
    """A text whose docstring begins with a quoted word is one of those quoted there."""
    place, doc = f"{owner.__name__}.{name}", value.__doc__ or ""
    type_ = TYPES.get(place) or spelled(signatures(value.fget)[0].returns)
    if type_ == "str" and doc.startswith('"'):
        return "Literal[" + ", ".join(re.findall('"[^"]+"', doc)) + "]"
    return type_


def class_lines(owner: type) -> list[str]:
    lines = []
    for name, value in vars(owner).items():
        if isinstance(value, property):
            lines += ["    @property", f"    def {name}(self) -> {property_type(owner, name, value)}: ..."]
        elif name in SHOWN or not name.startswith("_") and inspect.isroutine(getattr(owner, name)):
            lines += function_lines(name, getattr(owner, name), owner, isinstance(value, staticmethod))
    return ["", "@final", f"class {owner.__name__}:", *lines]


def exception_lines(owner: type[Exception]) -> list[str]:
    base = owner.__base__
    assert base
    line = f"class {owner.__name__}({base.__name__}):"
    if base is not ValueError:
        return [line + " ..."]
    lines = ["    code: int"]
    for name, value in vars(owner).items():
        said = vars(_core.Fault).get(name)
        if isinstance(value, property):
            lines += ["    @property", f"    def {name}(self) -> {property_type(owner, name, value)}: ..."]
        elif isinstance(said, property):
            lines.append(f"    {name}: {property_type(_core.Fault, name, said)}")
    return ["", line, *lines, ""]


def stub() -> str:
    lines = ["", "__version__: str"]
    for name, value in vars(_core).items():
        if inspect.isclass(value):
            lines += exception_lines(value) if issubclass(value, Exception) else class_lines(value)
        elif inspect.isroutine(value) and not name.startswith("_"):
            defined = function_lines(name, value)
            after = lines[-1].startswith(("def ", ") ->"))
            lines += defined if after else ["", *defined]
        elif not name.startswith("_"):
            kind = type(value).__name__
            if isinstance(value, tuple):
                kind = f"tuple[{type(value[0]).__name__}, ...]"
            lines += ["", f"{name}: {kind}"]
    return HEAD + "\n".join(lines) + "\n"


def main(*options: str) -> int:
    text = stub()
    if options != ("--check",):
        STUB.write_text(text)
        return 0
    if STUB.read_text() == text:
        return 0
    print(f"{STUB} is not what {Path(__file__).name} writes of the module", file=sys.stderr)
    return 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
