"""The bench sheet as a browser shows it: pages on paper of both sizes, the width of a phone, greys alone."""

import html
import json
import re
import subprocess
from pathlib import Path
from typing import Any

import levigate
import pytest
from pypdf import PdfReader

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
PAPERS = {"A4": (595, 842), "Letter": (612, 792)}  # width and height in points
PHONE_PX = 360
NASTY = "<script>alert('1')</script> & \"oak\" \u0007" + "w" * 200


def run_browser(profile: Path, *arguments: str) -> str:
    fixed = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", f"--user-data-dir={profile}"]
    done = subprocess.run(["chromium", *fixed, *arguments], capture_output=True, text=True, timeout=120, check=True)
    return done.stdout


def page_of(job_name: str, stack_name: str, units: str = "metric") -> str:
    job, stack = levigate.Job.load(DEMO / job_name), levigate.Stack.load(DEMO / stack_name)
    plan = levigate.plan(job, stack)
    return plan.bench_sheet_html(levigate.simulate(job, plan, draws=50), units)


def nasty_page() -> str:
    """Every name a user may give is long, and would be markup."""
    given = json.loads((DEMO / "job.json").read_text())
    names = {zone["name"]: f"{i} {NASTY}" for i, zone in enumerate(given["zones"])}
    for zone in given["zones"]:
        zone["name"] = names[zone["name"]]
        if "edge_of" in zone:
            zone["edge_of"] = names[zone["edge_of"]]
    given["name"] = NASTY
    drawer = json.loads((DEMO / "stack.json").read_text())
    for sheet in drawer["sheets"]:
        sheet["maker"] = NASTY
    return levigate.plan(levigate.Job.from_dict(given), levigate.Stack.from_dict(drawer)).bench_sheet_html()


@pytest.fixture(scope="module")
def pages() -> dict[str, str]:
    return {
        "job": page_of("job.json", "stack.json"),
        "day": page_of("day.json", "day_stack.json", "us"),
        "nasty": nasty_page(),
    }


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name, most", [("job", 1), ("day", 2)])
def test_fits_its_pages(pages, tmp_path, name: str, most: int, paper: str) -> None:
    page = tmp_path / "sheet.html"
    page.write_text(pages[name].replace("</head>", f"<style>@page {{ size: {paper}; }}</style></head>"), encoding="utf-8")
    pdf = tmp_path / "sheet.pdf"
    run_browser(tmp_path / "profile", "--no-pdf-header-footer", f"--print-to-pdf={pdf}", page.as_uri())
    printed = PdfReader(pdf).pages
    assert 1 <= len(printed) <= most
    assert [round(length) for length in printed[0].mediabox[2:]] == pytest.approx(list(PAPERS[paper]), abs=1)
    assert "Step 1 of" in printed[0].extract_text()
    assert "Last look" in printed[-1].extract_text()


# What a page is like in a frame as wide as a phone. A frame of this kind may be looked into from outside.
MEASURE = """<script>onload = () => {
  const found = {};
  for (const frame of document.querySelectorAll("iframe")) {
    const page = frame.contentDocument, root = page.documentElement;
    const right = text => { const box = text.getBBox(); return box.x + box.width; };
    found[frame.id] = {
      width: root.scrollWidth,
      scripts: page.scripts.length,
      title: page.title,
      lang: root.lang,
      heads: page.querySelectorAll("th").length,
      heads_without_scope: page.querySelectorAll("th:not([scope])").length,
      tables_without_caption: page.querySelectorAll("table:not(:has(caption))").length,
      drawn_to: Math.max(0, ...Array.from(page.querySelectorAll("svg text"), right)),
      picture: page.querySelector("svg desc") ? page.querySelector("svg desc").textContent : "",
    };
  }
  const out = document.createElement("pre");
  out.textContent = "FOUND" + JSON.stringify(found) + "END";
  document.body.append(out);
};</script>"""


@pytest.fixture(scope="module")
def measured(pages, tmp_path_factory) -> dict[str, Any]:
    folder = tmp_path_factory.mktemp("phone")
    wide = "<!DOCTYPE html><html lang=en><p style='width:500px'>wide"
    frames = "".join(
        f'<iframe id="{name}" style="width:{PHONE_PX}px;height:9000px;border:0" srcdoc="{html.escape(page)}"></iframe>'
        for name, page in {**pages, "wide": wide}.items()
    )
    (folder / "phone.html").write_text(f"<!DOCTYPE html><body>{frames}{MEASURE}</body>", encoding="utf-8")
    shown = run_browser(folder / "profile", "--dump-dom", (folder / "phone.html").as_uri())
    return json.loads(html.unescape(shown.rpartition("FOUND")[2].partition("END")[0]))


def test_a_page_wider_than_a_phone_is_seen(measured) -> None:
    assert measured["wide"]["width"] > PHONE_PX


@pytest.mark.parametrize("name", ["job", "day", "nasty"])
def test_needs_no_scrolling_sideways_on_a_phone(measured, name: str) -> None:
    assert measured[name]["width"] == PHONE_PX
    assert 0 < measured[name]["drawn_to"] <= 360  # the width that the picture is drawn for


@pytest.mark.parametrize("name", ["job", "day", "nasty"])
def test_can_be_read_aloud(measured, name: str) -> None:
    found = measured[name]
    assert (found["lang"], found["heads_without_scope"], found["tables_without_caption"]) == ("en", 0, 0)
    assert found["heads"] > 20
    assert "The steps take off" in found["picture"]


def test_a_name_is_text_and_no_markup(measured) -> None:
    assert measured["nasty"]["scripts"] == 0
    assert measured["nasty"]["title"] == f"Bench sheet: {NASTY}".replace("\u0007", "?")


COLOUR = re.compile(r"(?:fill|stroke|color|background)[\"]?\s*[:=]\s*[\"]?([^\";}]+)|solid ([^;}]+)")


def colours(page: str) -> set[str]:
    return {a or b for a, b in COLOUR.findall(page)}


def is_grey(colour: str) -> bool:
    return colour in {"none", "url(#below)"} or re.fullmatch(r"#([0-9a-f])\1\1", colour) is not None


def test_needs_no_colour_and_nothing_beside_it(pages) -> None:
    for page in pages.values():
        assert "#000" in colours(page)
        assert [one for one in colours(page) if not is_grey(one)] == []
        assert re.findall(r"\ssrc=|\shref=|@import|url\((?!#below\))|https?:", page) == []
    assert colours('<p style="color: red"><rect fill="#c00"/>') == {"red", "#c00"}
    assert not is_grey("red") and not is_grey("#c00")
