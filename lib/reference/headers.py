"""The public headers as Doxygen is to read them: the same lines, with what it does not see put into its words.

Formulas become MathML. What a description says of a member stands beside the member. `Throws:`, `NaN:`, `Accuracy:`
and `Source:` become paragraphs of their own. Files of data become links. Each header becomes a page, the first line
of the header its purpose. No line moves, so that a complaint names the right one.
"""

from __future__ import annotations

import re
from html import escape
from pathlib import Path

import formula

FIELDS = "Throws|NaN|Accuracy|Complexity|Source"
DESCRIBED = re.compile(
    r"^template <std::same_as<(?P<type>\w+)> Value>\ninline constexpr auto described<Value> =.*?\);\n",
    re.DOTALL | re.MULTILINE,
)
CHOICES = re.compile(r"^template <>\ninline constexpr auto choices<.*?;\n", re.DOTALL | re.MULTILINE)
PRIVATE = re.compile(r"^ private:\n.*?(?=^\};)", re.DOTALL | re.MULTILINE)
FRIEND = re.compile(r"^( *)friend [^;{}]*(?:;|\{[^\n]*\}|\{\n.*?^\1\})$", re.DOTALL | re.MULTILINE)
BASE = "base"  # the area of headers beside levigate.hpp


def is_public(header: Path, include: Path) -> bool:
    return not {"work", "detail"} & set(header.relative_to(include / "levigate").parts)


def public_headers(include: Path) -> list[Path]:
    return [header for header in sorted((include / "levigate").rglob("*.hpp")) if is_public(header, include)]


def area(name: str) -> str:
    return name.split("/")[0] if "/" in name else BASE


def page(name: str) -> str:
    """Under which name the page of a header stands: group__NAME.html, where Doxygen doubles each underscore."""
    return "header_" + re.sub(r"\W", "_", name.removesuffix(".hpp"))


def source_page(path: str) -> str:
    return "source_" + re.sub(r"\W", "_", path.removeprefix("data/").removesuffix(".json"))


# Descriptions


def call(text: str, begin: int) -> str:
    """What stands between the round brackets that open at `begin`."""
    depth, at = 0, begin
    for match in re.finditer(r'"(?:[^"\\]|\\.)*"|[()]', text[begin:]):
        depth += {"(": 1, ")": -1}.get(match.group(), 0)
        at = begin + match.start()
        if depth == 0:
            return text[begin + 1 : at]
    raise ValueError(f"no end: {text[begin : begin + 60]}")


def joined(text: str) -> str:
    """Adjacent string literals as one."""
    return "".join(re.findall(r'"((?:[^"\\]|\\.)*)"', text)).replace('\\"', '"')


def said_of_member(arguments: str) -> str:
    """Meaning and range, as the arguments of member<>() tell them."""
    rest = arguments.partition(",")[2]
    limits = re.search(r"Within\{([^{}]+),\s*([^{},]+)\}|at_least\(([^()]+)\)", rest)
    text = joined(re.sub(r"Within\{[^{}]*\}|at_least\([^()]*\)", "", rest))
    if limits:
        low, high = limits[1] or limits[3], limits[2] or "infinity"
        text += f"; at least {low}" if "infinity" in high else f"; {low} to {high}"
    return text


def descriptions(texts: list[str]) -> dict[str, dict[str, str]]:
    """Of each type with a description what that says of each member."""
    found: dict[str, dict[str, str]] = {}
    for text in texts:
        for block in DESCRIBED.finditer(text):
            members = found.setdefault(block["type"], {})
            for match in re.finditer(r"member<&\w+::(\w+)[^>]*>\(", block[0]):
                members[match[1]] = said_of_member(call(block[0], match.end() - 1))
    return found


def with_descriptions(text: str, said: dict[str, dict[str, str]]) -> str:
    """With the meaning of a member beside it, where no comment of its own stands there."""

    def with_meanings(body: re.Match[str]) -> str:
        inner = body["inner"]
        for name, meaning in said.get(body["type"], {}).items():
            value = r"(?: = [^;\n]*|\{[^;\n]*\})?"
            declared = rf"^  (?![/ ]|friend|return|static|using)[^;()\n]*\b{name}\b{value};$"
            inner = re.sub(declared, lambda line: f"{line[0]}  ///< {meaning}", inner, flags=re.MULTILINE)
        return body["head"] + inner + body["end"]

    structure = r"(?P<head>^struct (?P<type>\w+)[^;{]*\{\n)(?P<inner>.*?)(?P<end>^\};)"
    return re.sub(structure, with_meanings, text, flags=re.DOTALL | re.MULTILINE)


# Comments


def is_block(lines: list[str], at: int) -> bool:
    """Whether an indented block after an empty line of a comment begins here."""
    return (
        re.match(r"\s*/// {3,}\S", lines[at]) is not None
        and at > 0
        and re.fullmatch(r"\s*///", lines[at - 1]) is not None
    )


def blocks(lines: list[str]) -> list[tuple[int, int]]:
    """Where the indented blocks of comments begin and end: formulas, and tables in plain text."""
    found, at = [], 0
    while at < len(lines):
        end = at + 1
        if is_block(lines, at):
            while end < len(lines) and re.match(r"\s*/// {3,}\S", lines[end]):
                end += 1
            found.append((at, end))
        at = end
    return found


def shown(block: list[str]) -> str:
    """An indented block as HTML: formulas as such, anything else as it stands."""
    lines = [line.split("///", 1)[1][3:] for line in block]
    try:
        return formula.mathml(lines)
    except formula.Unreadable:
        return "<pre>" + "&#10;".join(escape(line) for line in lines) + "</pre>"


# "Share of all tips": a word that opens a line or a sentence, and may be the name of a type as well.
OPENING = re.compile(r"(^ *|[.:;] )([A-Z][a-z]+)(?= [a-z(])")


def plain(text: str) -> str:
    """Text of a comment for Doxygen: its signs mean themselves, and a word that opens a sentence is no type."""
    parts = re.split(r"(`[^`]*`)", text)
    for at in range(0, len(parts), 2):
        parts[at] = re.sub(r"[\\<>#%&*]", r"\\\g<0>", parts[at])
    return re.sub(OPENING, r"\1%\2", "".join(parts))


def linked(text: str, sources: set[str]) -> str:
    def link(match: re.Match[str]) -> str:
        path = match.group()
        return f'@ref {source_page(path)} "{path}"' if path in sources else path

    text = re.sub(r"data/reference/REPORT\.md", '@ref report "data/reference/REPORT.md"', text)
    return re.sub(r"data/(?:standards|profiles)/[\w/-]+\.json", link, text)


def of_comment(line: str, sources: set[str], in_code: bool) -> str:
    """A line of a comment, or a line with a comment at its end."""
    match = re.match(r"(?P<before>.*?///<?)(?P<text>.*)$", line)
    if not match or in_code or re.match(r"\s*@(code|endcode)", match["text"]):
        return line
    text = re.sub(rf"^ ({FIELDS}): +", lambda field: f" @field{{{field[1]}}} ", linked(plain(match["text"]), sources))
    return match["before"] + text


# The whole header


def purpose(text: str) -> str:
    """What a header is for: the comment that it opens with."""
    lines = text.partition("#pragma once")[0].splitlines()
    return " ".join(line.removeprefix("//").strip() for line in lines)


def header(name: str, text: str, said: dict[str, dict[str, str]], sources: set[str]) -> str:
    """The header `name` for Doxygen, with as many lines as it has."""
    count = text.count("\n")
    text = with_descriptions(text, said)
    for hidden in (DESCRIBED, CHOICES, PRIVATE, FRIEND):
        text = hidden.sub(lambda block: "\n" * block[0].count("\n"), text)
    if "Generated from data/" in text:
        text = re.sub(r"^struct (\w+) \{", r"/** Columns of this table. */ struct \1 {", text, flags=re.MULTILINE)
    lines = text.split("\n")
    for begin, end in blocks(lines):
        margin = lines[begin].split("///")[0]
        html = shown(lines[begin:end])
        lines[begin:end] = [f"{margin}///@htmlonly[block]{html}@endhtmlonly"] + [f"{margin}///"] * (end - begin - 1)
    in_code = False
    for at, line in enumerate(lines):
        in_code = in_code and "@endcode" not in line or "/// @code" in line
        if "///" in line and "@htmlonly" not in line:
            lines[at] = of_comment(line, sources, in_code)
    text = "\n".join(lines)
    opened = f"namespace levigate {{ /** @members{{{page(name)}}} */"
    text = re.sub(r"^namespace levigate::inline v0 \{$", opened, text, flags=re.MULTILINE)
    text = re.sub(r"^\}  // namespace levigate$", "/** @} */ }", text, flags=re.MULTILINE)
    text = text.replace("namespace levigate::inline v0::detail {", "namespace levigate::detail {")
    assert text.count("\n") == count, name
    return text
