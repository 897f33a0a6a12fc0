"""The pages of the Python reference, for Sphinx: each name of the installed module, its types as the stub has them.

A name stands on the page of the area whose header declares the same name in C++, and links to that. What C++ has no
name for stands on the first page. Docstrings are plain text: a word with () is a link, `>>>` begins an example.
"""

from __future__ import annotations

import ast
import importlib
import inspect
import pkgutil
import re
import xml.etree.ElementTree as ET
from pathlib import Path
from types import ModuleType

import levigate
from headers import source_page

# How the stub spells a type, and how a reader does.
SPELLINGS = {
    r"npt\.NDArray\[np\.\w+\]": "ndarray",
    r"\b_Array\b": "ndarray",
    r"\b_Numbers\b": "ArrayLike",
    r"\b_Given\b": "float | ArrayLike",
    r"\b_Number\b": "float",
    r"\b_?Path\b": "str | PathLike",
    r"\b_Source\b": "dict[str, str]",
    r"\bDraw\b": "Callable",
}

TITLES = {"base": "Shared", "io": "Files"}

Signatures = dict[str, list[str]]


def spelled(text: str) -> str:
    for stub, word in SPELLINGS.items():
        text = re.sub(stub, word, text)
    return text


def read_stub(path: Path) -> tuple[Signatures, dict[str, str]]:
    """Of each function `name` or `Class.name` its signatures, of each attribute its type."""
    signatures: Signatures = {}
    types: dict[str, str] = {}

    def function(node: ast.FunctionDef, place: str) -> None:
        given = node.args
        if "." in place and given.args and given.args[0].arg == "self":
            given.args = given.args[1:]
        result = f" -> {ast.unparse(node.returns)}" if node.returns and node.name != "__init__" else ""
        signatures.setdefault(place, []).append(spelled(f"({ast.unparse(given)}){result}"))

    def walk(body: list[ast.stmt], owner: str) -> None:
        for node in body:
            if isinstance(node, ast.ClassDef):
                walk(node.body, f"{node.name}.")
            elif isinstance(node, ast.FunctionDef):
                marks = [ast.unparse(mark) for mark in node.decorator_list]
                if "property" in marks and node.returns:
                    types[owner + node.name] = spelled(ast.unparse(node.returns))
                else:
                    function(node, owner + node.name)
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                types[owner + node.target.id] = spelled(ast.unparse(node.annotation))

    walk(ast.parse(path.read_text(encoding="utf-8")).body, "")
    return signatures, types


class Names:
    """Where C++ documents a name: area and address, out of the tag file of Doxygen."""

    def __init__(self, tags: Path) -> None:
        self.area: dict[str, str] = {}
        self.address: dict[str, str] = {}
        groups = {}
        for compound in ET.parse(tags).getroot().iter("compound"):
            title, file = compound.findtext("name", ""), compound.findtext("filename", "")
            if compound.get("kind") == "group":
                groups[title] = compound
            elif compound.get("kind") in ("struct", "class"):
                self.address[title.removeprefix("levigate::")] = file
        for title, group in groups.items():
            if not title.startswith("header_"):
                continue
            area = group.findtext("title", "").partition("/")[0]
            area = "base" if area.endswith(".hpp") else area
            for inner in group.findall("class"):
                self.area[(inner.text or "").removeprefix("levigate::")] = area
            for member in group.findall("member"):
                name = member.findtext("name", "")
                self.area.setdefault(name, area)
                if member.get("kind") == "function":
                    address = f"{member.findtext('anchorfile')}#{member.findtext('anchor')}"
                    self.address.setdefault(name, address)


# Docstrings


def texts(doc: str) -> list[str]:
    """What a docstring says without its signatures: one text, or one of each overload."""
    doc = inspect.cleandoc(doc)
    if "\nOverloaded function.\n" in doc:
        return [part.strip() for part in re.split(r"^\d+\. \w+\(.*$", doc, flags=re.MULTILINE)[1:]]
    return [re.sub(r"\A\w+\(.*\) -> .*\n*", "", doc).strip()]


def escaped(text: str) -> str:
    """Plain text as reStructuredText: code, functions and tables as links, and signs that mean themselves."""
    parts = re.split(r"(`[^`]*`|(?<![\w.])\w+\(\)|data/(?:profiles|standards)/[\w/-]+\.json)", text)
    for at, part in enumerate(parts):
        if at % 2 == 0:
            parts[at] = re.sub(r"[\\*|<>]|(?<=\w)_(?!\w)", r"\\\g<0>", part)
        elif part.startswith("`"):
            parts[at] = f"`{part}`"
        elif part.startswith("data/"):
            parts[at] = f"`{part} <../{source_page(part)}.html>`__"
        else:
            name = part.removesuffix("()")
            known = callable(getattr(levigate, name, None))
            parts[at] = f":py:func:`{name}`" if known else f"``{part}``"
    return "".join(parts)


def paragraphs(text: str) -> list[str]:
    """The lines of a docstring; an example stays as it is."""
    found: list[str] = []
    for part in re.split(r"\n\s*\n", text):
        found += part.split("\n") if part.lstrip().startswith(">>>") else [escaped(line) for line in part.split("\n")]
        found.append("")
    return found


def indented(lines: list[str]) -> list[str]:
    return ["   " + line if line else "" for line in lines]


def entry(kind: str, name: str, signatures: list[str], body: list[str], more: str = "") -> list[str]:
    head = [f".. py:{kind}:: {name}{signatures[0] if signatures else ''}"]
    head += [" " * len(f".. py:{kind}:: ") + name + one for one in signatures[1:]]
    return [*head, *([f"   {more}"] if more else []), "", *indented(body), ""]


# The pages


class Pages:
    def __init__(self, package: Path, tags: Path, areas: dict[str, str]) -> None:
        self.signatures, self.types = read_stub(package / "_core.pyi")
        self.cpp = Names(tags)
        self.areas = areas

    def in_cpp(self, name: str) -> list[str]:
        address = self.cpp.address.get(name)
        return [f"In C++: `levigate::{name} <../{address}>`__.", ""] if address else []

    def function(self, name: str, kind: str, place: str, doc: str) -> list[str]:
        """One entry, or one of each overload that says something of its own."""
        signatures, said = self.signatures[place], texts(doc)
        option = ""
        if len(said) > 1 and len(said) == len(signatures):
            lines: list[str] = []
            for number, (signature, text) in enumerate(zip(signatures, said, strict=True)):
                link = self.in_cpp(name) if kind == "function" and number == 0 else []
                option = ":noindex:" if number else ""
                lines += entry(kind, name, [signature], paragraphs(text) + link, option)
            return lines
        link = self.in_cpp(name) if kind == "function" else []
        body = [line for text in said for line in paragraphs(text)]
        return entry(kind, name, list(dict.fromkeys(signatures)), body + link)

    def of_class(self, name: str, owner: type) -> list[str]:
        body = paragraphs(inspect.getdoc(owner) or "") + self.in_cpp(name)
        for member, value in vars(owner).items():
            place = f"{name}.{member}"
            if place in self.types:
                said = paragraphs(inspect.cleandoc(value.__doc__ or ""))
                body += entry("attribute", member, [], said, f":type: {self.types[place]}")
            elif place in self.signatures and not member.startswith("_"):
                static = isinstance(value, staticmethod)
                of = getattr(owner, member)
                lines = self.function(member, "method", place, of.__doc__ or "")
                if static:
                    lines.insert(1, "   :staticmethod:")
                body += lines
        kind = "exception" if issubclass(owner, Exception) else "class"
        made = list(dict.fromkeys(self.signatures.get(f"{name}.__init__", [])))
        return entry(kind, name, made if kind == "class" else [], body)

    def of_name(self, name: str) -> list[str]:
        value = getattr(levigate, name)
        if inspect.isclass(value):
            return self.of_class(name, value)
        if inspect.isroutine(value):
            return self.function(name, "function", name, value.__doc__ or "")
        return entry("data", name, [], [f"``{value!r}``"], f":type: {self.types[name]}")

    def of_module(self, module: ModuleType) -> str:
        """A module of pictures: each of its names out of the source that defines it."""
        lines = [module.__name__, "=" * len(module.__name__), "", f".. py:module:: {module.__name__}", ""]
        lines += paragraphs(inspect.getdoc(module) or "")
        for name in module.__all__:
            value = getattr(module, name)
            source = inspect.getsourcefile(value if callable(value) else module)
            assert source
            self.signatures, self.types = read_stub(Path(source))
            if callable(value):
                lines += self.function(name, "function", name, value.__doc__ or "")
            else:
                held = ["Holds " + ", ".join(f"``{one!r}``" for one in value) + "."]
                lines += entry("data", name, [], held, f":type: {self.types[name]}")
        return "\n".join(lines)

    def told(self, area: str) -> str:
        """What an area is for, without a word on libraries."""
        return re.sub(r" \(.*?\)", "", self.areas[area])

    def page(self, area: str, names: list[str]) -> str:
        title, told = TITLES.get(area, area.capitalize()), self.told(area)
        lines = [title, "=" * len(title), "", f"{told[0].upper()}{told[1:]}.", "", ".. py:currentmodule:: levigate", ""]
        kinds = (("Functions", inspect.isroutine), ("Classes", inspect.isclass), ("Values", None))
        left = list(names)
        for heading, is_kind in kinds:
            chosen = [name for name in left if is_kind is None or is_kind(getattr(levigate, name))]
            left = [name for name in left if name not in chosen]
            if chosen:
                lines += [heading, "-" * len(heading), ""]
                lines += [line for name in chosen for line in self.of_name(name)]
        return "\n".join(lines)

    def all(self) -> dict[str, str]:
        """Name of each file and what it holds."""
        by_area: dict[str, list[str]] = {name: [] for name in self.areas}
        for name in levigate.__all__:
            by_area[self.cpp.area.get(name, "base")].append(name)
        made = {area: self.page(area, names) for area, names in by_area.items() if names}
        points = [f"* :doc:`{area}`: {self.told(area)}" for area in made]
        for module in pkgutil.iter_modules(levigate.__path__):
            if not module.name.startswith("_"):
                made[f"module_{module.name}"] = self.of_module(importlib.import_module(f"levigate.{module.name}"))
                points.append(f"* :doc:`module_{module.name}`: pictures")
        title = "levigate in Python"
        lines = [title, "=" * len(title), "", ".. py:module:: levigate", ""]
        lines += paragraphs(inspect.getdoc(levigate) or "")
        lines += ["C++, decisions and sources are on the `start page <../index.html>`__.", ""]
        lines += [*points, "* :ref:`genindex`", "", ".. toctree::", "   :hidden:", ""]
        made["index"] = "\n".join(lines + [f"   {name}" for name in made])
        return {f"{name}.rst": text + "\n" for name, text in made.items()}
