"""Values as rows for tables, and as tables in a notebook. No sentence and no number is worked out here."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from functools import singledispatch
from html import escape
from typing import Any, Union

from . import _core
from ._core import Error, Finding, Grade, Interval, Plan, SimulatedZone, Simulation, Stack, WayBack

Cell = Union[str, float, bool, None]
Record = dict[str, Cell]


# Rows.


def members(value: object, before: str = "", leave: Sequence[str] = (), of: type | None = None) -> Record:
    """What a value holds, by name: its numbers and texts, and those of the values in it. Lists are left out.

    of: its class, where it may be None. The names are then the same, with None for each.
    """
    row: Record = {}
    for name, member in vars(of or type(value)).items():
        if not isinstance(member, property) or name in leave:
            continue
        held = None if value is None else getattr(value, name)
        told = _type_told(member)
        within = getattr(_core, told, None)
        if told in ("str", "float", "int", "bool") or told.startswith("typing.Literal["):
            row[before + name] = held
        elif within is Interval:
            row |= {f"{before}{part}_{name}": number for part, number in members(held, of=Interval).items()}
        elif within is not None:
            row |= members(held, f"{before}{name}_", of=within)
    return row


def _type_told(member: property) -> str:
    """The type that the signature of a property tells, without None."""
    signature = (member.fget.__doc__ or "").splitlines()[0]
    return signature.rpartition(" -> ")[2].removesuffix(" | None").removeprefix("levigate._core.")


@singledispatch
def records(value: object) -> list[Record]:
    """Rows of a value, all with the same names."""
    raise TypeError(f"no rows of {type(value).__name__}")


@records.register
def _(plan: Plan) -> list[Record]:
    return [
        {
            "step": number,
            "sheet": step.sheet,
            "label": step.label,
            "size_um": step.size_um,
            "step_minutes": step.minutes,
            **members(zone),
        }
        for number, step in enumerate(plan.steps, start=1)
        for zone in step.zones.values()
    ]


@records.register
def _(simulation: Simulation) -> list[Record]:
    return [
        {
            "step": number,
            "sheet": step.sheet,
            "zone": name,
            **members(step, "step_", leave=("sheet",)),
            **members(reading, leave=("zone",)),
            **members(simulation.zones.get(name), "end_", leave=("zone",), of=SimulatedZone),
        }
        for number, step in enumerate(simulation.steps, start=1)
        for name, reading in step.zones.items()
    ]


@records.register
def _(stack: Stack) -> list[Record]:
    rows = []
    for sheet in stack.sheets:
        row = members(sheet, leave=("backing", "block"))
        row |= {"backing": sheet.backing.name, "block": None if sheet.block is None else sheet.block.name}
        rows.append(row | members(_grade_of(stack, sheet.to_dict()), "grade_", of=Grade))
    return rows


def _grade_of(stack: Stack, sheet: dict[str, Any]) -> Grade | None:
    """What its label means; None where it is not settled."""
    rule = stack.bare_number
    rules: list[str | dict[str, str]] = [rule]
    if not isinstance(rule, str):  # alone under the rule of one maker after another
        rules = [*({maker: system} for maker, system in rule.items()), "ask"]
    for one in rules:
        try:
            alone = Stack([sheet], one)
        except Error:  # the rule of another maker
            continue
        try:
            return alone.grades[0]
        except Error:
            return None
    return None


@records.register
def _(way: WayBack) -> list[Record]:
    return [
        {"leg": number, "sheet": leg.sheet, "then": ", ".join(leg.then), "look": count, **members(look)}
        for number, leg in enumerate(way.legs, start=1)
        for count, look in enumerate(leg.looks, start=1)
    ]


# Tables.


def heading(name: str) -> str:
    """"film left, um" of film_left_um: a name as words, with its unit. A zone may stand before it: "top: film_left_um"."""
    before, colon, own = name.rpartition(": ")
    words, unit = own.replace("_", " "), _core.unit_of(own)
    rest, _, last = words.rpartition(" ")
    if rest and unit and last != "minutes" and _core.unit_of(last) == unit:
        words = f"{rest}, {unit}"
    return before + colon + words


def cell(value: object) -> str:
    """A number to three digits, or to a whole one; the rest as it is. What is nearly sure is not said to be sure."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        if 0.9995 <= value < 1:
            return "over 0.999"
        return f"{value:.0f}" if abs(value) >= 100 else f"{value:.3g}"
    return escape(str(value))


def table(rows: Iterable[Mapping[str, object]], title: str = "") -> str:
    """Rows of the same names as a table; numbers stand to the right."""
    rows = list(rows)
    if not rows:
        return f"<p>{escape(title)}</p>" if title else ""
    names = list(rows[0])
    head = "".join(f"<th>{escape(heading(name))}</th>" for name in names)
    body = ""
    for row in rows:
        body += "<tr>"
        for name in names:
            number = isinstance(row[name], (int, float)) and not isinstance(row[name], bool)
            body += f'<td style="text-align: {"right" if number else "left"}">{cell(row[name])}</td>'
        body += "</tr>"
    caption = f"<caption>{escape(title)}</caption>" if title else ""
    return f"<table>{caption}<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def said(sentences: Iterable[str]) -> str:
    return "".join(f"<p>{escape(one)}</p>" for one in sentences)


def found(findings: Sequence[Finding]) -> str:
    """Errors as they are; the other findings folded up behind their count."""
    errors = [one for one in findings if one.severity == "error"]
    others = [one for one in findings if one.severity != "error"]
    text = f"<pre>{escape(_core.findings_text(errors))}</pre>" if errors else ""
    if others:
        count = ", ".join(f"{number} {severity}" for severity, number in Counter(one.severity for one in others).items())
        text += f"<details><summary>{count}</summary><pre>{escape(_core.findings_text(others))}</pre></details>"
    return text


@singledispatch
def html(value: object) -> str:
    """A value as a notebook shows it."""
    raise TypeError(f"no table of {type(value).__name__}")


@html.register
def _(grade: Grade) -> str:
    rows = [
        {"number": name, "value": getattr(grade, name), "basis": source["basis"], "source": source["citation"]}
        for name, source in grade.sources.items()
    ]
    return table([{**row, "number": heading(str(row["number"]))} for row in rows], f"{grade.label} ({grade.system})") + said(
        [grade.note] if grade.note else []
    )


@html.register
def _(stack: Stack) -> str:
    names = "id maker label grade_label grade_system grade_median_um backing on_hand price".split()
    rows = records(stack)
    return table([{name: row[name] for name in names} for row in rows]) + found(_core.check(stack))


@html.register
def _(plan: Plan) -> str:
    name = f"<p><b>{escape(plan.job.name)}</b></p>"
    if plan.why is not None:
        return name + said([plan.why.message])
    first = said(f"{one.zone}: {one.work.verdict}." for one in plan.before)
    wait = table([members(plan.wait)]) if plan.wait is not None else ""
    rows = []
    for step in plan.steps:
        row: Record = {of: getattr(step, of) for of in ("sheet", "label", "size_um", "minutes", "sheets_used", "reading_gu")}
        row |= {f"{zone.zone}: film_left_um": zone.film_left_um for zone in step.zones.values()}
        rows.append(row)
    totals = plan.to_dict()["total"]  # which says where there is no film budget
    total: Record = {of: totals[of] for of in ("steps", "minutes", "back_minutes", "cost", "film")}
    return name + wait + first + table(rows) + table([total]) + found(plan.findings)


@html.register
def _(simulation: Simulation) -> str:
    parts = [(step.sheet, step.minutes, step.sheets_used) for step in simulation.steps]
    steps: list[Record] = [
        {"sheet": sheet} | {f"{of}_minutes": number for of, number in members(minutes).items()} | {"p90_sheets_used": used.p90}
        for sheet, minutes, used in [*parts, ("in all", simulation.minutes, simulation.sheets)]
    ]
    zones: list[Record] = [
        {
            "zone": name,
            "p10_film_left_um": zone.film_left_um.p10,
            "p90_film_left_um": zone.film_left_um.p90,
            "p10_thinnest_um": zone.thinnest_um.p10,
            "p90_thinnest_um": zone.thinnest_um.p90,
            "cut_through_share": zone.cut_through.share,
            "cut_through_high": zone.cut_through.high,
        }
        for name, zone in simulation.zones.items()
    ]
    return table(steps, f"{simulation.draws} draws, seed {simulation.seed}") + table(zones)


@html.register
def _(way: WayBack) -> str:
    mark = way.diagnosis.mark
    told = f"<p><b>{escape(f'{mark.kind}, {mark.zone}')}</b></p>" + said(way.diagnosis.evidence)
    if not way.found:
        return told + said([way.why, *way.remains]) + found(way.findings)
    return told + table(records(way)) + found(way.findings)
