"""The reference of C++ and Python: its pages hold every public name, its formulas are those of the comments, its links
lead somewhere, its examples do what they say. lib/reference/build.py makes the pages; tests/run.sh runs it before."""

import doctest
import html
import inspect
import re
import subprocess
import sys
from pathlib import Path

import levigate
import levigate.plots
import pytest

ROOT = Path(__file__).resolve().parents[2]
INCLUDE = ROOT / "lib" / "include"
PAGES = ROOT / ".build" / "reference" / "html"
MOST_BYTES = 10_000_000  # of all pages
sys.path.insert(0, str(ROOT / "lib" / "reference"))

import formula  # noqa: E402
import headers  # noqa: E402

HEADERS = headers.public_headers(INCLUDE)
NAMES = [path.relative_to(INCLUDE / "levigate").as_posix() for path in HEADERS]
TEXTS = {name: path.read_text(encoding="utf-8") for name, path in zip(NAMES, HEADERS)}
SAID = headers.descriptions([path.read_text(encoding="utf-8") for path in INCLUDE.rglob("*.hpp")])


# Formulas


def math(line):
    """What stands between <math> and </math>, blanks and rows left out."""
    shown = re.fullmatch(r'<div class="formula"><div><math[^>]*>(.*)</math></div></div>', formula.mathml([line]))[1]
    return re.sub(r'<mspace width="0.3em"/>|</?mrow>', "", shown)


@pytest.mark.parametrize(
    "line, shown",
    [
        ("a = b / c d", "<mi>a</mi><mo>=</mo><mfrac><mi>b</mi><mi>c</mi></mfrac><mi>d</mi>"),
        ("a b / c / d", "<mfrac><mi>a</mi><mi>b</mi><mi>c</mi><mi>d</mi></mfrac>"),
        ("(a - b) / (c d)", "<mfrac><mi>a</mi><mo>−</mo><mi>b</mi><mi>c</mi><mi>d</mi></mfrac>"),
        ("(a / b)^2", "<msup><mo>(</mo><mfrac><mi>a</mi><mi>b</mi></mfrac><mo>)</mo><mn>2</mn></msup>"),
        ("e^(-x)", '<msup><mi>e</mi><mo form="prefix">−</mo><mi>x</mi></msup>'),
        ("Q^-1(p)", '<msup><mi>Q</mi><mo form="prefix">−</mo><mn>1</mn></msup><mo>(</mo><mi>p</mi><mo>)</mo>'),
        ("sqrt(a + b)^2", "<msup><msqrt><mi>a</mi><mo>+</mo><mi>b</mi></msqrt><mn>2</mn></msup>"),
        ("H_(i+1) / t_i", "<mfrac><msub><mi>H</mi><mi>i</mi><mo>+</mo><mn>1</mn></msub><msub><mi>t</mi><mi>i</mi></msub></mfrac>"),
        ("mean_se'^2 / a0", "<mfrac><msup><mi>mean_se</mi><mo>′</mo><mn>2</mn></msup><msub><mi>a</mi><mn>0</mn></msub></mfrac>"),
        ("v / 60 s", "<mfrac><mi>v</mi><mn>60</mn><mtext>s</mtext></mfrac>"),
        ("2 x eta / x", "<mn>2</mn><mo>×</mo><mfrac><mi>η</mi><mi>x</mi></mfrac>"),
        ("back / minutes at usual numbers", "<mi>back</mi><mo>/</mo><mi>minutes</mi><mi>at</mi><mi>usual</mi><mi>numbers</mi>"),
        ("|a - b| / c", "<mfrac><mo>|</mo><mi>a</mi><mo>−</mo><mi>b</mi><mo>|</mo><mi>c</mi></mfrac>"),
        ("P(x > a | b) = 1", "<mi>P</mi><mo>(</mo><mi>x</mi><mo>&gt;</mo><mi>a</mi><mo>|</mo><mi>b</mi><mo>)</mo><mo>=</mo><mn>1</mn>"),
    ],
)
def test_a_formula_is_shown_as_it_reads(line, shown):
    assert math(line) == shown


@pytest.mark.parametrize("line", ["(a / b", "a / b)", "a /", "a = $b", "scratch   density at its depth"])
def test_what_is_no_formula_is_not_taken_for_one(line):
    with pytest.raises(formula.Unreadable):
        formula.mathml([line])
    assert html.escape(line) in headers.shown([f"///   {line}"])


def public(text):
    """A header without what is in a namespace detail, which has no pages."""
    return re.sub(r"^namespace .*detail \{.*?^\}  // namespace.*detail$", "", text, flags=re.DOTALL | re.MULTILINE)


def blocks(name):
    """The indented blocks in the comments of a header."""
    lines = public(TEXTS[name]).split("\n")
    return [[line.split("///", 1)[1][3:] for line in lines[a:b]] for a, b in headers.blocks(lines)]


def words_of_source(block):
    text = re.sub(r"\bintegral of\b", "integral", " ".join(block)).replace("sqrt(", "(").replace("chi2_df", "chi_df^2")
    return re.findall(r"[^\W_]+|_(?=\w)", text)


def words_shown(shown):
    """Names and numbers in the order of the source: an index is part of its name."""
    text = re.sub(r"<msub(?:sup)?>(<mi>\w</mi>)", r"\1@", shown)
    text = re.sub(r"<mspace[^>]*>|<mo>×</mo>", " ", text)
    for name, letter in formula.GREEK.items():
        text = text.replace(letter, name)
    text = text.replace("∫", " integral ")
    return re.findall(r"[^\W_]+", html.unescape(re.sub(r"<[^>]*>", " ", text)))


def is_shown(block):
    try:
        return formula.mathml(block)
    except formula.Unreadable:
        return None


@pytest.mark.parametrize("name", [name for name in NAMES if blocks(name)])
def test_a_formula_keeps_each_name_and_number_in_order(name):
    for block in blocks(name):
        shown = is_shown(block)
        if shown:
            wanted = [w for w in words_of_source(block) if w not in ("_", "x")]
            held = [w for w in words_shown(shown) if w != "x"]
            assert "".join(held) == "".join(wanted)


def test_formulas_are_the_rule():
    found = [is_shown(block) is not None for name in NAMES for block in blocks(name)]
    assert len(found) >= 60 and found.count(False) <= 1  # the table of diagnose() is no formula


# What Doxygen reads


@pytest.mark.parametrize("name", NAMES)
def test_a_member_has_what_its_description_says(name):
    given = headers.header(name, TEXTS[name], SAID, set())
    for kind, inner in re.findall(r"^struct (\w+)[^;{]*\{\n(.*?)^\};", given, re.DOTALL | re.MULTILINE):
        for member in SAID.get(kind, {}):
            declared = re.search(rf"^  (?!friend|return)[^/()\n]*\b{member}\b[^;()]*;(.*)", inner, re.MULTILINE)
            assert not declared or "///<" in declared[1] or "///" in inner[: declared.start()].rpartition("\n\n")[2], (kind, member)


def test_a_description_is_read():
    text = (
        "struct A {\n  double x_um = 0;\n  int n;  ///< own\n};\n\n"
        "template <std::same_as<A> Value>\ninline constexpr auto described<Value> = describe<Value>(\n"
        '    "A", "An A.", member<&Value::x_um>("x_um", Within{0, 1e4}, "how (far) "\n "it is"),\n'
        '    member<&Value::n>("n", at_least(1), "of them"));\n'
    )
    said = headers.descriptions([text])
    assert said == {"A": {"x_um": "how (far) it is; 0 to 1e4", "n": "of them; at least 1"}}
    assert "  double x_um = 0;  ///< how (far) it is; 0 to 1e4\n  int n;  ///< own\n" in headers.with_descriptions(text, said)


def test_signs_in_a_comment_mean_themselves():
    assert headers.plain("a < b & 5 % `x<y>` #1") == r"a \< b \& 5 \% `x<y>` \#1"
    assert headers.of_comment("/// Throws:    A where b", set(), False) == "/// @field{Throws} A where b"
    path = "data/profiles/model.json"
    assert headers.linked(path, {path}) == f'@ref source_profiles_model "{path}"'
    assert headers.linked(path, set()) == path


# The pages


@pytest.fixture(scope="module")
def pages():
    """All pages, by their path below PAGES."""
    assert (PAGES / "index.html").is_file(), "python lib/reference/build.py makes the pages"
    return {file.relative_to(PAGES).as_posix(): file.read_text(encoding="utf-8") for file in PAGES.rglob("*.html")}


def page_of(name):
    return f"group__{headers.page(name).replace('_', '__')}.html"


def functions_with_contract(text):
    """Names of the functions of a namespace whose comment tells a contract."""
    found = re.findall(r"^/// @return.*\n(?:///.*\n)*((?:template.*\n)?[^/;{}]*?)\(", public(text), re.MULTILINE)
    return [declaration.split()[-1] for declaration in found]


def test_each_public_header_has_a_page(pages):
    assert [name for name in NAMES if page_of(name) not in pages] == []
    assert len(NAMES) > 150


@pytest.mark.parametrize("name", [name for name in NAMES if functions_with_contract(TEXTS[name])])
def test_each_function_of_numbers_stands_on_the_page_of_its_header(pages, name):
    page = pages[page_of(name)]
    wanted = functions_with_contract(TEXTS[name])
    assert [one for one in wanted if f"</span>{one}()</h2>" not in page and f"</span>{one}() <span" not in page] == []


def test_each_formula_is_on_a_page(pages):
    all_of_it = "".join(text for path, text in pages.items() if path.startswith(("group", "struct", "class")))
    for name in NAMES:
        for block in blocks(name):
            assert (is_shown(block) or headers.shown([f"///   {line}" for line in block])) in all_of_it, (name, block)


def test_each_name_of_the_module_has_an_entry(pages):
    entries = set(re.findall(r'id="(levigate\.[\w.]+)"', "".join(pages[p] for p in pages if p.startswith("python/"))))
    assert [name for name in levigate.__all__ if f"levigate.{name}" not in entries] == []
    assert [name for name in levigate.plots.__all__ if f"levigate.plots.{name}" not in entries] == []
    members = [
        f"levigate.{name}.{member}"
        for name in levigate.__all__
        if inspect.isclass(getattr(levigate, name))
        for member, value in vars(getattr(levigate, name)).items()
        if isinstance(value, property)
    ]
    assert len(members) > 500 and [member for member in members if member not in entries] == []


def test_each_source_and_decision_has_a_page(pages):
    tables = [*(ROOT / "data/standards").glob("*.json"), *(ROOT / "data/profiles").rglob("*.json")]
    wanted = [f"{headers.source_page(file.relative_to(ROOT).as_posix())}.html" for file in tables]
    wanted += [f"decisions_{file.stem}.html" for file in (ROOT / "lib/decisions").glob("*.md")]
    assert [page for page in [*wanted, "decisions.html", "report.html"] if page not in pages] == []
    assert 'href="source_profiles_model.html"' in pages[page_of("surface/removal.hpp")]


def addresses(text):
    return [html.unescape(found) for found in re.findall(r'(?:href|src)="([^"]*)"', text)]


def broken_links(pages, other_files=frozenset()):
    """(page, address) of each link within the pages that leads nowhere."""
    anchors = {path: set(re.findall(r'(?:id|name)="([^"]+)"', text)) for path, text in pages.items()}
    found = []
    for path, text in pages.items():
        for address in addresses(text):
            if re.match(r"\w+:|//", address):
                continue
            file, _, anchor = address.partition("#")
            file = file.partition("?")[0]  # the version of a style sheet
            parts = path.split("/")[:-1] if file else path.split("/")
            for part in file.split("/") if file else []:
                parts = parts[:-1] if part == ".." else [*parts, part]
            target = "/".join(parts)
            there = target in pages and (not anchor or anchor in anchors[target]) or target in other_files
            if not there:
                found.append((path, address))
    return found


def test_links_lead_somewhere(pages):
    files = {file.relative_to(PAGES).as_posix() for file in PAGES.rglob("*") if file.suffix != ".html"}
    assert broken_links(pages, files) == []
    menu = (PAGES / "menudata.js").read_text(encoding="utf-8")
    targets = [address.partition("#")[0] for address in re.findall(r'url:"([^"]+)"', menu)]
    assert "python/index.html" in targets and [target for target in targets if target not in pages] == []


def test_a_link_that_leads_nowhere_is_seen():
    pages = {"a.html": '<a href="b/c.html#x"></a><a href="#y">', "b/c.html": '<p id="x"><a href="../a.html"><a href="d.html">'}
    assert broken_links(pages) == [("a.html", "#y"), ("b/c.html", "d.html")]


def from_outside(text):
    """What a page or a style sheet would load from a network."""
    loaded = re.findall(r'<(?:script|img|iframe|source|object)\b[^>]*?(?:src|data)="((?:\w+:)?//[^"]*)"', text)
    loaded += re.findall(r'<link\b[^>]*?href="((?:\w+:)?//[^"]*)"', text)
    return loaded + re.findall(r"url\([\"']?((?:https?:)?//[^)\"']*)|@import[^;]*?((?:https?:)?//[^;\"']*)", text)


def test_nothing_comes_from_a_network(pages):
    sheets = {str(file): file.read_text(encoding="utf-8") for file in PAGES.rglob("*.css")}
    assert len(sheets) > 3
    assert {path: found for path, text in {**pages, **sheets}.items() if (found := from_outside(text))} == {}
    assert sum("<math" in text for text in pages.values()) > 40  # formulas need no program to be shown


def test_what_comes_from_a_network_is_seen():
    assert from_outside('<script src="https://example.org/a.js">') == ["https://example.org/a.js"]
    assert from_outside('<link rel="x" href="//example.org/a.css">') == ["//example.org/a.css"]
    assert len(from_outside('@import url("https://example.org/a.css");')) == 1


def test_the_pages_are_light():
    assert sum(file.stat().st_size for file in PAGES.rglob("*") if file.is_file()) < MOST_BYTES


# Examples


def docstrings():
    """Name and docstring of everything public in Python that has one."""
    for name in levigate.__all__:
        value = getattr(levigate, name)
        if inspect.isclass(value):
            yield from ((f"{name}.{m}", getattr(value, m).__doc__) for m in vars(value) if not m.startswith("_"))
        if inspect.isclass(value) or inspect.isroutine(value):
            yield name, value.__doc__


PYTHON = [(name, doc) for name, doc in docstrings() if ">>>" in (doc or "")]


@pytest.mark.parametrize("name, doc", PYTHON, ids=[name for name, _ in PYTHON])
def test_a_python_example_does_what_it_says(name, doc, monkeypatch):
    monkeypatch.chdir(ROOT)
    test = doctest.DocTestParser().get_doctest(doc, {"levigate": levigate}, name, None, 0)
    assert test.examples and doctest.DocTestRunner().run(test).failed == 0


def cpp_examples():
    """(header, line, code) of each example in the comments of the headers."""
    for name, text in TEXTS.items():
        for match in re.finditer(r"^/// @code\n((?:///.*\n)*?)/// @endcode\n", text, re.MULTILINE):
            yield name, text[: match.start()].count("\n") + 2, re.sub(r"^/// ?", "", match[1], flags=re.MULTILINE)


def checked(code):
    """The code, with a check in place of each value that stands behind a statement."""
    return re.sub(r"^(.*);  +// (.+)$", lambda m: f'shows({m[1]}, R"({m[2]})");', code, flags=re.MULTILINE)


CHECK = """
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <string>
#include "levigate/io/json.hpp"
#include "levigate/levigate.hpp"
using namespace levigate;
int failed = 0;
template <typename Value> void shows(const Value& value, const std::string& said) {
  bool same = false;
  if constexpr (std::is_arithmetic_v<Value>) {
    const std::size_t point = said.find('.');
    const double digits = point == std::string::npos ? 0 : double(said.size() - point - 1);
    same = std::abs(double(value) - std::stod(said)) <= 0.5 * std::pow(10.0, -digits);
  } else {
    same = '"' + std::string(value) + '"' == said;
  }
  if (same) return;
  std::cerr << value << ", where the example says " << said << "\\n";
  ++failed;
}
"""


def run_cpp(examples, folder):
    """What the examples complain of; they run from the root, with the library that the module is made of."""
    library = ROOT / ".build" / "module" / "lib" / "liblevigate.a"
    assert library.is_file(), "install the module as tests/run.sh does"
    source = CHECK + "int main() {\n"
    for name, line, code in examples:
        source += f'{{\n#line {line} "{name}"\n{checked(code)}}}\n'
    (folder / "examples.cpp").write_text(source + "return failed;\n}\n")
    flags = ["-std=c++20", "-O0", "-Wall", "-Wno-unused-value", "-DLEVIGATE_COMPILED", f"-I{INCLUDE}"]
    program = folder / "examples"
    command = ["g++", *flags, folder / "examples.cpp", library, "-o", program]
    built = subprocess.run(command, capture_output=True, text=True, check=False)
    assert built.returncode == 0, built.stderr
    ran = subprocess.run([program], cwd=ROOT, capture_output=True, text=True, check=False)
    return ran.returncode, ran.stderr


def test_the_cpp_examples_do_what_they_say(tmp_path):
    examples = list(cpp_examples())
    assert len(examples) >= 5
    assert sum(checked(code).count("shows(") for *_, code in examples) >= 8
    wrong = ("wrong.hpp", 1, 'grade("P600").median_um;  // 25.9\ngrade("P600").label;  // "P800"\n')
    status, said = run_cpp([*examples, wrong], tmp_path)
    # The last one is wrong on purpose, so that a check that sees nothing shows.
    assert said == '25.8, where the example says 25.9\nP600, where the example says "P800"\n'
    assert status == 2


def test_there_are_python_examples_where_they_help_most():
    assert {name for name, _ in PYTHON} >= {"contact", "convert", "go_back", "grade", "plan"}
