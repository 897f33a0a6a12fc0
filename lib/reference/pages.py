"""The pages of the C++ reference that no header holds: start, areas, sources of numbers, decisions, report."""

from __future__ import annotations

import json
import re
from html import escape
from pathlib import Path
from typing import Any

from headers import BASE, area, linked, page, plain, public_headers, purpose, source_page


def sources(root: Path) -> list[str]:
    """Paths of all tables with numbers, from the root."""
    files = [*(root / "data/standards").glob("*.json"), *(root / "data/profiles").rglob("*.json")]
    return sorted(file.relative_to(root).as_posix() for file in files)


def cell(value: Any) -> str:
    """A value in a cell of a table."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list):
        return ", ".join(cell(one) for one in value)
    return escape(str(value), quote=False).replace("@", "\\@")


def table(head: list[str], rows: list[list[str]]) -> str:
    lines = ["<table>", "<tr>" + "".join(f"<th>{one}</th>" for one in head) + "</tr>"]
    lines += ["<tr>" + "".join(f"<td>{one}</td>" for one in row) + "</tr>" for row in rows]
    return "\n".join([*lines, "</table>"])


def numbers(value: Any, name: str = "") -> list[list[str]]:
    """Each number of a profile: name, value, band, basis, citation."""
    if isinstance(value, dict) and "value" in value:
        band = f"{cell(value['low'])} to {cell(value['high'])}" if "low" in value else ""
        return [[name, cell(value["value"]), band, cell(value["basis"]), cell(value["citation"])]]
    if isinstance(value, dict):
        return [row for key, one in value.items() for row in numbers(one, f"{name}.{key}" if name else key)]
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return [row for at, one in enumerate(value) for row in numbers(one, f"{name} {at + 1}")]
    return [[name, cell(value), "", "", ""]] if value != "" else []


def profile(data: dict[str, Any]) -> str:
    parts = []
    for one in data.get("profiles", [data]):
        title = one.get("name", "")
        note = one.get("note", "")
        rest = {key: value for key, value in one.items() if key not in ("name", "note", "format", "order")}
        parts += [f"<h2>{cell(title)}</h2>"] + ([f"{cell(note)}."] if note else [])
        parts.append(table(["name", "value", "band", "basis", "citation"], numbers(rest)))
    return "\n\n".join(parts)


def standard(data: dict[str, Any]) -> str:
    """A table of grades, or of names of sheen: what is printed, and which source says so."""
    parts = ["\n".join(f"- {cell(note)}" for note in data.get("notes", []))]
    cited = [[cell(key), cell(one["basis"]), cell(one["citation"])] for key, one in data.get("sources", {}).items()]
    parts.append(table(["source", "basis", "citation"], cited))
    for section in data.get("sections", []):
        told = [f"{key}: {cell(value)}" for key, value in section.items() if key != "rows"]
        parts.append("<h2>" + cell(section.get("edition", section.get("scheme", ""))) + "</h2>")
        parts.append("; ".join(told) + ".")
        parts.append(rows_of(section["rows"]))
    return "\n\n".join(part for part in parts if part)


def rows_of(rows: list[dict[str, Any]]) -> str:
    names = list(dict.fromkeys(key for row in rows for key in row))
    return table([cell(name) for name in names], [[printed(row.get(name, "")) for name in names] for row in rows])


def printed(value: Any) -> str:
    """A number with the name of its source, or several."""
    if isinstance(value, list) and value and isinstance(value[0], list):
        return "; ".join(printed(one) for one in value)
    if isinstance(value, list) and len(value) == 2 and isinstance(value[1], str):
        return f"{cell(value[0])} <small>{cell(value[1])}</small>"
    return cell(value)


def source(root: Path, path: str) -> str:
    data = json.loads((root / path).read_text(encoding="utf-8"))
    body = standard(data) if "sections" in data else profile(data)
    title = f" {cell(data['title'])}." if "title" in data else ""
    return f"# {path} {{#{source_page(path)}}}\n\nThe numbers of `{path}`, each with its basis.{title}\n\n{body}\n"


# Decisions and the report


def as_list(text: str) -> str:
    """Lines that name what was rejected and what holds a decision, as points: they are no paragraph."""
    return re.sub(r"^(Rejected|Held by): ", r"- \1: ", text, flags=re.MULTILINE)


def decisions(root: Path, file: Path, paths: set[str]) -> tuple[str, str]:
    """Name and text of the page of one file of decisions."""
    text = file.read_text(encoding="utf-8")
    if file.name == "DEVELOPERS.md":
        name, title = "decisions", "Decisions that cross areas"
        text = text.partition(f"## {title}\n")[2].replace("\n### ", "\n## ")
    else:
        name = f"decisions_{file.stem}"
        title, _, text = text.removeprefix("# ").partition("\n")
    body = as_list(prose(text, paths))
    return name, f"# {title} {{#{name}}}\n{body}"


def prose(text: str, paths: set[str]) -> str:
    """Markdown whose signs mean themselves; a heading and a cell keep theirs."""
    lines = []
    for line in text.split("\n"):
        heading = re.match(r"#+ ", line)
        opening = heading.group() if heading else ""
        lines.append(opening + linked(plain(line[len(opening) :]), paths))
    return "\n".join(lines)


def report(root: Path, paths: set[str]) -> str:
    text = (root / "data/reference/REPORT.md").read_text(encoding="utf-8")
    title, _, body = text.removeprefix("# ").partition("\n")
    return f"# {title} {{#report}}\n{prose(body, paths)}"


# The start


def areas(root: Path) -> dict[str, str]:
    """What each area is for, as DEVELOPERS.md says it."""
    text = (root / "DEVELOPERS.md").read_text(encoding="utf-8")
    found = {BASE: "what all areas share"}
    for names, what in re.findall(r"^\| ((?:`\w+/`(?:, )?)+) \| (.+) \|$", text, re.MULTILINE):
        folders = re.findall(r"`(\w+)/`", names)
        parts = what.split(" and ") if len(folders) > 1 else [what]
        for name, part in zip(folders, parts, strict=True):
            if (root / "lib/include/levigate" / name).is_dir():
                found[name] = part
    return found


def headers_by_area(root: Path) -> dict[str, list[str]]:
    """Names of the public headers, areas in the order of DEVELOPERS.md."""
    include = root / "lib/include"
    found: dict[str, list[str]] = {name: [] for name in areas(root)}
    for header in public_headers(include):
        name = header.relative_to(include / "levigate").as_posix()
        found[area(name)].append(name)
    return {name: headers for name, headers in found.items() if headers}


def folder(one: str) -> str:
    return "levigate/" if one == BASE else f"levigate/{one}/"


def group(name: str, title: str, text: str, of: str = "") -> str:
    within = f"@ingroup {of}\n" if of else ""
    return f"/** @defgroup {name} {title}\n{within}@brief {text}\n*/"


def groups(root: Path, paths: set[str]) -> str:
    """The areas as groups, and in them the headers, each with what it is for."""
    told, found = areas(root), []
    for one, names in headers_by_area(root).items():
        found.append(group(f"area_{one}", folder(one), f"{told[one][0].upper()}{told[one][1:]}."))
        for name in names:
            what = purpose((root / "lib/include/levigate" / name).read_text(encoding="utf-8"))
            found.append(group(page(name), name, linked(plain(what), paths), f"area_{one}"))
    return "\n".join(found)


def start(root: Path) -> str:
    told = areas(root)
    lines = [(root / "lib/reference/start.md").read_text(encoding="utf-8"), "## C++ by area\n"]
    for one, names in headers_by_area(root).items():
        lines.append(f'- @ref area_{one} "{folder(one)}": {told[one]}; {len(names)} headers')
    lines += ["\n## Decisions\n", "- @ref decisions"]
    lines += [f"- @ref decisions_{file.stem}" for file in sorted((root / "lib/decisions").glob("*.md"))]
    lines += ["\n## Sources of numbers\n"]
    lines += [f'- @ref {source_page(path)} "{path}"' for path in sources(root)]
    return "\n".join(lines) + "\n"


def all_pages(root: Path) -> dict[str, str]:
    """Name of each file and what it holds."""
    paths = set(sources(root))
    made = {"start.md": start(root), "areas.dox": groups(root, paths), "report.md": report(root, paths)}
    made |= {f"{source_page(path)}.md": source(root, path) for path in sources(root)}
    for file in [root / "DEVELOPERS.md", *sorted((root / "lib/decisions").glob("*.md"))]:
        name, text = decisions(root, file, paths)
        made[f"{name}.md"] = text
    return made
